package draw

import (
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// facing returns the side of the fabric that is shown of a piece.
func (l Look) facing(p garment.Piece) shaping.Facing {
	if l.Facing.IsValid() {
		return l.Facing
	}
	return p.Work.Facing
}

// flips reports whether a piece is shown on the side that does not face the knitter.
func (l Look) flips(p garment.Piece) bool { return l.facing(p) != p.Work.Facing }

// shown returns the side of the paper on which a side of a piece lies.
func shown(s shaping.Side, flipped bool) shaping.Side {
	if flipped {
		return s.Opposite()
	}
	return s
}

// view says which side of the fabric is seen, and what that makes of left and right.
func view(p garment.Piece, facing shaping.Facing) (side, means string) {
	side = "Right side view: the knit side faces you"
	if facing == shaping.PurlSide {
		side = "Wrong side view: the purl side faces you"
	}
	switch seen := facing == p.Work.Facing; {
	case p.Work.Place == shaping.Bed && seen:
		return "Bed view: the purl side faces you", "left and right are those of the bed"
	case p.Work.Place == shaping.Bed:
		return side, "left and right are the other way round than at the bed"
	case seen:
		return side, "odd rows begin at the right"
	}
	return side, "odd rows begin at the left"
}
