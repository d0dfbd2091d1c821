package garment_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// fronts is a right and a left front.
type fronts struct{ right, left garment.Piece }

func bothFronts(s garment.Spec) (fronts, error) {
	right, left, err := garment.Fronts(s)
	return fronts{right, left}, err
}

// adultCardigan is the spec of [adult] with an opening.
func adultCardigan() garment.Spec {
	s := adult()
	s.Opening = &garment.Opening{Overlap: given("3 cm")}
	return s
}

func overlapping(overlap string) change {
	return func(s *garment.Spec) { s.Opening = &garment.Opening{Overlap: given(overlap)} }
}

func TestFrontsRefusals(t *testing.T) {
	checkRefusals(t, []refused{
		{func(s *garment.Spec) { s.Opening = nil }, "opening: missing: give it, if only as {}, or plan a front in one piece", "opening", garment.ErrSpec, []change{
			func(s *garment.Spec) { s.Opening = &garment.Opening{} },
		}},
		{overlapping("-1 mm"), "opening.overlap -0.1 cm: 0 or a length above it is needed", "opening.overlap", garment.ErrSpec, []change{overlapping("0 cm")}},
		{overlapping("1001 cm"), "opening.overlap 1001 cm: at most 1000 cm", "opening.overlap", garment.ErrSpec, nil},
		{overlapping("18 cm"), "opening.overlap 18 cm: the bands would cover the whole neck of 18 cm: at most 17.2 cm", "opening.overlap", garment.ErrFit, []change{overlapping("17.2 cm")}},
		{
			func(s *garment.Spec) {
				s.Opening, s.Band = &garment.Opening{}, &garment.BandSpec{Height: length("20 cm")}
			},
			"opening.overlap 20 cm: the bands would cover the whole neck of 18 cm: at most 17.2 cm (left out, it is band.height)", "opening.overlap", garment.ErrFit,
			[]change{overlapping("17.2 cm"), func(s *garment.Spec) { s.Band = &garment.BandSpec{Height: length("17.2 cm")} }},
		},
		{
			func(s *garment.Spec) { s.Body.Width, s.Neck.Width = length("50.5 cm"), length("0.4 cm") },
			"neck.width 0.4 cm: a neck of 1 stitch cannot be parted into two fronts: at least 1.4 cm", "neck.width", garment.ErrFit, []change{
				both(func(s *garment.Spec) { s.Neck.Width = length("1.4 cm") }, overlapping("0 cm")),
			},
		},
		{
			func(s *garment.Spec) { s.Body.Hem = length("5 cm") },
			"body.hem 5 cm: fewer than 14 stitches: at least 6.9 cm", "body.hem", garment.ErrFit, nil,
		},
		{
			func(s *garment.Spec) { s.Setup.Needles = 50 },
			"body.width 50 cm: 53 stitches need 27 needles on each side of the middle, the bed has 25: 4 needles are missing; the widest front that fits is 50 stitches, 47.2 cm with the other one and the overlap", "body.width", garment.ErrBed,
			[]change{func(s *garment.Spec) { s.Body.Width = length("47.2 cm") }},
		},
		{func(s *garment.Spec) { s.Checks.Fronts = 7 }, "checks.fronts no severity: warning or error", "checks.fronts", garment.ErrSpec, nil},
	}, adultCardigan, bothFronts, func(f fronts) bool { return f.right.Name() == "" && f.left.Name() == "" })
}

// A front in one piece cannot be planned of a spec that opens.
func TestFrontRefusesAnOpening(t *testing.T) {
	checkRefusals(t, []refused{{
		func(s *garment.Spec) { s.Opening = &garment.Opening{} },
		"opening: parts the front into two: plan both, or leave it out for a front in one piece", "opening", garment.ErrSpec,
		[]change{func(s *garment.Spec) { s.Opening = nil }},
	}}, adult, garment.Front, func(p garment.Piece) bool { return p.Name() == "" })
}

