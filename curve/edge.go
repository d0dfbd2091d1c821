package curve

import (
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// Edge is a drawn edge from its lower end to its upper end, inside a box of its
// width and height. It is immutable and safe for concurrent use. The zero value is
// no edge: its lengths are zero and [Trace] and [Measure] refuse it.
type Edge struct {
	width, height gauge.Length
	shape         shape
}

// shape is the form of an edge apart from its size.
type shape interface {
	// drawing returns the edge in a box of whole stitches and rows.
	drawing(stitches, rows int) *drawing
	// length returns the arc length in a box of that size.
	length(width, height float64) float64
	// area returns the integral of x over the height in a box of that size.
	area(width, height float64) float64
	// path returns the path commands that lead from the lower end (0, height)
	// to the upper end (width, 0). The sizes are rounded.
	path(width, height decimal.Decimal) string
	// drawn returns the segments in a box of that size in thousandths of a millimetre.
	drawn(width, height float64) []segment
}

// Bounds of the sizes of an edge in millimetres.
var (
	leastHeight = decimal.New(1, -3)
	largestSize = decimal.New(1, 6)
)

// newEdge checks the sizes. Only outlines may end on the other side of their start.
func newEdge(width, height gauge.Length, s shape) (Edge, error) {
	w, h := width.Millimetres(), height.Millimetres()
	if _, drawn := s.(*outline); w.Abs().Cmp(largestSize) > 0 || w.Sign() < 0 && !drawn {
		if drawn {
			return Edge{}, rangeError("edge width", width, "-1000 m to 1000 m")
		}
		return Edge{}, widthError(width)
	}
	if h.Cmp(leastHeight) < 0 || h.Cmp(largestSize) > 0 {
		return Edge{}, rangeError("edge height", height, "1/1000 mm to 1000 m")
	}
	return Edge{width, height, s}, nil
}

func widthError(width gauge.Length) error { return rangeError("edge width", width, "0 to 1000 m") }

// Width returns how far the upper end lies from the lower end, as stitches go. It is
// negative if more stitches come than go.
func (e Edge) Width() gauge.Length { return e.width }

// Height returns the vertical distance between the two ends.
func (e Edge) Height() gauge.Length { return e.height }

// Length returns the length along the edge, rounded to 1e-9 mm and right within
// 1e-9 mm or a part in 1e12, whichever is more.
func (e Edge) Length() gauge.Length {
	if e.shape == nil {
		return gauge.Length{}
	}
	const places = 9
	length := e.shape.length(e.size())
	return gauge.Millimetres(decimal.NewFromFloat(length).Round(places))
}

// Area returns what the edge takes away in square millimetres: what lies between the
// edge and the upright line through its lower end. For a neck that is the opening, for
// an armhole what is cut out of the side. It is the integral of the distance across over
// the height: where the edge lies beyond its lower end on the side to which stitches
// come, it counts as negative. It is right within a part in 1e15 of the box.
func (e Edge) Area() float64 {
	if e.shape == nil {
		return 0
	}
	return e.shape.area(e.size())
}

// Path returns the edge as SVG path data in millimetres, y downwards, from the
// lower end at (0, height) to the upper end at (width, 0): x grows as stitches go.
// Coordinates are rounded to 1/1000 mm, and superellipses drawn by parabolas that lie
// within 1/100 mm of them. The zero Edge has the empty path.
func (e Edge) Path() string {
	if e.shape == nil {
		return ""
	}
	const places = 3
	width, height := e.width.Millimetres().Round(places), e.height.Millimetres().Round(places)
	return "M 0 " + height.String() + " " + e.shape.path(width, height)
}

// Scaled returns the same edge stretched to a box of that size. It returns an
// error in the same cases as [Line], and for the zero Edge. Edges that were drawn may
// have negative widths, and are mirrored if the sign changes; but one that was drawn with its
// ends straight above each other has no other width than 0, and keeps its distances across.
func (e Edge) Scaled(width, height gauge.Length) (Edge, error) {
	if e.shape == nil {
		return Edge{}, noEdge()
	}
	if o, drawn := e.shape.(*outline); drawn && o.width == 0 && !width.IsZero() {
		return Edge{}, rangeError("edge width", width, "0, as the ends stand straight above each other")
	}
	return newEdge(width, height, e.shape)
}

func (e Edge) size() (width, height float64) {
	return e.width.Millimetres().InexactFloat64(), e.height.Millimetres().InexactFloat64()
}

func noEdge() error {
	return rangeError("edge", "without a shape", "an edge made by a function of this package, such as Line")
}

// Turns reports whether the edge turns back, so that stitches go and come.
func (e Edge) Turns() bool {
	o, drawn := e.shape.(*outline)
	return drawn && o.turns()
}
