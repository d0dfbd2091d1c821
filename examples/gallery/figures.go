package main

import (
	"example.com/walewise/curve"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// figure is a number about an edge; Beside is that of another example.
type figure struct{ What, Is, Beside string }

// figures returns the figures of the edge, for one sort of edge always the same.
func (p planned) figures() ([]figure, error) {
	stitches, rows, m, err := p.box()
	if err != nil {
		return nil, err
	}
	g := p.piece.Gauge
	list := []figure{
		{What: "Box of the edge", Is: plural.Stitches(stitches) + " by " + plural.Rows(rows)},
		{What: "Its size", Is: p.rounded(g.Width(stitches)) + " by " + p.rounded(g.Height(rows))},
		{What: "Area off the line", Is: p.area(m.Area)},
		{What: "The floor: what no stairs can do without", Is: p.area(m.Floor)},
		{What: "Farthest off the line", Is: p.off(m)},
	}
	return append(list, p.along()...), nil
}

// box returns the whole stitches and rows of the edge, and how far its steps lie off the
// line.
func (p planned) box() (stitches, rows int, m curve.Measures, err error) {
	h := p.piece.Heights
	switch {
	case p.edge != nil:
		e := p.edge
		return e.Stitches, e.Rows, e.wordings.All[e.followed].Measures, nil
	case p.example.edge == garment.ArmholeEdge:
		return 0, h.Armhole, m, nil
	}
	_, m, err = p.spread()
	if p.example.edge == garment.ShoulderEdge {
		return p.piece.Widths.Shoulder, h.Drop, m, err
	}
	return (p.piece.Widths.Body - p.piece.Widths.CastOn) / 2, h.Underarm, m, err
}

// along returns the lengths along the edge.
func (p planned) along() []figure {
	piece := p.piece
	switch p.example.edge {
	case garment.NeckEdge:
		return []figure{{What: "Along the whole neck, from shoulder to shoulder", Is: p.rounded(piece.NeckLength())}}
	case garment.ArmholeEdge:
		return []figure{{What: "Along the armhole, from the underarm to the tip", Is: p.rounded(piece.ArmholeLength(shaping.Right))}}
	case garment.CapEdge:
		return []figure{
			{What: "Along the whole cap", Is: p.rounded(piece.CapLength())},
			{What: "Wanted: armholes of front and back, and the ease", Is: p.rounded(p.size("capEdge").Asked)},
		}
	case garment.ShoulderEdge:
		line, err := curve.Line(piece.Gauge.Width(piece.Widths.Shoulder), piece.Gauge.Height(piece.Heights.Drop))
		if err != nil {
			return nil
		}
		return []figure{{What: "Straight from tip to neck point", Is: p.rounded(line.Length())}}
	}
	return []figure{{What: "Along the top", Is: p.rounded(piece.Gauge.Width(piece.Widths.Body))},
		{What: "The armholes of front and back", Is: p.rounded(p.around[0].ArmholeLength(shaping.Right).Add(p.around[1].ArmholeLength(shaping.Right)))}}
}
