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

// Around holds both spans and nothing beyond their ends.
func TestSpanAround(t *testing.T) {
	span := func(from, to shaping.Needle) shaping.Span { return shaping.Span{First: from, Last: to} }
	for _, c := range []struct {
		why        string
		a, b, want shaping.Span
	}{
		{"both empty", shaping.Span{}, shaping.Span{}, shaping.Span{}},
		{"one empty", span(shaping.L(2), shaping.R(1)), shaping.Span{}, span(shaping.L(2), shaping.R(1))},
		{"apart", span(shaping.L(9), shaping.L(7)), span(shaping.R(2), shaping.R(3)), span(shaping.L(9), shaping.R(3))},
		{"overlapping", span(shaping.L(3), shaping.R(4)), span(shaping.R(1), shaping.R(6)), span(shaping.L(3), shaping.R(6))},
		{"one within", span(shaping.L(3), shaping.R(4)), span(shaping.L(1), shaping.R(1)), span(shaping.L(3), shaping.R(4))},
	} {
		if got := c.a.Around(c.b); got != c.want {
			t.Errorf("%s: %v around %v is %v, want %v", c.why, c.a, c.b, got, c.want)
		}
		if got := c.b.Around(c.a); got != c.want {
			t.Errorf("%s, the other way round: %v, want %v", c.why, got, c.want)
		}
	}
}
