package curve_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
	"pgregory.net/rapid"
)

// quadrature integrates |f - level| over row r, stretch by stretch between the
// places where it is not smooth.
func quadrature(s sketch, r, level int) float64 {
	from, to := float64(r-1), float64(r)
	cuts := []float64{from, to}
	corners := s.corners
	if level > 0 && level <= s.stitches {
		corners = append(slices.Clone(corners), s.inverse(float64(level)))
	}
	for _, t := range corners {
		if from < t && t < to {
			cuts = append(cuts, t)
		}
	}
	slices.Sort(cuts)
	sum := 0.0
	for i := 1; i < len(cuts); i++ {
		sum += doubleExponential(cuts[i-1], cuts[i], func(t float64) float64 { return math.Abs(s.f(t) - float64(level)) })
	}
	return sum
}

// doubleExponential integrates f, which may start or end level: the places crowd at the
// ends faster than any root rises there (H. Takahasi and M. Mori, Double exponential
// formulas for numerical integration, 1974).
func doubleExponential(from, to float64, f func(float64) float64) float64 {
	const slices, farthest = 30, 3.2
	const step = farthest / slices
	sum := 0.0
	for i := -slices; i <= slices; i++ {
		sinh, cosh := math.Pi/2*math.Sinh(step*float64(i)), math.Pi/2*math.Cosh(step*float64(i))
		part := 1 / (1 + math.Exp(-2*sinh)) // of the way from one end to the other
		weight := step * cosh / (math.Cosh(sinh) * math.Cosh(sinh))
		sum += weight * f(from+(to-from)*part)
	}
	return sum * (to - from) / 2
}

// Measure agrees with numeric quadrature within 1e-7 stitch-rows, which is what counts,
// and the deviation within 1e-9 stitches.
func TestMeasureEqualsQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 40).Draw(t, "rows")
		stitches := rapid.IntRange(1, 30).Draw(t, "stitches")
		rules := drawRules(t)
		var schedule shaping.Schedule
		for row := 1; row <= rows; row++ {
			if s := rapid.IntRange(-6, 6).Draw(t, "step"); s < 0 || s > 3 {
				schedule = append(schedule, shaping.Step{Row: row, Stitches: s})
			}
		}
		s := f.sketch(stitches, rows)
		var area, floor, deviation float64
		level := 0
		for r := 1; r <= rows; r++ {
			if step, ok := schedule.At(r); ok {
				level -= step.Stitches
			}
			deviation = max(deviation, math.Abs(s.f(float64(r)-0.5)-float64(level)))
			if r < firstAllowed(rules) {
				continue
			}
			area += quadrature(s, r, level)
			least := math.Inf(1)
			for c := range stitches + 1 {
				least = min(least, quadrature(s, r, c))
			}
			floor += least
		}
		got, err := curve.Measure(f.edge, stitches, rows, rules, schedule)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.Area-area) > 1e-7 || math.Abs(got.Floor-floor) > 1e-7 || math.Abs(got.Deviation-deviation) > 1e-9 {
			t.Fatalf("%s: got %+v, want area %v, floor %v, deviation %v", f.name, got, area, floor, deviation)
		}
	})
}

// In the largest box every area is still right within 1e-7 stitch-rows for each row.
func TestMeasureOfTheLargestBox(t *testing.T) {
	const rows, stitches = curve.MaxRows, curve.MaxStitches
	for _, f := range forms() {
		s := f.sketch(stitches, rows)
		schedule := shaping.Schedule{{Row: 10, Stitches: -400}, {Row: 700, Stitches: -600}}
		want := 0.0
		for r := 1; r <= rows; r++ {
			want += s.row(r, -schedule.Through(r))
		}
		got := must(curve.Measure(f.edge, stitches, rows, shaping.Rules{}, schedule))
		if math.Abs(got.Area-want) > 1e-7*rows {
			t.Errorf("%s: got %v, want %v", f.name, got.Area, want)
		}
	}
}

// Zero stitches are drawn as an upright line.
func TestMeasureOfNoStitches(t *testing.T) {
	for _, f := range forms() {
		r := must(curve.Trace(f.edge, 0, 10, shaping.Rules{}))
		if len(r.Schedule) != 0 || r.Measures != (curve.Measures{}) {
			t.Errorf("%s: got %+v, want no steps and no area", f.name, r)
		}
		got := must(curve.Measure(f.edge, 0, 10, shaping.Rules{}, shaping.Schedule{{Row: 4, Stitches: -2}, {Row: 6, Stitches: 2}}))
		if want := (curve.Measures{Area: 4, Deviation: 2}); got != want {
			t.Errorf("%s: got %+v, want %+v", f.name, got, want)
		}
	}
}

func TestMeasureErrors(t *testing.T) {
	line := forms()[0].edge
	for _, c := range []struct {
		name           string
		edge           curve.Edge
		stitches, rows int
		rules          shaping.Rules
		schedule       shaping.Schedule
	}{
		{"no edge", curve.Edge{}, 4, 4, shaping.Rules{}, nil},
		{"no rows", line, 4, 0, shaping.Rules{}, nil},
		{"negative rows", line, 4, -1, shaping.Rules{}, nil},
		{"too many rows", line, 4, curve.MaxRows + 1, shaping.Rules{}, nil},
		{"too many stitches", line, curve.MaxStitches + 1, 4, shaping.Rules{}, nil},
		{"too many coming", line, math.MinInt, 4, shaping.Rules{}, nil},
		{"rules", line, 4, 4, shaping.Rules{Every: -1}, nil},
		{"rules beyond", line, 4, 4, shaping.Rules{Phase: math.MaxInt}, nil},
		{"step beyond the rows", line, 4, 4, shaping.Rules{}, shaping.Schedule{{Row: 5, Stitches: -4}}},
		{"step at row 0", line, 4, 4, shaping.Rules{}, shaping.Schedule{{Row: 0, Stitches: -4}}},
		{"order", line, 4, 4, shaping.Rules{}, shaping.Schedule{{Row: 2, Stitches: -2}, {Row: 1, Stitches: -2}}},
		{"absurd step", line, 4, 4, shaping.Rules{}, shaping.Schedule{{Row: 2, Stitches: math.MinInt}}},
		{"absurd sum", line, 4, 4, shaping.Rules{}, shaping.Schedule{{Row: 2, Stitches: 900_000}, {Row: 3, Stitches: 900_000}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := curve.Measure(c.edge, c.stitches, c.rows, c.rules, c.schedule)
			if !errors.Is(err, curve.ErrRange) || got != (curve.Measures{}) {
				t.Errorf("got %+v, %v", got, err)
			}
			if c.schedule != nil {
				return
			}
			if _, err := curve.Trace(c.edge, c.stitches, c.rows, c.rules); !errors.Is(err, curve.ErrRange) {
				t.Errorf("trace: %v", err)
			}
		})
	}
}
