package garment_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// TestDrawnShoulders: the groups of shoulders over 6 rows, which are the levels nearest
// to the drawing in rows 1 and 2, 3 and 4, 5 and 6, worked out by hand. The last group
// keeps two stitches.
func TestDrawnShoulders(t *testing.T) {
	for _, test := range []struct {
		path   string
		across int // of each shoulder
		groups []int
	}{
		{"M 0 30 L 60 0", 12, []int{2, 4, 4, 2}},
		{"M 0 60 L 30 40 L 60 0", 12, []int{3, 4, 3, 2}}, // 3, then 6 + 6/8 and 6 + 18/8 in the middles
		{"M 0 30 H 60 V 0", 12, []int{10, 2}},
		{"M 0 30 H 35 V 0 H 60", 12, []int{7, 5}},
		{"M 0 30 V 0 H 60", 12, []int{12}},
		{"M 0 30 V 20 H 25 V 0 H 60", 12, []int{5, 7}},
		{"M 0 30 H 0.3 V 0", 5, []int{3, 2}}, // all but the last group at once
	} {
		for _, method := range []shaping.Method{shaping.Hold, shaping.BindOff} {
			for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
				s := unitGauge(2*test.across+20, 60, 30, 6, 20, 20)
				s.Shoulder.Path, s.Methods.Shoulder, s.Setup.On = test.path, garment.By(method), place
				p := front(t, s)
				if got := shoulderGroups(t, p); !slices.Equal(got, test.groups) {
					t.Errorf("%s, %v, %v: groups %v, want %v", test.path, method, place, got, test.groups)
				}
				for _, e := range p.Edges {
					if e.Name != garment.ShoulderEdge || len(e.Schedule) == 0 {
						continue
					}
					if row := e.Schedule[0].Row; row%2 == 0 || e.Stitches != test.across || e.Rows != 6 {
						t.Errorf("%s, %v, %v: %d stitches over %d rows at the %v, the first at row %d of them", test.path, method, place, e.Stitches, e.Rows, e.Side, row)
					}
				}
			}
		}
	}
}

// A drawn quarter of an ellipse is that of a round neck and of an armhole.
func TestDrawnAsComputed(t *testing.T) {
	const quarter = "M 0 50 A 40 50 0 0 0 40 0"
	checkFronts(t, func(t *rapid.T, p garment.Piece) {
		s := p.Spec
		if s.Neck.Shape == garment.RoundNeck && !s.Neck.Flat.IsZero() {
			s.Neck.Shape, s.Neck.Path = garment.PathNeck, quarter
		}
		if s.Armhole.Path == "" && !s.Armhole.Inset.IsZero() {
			s.Armhole.Path = quarter
		}
		got := front(t, s)
		if diff := cmp.Diff(p.Edges, got.Edges, cmpopts.IgnoreFields(garment.Edge{}, "Path"), cmpopts.EquateApprox(1e-6, 1e-6)); diff != "" {
			t.Fatalf("edges (-computed +drawn):\n%s", diff)
		}
	})
}

// What the spec draws is followed, stretched to the box.
func TestDrawnAsGiven(t *testing.T) {
	checkFronts(t, func(t *rapid.T, p garment.Piece) {
		given := map[string]string{
			garment.NeckEdge: p.Spec.Neck.Path, garment.ArmholeEdge: p.Spec.Armhole.Path, garment.ShoulderEdge: p.Spec.Shoulder.Path,
		}
		for _, e := range p.Edges {
			if given[e.Name] == "" {
				if e.Name == garment.ShoulderEdge {
					t.Fatalf("a drawn shoulder that nobody drew: %+v", e)
				}
				continue
			}
			drawn, err := curve.ParsePath(given[e.Name])
			if err != nil {
				t.Fatal(err)
			}
			boxed, err := drawn.Scaled(p.Gauge.Width(e.Stitches), p.Gauge.Height(e.Rows))
			if err != nil {
				t.Fatal(err)
			}
			if e.Path != boxed.Path() {
				t.Fatalf("%s follows %s, given %s", e.Name, e.Path, given[e.Name])
			}
			if drawn, err = curve.ParsePath(e.Path); err != nil {
				t.Fatalf("%s: %v", e.Name, err)
			}
			if e.Stitches > 0 && drawn.Turns() {
				t.Fatalf("%s turns: %s", e.Name, e.Path)
			}
		}
	})
}

