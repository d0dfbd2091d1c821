package garment

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// The armhole is traced once, for the edge where its first tied step can stand at the
// first row above the underarm, and then laid out for both edges by armholeRow.

// drawArmhole traces what is left of the inset after the stitches taken off at once
// at the underarm.
func (f *trunk) drawArmhole() error {
	if f.begun != nil && f.begun.above {
		return f.keepArmhole()
	}
	if f.widths.BindOff > 0 {
		f.lastTied = 1
	}
	d := drawing{name: ArmholeEdge, stitches: f.widths.Inset - f.widths.BindOff, methods: f.armhole}
	if d.stitches == 0 {
		return nil
	}
	asked := f.spec.Armhole.Curve.Or(gauge.Length{})
	d.rows = f.gauge.Rows(asked).Round(gauge.Rounding{})
	if f.spec.Armhole.Curve.IsZero() {
		d.rows = f.gauge.Rows(f.spec.Armhole.Depth.Mul(2)).Div(5).Round(gauge.Rounding{})
	}
	d.rows = min(max(d.rows, 1), f.heights.Armhole)
	if d.rows > curve.MaxRows {
		return f.spec.fitError("armhole.curve", asked, fmt.Sprintf("%d rows, at most %d are drawn, which is %s", d.rows, curve.MaxRows, f.spec.atMost(f.gauge.Height(curve.MaxRows))))
	}
	d.rules = f.armholeRules(d.rows)
	var err error
	if d.edge, err = f.armholeLine(d.stitches, d.rows); err != nil {
		return f.spec.fitError("armhole.inset", f.spec.Armhole.Inset, err.Error())
	}
	traced, err := d.trace()
	if err != nil {
		return f.steepArmhole(d, err)
	}
	for _, step := range traced {
		if tied(step.Method) {
			f.lastTied = step.Row
		}
	}
	f.armholeEdge, err = f.lay(d, func(edge shaping.Side) shaping.Schedule {
		return moved(traced, func(step shaping.Step) int { return f.armholeRow(edge, step) })
	}, f.armholeStart)
	if err != nil {
		return f.spec.fitError("armhole.curve", asked, err.Error())
	}
	return nil
}

// armholeLine returns the edge in its box: what the spec draws, else the quarter of an
// ellipse.
func (f *trunk) armholeLine(stitches, rows int) (curve.Edge, error) {
	if f.spec.Armhole.Path != "" {
		return f.boxed(f.paths.armhole, stitches, rows)
	}
	return curve.QuarterEllipse(f.gauge.Width(stitches), f.gauge.Height(rows))
}

// armholeRules returns the rules for the traced edge: a base at the first row, tied
// steps at odd and decreases at even rows, and rows enough below the shoulder.
func (f *trunk) armholeRules(rows int) shaping.Rules {
	rules := f.armhole.outerRules(f.widths.BindOff)
	if f.armhole.tied() == 0 {
		rules = f.armhole.rules(shaping.Right, shaping.Right, f.place)
		if f.place == shaping.Hand && f.heights.Underarm%2 == 1 {
			rules.Phase = 1 // the first right-side row
		}
	}
	rules.Plain = max(rules.Plain, rows-f.lastArmholeRow())
	return rules
}

// lastArmholeRow returns the last row above the underarm that may be shaped at both
// edges, one of them a row later, two rows below the shoulders.
func (f *trunk) lastArmholeRow() int { return f.firstShoulderRow() - 3 - f.heights.Underarm }

// armholeRow returns the row of the piece at which a traced step of the armhole is
// worked at one edge.
//
// Tied steps stand at one edge a row later than at the other. On the bed each half
// starts at its own outer edge, so that in the halves both edges have them at the
// same row: where the armhole runs from the body into the halves, the edge that is
// not the first half's goes first in the body, which leaves its steps two rows apart.
func (f *trunk) armholeRow(edge shaping.Side, step shaping.Step) int {
	if !tied(step.Method) || f.place == shaping.Hand {
		return f.outerRow(f.armhole, f.heights.Underarm, edge, step)
	}
	row := f.heights.Underarm + step.Row
	first := f.tiedFirst(f.armhole.tied(), f.heights.Underarm+1)
	split, half := f.heights.NeckStart(), f.firstHalf()
	if half != first {
		row++
	}
	switch {
	case edge == half || row > split:
		return row
	case half == first && f.heights.Underarm+f.lastTied < split:
		return row + 1
	}
	return row - 1
}

// armholeStart returns the row at which the drawing of the armhole begins at one edge.
func (f *trunk) armholeStart(edge shaping.Side) int {
	if f.armhole.tied() == 0 {
		return f.heights.Underarm + 1
	}
	return f.armholeRow(edge, shaping.Step{Row: 1, Method: f.armhole.tied()})
}

// underarm returns the stitches taken off at once at one edge.
func (f *trunk) underarm(edge shaping.Side) shaping.Schedule {
	return f.armhole.atOnce(f.widths.BindOff, func(step shaping.Step) int { return f.armholeRow(edge, step) })
}

// checkUnderarm refuses an armhole whose shoulder begins before the underarms are
// taken off.
func (f *trunk) checkUnderarm() error {
	if f.begun != nil && f.begun.above {
		return nil // see keepArmhole
	}
	const enough = 6 // five, and what rounding takes
	if f.widths.BindOff > 0 && f.lastArmholeRow() < 1 {
		return f.spec.fitError("armhole.depth", f.spec.Armhole.Depth, fmt.Sprintf("too low for the underarms below the shoulders (%s): %s is enough",
			plural.Rows(f.heights.Armhole), f.spec.atLeast(f.gauge.Height(enough))))
	}
	return nil
}

// steepArmhole says which curve would be high enough and how much would have to be
// taken off before it, as far as there is either.
func (f *trunk) steepArmhole(d drawing, err error) error {
	armhole := f.spec.Armhole
	var found []string
	for _, near := range nearest(err) {
		if near.Rules != d.rules {
			continue
		}
		if near.Stitches == d.stitches && near.Rows > d.rows && near.Rows <= f.lastArmholeRow() && f.gauge.Height(near.Rows).Cmp(armhole.Depth) <= 0 {
			found = append(found, "raise armhole.curve to "+f.spec.atLeast(f.gauge.Height(near.Rows)))
		}
		if atOnce := f.gauge.Width(f.widths.Inset - near.Stitches); near.Rows == d.rows && tied(f.armhole.Several) && atOnce.Cmp(armhole.Inset) < 0 {
			found = append(found, "raise armhole.bindOff to "+f.spec.atLeast(atOnce))
		}
	}
	if doublesDo(d, err) {
		found = append(found, "methods.armhole "+doubles)
	}
	const afterAtOnce = 3 // the first row after what is taken off at once
	if !tied(f.armhole.Several) && min(d.rows-1, f.lastArmholeRow()) >= afterAtOnce {
		found = append(found, "methods.armhole bindOff")
	}
	want := fmt.Sprintf("%s cannot go %s over %s: %s", plural.Stitches(d.stitches), f.armhole.words(), plural.Rows(d.rows),
		ways(found, "lessen the inset, or take it off at once"))
	if !armhole.Curve.IsZero() {
		return f.spec.fitError("armhole.curve", armhole.Curve.Or(gauge.Length{}), want)
	}
	return f.spec.fitError("armhole.inset", armhole.Inset, want)
}
