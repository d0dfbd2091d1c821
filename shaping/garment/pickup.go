package garment

import (
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// PartKind is what an edge consists of where a band is picked up from it.
type PartKind uint8

// The kinds of parts.
const (
	LivePart     PartKind = iota + 1 // the flat middle of a neck, live
	BoundOffPart                     // the flat middle of a neck, bound off
	PointPart                        // where two halves meet without a stitch between them, as in the point of a vee
	SlopePart                        // the steps beside the middle
	StraightPart                     // the rows above the last step
	SeamPart                         // a shoulder seam, along which nothing is knitted
	EdgePart                         // the rows of one of two fronts below its neck
	EndPart                          // the rows of another band, at its end
)

var partWords = [...]string{"", "live", "bound off", "point", "slope", "straight", "seam", "edge", "end"}

// IsValid reports whether k is one of the kinds.
func (k PartKind) IsValid() bool { return k >= LivePart && k <= EndPart }

// String returns "live", "bound off", "point", "slope", "straight", "seam", "edge" or "end".
func (k PartKind) String() string {
	if k.IsValid() {
		return partWords[k]
	}
	return "no part"
}

// Part is a stretch of an edge and the stitches that a band picks up from it.
type Part struct {
	Piece string       // such as "front"; of a seam the piece before it
	Side  shaping.Side // of the piece's facing, of one of two fronts its outer one; none for the middle of a neck
	Kind  PartKind

	// Length is that of the line through the middles of the steps; below straight rows a slope
	// ends at the middle of the last stitch of its last step.
	Length   gauge.Length
	Rows     int // rows that it runs along
	Stitches int // stitches that it runs along
	Steps    int // steps of a slope
	Live     int // live ones of its stitches; each is picked up as it is

	Wanted  gauge.Count  // stitches that its length and its stitches ask for; of two sides that are made equal the mean
	Count   int          // stitches picked up
	Needles shaping.Span // on which it hangs; none in the hand
	Phrase  string       // how Count is spread, in the order in which it is picked up, such as "3 in every 4 rows"

	// Buttons are the stitches at which the buttons of a front edge lie, the lowest first,
	// counted from 1 through all parts of the strip, so that one may lie on the end of the
	// neckband beside the edge. Both fronts have them; holes are made in one of the two.
	Buttons []int
}

// leastStraight is how many rows above the last step are told apart from the slope; fewer
// are counted with it. It is even, as in the hand the rows above the last decrease are at the
// right half, while the left one may have a row more: both are parted alike.
const leastStraight = 6

// neckParts returns the parts of a piece's neck from shoulder to shoulder, beginning at one
// side of the piece, for a band of a gauge.
func (j job) neckParts(p Piece, first shaping.Side, band gauge.Gauge) []Part {
	parts := j.neckSide(p, first, band)
	slices.Reverse(parts)
	parts = append(parts, j.neckMiddle(p))
	return append(parts, j.neckSide(p, first.Opposite(), band)...)
}

// neckSide returns the parts of a neck at one side of the piece, from the middle to the
// neck point.
func (j job) neckSide(p Piece, side shaping.Side, band gauge.Gauge) []Part {
	half := p.shoulderPanel(side)
	live := -half.Steps(side.Opposite()).Of(shaping.Hold).Total()
	if half.Parent == "" && p.flatHeld() {
		live -= p.Widths.Flat
	}
	return edgeParts(Part{Piece: p.Name(), Side: side, Live: live}, p.neckStairs(side), p.Gauge, band)
}

// edgeParts returns the slope of a stepped edge and the straight rows above it, what there
// is of them, from the foot to the head. Of says to which piece and side they belong and
// how many of the slope's stitches are live.
func edgeParts(of Part, s stairs, piece, band gauge.Gauge) []Part {
	rows := s.head - s.foot
	slope, straight := of, of
	slope.Kind, straight.Kind, straight.Live = SlopePart, StraightPart, 0
	for _, t := range s.treads {
		slope.Stitches += t.stitches
	}
	slope.Steps = len(s.treads)
	if slope.Steps > 0 {
		straight.Rows = s.head - s.treads[slope.Steps-1].height
		if straight.Rows < leastStraight {
			straight.Rows = 0
		}
	} else {
		straight.Rows = rows
	}
	var parts []Part
	if slope.Steps > 0 {
		s.head -= straight.Rows
		slope.Rows = rows - straight.Rows
		length := s.length(piece)
		if straight.Rows > 0 {
			// The straight rows stand on the middle of the last stitch.
			length -= millimetres(piece.Width(1)) / 2
		}
		slope.Length = rounded(length)
		slope.Wanted = atLeast(band.Stitches(slope.Length), slope.Live)
		parts = append(parts, slope)
	}
	if straight.Rows > 0 {
		straight.Length = piece.Height(straight.Rows)
		straight.Wanted = band.StitchesAlong(straight.Rows, piece)
		parts = append(parts, straight)
	}
	return parts
}

// atLeast returns the count, or the whole number if that is more.
func atLeast(c gauge.Count, least int) gauge.Count {
	if whole := gauge.Whole(least); c.Cmp(whole) < 0 {
		return whole
	}
	return c
}

// neckMiddle returns the flat middle of a neck, which is picked up stitch by stitch.
func (j job) neckMiddle(p Piece) Part {
	flat := p.Widths.Flat
	m := Part{Piece: p.Name(), Kind: PointPart, Stitches: flat, Length: p.Gauge.Width(flat), Wanted: gauge.Whole(flat)}
	switch {
	case flat == 0:
	case p.flatHeld():
		m.Kind, m.Live = LivePart, flat
	default:
		m.Kind = BoundOffPart
	}
	return m
}

// flatHeld reports whether the flat part of the neck stays live. In the middle of a piece it
// would be bound off with a yarn of its own, and at the edge of one of two fronts by the first
// step.
func (p Piece) flatHeld() bool {
	if outer := p.Outer(); outer.IsValid() {
		steps := p.Work.Panels[0].Steps(outer.Opposite())
		return len(steps) > 0 && steps[0].Method == shaping.Hold
	}
	return !slices.ContainsFunc(p.Work.Rows, func(r shaping.Row) bool {
		return slices.ContainsFunc(r.Before, func(a shaping.Action) bool { return a.Do == shaping.DoBindOff && a.Separate })
	})
}
