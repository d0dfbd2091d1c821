package plan

import (
	"fmt"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// edgeForm has the keys of a drawn edge.
type edgeForm struct {
	Name      edgeName     `json:"name"`
	Panel     panelName    `json:"panel"`
	Side      shaping.Side `json:"side"`
	Path      string       `json:"path"`
	Stitches  int          `json:"stitches" within:"-2000 2000"`
	Rows      int          `json:"rows" within:"0 5000"`
	Area      squareForm   `json:"area"`
	Floor     squareForm   `json:"floor"`
	Deviation offForm      `json:"deviation"`
	Phrases   []phraseForm `json:"phrases"`
	Words     string       `json:"words"`
}

// edgeName is any name that is not empty.
type edgeName string

func (e *edgeName) UnmarshalText(text []byte) error {
	if len(text) == 0 || len(text) > MaxTitle {
		return nameError(fmt.Sprintf("a name of 1 to %d bytes", MaxTitle))
	}
	*e = edgeName(text)
	return nil
}

// squareForm is an area in square centimetres.
type squareForm struct{ cm2 decimal.Decimal }

func (s squareForm) MarshalText() ([]byte, error) { return []byte(places(s.cm2) + " cm2"), nil }

func (s *squareForm) readNode(n *node) error {
	text, ok := strings.CutSuffix(n.text, " cm2")
	if n.kind != letters || !ok || !decimalNumber.MatchString(text) {
		return n.fault(`write an area in square centimetres, such as "12.34 cm2"`, nil)
	}
	value, err := decimal.NewFromString(text)
	s.cm2 = value
	return err
}

// offForm is a length that is written in millimetres.
type offForm struct{ gauge.Length }

func (o offForm) MarshalText() ([]byte, error) { return []byte(places(o.Millimetres()) + " mm"), nil }

func (o *offForm) readNode(n *node) error {
	if err := decodeText(n, &o.Length); err != nil {
		return err
	}
	if o.Sign() < 0 {
		return n.fault("write it without a sign", nil)
	}
	return nil
}

// places returns d with all its places and no exponent.
func places(d decimal.Decimal) string { return d.StringFixed(max(0, -d.Exponent())) }

// phraseForm has the keys of a phrase.
type phraseForm struct {
	From     int   `json:"from" within:"1 5000"`
	Every    []int `json:"every" within:"1 5000"`
	Stitches int   `json:"stitches" within:"-2000 2000"`
	Times    int   `json:"times" within:"1 5000"`
}

func (p *phraseForm) check(n *node) error {
	switch {
	case p.Stitches == 0:
		return n.at("stitches").fault("a step moves at least one stitch", nil)
	case len(p.Every) > 2:
		return n.at("every").fault("one distance, or two that come in turn", nil)
	case len(p.Every) == 0 && p.Times > 1:
		return n.at("every").fault("several steps have a distance between them", nil)
	}
	return nil
}

func formOfEdge(e Edge) edgeForm {
	form := edgeForm{
		Name: edgeName(e.Name), Panel: panelName(e.Panel), Side: e.Side, Path: e.Path,
		Stitches: e.Stitches, Rows: e.Rows, Area: squareForm{e.Area}, Floor: squareForm{e.Floor},
		Deviation: offForm{e.Deviation}, Phrases: []phraseForm{}, Words: e.Words,
	}
	for _, p := range e.Phrases {
		made := phraseForm{From: p.From, Every: []int{}, Stitches: p.Stitches, Times: p.Times}
		if p.Every != 0 || p.Then != 0 {
			made.Every = append(made.Every, p.Every)
		}
		if p.Then != 0 {
			made.Every = append(made.Every, p.Then)
		}
		form.Phrases = append(form.Phrases, made)
	}
	return form
}

func (f edgeForm) edge() Edge {
	e := Edge{
		Name: string(f.Name), Panel: string(f.Panel), Side: f.Side, Path: f.Path,
		Stitches: f.Stitches, Rows: f.Rows, Area: f.Area.cm2, Floor: f.Floor.cm2,
		Deviation: f.Deviation.Length, Words: f.Words,
	}
	for _, p := range f.Phrases {
		made := shaping.Phrase{From: p.From, Stitches: p.Stitches, Times: p.Times}
		if len(p.Every) > 0 {
			made.Every = p.Every[0]
		}
		if len(p.Every) > 1 {
			made.Then = p.Every[1]
		}
		e.Phrases = append(e.Phrases, made)
	}
	return e
}
