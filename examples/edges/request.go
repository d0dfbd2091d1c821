package main

import (
	"errors"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// request is what a line asks.
type request struct {
	id    []byte // as it is written, in quotes if it is a text; nil if there is none
	edge  curve.Edge
	gauge gauge.Gauge
	side  shaping.Side
	rules shaping.Rules
	how   curve.Phrasing
}

// read reads a request. What could be read of it is returned with an error too.
func read(text []byte) (request, error) {
	q := request{rules: freeRules(), how: curve.Phrasing{Most: curve.DefaultPhrases}}
	s := newSource(text)
	var path *string
	var drawn *shape
	gauged := false
	s.object("",
		field{"format", func(at string) { s.version(at) }},
		field{"id", func(at string) { q.id = s.id(at) }},
		field{"path", func(at string) {
			data := s.text(at, "path data in quotes, such as \"M 0 240 L 120 0\"")
			path = &data
		}},
		field{"shape", func(at string) { drawn = s.shape(at) }},
		field{"gauge", func(at string) { q.gauge, gauged = s.gauge(at), true }},
		field{"side", func(at string) { q.side = s.side(at) }},
		field{"rules", func(at string) { q.rules = s.rulesForBoth(at) }},
		field{"most", func(at string) { q.how.Most = s.count(at, 1, curve.MaxRows) }},
		field{"alternate", func(at string) { q.how.Steady = !s.truth(at) }},
	)
	s.end()
	switch {
	case path != nil && drawn != nil:
		s.fail("shape", "", "path is there too: write one of the two")
	case path == nil && drawn == nil:
		s.fail("path", "missing", "write either path or shape")
	case !gauged:
		s.fail("gauge", "missing", wantGauge)
	}
	if s.err != nil {
		return q, s.err
	}
	var err error
	if path != nil {
		q.edge, err = curve.ParsePath(*path)
	} else {
		q.edge, err = drawn.edge()
	}
	return q, err
}

// format is the version of requests that are read here, and of the answers to them.
const format = "walewise-edge-request/1"

// version reads the format, which may be left out.
func (s *source) version(place string) {
	const want = "\"" + format + "\" is read here; it may be left out"
	if text := s.text(place, want); text != format {
		s.fail(place, quoted(text), want)
	}
}

// id reads a text or a number as it is written.
func (s *source) id(place string) []byte {
	raw, v := s.raw()
	if s.ended {
		return nil
	}
	if v.kind != letters && v.kind != number {
		s.refuse(place, v, "a text or a number")
		return nil
	}
	return raw
}

const wantGauge = `write one such as {"stitches": "22", "rows": "30", "over": "10 cm"}`

func (s *source) gauge(place string) gauge.Gauge {
	var g gauge.Gauge
	raw, v := s.raw()
	if s.ended {
		return g
	}
	err := g.UnmarshalJSON(raw)
	e, ok := errors.AsType[*gauge.Error](err)
	switch {
	case ok && e.Field != place:
		s.fail(place+"."+e.Field, e.Given, e.Want)
	case err != nil || g.IsZero():
		s.refuse(place, v, wantGauge)
	}
	return g
}

func (s *source) side(place string) shaping.Side {
	const want = `"left" or "right"`
	var side shaping.Side
	if text := s.text(place, want); side.UnmarshalText([]byte(text)) != nil {
		s.fail(place, quoted(text), want)
	}
	return side
}
