package main

import (
	"fmt"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// shownGroup is a group with its examples planned.
type shownGroup struct {
	Name, Title, Says string
	Examples          []shown
}

// shown is an example as it is printed.
type shown struct {
	Name, Title, Asks, Look string
	Gauge                   string
	Sums                    []sum
	Ways                    ways
	Figures                 []figure
	Against                 string // title of the example whose figures stand beside its own

	piece garment.Piece
}

// show plans the examples.
func show(groups []group) ([]shownGroup, error) {
	var all []shownGroup
	for _, g := range groups {
		made := shownGroup{Name: g.name, Title: g.title, Says: g.says}
		for _, e := range g.examples {
			s, err := showOne(e)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", e.name, err)
			}
			made.Examples = append(made.Examples, s)
		}
		all = append(all, made)
	}
	return all, nil
}

func showOne(e example) (shown, error) {
	s := shown{Name: e.name, Title: e.title, Asks: e.asks, Look: e.look}
	own, err := plan(e)
	if err != nil {
		return s, err
	}
	s.piece, s.Gauge = own.piece, own.gauge()
	s.Sums = own.sums()
	if s.Ways, err = own.ways(); err != nil {
		return s, err
	}
	if s.Figures, err = own.figures(); err != nil || e.against == "" {
		return s, err
	}
	other, err := plan(options{only: e.against}.groups()[0].examples[0])
	if err != nil {
		return s, err
	}
	s.Against = other.title
	beside, err := other.figures()
	if err != nil {
		return s, err
	}
	for i := range s.Figures {
		s.Figures[i].Beside = beside[i].Is
	}
	return s, nil
}

// planned is an example with its piece.
type planned struct {
	example
	piece  garment.Piece
	around []garment.Piece // the front and the back that a sleeve is made for
	edge   *plotted        // nil where nothing is drawn
}

// plan plans the piece of an example: the front, or of a garment with sleeves the right one.
func plan(e example) (planned, error) {
	p := planned{example: e}
	var err error
	if e.spec.Sleeve == nil {
		p.piece, err = garment.Front(e.titled())
	} else {
		var set garment.Set
		if set, err = garment.Pieces(e.titled()); err == nil {
			p.piece, _ = set.Piece(shaping.RightSleeve)
			p.around = set.Pieces[:2]
		}
	}
	if err != nil {
		return p, err
	}
	if !p.isDrawn() {
		return p, nil
	}
	edge, err := plot(p.piece, e.edge)
	p.edge = &edge
	return p, err
}

// titled returns the spec with the title of the example.
func (e example) titled() garment.Spec {
	spec := e.spec
	spec.Title = e.title
	return spec
}

// isDrawn reports whether the edge of the example follows a drawing by its ways to be said.
func (p planned) isDrawn() bool {
	switch p.example.edge {
	case garment.ShoulderEdge:
		return p.spec.Shoulder.Path != ""
	case garment.ArmholeEdge:
		return p.spec.Armhole.Inset.Sign() > 0
	}
	return p.example.edge != garment.CuffToUnderarm
}
