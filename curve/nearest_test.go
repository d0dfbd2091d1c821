package curve_test

import (
	"errors"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestInfeasible(t *testing.T) {
	for _, c := range []struct {
		name           string
		stitches, rows int
		rules          shaping.Rules
		want           string
		nearest        []curve.Request
	}{
		{
			"most", 12, 10, shaping.Rules{Every: 2, Apart: 2, Most: 2},
			"stitches 12 in 10 rows: the rule most 2 leaves no way; what works: most 3, or 11 rows, or 10 stitches",
			[]curve.Request{
				{12, 10, shaping.Rules{Every: 2, Apart: 2, Most: 3}},
				{12, 11, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
				{10, 10, shaping.Rules{Every: 2, Apart: 2, Most: 2}},
			},
		},
		{
			"every row", 8, 10, shaping.Rules{Every: 2, Most: 1},
			"stitches 8 in 10 rows: the rule most 1 leaves no way; what works: most 2, or every 1, or 15 rows, or 5 stitches",
			[]curve.Request{
				{8, 10, shaping.Rules{Every: 2, Most: 2}},
				{8, 10, shaping.Rules{Every: 1, Most: 1}},
				{8, 15, shaping.Rules{Every: 2, Most: 1}},
				{5, 10, shaping.Rules{Every: 2, Most: 1}},
			},
		},
		{
			"plain", 3, 6, shaping.Rules{Plain: 8},
			"stitches 3 in 6 rows: the rule plain 8 leaves no way; what works: plain 5, or 9 rows",
			[]curve.Request{
				{3, 6, shaping.Rules{Plain: 5}},
				{3, 9, shaping.Rules{Plain: 8}},
			},
		},
		{
			"phase of coming stitches", -3, 6, shaping.Rules{Coming: &shaping.Rules{Phase: 7}},
			"stitches -3 in 6 rows: the rule coming.phase 7 leaves no way; what works: coming.phase 5, or 8 rows",
			[]curve.Request{
				{-3, 6, shaping.Rules{Coming: &shaping.Rules{Phase: 5}}},
				{-3, 8, shaping.Rules{Coming: &shaping.Rules{Phase: 7}}},
			},
		},
		{
			"rows for single stitches", 1, 6, shaping.Rules{Single: shaping.Beat{Every: 1, Phase: 9}},
			"stitches 1 in 6 rows: the rule single.phase 9 leaves no way; what works: single.phase 5, or 10 rows",
			[]curve.Request{
				{1, 6, shaping.Rules{Single: shaping.Beat{Every: 1, Phase: 5}}},
				{1, 10, shaping.Rules{Single: shaping.Beat{Every: 1, Phase: 9}}},
			},
		},
		{
			"several rules", 9, 6, shaping.Rules{Phase: 6, Plain: 6, Most: 2, Apart: 2},
			"stitches 9 in 6 rows: the rules apart 2 and plain 6 and phase 6 together leave no way; what works: apart 1 and plain 1 and phase 0, or 21 rows",
			[]curve.Request{
				{9, 6, shaping.Rules{Plain: 1, Most: 2, Apart: 1}},
				{9, 21, shaping.Rules{Phase: 6, Plain: 6, Most: 2, Apart: 2}},
			},
		},
		{
			"nothing goes", 9, 6, shaping.Rules{Phase: curve.MaxRows, Plain: curve.MaxRows},
			"stitches 9 in 6 rows: the rules plain 2000 and phase 2000 together leave no way; what works: plain 5 and phase 0",
			[]curve.Request{{9, 6, shaping.Rules{Plain: 5}}},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := curve.Trace(forms()[0].edge, c.stitches, c.rows, c.rules)
			var e *curve.Error
			if !errors.As(err, &e) || !errors.Is(err, curve.ErrInfeasible) {
				t.Fatalf("got %v", err)
			}
			if e.Error() != c.want {
				t.Errorf("got  %s\nwant %s", e, c.want)
			}
			if diff := cmp.Diff(c.nearest, e.Nearest); diff != "" {
				t.Errorf("nearest (-want +got):\n%s", diff)
			}
		})
	}
}

func TestNearestRequestsWork(t *testing.T) {
	failed := 0
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms()).Draw(t, "form")
		rows := rapid.IntRange(1, 20).Draw(t, "rows")
		stitches := rapid.IntRange(-60, 60).Draw(t, "stitches")
		rules := drawRules(t)
		if rapid.Bool().Draw(t, "coming") {
			coming := drawRules(t)
			rules.Coming = &coming
		}
		_, err := curve.Trace(f.edge, stitches, rows, rules)
		var e *curve.Error
		if !errors.As(err, &e) {
			return
		}
		failed++
		if len(e.Nearest) == 0 {
			t.Fatalf("%v: no request that works", err)
		}
		for _, q := range e.Nearest {
			if _, err := curve.Trace(f.edge, q.Stitches, q.Rows, q.Rules); err != nil {
				t.Fatalf("%v: %+v does not work: %v", e, q, err)
			}
		}
	})
	if failed == 0 {
		t.Error("no request failed")
	}
}

// Of edges that go out and in the rules are loosened, and what works is tried.
func TestNearestRulesOfTurningEdges(t *testing.T) {
	failed := 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawCrooked(t, 12, 9)
		d := must(c.edge.At(c.gauge))
		rules := drawRules(t)
		if rapid.Bool().Draw(t, "coming") {
			coming := drawRules(t)
			rules.Coming = &coming
		}
		_, err := d.Trace(rules, curve.Phrasing{})
		var e *curve.Error
		if !errors.As(err, &e) {
			return
		}
		failed++
		if len(e.Nearest) == 0 {
			t.Fatalf("%v: no request that works", err)
		}
		for _, q := range e.Nearest {
			if d.Turns() {
				if _, err := d.Trace(q.Rules, curve.Phrasing{}); err != nil {
					t.Fatalf("%v: %+v does not work: %v", e, q, err)
				}
			}
		}
	})
	if failed == 0 {
		t.Error("no request failed")
	}
}
