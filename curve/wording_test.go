package curve_test

import (
	"fmt"
	"runtime"
	"slices"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
	"pgregory.net/rapid"
)

// checkWordings compares wordings with the slow way, and what they say with their steps.
func checkWordings(t tester, f form, s sketch, rules shaping.Rules, steady bool) {
	t.Helper()
	want := bruteWordings(s, rules, steady)
	about := fmt.Sprintf("%s, %d stitches, %d rows, %+v, steady %v", f.name, s.stitches, s.rows, rules, steady)
	d := must(f.edge.In(s.stitches, s.rows))
	how := curve.Phrasing{Steady: steady}
	got, err := d.Wordings(rules, how)
	if (err != nil) != (want == nil) {
		t.Fatalf("%s: %v, want %v", about, err, want)
	}
	if err != nil {
		return
	}
	if len(got.All) != len(want) {
		t.Fatalf("%s: %d wordings %v, want %d %v", about, len(got.All), got.All, len(want), want)
	}
	for i, w := range got.All {
		if g := gone(w.Schedule, s.rows); !slices.Equal(g, want[i]) {
			t.Fatalf("%s: wording %d is %v, want %v", about, i, g[1:], want[i][1:])
		}
	}
	checkSaid(t, about, d, got, rules, how)
}

// checkSaid checks that wordings say their steps, and that they get nearer with each
// phrase down to the trace.
func checkSaid(t tester, about string, d curve.Drawing, w curve.Wordings, rules shaping.Rules, how curve.Phrasing) {
	t.Helper()
	trace := must(d.Trace(rules, how))
	if !slices.Equal(w.Trace.Schedule, trace.Schedule) || w.Trace.Measures != trace.Measures {
		t.Fatalf("%s: trace %v, want %v", about, w.Trace.Result, trace)
	}
	for i, one := range append(slices.Clone(w.All), w.Trace) {
		if i > 0 && i < len(w.All) && (one.Measures.Area >= w.All[i-1].Measures.Area || len(one.Phrases) <= len(w.All[i-1].Phrases)) {
			t.Fatalf("%s: wording %d brings nothing", about, i)
		}
		steps := shaping.Expand(one.Phrases...)
		if one.Base != 0 {
			steps = append(shaping.Schedule{{Row: one.Schedule[0].Row, Stitches: one.Base}}, steps...)
		}
		if !slices.Equal(steps, one.Schedule) {
			t.Fatalf("%s: %d %v says %v, want %v", about, one.Base, one.Phrases, steps, one.Schedule)
		}
		if err := rules.Check(one.Schedule, d.Rows()); err != nil {
			t.Fatalf("%s: %v", about, err)
		}
		if one.Schedule.Total() != -d.Stitches() {
			t.Fatalf("%s: %v takes %d stitches", about, one.Schedule, one.Schedule.Total())
		}
	}
	if n := len(w.All); n > 0 && len(w.Trace.Phrases) <= curve.DefaultPhrases && !slices.Equal(w.All[n-1].Schedule, w.Trace.Schedule) {
		t.Fatalf("%s: the last wording is %v, the trace %v", about, w.All[n-1].Schedule, w.Trace.Schedule)
	}
}

// Every box of up to 6 rows and 5 stitches, of drawn edges of up to 4 and 3, against every
// schedule there is.
func TestWordingsEqualBruteForce(t *testing.T) {
	largest := largestBox()
	for i, f := range forms() {
		if i >= len(plainForms()) {
			largest = 4 // of the drawn ones too
		}
		for rows := 1; rows <= largest; rows++ {
			t.Run(fmt.Sprintf("%s/rows=%d", f.name, rows), func(t *testing.T) {
				t.Parallel()
				for stitches := range largest {
					s := f.sketch(stitches, rows).table()
					n := 0
					for rules := range smallRules {
						if n++; (n+rows)%3 == 0 {
							checkWordings(t, f, s, rules, n%2 == 0)
						}
					}
				}
			})
		}
	}
}

func TestWordingsEqualBruteForceAtRandom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 13).Draw(t, "rows")
		stitches := rapid.IntRange(0, 7).Draw(t, "stitches")
		checkWordings(t, f, f.sketch(stitches, rows).table(), drawRules(t), rapid.Bool().Draw(t, "steady"))
	})
}

// Boxes too large for the slow way, with rules that keep the steps away from the drawing
// at first: whatever the bands that are looked at, each wording takes all the stitches.
func TestWordingsOfLargerBoxes(t *testing.T) {
	superellipse := forms()[4]
	for _, c := range []struct {
		stitches, rows int
		rules          shaping.Rules
		steady         bool
	}{
		// Here places outside the bands were once taken for ways to go.
		{29, 23, shaping.Rules{Every: 2, Phase: 3, Apart: 1, Single: shaping.Beat{Every: 3, Phase: 1}}, false},
		{28, 28, shaping.Rules{Every: 1, Phase: 3, Plain: 2, Single: shaping.Beat{Every: 1, Phase: 1}}, true},
	} {
		d := must(superellipse.edge.In(c.stitches, c.rows))
		how := curve.Phrasing{Steady: c.steady}
		checkSaid(t, fmt.Sprintf("%s, %+v", superellipse.name, c), d, must(d.Wordings(c.rules, how)), c.rules, how)
	}
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		d := must(f.edge.In(rapid.IntRange(1, 40).Draw(t, "stitches"), rapid.IntRange(5, 60).Draw(t, "rows")))
		rules, how := drawRules(t), curve.Phrasing{Steady: rapid.Bool().Draw(t, "steady")}
		if w, err := d.Wordings(rules, how); err == nil {
			checkSaid(t, f.name, d, w, rules, how)
		}
	})
}

// The ways to say one schedule are many; what is kept of them does not grow with their number.
func TestManyPhrasesTakeLittleMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("searches a third of a second")
	}
	edge, err := curve.QuarterEllipse(mm("100"), mm("200"))
	if err != nil {
		t.Fatal(err)
	}
	drawing, err := edge.In(100, 400)
	if err != nil {
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	w, err := drawing.Wordings(shaping.Rules{}, curve.Phrasing{Most: 100})
	runtime.ReadMemStats(&after)
	if err != nil || w.Partial || len(w.All) < 20 {
		t.Fatalf("%d wordings, partial %v, error %v", len(w.All), w.Partial, err)
	}
	if got := after.TotalAlloc - before.TotalAlloc; got > 14<<20 {
		t.Errorf("%d MB allocated", got>>20)
	}
}
