package garment

import (
	"errors"
	"fmt"
	"strings"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// drawNeck traces the neck from the end of its flat middle to the neck point.
func (f *front) drawNeck() error {
	stitches := (f.widths.Neck - f.widths.Flat) / 2
	rules := shaping.RulesFor(f.neck.Several, shaping.Left, shaping.Right, shaping.Bed)
	edge, err := f.draw("neck", stitches, f.heights.Neck, rules)
	if err != nil {
		return fitError("neck.depth", f.spec.Neck.Depth, err.Error())
	}
	edge.FirstRow = f.heights.NeckStart() + 1
	edge.Schedule = edge.Schedule.By(f.neck.Several, f.neck.Single)
	f.neckEdge = edge
	return nil
}

// drawArmhole traces what is left of the inset after the stitches bound off at
// the underarm.
func (f *front) drawArmhole() error {
	stitches := f.widths.Inset - f.widths.BindOff
	if stitches == 0 {
		return nil
	}
	asked := f.spec.Armhole.Curve
	rows := f.gauge.Rows(asked).Round(gauge.Rounding{})
	if asked.IsZero() {
		rows = f.gauge.Rows(f.spec.Armhole.Depth.Mul(2)).Div(5).Round(gauge.Rounding{})
	}
	rows = min(max(rows, 1), f.heights.Armhole)
	rules := shaping.RulesFor(shaping.Fashioned, shaping.Right, shaping.Right, shaping.Bed)
	if f.widths.BindOff > 0 {
		// The underarms are bound off before rows 1 and 2, one at each edge; a
		// row between them and the first decrease leaves both edges alike.
		rules.Phase = 3
	}
	if rows == f.heights.Armhole {
		rules.Plain = 1 // the next row may begin the shoulder
	}
	if rows > curve.MaxRows {
		return fitError("armhole.curve", asked, fmt.Sprintf("%d rows, at most %d are drawn, which is %s", rows, curve.MaxRows, floorCentimetres(f.gauge.Height(curve.MaxRows))))
	}
	edge, err := f.draw("armhole", stitches, rows, rules)
	if err != nil {
		return f.steepArmhole(stitches, rows, err)
	}
	edge.FirstRow = f.heights.Underarm + 1
	edge.Schedule = edge.Schedule.By(shaping.Fashioned, shaping.Fashioned)
	f.armholeEdge = edge
	return nil
}

// steepArmhole says which curve would be high enough for the decreases and how much
// would have to be bound off before them, as far as there is either.
func (f *front) steepArmhole(stitches, rows int, err error) error {
	armhole := f.spec.Armhole
	want := fmt.Sprintf("%d stitches do not go by single decreases over %d rows", stitches, rows)
	var ways []string
	if fault := (*curve.Error)(nil); errors.As(err, &fault) {
		for _, near := range fault.Nearest {
			if near.Rules.Most != 1 {
				continue
			}
			if near.Stitches == stitches && near.Rows > rows && near.Rows < f.heights.Armhole {
				ways = append(ways, "raise armhole.curve to "+ceilCentimetres(f.gauge.Height(near.Rows)))
			}
			if boundOff := f.gauge.Width(f.widths.Inset - near.Stitches); near.Rows == rows && boundOff.Cmp(armhole.Inset) < 0 {
				ways = append(ways, "raise armhole.bindOff to "+ceilCentimetres(boundOff))
			}
		}
	}
	if len(ways) == 0 {
		ways = []string{"lessen the inset, or bind it off"}
	}
	want += ": " + strings.Join(ways, ", or ")
	if !armhole.Curve.IsZero() {
		return fitError("armhole.curve", armhole.Curve, want)
	}
	return fitError("armhole.inset", armhole.Inset, want)
}

// draw traces a quarter ellipse in a box of whole stitches and rows.
func (f *front) draw(name string, stitches, rows int, rules shaping.Rules) (Edge, error) {
	drawn, err := curve.QuarterEllipse(f.gauge.Width(stitches), f.gauge.Height(rows))
	if err != nil {
		return Edge{}, err
	}
	traced, err := curve.Trace(drawn, stitches, rows, rules)
	if err != nil {
		return Edge{}, err
	}
	cell := f.gauge.Width(1).Centimetres().Mul(f.gauge.Height(1).Centimetres()).InexactFloat64()
	width := f.gauge.Width(1).Millimetres()
	return Edge{
		Name: name, Path: drawn.Path(), Stitches: stitches, Rows: rows, Schedule: traced.Schedule,
		Area: traced.Measure.Area * cell, Floor: traced.Measure.Floor * cell,
		Deviation: gauge.Millimetres(width.Mul(decimal.NewFromFloat(traced.Measure.Deviation)).Round(3)),
	}, nil
}

// edges returns the drawn edges of both halves; an edge stands under the panel
// where its first step lies.
func (f front) edges(panels shaping.Tree) []Edge {
	var edges []Edge
	for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
		neck := f.neckEdge
		neck.Panel, neck.Side = shaping.RightHalf, side.Opposite()
		if side == shaping.Left {
			neck.Panel = shaping.LeftHalf
		}
		edges = append(edges, neck)
		if f.armholeEdge.Stitches == 0 {
			continue
		}
		armhole := f.armholeEdge
		armhole.Side = side
		armhole.Panel = shaping.Body
		if first := armhole.FirstRow + armhole.Schedule[0].Row - 1; first > panels[0].LastRow {
			armhole.Panel = neck.Panel
		}
		edges = append(edges, armhole)
	}
	return edges
}

// checkUnderarm refuses an armhole whose shoulder begins before the underarms are
// bound off.
func (f front) checkUnderarm() error {
	last := f.heights.Top()
	if len(f.groups) > 1 {
		last = f.heights.Tip()
		if f.shoulder.Several == shaping.Hold {
			last--
		}
	}
	const enough = 5 // three, and what rounding takes
	if f.widths.BindOff > 0 && max(f.bindOffRow(shaping.Left), f.bindOffRow(shaping.Right)) > last {
		return fitError("armhole.depth", f.spec.Armhole.Depth, fmt.Sprintf("%d rows are too few to bind off the underarms before the shoulders: %s are enough",
			f.heights.Armhole, ceilCentimetres(f.gauge.Height(enough))))
	}
	return nil
}

// bindOffRow returns the row before which the underarm stitches are bound off at
// one edge: where a row starts, in the body one row apart at the two edges, in the
// halves at the same row.
func (f front) bindOffRow(edge shaping.Side) int {
	first, split := f.heights.Underarm+1, f.heights.NeckStart()
	if split >= first+1 {
		if f.start(first) == edge {
			return first
		}
		return first + 1
	}
	row := split + 1
	for row < first {
		row += 2
	}
	return row
}
