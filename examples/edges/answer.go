package main

import (
	"errors"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// answer is what comes of a line.
type answer struct {
	request
	line     int // of the request, from 1
	drawing  curve.Drawing
	wordings curve.Wordings

	err error
	// What works instead, each tried, if the request is infeasible: rules in place of its
	// own, and boxes that its own rules work in.
	infeasible bool
	nearest    []shaping.Rules
	sizes      []curve.Request
}

// make reads a line and works it out.
func (a *answer) make(line []byte) {
	if a.request, a.err = read(line); a.err != nil {
		return
	}
	if a.drawing, a.err = a.edge.At(a.gauge); a.err != nil {
		return
	}
	a.wordings, a.err = a.drawing.Wordings(a.rules, a.how)
	e, ok := errors.AsType[*curve.Error](a.err)
	if ok && errors.Is(e, curve.ErrInfeasible) {
		a.infeasible = true
		a.split(e.Nearest)
	}
}

// split parts the requests that work into rules and boxes.
func (a *answer) split(nearest []curve.Request) {
	for _, near := range nearest {
		if near.Stitches != a.drawing.Stitches() || near.Rows != a.drawing.Rows() {
			a.sizes = append(a.sizes, near)
			continue
		}
		rules := withShortPhases(near.Rules)
		if _, err := a.drawing.Trace(rules, a.how); err == nil {
			a.nearest = append(a.nearest, rules)
		}
	}
}
