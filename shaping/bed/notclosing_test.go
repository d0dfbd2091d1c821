package bed_test

import (
	"errors"
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// handbookFront is a front whose published numbers do not close, with the shoulders
// bound off in thirds of that size. Source: handbook text of the Dummies series
// (knittingmagic.biz, guide 4): 69 stitches, 27 worked, 15 in the middle; at each side
// of it 3 once, 2 twice, 1 twice; shoulders bound off by 9 on the next 6 rows. The neck
// takes 9 of the 27, and the shoulder would need all of them.
//
// Read here: in the hand, each half by itself, so that of 6 rows 3 start at its
// shoulder. The last third is bound off after the last row. Which rows of the piece
// they are is not printed and chosen here.
func handbookFront(third int) order.Outline {
	middle := shaping.Centred(15)
	o := twoNeedles("front",
		shaping.Panel{Name: shaping.Body, FirstRow: 1, LastRow: 40, Needles: shaping.Centred(69)},
		shaping.Panel{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 54,
			Needles: middle.Beyond(shaping.Right, 27),
			Left:    boundOffEach(42, 3, 2, 2, 1, 1), Right: boundOffEach(51, third, third),
		},
		shaping.Panel{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 41, LastRow: 55,
			Needles: middle.Beyond(shaping.Left, 27),
			Left:    boundOffEach(52, third, third), Right: boundOffEach(43, 3, 2, 2, 1, 1),
		})
	o.Centre, o.Top = order.BoundOff, order.BoundOff
	return o
}

// The published numbers are refused, by the planner and by the judge; with thirds of
// the 18 stitches that the neck leaves the same front is knitted.
func TestPublishedFrontThatDoesNotClose(t *testing.T) {
	const printed, closes = 9, 6
	work := plan(t, handbookFront(closes))
	cloth := knit(t, work)
	if got := courseOf(t, cloth, shaping.RightHalf, 50).Needles.Len(); got != 18 {
		t.Errorf("the neck leaves %d stitches, want 18", got)
	}

	_, err := order.Arrange(handbookFront(printed))
	const want = "order: front: panel right half row 53: a panel keeps at least one stitch in work"
	if err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}

	// The same numbers written into the work that closes, row by row.
	edited := work.Clone()
	edited.Panels = handbookFront(printed).Panels
	first := lastRow(edited, shaping.Body) + 1
	for i := range edited.Rows[first:] {
		row := &edited.Rows[first+i]
		if row.Panel != shaping.RightHalf || row.Row < 51 {
			continue
		}
		row.Knit = edited.Panels[1].InWork(row.Row)
		if row.Row == 51 || row.Row == 53 {
			before := edited.Panels[1].InWork(row.Row - 1)
			row.Before[0].Needles = before.Edge(shaping.Right, printed)
		}
	}
	for _, c := range []struct {
		name   string
		change func(w *shaping.Work)
		want   string
		kind   error
	}{
		{
			"said in the schedules", func(*shaping.Work) {},
			"front: panel right half row 53: a panel keeps at least one stitch in work", bed.ErrUntrue,
		},
		{
			// Schedules that stop in time leave it to the needles.
			"kept out of the schedules", func(w *shaping.Work) {
				w.Panels[1].Right, w.Panels[2].Left = w.Panels[1].Right[:1], w.Panels[2].Left[:1]
			},
			"front, right half, row 53, needle R18: a panel keeps at least one stitch in work", bed.ErrImpossible,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := edited.Clone()
			c.change(&w)
			_, err := bed.Knit(w)
			if got := asRefusal(t, err); got.Error() != c.want || !errors.Is(got, c.kind) {
				t.Errorf("got %v\nwant %s", got, c.want)
			}
		})
	}
}
