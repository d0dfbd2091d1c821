package garment_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// A front planned at a stitch and a row to the centimetre, of which 20 rows are knitted
// when the gauge is found to be another. Every number was worked out by hand. Common
// practice, no source.
//
// As planned: 40 stitches; 30 rows to the underarm, 20 to the tip, 4 of drop: 54 to the
// neck point; the neck 16 wide and 8 deep; shoulders of (40 - 16)/2 = 12.
func TestGoingOnByHand(t *testing.T) {
	planned := front(t, unitGauge(40, 30, 20, 4, 16, 8))
	for _, c := range []struct {
		name          string
		stitches, rws string // to 10 cm
		hem           string // of the spec from there on
		heights       garment.Heights
		neck          int
		shoulder      int
		right         []int // rows of the wales from the tip to the neck, by groups, and how many each
		sides         shaping.Schedule
		warnings      []string
	}{
		{
			// A row is 12.5 mm high. Neck point: 54 cm are 43.2 rows, 43. Drop: 4 cm are 3.2
			// rows, the nearest even number 4. Neck: 8 cm are 6.4 rows, 6, from 37 on. Of the
			// 39 rows left the underarm wants 24 and the armhole 16: one row is too many, and
			// the underarm loses less by it, 1/24 against 1/16: 23 and 16. Tip at 39. The
			// shoulder of 12 in 4/2 + 1 = 3 groups of 4, 2 rows apart: 39, 41, 43.
			"higher rows", "10", "8", "", garment.Heights{Underarm: 23, Armhole: 16, Drop: 4, Neck: 6}, 16, 12,
			[]int{39, 4, 41, 4, 43, 4}, nil, nil,
		},
		{
			// A stitch is 100/11 mm wide. The 40 that are there make 36.4 cm; 44 were wanted.
			// Neck 17.6, shoulders 13.2 each, even and together 40: within one stitch of what
			// is wanted the neck has 18 and the shoulders 13 or more, which is 44; within two
			// 16 and 12, which is 40.
			"narrower stitches", "11", "10", "", garment.Heights{Underarm: 30, Armhole: 20, Drop: 4, Neck: 8}, 16, 12,
			[]int{50, 4, 52, 4, 54, 4}, nil,
			[]string{"The width at the underarm: asked are 40.00 cm, it becomes 36.36 cm: the stitches are on the needles, and without body.hem the sides stay straight."},
		},
		{
			// As before, but the sides may move: 44 stitches, 2 more at each edge, over the
			// 10 rows from 20 to 30. Two steps part them into three distances: 10/3 is 3 and 1
			// over, the longer one last: 3, 3 and 4, so that rows 23 and 26 are shaped. Neck
			// and shoulders are then within a stitch of what is wanted: 18 and 13.
			"narrower stitches, sides that move", "11", "10", "40 cm", garment.Heights{Underarm: 30, Armhole: 20, Drop: 4, Neck: 8}, 18, 13,
			nil, fashioned(1, 23, 26),
			[]string{"The hem: asked are 40.00 cm, it becomes 36.36 cm: it is knitted already."},
		},
	} {
		s := planned.Spec
		s.Gauge = newGauge(c.stitches, c.rws, "10 cm")
		if c.hem != "" {
			s.Body.Hem = length(c.hem)
		}
		made, err := garment.GoOn(planned, 20, s)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if made.Heights != c.heights || made.Widths.Neck != c.neck || made.Widths.Shoulder != c.shoulder {
			t.Errorf("%s: %+v, %+v", c.name, made.Heights, made.Widths)
		}
		outer := heightsFromMiddle(made, shaping.Right)
		slices.Reverse(outer)
		var tips []int
		for i := 0; i < len(c.right); i += 2 {
			tips = append(tips, slices.Repeat(c.right[i:i+1], c.right[i+1])...)
		}
		if c.right != nil && !slices.Equal(outer[:c.shoulder], tips) {
			t.Errorf("%s: the right shoulder's wales are %v rows high, want %v", c.name, outer[:c.shoulder], tips)
		}
		for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
			if diff := cmp.Diff(c.sides, panel(t, made, shaping.Body).Steps(edge)); diff != "" {
				t.Errorf("%s: the %v side (-want +got):\n%s", c.name, edge, diff)
			}
		}
		if diff := cmp.Diff(append([]string{"Rows 1 to 20 are knitted as they were planned before; the rest is planned anew."}, c.warnings...), made.Warnings); diff != "" {
			t.Errorf("%s: warnings (-want +got):\n%s", c.name, diff)
		}
	}
}

