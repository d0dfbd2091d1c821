package gauge

import (
	"fmt"
	"math"
	"math/big"

	"github.com/shopspring/decimal"
)

// Count is an exact, possibly fractional number of stitches or rows. It is
// immutable and safe for concurrent use; the zero value is 0. Compare counts with
// [Count.Cmp] or [Count.Equal], not with ==.
type Count struct {
	_ [0]func()
	r *big.Rat // nil is 0
}

// Whole returns the count n.
func Whole(n int) Count { return Count{r: new(big.Rat).SetInt64(int64(n))} }

func (c Count) rat() *big.Rat {
	if c.r == nil {
		return new(big.Rat)
	}
	return c.r
}

// Add returns c + d.
func (c Count) Add(d Count) Count { return Count{r: new(big.Rat).Add(c.rat(), d.rat())} }

// Sub returns c - d.
func (c Count) Sub(d Count) Count { return Count{r: new(big.Rat).Sub(c.rat(), d.rat())} }

// Abs returns c without its sign.
func (c Count) Abs() Count { return Count{r: new(big.Rat).Abs(c.rat())} }

// Div returns c / n, exactly, and 0 for n = 0.
func (c Count) Div(n int) Count {
	if n == 0 {
		return Count{}
	}
	return Count{r: new(big.Rat).Quo(c.rat(), new(big.Rat).SetInt64(int64(n)))}
}

// Cmp returns -1, 0 or 1 as c is less than, equal to or more than d.
func (c Count) Cmp(d Count) int { return c.rat().Cmp(d.rat()) }

// Equal reports whether c and d are the same number.
func (c Count) Equal(d Count) bool { return c.Cmp(d) == 0 }

// Sign returns -1, 0 or 1.
func (c Count) Sign() int { return c.rat().Sign() }

// Decimal returns c rounded to that many places, from 0 to 30, ties away from zero.
func (c Count) Decimal(places int) decimal.Decimal {
	return decimal.NewFromBigRat(c.rat(), int32(min(max(places, 0), 30)))
}

// String returns c with at most three decimals.
func (c Count) String() string { return plainDecimal(c.Decimal(3)) }

// MarshalText returns the text of [Count.String], for reports: it cannot be read back.
func (c Count) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// GoString returns a Go expression for c, or its exact fraction if the numbers are too
// large for one.
func (c Count) GoString() string {
	num, denom := c.rat().Num(), c.rat().Denom()
	switch {
	case !num.IsInt64() || !denom.IsInt64():
		return c.rat().RatString()
	case c.rat().IsInt():
		return fmt.Sprintf("gauge.Whole(%v)", num)
	}
	return fmt.Sprintf("gauge.Whole(%v).Div(%v)", num, denom)
}

// Round returns the whole number that the rule chooses. Of a count beyond 2^31 - 1 or below
// -2^31 it is the last number up to there that the rule allows.
func (c Count) Round(r Rounding) int {
	value, plus := c.rat(), big.NewInt(int64(r.Plus))
	// One division, in units of 1 / denominator: a fraction would be reduced each time.
	step := big.NewInt(int64(max(r.Multiple, 1)))
	unit := new(big.Int).Mul(step, value.Denom())
	n, rest := new(big.Int).Mul(plus, value.Denom()), new(big.Int)
	n.Sub(value.Num(), n)
	n.DivMod(n, unit, rest) // toward minus infinity, since the unit is positive
	up := false
	switch r.Direction {
	case Up:
		up = rest.Sign() > 0
	case Nearest:
		half := rest.Lsh(rest, 1).Cmp(unit)
		up = half > 0 || (half == 0 && c.Sign() >= 0)
	}
	if up {
		n.Add(n, big.NewInt(1))
	}
	n.Mul(n, step).Add(n, plus)
	if n.IsInt64() && n.Int64() == int64(int32(n.Int64())) {
		return int(n.Int64())
	}
	return last(n.Sign(), step, plus)
}

// last returns the last number of 32 bits, on the side of a sign, that is a multiple of step,
// plus plus.
func last(sign int, step, plus *big.Int) int {
	bound := int64(math.MaxInt32)
	if sign < 0 {
		bound = math.MinInt32
	}
	off := new(big.Int).Sub(big.NewInt(bound), plus)
	off.Mod(off, step)
	if sign < 0 && off.Sign() > 0 {
		off.Sub(off, step)
	}
	return int(bound - off.Int64())
}
