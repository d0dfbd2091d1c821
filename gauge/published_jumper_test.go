package gauge_test

import (
	"testing"

	"example.com/walewise/gauge"
)

// adding returns the sum of lengths; those taken away have a minus.
func adding(lengths ...string) gauge.Length {
	var sum gauge.Length
	for _, l := range lengths {
		sum = sum.Add(length(l))
	}
	return sum
}

// Counts of published jumpers whose lengths are made of several. Of a gauge, what is not
// printed and does not count is 1.
func TestPublishedCountsOfSeveralLengths(t *testing.T) {
	const (
		makingItFit = "Interweave, Making it fit: waist shaping"
		hemToHip    = "Interweave / Knitting Daily, Waist shaping: the math, hem to hip"
		hipToWaist  = "Interweave / Knitting Daily, Waist shaping: from hip to waist"
		capOf66     = "slippedstitches.wordpress.com, Mar 2014"
		capOf72     = "knittingunplugged.com, 23 May 2016, computed from its lengths"
		percentages = "Zimmermann's percentages for 250 stitches, heleninhobart.blogspot.com, computed"
		ribs        = "Zimmermann's percentages, diydiy.info"
	)
	waist, setIn := newGauge("7", "13", "1 in"), newGauge("28", "40", "10 cm")
	five := newGauge("5", "1", "1 in")
	percent := func(n int, of string) gauge.Count { return five.Stitches(length(of).Mul(n)).Div(100) }
	for _, c := range []struct {
		what   string
		count  gauge.Count
		exact  string
		rule   gauge.Rounding
		whole  int // 0: not printed
		source string
	}{
		{
			"sleeve less plain inches and cuff", newGauge("1", "6", "1 in").Rows(adding("18 in", "-1 in", "-1 in", "-2 in")),
			"84", gauge.Rounding{}, 84, "papermoonknits.com, Sleeve magic",
		},
		{
			"rounds less those already worked", newGauge("1", "6", "1 in").Rows(length("12.5 in")).Sub(gauge.Whole(17)),
			"58", gauge.Rounding{}, 58, makingItFit,
		},
		{"hip and ease", waist.Stitches(adding("44 in", "1.5 in")), "318.5", gauge.Rounding{}, 319, hemToHip},
		{"hem to hip", waist.Rows(length("2 in")), "26", gauge.Rounding{}, 26, hemToHip},
		{
			"hip less waist, both with ease", waist.Stitches(adding("44 in", "1.5 in", "-36.5 in", "-1.5 in")),
			"52.5", gauge.Rounding{}, 0, hipToWaist,
		},
		{
			"slope of a shoulder", newGauge("1", "7", "1 in").Rows(length("0.75 in")),
			"5.25", gauge.Even(gauge.Up), 6, "knittingrobin.blogspot.com, 16 Sep 2013",
		},
		{"armhole, at once", setIn.Stitches(length("3 cm")), "8.4", gauge.Rounding{}, 8, ownDesign},
		{"armhole, one by one", setIn.Stitches(length("9 cm")), "25.2", gauge.Even(gauge.Nearest), 26, ownDesign},
		{"armhole, shaped rows", setIn.Rows(length("16 cm")), "64", gauge.Rounding{}, 64, ownDesign},
		{"armhole, straight rows", setIn.Rows(adding("26 cm", "-16 cm")), "40", gauge.Rounding{}, 40, ownDesign},
		{
			"cap, an allowance below and above", newGauge("1", "6.5", "1 in").Rows(adding("8.5 in", "-1.5 in", "-1.5 in")),
			"35.75", gauge.Rounding{}, 36, capOf66,
		},
		{
			// The same cap by the worksheet: less 1.5 in and half the top, doubled and halved.
			"cap, less half its top", newGauge("1", "6.5", "1 in").Rows(adding("8.5 in", "-1.5 in").Mul(2).Sub(length("3 in"))).Div(2),
			"35.75", gauge.Rounding{}, 36, "30daysweater.com, day 24",
		},
		{"cap", newGauge("5.5", "7", "1 in").Rows(length("5.5 in")), "38.5", gauge.Rounding{}, 0, capOf72},
		{"top of the cap", newGauge("5.5", "7", "1 in").Stitches(length("3 in")), "16.5", gauge.Rounding{}, 0, capOf72},
		{"wrist", percent(20, "50 in"), "50", gauge.Rounding{}, 50, percentages},
		{"upper arm", percent(33, "50 in"), "82.5", gauge.Rounding{}, 0, percentages},
		{"underarm", percent(8, "50 in"), "20", gauge.Rounding{}, 20, percentages},
		{"neck", percent(40, "50 in"), "100", gauge.Rounding{}, 100, percentages},
		{"joined yoke", percent(133, "50 in"), "332.5", gauge.Rounding{}, 0, percentages},
		{"hem", percent(90, "42 in"), "189", gauge.Rounding{}, 189, ribs},
		{"hem in ribs of 2 and 2", percent(90, "42 in"), "189", gauge.Rounding{Multiple: 4}, 188, ribs},
		{"hem in ribs of 2 and 2, and 2 more", percent(90, "42 in"), "189", gauge.Rounding{Multiple: 4, Plus: 2}, 190, ribs},
	} {
		if !c.count.Decimal(30).Equal(number(c.exact)) {
			t.Errorf("%s: got exactly %#v, printed %s (%s)", c.what, c.count, c.exact, c.source)
		}
		if got := c.count.Round(c.rule); c.whole != 0 && got != c.whole {
			t.Errorf("%s, %v: got %d, printed %d (%s)", c.what, c.rule, got, c.whole, c.source)
		}
	}
}