// fashioned returns steps of so many stitches at the rows.
func fashioned(stitches int, rows ...int) shaping.Schedule {
	var steps shaping.Schedule
	for _, row := range rows {
		steps = append(steps, shaping.Step{Row: row, Stitches: stitches, Method: shaping.Fashioned})
	}
	return steps
}

// Above the underarm the armholes go on as they were planned, and what comes after them is
// new.
func TestGoingOnAboveTheUnderarm(t *testing.T) {
	planned := front(t, adult())
	s := adult()
	s.Gauge = newGauge("21", "27", "10 cm")
	for _, rows := range []int{108, 111, 120, 150} {
		made, err := garment.GoOn(planned, rows, s)
		if err != nil {
			t.Errorf("from row %d: %v", rows, err)
			continue
		}
		for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
			if diff := cmp.Diff(panel(t, planned, shaping.Body).Steps(edge), panel(t, made, shaping.Body).Steps(edge)); diff != "" {
				t.Errorf("from row %d, %v edge (-planned +gone on):\n%s", rows, edge, diff)
			}
		}
		// 21 cm at 27 rows are 56.7: 57 above the underarm, which lies in row 107.
		if h := made.Heights; h.Underarm != planned.Heights.Underarm || h.Armhole != 57 {
			t.Errorf("from row %d: %+v", rows, h)
		}
		if w := made.Widths; w.Body != planned.Widths.Body || w.Inset != planned.Widths.Inset || 2*(w.Inset+w.Shoulder)+w.Neck != w.Body {
			t.Errorf("from row %d: %+v", rows, w)
		}
		if off := size(t, made, "length"); off.Why == "" || !slices.ContainsFunc(made.Warnings, func(w string) bool { return strings.HasPrefix(w, "The length up to the underarm: ") }) {
			t.Errorf("from row %d: nothing says that the underarm is passed: %v", rows, made.Warnings)
		}
	}
}

// A piece that was gone on with can be gone on with.
func TestGoingOnTwice(t *testing.T) {
	s := adult()
	s.Body.Hem = length("54 cm")
	planned := front(t, s)
	s.Gauge = newGauge("21", "28", "10 cm")
	once, err := garment.GoOn(planned, 40, s)
	if err != nil {
		t.Fatal(err)
	}
	s.Gauge = newGauge("22", "29", "10 cm")
	twice, err := garment.GoOn(once, 80, s)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(once.Work.Rows[:80], twice.Work.Rows[:80]); diff != "" {
		t.Errorf("the rows that are knitted (-before +after):\n%s", diff)
	}
	if diff := cmp.Diff(planned.Work.Rows[:40], twice.Work.Rows[:40]); diff != "" {
		t.Errorf("the rows that were knitted first (-before +after):\n%s", diff)
	}
}

// A sleeve goes on below the underarm, its cap made for the armholes of the new gauge.
func TestGoingOnWithASleeve(t *testing.T) {
	s := adultJumper()
	planned, err := garment.Sleeve(s, shaping.Right)
	if err != nil {
		t.Fatal(err)
	}
	s.Gauge = newGauge("21", "28", "10 cm")
	whole, err := garment.Sleeve(s, shaping.Right)
	if err != nil {
		t.Fatal(err)
	}
	made, err := garment.GoOn(planned, 60, s)
	if err != nil {
		t.Fatal(err)
	}
	if made.Heights.Underarm != whole.Heights.Underarm || size(t, made, "capEdge").Off().Abs().Cmp(length("3 mm")) > 0 {
		t.Errorf("the heights are %+v, from the cast on they would be %+v", made.Heights, whole.Heights)
	}
	if off := size(t, made, "width").Off().Abs(); off.Cmp(made.Gauge.Width(1)) > 0 {
		t.Errorf("the width at the underarm is %v off", off)
	}
	if made.Name() != shaping.RightSleeve {
		t.Errorf("it became a %s", made.Name())
	}
}

