package shaping_test

import (
	"errors"
	"math"
	"testing"

	"example.com/walewise/shaping"
)

func TestRulesSizesAt(t *testing.T) {
	const rows, all = 8, math.MaxInt
	type sizes [2]int
	for _, c := range []struct {
		name  string
		rules shaping.Rules
		first int
		want  [rows]sizes // rows 1 to 8
	}{
		{"zero value", shaping.Rules{}, 1,
			[rows]sizes{{1, all}, {1, all}, {1, all}, {1, all}, {1, all}, {1, all}, {1, all}, {1, all}}},
		{"every 2nd row from row 2, at most 4, the last 2 plain", shaping.Rules{Every: 2, Phase: 1, Most: 4, Plain: 2}, 2,
			[rows]sizes{1: {1, 4}, 3: {1, 4}, 5: {1, 4}}},
		{"a phase longer than every", shaping.Rules{Every: 2, Phase: 4, Most: 1}, 5,
			[rows]sizes{4: {1, 1}, 6: {1, 1}}},
		{"a base in the first allowed row only", shaping.Rules{Every: 3, Phase: 1, Most: 1, Base: 6}, 2,
			[rows]sizes{1: {1, 6}, 4: {1, 1}, 7: {1, 1}}},
		{"a base that is not larger", shaping.Rules{Every: 4, Most: 5, Base: 3}, 1,
			[rows]sizes{0: {1, 5}, 4: {1, 5}}},
		{"single stitches at rows of their own", shaping.Rules{Every: 4, Most: 3, Single: shaping.Beat{Every: 2, Phase: 2}}, 1,
			[rows]sizes{0: {2, 3}, 2: {1, 1}, 4: {1, 3}, 6: {1, 1}}},
		{"single stitches before the others", shaping.Rules{Every: 4, Phase: 3, Single: shaping.Beat{Every: 1, Phase: 1}}, 2,
			[rows]sizes{1: {1, 1}, 2: {1, 1}, 3: {1, all}, 4: {1, 1}, 5: {1, 1}, 6: {1, 1}, 7: {1, all}}},
		{"no single stitch before the base", shaping.Rules{Every: 4, Phase: 3, Base: 9, Most: 2, Single: shaping.Beat{Every: 1}}, 4,
			[rows]sizes{3: {1, 9}, 4: {1, 1}, 5: {1, 1}, 6: {1, 1}, 7: {1, 2}}},
		{"single stitches only", shaping.Rules{Every: 2, Most: 1, Single: shaping.Beat{Every: 3, Phase: 1}}, 2,
			[rows]sizes{1: {1, 1}, 4: {1, 1}, 7: {1, 1}}},
		{"several stitches at first", shaping.Rules{Every: 2, SeveralUntil: 4, Single: shaping.Beat{Every: 1, Phase: 4}}, 1,
			[rows]sizes{0: {2, all}, 2: {2, all}, 4: {1, 1}, 5: {1, 1}, 6: {1, 1}, 7: {1, 1}}},
		{"several stitches never", shaping.Rules{Every: 2, Phase: 3, SeveralUntil: 3}, 4, [rows]sizes{3: {1, 1}, 5: {1, 1}, 7: {1, 1}}},
		{"nothing but plain rows", shaping.Rules{Plain: rows}, 1, [rows]sizes{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.rules.FirstRow(); got != c.first {
				t.Errorf("first row %d, want %d", got, c.first)
			}
			for i, want := range c.want {
				least, most := c.rules.SizesAt(i+1, rows)
				if got := (sizes{least, most}); got != want {
					t.Errorf("row %d: got %v, want %v", i+1, got, want)
				}
				// A schedule of one step is allowed if its size is, going or coming.
				for stitches := 1; stitches <= 10; stitches++ {
					allowed := want[0] <= stitches && stitches <= want[1]
					for _, sign := range []int{-1, 1} {
						s := shaping.Schedule{{Row: i + 1, Stitches: sign * stitches}}
						if err := c.rules.Check(s, rows); (err == nil) != allowed {
							t.Errorf("row %d, %d stitches: %v, want allowed %v", i+1, sign*stitches, err, allowed)
						}
					}
				}
			}
			if least, most := c.rules.SizesAt(rows+1, rows); least != 0 || most != 0 {
				t.Errorf("beyond the edge: %d to %d", least, most)
			}
		})
	}
}

