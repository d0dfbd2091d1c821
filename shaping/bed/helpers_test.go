package bed_test

import (
	"errors"
	"slices"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// fataler is what *testing.T, *testing.B and *rapid.T have in common.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// outline is a piece on the bed, the carriage at the right before row 1.
func outline(panels shaping.Tree, centre, top order.Ending) order.Outline {
	return order.Outline{
		Name: "front", Place: shaping.Bed, Carriage: shaping.Right,
		Panels: panels, Centre: centre, Top: top,
	}
}

// inHand is the same piece on two needles.
func inHand(o order.Outline) order.Outline {
	o.Place = shaping.Hand
	return o
}

func plan(t fataler, o order.Outline) shaping.Work {
	t.Helper()
	w, err := order.Arrange(o)
	if err != nil {
		t.Fatalf("plan: %v", err)
	}
	return w
}

func knit(t fataler, w shaping.Work) bed.Cloth {
	t.Helper()
	cloth, err := bed.Knit(w)
	if err != nil {
		t.Fatalf("knit: %v", err)
	}
	return cloth
}

// named is a valid work.
type named struct {
	name string
	work shaping.Work
}

// validWorks returns works that use every action between them, on the bed and in the
// hand.
func validWorks(t fataler) []named {
	t.Helper()
	return []named{
		{"tiny front", worked.TinyWork()},
		{"tiny front in the hand", plan(t, inHand(outline(worked.InHand(worked.TinyFront()), order.OnWaste, order.OnWaste)))},
		{"flared strip", plan(t, outline(worked.FlaredStrip(), order.OnWaste, order.OnWaste))},
		{"flared strip in the hand", plan(t, inHand(outline(worked.FlaredStrip(), order.OnWaste, order.OnWaste)))},
		{"armhole front", plan(t, outline(worked.ArmholeFront(), order.BoundOff, order.BoundOff))},
		{"armhole front in the hand", plan(t, inHand(outline(worked.InHand(worked.ArmholeFront()), order.BoundOff, order.BoundOff)))},
		{"right front", plan(t, order.Outline{
			Name: shaping.RightFront, Place: shaping.Bed, Carriage: shaping.Right, Panels: worked.RightFront(), Outer: shaping.Right, ShoulderRow: 4,
		})},
		{"front by holding", plan(t, outline(worked.HandFront(), order.OnWaste, order.OnWaste))},
	}
}

// result is all that two cloths are compared by. Wraps are left out: more of them
// than are needed do no harm.
type result struct {
	heights map[shaping.Needle]int
	courses []bed.Course
	ledger  shaping.Ledger
	panels  map[string]shaping.Ledger
}

func resultOf(c bed.Cloth) result {
	r := result{heights: map[shaping.Needle]int{}, courses: slices.Collect(c.Courses()), ledger: c.Ledger(), panels: map[string]shaping.Ledger{}}
	for _, name := range []string{shaping.Body, shaping.RightHalf, shaping.LeftHalf} {
		if l, ok := c.PanelLedger(name); ok {
			r.panels[name] = l
		}
	}
	for n, height := range c.Wales() {
		if height > 0 {
			r.heights[n] = height
		}
	}
	return r
}

// asRefusal returns the refusal, which must be complete.
func asRefusal(t fataler, err error) *bed.Refusal {
	t.Helper()
	r, ok := errors.AsType[*bed.Refusal](err)
	switch {
	case !ok:
		t.Fatalf("%v is no *bed.Refusal", err)
	case r.Reason == "":
		t.Fatalf("%#v gives no reason", r)
	case errors.Is(err, bed.ErrImpossible) == errors.Is(err, bed.ErrUntrue):
		t.Fatalf("%v is neither impossible nor untrue, or both", err)
	}
	return r
}

func span(first, last shaping.Needle) shaping.Span { return shaping.Span{First: first, Last: last} }

func one(n shaping.Needle) shaping.Span { return span(n, n) }

// do is an action on needles.
func do(d shaping.Do, needles shaping.Span) shaping.Action {
	return shaping.Action{Do: d, Needles: needles}
}

// shift moves edge stitches.
func shift(needles shaping.Span, toward shaping.Side) shaping.Action {
	return shaping.Action{Do: shaping.DoShift, Needles: needles, Toward: toward}
}
