package garment_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// checkTwoFronts checks the two fronts of random specs; a refusal must be a good one.
func checkTwoFronts(t *testing.T, check func(t *rapid.T, right, left garment.Piece)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		s := gen.CardiganSpec(rapid.SampledFrom([]gauge.Length{metric, imperial}).Draw(t, "step")).Draw(t, "spec")
		right, left, err := garment.Fronts(s)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		check(t, right, left)
	})
}

// checkCardigans checks whole garments that open.
func checkCardigans(t *testing.T, check func(*rapid.T, garment.Set)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		s, err := garment.Pieces(gen.CardiganSpec(rapid.SampledFrom([]gauge.Length{metric, imperial}).Draw(t, "step")).Draw(t, "spec"))
		if err != nil {
			checkRefusal(t, err)
			return
		}
		check(t, s)
	})
}

func TestFewTwoFrontsAreRefused(t *testing.T) {
	refused, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		all++
		if _, _, err := garment.Fronts(gen.CardiganSpec(metric).Draw(t, "spec")); err != nil {
			checkRefusal(t, err)
			refused++
		}
	})
	if all >= enough && refused*100 > all*20 {
		t.Errorf("%d of %d specs refused", refused, all)
	}
}

func TestTwoFrontsAreKnitted(t *testing.T) {
	checkTwoFronts(t, func(t *rapid.T, right, left garment.Piece) {
		if right.Name() != "right front" || left.Name() != "left front" {
			t.Fatalf("pieces %q and %q", right.Name(), left.Name())
		}
		// The purl side is inside: the wearer's right is at the right there.
		outer := map[shaping.Place]shaping.Side{shaping.Bed: shaping.Right, shaping.Hand: shaping.Left}[right.Work.Place]
		if right.Outer() != outer || left.Outer() != outer.Opposite() {
			t.Fatalf("outer edges at the %v and the %v", right.Outer(), left.Outer())
		}
		for _, p := range []garment.Piece{right, left} {
			if p.Outer() == shaping.Right {
				checkKnitted(t, p) // it lies evenly where it is widest; the other is its reflection
			}
			checkSteps(t, p)
			if rows := p.Cloth.Rows(); rows != p.Heights.Top() && (p.Work.Place == shaping.Bed || p.Outer() == shaping.Right || rows != p.Heights.Top()+1) {
				t.Fatalf("%s of %d rows, the neck point is at %d", p.Name(), rows, p.Heights.Top())
			}
		}
	})
}

// On the bed the left front is the reflection of the right one, the carriage included. In
// the hand what is held or bound off at its neck and shoulder stands a row later in the right
// one, and decreases are on the same rows.
func TestTwoFrontsAreReflections(t *testing.T) {
	checkTwoFronts(t, func(t *rapid.T, right, left garment.Piece) {
		if diff := cmp.Diff(right.Widths, left.Widths); diff != "" {
			t.Fatalf("widths (-right +left):\n%s", diff)
		}
		if right.Work.Place == shaping.Bed {
			if diff := cmp.Diff(mirror.Work(right.Work), left.Work, cmpopts.EquateEmpty()); diff != "" {
				t.Fatalf("left front (-reflection of the right one +got):\n%s", diff)
			}
			return
		}
		from := right.Heights.NeckStart()
		neck := slices.Clone(left.Work.Panels[0].Steps(left.Outer().Opposite()))
		shoulder := left.Work.Panels[0].Steps(left.Outer()).Between(left.ShoulderRow, left.Cloth.Rows())
		for _, steps := range []shaping.Schedule{neck, shoulder} {
			for i := range steps {
				if tied(steps[i].Method) {
					steps[i].Row++
				}
			}
		}
		panel := right.Work.Panels[0]
		if diff := cmp.Diff(neck, panel.Steps(right.Outer().Opposite()), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("neck from row %d (-left front with its row +right front):\n%s", from+1, diff)
		}
		if diff := cmp.Diff(shoulder, panel.Steps(right.Outer()).Between(right.ShoulderRow, right.Cloth.Rows()), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("shoulder (-left front with its row +right front):\n%s", diff)
		}
		later := right.Cloth.Rows() - left.Cloth.Rows()
		said := slices.ContainsFunc(right.Warnings, func(w string) bool { return strings.Contains(w, "one row later than in the other front") })
		if said != (later == 1) || later < 0 {
			t.Fatalf("warnings %q, later by %d", right.Warnings, later)
		}
	})
}

