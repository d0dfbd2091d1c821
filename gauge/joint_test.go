package gauge_test

import (
	"errors"
	"math"
	"math/big"
	"testing"
	"time"

	"example.com/walewise/gauge"
	"pgregory.net/rapid"
)

// Worked by hand from the definition (common practice, no source).
func TestRoundTogether(t *testing.T) {
	half := func(n int) gauge.Count { return gauge.Whole(n).Div(2) }
	for _, c := range []struct {
		why   string
		total int
		parts []gauge.Part
		want  []int
	}{
		{"shoulders and neck", 100, []gauge.Part{
			{Name: "shoulder", Want: gauge.Whole(333).Div(10), Times: 2},
			{Name: "neck", Want: gauge.Whole(334).Div(10)},
		}, []int{33, 34}},
		{"an even neck", 101, []gauge.Part{
			{Name: "shoulder", Want: half(67), Times: 2},
			{Name: "neck", Want: gauge.Whole(34), Grid: gauge.Odd(gauge.Nearest)},
		}, []int{33, 35}},
		{"a tie: the first part is smaller", 21, []gauge.Part{{Want: half(21)}, {Want: half(21)}}, []int{10, 11}},
		{"a repeat of 8 plus 2", 100, []gauge.Part{
			{Want: gauge.Whole(30), Times: 2},
			{Want: gauge.Whole(40), Grid: gauge.Rounding{Multiple: 8, Plus: 2}},
		}, []int{29, 42}},
		{"copies count: 3 x 1/10 is more than 3/12", 69, []gauge.Part{
			{Want: gauge.Whole(10), Times: 3}, {Want: gauge.Whole(12)}, {Want: gauge.Whole(12)}, {Want: gauge.Whole(12)},
		}, []int{10, 13, 13, 13}},
		{"further than one: the least", 12, []gauge.Part{{Want: gauge.Whole(2), Least: 7}, {Want: gauge.Whole(5)}}, []int{7, 5}},
		{"as far as it goes", 178, []gauge.Part{{Want: gauge.Whole(50)}}, []int{178}},
		{"wanted nothing", 1, []gauge.Part{{Want: gauge.Count{}}, {Want: gauge.Count{}}}, []int{0, 1}},
	} {
		got, err := gauge.RoundTogether(c.total, c.parts)
		if err != nil {
			t.Errorf("%s: %v", c.why, err)
			continue
		}
		for i, r := range got {
			p := c.parts[i]
			if r.Whole != c.want[i] || r.Name != p.Name || r.Times != max(p.Times, 1) || !r.Off.Equal(gauge.Whole(r.Whole).Sub(p.Want)) {
				t.Errorf("%s: part %d: got %+v, want %d", c.why, i, r, c.want[i])
			}
		}
	}
}

func TestRoundTogetherRefuses(t *testing.T) {
	even := gauge.Even(gauge.Nearest)
	many := func(n int) []gauge.Part {
		parts := make([]gauge.Part, n)
		for i := range parts {
			parts[i] = gauge.Part{Want: gauge.Whole(20 + i), Grid: even}
		}
		return parts
	}
	for _, c := range []struct {
		why   string
		total int
		parts []gauge.Part
		kind  error
	}{
		{"no parts", 5, nil, gauge.ErrRange},
		{"17 parts", 500, many(17), gauge.ErrRange},
		{"a total beyond a million", 1_000_001, many(2), gauge.ErrRange},
		{"a total below minus a million", math.MinInt32, many(2), gauge.ErrRange},
		{"a wanted number beyond a million", 10, []gauge.Part{{Want: gauge.Whole(1_000_001)}}, gauge.ErrRange},
		{"a multiple beyond a million", 10, []gauge.Part{{Want: gauge.Whole(10), Grid: gauge.Rounding{Multiple: 1_000_001}}}, gauge.ErrRange},
		{"copies whose sum does not fit a machine word", 0, []gauge.Part{{Want: gauge.Whole(4), Times: math.MaxInt/2 + 1}}, gauge.ErrRange},
		{"odd from even", 41, many(2), gauge.ErrParity},
		{"odd from two equal parts", 41, []gauge.Part{{Want: gauge.Whole(20), Times: 2}}, gauge.ErrParity},
		{"too far away", 179, []gauge.Part{{Want: gauge.Whole(50)}}, gauge.ErrRange},
		{"a least that is too large", 10, []gauge.Part{{Want: gauge.Whole(10), Least: math.MaxInt}}, gauge.ErrRange},
		{"what a repeat of 3 plus 1 does not have", 5, []gauge.Part{{Want: gauge.Whole(5), Grid: gauge.Rounding{Multiple: 3, Plus: 1}}}, gauge.ErrParity},
		{"odd from 5 even parts", 111, many(5), gauge.ErrParity},
		{"odd from 16 even parts", 441, many(16), gauge.ErrParity},
	} {
		var got []gauge.Rounded
		var err error
		within(t, c.why, func() { got, err = gauge.RoundTogether(c.total, c.parts) })
		if !errors.Is(err, c.kind) || got != nil {
			t.Errorf("%s: got %v, %v; want %v", c.why, got, err, c.kind)
		}
	}
}

