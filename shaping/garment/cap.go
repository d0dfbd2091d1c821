package garment

import (
	"cmp"
	"fmt"
	"math"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// capShape is one edge of a set-in cap above the stitches taken off at the underarm, in a
// box of its own: almost level at the underarm, where it goes on from the stitches taken off
// there, then steep, then sloping, so that a few stitches at a time lead over to the flat
// top. Common practice, no source.
const capShape = "M 0 60 C 14 54 16 16 40 0"

// lowestCap is how many rows a set-in cap has at least: for the stitches taken off at both
// underarms and a step above them.
const lowestCap = 6

// capEdge is a set-in cap.
type capEdge struct {
	drawing drawing
	traced  shaping.Schedule // rows count from 1 above the underarm; see capRow
	flat    gauge.Length     // at the top, as asked
	wanted  gauge.Length     // along the whole edge
	height  gauge.Length     // of the drawing that has the wanted length
}

// fitCap chooses the height of the cap so that its edge is as long as the armhole and the
// ease: of all whole rows the nearest.
func (s *sleeve) fitCap() error {
	c := &s.cap
	c.wanted = s.armhole.Add(s.asked.Ease)
	top := s.widths.Body - 2*s.widths.Seam
	flat, stitches, err := s.capBox(top)
	if err != nil {
		return err
	}
	c.flat = s.asked.Flat.Or(halfLength(halfLength(s.asked.Top)))
	s.widths.Flat, s.widths.Inset = flat+2*s.widths.Seam, stitches+s.widths.BindOff
	shape, err := curve.ParsePath(capShape)
	if err != nil {
		return err
	}
	c.drawing = drawing{name: CapEdge, edge: shape, stitches: stitches, methods: s.pair, rules: s.pair.outerRules(s.widths.BindOff)}
	tread := millimetres(s.gauge.Width(flat))
	drawn := func(rows int) float64 { return 2*s.drawnLength(shape, stitches, rows) + tread }
	if err := s.checkLowest(shape, drawn(lowestCap)); err != nil {
		return err
	}
	rows := s.nearestDrawn(drawn)
	c.height = s.drawnHeight(drawn, rows)
	return s.nearestKnitted(drawn, rows)
}

// flatOf returns the width of the top of a cap over so many finished stitches: a quarter of
// theirs if the spec leaves it open. Common practice, no source.
func (s *sleeve) flatOf(top int) gauge.Length {
	return s.asked.Flat.Or(halfLength(halfLength(s.gauge.Width(top))))
}

// capBox returns the stitches at the top of a cap over so many finished stitches, and those
// that go at each edge between the underarm and the top.
func (s *sleeve) capBox(top int) (flat, stitches int, err error) {
	most := top - 2*s.widths.BindOff - 2 // one stitch at each edge
	flat = s.gauge.Stitches(s.flatOf(top)).Round(gauge.SameParity(top, gauge.Nearest))
	switch {
	case most < 1:
		return 0, 0, s.spec.fitError("sleeve.top", s.asked.Top, fmt.Sprintf("the underarms take %d stitches at each side: at least %s",
			s.widths.BindOff, s.spec.atLeast(s.gauge.Width(2*s.widths.BindOff+4))))
	case flat > most && !s.asked.Flat.IsZero():
		return 0, 0, s.spec.fitError("sleeve.flat", s.asked.Flat.Or(gauge.Length{}), fmt.Sprintf("wider than the underarms leave of the sleeve: at most %s", s.spec.atMost(s.gauge.Width(most))))
	}
	flat = max(min(flat, most), 2-top&1)
	return flat, (top-flat)/2 - s.widths.BindOff, nil
}

// drawnLength returns the length along one edge of the drawing in a box of whole stitches
// and rows, in mm.
func (s *sleeve) drawnLength(shape curve.Edge, stitches, rows int) float64 {
	scaled, err := s.boxed(shape, stitches, rows)
	if err != nil {
		return 0
	}
	return millimetres(scaled.Length())
}

// checkLowest refuses a sleeve so wide that even the lowest cap has a longer edge than the
// armhole, and says which width would do.
func (s *sleeve) checkLowest(shape curve.Edge, lowest float64) error {
	wanted := millimetres(s.cap.wanted)
	if lowest <= wanted {
		return nil
	}
	want := "wider than the armhole"
	// Even or odd as it is now, with the cuff.
	for top := s.widths.Body - 2*s.widths.Seam - 2; top > 0; top -= 2 {
		flat, stitches, err := s.capBox(top)
		if err != nil {
			break
		}
		if 2*s.drawnLength(shape, stitches, lowestCap)+millimetres(s.gauge.Width(flat)) <= wanted {
			return s.spec.fitError("sleeve.top", s.asked.Top, fmt.Sprintf("%s: even a cap of %d rows has %s along its edge, and %s are wanted: at most %s",
				want, lowestCap, s.spec.nearly(rounded(lowest)), s.spec.nearly(s.cap.wanted), s.spec.atMost(s.gauge.Width(top))))
		}
	}
	return s.spec.fitError("sleeve.top", s.asked.Top, want+": deepen armhole.depth")
}

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
// greater than the least by no more than the given part.
func (s *sleeve) caps(rows int, part float64) ([]capTry, error) {
	d := s.cap.drawing
	d.rows = rows
	drawn, err := d.edge.In(d.stitches, d.rows)
	if err != nil {
		return nil, err
	}
	ways, err := d.ways(drawn, part)
	var tries []capTry
	for _, way := range ways {
		steps := way.Schedule.By(d.methods.Several, d.methods.Single)
		off := millimetres(s.knittedLength(steps, rows).Sub(s.cap.wanted).Abs())
		tries = append(tries, capTry{rows, steps, len(way.Phrases), off})
	}
	return tries, err
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

// laid returns the traced steps as they stand at one edge, in rows of the piece.
func (s *sleeve) laid(traced shaping.Schedule, edge shaping.Side) shaping.Schedule {
	return moved(traced, func(step shaping.Step) int { return s.outerRow(s.pair, s.heights.Underarm, edge, step) })
}

// underarm returns the stitches taken off at once at one edge.
func (s *sleeve) underarm(edge shaping.Side) shaping.Schedule {
	return s.pair.atOnce(s.widths.BindOff, func(step shaping.Step) int { return s.outerRow(s.pair, s.heights.Underarm, edge, step) })
}
