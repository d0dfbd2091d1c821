package curve_test

import (
	"math"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// plainTrace is what anybody would write first: a table of the least area by row and
// level, filled in by trying every step at every row. It finds the least area, without the
// rules for ties, and is what the speed of the trace is compared with.
func plainTrace(s sketch, rules shaping.Rules) float64 {
	first, apart := firstAllowed(rules), max(rules.Apart, 1)
	most := rules.Most
	if most == 0 {
		most = s.stitches
	}
	inf := math.Inf(1)
	// along[r][c] is the area of the rows up to r at level c.
	along := make([][]float64, s.rows+1)
	togo := make([][]float64, s.rows+2) // from row r on, if a step may stand there
	for r := range along {
		along[r] = make([]float64, s.stitches+1)
		for c := range along[r] {
			if r > 0 {
				along[r][c] = along[r-1][c]
			}
			if r >= first {
				along[r][c] += s.cost[r][c]
			}
		}
	}
	for r := range togo {
		togo[r] = make([]float64, s.stitches+1)
	}
	for c := range s.stitches {
		togo[s.rows+1][c] = inf
	}
	for r := s.rows; r >= 1; r-- {
		for c := range s.stitches + 1 {
			best := along[r][c] - along[r-1][c] + togo[r+1][c]
			steps := most
			if r == first {
				steps = max(steps, rules.Base)
			}
			for step := 1; step <= min(steps, s.stitches-c); step++ {
				if !mayStand(rules, first, r, s.rows, step) {
					break
				}
				next := min(r+apart, s.rows+1)
				best = min(best, along[next-1][c+step]-along[r-1][c+step]+togo[next][c+step])
			}
			togo[r][c] = best
		}
	}
	return togo[1][0]
}

// The plain table finds the areas that the trace finds, in the boxes of the benchmarks.
func TestPlainTraceAgrees(t *testing.T) {
	for _, c := range traceCases() {
		if c.sketch == nil || testing.Short() && c.rows > 200 {
			continue
		}
		got := must(c.drawing().Trace(c.rules, curve.Phrasing{})).Measures.Area
		if want := plainTrace(c.sketch(c.stitches, c.rows).table(), c.rules); math.Abs(got-want) > 1e-5 {
			t.Errorf("%s, %d by %d: area %v, the plain table has %v", c.name, c.rows, c.stitches, got, want)
		}
	}
}