// The overlap is the band's height, and none without a band: the nearest number of stitches
// that is even or odd as the body is, of an odd body one at least.
func TestOverlapLeftOpen(t *testing.T) {
	for _, c := range []struct {
		width, band string
		want        int
	}{{"50 cm", "", 0}, {"50 cm", "3 cm", 6}, {"50 cm", "2.5 cm", 6}, {"50.5 cm", "", 1}, {"50.5 cm", "3 cm", 7}} {
		s := adult()
		s.Body.Width, s.Opening = length(c.width), &garment.Opening{}
		if c.band != "" {
			s.Band = &garment.BandSpec{Height: length(c.band)}
		}
		made, err := bothFronts(s)
		if err != nil {
			t.Fatal(err)
		}
		if w := made.right.Widths; w.Overlap != c.want || 2*(w.Body-w.Seam)+w.Overlap != s.Gauge.Stitches(s.Body.Width).Round(gauge.Rounding{}) {
			t.Errorf("body of %s, band %q: %+v, want an overlap of %d", c.width, c.band, w, c.want)
		}
	}
}

// The neck of a front whose overlap is wider than the flat part begins at the front edge and
// says so; a vee always does.
func TestOverlapWiderThanTheFlatPart(t *testing.T) {
	const says = "The bands are wider than the flat part of the neck: its curve begins at the front edge."
	for _, c := range []struct {
		shape         garment.NeckShape
		flat, overlap string
		neck, level   int
		said          bool
	}{
		{garment.RoundNeck, "6 cm", "3 cm", 17, 4, false}, // 14 less 6 stitches, half in each
		{garment.RoundNeck, "2 cm", "3 cm", 17, 0, true},
		{garment.PathNeck, "2 cm", "3 cm", 17, 0, true},
		{garment.VeeNeck, "0 cm", "3 cm", 17, 0, false},
		{garment.VeeNeck, "0 cm", "0 cm", 20, 0, false},
		{garment.SquareNeck, "18 cm", "3 cm", 17, 17, false},
	} {
		s := adult()
		s.Neck.Shape, s.Neck.Flat, s.Neck.Depth = c.shape, given(c.flat), length("20 cm")
		if c.shape == garment.PathNeck {
			s.Neck.Path = "M 0 60 C 30 60 50 30 50 0"
		}
		overlapping(c.overlap)(&s)
		made, err := bothFronts(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []garment.Piece{made.right, made.left} {
			if p.Widths.Neck != c.neck || p.Widths.Flat != c.level || slices.Contains(p.Warnings, says) != c.said {
				t.Errorf("%v neck, overlap %s: %+v, %q", c.shape, c.overlap, p.Widths, p.Warnings)
			}
		}
	}
}

// A neck of decreases with a flat part, which is held: in the hand the left front holds it at
// the row where the neck begins and the right one a row later, and neither decreases before
// the second row after that; the decreases are on the same right-side rows.
func TestFlatPartBesideDecreases(t *testing.T) {
	for _, on := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, by := range []garment.Pair{garment.By(shaping.Fashioned), {Several: shaping.Fashioned, Single: shaping.Fashioned}} {
			s := adultCardigan()
			s.Setup.On, s.Methods.Neck = on, by
			s.Neck = garment.Neck{Shape: garment.PathNeck, Width: s.Neck.Width, Depth: length("12 cm"), Flat: given("9 cm"), Path: "M 0 30 L 20 20 V 0"}
			made, err := bothFronts(s)
			if err != nil {
				t.Fatal(err)
			}
			var decreased [][]int
			for _, p := range []garment.Piece{made.right, made.left} {
				later := 0
				if on == shaping.Hand && p.Name() == "right front" {
					later = 1
				}
				steps := p.Work.Panels[0].Steps(p.Outer().Opposite())
				want := shaping.Step{Row: p.Heights.NeckStart() + 1 + later, Stitches: -7, Method: shaping.Hold} // 20 less 6, half
				if diff := cmp.Diff(want, steps[0]); diff != "" || p.Cloth.Rows() != p.Heights.Top()+later {
					t.Errorf("%v, %v, %s of %d rows, first step (-want +got):\n%s", on, by, p.Name(), p.Cloth.Rows(), diff)
				}
				checkSteps(t, p)
				var rows []int
				for _, step := range steps[1:] {
					rows = append(rows, step.Row)
				}
				decreased = append(decreased, rows)
			}
			if diff := cmp.Diff(decreased[0], decreased[1]); diff != "" || len(decreased[0]) == 0 {
				t.Errorf("%v, %v: decreases (-right +left):\n%s", on, by, diff)
			}
		}
	}
}

