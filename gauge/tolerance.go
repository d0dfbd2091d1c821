package gauge

import (
	"math/big"

	"github.com/shopspring/decimal"
)

// Tolerance returns what the swatches leave uncertain in finished lengths: what a count
// that is right to half a stitch and half a row leaves open, or how far the swatches lie
// apart, see [Gauge.Spread], where that is more.
//
// The count of several swatches is off by half a stitch in each of them at the worst,
// all to the same side: several small swatches are counted no better than one of their
// mean size. Common practice, no source.
func (g Gauge) Tolerance() Tolerance { return g.tolerance }

// Tolerance is the relative uncertainty that swatches leave in every length knitted by
// them. It is immutable; the zero value is no uncertainty.
type Tolerance struct {
	_          [0]func()
	across, up *big.Rat // nil is 0
}

// Width returns by how much a finished width may be off to either side, rounded to a
// millionth of a millimetre.
func (t Tolerance) Width(finished Length) Length { return part(t.across, finished) }

// Height returns by how much a finished height may be off to either side, rounded as a
// width is.
func (t Tolerance) Height(finished Length) Length { return part(t.up, finished) }

// counting returns what half a stitch in each of so many swatches is of all stitches.
func counting(count decimal.Decimal, swatches int) *big.Rat {
	return new(big.Rat).Quo(big.NewRat(int64(swatches), 2), count.Rat())
}

func larger(a, b *big.Rat) *big.Rat {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}

// part returns so much of a length, without its sign.
func part(of *big.Rat, l Length) Length {
	if of == nil {
		return Length{}
	}
	return Length{mm: decimal.NewFromBigRat(new(big.Rat).Mul(of, l.mm.Abs().Rat()), places)}
}
