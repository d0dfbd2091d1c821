package garment

import (
	"cmp"
	"math"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// The height of a cap is looked for in two steps: the drawing's first, whose length grows
// with its height, then that of the steps, whose length does not quite.

// nearestDrawn returns the least rows at which the drawing is at least as long as wanted.
// The length grows with the height.
func (s *sleeve) nearestDrawn(drawn func(int) float64) int {
	wanted := millimetres(s.cap.wanted)
	low, high := lowestCap, lowestCap+1
	for drawn(high) < wanted && high < curve.MaxRows {
		low, high = high, min(2*high, curve.MaxRows)
	}
	for high-low > 1 {
		if middle := (low + high) / 2; drawn(middle) < wanted {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// drawnHeight returns the height between two whole rows at which the drawing has the wanted
// length, as if the length grew evenly from the one to the other.
func (s *sleeve) drawnHeight(drawn func(int) float64, rows int) gauge.Length {
	short, long := drawn(rows-1), drawn(rows)
	part := 0.0
	if long > short {
		part = min(max((long-millimetres(s.cap.wanted))/(long-short), 0), 1)
	}
	row := millimetres(s.gauge.Height(1))
	return rounded(float64(float64(rows)-part) * row)
}

// capTry is a cap of so many rows, worked by these steps.
type capTry struct {
	rows    int
	steps   shaping.Schedule
	phrases int
	off     float64 // of its edge, either way, from what is wanted, in mm
}

// better reports whether a cap is to be preferred to another: it is nearer to the length
// that is wanted, where both are further off than the tolerance; of those within it the one
// said in fewer phrases, then the nearer, then the lower one.
func (c capTry) better(than capTry) bool {
	beyond := func(c capTry) float64 { return max(c.off-millimetres(capTolerance()), 0) }
	return cmp.Or(
		cmp.Compare(beyond(c), beyond(than)), cmp.Compare(c.phrases, than.phrases),
		cmp.Compare(c.off, than.off), cmp.Compare(c.rows, than.rows)) < 0
}

// nearestKnitted chooses rows and steps, beginning at the rows of the drawing, among those
// that follow it as closely as other edges do; if none of them has the wanted length within
// the tolerance, also among some that follow it less closely.
func (s *sleeve) nearestKnitted(drawn func(int) float64, start int) error {
	best := capTry{off: math.Inf(1)}
	for _, part := range []float64{sayable, roughly} {
		var err error
		if best, err = s.nearestOf(part, drawn, start); err != nil {
			return err
		}
		if best.off <= millimetres(capTolerance()) {
			break
		}
	}
	c := &s.cap
	c.traced, c.drawing.rows, s.heights.Cap = best.steps, best.rows, best.rows
	var err error
	c.drawing.edge, err = s.boxed(c.drawing.edge, c.drawing.stitches, c.drawing.rows)
	return err
}

// roughly is how much more area than the least, as a part of it, the steps of a cap may
// have for the sake of its length.
const roughly = 0.25

// nearestOf returns the best of the caps by steps whose area is greater than the least by
// no more than the given part. The length of the steps is off that of the drawing by less
// than a stitch and a row: where the drawing alone is further off, none is nearer.
func (s *sleeve) nearestOf(part float64, drawn func(int) float64, start int) (capTry, error) {
	slack := millimetres(s.gauge.Width(1).Add(s.gauge.Height(1)).Add(capTolerance()))
	best := capTry{off: math.Inf(1)}
	try := func(rows int) (further bool, err error) {
		if rows < lowestCap || rows > curve.MaxRows || math.Abs(drawn(rows)-millimetres(s.cap.wanted)) > best.off+slack {
			return false, nil
		}
		tries, err := s.caps(rows, part)
		for _, t := range tries {
			if t.better(best) {
				best = t
			}
		}
		return err == nil, err
	}
	for up, down, more, less := start, start-1, true, true; more || less; up, down = up+1, down-1 {
		var err error
		if more {
			if more, err = try(up); err != nil {
				return best, err
			}
		}
		if less {
			if less, err = try(down); err != nil {
				return best, err
			}
		}
	}
	return best, nil
}

// caps returns caps of so many rows by the ways to follow the drawing with an area that is
// greater than the least by no more than the given part: that of the fewest phrases, and
// those of more that follow it more closely.
func (s *sleeve) caps(rows int, part float64) ([]capTry, error) {
	wordings, err := s.capWordings(rows)
	if err != nil {
		return nil, err
	}
	fewest := wordings.Within(part)
	ways := []curve.Wording{fewest}
	for _, w := range wordings.All {
		if len(w.Phrases) > len(fewest.Phrases) {
			ways = append(ways, w)
		}
	}
	var tries []capTry
	for _, way := range ways {
		steps := way.Schedule.By(s.pair.Several, s.pair.Single)
		off := millimetres(s.knittedLength(steps, rows).Sub(s.cap.wanted).Abs())
		tries = append(tries, capTry{rows, steps, len(way.Phrases), off})
	}
	return tries, nil
}

// capWordings returns the wordings of the drawing over so many rows; each height is looked
// at once.
func (s *sleeve) capWordings(rows int) (curve.Wordings, error) {
	if known, ok := s.cap.known[rows]; ok {
		return known, nil
	}
	d := s.cap.drawing
	d.rows = rows
	drawn, err := d.edge.In(d.stitches, d.rows)
	if err != nil {
		return curve.Wordings{}, err
	}
	wordings, err := d.wordings(drawn)
	if err == nil {
		s.cap.known[rows] = wordings
	}
	return wordings, err
}

// knittedLength returns the length along the steps of both edges and the top, rounded as
// [Piece.CapLength] is.
func (s *sleeve) knittedLength(traced shaping.Schedule, rows int) gauge.Length {
	sum := s.gauge.Width(s.widths.Flat - 2*s.widths.Seam)
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		foot := s.heights.Underarm
		if base := s.underarm(edge); len(base) > 0 {
			foot = base[0].Row - 1
		}
		sum = sum.Add(rounded(stairsOf(s.laid(traced, edge), foot, s.heights.Underarm+rows).length(s.gauge)))
	}
	return sum
}
