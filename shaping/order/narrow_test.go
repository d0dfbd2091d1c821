package order_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// An increase leaves a stitch beside the empty needle, from which the new loop is lifted.
func TestIncreaseOfNarrowPanels(t *testing.T) {
	for _, c := range []struct {
		place         shaping.Place
		cast, moved   int
		whyThisMany   string
		stitchesAfter int
	}{
		{shaping.Bed, 8, 3, "the three of the transfer tool", 9},
		{shaping.Bed, 4, 3, "one stays", 5},
		{shaping.Bed, 3, 2, "one stays", 4},
		{shaping.Bed, 2, 1, "one stays", 3},
		{shaping.Hand, 8, 2, "an edge stitch and the one beside it", 9},
		{shaping.Hand, 2, 1, "one stays", 3},
	} {
		work, err := order.Arrange(order.Outline{
			Name: "front", Place: c.place, Carriage: shaping.Right, Top: order.BoundOff,
			Panels: shaping.Tree{{
				Name: shaping.Body, FirstRow: 1, LastRow: 5, Needles: shaping.Centred(c.cast),
				Left: shaping.Schedule{{Row: 3, Stitches: 1, Method: shaping.Fashioned}},
			}},
		})
		if err != nil {
			t.Fatal(err)
		}
		before := work.Rows[2].Before
		edge := shaping.Centred(c.cast).Edge(shaping.Left, c.moved)
		want := []shaping.Action{
			{Do: shaping.DoShift, Needles: edge, Toward: shaping.Left},
			{Do: shaping.DoFill, Needles: shaping.Span{First: edge.Last, Last: edge.Last}},
		}
		if diff := cmp.Diff(want, before); diff != "" {
			t.Errorf("%v, %d stitches, %s (-want +got):\n%s", c.place, c.cast, c.whyThisMany, diff)
		}
		cloth, err := bed.Knit(work)
		if err != nil || work.Rows[4].Knit.Len() != c.stitchesAfter || cloth.Ledger().Increased != 1 {
			t.Errorf("%v, %d stitches: %d after, error %v", c.place, c.cast, work.Rows[4].Knit.Len(), err)
		}
	}
}

// What the body put on hold at the edge of a half is not put on hold again where the half
// splits.
func TestHeldByTheBodyAndSplitAgain(t *testing.T) {
	hold := func(row, stitches int) shaping.Step {
		return shaping.Step{Row: row, Stitches: -stitches, Method: shaping.Hold}
	}
	span := func(first, last shaping.Needle) shaping.Span { return shaping.Span{First: first, Last: last} }
	work, err := order.Arrange(order.Outline{
		Name: "front", Place: shaping.Bed, Carriage: shaping.Right,
		Panels: shaping.Tree{
			{
				Name: shaping.Body, FirstRow: 1, LastRow: 12, Needles: shaping.Centred(2),
				Left:  shaping.Schedule{hold(3, 1), hold(5, 2)},
				Right: shaping.Schedule{{Row: 3, Stitches: 6, Method: shaping.CastOn}},
			},
			{Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 13, LastRow: 13, Needles: span(shaping.R(6), shaping.R(7))},
			{Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 13, LastRow: 14, Needles: span(shaping.R(2), shaping.R(5))},
			{Name: "third", Parent: shaping.LeftHalf, FirstRow: 15, LastRow: 15, Needles: span(shaping.R(3), shaping.R(3))},
			{Name: "fourth", Parent: shaping.LeftHalf, FirstRow: 15, LastRow: 15, Needles: span(shaping.R(4), shaping.R(4))},
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := bed.Knit(work); err != nil {
		t.Error(err)
	}
}
