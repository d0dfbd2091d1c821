package curve_test

import (
	"math"
	"testing"

	"example.com/walewise/curve"
)

// Closed forms of the arcs of parabolas, of the cubic of Tschirnhausen and of the cusp
// x = t², y = t³; the others by quadrature with 30 digits.
func TestBezierLength(t *testing.T) {
	const kappa = 0.5522847498307934
	for _, c := range []struct {
		name   string
		points [][2]float64
		want   float64
	}{
		{"quarter turn", [][2]float64{{0, 0}, {1, 0}, {1, 1}}, 1 + math.Asinh(1)/math.Sqrt2},
		{"parabola", [][2]float64{{0, 0}, {1, 2}, {2, 0}}, math.Sqrt(5) + math.Asinh(2)/2},
		{"3 by 4", [][2]float64{{0, 0}, {3, 0}, {3, 4}}, 5.704106908550719},
		{"9 by 7", [][2]float64{{0, 0}, {9, 0}, {9, 7}}, 13.02571239208441},
		{"9 by 8", [][2]float64{{0, 0}, {9, 0}, {9, 8}}, 13.80679212663871},
		{"flat", [][2]float64{{0, 0}, {1, 0}, {2, 1}}, 2.295587149392638},
		{"straight", [][2]float64{{0, 0}, {0.5, 0}, {1, 0}}, 1},
		{"Tschirnhausen", [][2]float64{{1, 0}, {1, 1}, {0, 2}, {-2, 2}}, 4},
		{"cusp", [][2]float64{{0, 0}, {0, 0}, {1. / 3, 0}, {1, 1}}, (13*math.Sqrt(13) - 8) / 27},
		{"quarter circle", [][2]float64{{1, 0}, {1, kappa}, {kappa, 1}, {0, 1}}, 1.571016698073856},
		{"S", [][2]float64{{0, 0}, {1, 0}, {0, 1}, {1, 1}}, 1.676542627420286},
		{"narrow S", [][2]float64{{0, 0}, {0.5, 0}, {0.5, 1}, {1, 1}}, 1.495281529473295},
	} {
		if got := curve.BezierLength(c.points...); math.Abs(got-c.want) > 1e-14*c.want {
			t.Errorf("%s: got %.17g, want %.17g", c.name, got, c.want)
		}
	}
}

// The same curves as edges, in tens of metres.
func TestPathLength(t *testing.T) {
	for _, c := range []struct {
		path string
		want float64
	}{
		{"M 0 10000 Q 10000 10000 10000 0", 1 + math.Asinh(1)/math.Sqrt2},
		{"M 0 80000 Q 90000 80000 90000 0", 13.80679212663871},
		{"M 0 20000 C 0 10000 -10000 0 -30000 0", 4}, // Tschirnhausen
		{"M 0 10000 C 10000 10000 0 0 10000 0", 1.676542627420286},
		{"M 0 10000 C 5000 10000 5000 0 10000 0", 1.495281529473295},
	} {
		edge := must(curve.ParsePath(c.path))
		if got := millimetres(edge.Length()) / 10_000; math.Abs(got-c.want) > 1e-13*c.want {
			t.Errorf("%s: got %.17g, want %.17g", c.path, got, c.want)
		}
	}
}
