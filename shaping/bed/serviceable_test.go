package bed_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/order"
)

// serviceableFront has neck and armhole shaped at the same time. Source: Handbook of
// Wool Knitting and Crochet, 1918, "A serviceable sweater": 65 stitches; 1 narrowed on
// each odd row 111 to 171; at the armhole 3 bound off on rows 120, 122, 124 and 1 on
// rows 126, 128; 1 more on rows 172, 176, 180 and 1 less on the odd rows 173 to 183.
//
// Read here: a bind off opens its row, so the even rows start at the armhole and the
// odd ones at the neck. Odd rows are right-side rows, as they are everywhere in this
// module, and run from the right, so the armhole is the left edge: the wearer's right
// front. The widening is at the armhole, since the neck narrows on. How the rows below
// 111 are shaped and what becomes of the last stitches is not known: plain, and live.
func serviceableFront() order.Outline {
	armhole := slices.Concat(boundOffEach(120, 3, 3, 3, 1, 1),
		shaping.Expand(shaping.Phrase{From: 172, Every: 4, Stitches: 1, Times: 3}).By(shaping.Fashioned, shaping.Fashioned))
	neck := slices.Concat(everyOther(shaping.Fashioned, 111, -1, 31), everyOther(shaping.Fashioned, 173, -1, 6))
	return twoNeedles("right front", shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: 183, Needles: shaping.Centred(65),
		Left: armhole, Right: neck,
	})
}

// The counts printed at rows 171 and 183 come off the needles.
func TestNeckAndArmholeAtTheSameTime(t *testing.T) {
	cloth := knit(t, plan(t, serviceableFront()))
	for _, c := range []struct {
		row, inWork int
		ledger      shaping.Ledger
	}{
		{110, 65, shaping.Ledger{CastOn: 65, Live: 65}},
		{171, 23, shaping.Ledger{CastOn: 65, Decreased: 31, BoundOff: 11, Live: 23}},
		{183, 20, shaping.Ledger{CastOn: 65, Increased: 3, Decreased: 37, BoundOff: 11, Live: 20}},
	} {
		got := courseOf(t, cloth, shaping.Body, c.row)
		if got.Needles.Len() != c.inWork {
			t.Errorf("row %d: %d stitches, printed %d", c.row, got.Needles.Len(), c.inWork)
		}
		if diff := cmp.Diff(c.ledger, got.Ledger); diff != "" {
			t.Errorf("row %d (-printed +counted):\n%s", c.row, diff)
		}
	}
}

// The printed row numbers leave no choice of the edges: with the armhole at the other
// one its bind offs would stand where their rows end.
func TestArmholeEdgeIsForced(t *testing.T) {
	o := serviceableFront()
	body := &o.Panels[0]
	body.Left, body.Right = body.Right, body.Left
	_, err := order.Arrange(o)
	const want = "order: right front, body, row 120, right edge: the row ends here: stitches are bound off where a row starts, at row 119 or 121"
	if err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}
