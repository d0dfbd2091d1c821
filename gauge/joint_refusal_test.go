package gauge_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// What keeps the parts from the total, and a change that the message names and that works.
func TestRoundTogetherRefusalSaysWhy(t *testing.T) {
	whole := gauge.Whole
	even, thousand := gauge.Even(gauge.Nearest), gauge.Rounding{Multiple: 1000, Plus: 3}
	for _, c := range []struct {
		why     string
		total   int
		parts   []gauge.Part
		want    string
		works   int // total that works with fitting
		fitting func(*gauge.Part)
		cause   error
		none    bool // the message names no total
	}{
		{
			why: "odd from even", total: 41, parts: []gauge.Part{{Want: whole(20), Grid: even}, {Want: whole(21), Grid: even}},
			want:  "total 41: the parts always add up to some even number: 40 is the nearest total that works",
			works: 40, cause: gauge.ErrParity,
		},
		{
			why: "even from odd and even", total: 40, parts: []gauge.Part{{Want: whole(20), Grid: even}, {Want: whole(21), Grid: gauge.Odd(gauge.Up)}},
			want:  "total 40: the parts always add up to some odd number: 39 is the nearest total that works",
			works: 39, cause: gauge.ErrParity,
		},
		{
			why: "five equal parts", total: 43, parts: []gauge.Part{{Want: whole(8), Times: 5}},
			want:  "total 43: the parts always add up to some multiple of 5: 45 is the nearest total that works",
			works: 45, cause: gauge.ErrParity,
		},
		{
			why: "repeats of 8 plus 3, less than nothing", total: -20, parts: []gauge.Part{{Want: whole(-21), Grid: gauge.Rounding{Multiple: 8, Plus: -5}, Least: -100}},
			want:  "total -20: the parts always add up to some multiple of 8 plus 3: -21 is the nearest total that works",
			works: -21, cause: gauge.ErrParity,
		},
		{
			why: "odd and even, and the least are far above", total: 3, parts: []gauge.Part{{Want: whole(20), Least: 18, Times: 2}},
			want:  "total 3: the parts always add up to some even number: 36 is the nearest total that works",
			works: 36, cause: gauge.ErrParity,
		},
		{
			why: "the least are too large", total: 5, parts: []gauge.Part{{Want: whole(3), Least: 4}, {Want: whole(3), Least: 5}},
			want:  "total 5: the least numbers of the parts do not allow it: 9 is the nearest total that works",
			works: 9, cause: gauge.ErrRange,
		},
		{
			why: "the least leave a gap", total: 14, parts: []gauge.Part{{Want: whole(2), Least: 2, Times: 2}, {Want: whole(3), Least: 3, Times: 3}},
			want:  "total 14: the least numbers of the parts do not allow it: 13 is the nearest total that works",
			works: 13, cause: gauge.ErrRange,
		},
		{
			why: "too far above", total: 179, parts: []gauge.Part{{Want: whole(50)}},
			want:  "total 179: no part moves further than 128 from what is wanted: 178 is the nearest total that works",
			works: 178, cause: gauge.ErrRange,
		},
		{
			why: "too far below, with a least that does not matter", total: -300, parts: []gauge.Part{{Want: whole(50), Least: -500}},
			want:  "total -300: no part moves further than 128 from what is wanted: -78 is the nearest total that works",
			works: -78, cause: gauge.ErrRange,
		},
		{
			why: "every total that the parts make is refused", total: 1_000_000, parts: []gauge.Part{{Want: whole(1_000_000), Times: 2}},
			want:  "total 1000000: no part moves further than 128 from what is wanted: no total from -1000000 to 1000000 works",
			cause: gauge.ErrRange, none: true,
		},
		{
			why: "the nearest total is itself refused", total: 999_999, parts: []gauge.Part{{Want: whole(2), Grid: gauge.Rounding{Multiple: 4, Plus: 2}, Times: 250_001}},
			want:  "total 999999: the parts always add up to some multiple of 1000004 plus 500002: 500002 is the nearest total that works",
			works: 500_002, cause: gauge.ErrParity,
		},
		{
			why: "a part whose least is out of reach", total: 10, parts: []gauge.Part{{Name: "neck", Want: whole(21).Div(2), Least: 500, Grid: even}},
			want:  `part "neck" wanted 10.5, least 500: a least of at most 138, since no part moves further than 128`,
			works: 138, fitting: func(p *gauge.Part) { p.Least = 138 }, cause: gauge.ErrRange,
		},
		{
			why: "a part with no number of its grid in reach", total: 10, parts: []gauge.Part{{Name: "neck", Want: whole(500), Grid: thousand}},
			want:  `part "neck" wanted 500: the nearest multiple of 1000 plus 3 is 3, and no part moves further than 128`,
			works: 3, fitting: func(p *gauge.Part) { p.Want = whole(3) }, cause: gauge.ErrRange,
		},
	} {
		var err error
		within(t, c.why, func() { _, err = gauge.RoundTogether(c.total, c.parts) })
		if diff := cmp.Diff(c.want, fmt.Sprint(err)); diff != "" || !errors.Is(err, c.cause) {
			t.Errorf("%s: want %v, got %v (-want +got):\n%s", c.why, c.cause, errors.Unwrap(err), diff)
		}
		if c.none {
			continue
		}
		if c.fitting != nil {
			c.fitting(&c.parts[0])
		}
		if _, err := gauge.RoundTogether(c.works, c.parts); err != nil {
			t.Errorf("%s: %d, which the message names, does not work: %v", c.why, c.works, err)
		}
	}
}

