package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
)

// slantSides shapes the sides from the hem, or the band above it, by the waist to the
// underarm.
func (f *trunk) slantSides() error {
	w, h := f.widths, f.heights
	if f.spec.Body.Waist == nil {
		s := slant{name: HemToUnderarm, above: h.Band, rows: h.Underarm - h.Band, stitches: (w.CastOn - w.Body) / 2}
		return f.addSlant(s, "body.hem", f.spec.Body.Hem, w.Body)
	}
	waist := f.spec.Body.Waist.Width
	toWaist := slant{name: HemToWaist, above: h.Band, rows: h.Waist - h.Band, stitches: (w.CastOn - w.Waist) / 2}
	if err := f.addSlant(toWaist, "body.waist.width", waist, w.CastOn); err != nil {
		return err
	}
	fromWaist := slant{name: WaistToUnderarm, above: h.Waist, rows: h.Underarm - h.Waist, stitches: (w.Waist - w.Body) / 2}
	return f.addSlant(fromWaist, "body.waist.width", waist, w.Body)
}

// addSlant adds a stretch to the sides. The field is where the spec has the width at one
// end, which may be changed if the stretch is too steep, and other the stitches at the
// other end.
func (f *trunk) addSlant(s slant, field string, given gauge.Length, other int) error {
	if s.stitches == 0 {
		return nil
	}
	made, ok := f.spaced(s, false)
	if !ok {
		least, most := f.widthsBeside(other-2*f.widths.Seam, f.steepest(s, false))
		return f.spec.fitError(field, given, fmt.Sprintf("%s at each side cannot go or come one at a time over %s: from %s to %s",
			plural.Stitches(max(s.stitches, -s.stitches)), plural.Rows(s.rows), f.spec.atLeast(least), f.spec.atMost(most)))
	}
	f.sides = append(f.sides, made)
	return nil
}

// checkNarrowest refuses a neck that begins where sides that move leave the body too
// narrow for it.
func (f *trunk) checkNarrowest() error {
	const shoulders = 4 // two stitches beside the neck at each side
	split := f.heights.NeckStart()
	width, steps := f.widths.CastOn, slanted(f.sides)
	for row := f.heights.Underarm; row >= split; row-- {
		if at := width + 2*steps.Through(row); at < f.widths.Neck+shoulders {
			return f.neckError(fmt.Sprintf("the neck begins below the underarm, where the body has only %s in row %d: %s",
				plural.Stitches(at), row, f.shorter(f.heights.Top()-row-1)))
		}
	}
	return nil
}
