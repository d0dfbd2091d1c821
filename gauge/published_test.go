package gauge_test

import (
	"testing"

	"example.com/walewise/gauge"
)

const (
	handbook  = "knitting handbook, English edition, zanotowane.pl/713/7886"
	ownDesign = "designyourownsweater, Set-in sleeves"
	ownSleeve = "designyourownsweater, Sleeve"
	perfect   = "Knit perfect, knittingmagic.biz guide-8"
	convert   = "cara4webshopping.com, Convert patterns"
	practice  = "common practice, no source"
)

// The whole numbers of published worked examples, with the gauges and the lengths in
// the units printed there.
func TestPublishedCounts(t *testing.T) {
	nearest, downToEven := gauge.Rounding{}, gauge.Even(gauge.Down)
	for _, c := range []struct {
		stitches, rows, over string
		length               string
		ofRows               bool
		exact                string
		rule                 gauge.Rounding
		whole                int
		source               string
	}{
		{"22", "30", "10 cm", "54 cm", false, "118.8", nearest, 119, handbook},
		{"22", "30", "10 cm", "58 cm", false, "127.6", nearest, 128, handbook},
		{"22", "30", "10 cm", "48 cm", false, "105.6", nearest, 106, handbook},
		{"22", "30", "10 cm", "52 cm", false, "114.4", nearest, 114, handbook},
		{"28", "40", "10 cm", "62 cm", false, "173.6", nearest, 174, ownDesign},
		{"28", "40", "10 cm", "38 cm", true, "152", nearest, 152, ownDesign},
		{"28", "40", "10 cm", "26 cm", false, "72.8", downToEven, 72, ownSleeve},
		{"28", "40", "10 cm", "56 cm", false, "156.8", downToEven, 156, ownSleeve},
		{"28", "40", "10 cm", "49 cm", true, "196", nearest, 196, ownSleeve},
		{"28", "40", "10 cm", "5 cm", true, "20", nearest, 20, ownSleeve},
		{"28", "40", "10 cm", "44 cm", true, "176", nearest, 176, ownSleeve},
		{"21", "34", "10 cm", "20 cm", true, "68", nearest, 68, "knittingkonrad.com, 9 Apr 2014"},
		{"5.5", "7", "1 in", "9 in", false, "49.5", nearest, 50, "knittingunplugged.com, 23 May 2016"},
		{"5.5", "7", "1 in", "13 in", false, "71.5", nearest, 72, "knittingunplugged.com, 23 May 2016"},
		{"4", "3", "1 in", "20 in", false, "80", nearest, 80, "kniftyred.blogspot.com, 18 Sep 2008"},
		{"4", "3", "1 in", "22 in", true, "66", nearest, 66, "kniftyred.blogspot.com, 18 Sep 2008"},
		{"18", "24", "4 in", "1 in", false, "4.5", nearest, 5, perfect},
		{"18", "24", "4 in", "1 in", true, "6", nearest, 6, perfect},
		{"18", "24", "10 cm", "1 cm", false, "1.8", nearest, 2, perfect},
		{"18", "24", "10 cm", "1 cm", true, "2.4", nearest, 2, perfect},
		{"18", "24", "4 in", "19 in", true, "114", nearest, 114, perfect},
		{"3.75", "5.75", "1 in", "4 in", true, "23", nearest, 23, practice},
		{"3.75", "5.75", "1 in", "9 in", false, "33.75", nearest, 34, practice},
		{"3.75", "5.75", "1 in", "1 in", true, "5.75", gauge.Even(gauge.Nearest), 6, practice},
	} {
		g := newGauge(c.stitches, c.rows, c.over)
		count := g.Stitches(length(c.length))
		if c.ofRows {
			count = g.Rows(length(c.length))
		}
		if count.String() != c.exact || !count.Decimal(30).Equal(number(c.exact)) {
			t.Errorf("%v, %s: got exactly %#v, want %s (%s)", g, c.length, count, c.exact, c.source)
		}
		if got := count.Round(c.rule); got != c.whole {
			t.Errorf("%v, %s, %v: got %d, want %d (%s)", g, c.length, c.rule, got, c.whole, c.source)
		}
	}
}

