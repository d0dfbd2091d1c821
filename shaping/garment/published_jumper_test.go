package garment_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func back(t fataler, s garment.Spec) garment.Piece {
	t.Helper()
	p, err := garment.Back(s)
	if err != nil {
		t.Fatalf("back: %v", err)
	}
	return p
}

// edge returns the drawn edge of that name at the right.
func edge(t fataler, p garment.Piece, name string) garment.Edge {
	t.Helper()
	for _, e := range p.Edges {
		if e.Name == name && e.Side == shaping.Right {
			return e
		}
	}
	t.Fatalf("no edge %s", name)
	return garment.Edge{}
}

// Sleeves from the cuff up. Of a length that is not printed the stitches and rows are
// those of one to the centimetre.
func TestPublishedSleeves(t *testing.T) {
	const (
		magic    = "papermoonknits.com, Sleeve magic"
		winter   = "Handbook of Wool Knitting and Crochet, 1918, Costume for the winter-girl, its upper part turned round"
		shetland = "Chadwick's Red Heart Shetland Floss leaflet, size 34 (freevintageknitting.com/print/2099), turned round"
	)
	inch := newGauge("5", "6", "1 in")
	one := newGauge("10", "10", "10 cm")
	for _, c := range []struct {
		what            string
		gauge           gauge.Gauge
		cuff, top       int
		length, plain   string
		band            string
		firstRow, rows  int // of what is shaped
		times, distance int // 0: not printed
		source          string
	}{
		// 18 in less 1 in at each end and 2 in of cuff are 14 in. The stitches are chosen here.
		{"84 rows of shaping", inch, 40, 68, "18 in", "1 in", "2 in", 12 + 6 + 1, 84, 14, 0, magic},
		// From the top 1 less at each end of every 12th row, 74 to 56.
		{"every 12th row", one, 56, 74, "107 cm", "5 cm", "0 cm", 6, 97, 9, 12, winter},
		// From the top 1 less at each end of every 4th row, 104 to 66.
		{"every 4th row", one, 66, 104, "83 cm", "5 cm", "0 cm", 6, 73, 19, 4, shetland},
	} {
		t.Run(c.what, func(t *testing.T) {
			s := adult()
			s.Gauge, s.Seam.Stitches = c.gauge, 0
			s.Setup.On = shaping.Bed
			if c.gauge.Equal(one) {
				s = unitGauge(120, 100, 60, 4, 42, 24)
			}
			s.Sleeve = &garment.SleeveSpec{
				Cuff: c.gauge.Width(c.cuff), Top: c.gauge.Width(c.top),
				Length: length(c.length), Plain: length(c.plain), Band: given(c.band),
			}
			p := sleeve(t, s)
			if p.Widths.CastOn != c.cuff || p.Widths.Body != c.top {
				t.Errorf("%d to %d stitches, printed %d to %d (%s)", p.Widths.CastOn, p.Widths.Body, c.cuff, c.top, c.source)
			}
			e := edge(t, p, garment.CuffToUnderarm)
			if e.FirstRow != c.firstRow || e.Rows != c.rows || len(e.Schedule) != c.times {
				t.Errorf("%d times over %d rows from row %d, printed %d over %d from %d (%s)", len(e.Schedule), e.Rows, e.FirstRow, c.times, c.rows, c.firstRow, c.source)
			}
			for i, step := range e.Schedule {
				if i > 0 && c.distance > 0 && step.Row-e.Schedule[i-1].Row != c.distance {
					t.Errorf("%v: not every %d rows (%s)", e.Schedule, c.distance, c.source)
					break
				}
			}
		})
	}
}

// The lower part of that sleeve grows by 2 at each end of every other row, 34 to 74 in 20
// rows. A spec cannot say it: stitches come one at a time. The refusal names the narrowest
// cuff that would do.
func TestPublishedSleeveTooSteep(t *testing.T) {
	s := unitGauge(120, 100, 60, 4, 42, 24)
	s.Sleeve = &garment.SleeveSpec{Cuff: length("34 cm"), Top: length("74 cm"), Length: length("20 cm")}
	_, err := garment.Sleeve(s, shaping.Right)
	fault, ok := errors.AsType[*garment.Error](err)
	if !ok || !errors.Is(err, garment.ErrFit) || fault.Field != "sleeve.cuff" {
		t.Fatalf("got %v, want a refusal of sleeve.cuff", err)
	}
	_, rest, _ := strings.Cut(fault.Want, "from ")
	least, _, _ := strings.Cut(rest, " to ")
	if err := s.Sleeve.Cuff.Set(least); err != nil {
		t.Fatalf("no width in %q: %v", fault.Want, err)
	}
	if p := sleeve(t, s); p.Widths.Body != 74 || p.Widths.CastOn >= 74 {
		t.Errorf("from %v: %d to %d stitches", least, p.Widths.CastOn, p.Widths.Body)
	}
}

