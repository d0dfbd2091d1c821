package curve_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"pgregory.net/rapid"
)

// Quarter ellipses as arcs have the length and the area of the edge of that name, which
// is tested against published tables.
func TestQuarterArcs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.IntRange(1, 1000).Draw(t, "a"), rapid.IntRange(1, 1000).Draw(t, "b")
		want := must(curve.QuarterEllipse(mm(fmt.Sprint(a)), mm(fmt.Sprint(b))))
		for _, path := range []string{
			want.Path(),
			fmt.Sprintf("m0 %d a %d %d 90 0 0 %d -%d", b, b, a, a, b),
			fmt.Sprintf("m5 -9 a %d -%d 180 0,0%d-%d", a, b, a, b),
		} {
			got := must(curve.ParsePath(path))
			long, longWanted := millimetres(got.Length()), millimetres(want.Length())
			if math.Abs(long-longWanted) > 2e-9+1e-12*longWanted {
				t.Errorf("%s: length %.15g, want %.15g", path, long, longWanted)
			}
			if math.Abs(got.Area()-want.Area()) > 1e-15*float64(a*b) {
				t.Errorf("%s: area %.17g, want %.17g", path, got.Area(), want.Area())
			}
			if curve.Turns(got) || len(curve.Pieces(got)) != 1 {
				t.Errorf("%s: %d pieces", path, len(curve.Pieces(got)))
			}
		}
	})
}

// Points of arcs lie on the ellipse: by its equation in the frame of its axes, with the
// centre that the mirror image of the arc in the middle of its chord shares.
func TestArcsAreOnTheEllipse(t *testing.T) {
	for _, c := range []struct {
		name       string
		path       string
		rx, ry     float64
		cx, cy     float64 // the centre as seen from the lower end, upwards
		rotation   float64 // anticlockwise as seen, in degrees
		turns      bool
		leftOfEnds bool
	}{
		{"circle", "M 0 60 A 30 30 0 0 0 0 0", 30, 30, 0, 30, 0, true, false},
		{"circle the other way", "M 0 60 A 30 30 0 0 1 0 0", 30, 30, 0, 30, 0, true, true},
		{"radii too small", "M 0 60 A 1 2 0 0 0 0 0", 15, 30, 0, 30, 0, true, false},
		{"rotated and too small", "M 0 100 A 1 1 33 0 1 0 0", 50, 50, 0, 50, 0, true, true},
		{"three and four", "M 0 80 A 50 50 0 0 0 0 0", 50, 50, -30, 40, 0, true, false},
		{"rotated by a quarter", "M 0 70 A 70 90 90 0 0 90 0", 90, 70, 0, 70, 0, false, false},
	} {
		edge := must(curve.ParsePath(c.path))
		if curve.Turns(edge) != c.turns {
			t.Errorf("%s: turns %t", c.name, !c.turns)
		}
		for _, p := range curve.Pieces(edge) {
			_, y0, _, y1 := p.Ends()
			for i := range 21 {
				y := y0 + (y1-y0)*float64(i)/20
				x := p.Across(y) / 1000
				if (x < -1e-9) != c.leftOfEnds && math.Abs(x) > 1e-9 {
					t.Errorf("%s: %g across at %g", c.name, x, y)
				}
				dx, dy := (x-c.cx)/c.rx, (y/1000-c.cy)/c.ry
				if off := math.Abs(dx*dx + dy*dy - 1); off > 1e-13 {
					t.Errorf("%s: off by %g at %g", c.name, off, y)
				}
			}
		}
	}
}

// A rotated arc is the image of one along the axes: its area beside the chord and its
// length are the same.
func TestRotatedArcs(t *testing.T) {
	// The ellipse with half-axes 60 and 80 about the middle of a chord through its centre:
	// half of it lies on either side.
	for degrees := 0; degrees < 180; degrees += 15 {
		sin, cos := math.Sincos(float64(degrees) * math.Pi / 180)
		// Half the chord straight upwards ends on the ellipse.
		half := 1 / math.Hypot(sin/60, cos/80)
		path := fmt.Sprintf("M 0 %.3f A 60 80 %d 0 0 0 0", 2*math.Floor(half*1000)/1000, degrees)
		edge, err := curve.ParsePath(path)
		if degrees%90 != 0 {
			// The lowest point of a slanted ellipse is not straight below its centre.
			if err == nil {
				t.Errorf("%s does not descend", path)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		if want := math.Pi * 60 * 80 / 2; math.Abs(edge.Area()-want) > 1e-9*want {
			t.Errorf("%s: area %g, want %g", path, edge.Area(), want)
		}
	}
}

// Scaling an arc and its written form agree within what rounding to 1/1000 does.
func TestScaledArcs(t *testing.T) {
	for _, path := range []string{
		"M 0 100 A 60 80 30 0 1 20 0", "M 0 100 A 60 80 -75 0 0 20 0", "M 0 70 A 90 70 0 0 0 90 0",
		"M 0 100 A 300 200 20 0 1 100 0",
	} {
		for _, size := range [][2]string{{"150", "77"}, {"-31", "400"}, {"3", "50"}} {
			edge := must(must(curve.ParsePath(path)).Scaled(mm(size[0]), mm(size[1])))
			again, err := curve.ParsePath(edge.Path())
			if err != nil {
				t.Errorf("%s to %v: %v", path, size, err)
				continue
			}
			sameWithin(t, edge, again, 0.02)
		}
	}
}

func sameWithin(t *testing.T, e, f curve.Edge, tolerance float64) {
	t.Helper()
	if math.Abs(millimetres(e.Length())-millimetres(f.Length())) > tolerance {
		t.Errorf("%s: lengths %v and %v", f.Path(), e.Length(), f.Length())
	}
	if math.Abs(e.Area()-f.Area()) > tolerance*millimetres(e.Height()) {
		t.Errorf("%s: areas %g and %g", f.Path(), e.Area(), f.Area())
	}
	if e.Width().Sub(f.Width()).Abs().Cmp(gauge.MustParseLength("0.001 mm")) > 0 {
		t.Errorf("%s: widths %v and %v", f.Path(), e.Width(), f.Width())
	}
}
