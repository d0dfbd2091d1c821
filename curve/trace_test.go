package curve_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"pgregory.net/rapid"
)

// form is an edge for the package and for the slow way.
type form struct {
	name   string
	edge   curve.Edge
	sketch func(stitches, rows int) sketch
}

func forms() []form { return append(plainForms(), drawnForms()...) }

// plainForms returns the edges that need nothing but a width and a height.
func plainForms() []form {
	return []form{
		{"line", must(curve.Line(mm("60"), mm("80"))), sketchLine},
		{"ellipse", must(curve.QuarterEllipse(mm("60"), mm("80"))), sketchEllipse},
	}
}

// gone returns the schedule as stitches gone at each row, counted from 1.
func gone(s shaping.Schedule, rows int) []int {
	steps := make([]int, rows+1)
	for _, step := range s {
		steps[step.Row] = -step.Stitches
	}
	return steps
}

type tester interface {
	Helper()
	Fatalf(format string, args ...any)
}

// checkBrute compares a trace with the slow way.
func checkBrute(t tester, f form, stitches, rows int, rules shaping.Rules) {
	t.Helper()
	checkSketch(t, f, f.sketch(stitches, rows).table(), rules)
}

func checkSketch(t tester, f form, s sketch, rules shaping.Rules) answer {
	t.Helper()
	stitches, rows := s.stitches, s.rows
	a := bruteForce(s, rules)
	want := a.steps
	got, err := curve.Trace(f.edge, stitches, rows, rules)
	if want == nil {
		if err == nil {
			t.Fatalf("%s, %d stitches, %d rows, %+v: got %v, want an error", f.name, stitches, rows, rules, got.Schedule)
		}
		return a
	}
	if err != nil {
		t.Fatalf("%s, %d stitches, %d rows, %+v: %v, want %v", f.name, stitches, rows, rules, err, want)
	}
	if g := gone(got.Schedule, rows); !slices.Equal(g, want) {
		t.Fatalf("%s, %d stitches, %d rows, %+v: got %v with area %v, want %v with %v",
			f.name, stitches, rows, rules, g[1:], got.Measures.Area, want[1:], a.area)
	}
	if err := rules.Check(got.Schedule, rows); err != nil {
		t.Fatalf("%s, %d stitches, %d rows, %+v: %v", f.name, stitches, rows, rules, err)
	}
	return a
}

// smallRules yields a grid of rules.
func smallRules(yield func(shaping.Rules) bool) {
	singles := []shaping.Beat{{}, {Every: 1}, {Every: 1, Phase: 1}, {Every: 2}, {Every: 2, Phase: 1}}
	for every := range 3 {
		for phase := range 3 {
			for apart := range 3 {
				for most := range 4 {
					for _, base := range []int{0, 1, 3} {
						for plain := range 3 {
							for _, single := range singles {
								if !yield(shaping.Rules{
									Every: every + 1, Phase: phase, Apart: apart + 1, Most: most, Base: base, Plain: plain, Single: single,
								}) {
									return
								}
							}
						}
					}
				}
			}
		}
	}
}

// largestBox is up to how many rows and stitches every box is compared with brute force: 6 take
// half a minute, and are asked for by .ci/long.
func largestBox() int {
	switch {
	case testing.Short():
		return 4
	case os.Getenv("WALEWISE_EXHAUSTIVE") == "":
		return 5
	}
	return 6
}

// Every box is compared with every schedule there is; of drawn forms up to 4 rows and stitches.
func TestTraceEqualsBruteForce(t *testing.T) {
	traceEveryBox(t, plainForms(), largestBox())
	traceEveryBox(t, drawnForms(), 4)
}

func traceEveryBox(t *testing.T, forms []form, largest int) {
	for _, f := range forms {
		for rows := 1; rows <= largest; rows++ {
			t.Run(fmt.Sprintf("%s/rows=%d", f.name, rows), func(t *testing.T) {
				t.Parallel()
				for stitches := range largest + 1 {
					s := f.sketch(stitches, rows).table()
					for rules := range smallRules {
						checkSketch(t, f, s, rules)
					}
				}
			})
		}
	}
}

