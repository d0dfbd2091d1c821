package gauge_test

import (
	"encoding/json"
	"math"
	"math/big"
	"testing"

	"example.com/walewise/gauge"
	"pgregory.net/rapid"
)

func TestRound(t *testing.T) {
	for _, c := range []struct {
		top, bottom int
		rule        gauge.Rounding
		want        int
		why         string
	}{
		{99, 2, gauge.Rounding{}, 50, "a tie goes away from zero"},
		{-99, 2, gauge.Rounding{}, -50, "a tie goes away from zero"},
		{135, 4, gauge.Rounding{Direction: gauge.Down}, 33, "down"},
		{-135, 4, gauge.Rounding{Direction: gauge.Down}, -34, "down is to the smaller number"},
		{-135, 4, gauge.Rounding{Direction: gauge.Up}, -33, "up is to the larger number"},
		{33, 1, gauge.Even(gauge.Nearest), 34, "a tie of even numbers"},
		{-33, 1, gauge.Even(gauge.Nearest), -34, "a tie of even numbers"},
		{33, 1, gauge.Even(gauge.Down), 32, "down to even"},
		{34, 1, gauge.Odd(gauge.Up), 35, "up to odd"},
		{34, 1, gauge.Odd(gauge.Nearest), 35, "a tie of odd numbers"},
		{-34, 1, gauge.Odd(gauge.Nearest), -35, "a tie of odd numbers"},
		{0, 1, gauge.Odd(gauge.Nearest), 1, "a tie at 0 goes to the larger number"},
		{0, 1, gauge.SameParity(-3, gauge.Nearest), 1, "a tie at 0"},
		{0, 1, gauge.Rounding{Multiple: 8, Plus: 4}, 4, "a tie at 0, further away"},
		{0, 1, gauge.Odd(gauge.Up), 1, "0 up to odd"},
		{0, 1, gauge.Odd(gauge.Down), -1, "0 down to odd"},
		{0, 1, gauge.Even(gauge.Nearest), 0, "0 is even"},
		{0, 1, gauge.Rounding{Multiple: 3, Plus: 1}, 1, "nearer than -2"},
		{1, 5, gauge.Odd(gauge.Nearest), 1, "just above 0"},
		{-1, 5, gauge.Odd(gauge.Nearest), -1, "just below 0"},
		{34, 1, gauge.SameParity(7, gauge.Down), 33, "as 7"},
		{34, 1, gauge.SameParity(-7, gauge.Down), 33, "as -7"},
		{34, 1, gauge.SameParity(-8, gauge.Down), 34, "as -8"},
		{52, 1, gauge.Rounding{Multiple: 8, Plus: 3}, 51, "a repeat of 8 plus 3"},
		{1, 1, gauge.Rounding{Direction: gauge.Down, Multiple: 8, Plus: 3}, -5, "a repeat below zero"},
		{5, 1, gauge.Rounding{Plus: 1 << 40 % math.MaxInt}, 5, "a large Plus"},
		{7, 1, gauge.Rounding{Multiple: math.MinInt}, 7, "a multiple below 2"},
	} {
		if got := gauge.Whole(c.top).Div(c.bottom).Round(c.rule); got != c.want {
			t.Errorf("%d/%d, %v (%s): got %d, want %d", c.top, c.bottom, c.rule, c.why, got, c.want)
		}
	}
}

func TestRoundIsHeldWithin32Bits(t *testing.T) {
	far := gauge.Whole(math.MaxInt32)
	far = far.Add(far).Add(far)
	for _, r := range []gauge.Rounding{{}, {Multiple: 2, Plus: 1}, {Multiple: 3, Plus: -1}, {Plus: math.MaxInt32}, {Multiple: math.MaxInt32}} {
		step := int64(max(r.Multiple, 1))
		if got := far.Round(r); !r.Allows(got) || int64(got)+step <= math.MaxInt32 || got > math.MaxInt32 {
			t.Errorf("%#v: got %d", r, got)
		}
		if got := (gauge.Count{}).Sub(far).Round(r); !r.Allows(got) || int64(got)-step >= math.MinInt32 || got < math.MinInt32 {
			t.Errorf("%#v of the negative: got %d", r, got)
		}
	}
}