// How wide published pieces are, from their stitches, to half of the last place printed.
// The rows are not printed and do not count.
func TestPublishedWidths(t *testing.T) {
	const (
		sleeveless = "Handbook of Wool Knitting and Crochet, 1918, Red Cross sleeveless sweater, computed from 11 stitches to 2 inches"
		winterGirl = "Handbook of Wool Knitting and Crochet, 1918, Costume for the winter-girl"
	)
	hundred := newGauge("100", "100", "20 in")
	for _, c := range []struct {
		gauge    gauge.Gauge
		stitches int
		want     string
		within   string
		source   string
	}{
		{newGauge("11", "11", "2 in"), 80, "14.55 in", "0.005 in", sleeveless},
		{hundred, 76, "15 in", "0.5 in", winterGirl},
		{hundred, 60, "12 in", "0.5 in", winterGirl},
	} {
		if off := c.gauge.Width(c.stitches).Sub(length(c.want)).Abs(); off.Cmp(length(c.within)) > 0 {
			t.Errorf("%d stitches are %v off %s (%s)", c.stitches, off, c.want, c.source)
		}
	}
}

// Published divisions of a row whose parts are no whole numbers.
func TestPublishedDivisions(t *testing.T) {
	setIn := newGauge("28", "40", "10 cm")
	third := gauge.Whole(90).Div(3)
	for _, c := range []struct {
		what   string
		total  int
		parts  []gauge.Part
		want   []int
		source string
	}{
		{
			// 8 and 26 are as far from 8.4 and 25.2 as 9 and 25: the first is the smaller.
			"armhole of 12 cm, 3 cm of it at once", setIn.Stitches(length("12 cm")).Round(gauge.Rounding{}),
			[]gauge.Part{
				{Name: "at once", Want: setIn.Stitches(length("3 cm"))},
				{Name: "one by one", Want: setIn.Stitches(length("9 cm"))},
			},
			[]int{8, 26}, ownDesign,
		},
		{
			"raglan back in thirds", 90,
			[]gauge.Part{{Name: "slope", Want: third, Times: 2}, {Name: "middle", Want: third, Grid: gauge.SameParity(90, gauge.Nearest)}},
			[]int{30, 30}, "yarnsville.com, women",
		},
	} {
		got, err := gauge.RoundTogether(c.total, c.parts)
		if err != nil {
			t.Errorf("%s: %v (%s)", c.what, err, c.source)
			continue
		}
		for i, part := range got {
			if part.Whole != c.want[i] {
				t.Errorf("%s: %s: got %d, printed %d (%s)", c.what, part.Name, part.Whole, c.want[i], c.source)
			}
		}
	}
}
