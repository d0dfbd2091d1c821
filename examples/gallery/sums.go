package main

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// sum is one number of a piece as it is worked out by hand.
type sum struct {
	What    string
	By      string // what is multiplied, divided or taken away
	Exactly string
	Chosen  string // stitches or rows
	Is      string // the length that they make
	Why     string
}

// sums returns the numbers that the edge of the example needs.
func (p planned) sums() []sum {
	switch p.example.edge {
	case garment.NeckEdge:
		return p.neckSums()
	case garment.ShoulderEdge:
		return p.shoulderSums()
	case garment.ArmholeEdge:
		return p.armholeSums()
	case garment.CapEdge:
		return p.capSums()
	}
	return p.sideSums()
}

const nearest = "the nearest whole number"

const asCuff = "as the cuff is: both edges are shaped alike"

// nearestAs says why a count became so many stitches that must be even or odd as another
// number is: whose says which, such as "as the body is".
func nearestAs(exactly gauge.Count, stitches int, whose string) string {
	if exactly.Round(gauge.Rounding{}) == stitches {
		return fmt.Sprintf("%s, and %s %s", nearest, parity(stitches), whose)
	}
	return fmt.Sprintf("the nearest %s number, %s", parity(stitches), whose)
}

func (p planned) neckSums() []sum {
	w, h, n := p.piece.Widths, p.piece.Heights, p.spec.Neck
	list := []sum{
		p.wide("Body", p.length(p.spec.Body.Width), p.stitches(p.spec.Body.Width), w.Body, nearest),
		p.wide("Neck", p.length(n.Width), p.stitches(n.Width), w.Neck, nearestAs(p.stitches(n.Width), w.Neck, "as the body is: both shoulders are alike")),
		p.whole("Each shoulder", fmt.Sprintf("(%d − %d) ÷ 2", w.Body, w.Neck), w.Shoulder, "what the neck leaves"),
	}
	const asNeck = "as the neck is"
	switch third := p.stitches(n.Width).Div(3); {
	case n.Shape == garment.RoundNeck:
		list = append(list, p.wide("Flat middle", p.length(n.Width)+" ÷ 3", third, w.Flat, "a third of the neck: "+nearestAs(third, w.Flat, asNeck)))
	case n.Shape == garment.SquareNeck:
		list = append(list, p.whole("Flat middle", "", w.Flat, "all of the neck"))
	case n.Shape == garment.PathNeck:
		flat := n.Flat.Or(gauge.Length{})
		list = append(list, p.wide("Flat middle", p.length(flat), p.stitches(flat), w.Flat, nearestAs(p.stitches(flat), w.Flat, asNeck)))
	default:
		list = append(list, p.whole("Flat middle", "", w.Flat, "the neck is "+parity(w.Neck)+": in the point of a vee there is a stitch where it is odd, else none"))
	}
	return append(list,
		p.whole("Curve on each side", fmt.Sprintf("(%d − %d) ÷ 2", w.Neck, w.Flat), (w.Neck-w.Flat)/2, "the same on both sides"),
		p.high("Depth", p.length(n.Depth), p.rows(n.Depth), h.Neck, "the nearest even number: a half begins and ends at its outer edge"),
	)
}

func (p planned) shoulderSums() []sum {
	w, h, s := p.piece.Widths, p.piece.Heights, p.spec
	asked := s.Body.Width.Sub(s.Neck.Width)
	list := []sum{
		p.wide("Shoulder", fmt.Sprintf("(%s − %s) ÷ 2", p.length(s.Body.Width), p.length(s.Neck.Width)), p.stitches(asked).Div(2), w.Shoulder,
			fmt.Sprintf("half of what the neck of %d leaves of the body's %d", w.Neck, w.Body)),
		p.high("Drop", p.length(s.Shoulder.Drop), p.rows(s.Shoulder.Drop), h.Drop, "the nearest even number: a group every second row"),
	}
	if s.Shoulder.Path != "" {
		return list
	}
	groups := p.groups()
	return append(list,
		sum{What: "Groups", By: fmt.Sprintf("%d ÷ 2 + 1", h.Drop), Exactly: fmt.Sprint(len(groups)), Chosen: fmt.Sprintf("%d groups", len(groups)), Why: "one every second row, and the one that is left at the neck"},
		sum{What: "In a group", By: fmt.Sprintf("%d ÷ %d", w.Shoulder, len(groups)), Exactly: gauge.Whole(w.Shoulder).Div(len(groups)).String(),
			Chosen: listed(groups), Why: "as equal as can be; what is left over goes to the neck, one each"},
	)
}

// groups returns the equal groups of a shoulder from tip to neck.
func (p planned) groups() []int {
	groups, err := shaping.ShoulderGroups(p.piece.Widths.Shoulder, p.piece.Heights.Drop)
	if err != nil {
		return nil // the piece has such a shoulder
	}
	return groups
}

