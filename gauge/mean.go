package gauge

import (
	"errors"
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// MaxSwatches is how many swatches [Mean] takes at most.
const MaxSwatches = 16

// Mean returns the gauge of several swatches of one fabric: all stitches over all widths
// and all rows over all heights, so that a larger swatch weighs more, as its count is
// better. How far the swatches lie apart is kept, see [Gauge.Spread]. One swatch gives
// its own gauge.
//
// It returns an [*Error] that names "swatches" if there are none or more than
// [MaxSwatches], and "swatches[1].width", counted from 0, for a field that
// [Swatch.Gauge] refuses.
func Mean(swatches ...Swatch) (Gauge, error) {
	if n := len(swatches); n < 1 || n > MaxSwatches {
		return Gauge{}, &Error{Field: "swatches", Given: fmt.Sprintf("%d of them", n), Want: fmt.Sprintf("1 to %d", MaxSwatches), Err: ErrRange}
	}
	each := make([]Gauge, len(swatches))
	for i, s := range swatches {
		g, err := s.Gauge()
		if e, ok := errors.AsType[*Error](err); ok {
			named := *e
			named.Field = fmt.Sprintf("swatches[%d].%s", i, e.Field)
			return Gauge{}, &named
		}
		each[i] = g
	}
	if len(each) == 1 {
		return each[0], nil
	}
	var all Gauge
	for _, g := range each {
		all.stitches, all.width = all.stitches.Add(g.stitches), all.width.Add(g.width)
		all.rows, all.height = all.rows.Add(g.rows), all.height.Add(g.height)
	}
	all.perMM = new(big.Rat).Quo(all.stitches.Rat(), all.width.mm.Rat())
	all.perRow = new(big.Rat).Quo(all.rows.Rat(), all.height.mm.Rat())
	all.spread = newSpread(all, each)
	all.tolerance = Tolerance{
		across: larger(counting(all.stitches, len(each)), all.spread.across),
		up:     larger(counting(all.rows, len(each)), all.spread.up),
	}
	return all, nil
}

// Swatches returns how many swatches the gauge was counted in: 1 unless it is a [Mean]
// of several, 0 for no gauge.
func (g Gauge) Swatches() int {
	switch {
	case g.IsZero():
		return 0
	case g.spread != nil:
		return g.spread.swatches
	}
	return 1
}

// Spread returns how far the swatch that is farthest from the mean lies from it, in
// percent with so many decimals, for stitches and for rows: by so much a width or a
// height would come out wider or narrower, higher or lower, if the whole fabric became
// like that swatch. It is 0 for one swatch.
//
// Swatches that lie far apart are no measure of the fabric: see [Gauge.Agree].
func (g Gauge) Spread(places int) (stitches, rows decimal.Decimal) {
	if g.spread == nil {
		return decimal.Decimal{}, decimal.Decimal{}
	}
	percent := func(r *big.Rat) decimal.Decimal {
		return Count{r: new(big.Rat).Mul(r, big.NewRat(100, 1))}.Decimal(places)
	}
	return percent(g.spread.across), percent(g.spread.up)
}

// Agree reports whether counting explains the differences between the swatches: whether
// there is a gauge by which every count is right to half a stitch and half a row. If
// not, something else differs, such as the tension, the yarn, or what washing and
// resting did: the swatches should be knitted again. One swatch agrees with itself, and so
// does no gauge, where nothing differs.
func (g Gauge) Agree() bool { return g.spread == nil || g.spread.agree }

// spread is how far several swatches lie apart.
type spread struct {
	swatches   int
	across, up *big.Rat // of the swatch farthest from the mean, relative
	agree      bool
}

func newSpread(mean Gauge, each []Gauge) *spread {
	s := &spread{swatches: len(each), across: new(big.Rat), up: new(big.Rat)}
	var stitches, rows explained
	for _, g := range each {
		s.across = larger(s.across, apart(mean.perMM, g.perMM))
		s.up = larger(s.up, apart(mean.perRow, g.perRow))
		stitches.narrow(g.stitches, g.width)
		rows.narrow(g.rows, g.height)
	}
	s.agree = !stitches.isEmpty() && !rows.isEmpty()
	return s
}

// apart returns by how much of it a length knitted by the mean differs from the length
// of as many stitches by another gauge.
func apart(mean, other *big.Rat) *big.Rat {
	off := new(big.Rat).Quo(mean, other)
	return off.Abs(off.Sub(off, big.NewRat(1, 1)))
}

// explained is the range of gauges, per millimetre, by which all counts are right to a
// half; it is not bounded while a bound is nil.
type explained struct{ least, most *big.Rat }

// narrow takes in one more count.
func (e *explained) narrow(count decimal.Decimal, over Length) {
	half := decimal.New(5, -1)
	least := new(big.Rat).Quo(count.Sub(half).Rat(), over.mm.Rat())
	most := new(big.Rat).Quo(count.Add(half).Rat(), over.mm.Rat())
	if e.least == nil || e.least.Cmp(least) < 0 {
		e.least = least
	}
	if e.most == nil || e.most.Cmp(most) > 0 {
		e.most = most
	}
}

func (e *explained) isEmpty() bool { return e.least.Cmp(e.most) > 0 }

func (s *spread) equal(t *spread) bool {
	if s == nil || t == nil {
		return s == t
	}
	return s.swatches == t.swatches && s.across.Cmp(t.across) == 0 && s.up.Cmp(t.up) == 0 && s.agree == t.agree
}
