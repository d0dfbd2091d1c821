package garment

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// slantSides shapes the sides from the hem, or the band above it, by the waist to the
// underarm.
func (f *trunk) slantSides() error {
	if f.begun != nil {
		f.sides = f.sidesLeft()
		return nil
	}
	w, h, body := f.widths, f.heights, f.spec.Body
	finished := func(stitches int) int { return stitches - 2*w.Seam }
	b := bend{
		field: "body.hem", given: body.Hem, ends: []int{finished(w.Body)},
		stretches: []slant{{name: HemToUnderarm, above: h.Band, rows: h.Underarm - h.Band, stitches: (w.CastOn - w.Body) / 2}},
	}
	if body.Waist != nil {
		b = bend{
			field: "body.waist.width", given: body.Waist.Width, ends: []int{finished(w.CastOn), finished(w.Body)},
			stretches: []slant{
				{name: HemToWaist, above: h.Band, rows: h.Waist - h.Band, stitches: (w.CastOn - w.Waist) / 2},
				{name: WaistToUnderarm, above: h.Waist, rows: h.Underarm - h.Waist, stitches: (w.Waist - w.Body) / 2},
			},
		}
	}
	b.least, b.most = f.least(), w.whole(f.mostStitches(), f.outer.IsValid())
	for _, s := range b.stretches {
		if s.stitches != 0 && s.rows > curve.MaxRows {
			return f.spec.fitError("body.length", body.Length, fmt.Sprintf("sides that move over %d rows, at most %d are planned: at most %s",
				s.rows, curve.MaxRows, f.spec.atMost(f.gauge.Height(h.Underarm-s.rows+curve.MaxRows))))
		}
	}
	var err error
	f.sides, err = f.checkBend(b, f.lowSide)
	return err
}

// lowSide is the error for sides that need so many rows, in one stretch or in two.
func (f *trunk) lowSide(rows []int) error {
	s, h := f.spec, f.heights
	const rounding = 3 // rows, that the whole height may take
	needed := h.Band + rounding
	for _, r := range rows {
		needed += r
	}
	if f.gauge.Height(needed).Cmp(longestLength()) > 0 {
		return s.fitError("start.band", s.Start.Band, "leaves the sides too few rows to be shaped: lower it")
	}
	if s.Body.Waist == nil || needed > h.Underarm {
		if s.Body.Waist != nil {
			needed += rounding // so that there is room for the waist whatever the rounding takes
		}
		return s.fitError("body.length", s.Body.Length, fmt.Sprintf("the sides have too few rows to be shaped above the band: at least %s",
			s.atLeast(f.gauge.Height(needed))))
	}
	return s.fitError("body.waist.height", s.Body.Waist.Height, fmt.Sprintf("too few rows to shape the sides between it and the band or the underarm: from %s to %s",
		s.atLeast(f.gauge.Height(h.Band+rows[0])), s.atMost(f.gauge.Height(h.Underarm-rounding-rows[1]))))
}

// checkNarrowest refuses a neck that begins where sides that move leave the body too
// narrow for it.
func (f *trunk) checkNarrowest() error {
	const shoulders = 4 // two stitches beside the neck at each side
	split := f.heights.NeckStart()
	width, steps := f.widths.CastOn, f.begun.goesOnWith(slanted(f.sides), shaping.Right)
	for row := f.heights.Underarm; row >= split; row-- {
		if at := width + 2*steps.Through(row); at < f.widths.Neck+shoulders {
			return f.neckError(fmt.Sprintf("the neck begins below the underarm, where the body has only %s in row %d: %s",
				plural.Stitches(at), row, f.shorter(f.heights.Top()-row-1)))
		}
	}
	return nil
}