// Waists.
func TestPublishedWaists(t *testing.T) {
	// Of 45.5 in at the hips, 7 stitches and 13 rounds to the inch, 52.5 stitches go up to the
	// waist of 38 in, 2 in or 26 rounds after the hem. A front and a back, each half of it,
	// lose 13 at each of four edges. The underarm is chosen here.
	t.Run("hem to hip", func(t *testing.T) {
		const source = "Interweave / Knitting Daily, Waist shaping: the math, hem to hip; from hip to waist"
		s := waisted(newGauge("7", "13", "1 in"), "22.75 in", "19 in", "20.4 in", "9 in", "2 in")
		lost := 0
		for _, p := range []garment.Piece{front(t, s), back(t, s)} {
			e := edge(t, p, garment.HemToWaist)
			lost += 2 * e.Stitches
			if p.Heights.Band != 26 || e.FirstRow != 27 {
				t.Errorf("%s: %d rows up to the hips, shaped from row %d; printed 26 (%s)", p.Name(), p.Heights.Band, e.FirstRow, source)
			}
			// 318.5 printed as 319 all round.
			if got := 2 * p.Widths.CastOn; got != 318 {
				t.Errorf("%s: %d stitches twice, 318.5 all round (%s)", p.Name(), got, source)
			}
		}
		if lost != 52 {
			t.Errorf("%d stitches go, 52.5 computed (%s)", lost, source)
		}
	})
	// Of 12.5 in up to the waist, 6 rows to the inch, 17 rows are worked before it: 58 are left
	// for shaping. The widths are chosen here.
	t.Run("rows left for shaping", func(t *testing.T) {
		const source = "Interweave, Making it fit: waist shaping"
		g := newGauge("5", "6", "1 in")
		s := waisted(g, "22 in", "18 in", "20 in", "12.5 in", "1 in")
		s.Start.Band = g.Height(17)
		p := front(t, s)
		if e := edge(t, p, garment.HemToWaist); p.Heights.Waist != 75 || e.Rows != 58 || e.FirstRow != 18 {
			t.Errorf("waist at row %d, %d rows from row %d; printed 75 and 58 (%s)", p.Heights.Waist, e.Rows, e.FirstRow, source)
		}
	})
}

// waisted is the spec of a body with a waist and without seams.
func waisted(g gauge.Gauge, hem, waist, width, height, band string) garment.Spec {
	s := adult()
	s.Gauge, s.Seam.Stitches, s.Units = g, 0, gauge.Inch
	s.Start.Band = length(band)
	s.Body = garment.Body{Width: length(width), Hem: length(hem), Length: length("16 in"), Waist: &garment.Waist{Width: length(waist), Height: length(height)}}
	s.Armhole = garment.Armhole{Depth: length("8 in")}
	return s
}

// A slope of 3/4 in at 7 rows to the inch, 5.25 rows, is shaped over 6 (knittingrobin.blogspot.com,
// 16 September 2013), at the front as at the back.
func TestPublishedShoulderSlope(t *testing.T) {
	s := adult()
	s.Gauge, s.Shoulder.Drop = newGauge("5", "7", "1 in"), length("0.75 in")
	f, b := front(t, s), back(t, s)
	groups := shoulderGroups(t, f)
	if f.Heights.Drop != 6 || b.Heights.Drop != 6 || len(groups) != 4 || slices.Max(groups)-slices.Min(groups) > 1 {
		t.Errorf("%d rows at the front, %d at the back, groups %v", f.Heights.Drop, b.Heights.Drop, groups)
	}
}

