package worked

import "example.com/walewise/shaping"

// RightFront is one of two fronts on the bed, small enough to be checked by hand: 9
// stitches, of which 2 and 1 are held at the neck, its left edge, and 2 and 2 at the
// shoulder, which come back for row 8. Invented.
func RightFront() shaping.Tree {
	return shaping.Tree{{
		Name: shaping.Body, FirstRow: 1, LastRow: 8, Needles: shaping.Centred(9),
		Left:  held(3, -2, 5, -1),
		Right: held(4, -2, 6, -2),
	}}
}

// RightFrontHeights returns the heights of its wales from the left: with the closing row on
// those of the shoulder.
func RightFrontHeights() []int { return []int{2, 2, 4, 8, 8, 6, 6, 4, 4} }
