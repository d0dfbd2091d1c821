package bed_test

import (
	"slices"
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/order"
)

// Sleeves and their caps, knitted in the hand. Which rows of the piece they are is chosen
// here where it is not printed.
func TestPublishedSleeves(t *testing.T) {
	const (
		wool1918 = "Handbook of Wool Knitting and Crochet, 1918"
		pretty   = "juliatrice.com, Pretty sleeves, part 1"
	)
	sloped := boundOffInTurn(11, 6, 6, 2, 2, 1, 1).and(decreasedInTurn(12, 4))
	knitPrinted(t, []printed{
		{
			// Bind offs only; each side: 5 once, 3 twice, 2 eleven times, 1 three times, 2 once.
			"cap of 99 stitches", capSource, cap99(capSides),
			stepped(23, 5, 3, 3, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1, 1, 1, 2),
			[]count{{shaping.Body, 46, 23}},
		},
		{
			// 5 bound off on 2 rows, 1 decreased at each end of every other row 4 times, then of
			// every row 14 times, so that the decreases stand in rows next to each other.
			"cap with decreases in every row", "kniftyred.blogspot.com; 60 stitches computed",
			boundOffInTurn(11, 5, 5).and(atBothEnds(13, 2, -1, 4)).and(atBothEnds(20, 1, -1, 14)).piece("sleeve", 60, 33),
			stepped(14, slices.Concat([]int{5}, ones(18))...),
			[]count{{shaping.Body, 12, 50}, {shaping.Body, 33, 14}},
		},
		{
			// How many stitches there are is chosen here, for this cap and the next.
			"underarm in steps", pretty,
			boundOffInTurn(11, 6, 6, 3, 3, 2, 2).piece("sleeve", 40, 20),
			stepped(18, 6, 3, 2), []count{{shaping.Body, 20, 40 - 2*11}},
		},
		{
			// A decrease at the end of the row before is one of the stitches bound off.
			"underarm in slopes", pretty, sloped.piece("sleeve", 40, 20),
			stepped(18, 6, 1, 2, 1, 1), []count{{shaping.Body, 20, 40 - 2*11}},
		},
		{
			// From the top: 1 less at each end of every 8th row, plain to row 120.
			"sleeve of 97 stitches", wool1918,
			atBothEnds(9, 8, -1, 12).piece("sleeve", 97, 120), stepped(73, ones(12)...),
			[]count{{shaping.Body, 97, 73}, {shaping.Body, 120, 73}},
		},
		{
			// 2 more at each end of every other row 10 times, 1 less at each end of every 12th
			// row 9 times.
			"sleeve of 34 stitches", wool1918 + ", Costume for the winter-girl",
			atBothEnds(3, 2, 2, 10).and(atBothEnds(33, 12, -1, 9)).piece("sleeve", 34, 140), nil,
			[]count{{shaping.Body, 21, 74}, {shaping.Body, 32, 74}, {shaping.Body, 129, 56}, {shaping.Body, 140, 56}},
		},
		{
			// 1 less at each end of every 4th row.
			"sleeve of 104 stitches", "Chadwick's Red Heart Shetland Floss leaflet, size 34 (freevintageknitting.com/print/2099)",
			atBothEnds(5, 4, -1, 19).piece("sleeve", 104, 90), stepped(66, ones(19)...),
			[]count{{shaping.Body, 77, 66}, {shaping.Body, 90, 66}},
		},
		{
			// 1 less at each end of every 8th ridge 8 times; a ridge is two rows.
			"sleeve of 72 stitches", wool1918 + ", Ladies' sweater; 56 stitches computed",
			atBothEnds(17, 2*8, -1, 8).piece("sleeve", 72, 140), stepped(56, ones(8)...),
			[]count{{shaping.Body, 129, 56}},
		},
		{
			// 2 bound off at each side, then 15 pairs in the 15 right-side rows of 30 rows.
			"raglan sleeve of 40 stitches", "slippedstitches.wordpress.com, baby sweater",
			boundOffInTurn(11, 2, 2).and(atBothEnds(13, 2, -1, 15)).piece("sleeve", 40, 42),
			stepped(6, slices.Concat([]int{2}, ones(15))...), []count{{shaping.Body, 42, 6}},
		},
	})
}

const capSource = "to-knit-knitting-stitches.com, reader's question and answer, 21 February 2021"

// capSides are the stitches bound off at each side of the cap of 99 stitches.
var capSides = slices.Concat([]int{5, 3, 3}, slices.Repeat([]int{2}, 11), []int{1, 1, 1, 2})

// cap99 is the sleeve of 99 stitches with those bound off at each side of its cap.
func cap99(sides []int) order.Outline {
	var rows []int
	for _, stitches := range sides {
		rows = append(rows, stitches, stitches)
	}
	return boundOffInTurn(11, rows...).piece("sleeve", 99, 46)
}