// opened is the spec of [unitGauge] with an overlap of 4 cm.
func opened(s garment.Spec) garment.Spec {
	s.Opening = &garment.Opening{Overlap: given("4 cm")}
	return s
}

// Two fronts of the garment of [TestGoingOnByHand], with 4 stitches between them, gone on with
// after 20 rows. Every number was worked out by hand. Common practice, no source.
//
// As planned: (40 - 4)/2 = 18 stitches; the neck begins after row 54 - 8 = 46, and row 47 has
// to start at the outer edge: of the right front at the right, as row 1 does.
func TestGoingOnWithTwoFrontsByHand(t *testing.T) {
	planned, err := bothFronts(opened(unitGauge(40, 30, 20, 4, 16, 8)))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name                 string
		stitches, rws, hem   string
		heights              garment.Heights
		body, neck, shoulder int
		tips                 []int // rows of the groups of the shoulder, from the tip
		group                int   // stitches of each; 0 to leave them
		sides                shaping.Schedule
		warnings             []string
	}{
		{
			// As a front in one piece: underarm 23, armhole 16, drop 4, neck 6. The neck would
			// begin after row 37, and row 38 start at the left. With a row less in the armhole it
			// begins after row 36, row 37 starts at the right, and the tip is at 23 + 15 = 38.
			"higher rows", "10", "8", "", garment.Heights{Underarm: 23, Armhole: 15, Drop: 4, Neck: 6}, 18, 6, 12,
			[]int{38, 40, 42}, 4, nil,
			[]string{"The armhole has a row less than that of the back: row 1 started at the %s, and so the rows from the neck on start at the outer edge."},
		},
		{
			// As a front in one piece: 44 stitches from 40, a neck of 18 and shoulders of 13. Each
			// front has (44 - 4)/2 = 20, of which 2 come at the outer edge, and (18 - 4)/2 = 7 of
			// the neck. 4 cm are 4.4 stitches, to which 4 are near enough.
			"narrower stitches, sides that move", "11", "10", "40 cm", garment.Heights{Underarm: 30, Armhole: 20, Drop: 4, Neck: 8}, 20, 7, 13,
			nil, 0, fashioned(1, 23, 26),
			[]string{"The hem: asked are 18.00 cm, it becomes 16.36 cm: it is knitted already."},
		},
		{
			// A stitch is 100/15 mm wide: the 18 that are there make 12 cm, and the 4 for which
			// they are cast on 2.67 cm; 6 were wanted. The neck wants 24 and the shoulders 18 each,
			// which is 60. Of the ways to make 40, 18 and 11 are off by 7 at most, 16 and 12 by 8,
			// 20 and 10 by 8. Each front has (18 - 4)/2 = 7 of the neck.
			"much narrower stitches", "15", "10", "", garment.Heights{Underarm: 30, Armhole: 20, Drop: 4, Neck: 8}, 18, 7, 11,
			nil, 0, nil,
			[]string{
				"The width at the underarm: asked are 18.00 cm, it becomes 12.00 cm: the stitches are on the needles, and without body.hem the sides stay straight.",
				"Between the fronts: asked are 4.00 cm, it becomes 2.67 cm: the fronts are cast on for it.",
			},
		},
	} {
		for _, p := range []garment.Piece{planned.right, planned.left} {
			s := p.Spec
			s.Gauge = newGauge(c.stitches, c.rws, "10 cm")
			if c.hem != "" {
				s.Body.Hem = length(c.hem)
			}
			made, err := garment.GoOn(p, 20, s)
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
				continue
			}
			w := made.Widths
			if made.Heights != c.heights || w.CastOn != 18 || w.Body != c.body || w.Neck != c.neck || w.Shoulder != c.shoulder || w.Overlap != 4 {
				t.Errorf("%s, %s: %+v, %+v", c.name, p.Name(), made.Heights, w)
			}
			outer := heightsFrom(made, made.Outer())
			for i, tip := range c.tips {
				if got := outer[i*c.group : (i+1)*c.group]; !slices.Equal(got, slices.Repeat([]int{tip}, c.group)) {
					t.Errorf("%s, %s: group %d of the shoulder is %v rows high, want %d", c.name, p.Name(), i+1, got, tip)
				}
			}
			if diff := cmp.Diff(c.sides, panel(t, made, shaping.Body).Steps(made.Outer()).Between(1, c.heights.Underarm)); diff != "" {
				t.Errorf("%s, %s: the side (-want +got):\n%s", c.name, p.Name(), diff)
			}
			want := []string{"Rows 1 to 20 are knitted as they were planned before; the rest is planned anew."}
			for _, says := range c.warnings {
				want = append(want, strings.ReplaceAll(says, "%s", made.Outer().String()))
			}
			if diff := cmp.Diff(want, made.Warnings); diff != "" {
				t.Errorf("%s, %s: warnings (-want +got):\n%s", c.name, p.Name(), diff)
			}
		}
	}
}

