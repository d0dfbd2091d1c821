package curve_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// The same edge given in two ways has the same drawing: the exact line and ellipse beside
// the tables made from path data.
func TestPathsAreLaidAsTheirFormulas(t *testing.T) {
	for _, c := range []struct {
		name, path string
		edge       curve.Edge
	}{
		{"line", "M 0 80 L 60 0", must(curve.Line(mm("60"), mm("80")))},
		{"line in parts", "M 0 80 L 15 60 L 30 40 L 60 0", must(curve.Line(mm("60"), mm("80")))},
		{"ellipse", "M 0 80 A 60 80 0 0 0 60 0", must(curve.QuarterEllipse(mm("60"), mm("80")))},
	} {
		drawn := must(curve.ParsePath(c.path))
		for rows := 1; rows <= 90; rows += 7 {
			for stitches := -20; stitches <= 45; stitches += 5 {
				rules := shaping.Rules{Every: 1 + rows%2, Phase: rows % 3, Apart: 2, Most: 6, Base: 9}
				want, errWant := curve.Trace(c.edge, stitches, rows, rules)
				got, err := curve.Trace(drawn, stitches, rows, rules)
				if (err != nil) != (errWant != nil) {
					t.Fatalf("%s, %d stitches, %d rows: %v, want %v", c.name, stitches, rows, err, errWant)
				}
				if fmt.Sprint(got.Schedule) != fmt.Sprint(want.Schedule) || !alike(got.Measures, want.Measures, 1e-6) {
					t.Fatalf("%s, %d stitches, %d rows: %v, want %v", c.name, stitches, rows, got, want)
				}
			}
		}
	}
}

func alike(a, b curve.Measures, within float64) bool {
	return math.Abs(a.Area-b.Area) < within && math.Abs(a.Floor-b.Floor) < within && math.Abs(a.Deviation-b.Deviation) < within
}

// crooked is an edge of straight pieces that goes out and in, for the package and as
// corners: stitches gone and rows.
type crooked struct {
	edge    curve.Edge
	corners [][2]float64
	gauge   gauge.Gauge
}

// drawCrooked draws one of a gauge of a stitch and a row to 5 mm. Corners stand at tenths
// of a row and of a stitch.
func drawCrooked(t *rapid.T, mostRows, mostAcross int) crooked {
	c := crooked{gauge: must(gauge.New(decimal.New(2, 0), decimal.New(2, 0), mm("10"))), corners: [][2]float64{{0, 0}}}
	points := []curve.Point{{}}
	x, y := 0, 0
	for n := rapid.IntRange(1, 4).Draw(t, "pieces"); n > 0 && y < 10*mostRows; n-- {
		x = rapid.IntRange(-10*mostAcross, 10*mostAcross).Draw(t, "across")
		y = rapid.IntRange(y+1, 10*mostRows).Draw(t, "up")
		if n == 1 {
			y = (y + 9) / 10 * 10 // whole rows at the end
		}
		c.corners = append(c.corners, [2]float64{float64(x) / 10, float64(y) / 10})
		points = append(points, curve.Point{Across: halves(x), Up: halves(y)})
	}
	if last := len(points) - 1; y%10 != 0 {
		y = (y + 9) / 10 * 10
		c.corners[last][1], points[last].Up = float64(y)/10, halves(y)
	}
	c.edge = must(curve.Polyline(points...))
	return c
}

// halves returns so many half millimetres: tenths of a stitch of 5 mm.
func halves(n int) gauge.Length { return gauge.Millimetres(decimal.New(int64(5*n), -1)) }

// laid returns f and the rows as the definition has them.
func (c crooked) laid() (f func(t float64) float64, net, rows int) {
	last := c.corners[len(c.corners)-1]
	net, rows = int(math.Round(last[0])), int(math.Round(last[1]))
	way := 0.0
	passed := []float64{0}
	for i := 1; i < len(c.corners); i++ {
		way += math.Abs(c.corners[i][0] - c.corners[i-1][0])
		passed = append(passed, way)
	}
	f = func(t float64) float64 {
		for i := 1; i < len(c.corners); i++ {
			a, b := c.corners[i-1], c.corners[i]
			if t <= b[1] || i == len(c.corners)-1 {
				share := (t - a[1]) / (b[1] - a[1])
				x, v := a[0]+share*(b[0]-a[0]), passed[i-1]+share*(passed[i]-passed[i-1])
				if way == 0 {
					return 0
				}
				return x + (float64(net)-last[0])*v/way
			}
		}
		panic("no corners")
	}
	return f, net, rows
}

