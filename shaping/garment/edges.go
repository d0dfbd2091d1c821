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

// lay returns the edge at both sides: stepsAt says by which steps it is worked there, in
// rows of the piece, startAt at which row the drawing begins.
func (j job) lay(d drawing, stepsAt func(shaping.Side) shaping.Schedule, startAt func(shaping.Side) int) (twoEdges, error) {
	var edges twoEdges
	var err error
	if edges.left, err = j.worked(d, stepsAt(shaping.Left), startAt(shaping.Left)); err != nil {
		return edges, err
	}
	edges.right, err = j.worked(d, stepsAt(shaping.Right), startAt(shaping.Right))
	return edges, err
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

// trace returns the steps by which the drawing is followed, in as few phrases as the
// default wording has; rows count from 1. Where several stitches are held or bound off
// and single ones decreased, the decreases come last, which is common practice: a bind
// off would undo the edge that they make.
func (d drawing) trace() (shaping.Schedule, error) {
	drawn, err := d.edge.In(d.stitches, d.rows)
	if err != nil {
		return nil, err
	}
	rules := d.rules
	if d.methods.mixed() && tied(d.methods.Several) {
		if rules, err = d.inOrder(drawn); err != nil {
			return nil, err
		}
	}
	steps, err := d.said(drawn, rules)
	return steps.By(d.methods.Several, d.methods.Single), err
}

// large is the size from which on an edge is larger than any body's, in rows times
// stitches: what takes long is then cut short.
const large = 200 * 100

// sayable is how much more area, as a part of the least, steps may have that can be said
// in fewer words.
const sayable = 0.05

// said returns the steps of the fewest phrases that are sayable.
func (d drawing) said(drawn curve.Drawing, rules shaping.Rules) (shaping.Schedule, error) {
	d.rules = rules
	wordings, err := d.wordings(drawn)
	return wordings.Within(sayable).Schedule, err
}

// wordings returns the ways to follow the drawing in few phrases, and of a large edge the
// trace alone.
func (d drawing) wordings(drawn curve.Drawing) (curve.Wordings, error) {
	if d.rows*d.stitches <= large {
		return drawn.Wordings(d.rules, curve.Phrasing{})
	}
	traced, err := drawn.Trace(d.rules, curve.Phrasing{})
	return curve.Wordings{Trace: curve.Wording{Result: traced, Phrases: d.rules.Phrases(traced.Schedule, false)}}, err
}

// inOrder returns the rules with the row that is best as the last for several stitches,
// so that single ones come after it whatever the wording: the one whose trace has the
// least area. If no row will do, it returns the rules as they are.
func (d drawing) inOrder(drawn curve.Drawing) (shaping.Rules, error) {
	traced, err := drawn.Trace(d.rules, curve.Phrasing{})
	if err != nil {
		return d.rules, err
	}
	if last, ok := lastSeveral(traced.Schedule); ok {
		return d.until(last), nil
	}
	least, best := math.Inf(1), d.rules
	for _, last := range d.lastRows() {
		rules := d.until(last)
		traced, err := drawn.Trace(rules, curve.Phrasing{})
		if err != nil {
			continue // no way with so few rows of one kind
		}
		m, err := drawn.Measure(d.rules, traced.Schedule)
		if err == nil && m.Area < least {
			least, best = m.Area, rules
		}
	}
	return best, nil
}

// lastSeveral returns the row of the last step of several stitches, 0 if there is none; it
// is false if a single one comes before it.
func lastSeveral(steps shaping.Schedule) (row int, last bool) {
	single := false
	for _, step := range steps {
		switch {
		case step.Stitches == -1:
			single = true
		case single:
			return 0, false
		default:
			row = step.Row
		}
	}
	return row, true
}

// until returns the rules with steps of several stitches up to a row, 0 for none, and
// single ones after it.
func (d drawing) until(last int) shaping.Rules {
	rules := d.rules
	rules.SeveralUntil = last
	if last == 0 {
		rules.Most = 1
	}
	if late := last - rules.Single.Phase; late > 0 {
		every := rules.BeatOf(1).Every
		rules.Single.Phase += (late + every - 1) / every * every
	}
	return rules
}

// lastRows returns the rows tried as the last for several stitches, 0 for none: all that
// are allowed, and of a large edge a few.
func (d drawing) lastRows() []int {
	const few = 32
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
func (j job) worked(d drawing, steps shaping.Schedule, firstRow int) (Edge, error) {
	m, err := curve.Measure(d.edge, d.stitches, d.rows, d.rules, steps.Shifted(1-firstRow))
	if err != nil {
		return Edge{}, err
	}
	cell := j.gauge.Width(1).Centimetres().Mul(j.gauge.Height(1).Centimetres()).InexactFloat64()
	width := j.gauge.Width(1).Millimetres()
	return Edge{
		Name: d.name, Path: d.edge.Path(), Stitches: d.stitches, Rows: d.rows, FirstRow: firstRow, Schedule: steps,
		Area: m.Area * cell, Floor: m.Floor * cell,
		Deviation: gauge.Millimetres(width.Mul(decimal.NewFromFloat(m.Deviation)).Round(3)),
	}, nil
}

// edges returns the drawn edges for the report: rows of their schedules count from
// their first row, and each stands under the panel where its first step lies.
func (f *trunk) edges() ([]Edge, error) {
	var edges []Edge
	for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
		half := shaping.HalfAt(side)
		if f.outer.IsValid() {
			if side != f.outer {
				continue
			}
			half = shaping.Body
		}
		neck := f.neckEdge.at(side)
		neck.Panel, neck.Side = half, side.Opposite()
		edges = append(edges, neck.counted())
		for _, s := range f.sides {
			panel := half
			if s.steps[0].Row <= f.heights.NeckStart() {
				panel = shaping.Body
			}
			edge, err := f.slantEdge(s, side, panel)
			if err != nil {
				return nil, err
			}
			edges = append(edges, edge)
		}
		for _, outer := range []Edge{f.armholeEdge.at(side), f.shoulderEdge.at(side)} {
			if outer.Stitches == 0 {
				continue
			}
			outer.Panel, outer.Side = half, side
			if steps := outer.Schedule; len(steps) > 0 && steps[0].Row <= f.heights.NeckStart() {
				outer.Panel = shaping.Body
			}
			edges = append(edges, outer.counted())
		}
	}
	return edges, nil
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
