package garment_test

import (
	"slices"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// TestFrontWorkedByHand plans the outline of [worked.HandFront]: the planner shapes
// the shoulder as the hand did and follows the drawn neck no less closely. Common
// practice, no source.
func TestFrontWorkedByHand(t *testing.T) {
	s := unitGauge(110, 100, 44, 6, 40, 24)
	s.Neck.Flat = given("14 cm")
	p := front(t, s)
	if want := (garment.Widths{CastOn: 110, Body: 110, Shoulder: 35, Neck: 40, Flat: 14}); p.Widths != want {
		t.Fatalf("widths %+v, want %+v", p.Widths, want)
	}
	if want := (garment.Heights{Underarm: 100, Armhole: 44, Drop: 6, Neck: 24}); p.Heights != want {
		t.Fatalf("heights %+v, want %+v", p.Heights, want)
	}
	hand := worked.HandFront()
	const shoulder = 35
	heights := worked.HandFrontHeights()
	want := heights[len(heights)-shoulder:]
	for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
		got := heightsFromMiddle(p, side)
		if got = got[len(got)-shoulder:]; !slices.Equal(got, want) {
			t.Errorf("%v shoulder %v, by hand %v", side, got, want)
		}
	}
	if got := panel(t, p, shaping.RightHalf).Right; !slices.Equal(got, hand[1].Right) {
		t.Errorf("shoulder %v, by hand %v", got, hand[1].Right)
	}
	byHand := neckArea(t, 13, 24, shaping.Hold, hand[1].Left.Shifted(-126))
	planned := neckArea(t, 13, 24, shaping.Hold, panel(t, p, shaping.RightHalf).Left.Shifted(-126))
	t.Logf("neck: planned %v, area %.3f; by hand %v, area %.3f", sizes(panel(t, p, shaping.RightHalf).Left), planned, sizes(hand[1].Left), byHand)
	if planned >= byHand {
		t.Errorf("area at the neck %v, by hand %v", planned, byHand)
	}
}

// neckArea returns the area in stitch-rows between a schedule at the neck of a right
// half that starts at the right, and a quarter ellipse.
func neckArea(t *testing.T, stitches, rows int, method shaping.Method, steps shaping.Schedule) float64 {
	t.Helper()
	drawn, err := curve.QuarterEllipse(length("1 cm").Mul(stitches), length("1 cm").Mul(rows))
	if err != nil {
		t.Fatal(err)
	}
	m, err := curve.Measure(drawn, stitches, rows, shaping.RulesFor(method, shaping.Left, shaping.Right, shaping.Bed), steps)
	if err != nil {
		t.Fatal(err)
	}
	return m.Area
}

// TestPublishedNecks plans two necks of 32 stitches and compares them with what a
// knitting handbook prints for them (English edition, zanotowane.pl/713/7786; title
// page not seen). It draws no outline. Assumed here are quarter ellipses, 16 rows
// high at the front and 6 at the back, at one stitch and one row to the centimetre,
// bound off. The stitches at each side agree, and the planned neck is no further from
// the ellipse than the printed one; that of the back is the same.
func TestPublishedNecks(t *testing.T) {
	for _, test := range []struct {
		name         string
		centre, rows int
		printed      []int // each side, every other row
	}{
		{"front", 12, 16, []int{3, 2, 2, 1, 1, 1}}, // 3 once, 2 twice, 1 three times
		{"back", 20, 6, []int{4, 2}},               // 4 once, 2 once
	} {
		t.Run(test.name, func(t *testing.T) {
			s := unitGauge(92, 60, 30, 0, 32, test.rows)
			s.Neck.Flat = gaugeLength(test.centre)
			s.Methods.Neck = garment.By(shaping.BindOff)
			p := front(t, s)
			if p.Widths.Neck != 32 || p.Widths.Flat != test.centre || p.Heights.Neck != test.rows {
				t.Fatalf("widths %+v, heights %+v", p.Widths, p.Heights)
			}
			var printed shaping.Schedule
			side := 0
			for i, n := range test.printed {
				printed = append(printed, shaping.Step{Row: 2 + 2*i, Stitches: -n, Method: shaping.BindOff})
				side += n
			}
			half := panel(t, p, shaping.RightHalf)
			planned := half.Left.Shifted(-p.Heights.NeckStart())
			gone := 0
			for _, n := range sizes(planned) {
				gone += n
			}
			if gone != side || 2*side+test.centre != 32 {
				t.Errorf("%d stitches go at each side, printed %d", gone, side)
			}
			got, want := neckArea(t, side, test.rows, shaping.BindOff, planned), neckArea(t, side, test.rows, shaping.BindOff, printed)
			t.Logf("planned %v, area %.3f; printed %v, area %.3f", sizes(planned), got, test.printed, want)
			if got > want {
				t.Errorf("area %v, of the printed neck %v", got, want)
			}
		})
	}
}

func gaugeLength(n int) garment.Optional { return garment.Exactly(length("1 cm").Mul(n)) }

