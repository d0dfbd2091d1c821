package garment_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// setInSleeve is the spec of a sleeve with a cap 3 in wide at the top, for an armhole 8.5 in
// deep. The rest of the front is chosen here: finished for a chest of 36 in and standard
// ease, 2 in taken off at each armhole.
func setInSleeve(g gauge.Gauge, top, atOnce int) garment.Spec {
	return garment.Spec{
		Units:    gauge.Inch,
		Gauge:    g,
		Body:     garment.Body{Width: length("19 in"), Length: length("14 in")},
		Armhole:  garment.Armhole{Depth: length("8.5 in"), Inset: length("2 in"), BindOff: garment.Exactly(g.Width(atOnce))},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: length("7 in"), Depth: length("3 in")},
		Shoulder: garment.Shoulder{Drop: length("1 in")},
		Sleeve: &garment.SleeveSpec{
			Length: length("17 in"), Cuff: length("9 in"), Top: g.Width(top), Cap: garment.SetInCap, Flat: given("3 in"),
		},
	}
}

func sleeve(t fataler, s garment.Spec) garment.Piece {
	t.Helper()
	p, err := garment.Sleeve(s, shaping.Right)
	if err != nil {
		t.Fatalf("sleeve: %v", err)
	}
	return p
}

// The published rule takes an allowance of 3 in off the depth of the armhole, or 1.5 in and
// half the top; for 8.5 in and 3 in both say 5.5 in. It does not ask how much goes at the
// armhole, by which alone the solved heights, where the edge is as long as the armhole's,
// spread over about an inch: they are to be as near to the rule as that, and with the scanned
// handbook (zanotowane.pl/713/7884) at least 2 in lower than the armhole. The stitches agree.
func TestPublishedCapHeights(t *testing.T) {
	const (
		capOf66 = "slippedstitches.wordpress.com, March 2014, and the worksheet of 30daysweater.com, day 24"
		capOf72 = "knittingunplugged.com, 23 May 2016"
	)
	within := length("1 in")
	for _, c := range []struct {
		source  string
		gauge   gauge.Gauge
		top     int // stitches
		atOnce  int // at each underarm
		flat    int // stitches at the top
		cutDown int // stitches that go at each side
		rows    string
	}{
		// 66 - 10 - 8 - 16 = 32 are decreased, of which 10 go on the first two rows. The
		// stitch gauge is that of 16 stitches on 3 in.
		{capOf66, newGauge("16", "19.5", "3 in"), 66, 5, 16, (66 - 16) / 2, "35.75"},
		// 13 in are 71.5 stitches, printed 72; 3 in are 16.5, even as the sleeve is. At once
		// go 1 in here.
		{capOf72, newGauge("5.5", "7", "1 in"), 72, 6, 16, (72 - 16) / 2, "38.5"},
	} {
		rule := length("8.5 in").Sub(length("3 in"))
		if got := c.gauge.Rows(rule).Decimal(2); !got.Equal(decimal.RequireFromString(c.rows)) {
			t.Errorf("the rule says %v rows, printed %s (%s)", got, c.rows, c.source)
		}
		p := sleeve(t, setInSleeve(c.gauge, c.top, c.atOnce))
		w := p.Widths
		if w.Body != c.top || w.Flat != c.flat || w.BindOff != c.atOnce || w.Inset != c.cutDown {
			t.Errorf("%+v: want %d stitches, %d of them at the top (%s)", w, c.top, c.flat, c.source)
		}
		height := c.gauge.Height(p.Heights.Cap)
		off := height.Sub(rule)
		t.Logf("cap of %d rows, %s; the rule says %s: %s more (%s)", p.Heights.Cap, height.Format(gauge.Inch, 2), rule.Format(gauge.Inch, 2), off.Format(gauge.Inch, 2), c.source)
		if off.Abs().Cmp(within) > 0 {
			t.Errorf("cap of %s, by the rule %s: more than %v apart (%s)", height.Format(gauge.Inch, 2), rule.Format(gauge.Inch, 2), within, c.source)
		}
		if length("8.5 in").Sub(height).Cmp(length("2 in")) < 0 {
			t.Errorf("a cap of %v is hardly lower than the armhole", height.Format(gauge.Inch, 2))
		}
	}
}

// How much goes at the armhole matters for the cap: what the rule leaves out.
func TestCapHeightDependsOnInset(t *testing.T) {
	g := newGauge("5.5", "7", "1 in")
	var heights []gauge.Length
	for _, inset := range []string{"1.5 in", "2 in", "2.5 in", "3 in"} {
		s := setInSleeve(g, 72, 6)
		s.Armhole.Inset = length(inset)
		heights = append(heights, g.Height(sleeve(t, s).Heights.Cap))
	}
	spread := heights[len(heights)-1].Sub(heights[0])
	if off := spread.Sub(length("1 in")).Abs(); off.Cmp(length("0.3 in")) > 0 {
		t.Errorf("heights %v: spread over %s, not about an inch", heights, spread.Format(gauge.Inch, 2))
	}
}

// A tighter sleeve has a deeper cap, a looser one a shallower cap (Set-in sleeves by the
// numbers, knitty.com, Winter 2005): the height that is drawn falls with every pair of
// stitches, and the rows knitted never rise. Over a quarter of the range they fall.
func TestTighterSleeveHasDeeperCap(t *testing.T) {
	for _, g := range threeGauges() {
		s := adult()
		s.Gauge = g
		var drawn []gauge.Length
		var rows []int
		for top := g.Stitches(length("28 cm")).Round(gauge.Even(gauge.Nearest)); g.Width(top).Cmp(length("42 cm")) < 0; top += 2 {
			s.Sleeve = &garment.SleeveSpec{Length: length("44 cm"), Cuff: length("22 cm"), Top: g.Width(top), Cap: garment.SetInCap, Flat: given("8 cm")}
			p := sleeve(t, s)
			drawn, rows = append(drawn, size(t, p, "cap").Asked), append(rows, p.Heights.Cap)
		}
		quarter := len(rows) / 4
		for i := 1; i < len(rows); i++ {
			if drawn[i].Cmp(drawn[i-1]) >= 0 || rows[i] > rows[i-1] {
				t.Errorf("%v, pair %d: drawn %v, %d rows; of the tighter sleeve %v, %d rows", g, i, drawn[i], rows[i], drawn[i-1], rows[i-1])
			}
			if i >= quarter && rows[i] >= rows[i-quarter] {
				t.Errorf("%v, pair %d: %d rows, of a tighter sleeve %d", g, i, rows[i], rows[i-quarter])
			}
		}
		t.Logf("%v: %v", g, rows)
	}
}
