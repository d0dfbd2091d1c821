package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Bands of a front that opens, which all are flat. Common practice, no source.

// isFront reports whether a part belongs to one of two fronts.
func isFront(p garment.Part) bool {
	return p.Piece == shaping.RightFront || p.Piece == shaping.LeftFront
}

// alongOpening says how a strip is picked up along neck and fronts.
func (b bandWriter) alongOpening(s garment.Strip) line {
	edge := has(s, func(p garment.Part) bool { return p.Kind == garment.EdgePart })
	neck := has(s, isSeam) || has(s, func(p garment.Part) bool { return p.Kind == garment.SlopePart || p.Kind == garment.StraightPart })
	what := "the neck"
	switch {
	case edge && neck:
		what = "front edge and neck"
	case edge:
		what = "the front edge"
	}
	if b.work.Place == shaping.Hand {
		return step(fmt.Sprintf("RS facing, pick up and knit along %s from right to left, in this order%s:", what, b.freed(s, "; put live sts back on the needle and knit them"+b.withTheirWraps(s))))
	}
	how := b.hanging(s)
	if edge {
		how = append(how, "the front edge by the outer loop of its edge stitch")
	}
	return step(fmt.Sprintf("Hang %s on %v, the purl side facing you, from left to right as listed: %s.%s", what, s.Needles, strings.Join(how, "; "), b.beyond(s)))
}

// bothShoulders says what is joined to what where the front opens.
func (s *writer) bothShoulders() string {
	// The right front lies at the right of the purl side, and at the left of the right side.
	outer := shaping.Right
	if s.work.Facing == shaping.KnitSide {
		outer = shaping.Left
	}
	return fmt.Sprintf("the right front to the %v half of the back, and the left front to the %v half", outer.Opposite(), outer)
}

// bothShouldersStep is the step of joining them.
func (s *writer) bothShouldersStep() string {
	return fmt.Sprintf("Both shoulders: %s, as their instructions call them.", s.bothShoulders())
}

// ofFront says where a part of one of two fronts lies. Picking up goes up the right front and
// down the left one.
func (b bandWriter) ofFront(p garment.Part) string {
	up, down := "the slope up from the front edge", "the slope down to the front edge"
	rows := plural.Rows(p.Rows)
	switch p.Kind {
	case garment.EdgePart:
		up, down = rows+" up the front edge", rows+" down the front edge"
	case garment.StraightPart:
		up, down = rows+" straight up to the shoulder", rows+" straight down from the shoulder"
	}
	if p.Piece == shaping.RightFront {
		return p.Piece + ", " + up
	}
	return p.Piece + ", " + down
}

// endOf says where a band goes over the end of another.
func (b bandWriter) endOf(p garment.Part) string {
	text := fmt.Sprintf("the end of the %s, %s", p.Piece, plural.Rows(p.Rows))
	if b.band.Folded {
		text += " through both layers"
	}
	return text
}

// foldInHand says how a band is folded in the hand.
func (b bandWriter) foldInHand() string {
	switch {
	case b.inTheRound():
		return "purl 1 round"
	case b.layer()%2 == 0:
		return "knit 1 row (WS)"
	}
	return "purl 1 row (RS)"
}

// lowestWithHoles is how many rows a band has at least that has room for buttonholes.
const lowestWithHoles = 3

// beforeHoles returns the rows that are knitted before the buttonholes: half of them, and in
// the hand so many that a RS row follows, which runs as the stitches were picked up.
func (b bandWriter) beforeHoles() int {
	half := b.layer() / 2
	if b.work.Place == shaping.Hand {
		return max(half/2*2, 2) - 1
	}
	return half
}

// buttonholes says where those of a front are, nothing for a strip without buttons.
func (b bandWriter) buttonholes(s garment.Strip) []string {
	var steps []string
	for _, p := range s.Parts {
		switch {
		case len(p.Buttons) == 0:
		case b.layer() < lowestWithHoles:
			steps = append(steps, fmt.Sprintf("The band of the %s is too low for buttonholes: make loops at its edge instead, or knit it higher.", p.Piece))
		default:
			steps = append(steps, b.holesAlong(p, s))
		}
	}
	return steps
}

// holesAlong says where the buttonholes of one front are. Each takes two stitches, that of
// the button and the one below it on the front.
func (b bandWriter) holesAlong(p garment.Part, s garment.Strip) string {
	lower, made := -1, "k2tog, yo"
	if p.Piece == shaping.LeftFront {
		lower, made = 1, "yo, ssk"
	}
	text := fmt.Sprintf("Only if the buttonholes are on the %s (by custom the wearer's right for women, the left for men): ", p.Piece)
	before := b.beforeHoles()
	if b.work.Place == shaping.Hand {
		var pairs []string
		for _, at := range p.Buttons {
			pairs = append(pairs, fmt.Sprintf("%d and %d", min(at, at+lower), max(at, at+lower)))
		}
		if lower > 0 {
			slices.Reverse(pairs) // in the order in which the row is worked
		}
		text += fmt.Sprintf("in the next row (RS), counted from its beginning, %s over sts %s", made, strings.Join(pairs, ", "))
		if b.band.Folded {
			text += fmt.Sprintf("; and again in the %s row after the fold (RS)", plural.Ordinal(b.layer()-before))
		}
	} else {
		var moved []string
		for _, at := range p.Buttons {
			n := s.Needles.First.Toward(shaping.Right, at-1)
			moved = append(moved, fmt.Sprintf("%v onto %v", n, n.Toward(shaping.Right, lower)))
		}
		text += fmt.Sprintf("counter %03d, move these stitches onto the needle beside them: %s. The emptied needles stay in work, and the next row makes the holes", before, strings.Join(moved, ", "))
		if b.band.Folded {
			text += fmt.Sprintf("; do it again at counter %03d, in the second layer", b.band.Rows+1-before)
		}
	}
	return text + ". On the other front the buttons are sewn opposite to them."
}
