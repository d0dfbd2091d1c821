package gauge

import (
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

// GoString returns c as an exact fraction.
func (c Count) GoString() string { return c.rat().RatString() }

// Round returns the whole number that the rule chooses, held between -2^31 and 2^31 - 1.
func (c Count) Round(r Rounding) int {
	step, plus := int64(max(r.Multiple, 1)), int64(r.Plus)
	// How many steps: (c - plus) / step.
	steps := new(big.Rat).Sub(c.rat(), new(big.Rat).SetInt64(plus))
	steps.Quo(steps, new(big.Rat).SetInt64(step))
	n := floor(steps)
	rest := new(big.Rat).Sub(steps, new(big.Rat).SetInt(n))
	up := false
	switch r.Direction {
	case Up:
		up = rest.Sign() > 0
	case Nearest:
		half := rest.Cmp(big.NewRat(1, 2))
		up = half > 0 || (half == 0 && c.Sign() >= 0)
	}
	if up {
		n.Add(n, big.NewInt(1))
	}
	n.Mul(n, big.NewInt(step)).Add(n, big.NewInt(plus))
	if !n.IsInt64() || n.Int64() < math.MinInt32 || n.Int64() > math.MaxInt32 {
		if n.Sign() < 0 {
			return math.MinInt32
		}
		return math.MaxInt32
	}
	return int(n.Int64())
}

// floor returns the largest whole number that is not above r.
func floor(r *big.Rat) *big.Int {
	// Div rounds toward minus infinity for the positive denominators of a Rat.
	return new(big.Int).Div(r.Num(), r.Denom())
}
