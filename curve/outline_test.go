package curve_test

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// What a browser says of the length of paths (made by internal/pathlengths). It reckons
// in single precision and measures polygons: its figures hold within 2 parts in 10,000.
func TestBrowserLengths(t *testing.T) {
	const tolerance = 2e-4
	var figures struct {
		Browser string
		Paths   []struct {
			Path   string
			Length float64
		}
	}
	if err := json.Unmarshal(must(os.ReadFile("testdata/browser-lengths.json")), &figures); err != nil {
		t.Fatal(err)
	}
	if figures.Browser == "" || len(figures.Paths) < 30 {
		t.Fatalf("%d paths by browser %q", len(figures.Paths), figures.Browser)
	}
	list := string(must(os.ReadFile("testdata/browser-paths.txt")))
	worst := 0.0
	for _, p := range figures.Paths {
		if !strings.Contains(list, p.Path+"\n") {
			t.Errorf("%s is not in the list", p.Path)
		}
		edge, err := curve.ParsePath(p.Path)
		if err != nil {
			t.Errorf("%s: %v", p.Path, err)
			continue
		}
		got := millimetres(edge.Length())
		off := math.Abs(got-p.Length) / p.Length
		if worst = max(worst, off); off > tolerance {
			t.Errorf("%s: length %g, the browser says %g", p.Path, got, p.Length)
		}
	}
	t.Logf("%d paths, the worst off by %g", len(figures.Paths), worst)
}

// drawnEdges are paths of edges with what a piece can be: straight, level, upright, out
// and in, level and upright ends of curves, cusps.
func drawnEdges() []string {
	return []string{
		"M 0 240 L 60 0", "m0,90h40v-45h-15v-45", "M 0 240 C 60 240 120 180 120 0",
		"M 0 100 C 100 60 0 40 100 0", "M 0 100 C 80 50 -80 50 0 0", "M 0 100 C 0 100 33 100 100 0",
		"M 0 50 Q 60 25 0 0", "M5 60 Q 5 30 30 30 T 40 0", "M 0 40 C 90 40 -60 40 30 0",
		"M 0 60 A 30 30 0 0 0 0 0", "M 0 100 A 60 80 30 0 1 20 0", "M 0 100 A 60 80 30 0 0 20 0",
		"M 0 200 A 250 125 135 0 0 50 100 A 125 250 -45 0 1 100 0", "M 0 1 a1000 1000 0 0 1 .5-1",
		"M 0 70 A 90 70 0 0 0 90 0", "M 0 100 C 50 100 50 0 100 0", "M 0 100 C 0 0 100 100 100 0",
	}
}

func drawEdge(t *rapid.T) curve.Edge {
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		return must(curve.ParsePath(rapid.SampledFrom(drawnEdges()).Draw(t, "path")))
	case 1:
		n := rapid.SampledFrom(exponents()).Draw(t, "exponent")
		return must(curve.Join(must(curve.Superellipse(mm("90"), mm("70"), decimal.RequireFromString(n)))))
	case 2:
		return must(curve.Through(drawPoints(t)...))
	}
	return must(curve.Join(
		must(curve.ParsePath(rapid.SampledFrom(drawnEdges()).Draw(t, "lower"))),
		must(curve.Line(mm("30"), mm("20"))),
		must(curve.ParsePath(rapid.SampledFrom(drawnEdges()).Draw(t, "upper"))),
		must(curve.QuarterEllipse(mm("12"), mm("20")))))
}

// Pieces follow each other without gaps; x at the height where x is reached is x again;
// what is taken is the integral of x by Simpson's rule.
func TestPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := drawEdge(t)
		atX, atY := 0.0, 0.0
		for _, p := range curve.Pieces(edge) {
			x0, y0, x1, y1 := p.Ends()
			if x0 != atX || y0 != atY || y1 < y0 {
				t.Fatalf("a piece from (%g, %g) to (%g, %g) after (%g, %g)", x0, y0, x1, y1, atX, atY)
			}
			atX, atY = x1, y1
			if p.Across(y1) != x1 || p.Taken(y0) != 0 || p.HeightAt(x0) != y0 {
				t.Fatalf("at its ends: %g across, %g taken, height %g", p.Across(y1), p.Taken(y0), p.HeightAt(x0))
			}
			if y0 == y1 {
				continue
			}
			size := math.Abs(x1-x0) + (y1 - y0)
			part := rapid.Float64Range(0.01, 0.99).Draw(t, "part")
			if x := x0 + (x1-x0)*part; x0 != x1 && math.Abs(p.Across(p.HeightAt(x))-x) > 1e-9*size {
				t.Errorf("%g is reached at %g, where it is %g", x, p.HeightAt(x), p.Across(p.HeightAt(x)))
			}
			y := y0 + (y1-y0)*part
			want := simpson(p.Across, y, y+(y1-y)/2)
			if got := p.Taken(y+(y1-y)/2) - p.Taken(y); math.Abs(got-want) > 1e-5*size*size {
				t.Errorf("taken between %g and %g: %g, want %g", y, y+(y1-y)/2, got, want)
			}
			if low, high := p.Across(y), p.Across(y+(y1-y)/2); (low-high)*(x0-x1) < 0 {
				t.Errorf("turns: %g, %g between %g and %g", low, high, x0, x1)
			}
		}
	})
}

func simpson(f func(float64) float64, a, b float64) float64 {
	const steps = 2000
	sum := f(a) + f(b)
	for i := 1; i < steps; i++ {
		sum += float64(2+2*(i%2)) * f(a+(b-a)*float64(i)/steps)
	}
	return sum * (b - a) / steps / 3
}

