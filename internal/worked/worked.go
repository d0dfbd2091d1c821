// Package worked holds pieces worked by hand for the tests of several packages.
package worked

import (
	"slices"

	"example.com/walewise/shaping"
)

// HandFront returns the panels of a front of 110 stitches worked out by hand:
// neck of 40 with 14 in the middle, shoulders of 35, the neck from row 127, 24
// rows deep, the shoulders falling over 6 rows, everything by holding. Common
// practice, no source.
func HandFront() shaping.Tree {
	neck := held(127, -4, 129, -3, 131, -2, 133, -1, 135, -1, 137, -1, 139, -1)
	shoulder := held(144, -8, 146, -9, 148, -9)
	return shaping.Tree{
		{Name: shaping.Body, FirstRow: 1, LastRow: 126, Needles: shaping.Centred(110)},
		{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 127, LastRow: 150,
			Needles: shaping.Span{First: shaping.R(8), Last: shaping.R(55)},
			Left:    neck, Right: shoulder,
		},
		{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 127, LastRow: 150,
			Needles: shaping.Span{First: shaping.L(55), Last: shaping.L(8)},
			Left:    shoulder, Right: neck,
		},
	}
}

// HandFrontHeights returns the wale heights of [HandFront] from R1 to R55.
func HandFrontHeights() []int {
	return heights(11, 126, 3, 128, 2, 130, 1, 132, 1, 134, 1, 136, 1, 138, 9, 150, 9, 148, 9, 146, 8, 144)
}

// TinyFront returns the panels of a front of 20 stitches and 12 rows, small
// enough to be read whole.
func TinyFront() shaping.Tree {
	neck, shoulder := held(7, -2, 9, -1), held(10, -2)
	return shaping.Tree{
		{Name: shaping.Body, FirstRow: 1, LastRow: 6, Needles: shaping.Centred(20)},
		{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 7, LastRow: 12,
			Needles: shaping.Span{First: shaping.R(3), Last: shaping.R(10)},
			Left:    neck, Right: shoulder,
		},
		{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 7, LastRow: 12,
			Needles: shaping.Span{First: shaping.L(10), Last: shaping.L(3)},
			Left:    shoulder, Right: neck,
		},
	}
}

// held returns a schedule of holds from pairs of row and stitches.
func held(pairs ...int) shaping.Schedule { return steps(shaping.Hold, pairs...) }

// heights returns wale heights from pairs of a number of wales and their height.
func heights(pairs ...int) []int {
	var list []int
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, slices.Repeat(pairs[i+1:i+2], pairs[i])...)
	}
	return list
}