func TestRoundingString(t *testing.T) {
	for _, c := range []struct {
		rule gauge.Rounding
		want string
	}{
		{gauge.Rounding{}, "nearest whole number"},
		{gauge.Even(gauge.Up), "up even number"},
		{gauge.Odd(gauge.Down), "down odd number"},
		{gauge.Rounding{Multiple: 2, Plus: -3}, "nearest odd number"},
		{gauge.Rounding{Multiple: 8, Plus: 3}, "nearest multiple of 8 plus 3"},
		{gauge.Rounding{Multiple: 8}, "nearest multiple of 8"},
		{gauge.Rounding{Direction: 7}, "Direction(7) whole number"},
	} {
		if got := c.rule.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestCount(t *testing.T) {
	a, b := gauge.Whole(10).Div(3), gauge.Whole(-7).Div(2)
	for _, c := range []struct{ name, got, want string }{
		{"Add", a.Add(b).GoString(), "gauge.Whole(-1).Div(6)"},
		{"Sub", a.Sub(b).GoString(), "gauge.Whole(41).Div(6)"},
		{"Abs", b.Abs().GoString(), "gauge.Whole(7).Div(2)"},
		{"String", a.String(), "3.333"},
		{"String below zero", b.String(), "-3.5"},
		{"String of a little below zero", gauge.Whole(-1).Div(3000).String(), "0"},
		{"String of a tie", gauge.Whole(-1).Div(2000).String(), "-0.001"},
		{"Decimal", a.Decimal(-4).String(), "3"},
		{"Div by 0", gauge.Whole(5).Div(0).GoString(), "gauge.Whole(0)"},
		{"Div by less than 0", gauge.Whole(5).Div(-2).GoString(), "gauge.Whole(-5).Div(2)"},
	} {
		if c.got != c.want {
			t.Errorf("%s: got %s, want %s", c.name, c.got, c.want)
		}
	}
	if a.Cmp(b) != 1 || a.Sign() != 1 || b.Sign() != -1 || a.Equal(b) || !a.Equal(gauge.Whole(20).Div(6)) {
		t.Error("10/3 and -7/2 compare wrongly")
	}
}

// drawCount draws counts on and between whole numbers, every other one a hair beside.
func drawCount(t *rapid.T) (gauge.Count, *big.Rat) {
	top, bottom := rapid.IntRange(-400, 400).Draw(t, "top"), rapid.IntRange(1, 12).Draw(t, "bottom")
	count, exact := gauge.Whole(top).Div(bottom), big.NewRat(int64(top), int64(bottom))
	if rapid.Bool().Draw(t, "beside") {
		// Divided thrice, so that the denominator fits no machine word.
		const large = math.MaxInt32
		hair := rapid.IntRange(-1, 1).Draw(t, "hair")
		count = count.Add(gauge.Whole(hair).Div(large).Div(large).Div(large))
		cube := new(big.Int).Exp(big.NewInt(large), big.NewInt(3), nil)
		exact.Add(exact, new(big.Rat).SetFrac(big.NewInt(int64(hair)), cube))
	}
	return count, exact
}

func drawRule(t *rapid.T) gauge.Rounding {
	return gauge.Rounding{
		Direction: gauge.Direction(rapid.IntRange(0, 2).Draw(t, "direction")),
		Multiple:  rapid.IntRange(-1, 9).Draw(t, "multiple"),
		Plus:      rapid.IntRange(-12, 12).Draw(t, "plus"),
	}
}

// Against the slow way: walk from far below to far above and keep the nearest.
func TestRoundIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count, exact := drawCount(t)
		r := drawRule(t)
		got := count.Round(r)
		if !r.Allows(got) {
			t.Fatalf("%d is not allowed", got)
		}
		step := max(r.Multiple, 1)
		var want int
		var least *big.Rat
		for n := -420; n <= 420; n++ {
			if ((n-r.Plus)%step+step)%step != 0 {
				if r.Allows(n) {
					t.Fatalf("%d is allowed", n)
				}
				continue
			}
			above := new(big.Rat).Sub(big.NewRat(int64(n), 1), exact)
			if r.Direction == gauge.Up && above.Sign() < 0 || r.Direction == gauge.Down && above.Sign() > 0 {
				continue
			}
			away := new(big.Rat).Abs(above)
			// Upwards, so that of two as near the larger one comes second.
			if least == nil || away.Cmp(least) < 0 || away.Cmp(least) == 0 && exact.Sign() >= 0 {
				want, least = n, away
			}
		}
		if got != want {
			t.Fatalf("%v of %v: got %d, want %d", r, count, got, want)
		}
	})
}

// Reflected counts round alike on every grid that is its own reflection.
func TestRoundIsSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count, _ := drawCount(t)
		r := drawRule(t)
		r.Plus = max(r.Multiple, 1) * rapid.IntRange(-3, 3).Draw(t, "multiples in plus")
		if r.Multiple > 0 && r.Multiple%2 == 0 && rapid.Bool().Draw(t, "half a multiple more") {
			r.Plus += r.Multiple / 2
		}
		if count.Sign() == 0 && r.Direction == gauge.Nearest && !r.Allows(0) {
			t.Skip("0 between two numbers goes to the larger one")
		}
		mirrored := r
		switch r.Direction {
		case gauge.Up:
			mirrored.Direction = gauge.Down
		case gauge.Down:
			mirrored.Direction = gauge.Up
		}
		if a, b := count.Round(r), (gauge.Count{}).Sub(count).Round(mirrored); a != -b {
			t.Fatalf("%v, %v: %d, and %d of the negative", r, count, a, b)
		}
	})
}

func TestCountText(t *testing.T) {
	text, err := json.Marshal(map[string]gauge.Count{"stitches": gauge.Whole(118).Add(gauge.Whole(4).Div(5)), "third": gauge.Whole(1).Div(3)})
	if want := `{"stitches":"118.8","third":"0.333"}`; err != nil || string(text) != want {
		t.Errorf("got %s (%v), want %s", text, err, want)
	}
}
