package main

import (
	"fmt"
	"strconv"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// drawing is an edge in the table: a shape in a box, or a path.
type drawing struct {
	Shape         string // "line", "ellipse" or "superellipse"
	Width, Height gauge.Length
	Exponent      decimal.Decimal // of a superellipse
	Path          string
}

func (d drawing) edge() (curve.Edge, error) {
	switch {
	case d.Path != "" && d.Shape == "":
		return curve.ParsePath(d.Path)
	case d.Shape == "line":
		return curve.Line(d.Width, d.Height)
	case d.Shape == "ellipse":
		return curve.QuarterEllipse(d.Width, d.Height)
	case d.Shape == "superellipse":
		return curve.Superellipse(d.Width, d.Height, d.Exponent)
	}
	return curve.Edge{}, fmt.Errorf("%w: shape %q: line, ellipse, superellipse, or a path without a shape", errInputs, d.Shape)
}

func edgeLength(in struct {
	drawing
	formatted
	Times int // as many of them; left out 1
}) (string, error) {
	edge, err := in.edge()
	if err != nil {
		return "", err
	}
	return in.say(edge.Length().Mul(or(in.Times, 1)))
}

// edgeArea says the area as a part of the box.
func edgeArea(in struct {
	drawing
	Places int
}) (string, error) {
	edge, err := in.edge()
	if err != nil {
		return "", err
	}
	if in.Places < 0 || in.Places > 12 {
		return "", fmt.Errorf("%w: places %d: from 0 to 12", errInputs, in.Places)
	}
	box := edge.Width().Millimetres().Mul(edge.Height().Millimetres()).InexactFloat64()
	return strconv.FormatFloat(edge.Area()/box, 'f', in.Places, 64), nil
}

// trace follows the shape with whole stitches and rows. Its own size does not matter.
func trace(in struct {
	Shape          string
	Stitches, Rows int
	Rules          shaping.Rules
	Sizes          bool // only which sizes the steps have, and how often
}) (string, error) {
	mm := gauge.Millimetres(decimal.NewFromInt(1))
	edge, err := drawing{Shape: in.Shape, Width: mm, Height: mm}.edge()
	if err != nil {
		return "", err
	}
	result, err := curve.Trace(edge, in.Stitches, in.Rows, in.Rules)
	if err != nil {
		return "", err
	}
	if !in.Sizes {
		return gone(result.Schedule), nil
	}
	often := map[int]int{}
	most := 0
	for _, step := range result.Schedule {
		often[-step.Stitches]++
		most = max(most, -step.Stitches)
	}
	said := ""
	for size := 1; size <= most; size++ {
		if often[size] > 0 {
			said += fmt.Sprintf(", %d times %d", often[size], size)
		}
	}
	return said[min(2, len(said)):], nil
}