func drawRules(t *rapid.T) shaping.Rules {
	rules := shaping.Rules{
		Every: rapid.IntRange(0, 3).Draw(t, "every"),
		Phase: rapid.IntRange(0, 4).Draw(t, "phase"),
		Apart: rapid.IntRange(0, 4).Draw(t, "apart"),
		Most:  rapid.IntRange(0, 5).Draw(t, "most"),
		Base:  rapid.SampledFrom([]int{0, 0, 1, 4, 8}).Draw(t, "base"),
		Plain: rapid.IntRange(0, 3).Draw(t, "plain"),

		SeveralUntil: rapid.SampledFrom([]int{0, 0, 0, 1, 3, 6}).Draw(t, "several until"),
	}
	if rapid.Bool().Draw(t, "single") {
		rules.Single = shaping.Beat{
			Every: rapid.IntRange(0, 3).Draw(t, "single every"),
			Phase: rapid.IntRange(0, 4).Draw(t, "single phase"),
		}
	}
	return rules
}

func TestTraceEqualsBruteForceAtRandom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 12).Draw(t, "rows")
		stitches := rapid.IntRange(0, 9).Draw(t, "stitches")
		checkBrute(t, f, stitches, rows, drawRules(t))
	})
}

// Straight edges whose stitches come at whole numbers of rows have very many
// schedules of the same area.
func TestTraceTiesOfLines(t *testing.T) {
	line := forms()[0]
	rapid.Check(t, func(t *rapid.T) {
		stitches := rapid.IntRange(1, 7).Draw(t, "stitches")
		rows := min(stitches*rapid.IntRange(1, 5).Draw(t, "rows a stitch")+rapid.IntRange(0, 1).Draw(t, "more rows"), 22)
		rules := shaping.Rules{
			Every: rapid.IntRange(1, 3).Draw(t, "every"),
			Phase: rapid.IntRange(0, 2).Draw(t, "phase"),
			Apart: rapid.IntRange(1, 3).Draw(t, "apart"),
			Base:  rapid.SampledFrom([]int{0, 0, 3}).Draw(t, "base"),
		}
		checkBrute(t, line, stitches, rows, rules)
	})
}

// neighbours yields the schedules that differ by one stitch moved to another row, or
// by one step moved by a row.
func neighbours(steps []int, yield func([]int)) {
	rows := len(steps) - 1
	changed := slices.Clone(steps)
	for r := 1; r <= rows; r++ {
		if steps[r] == 0 {
			continue
		}
		for other := 1; other <= rows; other++ {
			if other == r {
				continue
			}
			changed[r]--
			changed[other]++
			yield(changed)
			changed[r], changed[other] = steps[r], steps[other]
			if other == r-1 || other == r+1 {
				changed[r], changed[other] = steps[other], steps[r]
				yield(changed)
				changed[r], changed[other] = steps[r], steps[other]
			}
		}
	}
}

func scheduleOf(steps []int) shaping.Schedule {
	var s shaping.Schedule
	for r, n := range steps {
		if n != 0 {
			s = append(s, shaping.Step{Row: r, Stitches: -n})
		}
	}
	return s
}

func TestNoMovedStitchImproves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 60).Draw(t, "rows")
		stitches := rapid.IntRange(0, 40).Draw(t, "stitches")
		rules := drawRules(t)
		r, err := curve.Trace(f.edge, stitches, rows, rules)
		if err != nil {
			return
		}
		neighbours(gone(r.Schedule, rows), func(steps []int) {
			moved := scheduleOf(steps)
			if rules.Check(moved, rows) != nil {
				return
			}
			m := must(curve.Measure(f.edge, stitches, rows, rules, moved))
			if m.Area < r.Measures.Area-1e-7 {
				t.Fatalf("%v has area %v, less than %v of %v", moved, m.Area, r.Measures.Area, r.Schedule)
			}
		})
	})
}

func TestLooserRulesAreNotWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 80).Draw(t, "rows")
		stitches := rapid.IntRange(0, 50).Draw(t, "stitches")
		rules := drawRules(t)
		tight, err := curve.Trace(f.edge, stitches, rows, rules)
		if err != nil {
			return
		}
		looser := rules
		switch rapid.IntRange(0, 3).Draw(t, "loosened") {
		case 0:
			looser.Apart = max(rules.Apart-1, 0)
		case 1:
			if looser.Most != 1 { // a second stitch may move the first allowed row
				looser.Most = 0
			}
		case 2:
			looser.Plain = max(rules.Plain-1, 0)
		case 3:
			if looser.Base > 1 {
				looser.Base++
			}
		}
		loose, err := curve.Trace(f.edge, stitches, rows, looser)
		if err != nil {
			t.Fatalf("%+v works and %+v does not: %v", rules, looser, err)
		}
		if loose.Measures.Area > tight.Measures.Area+1e-7 {
			t.Fatalf("area %v with %+v, %v with %+v", tight.Measures.Area, rules, loose.Measures.Area, looser)
		}
		if tight.Measures.Area < tight.Measures.Floor-1e-9 {
			t.Fatalf("area %v is less than the floor %v", tight.Measures.Area, tight.Measures.Floor)
		}
	})
}

