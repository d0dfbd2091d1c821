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

// The slow way for edges that go out and in: steps of both signs in every row.

// exactly returns the integral of |f - level| over a row.
func (c crooked) exactly(f func(float64) float64, r, level int) float64 {
	cuts := []float64{float64(r - 1), float64(r)}
	for _, corner := range c.corners {
		if t := corner[1]; float64(r-1) < t && t < float64(r) {
			cuts = append(cuts, t)
		}
	}
	slices.Sort(cuts)
	sum := 0.0
	for i := 1; i < len(cuts); i++ {
		const inside = 1e-12 // of a jump one side only
		a, b := f(cuts[i-1]+inside)-float64(level), f(cuts[i]-inside)-float64(level)
		dt := cuts[i] - cuts[i-1]
		if (a < 0) == (b < 0) {
			sum += math.Abs(a+b) / 2 * dt
		} else {
			sum += (a*a + b*b) / (2 * math.Abs(b-a)) * dt
		}
	}
	return sum
}

// turningBrute looks at all schedules of an edge that goes out and in.
type turningBrute struct {
	f     func(float64) float64
	rules shaping.Rules
	cost  [][]float64 // by row and level + bias
	net   int
	rows  int
	first int
	steps []int
	found []candidate
}

const bias = 12

func (b *turningBrute) look(r, gone, last int, area float64) {
	if r > b.rows {
		if gone == b.net {
			b.found = append(b.found, candidate{steps: slices.Clone(b.steps), area: area})
		}
		return
	}
	for step := -4; step <= 4; step++ {
		then := last
		if step != 0 {
			own := b.rules.For(-step)
			if !mayStand(own, firstAllowed(own), r, b.rows, max(step, -step)) || last > 0 && r-last < own.Apart {
				continue
			}
			then = r
		}
		b.steps[r] = step
		here := area
		if gone+step < -bias || gone+step > bias {
			continue
		}
		if r >= b.first {
			here += b.cost[r][gone+step+bias]
		}
		b.look(r+1, gone+step, then, here)
	}
	b.steps[r] = 0
}

// keep leaves what is within a distance of the least by a key.
func (b *turningBrute) keep(found []candidate, key func(*candidate) float64, within float64) []candidate {
	least := math.Inf(1)
	for i := range found {
		least = min(least, key(&found[i]))
	}
	return slices.DeleteFunc(found, func(c candidate) bool { return key(&c) > least+within })
}

// choose applies the rules for ties to what can be said in up to so many phrases.
func (b *turningBrute) choose(phrases int) *candidate {
	found := slices.DeleteFunc(slices.Clone(b.found), func(c candidate) bool { return c.phrases > phrases })
	if len(found) == 0 {
		return nil
	}
	found = b.keep(found, func(c *candidate) float64 { return c.area }, tie)
	found = b.keep(found, func(c *candidate) float64 { return float64(c.phrases) }, 0)
	found = b.keep(found, func(c *candidate) float64 { return c.deviation }, tie)
	for r := 1; r <= b.rows; r++ {
		found = b.keep(found, func(c *candidate) float64 { return math.Abs(float64(c.steps[r])) }, 0)
		found = b.keep(found, func(c *candidate) float64 { return -float64(c.steps[r]) }, 0) // taking off first
	}
	return &found[0]
}

func TestTurningEdgesEqualBruteForce(t *testing.T) {
	turned := 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawCrooked(t, 5, 3)
		d := must(c.edge.At(c.gauge))
		if !d.Turns() {
			return
		}
		turned++
		drawn := func(of string) shaping.Rules {
			return shaping.Rules{
				Every: rapid.IntRange(0, 2).Draw(t, of+" every"), Phase: rapid.IntRange(0, 2).Draw(t, of+" phase"),
				Apart: rapid.IntRange(0, 3).Draw(t, of+" apart"), Most: rapid.IntRange(1, 3).Draw(t, of+" most"),
				Base: rapid.SampledFrom([]int{0, 0, 4}).Draw(t, of+" base"), Plain: rapid.IntRange(0, 1).Draw(t, of+" plain"),
			}
		}
		rules := drawn("going")
		if rapid.Bool().Draw(t, "coming of its own") {
			coming := drawn("coming")
			rules.Coming = &coming
		}
		f, net, rows := c.laid()
		b := &turningBrute{f: f, rules: rules, net: net, rows: rows, steps: make([]int, rows+1)}
		b.first = min(firstAllowed(rules), firstAllowed(rules.For(1)))
		b.cost = make([][]float64, rows+1)
		for r := 1; r <= rows; r++ {
			for level := -bias; level <= bias; level++ {
				b.cost[r] = append(b.cost[r], c.exactly(f, r, level))
			}
		}
		b.look(1, 0, 0, 0)
		for i := range b.found {
			k := &b.found[i]
			k.phrases = fewestPhrases(k.steps, rules, b.first, false)
			gone := 0
			for r := 1; r <= rows; r++ {
				gone += k.steps[r]
				k.deviation = max(k.deviation, math.Abs(f(float64(r)-0.5)-float64(gone)))
			}
		}
		got, err := d.Wordings(rules, curve.Phrasing{})
		want := b.choose(math.MaxInt)
		if want == nil {
			if !errors.Is(err, curve.ErrInfeasible) {
				t.Fatalf("%v %+v: got %v, %v, want it refused", c.corners, rules, got, err)
			}
			return
		}
		if err != nil {
			t.Fatalf("%v %+v: %v, want %v", c.corners, rules, err, want)
		}
		if g := gone(got.Trace.Schedule, rows); !slices.Equal(g, want.steps) {
			t.Fatalf("%v %+v: got %v with area %v, want %v with %v", c.corners, rules, g[1:], got.Trace.Measures.Area, want.steps[1:], want.area)
		}
		n, before := 0, math.Inf(1)
		for phrases := 0; phrases <= rows; phrases++ {
			want := b.choose(phrases)
			if want == nil || want.area >= before-tie {
				continue
			}
			before = want.area
			if n >= len(got.All) || !slices.Equal(gone(got.All[n].Schedule, rows), want.steps) {
				t.Fatalf("%v %+v: wordings %v, in %d phrases want %v with %v", c.corners, rules, got.All, phrases, want.steps, want.area)
			}
			n++
		}
		if n != len(got.All) {
			t.Fatalf("%v %+v: %d wordings, want %d", c.corners, rules, len(got.All), n)
		}
		checkSaid(t, "turning", d, got, rules, curve.Phrasing{})
	})
	if turned == 0 {
		t.Error("no edge turned")
	}
}