// The neck of one method on a bed has the steps of the default wording, whatever was drawn.
func TestEdgesAreSaidInFewWords(t *testing.T) {
	checkFronts(t, func(t *rapid.T, p garment.Piece) {
		by := p.Spec.Methods.Neck.Or(garment.By(shaping.Hold))
		neck := p.Edges[0]
		if by.Several != by.Single || !tied(by.Single) || p.Work.Place != shaping.Bed || (p.Spec.Neck.Shape != garment.RoundNeck && p.Spec.Neck.Shape != garment.PathNeck) || neck.Stitches == 0 {
			return
		}
		drawn, err := curve.QuarterEllipse(length("1 cm"), length("1 cm"))
		if p.Spec.Neck.Shape == garment.PathNeck {
			drawn, err = curve.ParsePath(p.Spec.Neck.Path)
		}
		if err != nil {
			t.Fatal(err)
		}
		laid, err := drawn.In(neck.Stitches, neck.Rows)
		if err != nil {
			t.Fatal(err)
		}
		rules := shaping.RulesFor(by.Single, shaping.Left, shaping.Right, shaping.Bed)
		wordings, err := laid.Wordings(rules, curve.Phrasing{})
		if err != nil {
			t.Fatal(err)
		}
		want := wordings.Default()
		if neck.Rows*neck.Stitches > 200*100 {
			want = wordings.Trace // of edges larger than any body's
		}
		if diff := cmp.Diff(want.Schedule.By(by.Several, by.Single), neck.Schedule); diff != "" {
			t.Fatalf("neck of %d stitches and %d rows (-default wording +got):\n%s", neck.Stitches, neck.Rows, diff)
		}
	})
}

// Round necks of one width and several depths take fewer phrases than their traces.
func TestNecksAreShorterToSay(t *testing.T) {
	said, traced := 0, 0
	for rows := 10; rows <= 30; rows += 2 {
		neck := front(t, unitGauge(110, 100, 44, 6, 40, rows)).Edges[0]
		drawn, err := curve.QuarterEllipse(length("1 cm"), length("1 cm"))
		if err != nil {
			t.Fatal(err)
		}
		nearest, err := curve.Trace(drawn, neck.Stitches, neck.Rows, shaping.RulesFor(shaping.Hold, shaping.Left, shaping.Right, shaping.Bed))
		if err != nil {
			t.Fatal(err)
		}
		said += len(neck.Schedule.Phrases())
		traced += len(nearest.Schedule.Phrases())
	}
	t.Logf("%d phrases, %d of the traces", said, traced)
	if said >= traced {
		t.Errorf("%d phrases, %d of the traces", said, traced)
	}
}

// Edges larger than any body's follow their trace, which is found soon enough.
func TestLargeEdgesFollowTheirTrace(t *testing.T) {
	s := unitGauge(980, 600, 300, 0, 902, 500)
	s.Neck.Flat, s.Setup.Needles = given("2 cm"), 1000
	neck := front(t, s).Edges[0]
	drawn, err := curve.QuarterEllipse(length("1 cm"), length("1 cm"))
	if err != nil {
		t.Fatal(err)
	}
	want, err := curve.Trace(drawn, 450, 500, shaping.RulesFor(shaping.Hold, shaping.Left, shaping.Right, shaping.Bed))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want.Schedule.By(shaping.Hold, shaping.Hold), neck.Schedule); diff != "" {
		t.Errorf("neck (-trace +got):\n%s", diff)
	}
}

// Where several stitches are held or bound off and single ones decreased, the wording
// costs no more than a twentieth either.
func TestWordsCostLittle(t *testing.T) {
	for _, method := range []shaping.Method{shaping.Hold, shaping.BindOff} {
		s := adult()
		s.Methods.Neck = garment.Pair{Several: method, Single: shaping.Fashioned}
		p := front(t, s)
		neck := p.Edges[0]
		drawn, err := curve.QuarterEllipse(length("1 cm"), length("1 cm"))
		if err != nil {
			t.Fatal(err)
		}
		rules := shaping.RulesFor(method, shaping.Left, shaping.Right, shaping.Bed)
		rules.Single = shaping.Beat{Every: 1}
		traced, err := curve.Trace(drawn, neck.Stitches, neck.Rows, rules)
		if err != nil {
			t.Fatal(err)
		}
		said, err := curve.Measure(drawn, neck.Stitches, neck.Rows, rules, neck.Schedule)
		if err != nil {
			t.Fatal(err)
		}
		if got, most := len(neck.Schedule.Phrases()), len(traced.Schedule.Phrases()); said.Area > 1.05*traced.Measures.Area || got > most {
			t.Errorf("%v: area %.3f in %d phrases, the trace has %.3f in %d", method, said.Area, got, traced.Measures.Area, most)
		}
	}
}