// Fronts that widen at their outer edges lie evenly where they are widest: the right one to
// the needle, the left one, its reflection, to one needle. A bed that has no needle for that
// is refused, and what the refusal names fits.
func TestWideningFrontsOnTheBed(t *testing.T) {
	for _, c := range []struct {
		hem, body       string
		cast, widest    int
		right, left     shaping.Span
		needles, tooFew int // of the bed
	}{
		{"40 cm", "44 cm", 41, 45, spanOf(shaping.L(22), shaping.R(23)), spanOf(shaping.L(22), shaping.R(23)), 46, 44},
		{"40 cm", "43 cm", 41, 44, spanOf(shaping.L(22), shaping.R(22)), spanOf(shaping.L(21), shaping.R(23)), 46, 44},
		{"41 cm", "44 cm", 42, 45, spanOf(shaping.L(22), shaping.R(23)), spanOf(shaping.L(23), shaping.R(22)), 46, 44},
	} {
		s := unitGauge(88, 60, 20, 0, 20, 20)
		s.Body.Width, s.Body.Hem = length(c.body).Mul(2), length(c.hem).Mul(2)
		s.Seam.Stitches, s.Opening, s.Setup.Needles = 1, &garment.Opening{}, c.needles
		made, err := bothFronts(s)
		if err != nil {
			t.Fatal(err)
		}
		if w := made.right.Widths; w.CastOn != c.cast || w.Widest() != c.widest {
			t.Fatalf("%d to %d stitches, want %d to %d", w.CastOn, w.Widest(), c.cast, c.widest)
		}
		if right, left := made.right.Cloth.Needles(), made.left.Cloth.Needles(); right != c.right || left != c.left {
			t.Errorf("hem of %s: on %v and %v, want %v and %v", c.hem, right, left, c.right, c.left)
		}
		s.Setup.Needles = c.tooFew
		_, err = bothFronts(s)
		var refusal *garment.Error
		if !errors.As(err, &refusal) || !errors.Is(err, garment.ErrBed) {
			t.Fatalf("a bed of %d needles: %v", c.tooFew, err)
		}
		for field, l := range curesOf(refusal) {
			lengths[field](&s, length(l))
			if _, err := bothFronts(s); err != nil {
				t.Errorf("%v\nwith %s: %v", refusal, l, err)
			}
		}
	}
}

func spanOf(first, last shaping.Needle) shaping.Span { return shaping.Span{First: first, Last: last} }

// Pieces that do not belong together: two fronts of other rows, of other steps, and fronts
// that do not make up the back.
func TestFrontsThatDoNotBelongTogether(t *testing.T) {
	for _, test := range []struct {
		name  string
		other change // of the left front
		says  string
	}{
		{"shoulders bound off", func(s *garment.Spec) { s.Methods.Shoulder = garment.By(shaping.BindOff) }, "Right and left front: 53 stitches and 180 rows in the right one, 53 and 180 in the left one: they are not each other's reflection."},
		{"a wider overlap", overlapping("4 cm"), "Both fronts and what lies between them: 52, 51 and 6 stitches at the underarms, 110 in the back: 1 apart."},
	} {
		t.Run(test.name, func(t *testing.T) {
			s, other := adultCardigan(), adultCardigan()
			test.other(&other)
			mine, err := bothFronts(s)
			if err != nil {
				t.Fatal(err)
			}
			others, err := bothFronts(other)
			if err != nil {
				t.Fatal(err)
			}
			checks, err := garment.ChecksOf(s, mine.right, others.left, back(t, s))
			if err != nil {
				t.Fatal(err)
			}
			said := slices.ContainsFunc(checks, func(c garment.Check) bool { return !c.Passed && c.Name == "fronts" && c.Says == test.says })
			if !said {
				t.Errorf("no such check among %+v", checks)
			}
		})
	}
}