// Backs with armholes, of one stitch and one row to the centimetre; lengths that are not
// printed are chosen here.
func TestPublishedBacks(t *testing.T) {
	const (
		mohlon   = "leaflet no. 1262, Easy to Make Fashions from Rochelle's Mohlon (clyx.com)"
		services = "Guide to Knitting for the Services, Australian Comforts Fund, 1940 (patternlinks.com)"
	)
	for _, c := range []struct {
		what          string
		width, atOnce int
		times         int   // 1 at each end of every other row
		left          int   // above the armholes
		neck, flat    int   // flat: of the back's neck
		shoulder      []int // from tip to neck; nil where not printed
		source        string
	}{
		{"first size", 120, 5, 4, 102, 42, 30, []int{10, 10, 10}, mohlon},
		{"second size", 132, 7, 5, 108, 42, 30, []int{11, 11, 11}, mohlon},
		{"third size", 144, 8, 7, 114, 42, 30, []int{12, 12, 12}, mohlon},
		// The front divides 23 - 20 - 23.
		{"services, first size", 96, 9, 6, 66, 20, 20, nil, services},
		{"services, second size", 102, 9, 6, 72, 20, 20, nil, services},
	} {
		t.Run(c.what, func(t *testing.T) {
			// In the leaflet the neck begins 1/2 in, 4 rows here, before the shoulders of 4.
			s := unitGauge(c.width, 100, 60, 4, c.neck, 24)
			centimetres := func(n int) gauge.Length { return length("1 cm").Mul(n) }
			s.Armhole.Inset, s.Armhole.BindOff = centimetres(c.atOnce+c.times), garment.Exactly(centimetres(c.atOnce))
			// Upright over the two rows that are bound off, then a straight line; the last row
			// stays plain.
			rows := 2 + 2*c.times + 1
			s.Armhole.Curve = garment.Exactly(centimetres(rows))
			s.Armhole.Path = fmt.Sprintf("M 0 %d L 0 %d L %d 1 L %d 0", rows, rows-2, c.times, c.times)
			s.Back = &garment.BackSpec{Neck: garment.BackNeck{Depth: length("8 cm"), Flat: garment.Exactly(centimetres(c.flat))}}
			p := back(t, s)
			body := panel(t, p, shaping.Body)
			for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
				steps := body.Steps(side).Between(101, 101+2+2*c.times)
				wantTimes(t, steps, c.atOnce, c.times, c.source)
			}
			if got := body.InWork(101 + 3 + 2*c.times).Len(); got != c.left {
				t.Errorf("%d stitches above the armholes, printed %d (%s)", got, c.left, c.source)
			}
			w := p.Widths
			if w.Neck != c.neck || w.Flat != c.flat || w.Shoulder*2+w.Neck != c.left {
				t.Errorf("%d - %d - %d, %d of it flat; printed %d, %d flat (%s)", w.Shoulder, w.Neck, w.Shoulder, w.Flat, c.neck, c.flat, c.source)
			}
			if got := shoulderGroups(t, p); c.shoulder != nil && !slices.Equal(got, c.shoulder) {
				t.Errorf("shoulder %v, printed %v (%s)", got, c.shoulder, c.source)
			}
			// Printed are 2, 2 and 2 at each side of the neck; the quarter of an ellipse takes
			// more at first.
			neck := panel(t, p, shaping.RightHalf).Left
			t.Logf("neck beside the middle %v", sizes(neck))
			if got := -neck.Total(); got != (c.neck-c.flat)/2 {
				t.Errorf("%d stitches go beside the middle, printed %d (%s)", got, (c.neck-c.flat)/2, c.source)
			}
		})
	}
}

// wantTimes expects stitches bound off at once, then single ones at every other row.
func wantTimes(t *testing.T, steps shaping.Schedule, atOnce, times int, source string) {
	t.Helper()
	want := slices.Concat([]int{atOnce}, slices.Repeat([]int{1}, times))
	if got := sizes(steps); !slices.Equal(got, want) {
		t.Errorf("%v go, printed %v (%s)", got, want, source)
		return
	}
	for i, step := range steps {
		if i > 1 && step.Row-steps[i-1].Row != 2 {
			t.Errorf("%v: not at every other row (%s)", steps, source)
			return
		}
	}
}

// A back from 62 cm to 38 cm at 28 stitches and 40 rows to 10 cm: of 12 cm at each side 3 cm
// or 8 stitches go at once and 26 over 16 cm or 64 rows, 10 cm or 40 rows stay straight
// (designyourownsweater, Set-in sleeves). From its lengths alone.
func TestPublishedSetInBack(t *testing.T) {
	s := garment.Spec{
		Gauge: newGauge("28", "40", "10 cm"),
		Body:  garment.Body{Width: length("62 cm"), Length: length("38 cm")},
		Armhole: garment.Armhole{
			Depth: length("26 cm"), Inset: length("12 cm"), BindOff: given("3 cm"), Curve: given("16 cm"), Path: "M 0 10 L 10 0",
		},
		Neck: garment.Neck{Shape: garment.RoundNeck, Width: length("18 cm"), Depth: length("8 cm")},
	}
	p := back(t, s)
	w, h := p.Widths, p.Heights
	if w.Body != 174 || w.BindOff != 8 || w.Inset != 8+26 || w.Neck+2*w.Shoulder != 106 {
		t.Errorf("%+v: printed 174, at each side 8 and 26, 106 left", w)
	}
	if h.Underarm != 152 || h.Armhole != 64+40 {
		t.Errorf("%d rows up to the underarm and %d above it, printed 152 and 64 + 40", h.Underarm, h.Armhole)
	}
	e := edge(t, p, garment.ArmholeEdge)
	if e.Stitches != 26 || e.Rows != 64 {
		t.Errorf("%d stitches over %d rows, printed 26 over 64", e.Stitches, e.Rows)
	}
	if last := e.Schedule[len(e.Schedule)-1].Row; last > 64 {
		t.Errorf("shaped up to row %d of 64", last)
	}
}
