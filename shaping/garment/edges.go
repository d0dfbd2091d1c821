package garment

import (
	"errors"
	"math"
	"strings"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// twoEdges is a drawn edge as it is worked at the left and at the right of the
// piece. The rows of the schedules are rows of the piece; FirstRow is where the
// drawing begins.
type twoEdges struct{ left, right Edge }

// at returns the edge on one side.
func (t twoEdges) at(side shaping.Side) Edge {
	if side == shaping.Left {
		return t.left
	}
	return t.right
}

// lay sets the edge at both sides from traced steps: rowAt says at which row of the piece
// each is worked there, startAt at which row the drawing begins.
func (f *trunk) lay(edges *twoEdges, d drawing, traced shaping.Schedule, rowAt func(shaping.Side, shaping.Step) int, startAt func(shaping.Side) int) error {
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		steps := moved(traced, func(step shaping.Step) int { return rowAt(side, step) })
		edge, err := f.worked(d, steps, startAt(side))
		if err != nil {
			return err
		}
		if side == shaping.Left {
			edges.left = edge
		} else {
			edges.right = edge
		}
	}
	return nil
}

// drawing is an edge drawn in a box of whole stitches and rows, and how it may be
// worked.
type drawing struct {
	name           string
	edge           curve.Edge
	stitches, rows int
	rules          shaping.Rules
	methods        Pair
}

// trace returns the steps by which the drawing is followed; rows count from 1. Where
// several stitches are held or bound off and single ones decreased, the decreases come
// last, which is common practice: a bind off would undo the edge that they make.
func (d drawing) trace() (shaping.Schedule, error) {
	traced, err := curve.Trace(d.edge, d.stitches, d.rows, d.rules)
	if err != nil {
		return nil, err
	}
	steps := traced.Schedule
	if d.methods.mixed() && tied(d.methods.Several) && !decreasesLast(steps) {
		steps = d.inOrder(steps)
	}
	return steps.By(d.methods.Several, d.methods.Single), nil
}

// decreasesLast reports whether no step of several stitches follows a single one.
func decreasesLast(steps shaping.Schedule) bool {
	single := false
	for _, step := range steps {
		if step.Stitches == -1 {
			single = true
		} else if single {
			return false
		}
	}
	return true
}

// inOrder returns the steps of least area among all whose single ones come last: it
// tries every row as the last for several stitches. If there are none it returns the
// steps given.
func (d drawing) inOrder(steps shaping.Schedule) shaping.Schedule {
	least := math.Inf(1)
	for _, last := range d.lastRows() {
		rules := d.rules
		rules.SeveralUntil = last
		if last == 0 {
			rules.Most = 1
		}
		if late := last - rules.Single.Phase; late > 0 {
			every := rules.BeatOf(1).Every
			rules.Single.Phase += (late + every - 1) / every * every
		}
		traced, err := curve.Trace(d.edge, d.stitches, d.rows, rules)
		if err != nil {
			continue // no way with so few rows of one kind
		}
		m, err := curve.Measure(d.edge, d.stitches, d.rows, d.rules, traced.Schedule)
		if err == nil && m.Area < least {
			least, steps = m.Area, traced.Schedule
		}
	}
	return steps
}

// lastRows returns the rows tried as the last for several stitches, 0 for none: all that
// are allowed, and of an edge larger than any body's, where each try takes long, a few.
func (d drawing) lastRows() []int {
	const (
		large = 200 * 100 // rows times stitches
		few   = 32
	)
	beat := d.rules.BeatOf(2)
	every := beat.Every
	if d.rows*d.stitches > large {
		every *= 1 + d.rows/(every*few)
	}
	rows := []int{0}
	for row := beat.Phase + 1; row <= d.rows; row += every {
		rows = append(rows, row)
	}
	return rows
}

// worked returns the drawn edge as it is worked by these steps, in rows of the piece,
// with the drawing beginning at firstRow.
func (f *trunk) worked(d drawing, steps shaping.Schedule, firstRow int) (Edge, error) {
	m, err := curve.Measure(d.edge, d.stitches, d.rows, d.rules, steps.Shifted(1-firstRow))
	if err != nil {
		return Edge{}, err
	}
	cell := f.gauge.Width(1).Centimetres().Mul(f.gauge.Height(1).Centimetres()).InexactFloat64()
	width := f.gauge.Width(1).Millimetres()
	return Edge{
		Name: d.name, Path: d.edge.Path(), Stitches: d.stitches, Rows: d.rows, FirstRow: firstRow, Schedule: steps,
		Area: m.Area * cell, Floor: m.Floor * cell,
		Deviation: gauge.Millimetres(width.Mul(decimal.NewFromFloat(m.Deviation)).Round(3)),
	}, nil
}

// edges returns the drawn edges for the report: rows of their schedules count from
// their first row, and each stands under the panel where its first step lies.
func (f *trunk) edges() []Edge {
	var edges []Edge
	for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
		half := shaping.RightHalf
		if side == shaping.Left {
			half = shaping.LeftHalf
		}
		neck := f.neckEdge.at(side)
		neck.Panel, neck.Side = half, side.Opposite()
		edges = append(edges, neck.counted())
		if f.armholeEdge.at(side).Stitches == 0 {
			continue
		}
		armhole := f.armholeEdge.at(side)
		armhole.Panel, armhole.Side = half, side
		if armhole.Schedule[0].Row <= f.heights.NeckStart() {
			armhole.Panel = shaping.Body
		}
		edges = append(edges, armhole.counted())
	}
	return edges
}

// counted returns the edge with its steps counted from its first row.
func (e Edge) counted() Edge {
	e.Schedule = e.Schedule.Shifted(1 - e.FirstRow)
	return e
}

// nearest returns the requests that an error of the trace names.
func nearest(err error) []curve.Request {
	if fault := (*curve.Error)(nil); errors.As(err, &fault) {
		return fault.Nearest
	}
	return nil
}

// ways joins what would work, the last resort if there is nothing else.
func ways(found []string, otherwise string) string {
	if len(found) == 0 {
		return otherwise
	}
	return strings.Join(found, ", or ")
}