// The carriage at row 1 follows from the row where the neck begins, whatever the spec says.
func TestCarriageOfFronts(t *testing.T) {
	for _, carriage := range []shaping.Side{0, shaping.Left, shaping.Right} {
		for _, depth := range []string{"8 cm", "8.6 cm"} {
			s := adultCardigan()
			s.Setup.Carriage, s.Neck.Depth = carriage, length(depth)
			made, err := bothFronts(s)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range []garment.Piece{made.right, made.left} {
				if row := p.Work.Rows[p.Heights.NeckStart()]; row.From != p.Outer() {
					t.Errorf("%s: row %d starts at the %v", p.Name(), row.Row, row.From)
				}
				want := fmt.Sprintf("Row 1 starts at the %v, so that the rows from the neck on start at the outer edge.", p.Work.Rows[0].From)
				if said := slices.Contains(p.Warnings, want); said != (carriage != 0 && carriage != p.Work.Rows[0].From) {
					t.Errorf("%s, carriage %v: warnings %q", p.Name(), carriage, p.Warnings)
				}
			}
			if made.right.Work.Rows[0].From == made.left.Work.Rows[0].From {
				t.Error("both fronts start at one side")
			}
		}
	}
}

// Two fronts without an overlap are the two sides of a published vee, which parts its front
// in the middle: the stitches of each, of its shoulder and what the neck takes, at one stitch
// and one row to the centimetre, as only counts are printed.
func TestPublishedVeeOpened(t *testing.T) {
	const fashions = "Classic Fashions in Wool, Book 55, no. 201 (freevintageknitting.com)"
	for _, c := range []struct {
		what                 string
		width, neck, depth   int
		shape                garment.NeckShape
		methods              garment.Pair
		front, shoulder, gap int
		source               string
	}{
		// 94 stitches are divided into 47 and 47; 1 goes at the centre edge every knit row until 26
		// remain. In the small size 90 are 45 and 45, of which 24 remain.
		{"vee", 94, 42, 44, garment.VeeNeck, garment.By(shaping.Fashioned), 47, 26, 21, fashions},
		{"vee, small", 90, 42, 44, garment.VeeNeck, garment.By(shaping.Fashioned), 45, 24, 21, fashions},
	} {
		t.Run(c.what, func(t *testing.T) {
			s := unitGauge(c.width, 60, 60, 2, c.neck, c.depth)
			s.Setup.On = shaping.Hand
			s.Neck.Shape, s.Methods.Neck, s.Opening = c.shape, c.methods, &garment.Opening{}
			made, err := bothFronts(s)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range []garment.Piece{made.right, made.left} {
				if w := p.Widths; w.Body != c.front || w.Shoulder != c.shoulder || w.Neck != c.gap {
					t.Errorf("%s of %d stitches, shoulder %d, neck %d; printed %d, %d, %d (%s)", p.Name(), w.Body, w.Shoulder, w.Neck, c.front, c.shoulder, c.gap, c.source)
				}
				// Every knit row: one stitch at every second row, all of them.
				neck := p.Work.Panels[0].Steps(p.Outer().Opposite())
				if len(neck) != c.gap {
					t.Errorf("%s: %d decreases, printed %d (%s)", p.Name(), len(neck), c.gap, c.source)
				}
				for i := 1; i < len(neck); i++ {
					if neck[i].Row-neck[i-1].Row != 2 {
						t.Errorf("%s: %v after %v (%s)", p.Name(), neck[i], neck[i-1], c.source)
					}
				}
			}
		})
	}
}