// areaOf integrates |f - level| over a row, which holds few corners, by many small steps.
func areaOf(f func(float64) float64, from, to, level float64) float64 {
	const steps = 4000
	sum := 0.0
	for i := range steps {
		sum += math.Abs(f(from+(to-from)*(float64(i)+0.5)/steps) - level)
	}
	return sum * (to - from) / steps
}

// What is measured of an edge that goes out and in is what quadrature gives.
func TestMeasureOfTurningEdges(t *testing.T) {
	turning := 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawCrooked(t, 12, 6)
		d := must(c.edge.At(c.gauge))
		f, net, rows := c.laid()
		if d.Stitches() != net || d.Rows() != rows {
			t.Fatalf("%d stitches, %d rows, want %d and %d", d.Stitches(), d.Rows(), net, rows)
		}
		if d.Turns() {
			turning++
		}
		var s shaping.Schedule
		gone, level, want := 0, make([]int, rows+1), 0.0
		deviation := 0.0
		for r := 1; r <= rows; r++ {
			if step := rapid.IntRange(-3, 3).Draw(t, "step"); step != 0 {
				s = append(s, shaping.Step{Row: r, Stitches: -step})
				gone += step
			}
			level[r] = gone
			want += areaOf(f, float64(r-1), float64(r), float64(gone))
			deviation = max(deviation, math.Abs(f(float64(r)-0.5)-float64(gone)))
		}
		m := must(d.Measure(shaping.Rules{}, s))
		if math.Abs(m.Area-want) > 1e-3 || math.Abs(m.Deviation-deviation) > 1e-6 {
			t.Fatalf("%v: %+v, want %v, %v", c.corners, m, want, deviation)
		}
		floor := 0.0
		for r := 1; r <= rows; r++ {
			least := math.Inf(1)
			for c := -9; c <= 9; c++ {
				least = min(least, areaOf(f, float64(r-1), float64(r), float64(c)))
			}
			floor += least
		}
		if math.Abs(m.Floor-floor) > 1e-3 {
			t.Fatalf("%v: floor %v, want %v", c.corners, m.Floor, floor)
		}
	})
	if turning == 0 {
		t.Error("no edge turned")
	}
}

// An edge that goes out and in, pressed flat: nothing goes.
func TestTurningEdgeOfNoWidth(t *testing.T) {
	edge := must(curve.Polyline(curve.Point{}, curve.Point{Across: mm("50"), Up: mm("50")}, curve.Point{Across: mm("-5"), Up: mm("96")}))
	for _, width := range []string{"0", "1e-310", "1e-400"} {
		flat := must(edge.Scaled(mm(width), mm("96")))
		d := must(flat.At(must(gauge.New(decimal.New(22, 0), decimal.New(30, 0), mm("100")))))
		r, err := d.Trace(shaping.Rules{}, curve.Phrasing{})
		if err != nil || len(r.Schedule) != 0 || !(r.Measures.Area >= 0 && r.Measures.Area < 1e-6) {
			t.Errorf("width %s: %+v, %v", width, r, err)
		}
	}
}

// A search that would take minutes is broken off, and says so.
func TestWordingsAreBrokenOff(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a second or more")
	}
	d := must(must(curve.QuarterEllipse(mm("60"), mm("80"))).In(1000, 2000))
	w, err := d.Wordings(shaping.Rules{}, curve.Phrasing{})
	if err != nil || !w.Partial {
		t.Errorf("partial %v, %v", w.Partial, err)
	}
	if len(w.Default().Schedule) == 0 {
		t.Error("no default")
	}
}

// Where an edge jumps in the middle of a row it has the value above, whatever its size,
// so that the step stands at that row and not after it.
func TestJumpInTheMiddleOfARow(t *testing.T) {
	for rows := 2; rows <= 40; rows++ {
		for height := 2; height <= 100; height++ {
			for jump := 1; jump < height; jump++ {
				if 2*jump*rows%height != 0 {
					continue
				}
				halves := 2 * jump * rows / height
				if row := (halves + 1) / 2; halves%2 == 1 && row < rows {
					edge := must(curve.ParsePath(fmt.Sprintf("M 0 %d V %d H 10 V 0", height, height-jump)))
					got := must(curve.Trace(edge, 1, rows, shaping.Rules{}))
					if got.Schedule[0].Row != row {
						t.Errorf("%d mm, jump at %d mm, %d rows: got %v, want row %d", height, jump, rows, got.Schedule, row)
					}
				}
			}
		}
	}
}
