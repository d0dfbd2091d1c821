package worked

import "example.com/walewise/shaping"

// HandFrontBoundOff returns the panels of [HandFront] with neck and shoulders
// bound off instead of held: every step where a row starts. The last stitches are
// bound off after row 150. Common practice, no source.
func HandFrontBoundOff() shaping.Tree {
	neck := steps(shaping.BindOff, 128, -4, 130, -3, 132, -2, 134, -1, 136, -1, 138, -1, 140, -1)
	shoulder := steps(shaping.BindOff, 145, -8, 147, -9, 149, -9)
	tree := HandFront()
	tree[1].Left, tree[1].Right = neck, shoulder
	tree[2].Left, tree[2].Right = shoulder, neck
	return tree
}

// HandFrontBoundOffHeights returns the wale heights of [HandFrontBoundOff] from
// R1 to R55.
func HandFrontBoundOffHeights() []int {
	return heights(7, 126, 4, 127, 3, 129, 2, 131, 1, 133, 1, 135, 1, 137, 1, 139, 9, 150, 9, 148, 9, 146, 8, 144)
}

// ArmholeFront returns the panels of a front of 60 stitches, the first row from the
// right: armholes bound off one row apart at the two edges and then decreased at
// both ends, neck and shoulders bound off. Common practice, no source.
func ArmholeFront() shaping.Tree {
	decreases := steps(shaping.Fashioned, 15, -1, 17, -1, 19, -1)
	neck := steps(shaping.BindOff, 32, -3, 34, -2)
	shoulder := steps(shaping.BindOff, 37, -4, 39, -4)
	return shaping.Tree{
		{
			Name: shaping.Body, FirstRow: 1, LastRow: 30, Needles: shaping.Centred(60),
			Left:  append(steps(shaping.BindOff, 12, -4, 14, -2), decreases...),
			Right: append(steps(shaping.BindOff, 11, -4, 13, -2), decreases...),
		},
		{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 31, LastRow: 40,
			Needles: shaping.Span{First: shaping.R(6), Last: shaping.R(21)},
			Left:    neck, Right: shoulder,
		},
		{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 31, LastRow: 40,
			Needles: shaping.Span{First: shaping.L(21), Last: shaping.L(6)},
			Left:    shoulder, Right: neck,
		},
	}
}

// FlaredStrip returns the panel of a strip of 12 stitches, the first row from the
// right: increased at both ends, then cast on at one edge after the other, decreased,
// and held at the left over its last rows. Common practice, no source.
func FlaredStrip() shaping.Tree {
	increases := steps(shaping.Fashioned, 3, 1, 6, 1)
	left := append(append(increases, steps(shaping.CastOn, 10, 3)...), steps(shaping.Fashioned, 12, -1)...)
	right := append(append(steps(shaping.Fashioned, 3, 1, 6, 1), steps(shaping.CastOn, 9, 3)...), steps(shaping.Fashioned, 12, -2)...)
	return shaping.Tree{{
		Name: shaping.Body, FirstRow: 1, LastRow: 16, Needles: shaping.Centred(12),
		Left: append(left, held(13, -2, 15, -2)...), Right: right,
	}}
}

// steps returns a schedule of one method from pairs of row and stitches.
func steps(method shaping.Method, pairs ...int) shaping.Schedule {
	var s shaping.Schedule
	for i := 0; i < len(pairs); i += 2 {
		s = append(s, shaping.Step{Row: pairs[i], Stitches: pairs[i+1], Method: method})
	}
	return s
}
