package curve

import "github.com/shopspring/decimal"

// outline is a shape made of segments, each of which starts where the one before it
// ends, the first at (0, 0). Its unit is 1/1000 mm: coordinates that were read are whole
// numbers. Its size is that of the edge before it was scaled.
type outline struct {
	width, height float64 // the last segment ends there
	segments      []segment
	pieces        []piece
}

// add appends a segment that ends at (x, y), and reports whether it falls nowhere.
func (o *outline) add(s segment, x, y float64) bool {
	pieces, ok := s.pieces(o.pieces)
	if !ok {
		return false
	}
	o.segments, o.pieces = append(o.segments, s), pieces
	o.width, o.height = x, y
	return true
}

// edge returns the outline as an edge of its own size.
func (o *outline) edge() (Edge, error) {
	return newEdge(thousandths(o.width), thousandths(o.height), o)
}

// turns reports whether x both grows and shrinks.
func (o *outline) turns() bool {
	grows, shrinks := false, false
	for _, p := range o.pieces {
		x0, _, x1, _ := p.ends()
		grows, shrinks = grows || x1 > x0, shrinks || x1 < x0
	}
	return grows && shrinks
}

// reach returns the least and the greatest x.
func (o *outline) reach() (least, most float64) {
	for _, p := range o.pieces {
		_, _, x1, _ := p.ends()
		least, most = min(least, x1), max(most, x1)
	}
	return least, most
}

// frame returns the frame in which the outline has a size. If it ends straight above
// its start, x is stretched by the unit alone.
func (o *outline) frame(width, height, unit float64) frame {
	f := frame{xScale: unit, yScale: height / o.height}
	if o.width != 0 {
		f.xScale = width / o.width
	}
	return f
}

const millimetre = 1000 // in the unit of outlines

func (o *outline) length(width, height float64) float64 {
	f, length := o.frame(width, height, 1./millimetre), 0.0
	for _, s := range o.segments {
		length += s.stretched(f).length()
	}
	return length
}

func (o *outline) area(width, height float64) float64 {
	f, area := o.frame(width, height, 1./millimetre), 0.0
	for _, p := range o.pieces {
		_, _, _, y1 := p.ends()
		area += p.taken(y1)
	}
	return float64(area*f.xScale) * f.yScale
}

func (o *outline) path(width, height decimal.Decimal) string {
	w, h := width.Shift(3).InexactFloat64(), height.Shift(3).InexactFloat64()
	f := o.frame(w, h, 1)
	p := &pathText{height: h}
	for _, s := range o.segments {
		s.stretched(f).addTo(p)
	}
	return string(p.text)
}

func (o *outline) drawn(width, height float64) []segment {
	f := o.frame(width, height, 1)
	segments := make([]segment, len(o.segments))
	for i, s := range o.segments {
		segments[i] = s.stretched(f)
	}
	return segments
}
