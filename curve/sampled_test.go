package curve_test

import (
	"math"
	"testing"

	"example.com/walewise/curve"
	"pgregory.net/rapid"
)

// The points lead from the lower end to the upper end and never fall, and the line through
// them is as long as the edge and takes away as much, within a thousandth of its size.
func TestPointsFollowTheEdge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := drawEdge(t)
		points := edge.Points()
		first, last := points[0], points[len(points)-1]
		if !first.Across.IsZero() || !first.Up.IsZero() || !last.Across.Equal(edge.Width()) || !last.Up.Equal(edge.Height()) {
			t.Fatalf("from %v to %v, the edge is %v wide and %v high", first, last, edge.Width(), edge.Height())
		}
		length, area := 0.0, 0.0
		for i, p := range points[1:] {
			x0, y0 := millimetres(points[i].Across), millimetres(points[i].Up)
			x1, y1 := millimetres(p.Across), millimetres(p.Up)
			if y1 < y0 {
				t.Fatalf("falls from %v to %v", points[i], p)
			}
			length += math.Hypot(x1-x0, y1-y0)
			area += (x0 + x1) / 2 * (y1 - y0)
		}
		size := millimetres(edge.Length())
		rounding := 0.001 * float64(len(points)) // of the points, to 1/1000 mm
		if off := math.Abs(length - size); off > 1e-3*size+rounding {
			t.Fatalf("%d points of %s: %g mm long, the edge %g", len(points), edge.Path(), length, size)
		}
		if off := math.Abs(area - edge.Area()); off > 1e-3*size*size+rounding*size {
			t.Fatalf("%d points of %s: take away %g mm2, the edge %g", len(points), edge.Path(), area, edge.Area())
		}
	})
}

func TestPointsOfStraightEdges(t *testing.T) {
	for _, c := range []struct {
		why  string
		edge curve.Edge
		want int
	}{
		{"the zero edge", curve.Edge{}, 0},
		{"a line has its two ends", must(curve.Line(mm("20"), mm("30"))), 2},
		{"a level stretch and an upright one", must(curve.ParsePath("M 0 10 h 5 v -10")), 3},
	} {
		if got := len(c.edge.Points()); got != c.want {
			t.Errorf("%s: %d points, want %d", c.why, got, c.want)
		}
	}
}