// The bounds themselves are allowed.
func TestRoundTogetherAtItsBounds(t *testing.T) {
	for _, total := range []int{1_000_000, -1_000_000} {
		got, err := gauge.RoundTogether(total, []gauge.Part{{Want: gauge.Whole(total), Least: math.MinInt32}})
		if err != nil || got[0].Whole != total {
			t.Errorf("%d: got %v, %v", total, got, err)
		}
	}
	sixteen := make([]gauge.Part, 16)
	if _, err := gauge.RoundTogether(0, sixteen); err != nil {
		t.Error(err)
	}
}

// 16 parts are many choices, and still few sums.
func TestRoundTogetherManyParts(t *testing.T) {
	var parts []gauge.Part
	for i := range 16 {
		parts = append(parts, gauge.Part{Want: gauge.Whole(100 + 7*i).Div(3)})
	}
	for _, total := range []int{813, 820, 900, 1500} { // 813 1/3 wanted
		within(t, "16 parts", func() {
			got, err := gauge.RoundTogether(total, parts)
			sum := 0
			for _, r := range got {
				sum += r.Whole
			}
			if err != nil || sum != total {
				t.Errorf("total %d: got %d, %v", total, sum, err)
			}
		})
	}
}

// within fails the test at once if f does not end.
func within(t *testing.T, why string, f func()) {
	t.Helper()
	done := make(chan struct{})
	go func() { defer close(done); f() }()
	select {
	case <-done:
	case <-time.After(20 * time.Second):
		t.Fatalf("%s: no end after 20 s", why)
	}
}

// The slow way: every combination of whole numbers from -30 to 50, judged by the
// definition alone. It returns nil if none adds up.
func slowTogether(total int, parts []gauge.Part, wants []*big.Rat) []int {
	type verdict struct {
		level int // how far the furthest part moves, in whole steps of at least one
		cost  *big.Rat
	}
	var best []int
	var bestIs verdict
	whole := make([]int, len(parts))
	var walk func(i, rest, level int)
	walk = func(i, rest, level int) {
		if i == len(parts) {
			if rest != 0 {
				return
			}
			cost := new(big.Rat)
			for k, p := range parts {
				c := new(big.Rat).Sub(big.NewRat(int64(whole[k]), 1), wants[k])
				c.Abs(c)
				if wants[k].Sign() != 0 {
					c.Quo(c, new(big.Rat).Abs(wants[k]))
				}
				for range max(p.Times, 1) {
					cost.Add(cost, c)
				}
			}
			// The walk goes upwards from the first part on, so that the first of equals stays.
			if best == nil || level < bestIs.level || level == bestIs.level && cost.Cmp(bestIs.cost) < 0 {
				best, bestIs = append([]int(nil), whole...), verdict{level, cost}
			}
			return
		}
		p := parts[i]
		step := max(p.Grid.Multiple, 1)
		for n := max(-30, p.Least); n <= 50; n++ {
			if ((n-p.Grid.Plus)%step+step)%step != 0 {
				continue
			}
			// The last part is settled by the others.
			if i == len(parts)-1 && n*max(p.Times, 1) != rest {
				continue
			}
			away := new(big.Rat).Sub(big.NewRat(int64(n), 1), wants[i])
			away.Abs(away)
			far := 1
			for away.Cmp(big.NewRat(int64(far), 1)) > 0 {
				far++
			}
			if best != nil && max(level, far) > bestIs.level {
				continue
			}
			whole[i] = n
			walk(i+1, rest-n*max(p.Times, 1), max(level, far))
		}
	}
	walk(0, total, 1)
	return best
}

func TestRoundTogetherIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := make([]gauge.Part, rapid.IntRange(1, 4).Draw(t, "parts"))
		wants := make([]*big.Rat, len(parts))
		near := 0
		for i := range parts {
			top, bottom := rapid.IntRange(-4, 40).Draw(t, "top"), rapid.IntRange(1, 4).Draw(t, "bottom")
			wants[i] = big.NewRat(int64(top), int64(bottom))
			parts[i] = gauge.Part{
				Want:  gauge.Whole(top).Div(bottom),
				Times: rapid.IntRange(0, 3).Draw(t, "times"),
				Grid: gauge.Rounding{
					Direction: gauge.Direction(rapid.IntRange(0, 2).Draw(t, "direction")),
					Multiple:  rapid.IntRange(0, 4).Draw(t, "multiple"),
					Plus:      rapid.IntRange(-2, 3).Draw(t, "plus"),
				},
				Least: rapid.IntRange(-8, 3).Draw(t, "least"),
			}
			near += max(parts[i].Times, 1) * top / bottom
		}
		total := near + rapid.IntRange(-6, 6).Draw(t, "more")
		got, err := gauge.RoundTogether(total, parts)
		want := slowTogether(total, parts, wants)
		if err != nil {
			if want != nil || !errors.Is(err, gauge.ErrParity) && !errors.Is(err, gauge.ErrRange) {
				t.Fatalf("got %v, want %v", err, want)
			}
			return
		}
		sum := 0
		for i, r := range got {
			sum += r.Times * r.Whole
			if !parts[i].Grid.Allows(r.Whole) || r.Whole < parts[i].Least {
				t.Fatalf("part %d: %d is not allowed", i, r.Whole)
			}
			if want != nil && r.Whole != want[i] {
				t.Fatalf("part %d: got %d, want %v", i, r.Whole, want)
			}
		}
		if sum != total || want == nil {
			t.Fatalf("got the sum %d of %v, want %d of %v", sum, got, total, want)
		}
	})
}
