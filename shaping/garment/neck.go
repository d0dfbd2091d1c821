package garment

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// drawNeck traces the neck from the end of its flat middle to the neck point.
func (f *trunk) drawNeck() error {
	d := drawing{name: NeckEdge, stitches: f.curved(), rows: f.heights.Neck, methods: f.neck}
	if f.opening.Shape == RoundNeck && f.neck.most() > 0 && d.stitches > f.neck.most() {
		return &Error{Field: "methods.neck", Given: f.neck.String(), Err: ErrFit, Want: fmt.Sprintf(
			"the bottom of a round neck takes several stitches at once, a fashioned decrease takes %d: hold or bindOff, alone or as a list with fashioned for single stitches", f.neck.most())}
	}
	var err error
	if d.edge, err = f.neckLine(d.stitches, d.rows); err != nil {
		return f.neckError(err.Error())
	}
	var delay int // of the decreases against the traced rows
	d.rules, delay = f.neckRules()
	d.rules = f.afterFlat(d.rules)
	traced, err := d.trace()
	if err != nil {
		return f.steepNeck(d, err)
	}
	lag := func(side shaping.Side) int { return f.lag(side, traced, f.flatStep()) }
	split := f.heights.NeckStart()
	f.neckEdge, err = f.lay(d, func(side shaping.Side) shaping.Schedule {
		return moved(traced, func(step shaping.Step) int {
			if tied(step.Method) {
				return split + step.Row + lag(side)
			}
			return split + step.Row + delay
		})
	}, func(side shaping.Side) int { return split + 1 + lag(side) })
	if err != nil {
		return f.neckError(err.Error())
	}
	return nil
}

// neckLine returns the half edge in its box: the quarter of an ellipse for a round neck,
// what the spec draws, and a straight line for the others.
func (f *trunk) neckLine(stitches, rows int) (curve.Edge, error) {
	switch f.opening.Shape {
	case RoundNeck:
		return curve.QuarterEllipse(f.gauge.Width(stitches), f.gauge.Height(rows))
	case PathNeck:
		return f.boxed(f.paths.neck, stitches, rows)
	}
	return curve.Line(f.gauge.Width(stitches), f.gauge.Height(rows))
}

// neckRules returns the rules for the neck edge of the half that starts at its outer
// edge, and by how many rows its decreases stand later than traced. On the bed both
// halves start so. In the hand the other half has its tied steps one row later and its
// decreases at the same right-side rows: those of the two kinds are traced at odd and
// at even rows, so that both halves can be worked.
func (f *trunk) neckRules() (rules shaping.Rules, delay int) {
	if f.place == shaping.Bed || !f.neck.mixed() {
		return f.neck.rules(shaping.Left, shaping.Right, f.place), 0
	}
	if tied := shaping.RulesFor(f.neck.tied(), shaping.Left, shaping.Right, shaping.Hand).Phase; tied > 0 {
		return f.neck.alternating(tied, 2), 0
	}
	rules = f.neck.alternating(0, 1)
	rules.Plain = 1
	return rules, 1
}

// steepNeck says which depth would do for the decreases, and which methods.
func (f *trunk) steepNeck(d drawing, err error) error {
	var found []string
	for _, near := range nearest(err) {
		rows := near.Rows + near.Rows%2
		if near.Stitches == d.stitches && near.Rows > d.rows && near.Rules == d.rules && f.heights.Top()-rows >= max(2, f.heights.Band) {
			found = append(found, "at least "+f.spec.atLeast(f.gauge.Height(rows)))
		}
	}
	if doublesDo(d, err) {
		found = append(found, "methods.neck "+doubles)
	}
	found = append(found, "methods.neck hold or bindOff")
	return f.neckError(fmt.Sprintf("%s cannot go %s over %s: %s",
		plural.Stitches(d.stitches), f.neck.words(), plural.Rows(d.rows), ways(found, "")))
}
