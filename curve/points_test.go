package curve_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func at(across, up string) curve.Point { return curve.Point{Across: mm(across), Up: mm(up)} }

// drawPoints draws points whose heights rise, at the finest grid or a coarse one.
func drawPoints(t *rapid.T) []curve.Point {
	unit := rapid.SampledFrom([]int32{-3, 0}).Draw(t, "unit")
	count := rapid.IntRange(2, 8).Draw(t, "count")
	points := make([]curve.Point, count)
	up := int64(0)
	for i := range points {
		across := rapid.Int64Range(-50, 50).Draw(t, "across")
		points[i] = curve.Point{
			Across: gauge.Millimetres(decimal.New(across, unit)), Up: gauge.Millimetres(decimal.New(up, unit)),
		}
		up += rapid.Int64Range(1, 40).Draw(t, "higher")
	}
	return points
}

func TestPolyline(t *testing.T) {
	edge := must(curve.Polyline(at("10", "5"), at("40", "5"), at("43", "9"), at("43", "9"), at("40", "9.0004")))
	if got, want := edge.Path(), "M 0 4 L 30 4 L 33 0 L 30 0"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := millimetres(edge.Length()); got != 38 {
		t.Errorf("length %g, want 30 + 5 + 3", got)
	}
	if got := edge.Area(); got != 126 { // 31.5 times 4
		t.Errorf("area %g", got)
	}
}

// The edge goes through the points, turns nowhere but at them, and so stays between them.
func TestThrough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := drawPoints(t)
		edge := must(curve.Through(points...))
		pieces := curve.Pieces(edge)
		if len(pieces) != len(points)-1 {
			t.Fatalf("%d pieces between %d points: %s", len(pieces), len(points), edge.Path())
		}
		for i, p := range pieces {
			x0, y0, x1, y1 := p.Ends()
			from, to := points[i], points[i+1]
			for name, c := range map[string][2]float64{
				"x0": {x0, millimetres(from.Across.Sub(points[0].Across))}, "y0": {y0, millimetres(from.Up)},
				"x1": {x1, millimetres(to.Across.Sub(points[0].Across))}, "y1": {y1, millimetres(to.Up)},
			} {
				if math.Abs(c[0]-1000*c[1]) > 1e-6 {
					t.Errorf("piece %d: %s is %g, want %g", i, name, c[0], 1000*c[1])
				}
			}
		}
	})
}

// Measured points of a parabola give nearly that parabola back, those of a line the line.
func TestThroughSmoothPoints(t *testing.T) {
	var parabola, line []curve.Point
	for i := range 11 {
		parabola = append(parabola, at(fmt.Sprint(i*i), fmt.Sprint(10*i)))
		line = append(line, at(fmt.Sprint(3*i), fmt.Sprint(10*i)))
	}
	for _, p := range curve.Pieces(must(curve.Through(parabola...))) {
		_, y0, _, y1 := p.Ends()
		y := (y0 + y1) / 2
		// Only the two lowest millimetres differ: the first slope is not less than none.
		if got, want := p.Across(y), y*y/1e5; math.Abs(got-want) > 30 {
			t.Errorf("%g across at %g, want %g", got, y, want)
		}
	}
	edge := must(curve.Through(line...))
	if got, want := millimetres(edge.Length()), 10*math.Sqrt(109); math.Abs(got-want) > 1e-4 {
		t.Errorf("length %g, want %g", got, want)
	}
}

func TestPointsRefused(t *testing.T) {
	for _, c := range []struct {
		name              string
		points            []curve.Point
		polyline, through bool
	}{
		{"none", nil, false, false},
		{"one", []curve.Point{at("0", "0")}, false, false},
		{"level", []curve.Point{at("0", "0"), at("1", "0")}, false, false},
		{"a level stretch", []curve.Point{at("0", "0"), at("1", "0"), at("2", "1")}, true, false},
		{"down", []curve.Point{at("0", "0"), at("1", "2"), at("2", "1.999")}, false, false},
		{"too far", []curve.Point{at("0", "0"), at("1000000.001", "2")}, false, false},
		{"too wide", []curve.Point{at("-1000000", "0"), at("1000000", "2")}, false, false},
		{"absurd", []curve.Point{at("0", "0"), at("1e300", "1e400")}, false, false},
		{"too many", make([]curve.Point, 20_002), false, false},
	} {
		for name, make := range map[string]func(...curve.Point) (curve.Edge, error){"polyline": curve.Polyline, "through": curve.Through} {
			_, err := make(c.points...)
			if ok := map[string]bool{"polyline": c.polyline, "through": c.through}[name]; ok != (err == nil) || err != nil && !errors.Is(err, curve.ErrRange) {
				t.Errorf("%s, %s: %v", c.name, name, err)
			}
		}
	}
}