// A length is that of a fine polygon, and the area what all pieces take.
func TestLengthAndAreaByPolygon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := drawEdge(t)
		length, area := 0.0, 0.0
		for _, p := range curve.Pieces(edge) {
			x0, y0, x1, y1 := p.Ends()
			area += simpson(p.Across, y0, y1)
			// By height and by x in turn, whichever changes faster.
			const steps = 4000
			x, y := x0, y0
			for i := 1; i <= steps; i++ {
				along := (1 - math.Cos(math.Pi*float64(i)/steps)) / 2
				nextY := y0 + (y1-y0)*along
				nextX := p.Across(nextY)
				if y0 == y1 {
					nextX = x0 + (x1-x0)*along
				}
				length += math.Hypot(nextX-x, nextY-y)
				x, y = nextX, nextY
			}
		}
		if got, want := millimetres(edge.Length()), length/1000; math.Abs(got-want) > 1e-4*want {
			t.Errorf("%s: length %g, want %g", edge.Path(), got, want)
		}
		if got, want := edge.Area(), area/1e6; math.Abs(got-want) > 1e-4*max(got, 100) {
			t.Errorf("%s: area %g, want %g", edge.Path(), got, want)
		}
	})
}

// A path written is read back as the same edge, unless it has parabolas in place of a
// superellipse.
func TestPathReadsBack(t *testing.T) {
	for _, path := range drawnEdges() {
		readsBack(t, must(curve.ParsePath(path)))
	}
	rapid.Check(t, func(t *rapid.T) {
		readsBack(t, must(curve.Polyline(drawPoints(t)...)))
		readsBack(t, must(curve.Through(drawPoints(t)...)))
	})
}

type failer interface {
	Helper()
	Errorf(format string, args ...any)
}

func readsBack(t failer, edge curve.Edge) {
	t.Helper()
	path := edge.Path()
	again, err := curve.ParsePath(path)
	if err != nil {
		t.Errorf("%s: %v", path, err)
		return
	}
	if again.Path() != path || !again.Length().Equal(edge.Length()) || again.Area() != edge.Area() ||
		!again.Width().Equal(edge.Width()) || !again.Height().Equal(edge.Height()) {
		t.Errorf("%s is read back as %s: %v and %v, %g and %g", path, again.Path(), edge.Length(), again.Length(), edge.Area(), again.Area())
	}
}

// Joined edges are as long, wide and high as their parts together, and take what each
// takes beside what those below it have left to its right.
func TestJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := []curve.Edge{
			drawEdge(t), must(curve.Line(mm("12.34567"), mm("7"))), drawEdge(t), must(curve.QuarterEllipse(mm("0.5"), mm("70.25"))),
		}
		whole := must(curve.Join(parts...))
		var width, height gauge.Length
		length, area := 0.0, 0.0
		for _, part := range parts {
			area += part.Area() + millimetres(width)*millimetres(part.Height())
			length += millimetres(part.Length())
			width, height = width.Add(part.Width()), height.Add(part.Height())
		}
		if !whole.Width().Equal(width) || !whole.Height().Equal(height) {
			t.Errorf("%v by %v, want %v by %v", whole.Width(), whole.Height(), width, height)
		}
		if got := millimetres(whole.Length()); math.Abs(got-length) > 1e-8 {
			t.Errorf("length %.15g, want %.15g", got, length)
		}
		if math.Abs(whole.Area()-area) > 1e-9*(1+math.Abs(area)) {
			t.Errorf("area %.15g, want %.15g", whole.Area(), area)
		}
	})
	if _, err := curve.Join(); !errors.Is(err, curve.ErrRange) {
		t.Errorf("no edges: %v", err)
	}
	if _, err := curve.Join(curve.Edge{}); !errors.Is(err, curve.ErrRange) {
		t.Errorf("the zero Edge: %v", err)
	}
	if _, err := curve.Join(must(curve.Line(mm("1"), mm("6e5"))), must(curve.Line(mm("1"), mm("6e5")))); !errors.Is(err, curve.ErrRange) {
		t.Errorf("too high: %v", err)
	}
}

// Scaling stretches the area with the box, mirrors on a change of sign, and can be undone.
func TestScaledOutlines(t *testing.T) {
	for _, path := range drawnEdges() {
		edge := must(curve.ParsePath(path))
		if edge.Width().IsZero() {
			if _, err := edge.Scaled(mm("1"), mm("10")); !errors.Is(err, curve.ErrRange) {
				t.Errorf("%s to another width: %v", path, err)
			}
			taller := must(edge.Scaled(edge.Width(), edge.Height().Mul(3)))
			if got := taller.Area(); math.Abs(got-3*edge.Area()) > 1e-9*math.Abs(got) {
				t.Errorf("%s: area %g, want three times %g", path, got, edge.Area())
			}
			continue
		}
		scaled := must(edge.Scaled(edge.Width().Mul(-2), edge.Height().Mul(3)))
		if got, want := scaled.Area(), -6*edge.Area(); math.Abs(got-want) > 1e-12*math.Abs(want) {
			t.Errorf("%s: area %g, want %g", path, got, want)
		}
		back := must(scaled.Scaled(edge.Width(), edge.Height()))
		if back.Path() != edge.Path() || !back.Length().Equal(edge.Length()) || back.Area() != edge.Area() {
			t.Errorf("%s comes back as %s", path, back.Path())
		}
	}
}
