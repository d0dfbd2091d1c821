package worked

import (
	"slices"

	"example.com/walewise/shaping"
)

// InHand returns the panels of a front of this package, worked out for a bed with
// the carriage at the right, as they are worked on two needles. A right-side row
// runs from the right in both halves, so that what is held or bound off in the left
// half, here all of it, falls one row later. Common practice, no source.
func InHand(front shaping.Tree) shaping.Tree {
	front = slices.Clone(front)
	left := &front[2]
	left.Left, left.Right = left.Left.Shifted(1), left.Right.Shifted(1)
	left.LastRow++
	return front
}

// HandFrontLeftInHand returns the wale heights of [HandFront] worked [InHand], from
// L1 to L55. From R1 to R55 they are the same as on the bed.
func HandFrontLeftInHand() []int {
	return heights(7, 126, 4, 127, 3, 129, 2, 131, 1, 133, 1, 135, 1, 137, 1, 139, 9, 151, 9, 149, 9, 147, 8, 145)
}

// HandFrontBoundOffLeftInHand returns the wale heights of [HandFrontBoundOff] worked
// [InHand], from L1 to L55. From R1 to R55 they are the same as on the bed.
func HandFrontBoundOffLeftInHand() []int {
	return heights(7, 126, 4, 128, 3, 130, 2, 132, 1, 134, 1, 136, 1, 138, 1, 140, 9, 151, 9, 149, 9, 147, 8, 145)
}
