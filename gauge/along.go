package gauge

import "math/big"

// StitchesAlong returns how many stitches go along so many rows of the gauge across,
// exactly: a band picked up along a straight edge. It is 0 where one of the two is no gauge.
func (g Gauge) StitchesAlong(rows int, across Gauge) Count {
	if g.IsZero() || across.IsZero() {
		return Count{}
	}
	r := new(big.Rat).SetInt64(int64(rows))
	r.Mul(r, g.perMM)
	return Count{r: r.Quo(r, across.perRow)}
}
