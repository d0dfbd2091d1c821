package main

import (
	"fmt"
	"slices"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// plotted is a drawn edge and the ways to follow it, of which the piece has one.
type plotted struct {
	garment.Edge
	methods  garment.Pair
	rules    shaping.Rules
	line     curve.Edge
	wordings curve.Wordings
	followed int // which of the wordings the piece follows
}

// plot returns the drawn edge of that name at the side where it is worked as it was drawn:
// at the other side some steps may stand a row later.
func plot(p garment.Piece, name string) (plotted, error) {
	var closest plotted
	for _, e := range p.Edges {
		if e.Name != name || closest.FirstRow > 0 && e.FirstRow >= closest.FirstRow {
			continue
		}
		d, err := plotOne(p, e)
		if err != nil {
			return plotted{}, err
		}
		if d.followed >= 0 {
			closest = d
		}
	}
	if closest.FirstRow == 0 {
		return plotted{}, fmt.Errorf("%s of %s: none of the ways to say it is the one of the piece", name, p.Name())
	}
	return closest, nil
}

func plotOne(p garment.Piece, e garment.Edge) (plotted, error) {
	d := plotted{Edge: e, methods: methodsOf(p.Spec.Methods, e.Name)}
	d.rules = rulesOf(p, e, d.methods)
	var err error
	if d.line, err = curve.ParsePath(e.Path); err != nil {
		return d, err
	}
	steps, rows := e.Schedule, e.Rows
	if e.Name == garment.ShoulderEdge {
		if d.line, steps, err = withLastGroup(p.Gauge, e, d.line); err != nil {
			return d, err
		}
		rows++
	}
	drawing, err := d.line.In(e.Stitches, rows)
	if err != nil {
		return d, err
	}
	if d.wordings, err = drawing.Wordings(d.rules, curve.Phrasing{}); err != nil {
		return d, err
	}
	d.followed = slices.IndexFunc(d.wordings.All, func(w curve.Wording) bool {
		return slices.Equal(w.Schedule, steps.By(0, 0))
	})
	return d, nil
}

// withLastGroup returns a drawn shoulder with a row above it, in which its last group goes.
func withLastGroup(g gauge.Gauge, e garment.Edge, line curve.Edge) (curve.Edge, shaping.Schedule, error) {
	above, err := curve.Line(gauge.Length{}, g.Height(1))
	if err != nil {
		return curve.Edge{}, nil, err
	}
	joined, err := curve.Join(line, above)
	last := shaping.Step{Row: e.Rows + 1, Stitches: -e.Stitches - e.Schedule.Total()}
	return joined, append(slices.Clone(e.Schedule), last), err
}

// methodsOf returns how an edge is worked, with the defaults of package garment.
func methodsOf(m garment.Methods, edge string) garment.Pair {
	switch edge {
	case garment.NeckEdge:
		return m.Neck.Or(garment.By(shaping.Hold))
	case garment.ShoulderEdge:
		return m.Shoulder.Or(garment.By(shaping.Hold))
	}
	return m.Armhole.Or(garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned})
}

// rulesOf returns what the methods allow at an edge, in rows of the edge.
func rulesOf(p garment.Piece, e garment.Edge, by garment.Pair) shaping.Rules {
	switch {
	case e.Name == garment.ShoulderEdge:
		return shaping.Rules{Every: 2, Apart: 2}
	case e.Name == garment.NeckEdge || by.Several == by.Single:
		return decreasesLast(edgeRules(by, p.Work.Place), e.Schedule)
	}
	// Bind offs of the two edges stand a row apart and decreases in the same rows, so that
	// the two kinds keep to odd and to even rows. The first row is that of the underarm.
	first := 0
	if p.Widths.BindOff > 0 {
		first = 2
	}
	rules := shaping.Rules{Every: 2, Phase: first, Apart: 2, Single: shaping.Beat{Every: 2, Phase: first + 1}, Plain: 1}
	if e.Name == garment.CapEdge {
		return rules
	}
	return decreasesLast(rules, e.Schedule)
}

// edgeRules returns what a pair of methods allows at the neck edge of a half whose first row
// starts at its other edge, as it does on the bed and in the first half in the hand.
func edgeRules(by garment.Pair, place shaping.Place) shaping.Rules {
	allows := func(m shaping.Method) shaping.Rules { return shaping.RulesFor(m, shaping.Left, shaping.Right, place) }
	single := allows(by.Single)
	if by.Several == 0 {
		return single
	}
	rules := allows(by.Several)
	if by.Several == shaping.Fashioned {
		rules.Most = 2 // a double decrease
	}
	if by.Several != by.Single {
		rules.Single = shaping.Beat{Every: single.Every, Phase: single.Phase}
	}
	return rules
}

// decreasesLast returns the rules with single stitches after the last step of several, where
// the two are worked by different methods.
func decreasesLast(rules shaping.Rules, steps shaping.Schedule) shaping.Rules {
	if rules.Single.IsZero() {
		return rules
	}
	for _, step := range steps {
		if step.Stitches < -1 {
			rules.SeveralUntil = step.Row
		}
	}
	for rules.Single.Phase < rules.SeveralUntil {
		rules.Single.Phase += rules.Single.Every
	}
	return rules
}