// The counts of the published sweater and sleeve, carried to the last printed line.
func TestPublishedSums(t *testing.T) {
	sleeve := newGauge("5.5", "7", "1 in")
	for _, c := range []struct {
		name      string
		got, want int
		source    string
	}{
		{"first width with selvedge", newGauge("22", "30", "10 cm").Stitches(length("54 cm")).Round(gauge.Rounding{}) + 2, 121, handbook},
		{"second width with selvedge", newGauge("22", "30", "10 cm").Stitches(length("58 cm")).Round(gauge.Rounding{}) + 2, 130, handbook},
		{"third width with selvedge", newGauge("22", "30", "10 cm").Stitches(length("48 cm")).Round(gauge.Rounding{}) + 2, 108, handbook},
		{"fourth width, 6 more for a loose rib", newGauge("22", "30", "10 cm").Stitches(length("52 cm")).Round(gauge.Rounding{}) + 6, 120, handbook},
		{
			"increases on each side",
			(sleeve.Stitches(length("13 in")).Round(gauge.Rounding{}) - sleeve.Stitches(length("9 in")).Round(gauge.Rounding{})) / 2,
			11, "knittingunplugged.com, 23 May 2016, computed from its counts",
		},
	} {
		if c.got != c.want {
			t.Errorf("%s: got %d, want %d (%s)", c.name, c.got, c.want, c.source)
		}
	}
	// Spine to wrist less half the body width, drop shoulder (designyourownsweater, Sleeve).
	if twice := length("80 cm").Mul(2).Sub(length("62 cm")); !twice.Equal(length("49 cm").Mul(2)) {
		t.Errorf("sleeve length: got half of %v, want 49 cm", twice)
	}
	if !length("4 in").Equal(length("10.16 cm")) { // international inch, 1959
		t.Error("4 in are 10.16 cm")
	}
}

// A pattern knitted at a gauge that is not its own: as many stitches of the other gauge as
// make the same width.
func TestPublishedConversions(t *testing.T) {
	const (
		sewing = "sewwhatyvette.com"
		// The source takes 29.5 / 28 as 1.05, which makes 147; unrounded it is computed here.
		sewingExact = sewing + ", unrounded"
		// Computed from its factor.
		convertMore = convert + ", by its factor"
	)
	rows, down, up := true, gauge.Rounding{Direction: gauge.Down}, gauge.Even(gauge.Up)
	for _, c := range []struct {
		pattern, own gauge.Gauge
		count        int
		ofRows       bool
		exact        string
		rule         gauge.Rounding
		want         int
		source       string
	}{
		{newGauge("28", "40", "4 in"), newGauge("29.5", "40", "4 in"), 140, false, "147.5", up, 148, sewingExact},
		{newGauge("100", "40", "4 in"), newGauge("105", "40", "4 in"), 140, false, "147", up, 148, sewing},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 100, false, "112.5", gauge.Rounding{}, 113, convert},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 100, false, "112.5", down, 112, convert},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 7, false, "7.875", gauge.Rounding{}, 8, convert},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 24, false, "27", gauge.Rounding{}, 27, convertMore},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 1, false, "1.125", gauge.Rounding{}, 1, convert},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 10, rows, "8", gauge.Rounding{}, 8, convert},
		{newGauge("8", "15", "1 in"), newGauge("9", "12", "1 in"), 1, rows, "0.8", gauge.Rounding{}, 1, convert},
	} {
		got := c.own.StitchesFor(c.pattern, c.count)
		if c.ofRows {
			got = c.own.RowsFor(c.pattern, c.count)
		}
		if got.String() != c.exact || !got.Decimal(30).Equal(number(c.exact)) {
			t.Errorf("%d of %v by %v: got exactly %#v, want %s (%s)", c.count, c.pattern, c.own, got, c.exact, c.source)
		}
		if n := got.Round(c.rule); n != c.want {
			t.Errorf("%d of %v by %v: got %v, rounded to %d, want %d (%s)", c.count, c.pattern, c.own, got, n, c.want, c.source)
		}
	}
}

// Half a stitch in 40 is 1.25 %, in 10 it is 5 % (common practice, no source).
func TestTolerance(t *testing.T) {
	for _, c := range []struct{ stitches, rows, over, finished, width, height string }{
		{"40", "40", "20 cm", "100 cm", "1.25 cm", "1.25 cm"},
		{"10", "10", "5 cm", "100 cm", "5 cm", "5 cm"},
		{"40", "10", "20 cm", "-100 cm", "1.25 cm", "5 cm"},
		{"22", "30", "10 cm", "0 cm", "0 cm", "0 cm"},
		{"30", "30", "10 cm", "1 mm", "0.016667 mm", "0.016667 mm"}, // rounded to a millionth of a millimetre
	} {
		tolerance := newGauge(c.stitches, c.rows, c.over).Tolerance()
		width, height := tolerance.Width(length(c.finished)), tolerance.Height(length(c.finished))
		if !width.Equal(length(c.width)) || !height.Equal(length(c.height)) {
			t.Errorf("%s stitches, %s rows, %s: got %v and %v, want %s and %s", c.stitches, c.rows, c.finished, width, height, c.width, c.height)
		}
	}
}