// Both fronts and the overlap are as wide as the back at every height, and so are their necks
// and shoulders.
func TestTwoFrontsMakeUpTheBack(t *testing.T) {
	checkCardigans(t, func(t *rapid.T, s garment.Set) {
		right, left, back := s.Pieces[0], s.Pieces[1], s.Pieces[2]
		w, b := right.Widths, back.Widths
		twice := 2 * w.Seam // the seam stitches of the two sides
		for _, of := range []struct {
			name         string
			front, whole int
		}{
			{"cast on", w.CastOn - w.Seam, b.CastOn - twice}, {"body", w.Body - w.Seam, b.Body - twice}, {"neck", w.Neck, b.Neck},
		} {
			if 2*of.front+w.Overlap != of.whole {
				t.Fatalf("%s: twice %d and an overlap of %d, the back has %d", of.name, of.front, w.Overlap, of.whole)
			}
		}
		if (w.Waist > 0) != (b.Waist > 0) || w.Waist > 0 && 2*(w.Waist-w.Seam)+w.Overlap != b.Waist-twice {
			t.Fatalf("waist: %d stitches, the back has %d", w.Waist, b.Waist)
		}
		if w.Shoulder != b.Shoulder || w.Inset != b.Inset || w.BindOff != b.BindOff || w.Neck < 1 {
			t.Fatalf("fronts %+v\nback %+v", w, b)
		}
		// Row by row below the underarms, each front joins the other edge of the back.
		for _, front := range []garment.Piece{right, left} {
			side := front.Outer()
			first, second := rowsAt(front, side), rowsAt(back, side.Opposite())
			for row := range front.Heights.Underarm - 1 {
				if moved, other := first[row].outer-first[0].outer, second[row].outer-second[0].outer; moved != other {
					t.Fatalf("%s, row %d: the side has moved by %d, that of the back by %d", front.Name(), row+1, moved, other)
				}
			}
		}
		for _, c := range s.Checks {
			inner := slices.Contains([]string{"shoulders", "sides", "fronts"}, c.Name)
			if inner && !c.Passed || c.Name == "neck" {
				t.Fatalf("check of %s: %s", c.Name, c.Says)
			}
		}
	})
}

// A front is the half of a front in one piece that has its outer edge: every wale is as high
// as there, up to the neck's flat part. That is held as there or bound off by the yarn of the
// front, a row higher. Where its method forbids decreases beside it the neck is another one.
func TestAFrontIsHalfOfOneInOnePiece(t *testing.T) {
	compared := 0
	checkTwoFronts(t, func(t *rapid.T, right, left garment.Piece) {
		s := right.Spec
		s.Opening = nil
		whole, err := garment.Front(s)
		if err != nil {
			return // wider than the bed
		}
		by := s.Methods.Neck
		alike := by.IsZero() || by == garment.By(shaping.Hold) || by == garment.By(shaping.BindOff)
		if right.Widths.Overlap > whole.Widths.Flat || (right.Widths.Flat > 0 && !alike) {
			return
		}
		for _, front := range []garment.Piece{right, left} {
			outer := front.Outer()
			if s.Setup.On != shaping.Hand && whole.Work.Panels[1].Name != half(whole, outer).Name {
				continue // the other half goes first there
			}
			if front.Cloth.Rows() != half(whole, outer).LastRow {
				continue // in the hand, where only the flat part is held
			}
			compared++
			got, want := heightsFrom(front, outer), heightsFrom(whole, outer)[:front.Cloth.Needles().Len()]
			flat := len(got) - front.Widths.Flat
			if diff := cmp.Diff(want[:flat], got[:flat]); diff != "" {
				t.Fatalf("%s, wales from the outer edge (-half +front):\n%s", front.Name(), diff)
			}
			later := 0
			if by.Several == shaping.BindOff {
				later++
			}
			if s.Setup.On == shaping.Hand && outer == shaping.Left {
				later++
			}
			if w := front.Widths; w.CastOn < w.Widest() {
				flat = max(flat, len(got)-w.CastOn+reachIn) // stitches that came may lie behind it
			}
			for _, height := range got[min(flat, len(got)):] {
				if height != front.Heights.NeckStart()+later {
					t.Fatalf("%s: a flat wale of %d rows, the neck begins after row %d", front.Name(), height, front.Heights.NeckStart())
				}
			}
		}
	})
	if compared == 0 {
		t.Error("nothing was compared")
	}
}

// reachIn is more than how far from the edge stitches come: behind the edge stitches moved.
const reachIn = 4

