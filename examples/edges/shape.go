package main

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// The kinds of shape.
const (
	line         = "line"
	ellipse      = "ellipse"
	superellipse = "superellipse"
	points       = "points"
)

// shape is an edge by its kind and its measurements. What was not given is nil.
type shape struct {
	kind                string
	width, height, flat *gauge.Length
	exponent            *decimal.Decimal
	points              []curve.Point
}

func (s *source) shape(place string) *shape {
	sh := &shape{}
	length := func(to **gauge.Length) func(string) {
		return func(at string) {
			l := s.length(at)
			*to = &l
		}
	}
	s.object(place,
		field{"kind", func(at string) { sh.kind = s.kindOfShape(at) }},
		field{"width", length(&sh.width)},
		field{"height", length(&sh.height)},
		field{"flat", length(&sh.flat)},
		field{"exponent", func(at string) {
			d := s.decimal(at, `a number such as 2.5 or "2.5"`)
			sh.exponent = &d
		}},
		field{"points", func(at string) {
			s.list(at, "a list of [across, up]", func(at string) { sh.points = append(sh.points, s.point(at)) })
		}},
	)
	sh.check(s, place)
	return sh
}

func (s *source) kindOfShape(place string) string {
	const want = `"line", "ellipse", "superellipse" or "points"`
	kind := s.text(place, want)
	switch kind {
	case line, ellipse, superellipse, points:
	default:
		s.fail(place, quoted(kind), want)
	}
	return kind
}

func (s *source) point(place string) curve.Point {
	const want = `a list of two lengths: across and up, such as [15, 40] or ["1.5 cm", "4 cm"]`
	var two [2]gauge.Length
	count := 0
	s.list(place, want, func(at string) {
		l := s.length(at)
		if count < len(two) {
			two[count] = l
		}
		count++
	})
	if count != len(two) && !s.ended {
		s.fail(place, fmt.Sprintf("of %d", count), want)
	}
	return curve.Point{Across: two[0], Up: two[1]}
}

// check refuses keys that are missing or do not go together.
func (sh *shape) check(s *source, place string) {
	byPoints := sh.kind == points
	for _, key := range []struct {
		name                  string
		given, needed, useful bool
		want                  string
	}{
		{"kind", sh.kind != "", true, true, `write "line", "ellipse", "superellipse" or "points"`},
		{"points", sh.points != nil, byPoints, byPoints, `goes with kind "points" only`},
		{"exponent", sh.exponent != nil, false, sh.kind == superellipse, `goes with kind "superellipse" only`},
		{"width", sh.width != nil, !byPoints, true, ""},
		{"height", sh.height != nil, !byPoints, true, ""},
	} {
		switch {
		case s.ended:
		case key.given && !key.useful:
			s.fail(place+"."+key.name, "", key.want)
		case key.needed && !key.given && key.name == "kind":
			s.fail(place+"."+key.name, "missing", key.want)
		case key.needed && !key.given:
			s.fail(place+"."+key.name, "missing", fmt.Sprintf("kind %q needs it", sh.kind))
		}
	}
	if sh.width != nil && sh.flat != nil && sh.flat.Sign() != 0 &&
		(sh.flat.Sign() != sh.width.Sign() || sh.flat.Abs().Cmp(sh.width.Abs()) > 0) {
		s.fail(place+".flat", sh.flat.String(), "a part of the width: 0 to "+sh.width.String())
	}
}

// edge draws the shape.
func (sh *shape) edge() (curve.Edge, error) {
	var flat gauge.Length
	if sh.flat != nil {
		flat = *sh.flat
	}
	e, err := sh.curve(flat)
	switch {
	case err != nil || flat.IsZero():
		return e, err
	case sh.kind == line:
		return straightOnFlat(e, flat)
	}
	return onFlat(e, flat)
}

// curve draws the shape without its flat part.
func (sh *shape) curve(flat gauge.Length) (curve.Edge, error) {
	if sh.kind == points {
		e, err := curve.Through(sh.points...)
		if err != nil {
			return curve.Edge{}, err
		}
		width, height := e.Width(), e.Height()
		if sh.width != nil {
			width = sh.width.Sub(flat)
		}
		if sh.height != nil {
			height = *sh.height
		}
		return e.Scaled(width, height)
	}
	width, height := sh.width.Sub(flat), *sh.height
	e, err := sh.going(width.Abs(), height)
	if err != nil || width.Sign() >= 0 {
		return e, err
	}
	// Only edges that were drawn, as joined ones are, can be mirrored.
	drawn, err := curve.Join(e)
	if err != nil {
		return curve.Edge{}, err
	}
	return drawn.Scaled(width, height)
}

// going draws a shape at which stitches go.
func (sh *shape) going(width, height gauge.Length) (curve.Edge, error) {
	switch sh.kind {
	case line:
		return curve.Line(width, height)
	case ellipse:
		return curve.QuarterEllipse(width, height)
	}
	exponent := decimal.NewFromInt(2)
	if sh.exponent != nil {
		exponent = *sh.exponent
	}
	return curve.Superellipse(width, height, exponent)
}

// straightOnFlat puts a straight edge on a level piece.
func straightOnFlat(e curve.Edge, flat gauge.Length) (curve.Edge, error) {
	width := e.Width().Add(flat)
	drawn, err := curve.Polyline(curve.Point{}, curve.Point{Across: flat}, curve.Point{Across: width, Up: e.Height()})
	if err != nil {
		return curve.Edge{}, err
	}
	return drawn.Scaled(width, e.Height())
}

// onFlat puts an edge on a level piece. An edge has a height, so that a level one alone is
// none: it is joined to an upright of the least height there is, below the edge stretched
// to nearly the greatest, and so is 1 part in 1,000,000,000 of the whole.
func onFlat(e curve.Edge, flat gauge.Length) (curve.Edge, error) {
	least := gauge.Millimetres(decimal.New(1, -3))
	most := gauge.Millimetres(decimal.New(1, 6))
	level, err := curve.Polyline(curve.Point{}, curve.Point{Across: flat}, curve.Point{Across: flat, Up: least})
	if err != nil {
		return curve.Edge{}, err
	}
	tall, err := e.Scaled(e.Width(), most.Sub(least))
	if err != nil {
		return curve.Edge{}, err
	}
	joined, err := curve.Join(level, tall)
	if err != nil {
		return curve.Edge{}, err
	}
	return joined.Scaled(e.Width().Add(flat), e.Height())
}
