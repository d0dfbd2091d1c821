package garment

import (
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// Heights are the heights of a piece in whole rows; what it does not have is 0.
type Heights struct {
	Band     int // of the band knitted first, part of Underarm
	Waist    int // cast-on edge to the waist; 0 without one
	Underarm int // cast-on edge to underarm
	Armhole  int // underarm to the tip of the shoulder
	Drop     int // tip to neck point, even
	Neck     int // depth of the neck below the neck point, even
	Cap      int // underarm to the top of a sleeve's cap
}

// Top returns the height at the neck point, and of a sleeve its whole height, in rows.
func (h Heights) Top() int { return h.Underarm + h.Armhole + h.Drop + h.Cap }

// Tip returns the height at the outer end of the shoulder, in rows.
func (h Heights) Tip() int { return h.Underarm + h.Armhole }

// NeckStart returns the counter reading where the neck begins.
func (h Heights) NeckStart() int { return h.Top() - h.Neck }

// chooseHeights chooses the rows: the height of the neck point keeps its nearest whole
// number, drop and neck depth their nearest even ones, and underarm and armhole
// share what that leaves. In the hand the neck point is even as well, so that the
// split follows a wrong-side row and the right half goes on with the yarn.
func (f *trunk) chooseHeights() error {
	h, err := f.heightsOver(f.spec.Body.Length, 1)
	if err == nil && f.begun != nil {
		h, err = f.heightsLeft(h)
	}
	if err != nil {
		return err
	}
	s, g := f.spec, f.gauge
	h.Band = min(g.Rows(s.Start.Band).Round(gauge.Rounding{}), h.Underarm) // the underarm may have gone down for the whole height
	if f.begun != nil {
		h.Band = f.begun.band(h.Band)
	}
	if waist := s.Body.Waist; waist != nil {
		h.Waist = min(max(g.Rows(waist.Height).Round(gauge.Rounding{}), h.Band), h.Underarm)
	}
	if f.begun != nil && h.Waist > 0 {
		h.Waist = f.begun.waist(h.Waist)
	}
	f.heights = h
	if f.begun != nil {
		f.startingAtOuter()
	}
	return f.checkHeights()
}

// heightsOver chooses the rows over a body of a length, with so many up to the underarm at
// least, but for band and waist.
func (f *trunk) heightsOver(length gauge.Length, least int) (Heights, error) {
	s, g := f.spec, f.gauge
	total := length.Add(s.Armhole.Depth).Add(s.Shoulder.Drop)
	whole := gauge.Rounding{}
	if f.place == shaping.Hand {
		whole = gauge.Even(gauge.Nearest)
	}
	top := g.Rows(total).Round(whole)
	if top > shaping.MaxRows {
		return Heights{}, s.fitError("body.length", s.Body.Length, fmt.Sprintf("the piece would have %d rows, at most %d are planned", top, shaping.MaxRows))
	}
	h := Heights{
		Drop: g.Rows(s.Shoulder.Drop).Round(gauge.Even(gauge.Nearest)),
		Neck: g.Rows(f.opening.Depth).Round(gauge.Even(gauge.Nearest)),
	}
	parts, err := gauge.RoundTogether(top-h.Drop, []gauge.Part{
		{Name: "length", Want: g.Rows(length), Least: least},
		{Name: "armhole", Want: g.Rows(s.Armhole.Depth), Least: 1},
	})
	if err != nil {
		return Heights{}, &Error{Field: "armhole.depth", Given: s.text(s.Armhole.Depth), Want: "too few rows for body, armhole and shoulder: lengthen one", Err: ErrFit}
	}
	h.Underarm, h.Armhole = parts[0].Whole, parts[1].Whole
	return h, nil
}

// checkHeights refuses heights that leave no piece.
func (f *trunk) checkHeights() error {
	h, s, g := f.heights, f.spec, f.gauge
	least := 1 // row of the body, and in the hand one more at the end
	if f.place == shaping.Hand {
		least = 2
	}
	if h.Neck < 2 {
		return f.neckError(fmt.Sprintf("fewer than 2 rows: at least %s", s.atLeast(g.Height(2))))
	}
	knitted := 0
	if f.begun != nil {
		knitted = f.begun.rows
	}
	if lowest := max(least, h.Band, knitted); h.NeckStart() < lowest {
		what := "deeper than the piece is high"
		switch {
		case h.NeckStart() >= max(least, h.Band):
			what = "the neck would begin in the rows that are knitted"
		case h.NeckStart() >= least:
			what = "the neck would begin in the band"
		}
		return f.neckError(what + ": " + f.shorter(h.Top()-lowest))
	}
	if h.Neck > curve.MaxRows {
		return f.neckError(fmt.Sprintf("%d rows, at most %d are drawn, which is %s", h.Neck, curve.MaxRows, s.atMost(g.Height(curve.MaxRows))))
	}
	if most := shaping.MaxRows - h.Top() - least + 1; h.Neck > most {
		return f.neckError(fmt.Sprintf("with both halves the piece would have %d rows, at most %d are planned: %s", h.Top()+h.Neck, shaping.MaxRows, f.shorter(most)))
	}
	return nil
}

// neckError is the error for a depth of the neck that does not fit.
func (f *trunk) neckError(want string) error {
	return f.spec.fitError(f.neckField+".depth", f.opening.Depth, want)
}

// shorter says to what depth a neck must be reduced so that it has at most so many
// rows, or that the body leaves none.
func (f *trunk) shorter(most int) string {
	most -= most & 1
	if most < 2 {
		return "change the body's length"
	}
	return "at most " + f.spec.atMost(f.gauge.Height(most))
}
