package gauge

import "math/big"

// StitchesFor returns how many stitches of g are as wide as so many of another gauge,
// exactly: 140 stitches at 28 to 4 in are as wide as 147.5 at 29.5. It is 0 if either is
// no gauge.
func (g Gauge) StitchesFor(other Gauge, stitches int) Count {
	return converted(g.perMM, other.perMM, stitches)
}

// RowsFor returns how many rows of g are as high as so many of another gauge, exactly.
// It is 0 if either is no gauge.
func (g Gauge) RowsFor(other Gauge, rows int) Count {
	return converted(g.perRow, other.perRow, rows)
}

// converted returns n × per / other.
func converted(per, other *big.Rat, n int) Count {
	if per == nil || other == nil {
		return Count{}
	}
	r := new(big.Rat).SetInt64(int64(n))
	return Count{r: r.Mul(r, per).Quo(r, other)}
}
