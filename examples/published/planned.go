package main

import (
	"encoding/json"
	"fmt"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// planned is a piece or a garment, and what is asked of it.
type planned struct {
	Spec  json.RawMessage // what differs from plainSpec
	Gives string
}

// plainSpec is what a spec in the table leaves out: a stitch and a row to the centimetre, and
// a bed that is wide enough.
const plainSpec = `{
	"gauge": {"stitches": "10", "rows": "10", "over": "10 cm"},
	"body": {"width": "60 cm", "length": "40 cm"},
	"armhole": {"depth": "24 cm"},
	"neck": {"shape": "round", "width": "20 cm", "depth": "8 cm"},
	"work": {"needles": 1000}
}`

func (in planned) spec() (s garment.Spec, err error) {
	err = filledIn(plainSpec, in.Spec, &s)
	return s, err
}

// filledIn reads what a text says and then what the table says otherwise, if anything.
func filledIn(plain string, says json.RawMessage, into any) error {
	if err := decode([]byte(plain), into); err != nil || len(says) == 0 {
		return err
	}
	if err := decode(says, into); err != nil {
		return fmt.Errorf("%w: %w", errInputs, err)
	}
	return nil
}

func front(in planned) (string, error) { return in.piece(garment.Front) }

func back(in planned) (string, error) { return in.piece(garment.Back) }

func sleeve(in planned) (string, error) {
	return in.piece(func(s garment.Spec) (garment.Piece, error) { return garment.Sleeve(s, shaping.Right) })
}

// ofPiece lists what a piece can be asked for.
func ofPiece() []one[garment.Piece] {
	return []one[garment.Piece]{
		{"stitches cast on", func(p garment.Piece) string { return fmt.Sprint(p.Widths.CastOn) }},
		{"neck edge - middle - neck edge", func(p garment.Piece) string {
			side := (p.Widths.Neck - p.Widths.Flat) / 2
			return fmt.Sprintf("%d - %d - %d", side, p.Widths.Flat, side)
		}},
		{"armhole", func(p garment.Piece) string {
			e := edgeOf(p, garment.ArmholeEdge)
			return fmt.Sprintf("%d at once, %d over %d rows, then %d rows", p.Widths.BindOff, e.Stitches, e.Rows, p.Heights.Armhole-e.Rows)
		}},
		{"rows of the shoulder", func(p garment.Piece) string { return fmt.Sprint(p.Heights.Drop) }},
		{"rows of the cap", func(p garment.Piece) string { return fmt.Sprint(p.Heights.Cap) }},
		{"rows from hem to waist", func(p garment.Piece) string { return fmt.Sprint(edgeOf(p, garment.HemToWaist).Rows) }},
	}
}

// edgeOf returns the drawn edge of that name at the right, none if there is none.
func edgeOf(p garment.Piece, name string) garment.Edge {
	for _, e := range p.Edges {
		if e.Name == name && e.Side == shaping.Right {
			return e
		}
	}
	return garment.Edge{}
}

func (in planned) piece(plan func(garment.Spec) (garment.Piece, error)) (string, error) {
	gives, err := pick(in.Gives, ofPiece())
	if err != nil {
		return "", err
	}
	s, err := in.spec()
	if err != nil {
		return "", err
	}
	p, err := plan(s)
	if err != nil {
		return "", err
	}
	return gives(p), nil
}

// ofSet lists what a garment can be asked for.
func ofSet() []one[garment.Set] {
	return []one[garment.Set]{
		{"stitches of the neckband", func(s garment.Set) string {
			b, _ := s.Band(garment.Neckband)
			return fmt.Sprint(b.Stitches())
		}},
		{"stitches along straight rows", func(s garment.Set) string { return fmt.Sprint(partOf(s, garment.StraightPart).Count) }},
		{"straight rows", func(s garment.Set) string { return partOf(s, garment.StraightPart).Phrase }},
		{"stitches a row along the slope", func(s garment.Set) string {
			p := partOf(s, garment.SlopePart)
			return p.Wanted.Div(max(1, p.Rows)).Decimal(2).StringFixed(2)
		}},
		{"head and neck", func(s garment.Set) string {
			for _, c := range s.Failed() {
				if c.Name == "neck" {
					return "the head does not go through"
				}
			}
			return "the head goes through"
		}},
	}
}

// partOf returns the first part of that kind that the neckband picks up from the front, none
// if there is none.
func partOf(s garment.Set, kind garment.PartKind) garment.Part {
	b, _ := s.Band(garment.Neckband)
	for _, strip := range b.Strips {
		for _, p := range strip.Parts {
			if p.Piece == shaping.Front && p.Kind == kind {
				return p
			}
		}
	}
	return garment.Part{}
}

func pieces(in planned) (string, error) {
	gives, err := pick(in.Gives, ofSet())
	if err != nil {
		return "", err
	}
	s, err := in.spec()
	if err != nil {
		return "", err
	}
	set, err := garment.Pieces(s)
	if err != nil {
		return "", err
	}
	return gives(set), nil
}