// Two fronts that were gone on with go on by the same spec as they are, those whose rows had
// to be turned as well.
func TestTwoFrontsGoOnTwice(t *testing.T) {
	s := adultCardigan()
	s.Body.Hem = length("54 cm")
	planned, err := bothFronts(s)
	if err != nil {
		t.Fatal(err)
	}
	turned := 0
	for _, p := range []garment.Piece{planned.right, planned.left} {
		for _, rows := range []string{"27", "28.5", "29.5", "31", "32.5"} {
			s.Gauge = newGauge("21", rows, "10 cm")
			once, err := garment.GoOn(p, 40, s)
			if err != nil {
				t.Fatal(err)
			}
			if slices.ContainsFunc(once.Warnings, isTurned) {
				turned++
			}
			for _, from := range []int{40, 80, once.Heights.Underarm, once.Heights.Underarm + 3, once.Heights.NeckStart()} {
				twice, err := garment.GoOn(once, from, s)
				if err != nil {
					t.Fatalf("%s, %s rows, from row %d: %v", p.Name(), rows, from, err)
				}
				if diff := cmp.Diff(once.Work, twice.Work); diff != "" {
					t.Errorf("%s, %s rows, from row %d (-once +twice):\n%s", p.Name(), rows, from, diff)
				}
			}
		}
	}
	if turned == 0 {
		t.Error("no rows had to be turned")
	}
}

