package order_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/internal/worked"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

func rightFront() order.Outline {
	return order.Outline{
		Name: shaping.RightFront, Place: shaping.Bed, Carriage: shaping.Right, Panels: worked.RightFront(),
		Outer: shaping.Right, ShoulderRow: 4,
	}
}

// The shoulder held at the outer edge comes back for the closing row, neck and underarm stay
// held to the end.
func TestBodyWithAShoulder(t *testing.T) {
	w, err := order.Arrange(rightFront())
	if err != nil {
		t.Fatal(err)
	}
	last := w.Rows[7]
	span := func(first, last shaping.Needle) shaping.Span { return shaping.Span{First: first, Last: last} }
	want := shaping.Row{
		Row: 8, Panel: shaping.Body, From: shaping.Left, Knit: span(shaping.L(2), shaping.R(4)),
		Before: []shaping.Action{{Do: shaping.DoReturn, Needles: span(shaping.R(1), shaping.R(4))}},
		After: []shaping.Action{
			{Do: shaping.DoWaste, Needles: span(shaping.L(2), shaping.R(4))},
			{Do: shaping.DoWaste, Needles: span(shaping.L(5), shaping.L(3))},
			{Do: shaping.DoWaste, Needles: span(shaping.R(5), shaping.R(5))},
		},
	}
	if diff := cmp.Diff(want, last); diff != "" {
		t.Errorf("closing row (-by hand +planned):\n%s", diff)
	}
	cloth, err := bed.Knit(w)
	if err != nil {
		t.Fatal(err)
	}
	var heights []int
	for _, height := range cloth.Wales() {
		heights = append(heights, height)
	}
	if diff := cmp.Diff(worked.RightFrontHeights(), heights); diff != "" {
		t.Errorf("wales from the left (-by hand +knitted):\n%s", diff)
	}
}

// The other front is its reflection, action by action.
func TestBodyWithAShoulderReflected(t *testing.T) {
	right, err := order.Arrange(rightFront())
	if err != nil {
		t.Fatal(err)
	}
	o := rightFront()
	o.Name, o.Carriage, o.Outer = shaping.LeftFront, shaping.Left, shaping.Left
	o.Panels = mirror.AxisFor(10).Tree(o.Panels)
	left, err := order.Arrange(o)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(mirror.Work(right), left, cmp.FilterValues(bothEmpty, cmp.Ignore())); diff != "" {
		t.Errorf("(-reflection +planned):\n%s", diff)
	}
}

// A closing row that would start at the outer edge is refused, and one that the outline says
// nothing of is not made: the judge then sees the shoulder go to waste as it was held.
func TestBodyWithoutItsClosingRow(t *testing.T) {
	o := rightFront()
	o.Panels[0].LastRow = 7
	_, err := order.Arrange(o)
	e, ok := errors.AsType[*order.Error](err)
	if !ok || e.Row != 7 || e.Edge != shaping.Right {
		t.Errorf("error %v", err)
	}
	o = rightFront()
	o.Outer = 0
	w, err := order.Arrange(o)
	if err != nil {
		t.Fatal(err)
	}
	cloth, err := bed.Knit(w)
	if err != nil {
		t.Fatal(err)
	}
	if got := cloth.Height(shaping.R(4)); got != 3 {
		t.Errorf("the outermost wale of the shoulder is %d high without a closing row", got)
	}
}