// A trace depends on the form of the edge, not on its size, and stitches that come
// mirror those that go.
func TestTraceInvariance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 80).Draw(t, "rows")
		stitches := rapid.IntRange(0, 50).Draw(t, "stitches")
		rules := drawRules(t)
		want, err := curve.Trace(f.edge, stitches, rows, rules)
		scaled := must(f.edge.Scaled(drawLength(t, "width"), drawLength(t, "height")))
		got, errScaled := curve.Trace(scaled, stitches, rows, rules)
		coming, errComing := curve.Trace(f.edge, -stitches, rows, rules)
		if err != nil {
			if errScaled == nil || errComing == nil {
				t.Fatalf("%v, but scaled %v, coming %v", err, errScaled, errComing)
			}
			return
		}
		if !slices.Equal(got.Schedule, want.Schedule) || got.Measures != want.Measures {
			t.Fatalf("scaled: %v, want %v", got, want)
		}
		for i := range coming.Schedule {
			coming.Schedule[i].Stitches *= -1
		}
		if !slices.Equal(coming.Schedule, want.Schedule) || coming.Measures != want.Measures {
			t.Fatalf("coming: %v, want %v", coming, want)
		}
	})
}

func drawLength(t *rapid.T, label string) gauge.Length {
	return mm(fmt.Sprint(rapid.IntRange(1, 100_000).Draw(t, label)))
}

// Edges that rise by half stitches tie at every other row, so that phrases, deviations
// and the order of rows decide. Half of them are a little off, by less than what counts
// or by more when summed, so that schedules which tie do not have quite the same area.
func TestTraceTiesOfStairs(t *testing.T) {
	const billion = 1_000_000_000 // units of a stitch, of which 100 make no difference
	seeds := uint64(6000)
	if testing.Short() {
		seeds = 1500
	}
	var tied, phrases, deviation uint64
	for seed := range seeds {
		r := rand.New(rand.NewPCG(seed, 1))
		rows, stitches := 4+r.IntN(11), 1+r.IntN(6)
		units := make([]int64, rows)
		for i := range units {
			units[i] = r.Int64N(int64(2*stitches+1)) * billion / 2
			if seed%2 == 1 {
				units[i] += 18 * r.Int64N(4) // no sum of these is near 100
			}
		}
		slices.Sort(units)
		rules := shaping.Rules{
			Every: 1 + r.IntN(2), Phase: r.IntN(2), Apart: r.IntN(3), Most: r.IntN(4), Base: 3 * (r.IntN(3) / 2), Plain: r.IntN(2),
		}
		if r.IntN(3) == 0 {
			rules.Single = shaping.Beat{Every: 1 + r.IntN(2), Phase: r.IntN(2)}
		}
		f := form{name: fmt.Sprint("stair ", seed), edge: curve.StairEdge(units, billion)}
		a := checkSketch(t, f, sketchStair(units, billion, stitches), rules)
		for _, count := range []struct {
			left int
			of   *uint64
		}{{a.tied, &tied}, {a.phrases, &phrases}, {a.deviation, &deviation}} {
			if count.left > 1 {
				*count.of++
			}
		}
	}
	// The test is only as good as the ties it meets.
	if tied < seeds/2 || phrases < seeds/3 || deviation < seeds/3 {
		t.Errorf("of %d edges only %d tie by area, %d by phrases, %d by deviation", seeds, tied, phrases, deviation)
	}
}

// A long flat part between two whole numbers of stitches leaves every row open for the
// step: what is chosen must not depend on looking at each.
func TestTraceWideTies(t *testing.T) {
	const rows, stitches = 300, 3
	units := make([]int64, rows)
	for i := range units {
		units[i] = int64(2*(i*stitches/rows) + 1)
	}
	r, err := curve.Trace(curve.StairEdge(units, 2), stitches, rows, shaping.Rules{})
	if err != nil {
		t.Fatal(err)
	}
	// One phrase as late as can be: rows 101 to 201 and 201 to 300 are open for the others.
	want := shaping.Schedule{{Row: 101, Stitches: -1}, {Row: 200, Stitches: -1}, {Row: 299, Stitches: -1}}
	if !slices.Equal(r.Schedule, want) {
		t.Errorf("got %v, want %v", r.Schedule, want)
	}
}
