package bed_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// The wale heights of the front worked by hand, held and bound off, on the bed and on
// two needles. Common practice, no source.
func TestHandFronts(t *testing.T) {
	held := shaping.Ledger{CastOn: 110, Live: 110}
	boundOff := shaping.Ledger{CastOn: 110, BoundOff: 96, Live: 14}
	for _, c := range []struct {
		name        string
		outline     order.Outline
		right, left []int // from the middle outwards
		rows        int
		ledger      shaping.Ledger
	}{
		{
			"held on the bed", outline(worked.HandFront(), order.OnWaste, order.OnWaste),
			worked.HandFrontHeights(), worked.HandFrontHeights(), 174, held,
		},
		{
			"bound off on the bed", outline(worked.HandFrontBoundOff(), order.OnWaste, order.BoundOff),
			worked.HandFrontBoundOffHeights(), worked.HandFrontBoundOffHeights(), 174, boundOff,
		},
		{
			"held in the hand", inHand(outline(worked.InHand(worked.HandFront()), order.OnWaste, order.OnWaste)),
			worked.HandFrontHeights(), worked.HandFrontLeftInHand(), 175, held,
		},
		{
			"bound off in the hand", inHand(outline(worked.InHand(worked.HandFrontBoundOff()), order.OnWaste, order.BoundOff)),
			worked.HandFrontBoundOffHeights(), worked.HandFrontBoundOffLeftInHand(), 175, boundOff,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			cloth := knit(t, plan(t, c.outline))
			if diff := cmp.Diff(c.right, heights(cloth, r(1), shaping.Right)); diff != "" {
				t.Errorf("right half (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(c.left, heights(cloth, l(1), shaping.Left)); diff != "" {
				t.Errorf("left half (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(c.ledger, cloth.Ledger()); diff != "" {
				t.Errorf("ledger (-want +got):\n%s", diff)
			}
			if cloth.Rows() != c.rows {
				t.Errorf("%d rows in all, want %d", cloth.Rows(), c.rows)
			}
		})
	}
}

// heights returns the heights of all wales from n outwards.
func heights(cloth bed.Cloth, n shaping.Needle, side shaping.Side) []int {
	var list []int
	for ; cloth.Needles().Contains(n); n = n.Toward(side, 1) {
		list = append(list, cloth.Height(n))
	}
	return list
}

// The rows of the first half as they were worked by hand: where each starts, on which
// needles it is knitted, which needle is wrapped after it. Common practice, no source.
func TestHandFrontRowByRow(t *testing.T) {
	type row struct {
		row   int
		from  shaping.Side
		knit  shaping.Span
		wraps shaping.Needle
	}
	right, left := shaping.Right, shaping.Left
	want := []row{
		{127, right, span(r(12), r(55)), r(11)}, {128, left, span(r(12), r(55)), 0},
		{129, right, span(r(15), r(55)), r(14)}, {130, left, span(r(15), r(55)), 0},
		{131, right, span(r(17), r(55)), r(16)}, {132, left, span(r(17), r(55)), 0},
		{133, right, span(r(18), r(55)), r(17)}, {134, left, span(r(18), r(55)), 0},
		{135, right, span(r(19), r(55)), r(18)}, {136, left, span(r(19), r(55)), 0},
		{137, right, span(r(20), r(55)), r(19)}, {138, left, span(r(20), r(55)), 0},
		{139, right, span(r(21), r(55)), r(20)}, {140, left, span(r(21), r(55)), 0},
		{141, right, span(r(21), r(55)), 0}, {142, left, span(r(21), r(55)), 0}, {143, right, span(r(21), r(55)), 0},
		{144, left, span(r(21), r(47)), r(48)}, {145, right, span(r(21), r(47)), 0},
		{146, left, span(r(21), r(38)), r(39)}, {147, right, span(r(21), r(38)), 0},
		{148, left, span(r(21), r(29)), r(30)}, {149, right, span(r(21), r(29)), 0},
		{150, left, span(r(21), r(55)), 0},
	}
	for _, c := range []struct {
		name    string
		outline order.Outline
	}{
		{"bed", outline(worked.HandFront(), order.OnWaste, order.OnWaste)},
		{"hand", inHand(outline(worked.InHand(worked.HandFront()), order.OnWaste, order.OnWaste))},
	} {
		t.Run(c.name, func(t *testing.T) {
			cloth := knit(t, plan(t, c.outline))
			wraps := map[int]shaping.Needle{}
			for wrap := range cloth.Wraps() {
				if wrap.Panel == shaping.RightHalf {
					wraps[wrap.Row] = wrap.Needle
				}
			}
			var got []row
			for course := range cloth.Courses() {
				if course.Panel == shaping.RightHalf {
					got = append(got, row{course.Row, course.From, course.Needles, wraps[course.Row]})
				}
			}
			if diff := cmp.Diff(want, got, cmp.AllowUnexported(row{})); diff != "" {
				t.Errorf("(-by hand +knitted):\n%s", diff)
			}
		})
	}
}