// A pair of parts with many copies: sums lie far from each other.
func TestRoundTogetherRefusesSparseSumsAtOnce(t *testing.T) {
	parts := []gauge.Part{{Times: 1_000_000, Least: -128}, {Times: 999_999, Least: -128}}
	within(t, "two parts", func() {
		_, err := gauge.RoundTogether(500_000, parts)
		const want = "total 500000: no part moves further than 128 from what is wanted: 128 is the nearest total that works"
		if diff := cmp.Diff(want, fmt.Sprint(err)); diff != "" {
			t.Errorf("-want +got:\n%s", diff)
		}
	})
}

// The total named works, and none between it and the total refused does.
func TestRoundTogetherNamesTheNearestTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := make([]gauge.Part, rapid.IntRange(1, 3).Draw(t, "parts"))
		near := 0
		for i := range parts {
			parts[i] = gauge.Part{
				Want:  gauge.Whole(rapid.IntRange(-60, 60).Draw(t, "want")).Div(rapid.IntRange(1, 3).Draw(t, "bottom")),
				Times: rapid.IntRange(1, 9).Draw(t, "times"),
				Grid:  gauge.Rounding{Multiple: rapid.IntRange(0, 9).Draw(t, "multiple"), Plus: rapid.IntRange(-9, 9).Draw(t, "plus")},
				Least: rapid.IntRange(-60, 30).Draw(t, "least"),
			}
			near += parts[i].Times * parts[i].Want.Round(gauge.Rounding{})
		}
		total := near + rapid.IntRange(-400, 400).Draw(t, "more")
		_, err := gauge.RoundTogether(total, parts)
		if err == nil {
			return
		}
		var e *gauge.Error
		if !errors.As(err, &e) || e.Field != "total" {
			t.Fatalf("got %v, want an error about the total", err)
		}
		named := namedTotal(t, e.Want)
		if _, err := gauge.RoundTogether(named, parts); err != nil {
			t.Fatalf("%v\nbut then: %v", e, err)
		}
		for range min(max(named-total, total-named)-1, 4) {
			d := rapid.IntRange(1, max(named-total, total-named)-1).Draw(t, "nearer")
			for _, nearer := range []int{total - d, total + d} {
				if _, err := gauge.RoundTogether(nearer, parts); err == nil {
					t.Fatalf("%v\nbut %d works as well", e, nearer)
				}
			}
		}
	})
}

// namedTotal returns the total that a message says is the nearest that works.
func namedTotal(t *rapid.T, want string) int {
	_, which, _ := strings.Cut(want, ": ")
	var total int
	if _, err := fmt.Sscanf(which, "%d is the nearest total that works", &total); err != nil {
		t.Fatalf("%q names no total: %v", want, err)
	}
	return total
}
