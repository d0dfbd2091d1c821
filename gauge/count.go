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

// Div returns c / n, exactly; n below 1 counts as 1.
func (c Count) Div(n int) Count {
	return Count{r: new(big.Rat).Quo(c.rat(), new(big.Rat).SetInt64(int64(max(n, 1))))}
}

// Cmp returns -1, 0 or 1 as c is less than, equal to or more than d.
func (c Count) Cmp(d Count) int { return c.rat().Cmp(d.rat()) }

// Equal reports whether c and d are the same number.
func (c Count) Equal(d Count) bool { return c.Cmp(d) == 0 }

// Sign returns -1, 0 or 1.
func (c Count) Sign() int { return c.rat().Sign() }

// Decimal returns c rounded to that many places, ties away from zero.
func (c Count) Decimal(places int) decimal.Decimal {
	return decimal.NewFromBigRat(c.rat(), int32(min(max(places, 0), 30)))
}

// String returns c with at most three decimals.
func (c Count) String() string { return plainDecimal(c.Decimal(3)) }

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

// Round returns the whole number that the rule chooses, held between -2^31 and 2^31 - 1.
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
	switch {
	case n.IsInt64():
		return int(min(max(n.Int64(), math.MinInt32), math.MaxInt32))
	case n.Sign() < 0:
		return math.MinInt32
	}
	return math.MaxInt32
}
