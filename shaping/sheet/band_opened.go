package sheet

import (
	"fmt"
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
func (b bandWriter) alongOpening(s garment.Strip) {
	edge := has(s, func(p garment.Part) bool { return p.Kind == garment.EdgePart })
	neck := has(s, func(p garment.Part) bool { return p.Kind == garment.SeamPart })
	what := "the neck"
	switch {
	case edge && neck:
		what = "front edge and neck"
	case edge:
		what = "the front edge"
	}
	if neck {
		b.step(fmt.Sprintf("Join both shoulders, if that is not done yet: %s.", b.bothShoulders()))
	}
	if b.work.Place == shaping.Hand {
		b.step(fmt.Sprintf("RS facing, pick up and knit along %s from right to left, in this order%s:", what, b.freed(s, "; put live sts back on the needle and knit them"+b.withTheirWraps(s))))
		return
	}
	how := b.hanging(s)
	if edge {
		how = append(how, "the front edge by half its edge stitch")
	}
	b.step(fmt.Sprintf("Hang %s on %v, the purl side facing you, from left to right as listed: %s.%s", what, s.Needles, strings.Join(how, "; "), b.beyond(s)))
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

// ofFront says where a part of one of two fronts lies. Picking up goes up the right front and
// down the left one.
func (b bandWriter) ofFront(p garment.Part) string {
	up, down := "the steps up from the front edge", "the steps down to the front edge"
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

// buttonholes says where those of a front are, nothing for a strip without buttons.
func (b bandWriter) buttonholes(s garment.Strip) []string {
	var steps []string
	for _, p := range s.Parts {
		if len(p.Buttons) > 0 {
			steps = append(steps, b.holesAlong(p, s))
		}
	}
	if len(steps) == 0 {
		return nil
	}
	return append(steps, "Only one of the two fronts has buttonholes, by custom the wearer's right for women and the left for men; on the other one the buttons are sewn opposite to them.")
}

// holesAlong says where the buttonholes of one front are. Each takes two stitches, that of
// the button and the one below it on the front.
func (b bandWriter) holesAlong(p garment.Part, s garment.Strip) string {
	const lowest = 3 // rows of a band that has room for holes
	if b.layer() < lowest {
		return fmt.Sprintf("The band of the %s is too low for buttonholes: make loops at its edge instead, or knit it higher.", p.Piece)
	}
	lower := -1
	if p.Piece == shaping.LeftFront {
		lower = 1
	}
	text := "On the way, if the buttonholes are on the " + p.Piece + ": "
	if b.work.Place == shaping.Hand {
		row := max(b.layer()/2/2*2, 2) // an RS row, which runs as the stitches were picked up
		var pairs []string
		for _, at := range p.Buttons {
			pairs = append(pairs, fmt.Sprintf("%d and %d", min(at, at+lower), max(at, at+lower)))
		}
		text += fmt.Sprintf("in row %d (RS) k2tog, yo over sts %s, counted from the beginning of the row", row, strings.Join(pairs, ", "))
		if b.band.Folded {
			text += fmt.Sprintf("; and again in the %dth row after the fold (RS)", b.layer()-row+1)
		}
		return text + "."
	}
	var moved []string
	for _, at := range p.Buttons {
		n := s.Needles.First.Toward(shaping.Right, at-1)
		moved = append(moved, fmt.Sprintf("%v to %v", n, n.Toward(shaping.Right, lower)))
	}
	half := b.layer() / 2
	text += fmt.Sprintf("at counter %03d move one stitch to the needle beside it for each, %s, and leave the empty needles in work", half, strings.Join(moved, ", "))
	if b.band.Folded {
		text += fmt.Sprintf("; and again at counter %03d, in the second layer", b.band.Rows+1-half)
	}
	return text + "."
}

// openedJoining returns the first steps of joining two fronts and a back with bands.
func (s *setWriter) openedJoining(front *writer) []string {
	list := []string{fmt.Sprintf("Both shoulders: %s, as their instructions call them.", front.bothShoulders())}
	for _, band := range s.bands {
		list = append(list, fmt.Sprintf("The %s, %s: see %s, after the pieces.", band.Name, plural.Stitches(band.Stitches()), strings.ToUpper(band.Name)))
	}
	return list
}
