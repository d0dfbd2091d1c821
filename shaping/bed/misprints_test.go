package bed_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// misprint is a piece that closes, and what its publication claims of it all the same.
type misprint struct {
	printed
	claims []claim
}

type claim struct {
	name string
	make func(w *shaping.Work)
	want string // how it is refused
}

// inLedger claims that this is what became of the stitches.
func inLedger(l shaping.Ledger) func(w *shaping.Work) {
	return func(w *shaping.Work) { w.Ledger = l }
}

// inSchedules claims the steps of another outline of the piece.
func inSchedules(o order.Outline) func(w *shaping.Work) {
	return func(w *shaping.Work) { w.Panels = o.Panels }
}

// What does not close is refused as untrue, wherever it is claimed; the same piece with
// numbers that close is knitted. The stitches of the last row stay live.
func TestMisprints(t *testing.T) {
	const cardigan = "Woman's cardigan, Practical Handknits, size 20"
	for _, m := range []misprint{
		{
			// 29 stitches at each side in 30 rows: 9 bound off, 1 in every row 9 times, 1 in
			// every 2nd row 9 times, "104 left". That takes 27 at each side.
			printed{
				"armhole of 29 stitches", "ozlorna.blogspot.com, September 2012; 162 stitches computed from those left",
				thirtyRowArmhole(9), stepped(108, slices.Concat([]int{9}, ones(18))...),
				[]count{{shaping.Body, 10, 104 + 2*29}, {shaping.Body, 40, 104 + 2*(29-27)}},
			},
			[]claim{
				{
					"left over", inLedger(shaping.Ledger{CastOn: 162, Decreased: 36, BoundOff: 22, Live: 104}),
					"back: the ledger says 162 cast on = 36 decreased + 22 bound off + 104 live, counted are 162 cast on = 36 decreased + 18 bound off + 108 live",
				},
				{
					"at the edges", inSchedules(thirtyRowArmhole(9 + 2)),
					"back, body, row 11: at the right edge the schedule says -11 by bindOff, done is -9 by bindOff",
				},
			},
		},
		{
			// 110 stitches; at each side 1 less, 1 less twice, 1 more, 1 more nine times, "126
			// sts". That makes 124.
			printed{
				"cardigan of 110 stitches", cardigan, cardiganBack(10), nil,
				[]count{{shaping.Body, 90, 124}, {shaping.Body, 130, 42 + 12 + 30}, {shaping.Body, 138, 30}},
			},
			[]claim{
				{
					"left over", inLedger(shaping.Ledger{CastOn: 110, Increased: 22, Decreased: 32, BoundOff: 68, Live: 32}),
					"back: the ledger says 110 cast on + 22 increased = 32 decreased + 68 bound off + 32 live, counted are 110 cast on + 20 increased = 32 decreased + 68 bound off + 30 live",
				},
				{
					"at the edges", inSchedules(cardiganBack(11)),
					"back, body, row 81: at the left edge the schedule says +1 by fashioned, done is nothing",
				},
			},
		},
		{
			// With 126 nothing after it is as printed.
			printed{
				"cardigan widened to 126 stitches", cardigan, cardiganBack(11), nil,
				[]count{{shaping.Body, 90, 126}, {shaping.Body, 130, 84 + 2}, {shaping.Body, 138, 30 + 2}},
			},
			[]claim{{
				"left over", inLedger(shaping.Ledger{CastOn: 110, Increased: 22, Decreased: 32, BoundOff: 68, Live: 30}),
				"back: the ledger says 110 cast on + 22 increased = 32 decreased + 68 bound off + 30 live, counted are 110 cast on + 22 increased = 32 decreased + 68 bound off + 32 live",
			}},
		},
		{
			// Steps of the cap of 99 stitches, which leave 23 when they are worked at each side,
			// taken for totals.
			printed{
				"cap read as totals", capSource + "; which steps are totals is concluded from the 53 left",
				capByTotals(), []int{5, 3, 2, 2, 2, 2, 2, 1, 1, 1, 2, 53, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 5},
				[]count{{shaping.Body, 46, 53}},
			},
			[]claim{
				{
					"left over", inLedger(shaping.Ledger{CastOn: 99, BoundOff: 76, Live: 23}),
					"sleeve: the ledger says 99 cast on = 76 bound off + 23 live, counted are 99 cast on = 46 bound off + 53 live",
				},
				{
					"at the edges", inSchedules(cap99(capSides)),
					"sleeve, body, row 15: at the right edge the schedule says -3 by bindOff, done is -2 by bindOff",
				},
			},
		},
	} {
		knitPrinted(t, []printed{m.printed})
		for _, c := range m.claims {
			t.Run(m.name+", "+c.name, func(t *testing.T) {
				work := plan(t, m.outline)
				c.make(&work)
				_, err := bed.Knit(work)
				if got := asRefusal(t, err); got.Error() != c.want || !errors.Is(got, bed.ErrUntrue) {
					t.Errorf("%s: got %v\nwant %s", m.source, got, c.want)
				}
			})
		}
	}
}

// thirtyRowArmhole is the back with that many bound off first at each side. The rows
// below are chosen here.
func thirtyRowArmhole(boundOff int) order.Outline {
	return boundOffInTurn(11, boundOff, boundOff).and(atBothEnds(13, 1, -1, 9)).and(atBothEnds(23, 2, -1, 9)).piece("back", 162, 40)
}

// cardiganBack is the back with that many increases at each side below the armhole, where
// 14 and 20 and 6 stitches go; the shoulders are 42 and 12. Read here: 7 bound off on 2
// rows, then single decreases; the shoulders in the sizes that size 16 has, 6 bound off on
// 2 rows and 7 on 6 rows. Which rows they are is not known and chosen here.
func cardiganBack(increases int) order.Outline {
	return atBothEnds(11, 10, -1, 3).
		and(atBothEnds(41, 4, 1, increases)).
		and(boundOffInTurn(91, 7, 7)).
		and(atBothEnds(93, 2, -1, 13)).
		and(boundOffInTurn(131, 6, 6, 7, 7, 7, 7, 7, 7)).
		piece("back", 110, 138)
}

// capByTotals has 5 and the single stitches at each side, as the cap that closes has, but
// 3 on 2 rows, 2 on 11 rows and 2 on 1 row in all.
func capByTotals() order.Outline {
	return boundOffInTurn(11, slices.Concat([]int{5, 5, 3, 3}, slices.Repeat([]int{2}, 11), ones(6), []int{2})...).piece("sleeve", 99, 46)
}
