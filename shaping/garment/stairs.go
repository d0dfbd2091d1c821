package garment

import (
	"math"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// stairs is a stepped edge from its lower end to its upper one. Heights are in rows.
type stairs struct {
	foot   int // where it begins
	treads []tread
	head   int // where it ends
}

// tread is a level stretch of a stepped edge.
type tread struct{ stitches, height int }

// stairsOf returns the edge that steps make: before its row each leaves a tread as high
// as the rows below it.
func stairsOf(steps shaping.Schedule, foot, head int) stairs {
	s := stairs{foot: foot, head: head}
	for _, step := range steps {
		s.treads = append(s.treads, tread{-step.Stitches, step.Row - 1})
	}
	return s
}

// length returns the length in millimetres of the line through the middles of the
// treads, from the foot to the head, as a seam follows it.
func (s stairs) length(g gauge.Gauge) float64 {
	wale, row := millimetres(g.Width(1)), millimetres(g.Height(1))
	sum, gone, height := 0.0, 0.0, s.foot
	to := func(across float64, up int) {
		x, y := (across-gone)*wale, float64(up-height)*row
		// Products are rounded before they are added, so that all platforms agree.
		sum += math.Sqrt(float64(x*x) + float64(y*y))
		gone, height = across, up
	}
	whole := 0
	for _, t := range s.treads {
		to(float64(whole)+float64(t.stitches)/2, t.height)
		whole += t.stitches
	}
	to(float64(whole), s.head)
	return sum
}

// millimetres returns a length as a number.
func millimetres(l gauge.Length) float64 { return l.Millimetres().InexactFloat64() }

// rounded returns a length in millimetres, rounded to a thousandth.
func rounded(millimetres float64) gauge.Length {
	const places = 3
	return gauge.Millimetres(decimal.NewFromFloat(millimetres).Round(places))
}

// ArmholeLength returns the length along the armhole at one side of a front or a back,
// as it was knitted: from the end of what is taken off at once at the underarm to the tip
// of the shoulder, through the middles of the steps. Sides are those of the piece's facing.
// It is 0 for a sleeve, and for the front edge of a front that is one of two.
func (p Piece) ArmholeLength(side shaping.Side) gauge.Length {
	if !p.hasShoulder(side) {
		return gauge.Length{}
	}
	return rounded(p.outerStairs(side, p.ShoulderRow, p.tip(side)).length(p.Gauge))
}

// NeckLength returns the length along the neck of a front or a back, as it was knitted:
// from shoulder to shoulder, and of one of two fronts from the front edge to the shoulder,
// through the middles of the steps. It is 0 for a sleeve.
func (p Piece) NeckLength() gauge.Length {
	if p.isSleeve() {
		return gauge.Length{}
	}
	sum := p.Gauge.Width(p.Widths.Flat)
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		if p.hasShoulder(side) {
			sum = sum.Add(rounded(p.neckStairs(side).length(p.Gauge)))
		}
	}
	return sum
}

// CapLength returns the length along the cap of a sleeve, as it was knitted: from the end
// of what is taken off at once at one underarm to that at the other, through the middles
// of the steps, without the seam stitches at the top. It is 0 for a piece without a cap.
func (p Piece) CapLength() gauge.Length {
	if p.Heights.Cap == 0 {
		return gauge.Length{}
	}
	sum := p.Gauge.Width(p.Widths.Flat - 2*p.Widths.Seam)
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		sum = sum.Add(rounded(p.outerStairs(side, p.Heights.Top()+1, p.Heights.Top()).length(p.Gauge)))
	}
	return sum
}

// outerStairs returns the edge at one side of the cloth from above the underarm up to
// the row before end, without what is taken off at once; head is where it ends.
func (p Piece) outerStairs(side shaping.Side, end, head int) stairs {
	s := stairs{foot: p.Heights.Underarm, head: head}
	last, begun := 0, false
	for course := range p.Cloth.Courses() {
		if course.Panel != shaping.Body && course.Panel != shaping.HalfAt(side) {
			continue
		}
		at := course.Needles.End(side).Index()
		if side == shaping.Left {
			at = -at
		}
		if gone := last - at; begun && gone > 0 && course.Row >= p.Heights.Underarm && course.Row < end {
			s.treads = append(s.treads, tread{gone, course.Row - 1})
		}
		last, begun = at, true
	}
	if len(s.treads) == 0 {
		return s
	}
	if p.Widths.BindOff > 0 {
		s.foot = s.treads[0].height
		s.treads = s.treads[1:]
		return s
	}
	s.foot = min(s.foot, s.treads[0].height) // one edge may go a row before
	return s
}

// neckStairs returns the edge of the neck at one half of the cloth, from the flat middle
// to the neck point.
func (p Piece) neckStairs(side shaping.Side) stairs {
	half := p.shoulderPanel(side)
	s := stairs{foot: p.Heights.NeckStart(), head: p.Heights.Top() + p.later(side)}
	last, flat := half.Needles.End(side.Opposite()).Index(), 0
	if half.Parent == "" {
		flat = p.Widths.Flat // goes with the first step or before it
	}
	for course := range p.Cloth.Courses() {
		if course.Panel != half.Name {
			continue
		}
		at := course.Needles.End(side.Opposite()).Index()
		if gone := max(at-last, last-at); gone != 0 {
			s.treads = append(s.treads, tread{gone - flat, course.Row - 1})
			flat = 0
		}
		last = at
	}
	return s
}

// tip returns the height of the outermost wale of the shoulder at one side: of what is held
// there the closing row is part.
func (p Piece) tip(side shaping.Side) int {
	half := p.shoulderPanel(side)
	for _, panel := range p.andParent(half) {
		steps := panel.Steps(side).Between(p.ShoulderRow, panel.LastRow)
		switch {
		case len(steps) == 0:
		case steps[0].Method == shaping.Hold:
			return steps[0].Row
		default:
			return steps[0].Row - 1
		}
	}
	return half.LastRow
}

// later returns by how many rows the half at one side ends later than the neck point is
// high: one where steps at the ends of rows are worked in the hand.
func (p Piece) later(side shaping.Side) int {
	return p.shoulderPanel(side).LastRow - p.Heights.Top()
}
