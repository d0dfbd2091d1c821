package sheet

import "example.com/walewise/shaping"

// What kind of piece it is: a front or a back has halves, one of two fronts and a sleeve
// have none.

// isTrunk reports whether the piece lies before or behind whoever wears it, with armholes
// and shoulders.
func (s *writer) isTrunk() bool { return !s.isSleeve() }

// halved reports whether the piece ends in two halves with a neck between them.
func (s *writer) halved() bool { return len(s.work.Panels) > 1 }

// isBack reports whether a piece with halves lies behind whoever wears it.
func (s *writer) isBack() bool { return s.work.Name == shaping.Back }

// isSleeve reports whether the piece is set into an armhole.
func (s *writer) isSleeve() bool {
	return s.work.Name == shaping.LeftSleeve || s.work.Name == shaping.RightSleeve
}

// counterpart returns what the shoulders of a piece join.
func (s *writer) counterpart() string {
	if s.isBack() {
		return shaping.Front
	}
	return shaping.Back
}

// lies returns the side of the wearer on which one side of the piece lies, as it is seen
// on the facing of the work.
func (s *writer) lies(side shaping.Side) shaping.Side {
	return worn(side, s.work.Facing, s.isBack())
}

// worn returns the side of the wearer on which one side of a front or back lies.
func worn(side shaping.Side, seen shaping.Facing, back bool) shaping.Side {
	if (seen == shaping.KnitSide) != back {
		return side.Opposite() // a front faces away from whoever looks at it
	}
	return side
}

// hasCap reports whether a sleeve ends in a set-in cap.
func (s *writer) hasCap() bool { return s.piece.Heights.Cap > 0 }

// extent returns the needles between the outermost ones that the piece ever has.
func (s *writer) extent() shaping.Span { return s.piece.Cloth.Needles() }

// height returns the rows of the piece where it is highest.
func (s *writer) height() int {
	if s.halved() {
		return s.piece.Heights.Top()
	}
	return s.work.Panels.Height()
}