// TestPublishedShoulders: the shoulders of eight sizes in four steps. The Knitter,
// 20 June 2017, "1940s-inspired sweater" (pressreader.com): stitches across, stitches
// left for the neck, and the steps of each shoulder.
func TestPublishedShoulders(t *testing.T) {
	for _, test := range []struct {
		across, neck int
		groups       []int
	}{
		{91, 45, []int{5, 6, 6, 6}},
		{97, 45, []int{6, 6, 7, 7}},
		{101, 45, []int{7, 7, 7, 7}},
		{103, 47, []int{7, 7, 7, 7}},
		{107, 47, []int{7, 7, 8, 8}},
		{113, 47, []int{8, 8, 8, 9}},
		{115, 49, []int{8, 8, 8, 9}},
		{119, 49, []int{8, 9, 9, 9}},
	} {
		for _, method := range []shaping.Method{shaping.Hold, shaping.BindOff} {
			s := unitGauge(test.across, 60, 30, 6, test.neck, 20)
			s.Methods.Shoulder = garment.By(method)
			if got := shoulderGroups(t, front(t, s)); !slices.Equal(got, test.groups) {
				t.Errorf("%d across, %v: groups %v, printed %v", test.across, method, got, test.groups)
			}
		}
	}
}

// TestPublishedCounts: what others cast on and how many rows they knit.
func TestPublishedCounts(t *testing.T) {
	metric, inches := newGauge("22", "30", "10 cm"), newGauge("5.5", "7", "1 in")
	for _, test := range []struct {
		source                 string
		gauge                  gauge.Gauge
		width, length, armhole string
		seam                   int
		castOn, underarm, up   int // 0: not printed
	}{
		// Knitting handbook, English edition (zanotowane.pl/713/7886; title page not
		// seen): widths and two selvedge stitches.
		{"handbook", metric, "54 cm", "40 cm", "20 cm", 1, 121, 0, 0},
		{"handbook", metric, "58 cm", "40 cm", "20 cm", 1, 130, 0, 0},
		{"handbook", metric, "48 cm", "40 cm", "20 cm", 1, 108, 0, 0},
		{"handbook", metric, "52 cm", "40 cm", "20 cm", 0, 114, 0, 0},
		// designyourownsweater, "Set-in sleeves": 62 cm wide, 64 cm long, armhole 26 cm.
		{"set-in sleeves", newGauge("28", "40", "10 cm"), "62 cm", "38 cm", "26 cm", 0, 174, 152, 104},
		// knittingkonrad.com, 9 April 2014: armhole depth 20 cm.
		{"armhole", newGauge("21", "34", "10 cm"), "50 cm", "40 cm", "20 cm", 0, 105, 136, 68},
		// knittingunplugged.com, 23 May 2016: 9 in and 13 in.
		{"9 in", inches, "9 in", "12 in", "6 in", 0, 50, 0, 0},
		{"13 in", inches, "13 in", "12 in", "6 in", 0, 72, 0, 0},
		// kniftyred.blogspot.com, 18 September 2008: 20 by 22 in.
		{"20 by 22 in", newGauge("4", "3", "1 in"), "20 in", "22 in", "8 in", 0, 80, 66, 24},
		// "Knit perfect", knittingmagic.biz: 18 stitches and 24 rows over 4 in, 19 in are 114 rows.
		{"19 in", newGauge("18", "24", "4 in"), "20 in", "19 in", "8 in", 0, 90, 114, 48},
	} {
		s := garment.Spec{
			Gauge:   test.gauge,
			Seam:    garment.Seam{Stitches: test.seam},
			Body:    garment.Body{Width: length(test.width), Length: length(test.length)},
			Armhole: garment.Armhole{Depth: length(test.armhole)},
			Neck:    garment.Neck{Shape: garment.RoundNeck, Width: length("4 in"), Depth: length("3 in")},
			Setup:   garment.Setup{Needles: 400},
		}
		p := front(t, s)
		if got := p.Work.Ledger.CastOn; got != test.castOn {
			t.Errorf("%s: %s are %d stitches, printed %d", test.source, test.width, got, test.castOn)
		}
		if test.underarm != 0 && (p.Heights.Underarm != test.underarm || p.Heights.Armhole != test.up) {
			t.Errorf("%s: %+v, printed %d and %d", test.source, p.Heights, test.underarm, test.up)
		}
	}
}

// TestParityIsReported: what the sizes say where odd and even force a stitch.
func TestParityIsReported(t *testing.T) {
	p := front(t, unitGauge(91, 60, 30, 6, 46, 19))
	for name, want := range map[string]string{
		"width": "", "neckWidth": "odd, as the body's 91 stitches are", "neckDepth": "even, so that a half ends at its outer edge", "drop": "",
	} {
		if got := size(t, p, name); got.Why != want {
			t.Errorf("%s: %d %s, why %q, want %q", name, got.Count, got.Counted, got.Why, want)
		}
	}
}