func (p planned) armholeSums() []sum {
	w, h, a := p.piece.Widths, p.piece.Heights, p.spec.Armhole
	list := []sum{p.wide("Body", p.length(p.spec.Body.Width), p.stitches(p.spec.Body.Width), w.Body, nearest)}
	if w.Inset > 0 {
		list = append(list, p.wide("Inset on each side", p.length(a.Inset), p.stitches(a.Inset), w.Inset,
			fmt.Sprintf("so that the whole is kept: %d + 2 × %d + 2 × %d = %d", w.Neck, w.Shoulder, w.Inset, w.Body)))
	}
	if w.BindOff > 0 {
		at := a.BindOff.Or(gauge.Length{})
		list = append(list,
			p.wide("At once at the underarm", p.length(at), p.stitches(at), w.BindOff, nearest),
			p.whole("Curve", fmt.Sprintf("%d − %d", w.Inset, w.BindOff), w.Inset-w.BindOff, "what is left of the inset"))
	}
	list = append(list, p.high("Depth", p.length(a.Depth), p.rows(a.Depth), h.Armhole,
		fmt.Sprintf("so that the whole height is kept, with the body below and the drop above: %d + %d + %d = %d", h.Underarm, h.Armhole, h.Drop, h.Top())))
	if p.edge != nil {
		height := a.Curve.Or(gauge.Length{})
		list = append(list, p.high("Height of the curve", p.length(height), p.rows(height), p.edge.Rows, nearest+"; above it the edge is straight"))
	}
	return list
}

func (p planned) capSums() []sum {
	w, h, s := p.piece.Widths, p.piece.Heights, p.spec.Sleeve
	flat, height := s.Flat.Or(gauge.Length{}), p.size("cap").Asked
	wanted := p.size("capEdge").Asked
	return []sum{
		p.wide("Sleeve at the underarm", p.length(s.Top), p.stitches(s.Top), w.Body, nearestAs(p.stitches(s.Top), w.Body, asCuff)),
		p.whole("At once at each underarm", "", w.BindOff, "as on front and back"),
		p.wide("Flat top", p.length(flat), p.stitches(flat), w.Flat, nearestAs(p.stitches(flat), w.Flat, "as the sleeve is")),
		p.whole("Curve on each side", fmt.Sprintf("(%d − %d) ÷ 2 − %d", w.Body, w.Flat, w.BindOff), (w.Body-w.Flat)/2-w.BindOff, "what is left"),
		{What: "Length along the edge", By: fmt.Sprintf("%s + %s", p.rounded(wanted.Sub(s.Ease)), p.length(s.Ease)), Exactly: p.rounded(wanted), Chosen: "", Is: p.rounded(wanted), Why: "the armholes of front and back, and the ease"},
		p.high("Height of the cap", p.length(height), p.rows(height), h.Cap, "at the exact height the drawn line has that length; near it, the rows whose steps have it"),
	}
}

func (p planned) sideSums() []sum {
	w, h, s := p.piece.Widths, p.piece.Heights, p.spec.Sleeve
	each := (w.Body - w.CastOn) / 2
	return []sum{
		p.wide("Top", p.length(s.Top), p.stitches(s.Top), w.Body, "twice the depth of the armhole: "+nearestAs(p.stitches(s.Top), w.Body, asCuff)),
		p.wide("Cuff", p.length(s.Cuff), p.stitches(s.Cuff), w.CastOn, nearestAs(p.stitches(s.Cuff), w.CastOn, "as the top is")),
		p.whole("Increases on each side", fmt.Sprintf("(%d − %d) ÷ 2", w.Body, w.CastOn), each, "one stitch at both edges in the same row"),
		p.high("Length", p.length(s.Length), p.rows(s.Length), h.Underarm, nearest),
		{What: "Rows apart", By: fmt.Sprintf("%d ÷ (%d + 1)", h.Underarm, each), Exactly: gauge.Whole(h.Underarm).Div(each + 1).String(),
			Chosen: fmt.Sprintf("%d or %d rows", h.Underarm/(each+1), h.Underarm/(each+1)+1), Why: "one distance more than increases, for the rows after the last one; the smaller come first"},
	}
}

// wide is a width that becomes so many stitches.
func (p planned) wide(what, by string, exactly gauge.Count, stitches int, why string) sum {
	s := p.spec.Swatch
	return sum{
		What: what, By: fmt.Sprintf("%s × %d ÷ %s", by, s.Stitches, p.length(s.Width)), Exactly: exactly.String(),
		Chosen: plural.Stitches(stitches), Is: p.rounded(p.piece.Gauge.Width(stitches)), Why: why,
	}
}

// high is a height that becomes so many rows.
func (p planned) high(what, by string, exactly gauge.Count, rows int, why string) sum {
	s := p.spec.Swatch
	return sum{
		What: what, By: fmt.Sprintf("%s × %d ÷ %s", by, s.Rows, p.length(s.Height)), Exactly: exactly.String(),
		Chosen: plural.Rows(rows), Is: p.rounded(p.piece.Gauge.Height(rows)), Why: why,
	}
}

// whole is a number of stitches that follows from others.
func (p planned) whole(what, by string, stitches int, why string) sum {
	return sum{
		What: what, By: by, Exactly: fmt.Sprint(stitches),
		Chosen: plural.Stitches(stitches), Is: p.rounded(p.piece.Gauge.Width(stitches)), Why: why,
	}
}

func (p planned) stitches(l gauge.Length) gauge.Count { return p.piece.Gauge.Stitches(l) }
func (p planned) rows(l gauge.Length) gauge.Count     { return p.piece.Gauge.Rows(l) }

// size returns a length of the piece as it was asked and knitted.
func (p planned) size(name string) garment.Size {
	for _, s := range p.piece.Sizes {
		if s.Name == name {
			return s
		}
	}
	return garment.Size{}
}

func parity(n int) string {
	if n%2 == 0 {
		return "even"
	}
	return "odd"
}
