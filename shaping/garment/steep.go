package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// bend is a width that may be changed where sides are too steep: at the end of one stretch,
// or between two.
type bend struct {
	field     string
	given     gauge.Length
	stretches []slant
	ends      []int // finished stitches at the other end of each
	plainKept bool
	least     int // finished stitches that the width has at least
	most      int // and at most
}

// checkBend returns the stretches with their steps, and an error that says which widths
// would do if they are too steep. If a stretch has too few rows for any step it is the
// error that tooLow returns for the rows that each of them needs at least.
func (j job) checkBend(b bend, tooLow func(rows []int) error) ([]slant, error) {
	var made []slant
	for _, s := range b.stretches {
		if s.stitches == 0 {
			continue
		}
		spaced, ok := j.spaced(s, b.plainKept)
		if !ok {
			return nil, j.steep(b, s, tooLow)
		}
		made = append(made, spaced)
	}
	return made, nil
}

// steep is the error for a bend one of whose stretches, s, is too steep.
func (j job) steep(b bend, s slant, tooLow func(rows []int) error) error {
	least, most := b.least, b.most
	for i, other := range b.stretches {
		steepest := j.steepest(other, b.plainKept)
		if steepest == 0 && other.stitches != 0 {
			var rows []int
			for _, s := range b.stretches {
				rows = append(rows, j.lowest(s, b.plainKept))
			}
			return tooLow(rows)
		}
		least, most = max(least, b.ends[i]-2*steepest), min(most, b.ends[i]+2*steepest)
	}
	if least > most {
		return j.spec.fitError(b.field, b.given, "no width here leads to both ends by single stitches: move it, or bring the widths below and above it nearer to each other")
	}
	return j.spec.fitError(b.field, b.given, fmt.Sprintf("%s at each side cannot go or come one at a time over %s: from %s to %s",
		plural.Stitches(max(s.stitches, -s.stitches)), plural.Rows(s.rows), j.spec.atLeast(j.gauge.Width(least)), j.spec.atMost(j.gauge.Width(most))))
}

// mostStitches returns the stitches of the widest piece that is planned.
func (j job) mostStitches() int {
	if j.bedRefuses() {
		return j.spec.Setup.BedNeedles()
	}
	return 2 * shaping.MaxNeedle
}
