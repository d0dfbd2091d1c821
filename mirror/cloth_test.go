package mirror_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
)

// tester is what *testing.T and *rapid.T have in common.
type tester interface {
	Helper()
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// checkCloth knits a work and its reflection and compares what comes off the
// needles.
func checkCloth(t tester, work shaping.Work) {
	t.Helper()
	cloth, err := bed.Knit(work)
	if err != nil {
		t.Fatalf("the work itself: %v", err)
	}
	reflected, err := bed.Knit(mirror.Work(work))
	if err != nil {
		t.Fatalf("the reflection: %v", err)
	}
	axis := mirror.AxisFor(work.Panels[0].Needles.Len())
	if got, want := reflected.Needles(), axis.Span(cloth.Needles()); got != want {
		t.Fatalf("needles %v, want %v", got, want)
	}
	for n, height := range cloth.Wales() {
		if got := reflected.Height(axis.Needle(n)); got != height {
			t.Fatalf("wale %v of the reflection is %d high, wale %v was %d", axis.Needle(n), got, n, height)
		}
	}
	courses := slices.Collect(cloth.Courses())
	for i, c := range courses {
		courses[i] = bed.Course{Row: c.Row, Panel: mirror.Name(c.Panel), From: c.From.Opposite(), Needles: axis.Span(c.Needles), Ledger: c.Ledger}
	}
	if diff := cmp.Diff(courses, slices.Collect(reflected.Courses())); diff != "" {
		t.Fatalf("courses (-want +got):\n%s", diff)
	}
	wraps := slices.Collect(cloth.Wraps())
	for i, w := range wraps {
		wraps[i] = bed.Wrap{Row: w.Row, Panel: mirror.Name(w.Panel), Needle: axis.Needle(w.Needle)}
	}
	if diff := cmp.Diff(wraps, slices.Collect(reflected.Wraps())); diff != "" {
		t.Fatalf("wraps (-want +got):\n%s", diff)
	}
	if cloth.Ledger() != reflected.Ledger() {
		t.Fatalf("ledgers %v and %v", cloth.Ledger(), reflected.Ledger())
	}
}

func TestReflectedFrontKnits(t *testing.T) {
	t.Run("even", func(t *testing.T) { checkCloth(t, tinyFront()) })
	t.Run("odd", func(t *testing.T) { checkCloth(t, tinyOddFront()) })
}

func TestReflectedStripsKnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkCloth(t, strip(t)) })
}
