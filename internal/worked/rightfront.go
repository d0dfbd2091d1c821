package worked

import "example.com/walewise/shaping"

// RightFront is one of two fronts on the bed, small enough to be checked by hand: 10
// stitches, of which 2 and 1 are held at the neck, its left edge, 1 at the underarm, and 2 and
// 2 from row 4 on at the shoulder, which come back for row 8. Invented.
func RightFront() shaping.Tree {
	return shaping.Tree{{
		Name: shaping.Body, FirstRow: 1, LastRow: 8, Needles: shaping.Centred(10),
		Left:  held(3, -2, 5, -1),
		Right: held(2, -1, 4, -2, 6, -2),
	}}
}

// RightFrontHeights returns the heights of its wales from the left: with the closing row on
// those of the shoulder.
func RightFrontHeights() []int { return heights(2, 2, 1, 4, 2, 8, 2, 6, 2, 4, 1, 1) }