// The shoulders of a published cardigan: of 82 stitches 6 are bound off at the beginning of
// 4 rows, 7 at that of 4 more, and 30 are left ("Woman's cardigan", size 16, Practical
// Handknits, freevintageknitting.com). Those of both fronts are parted alike.
func TestPublishedCardigan(t *testing.T) {
	s := unitGauge(82, 60, 20, 6, 30, 20)
	s.Methods.Shoulder, s.Opening = garment.By(shaping.BindOff), &garment.Opening{Overlap: given("4 cm")}
	made, err := bothFronts(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []garment.Piece{made.right, made.left} {
		steps := p.Work.Panels[0].Steps(p.Outer())
		groups := append(sizes(steps), p.Widths.Shoulder+steps.Total())
		if diff := cmp.Diff([]int{6, 6, 7, 7}, groups); diff != "" || p.Widths.Body != (82-4)/2 {
			t.Errorf("%s of %d stitches (-printed +planned):\n%s", p.Name(), p.Widths.Body, diff)
		}
	}
}

// The crew neck of 47 stitches, 15 of them the neck, 16 left at each shoulder, opened with no
// overlap but the middle stitch: each side of it as printed, centre 5, then 2 once and 1 three
// times (forum.knittinghelp.com, t/42150).
func TestPublishedCrewOpened(t *testing.T) {
	s := unitGauge(47, 40, 20, 0, 15, 8)
	s.Neck.Flat, s.Opening = given("5 cm"), &garment.Opening{}
	s.Neck.Shape, s.Neck.Path = garment.PathNeck, "M 0 8 H 2 V 6 H 3 V 4 H 4 V 2 H 5 V 0" // the printed steps, drawn
	made, err := bothFronts(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []garment.Piece{made.right, made.left} {
		if w := p.Widths; w.Body != 23 || w.Overlap != 1 || w.Neck != 7 || w.Flat != 2 || w.Shoulder != 16 {
			t.Errorf("%s: %+v", p.Name(), w)
		}
		// The two flat stitches of this side go with the first two.
		if diff := cmp.Diff([]int{4, 1, 1, 1}, sizes(p.Work.Panels[0].Steps(p.Outer().Opposite()))); diff != "" {
			t.Errorf("%s (-printed +planned):\n%s", p.Name(), diff)
		}
	}
}

// The cardigans of measured bodies, on the bed and in the hand, with a round neck and a vee:
// their pieces fit each other. Bodies and source are those of internal/bodies.
func TestCardigansOfPercentiles(t *testing.T) {
	for _, b := range percentiles(t) {
		for _, on := range []shaping.Place{shaping.Bed, shaping.Hand} {
			for _, shape := range []garment.NeckShape{garment.RoundNeck, garment.VeeNeck} {
				s := b.Jumper(newGauge("22", "30", "10 cm"))
				s.Setup.On, s.Opening = on, &garment.Opening{Overlap: given("3 cm")}
				if shape == garment.VeeNeck {
					s.Neck.Shape, s.Neck.Depth, s.Neck.Flat = shape, s.Armhole.Depth, garment.Optional{}
					s.Methods.Neck = garment.By(shaping.Fashioned)
				}
				set, err := garment.Pieces(s)
				if err != nil {
					t.Errorf("%s, %v, %v neck: %v", b.Name, on, shape, err)
					continue
				}
				for _, f := range set.Failed() {
					t.Errorf("%s, %v, %v neck: %s", b.Name, on, shape, f.Says)
				}
				if c := checkOf(t, set, "fronts"); !c.Passed || len(set.Pieces) != 5 {
					t.Errorf("%s, %v, %v neck: %d pieces, %s", b.Name, on, shape, len(set.Pieces), c.Says)
				}
			}
		}
	}
}
