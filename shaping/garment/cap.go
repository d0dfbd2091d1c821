package garment

import (
	"fmt"

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
	traced  shaping.Schedule // rows count from 1 above the underarm; see laid
	flat    gauge.Length     // at the top, as asked
	wanted  gauge.Length     // along the whole edge
	height  gauge.Length     // of the drawing that has the wanted length

	known map[int]curve.Wordings // of caps of so many rows, as far as they were looked at
}

// fitCap chooses the height of the cap so that its edge is as long as the armhole and the
// ease: of all whole rows the nearest.
func (s *sleeve) fitCap() error {
	c := &s.cap
	c.known = map[int]curve.Wordings{}
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

// laid returns the traced steps as they stand at one edge, in rows of the piece.
func (s *sleeve) laid(traced shaping.Schedule, edge shaping.Side) shaping.Schedule {
	return moved(traced, func(step shaping.Step) int { return s.outerRow(s.pair, s.heights.Underarm, edge, step) })
}

// underarm returns the stitches taken off at once at one edge.
func (s *sleeve) underarm(edge shaping.Side) shaping.Schedule {
	return s.pair.atOnce(s.widths.BindOff, func(step shaping.Step) int { return s.outerRow(s.pair, s.heights.Underarm, edge, step) })
}
