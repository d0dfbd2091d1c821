package curve

import (
	"fmt"
	"math"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// Bounds of a box.
const (
	// MaxRows is the greatest number of rows that an edge may have here.
	MaxRows = 2000
	// MaxStitches is the greatest number of stitches that may go at an edge here.
	MaxStitches = 1000
)

func rowsError(rows int) error { return rangeError("rows", rows, fmt.Sprintf("1 to %d", MaxRows)) }

func stitchesError(stitches any) error {
	return rangeError("stitches", stitches, fmt.Sprintf("%d to %d", -MaxStitches, MaxStitches))
}

// Drawing is an edge laid over whole stitches and rows. It is immutable and safe for
// concurrent use. The zero value is no drawing: its methods return an error.
type Drawing struct {
	d        *drawing
	stitches int
	turns    bool
}

// In stretches the edge to a box of that many stitches and rows, so that its own size
// does not matter. Stitches go if the number is positive, and come if it is negative. An
// edge that turns back cannot be stretched so, see [Edge.At].
//
// It returns an [*Error] that wraps [ErrRange] if e is the zero Edge or turns back, if
// there are no rows, or if there are more than [MaxRows] or [MaxStitches].
func (e Edge) In(stitches, rows int) (Drawing, error) {
	switch {
	case e.shape == nil:
		return Drawing{}, noEdge()
	case e.Turns():
		return Drawing{}, rangeError("edge", "that turns back", "one that does not; At lays this one at a gauge")
	}
	if err := checkBox(stitches, rows); err != nil {
		return Drawing{}, err
	}
	return Drawing{d: e.shape.drawing(abs(stitches), rows), stitches: stitches}, nil
}

// At lays the edge over the whole stitches and rows nearest to its width and its height at
// a gauge, halves away from zero.
//
// An edge that turns back keeps its distances across: with x(t) stitches of the drawing
// gone after t rows, f(t) = x(t) + e V(t)/V(R), where e is what the whole number of
// stitches is more than x(R), and V(t) is all that went and came up to t.
//
// It returns an [*Error] that wraps [ErrRange] if e is the zero Edge, if it is lower than
// half a row, or if there are more than [MaxRows], or more than [MaxStitches] anywhere.
func (e Edge) At(g gauge.Gauge) (Drawing, error) {
	if e.shape == nil {
		return Drawing{}, noEdge()
	}
	if g.IsZero() {
		return Drawing{}, rangeError("gauge", "not set", "stitches and rows over a length")
	}
	if l := g.Width(MaxStitches + 1); e.width.Abs().Cmp(l) >= 0 {
		return Drawing{}, stitchesError("over " + e.width.String())
	}
	if l := g.Height(MaxRows + 1); e.height.Cmp(l) >= 0 {
		return Drawing{}, rangeError("edge height", e.height, fmt.Sprintf("at most %d rows at this gauge", MaxRows))
	}
	stitches, rows := g.Stitches(e.width).Round(gauge.Rounding{}), g.Rows(e.height).Round(gauge.Rounding{})
	if rows < 1 {
		return Drawing{}, rangeError("edge height", e.height, "at least half a row at this gauge")
	}
	if !e.Turns() {
		return e.In(stitches, rows)
	}
	if err := checkBox(stitches, rows); err != nil {
		return Drawing{}, err
	}
	o := e.shape.(*outline)
	width, height := e.size()
	// Stitches that one of the outline's units is across.
	unit := o.frame(width, height, 1./millimetre).xScale * stitchesInMillimetre(g)
	if least, most := o.reach(); float64(math.Abs(unit)*(most-least)) > MaxStitches {
		return Drawing{}, rangeError("edge that goes out and in over stitches", math.Ceil(math.Abs(unit)*(most-least)), fmt.Sprintf("at most %d", MaxStitches))
	}
	return Drawing{d: o.turning(unit, stitches, rows), stitches: stitches, turns: true}, nil
}

func stitchesInMillimetre(g gauge.Gauge) float64 {
	const places = 24 // far more than a float has
	return g.Stitches(gauge.Millimetres(decimal.New(1, 0))).Decimal(places).InexactFloat64()
}

// checkBox refuses boxes without rows and those that are too large.
func checkBox(stitches, rows int) error {
	switch {
	case rows < 1 || rows > MaxRows:
		return rowsError(rows)
	case stitches < -MaxStitches || stitches > MaxStitches:
		return stitchesError(stitches)
	}
	return nil
}

// Stitches returns how many stitches go from the lower end to the upper end; fewer than
// 0 if they come.
func (d Drawing) Stitches() int { return d.stitches }

// Rows returns the number of rows.
func (d Drawing) Rows() int {
	if d.d == nil {
		return 0
	}
	return d.d.rows
}

// Turns reports whether the edge turns back, so that stitches go and come.
func (d Drawing) Turns() bool { return d.turns }

// toward returns the sign of stitches that go where levels rise.
func (d Drawing) toward() int {
	if d.turns {
		return 1
	}
	return sign(d.stitches)
}

// levels returns by how many levels the upper end lies above the lower one.
func (d Drawing) levels() int { return d.toward() * d.stitches }

// isFlat reports whether no stitches move.
func (d Drawing) isFlat() bool { return d.d.net == 0 && !d.turns }

// rules returns the rules for the steps of the drawing: those for levels that rise, which
// are the rules for stitches that come where only those do, and where the drawing turns
// also those for levels that fall.
func (d Drawing) rules(r shaping.Rules) (*rules, error) {
	if d.d == nil {
		return nil, rangeError("drawing", "without an edge", "one made by In or At")
	}
	if err := r.Validate(); err != nil {
		return nil, rangeError("rules", "not valid", err.Error())
	}
	return newRules(r.For(-d.toward()), r.For(1), d.turns), nil
}

func abs(n int) int { return max(n, -n) }

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}