func TestRulesAllows(t *testing.T) {
	coming := shaping.Rules{Every: 1, Phase: 5, Apart: 3}
	for _, c := range []struct {
		name     string
		rules    shaping.Rules
		schedule shaping.Schedule
		want     string
	}{
		{"nothing", shaping.Rules{Plain: 9}, nil, ""},
		{"held", shaping.Rules{Every: 2, Apart: 2}, shaping.Schedule{{Row: 1, Stitches: -4}, {Row: 3, Stitches: -1}}, ""},
		{"too close", shaping.Rules{Every: 1, Apart: 2}, shaping.Schedule{{Row: 3, Stitches: -4}, {Row: 4, Stitches: -1}},
			"step at row 4: steps stand at least 2 rows apart"},
		{"off the beat", shaping.Rules{Every: 2, Phase: 1}, shaping.Schedule{{Row: 3, Stitches: -2}},
			"step at row 3: two stitches or more may go at rows 2, 4, ..."},
		{"single off the beat", shaping.Rules{Single: shaping.Beat{Every: 3}}, shaping.Schedule{{Row: 2, Stitches: -1}},
			"step at row 2: single stitches may go at rows 1, 4, ..."},
		{"too early", shaping.Rules{Phase: 3}, shaping.Schedule{{Row: 3, Stitches: -2}},
			"step at row 3: the first row that may be shaped is 4"},
		{"too late", shaping.Rules{Plain: 3}, shaping.Schedule{{Row: 8, Stitches: -2}},
			"step at row 8: the last row that may be shaped is 7"},
		{"too many", shaping.Rules{Most: 3, Base: 5}, shaping.Schedule{{Row: 1, Stitches: -5}, {Row: 2, Stitches: -4}},
			"step at row 2: 4 stitches at once, at most 3 may go"},
		{"far too many", shaping.Rules{Most: 3}, shaping.Schedule{{Row: 1, Stitches: -math.MaxInt32 - 1}},
			"step at row 1: 2147483648 stitches at once, at most 3 may go"},
		{"coming by rules of their own", shaping.Rules{Apart: 2, Coming: &coming},
			shaping.Schedule{{Row: 1, Stitches: -2}, {Row: 3, Stitches: -2}, {Row: 6, Stitches: 2}}, ""},
		{"coming too close", shaping.Rules{Apart: 2, Coming: &coming},
			shaping.Schedule{{Row: 4, Stitches: -2}, {Row: 6, Stitches: 2}}, "step at row 6: steps stand at least 3 rows apart"},
		{"coming too early", shaping.Rules{Coming: &coming}, shaping.Schedule{{Row: 5, Stitches: 2}},
			"step at row 5: the first row that may be shaped is 6"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := ""
			if err := c.rules.Check(c.schedule, 10); err != nil {
				got = err.Error()
				if !errors.Is(err, shaping.ErrInfeasible) {
					t.Errorf("%v is not ErrInfeasible", err)
				}
			}
			if got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

func TestRulesValidate(t *testing.T) {
	for _, rules := range []shaping.Rules{
		{Every: -1}, {Phase: -1}, {Apart: -1}, {Most: -1}, {Base: -1}, {Plain: math.MaxInt}, {SeveralUntil: -1},
		{Single: shaping.Beat{Every: math.MaxInt}}, {Single: shaping.Beat{Phase: -1}},
		{Coming: &shaping.Rules{Every: -1}}, {Coming: &shaping.Rules{Coming: &shaping.Rules{}}},
	} {
		if err := rules.Validate(); !errors.Is(err, shaping.ErrRange) {
			t.Errorf("%+v: %v", rules, err)
		}
		if err := rules.Check(nil, 4); !errors.Is(err, shaping.ErrRange) {
			t.Errorf("%+v allows: %v", rules, err)
		}
	}
	if err := (shaping.Rules{Every: 2, Coming: &shaping.Rules{Every: 4}}).Validate(); err != nil {
		t.Error(err)
	}
}

// What a method allows at an edge follows from the side where the first row starts.
func TestRulesFor(t *testing.T) {
	l, r := shaping.Left, shaping.Right
	for _, c := range []struct {
		method      shaping.Method
		edge, start shaping.Side
		place       shaping.Place
		want        shaping.Rules
	}{
		{shaping.Hold, l, r, shaping.Bed, shaping.Rules{Every: 2, Apart: 2}},
		{shaping.Hold, l, l, shaping.Bed, shaping.Rules{Every: 2, Phase: 1, Apart: 2}},
		{shaping.BindOff, r, r, shaping.Bed, shaping.Rules{Every: 2, Apart: 2}},
		{shaping.BindOff, l, r, shaping.Bed, shaping.Rules{Every: 2, Phase: 1, Apart: 2}},
		{shaping.CastOn, l, l, shaping.Hand, shaping.Rules{Every: 2, Apart: 2}},
		{shaping.Fashioned, l, r, shaping.Bed, shaping.Rules{Every: 1, Apart: 2, Most: 1}},
		{shaping.Fashioned, l, r, shaping.Hand, shaping.Rules{Every: 2, Apart: 2, Most: 1}},
	} {
		if got := shaping.RulesFor(c.method, c.edge, c.start, c.place); got != c.want {
			t.Errorf("%v at the %v edge, first row from the %v, %v: got %+v, want %+v", c.method, c.edge, c.start, c.place, got, c.want)
		}
	}
}

// Where something is not set the rules allow nothing, rather than anything.
func TestRulesForNothing(t *testing.T) {
	for _, c := range []struct {
		what  string
		rules shaping.Rules
	}{
		{"method", shaping.RulesFor(0, shaping.Left, shaping.Right, shaping.Bed)},
		{"edge", shaping.RulesFor(shaping.Hold, 0, shaping.Right, shaping.Bed)},
		{"start", shaping.RulesFor(shaping.Hold, shaping.Left, 0, shaping.Bed)},
		{"place", shaping.RulesFor(shaping.Fashioned, shaping.Left, shaping.Right, 0)},
	} {
		needError(t, c.rules.Validate(), shaping.ErrRange)
		if t.Failed() {
			t.Fatalf("without a %s", c.what)
		}
	}
}

func TestLargerStepsEndAtARow(t *testing.T) {
	rules := shaping.Rules{Every: 2, Apart: 2, Most: 4, SeveralUntil: 5}
	for row, want := range map[int]int{3: 4, 5: 4, 7: 1} {
		if _, most := rules.SizesAt(row, 20); most != want {
			t.Errorf("row %d: %d stitches at once, want %d", row, most, want)
		}
	}
	rules.Every = 1_000_000
	if err := rules.Validate(); err != nil {
		t.Error(err)
	}
}
