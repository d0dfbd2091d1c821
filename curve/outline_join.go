package curve

import (
	"fmt"

	"example.com/walewise/gauge"
)

// Join returns one edge made of others, each on top of the one before it. Its size is
// the sum of theirs. Coordinates are not rounded again, so that joined edges that were
// scaled, or are not drawn in whole thousandths of a millimetre, read back from their path
// only within 1/1000 mm.
//
// It returns an [*Error] that wraps [ErrRange] if there is no edge, if one of them is the
// zero Edge, if they have more than 20,000 segments together, or if the sum of the
// heights, or of the widths, is more than 1000 m.
func Join(edges ...Edge) (Edge, error) {
	if len(edges) == 0 {
		return Edge{}, rangeError("edges", 0, "at least 1")
	}
	var width, height gauge.Length
	o := &outline{}
	for _, e := range edges {
		if e.shape == nil {
			return Edge{}, noEdge()
		}
		at := frame{1, 1, o.width, o.height}
		w, h := e.width.Millimetres().Shift(3).InexactFloat64(), e.height.Millimetres().Shift(3).InexactFloat64()
		width, height = width.Add(e.width), height.Add(e.height)
		x, y := width.Millimetres().Shift(3).InexactFloat64(), height.Millimetres().Shift(3).InexactFloat64()
		for _, s := range e.shape.drawn(w, h) {
			o.add(s.stretched(at), x, y)
		}
		if count := len(o.segments); count > mostSegments {
			return Edge{}, rangeError("segments", count, fmt.Sprintf("at most %d", mostSegments))
		}
	}
	return newEdge(width, height, o)
}

func (line) drawn(width, height float64) []segment {
	return []segment{lineTo(0, 0, width, height)}
}

func (quarterEllipse) drawn(width, height float64) []segment {
	return []segment{ellipticalArc(box{0, 0, width, height}, width, height, 0, false, false)}
}