// heightsFrom returns the wale heights from one edge inwards.
func heightsFrom(p garment.Piece, edge shaping.Side) []int {
	var heights []int
	for _, height := range p.Cloth.Wales() {
		heights = append(heights, height)
	}
	if edge == shaping.Right {
		slices.Reverse(heights)
	}
	return heights
}

// What is asked of a front is half of what the overlap leaves, and what is knitted its
// stitches.
func TestSizesOfTwoFronts(t *testing.T) {
	half := decimal.New(5, -1)
	checkTwoFronts(t, func(t *rapid.T, right, left garment.Piece) {
		s, w := right.Spec, right.Widths
		var overlap gauge.Length
		if s.Band != nil {
			overlap = s.Band.Height
		}
		overlap = s.Opening.Overlap.Or(overlap)
		for _, c := range []struct {
			name     string
			asked    gauge.Length
			stitches int
		}{
			{"width", s.Body.Width, w.Body - w.Seam}, {"neckWidth", s.Neck.Width, w.Neck}, {"hem", s.Body.Hem, w.CastOn - w.Seam},
		} {
			if c.asked.IsZero() {
				continue
			}
			got := size(t, right, c.name)
			if asked := gauge.Millimetres(c.asked.Sub(overlap).Millimetres().Mul(half)); !got.Asked.Equal(asked) || got.Count != c.stitches || !got.Knitted.Equal(right.Gauge.Width(c.stitches)) {
				t.Fatalf("%s: asked %v, knitted %v in %d; want %v in %d", c.name, got.Asked, got.Knitted, got.Count, asked, c.stitches)
			}
		}
		if diff := cmp.Diff(right.Sizes, left.Sizes, cmp.Comparer(gauge.Length.Equal)); diff != "" && s.Setup.On != shaping.Hand {
			t.Fatalf("sizes (-right +left):\n%s", diff)
		}
		for _, p := range []garment.Piece{right, left} {
			checkRowsOfFront(t, p)
		}
	})
}

// checkRowsOfFront compares the heights in the sizes with the cloth.
func checkRowsOfFront(t *rapid.T, p garment.Piece) {
	highest, underarm, outer := p.Work.Panels.Height(), p.Heights.Underarm, p.Outer()
	if p.Widths.BindOff > 0 {
		var widest shaping.Needle
		for course := range p.Cloth.Courses() {
			if course.Row == p.Heights.Underarm {
				widest = course.Needles.End(outer)
			}
		}
		for course := range p.Cloth.Courses() {
			if course.Row > p.Heights.Underarm && course.Needles.End(outer) == widest {
				underarm = course.Row
			}
		}
	}
	count := func(name string) int { return size(t, p, name).Count }
	if count("length") != underarm || count("height") != highest || count("length")+count("armhole")+count("drop") != highest {
		t.Fatalf("%s: %d rows to the underarm, %d of armhole, %d of shoulder, %d in all; the cloth has %d and %d",
			p.Name(), count("length"), count("armhole"), count("drop"), count("height"), underarm, highest)
	}
	if p.Widths.Flat > 0 && p.FrontEdge()+count("neckDepth") != highest {
		t.Fatalf("%s: a front edge of %d rows and a neck of %d; the cloth has %d", p.Name(), p.FrontEdge(), count("neckDepth"), highest)
	}
}

// The necks of both fronts and the overlap are as long as the neck of a front in one piece
// where they have the same steps, held on the bed.
func TestNeckLengthOfTwoFronts(t *testing.T) {
	checkTwoFronts(t, func(t *rapid.T, right, left garment.Piece) {
		s := right.Spec
		s.Opening = nil
		whole, err := garment.Front(s)
		if err != nil || s.Setup.On == shaping.Hand || right.Widths.Overlap > whole.Widths.Flat ||
			!(s.Methods.Neck.IsZero() || s.Methods.Neck == garment.By(shaping.Hold)) {
			return
		}
		both := right.NeckLength().Add(left.NeckLength()).Add(right.Gauge.Width(right.Widths.Overlap))
		if rounding := length("0.002 mm"); both.Sub(whole.NeckLength()).Abs().Cmp(rounding) > 0 {
			t.Fatalf("necks and overlap of %v, in one piece %v", both, whole.NeckLength())
		}
		if !right.ArmholeLength(right.Outer().Opposite()).IsZero() || right.ArmholeLength(right.Outer()).IsZero() {
			t.Fatalf("armholes of %v and %v", right.ArmholeLength(shaping.Left), right.ArmholeLength(shaping.Right))
		}
	})
}
