package garment

import "example.com/walewise/gauge"

// keepSides chooses the stitches of a sleeve that is begun and shapes its sides from there
// on: the cuff is what it is, the top has its parity.
func (s *sleeve) keepSides() error {
	b, h := s.begun, s.heights
	there := b.stitches()
	w := Widths{Seam: s.spec.Seam.Stitches, CastOn: b.piece.Widths.CastOn}
	top := s.gauge.Stitches(s.asked.Top).Round(gauge.SameParity(there, gauge.Nearest))
	if err := s.checkLeast("sleeve.top", s.asked.Top, top, leastStitches); err != nil {
		return err
	}
	plain := s.gauge.Rows(s.asked.Plain).Round(gauge.Rounding{})
	from := max(h.Band+plain, b.rows)
	plainKept := plain > 0 && from > b.rows // no step may be in the row below
	stretch := s.leads(CuffToUnderarm, from, h.Underarm-plain, there, top+2*w.Seam, plainKept)
	w.Body = there - 2*stretch.stitches
	s.widths, s.sides = w, s.gone([]slant{stretch}, plainKept)
	return s.checkRoom(w, false)
}
