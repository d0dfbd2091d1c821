package shaping

// The names of the pieces that a plan document may have. Sleeves and fronts of two halves
// are those of the wearer's left or right.
const (
	Front       = "front"
	Back        = "back"
	LeftSleeve  = "left sleeve"
	RightSleeve = "right sleeve"
	LeftFront   = "left front"
	RightFront  = "right front"
)

// The names of the panels that this library makes. A tree may have other names; a plan
// document may not.
const (
	Body      = "body"
	RightHalf = "right half"
	LeftHalf  = "left half"
)

// HalfAt returns the name of the half on one side, [LeftHalf] or [RightHalf].
func HalfAt(side Side) string {
	if side == Left {
		return LeftHalf
	}
	return RightHalf
}
