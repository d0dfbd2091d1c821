package shaping_test

import (
	"testing"

	"example.com/walewise/shaping"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Runs part the wanted needles and no others into spans that do not touch.
func TestSpanRuns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		span := shaping.Centred(rapid.IntRange(0, 20).Draw(t, "needles"))
		wanted := rapid.MapOf(rapid.IntRange(-10, 10), rapid.Bool()).Draw(t, "wanted")
		is := func(n shaping.Needle) bool { return wanted[n.Index()] }
		var want, got []shaping.Needle
		for n := range span.All() {
			if is(n) {
				want = append(want, n)
			}
		}
		var before shaping.Span
		for _, run := range span.Runs(is) {
			if !before.IsEmpty() && run.First.Index() <= before.Last.Index()+1 {
				t.Fatalf("%v follows %v without a gap", run, before)
			}
			before = run
			for n := range run.All() {
				got = append(got, n)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("needles (-want +got):\n%s", diff)
		}
	})
}
