package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// Widths are the widths of a front or a back in whole stitches.
type Widths struct {
	Body     int // cast on, seam stitches included
	Seam     int // lost in the seam at each side
	Inset    int // taken off at each armhole
	BindOff  int // of the inset, bound off at once
	Shoulder int // of each shoulder, the seam stitches at its armhole included
	Neck     int
	Flat     int // of the neck, in the middle
}

// chooseWidths chooses the stitches and refuses a piece that is wider than the bed.
func (f *trunk) chooseWidths() error {
	var err error
	if f.widths, err = widths(f.spec, f.gauge); err != nil {
		return err
	}
	f.widths.BindOff = f.atOnce()
	if f.place == shaping.Hand {
		return f.checkNeedles()
	}
	return checkBed(f.spec, f.widths, f.gauge)
}

// checkNeedles refuses a piece in the hand that is wider than stitches are numbered.
func (f *trunk) checkNeedles() error {
	const most = 2 * shaping.MaxNeedle
	if f.widths.Body <= most {
		return nil
	}
	return f.spec.fitError("body.width", f.spec.Body.Width, fmt.Sprintf("%d stitches, at most %d are planned, which is %s",
		f.widths.Body, most, f.spec.atMost(f.gauge.Width(most-2*f.widths.Seam))))
}

// atOnce returns the stitches of the inset that are taken off at once: none if all go
// by decreases, at least one if a length is given.
func (f *trunk) atOnce() int {
	if !tied(f.armhole.Several) {
		return 0
	}
	asked := f.spec.Armhole.BindOff
	stitches := f.gauge.Stitches(asked.Or(defaultBindOff())).Round(gauge.Rounding{})
	if asked.Or(gauge.Length{}).Sign() > 0 {
		stitches = max(stitches, 1)
	}
	return min(stitches, f.widths.Inset)
}

// widths chooses the stitches: the body keeps its nearest whole number, the neck
// the parity of the body, and neck, shoulders and insets together make up the body
// with the least relative error.
func widths(s Spec, g gauge.Gauge) (Widths, error) {
	body, neck, inset := g.Stitches(s.Body.Width), g.Stitches(s.Neck.Width), g.Stitches(s.Armhole.Inset)
	w := Widths{Seam: s.Seam.Stitches}
	across := body.Round(gauge.Rounding{})
	w.Body = across + 2*w.Seam
	shoulder := body.Sub(neck).Div(2).Sub(inset)
	// A shoulder needs two stitches, fewer when seams add some.
	least := max(2-w.Seam, 1)
	if shoulder.Cmp(gauge.Whole(least)) < 0 {
		return Widths{}, noShoulders(s, g, w.Seam, least)
	}
	parts := []gauge.Part{
		{Name: "neckWidth", Want: neck, Grid: gauge.SameParity(across, gauge.Nearest), Least: 1},
		{Name: "shoulder", Want: shoulder, Times: 2, Least: least},
	}
	if inset.Sign() > 0 {
		parts = append(parts, gauge.Part{Name: "inset", Want: inset, Times: 2, Least: 0})
	}
	rounded, err := gauge.RoundTogether(across, parts)
	if err != nil {
		return Widths{}, s.fitError("body.width", s.Body.Width, "too few stitches for a neck and two shoulders")
	}
	w.Neck, w.Shoulder = rounded[0].Whole, rounded[1].Whole+w.Seam
	if len(rounded) > 2 {
		w.Inset = rounded[2].Whole
	}
	w.Flat = w.flat(s, g)
	return w, nil
}

// noShoulders says what is too wide, and how wide it may be for shoulders of at
// least that many stitches that have one for each group.
func noShoulders(s Spec, g gauge.Gauge, seam, least int) error {
	drop := g.Rows(s.Shoulder.Drop).Round(gauge.Even(gauge.Nearest))
	// Both shoulders, and a stitch for what rounding takes.
	shoulders := g.Width(2*max(drop/2+2-seam, least) + 1)
	millimetre := gauge.MustParseLength("1 mm")
	if free := s.Body.Width.Sub(s.Armhole.Inset.Mul(2)).Sub(shoulders); free.Cmp(g.Width(1)) >= 0 && free.Cmp(millimetre) >= 0 {
		return s.fitError("neck.width", s.Neck.Width, fmt.Sprintf("wider than the body leaves: at most %s%s", s.atMost(free), alsoAtMost("neck.flat", s.Neck.Flat, free)))
	}
	if s.Armhole.Inset.IsZero() {
		return s.fitError("body.width", s.Body.Width, "too few stitches for a neck and two shoulders")
	}
	want := fmt.Sprintf("the body of %s leaves no shoulders", s.text(s.Body.Width))
	if free := halfLength(s.Body.Width.Sub(s.Neck.Width).Sub(shoulders)); free.Cmp(millimetre) >= 0 {
		want += fmt.Sprintf(": at most %s beside the neck%s", s.atMost(free), alsoAtMost("armhole.bindOff", s.Armhole.BindOff, free))
	}
	return s.fitError("armhole.inset", s.Armhole.Inset, want)
}

// alsoAtMost says that another length must not be longer either, if it is.
func alsoAtMost(field string, l Optional, most gauge.Length) string {
	if l.Or(gauge.Length{}).Cmp(most) <= 0 {
		return ""
	}
	return ", and " + field + " no more"
}

// flat returns the stitches in the middle of the neck, with the parity of the neck. If
// left open it is a third of a round one, the whole of a square one, and of a vee what
// parity asks for.
func (w Widths) flat(s Spec, g gauge.Gauge) int {
	want := g.Stitches(s.Neck.Flat.Or(gauge.Length{}))
	if s.Neck.Flat.IsZero() {
		switch s.Neck.Shape {
		case RoundNeck:
			want = g.Stitches(s.Neck.Width).Div(3)
		case SquareNeck:
			return w.Neck
		}
	}
	flat := want.Round(gauge.SameParity(w.Neck, gauge.Nearest))
	return min(max(flat, w.Neck&1), w.Neck)
}

// groups returns the shoulder's groups from tip to neck.
func (w Widths) groups(s Spec, h Heights, g gauge.Gauge) ([]int, error) {
	// With a stitch in every group and two in the last.
	if highest := 2 * (w.Shoulder - 2); h.Drop > highest {
		return nil, s.fitError("shoulder.drop", s.Shoulder.Drop, fmt.Sprintf("%s, a shoulder of %s slopes over at most %d, which is %s",
			plural.Rows(h.Drop), plural.Stitches(w.Shoulder), highest, s.atMost(g.Height(highest))))
	}
	groups, err := shaping.ShoulderGroups(w.Shoulder, h.Drop)
	if err != nil {
		return nil, s.fitError("shoulder.drop", s.Shoulder.Drop, err.Error())
	}
	return groups, nil
}

// defaultBindOff is what is bound off at an underarm: about 2.5 cm. Common
// practice, no source.
func defaultBindOff() gauge.Length { return gauge.MustParseLength("2.5 cm") }