func TestGoingOnIsRefused(t *testing.T) {
	planned := front(t, adult())
	narrowBed := opened(unitGauge(40, 30, 20, 4, 16, 8))
	narrowBed.Setup.Needles = 30
	two, err := bothFronts(narrowBed)
	if err != nil {
		t.Fatal(err)
	}
	tall, err := bothFronts(opened(unitGauge(40, 60, 20, 4, 16, 8)))
	if err != nil {
		t.Fatal(err)
	}
	waist := func(width string) func(*garment.Spec) {
		return func(s *garment.Spec) { s.Body.Waist = &garment.Waist{Width: length(width), Height: length("50 cm")} }
	}
	wide := func(width string) func(*garment.Spec) {
		return func(s *garment.Spec) { s.Body.Width, s.Body.Hem = length(width), length("40 cm") }
	}
	sleeve, err := garment.Sleeve(adultJumper(), shaping.Left)
	if err != nil {
		t.Fatal(err)
	}
	same := func(*garment.Spec) {}
	shallow := adult()
	shallow.Neck.Depth = length("2 cm")
	sloping, level := front(t, shallow), front(t, unitGauge(40, 30, 20, 4, 16, 2))
	for _, c := range []struct {
		name        string
		piece       garment.Piece
		rows        int
		spoil       func(*garment.Spec)
		field, says string
		kind        error
		cureRows    int
		cure        func(*garment.Spec)
	}{
		{"no piece", garment.Piece{}, 0, same, "piece", "it was not planned and knitted", garment.ErrBegun, 0, nil},
		{"rows below the cast on", planned, -1, same, "rows", "row 0, the cast on, to row 156 of the body can be gone on from; above it the neck is begun", garment.ErrBegun, 0, same},
		{"in the halves", planned, 157, same, "rows", "to row 156", garment.ErrBegun, 156, same},
		{"in the shoulders", sloping, 174, same, "rows", "above it the shoulders are begun", garment.ErrBegun, 168, same},
		{"in a cap", sleeve, 136, same, "rows", "to row 135 of the body can be gone on from; above it the cap is begun", garment.ErrBegun, 135, same},
		{"another place", planned, 50, func(s *garment.Spec) { s.Setup.On = shaping.Hand }, "work.on", "it is knitted bed so far", garment.ErrBegun, 50, same},
		{"the carriage elsewhere", planned, 50, func(s *garment.Spec) { s.Setup.Carriage = shaping.Left }, "work.carriage", "row 1 started at the right", garment.ErrBegun, 50, same},
		{"another cast on", planned, 50, func(s *garment.Spec) { s.Start.Edge = garment.ClosedEdge }, "start.edge", "the cast on is waste", garment.ErrBegun, 50, same},
		{"another armhole", planned, 110, func(s *garment.Spec) { s.Methods.Armhole = garment.By(shaping.BindOff) }, "methods.armhole", "the armholes are begun by bindOff and fashioned", garment.ErrBegun, 110, same},
		{"another armhole in time", planned, 106, func(s *garment.Spec) { s.Methods.Armhole = garment.By(shaping.BindOff) }, "", "", nil, 0, nil},
		{"no sleeve", sleeve, 50, func(s *garment.Spec) { s.Sleeve = nil }, "sleeve", "missing", garment.ErrSpec, 50, same},
		{"too deep a neck", planned, 150, func(s *garment.Spec) { s.Neck.Depth = length("12 cm") }, "neck.depth", "the neck would begin in the rows that are knitted: at most 10.0 cm", garment.ErrFit, 150,
			func(s *garment.Spec) { s.Neck.Depth = length("10.0 cm") }},
		{"a neck among the armholes' steps", planned, 108, func(s *garment.Spec) { s.Neck.Depth = length("23.4 cm") }, "rows", "go on from row 107 or a lower one", garment.ErrBegun, 107,
			func(s *garment.Spec) { s.Neck.Depth = length("23.4 cm") }},
		{"shoulders in what is knitted", level, 48, func(s *garment.Spec) { s.Armhole.Depth = length("17 cm") }, "armhole.depth", "the shoulders would begin in the rows that are knitted: at least 22.0 cm", garment.ErrFit, 48,
			func(s *garment.Spec) { s.Armhole.Depth = length("22 cm") }},
		{"too low an armhole", planned, 110, func(s *garment.Spec) { s.Armhole.Depth, s.Neck.Depth = length("5 cm"), length("2 cm") }, "armhole.depth", "7.4 cm is enough", garment.ErrFit, 110,
			func(s *garment.Spec) { s.Armhole.Depth, s.Neck.Depth = length("7.4 cm"), length("2 cm") }},
		{"in one piece", planned, 50, func(s *garment.Spec) { s.Opening = &garment.Opening{} }, "opening", "the front is begun in one piece: leave it out", garment.ErrBegun, 50, same},
		{"no opening", two.left, 20, func(s *garment.Spec) { s.Opening = nil }, "opening", "missing: the front is begun as one of two: leave it as it was", garment.ErrBegun, 20, same},
		{"in the neck of a front", two.right, 47, same, "rows", "to row 46 of the body can be gone on from; above it the neck is begun", garment.ErrBegun, 46, same},
		{"the carriage of a front", two.right, 20, func(s *garment.Spec) { s.Setup.Carriage = shaping.Left }, "", "", nil, 0, nil},
		{"a neck narrower than the overlap", two.left, 20, func(s *garment.Spec) { s.Neck.Width = length("4 cm") }, "neck.width", "a neck of 4 stitches leaves no stitch in either front beside the 4 between them, for which the fronts are cast on: 8.0 cm is enough", garment.ErrFit, 20,
			func(s *garment.Spec) { s.Neck.Width = length("8 cm") }},
		{"wider than the bed at the right", two.right, 0, wide("60 cm"), "body.width", "28 stitches, cast on over L9-R9, would need 19 needles right of the middle, there are 15: at most 52.0 cm", garment.ErrBed, 0, wide("52 cm")},
		{"wider than the bed at the left", two.left, 0, wide("60 cm"), "body.width", "would need 19 needles left of the middle", garment.ErrBed, 0, wide("52 cm")},
		{"a smaller bed", two.right, 0, func(s *garment.Spec) { s.Setup.Needles = 16 }, "work.needles", "the stitches that are cast on need 9 needles on each side", garment.ErrBegun, 0, func(s *garment.Spec) { s.Setup.Needles = 18 }},
		{"no front at the waist", tall.right, 0, waist("5 cm"), "body.waist.width", "fewer than 12 stitches: at least 13.0 cm", garment.ErrFit, 0, waist("13 cm")},
	} {
		s := c.piece.Spec
		if c.piece.Work.Rows == nil {
			s = adult()
		}
		c.spoil(&s)
		_, err := garment.GoOn(c.piece, c.rows, s)
		if c.kind == nil {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		fault, ok := errors.AsType[*garment.Error](err)
		if !ok || fault.Field != c.field || !strings.Contains(fault.Want, c.says) || !errors.Is(err, c.kind) {
			t.Errorf("%s: %v, want %s: %s", c.name, err, c.field, c.says)
			continue
		}
		if c.cure == nil {
			continue
		}
		s = c.piece.Spec
		c.cure(&s)
		if _, err := garment.GoOn(c.piece, c.cureRows, s); err != nil {
			t.Errorf("%s: what the message names does not work: %v", c.name, err)
		}
	}
}

// An underarm that is passed moves the armholes up, and they begin above what is knitted
// whatever edge goes first: with a neck that begins among their steps one edge goes a row
// before the other.
func TestArmholesBeginAboveWhatIsKnitted(t *testing.T) {
	planned := front(t, adult())
	higher := 0
	for rows := 90; rows <= 107; rows++ {
		for _, high := range []string{"24", "26", "30", "33"} {
			s := adult()
			s.Gauge = newGauge("22", high, "10 cm")
			for above := range 5 { // rows from the underarm to where the neck begins
				made, err := garment.GoOn(planned, rows, s)
				if fault := (*garment.Error)(nil); errors.As(err, &fault) && fault.Field == "neck.depth" {
					continue
				}
				if err != nil {
					t.Errorf("row %d, %s rows, neck %v: %v", rows, high, s.Neck.Depth, err)
					continue
				}
				h := made.Heights
				asked := made.Gauge.Rows(s.Body.Length).Round(gauge.Rounding{})
				if h.Underarm < rows || h.Underarm > max(rows, asked)+1 {
					t.Errorf("row %d, %s rows, neck %v: the underarm is at row %d", rows, high, s.Neck.Depth, h.Underarm)
				}
				if h.Underarm == rows+1 && asked < rows-1 {
					higher++
				}
				s.Neck.Depth = made.Gauge.Height(h.Top() - h.Underarm - above)
			}
		}
	}
	if higher == 0 {
		t.Error("no underarm was put a row above what is knitted")
	}
}
