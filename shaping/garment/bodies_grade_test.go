package garment_test

import (
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/bodies"
	"example.com/walewise/shaping/garment"
)

// graded is the spec of one body with all widths made larger as the chest is in another: a
// grade that trusts the chest.
func graded(from, to bodies.Body, g gauge.Gauge) garment.Spec {
	s := from.Jumper(g)
	by := func(l gauge.Length) gauge.Length { return scaled(l, from, to) }
	s.Body.Width, s.Neck.Width, s.Armhole.Inset = by(s.Body.Width), by(s.Neck.Width), by(s.Armhole.Inset)
	s.Armhole.BindOff = garment.Exactly(by(s.Armhole.BindOff.Or(gauge.Length{})))
	s.Body.Waist, s.Body.Hem = nil, gauge.Length{}
	return s
}

// scaled is a length made larger as the chest of the one body is in the other.
func scaled(l gauge.Length, from, to bodies.Body) gauge.Length {
	const places = 3
	return gauge.Millimetres(l.Millimetres().Mul(to.Chest.Millimetres()).DivRound(from.Chest.Millimetres(), places))
}

// acrossShoulders is how wide a front is from tip to tip.
func acrossShoulders(t fataler, p garment.Piece) gauge.Length {
	t.Helper()
	return size(t, p, "shoulder").Knitted.Mul(2).Add(size(t, p, "neckWidth").Knitted)
}

// Shoulders and necks do not grow as chests do. In the 2012 Anthropometric Survey of U.S.
// Army Personnel (C. C. Gordon et al., Natick TR-15/007, 2014; computed from its raw data)
// the chest correlates with the breadth of the shoulders by 0.52 of men and 0.29 of women,
// with the base of the neck by 0.75 and 0.66. The median scaled to the chest of the 5th and
// the 95th percentile is beyond even the same percentile of both. Whoever has such a chest
// has on average shoulders nearer to the median than their percentile is, by the
// correlation.
func TestScalingByTheChestMisses(t *testing.T) {
	list := percentiles(t)
	shoulders := func(b bodies.Body) gauge.Length { return b.Shoulders }
	neckBase := func(b bodies.Body) gauge.Length { return b.Neck }
	for _, c := range []struct {
		what        string
		of          func(bodies.Body) gauge.Length
		median, to  int     // men come first, then women
		beyond      float64 // mm that the scaled median is beyond the same percentile
		correlation float64
		unlikely    float64 // mm that it is beyond what is likely for that chest
	}{
		{"shoulders", shoulders, 2, 1, -21.7, 0.52, -36.5},
		{"shoulders", shoulders, 2, 3, 27.3, 0.52, 42.7},
		{"shoulders", shoulders, 7, 6, -15.0, 0.29, -36.3},
		{"shoulders", shoulders, 7, 8, 28.8, 0.29, 50.8},
		{"neck base", neckBase, 2, 1, -16.9, 0.75, -26.4},
		{"neck base", neckBase, 2, 3, 15.9, 0.75, 27.4},
		{"neck base", neckBase, 7, 6, -15.6, 0.66, -25.8},
		{"neck base", neckBase, 7, 8, 25.6, 0.66, 37.5},
	} {
		median, to := list[c.median], list[c.to]
		got, spread := scaled(c.of(median), median, to), c.of(to).Sub(c.of(median))
		likely := c.of(median).Add(gauge.Millimetres(spread.Millimetres().Mul(decimal.NewFromFloat(c.correlation))))
		for _, d := range []struct {
			from string
			off  gauge.Length
			want float64
		}{{"the percentile", got.Sub(c.of(to)), c.beyond}, {"the likely", got.Sub(likely), c.unlikely}} {
			if math.Abs(d.off.Millimetres().InexactFloat64()-d.want) > 0.1 {
				t.Errorf("%s, %s: scaled %v, from %s %v, want %v mm", to.Name, c.what, got, d.from, d.off, d.want)
			}
		}
	}
}

// A front from its own measurements is as wide as the wearer's shoulders to a stitch and a
// half; graded by the chest it is off by a centimetre and a half at least.
func TestFrontsFitTheirOwnShoulders(t *testing.T) {
	list := percentiles(t)
	g := newGauge("28", "40", "10 cm")
	near, far := g.Width(3), length("1.5 cm")
	for i, b := range list {
		if strings.HasSuffix(b.Name, "max") || strings.HasSuffix(b.Name, "min") {
			continue
		}
		own := acrossShoulders(t, front(t, b.Jumper(g))).Sub(b.Shoulders)
		if own.Mul(2).Abs().Cmp(near) > 0 {
			t.Errorf("%s: shoulders %v off", b.Name, own)
		}
		if strings.HasSuffix(b.Name, "median") {
			continue
		}
		median := list[i/5*5+2]
		off := acrossShoulders(t, front(t, graded(median, b, g))).Sub(b.Shoulders)
		t.Logf("%s: own measurements %v off, graded by the chest %v", b.Name, own, off)
		if off.Abs().Cmp(far) < 0 {
			t.Errorf("%s: graded by the chest the shoulders are only %v off", b.Name, off)
		}
	}
}

// The same for each body of the survey's raw data, and the correlations that explain it.
func TestGradeOfSurvey(t *testing.T) {
	medians, list := percentiles(t), surveyed(t)
	for _, c := range []struct {
		sex             string
		median          bodies.Body
		shoulders, neck float64 // correlation with the chest
	}{
		{sex: "male", median: medians[2], shoulders: 0.52, neck: 0.75},
		{sex: "female", median: medians[7], shoulders: 0.29, neck: 0.66},
	} {
		t.Run(c.sex, func(t *testing.T) {
			var chests, shoulders, necks, offs []float64
			for _, b := range list {
				if !strings.HasPrefix(b.Name, c.sex+",") {
					continue
				}
				mm := func(l gauge.Length) float64 { return l.Millimetres().InexactFloat64() }
				chests, shoulders, necks = append(chests, mm(b.Chest)), append(shoulders, mm(b.Shoulders)), append(necks, mm(b.Neck))
				offs = append(offs, mm(scaled(c.median.Shoulders, c.median, b).Sub(b.Shoulders)))
			}
			for _, r := range []struct {
				what      string
				got, want float64
			}{
				{"shoulders", correlation(chests, shoulders), c.shoulders},
				{"neck base", correlation(chests, necks), c.neck},
			} {
				t.Logf("chest and %s: %.3f of %d bodies, %.2f of all", r.what, r.got, len(chests), r.want)
				if math.Abs(r.got-r.want) > 0.05 {
					t.Errorf("chest and %s: correlation %.3f, published %.2f", r.what, r.got, r.want)
				}
			}
			square := 0.0
			for _, off := range offs {
				square += off * off
			}
			typical := math.Sqrt(square / float64(len(offs)))
			t.Logf("graded by the chest the shoulders are typically %.1f mm off", typical)
			if typical < 20 {
				t.Errorf("graded by the chest the shoulders are typically only %.1f mm off", typical)
			}
		})
	}
}

// correlation is Pearson's.
func correlation(a, b []float64) float64 {
	mean := func(list []float64) float64 {
		sum := 0.0
		for _, v := range list {
			sum += v
		}
		return sum / float64(len(list))
	}
	meanA, meanB := mean(a), mean(b)
	ab, aa, bb := 0.0, 0.0, 0.0
	for i := range a {
		ab += (a[i] - meanA) * (b[i] - meanB)
		aa += (a[i] - meanA) * (a[i] - meanA)
		bb += (b[i] - meanB) * (b[i] - meanB)
	}
	return ab / math.Sqrt(aa*bb)
}
