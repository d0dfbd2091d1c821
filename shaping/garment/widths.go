package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// Widths are the widths of a piece in whole stitches; what it does not have is 0.
type Widths struct {
	CastOn   int // seam stitches included
	Waist    int // seam stitches included; 0 without a waist
	Body     int // at the underarm, seam stitches included
	Seam     int // lost in the seam at each side
	Inset    int // taken off at each armhole, or at each side of a cap
	BindOff  int // of the inset, taken off at once
	Shoulder int // of each shoulder, the seam stitches at its armhole included
	Neck     int // between the shoulders
	Flat     int // of the neck, in the middle; of a cap at its top, seam stitches included
	Overlap  int // of two fronts, in the middle; they have none of these stitches
}

// Widest returns the largest number of stitches side by side.
func (w Widths) Widest() int { return max(w.CastOn, w.Waist, w.Body) }

// isSleeve reports whether the widths are a sleeve's, which has neither neck nor shoulders.
func (w Widths) isSleeve() bool { return w.Neck == 0 }

// chooseWidths chooses the stitches and refuses a piece that is wider than the bed.
func (f *trunk) chooseWidths() error {
	if err := f.chooseAcross(); err != nil {
		return err
	}
	f.widths.BindOff = f.atOnce()
	if f.begun == nil {
		if err := f.chooseSides(); err != nil {
			return err
		}
	}
	if f.begun != nil && f.outer.IsValid() {
		return f.checkFrontLeft()
	}
	return f.checkRoom(f.ownWidths(), f.outer.IsValid())
}

// chooseSides chooses the stitches of hem and waist, with the body's parity, so that both
// edges are shaped alike.
func (f *trunk) chooseSides() error {
	w, body := &f.widths, f.spec.Body
	same := gauge.SameParity(w.Body, gauge.Nearest)
	w.CastOn = w.Body
	if !body.Hem.IsZero() {
		hem := f.gauge.Stitches(body.Hem).Round(same)
		if err := f.checkLeast("body.hem", body.Hem, hem, f.least()); err != nil {
			return err
		}
		w.CastOn = hem + 2*w.Seam
	}
	if body.Waist != nil {
		waist := f.gauge.Stitches(body.Waist.Width).Round(same)
		if err := f.checkLeast("body.waist.width", body.Waist.Width, waist, f.least()); err != nil {
			return err
		}
		w.Waist = waist + 2*w.Seam
	}
	return nil
}

// least returns how many finished stitches the front, or two together and the overlap, have
// anywhere at least.
func (f *trunk) least() int {
	if f.outer.IsValid() {
		return 2*leastOfFront + f.widths.Overlap
	}
	return leastStitches
}

// atOnce returns the stitches of the inset that are taken off at once: none if all go
// by decreases, at least one if a length is given.
func (f *trunk) atOnce() int {
	if f.begun != nil && f.begun.above {
		return f.begun.piece.Widths.BindOff
	}
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

// chooseAcross chooses the stitches at the underarm and above: the body keeps its nearest
// whole number, the neck the parity of the body, and neck, shoulders and insets together
// make up the body with the least relative error.
func (f *trunk) chooseAcross() error {
	s, g := f.spec, f.gauge
	body, neck, inset := g.Stitches(s.Body.Width), g.Stitches(s.Neck.Width), g.Stitches(s.Armhole.Inset)
	w := Widths{Seam: s.Seam.Stitches}
	across := body.Round(gauge.Rounding{})
	if f.begun != nil {
		across = f.keepSides(&w) - 2*w.Seam
	}
	w.Body = across + 2*w.Seam
	shoulder := body.Sub(neck).Div(2).Sub(inset)
	// A shoulder needs two stitches, fewer when seams add some.
	least := max(2-w.Seam, 1)
	if shoulder.Cmp(gauge.Whole(least)) < 0 {
		return noShoulders(s, g, w.Seam, least)
	}
	parts := []gauge.Part{
		{Name: "neckWidth", Want: neck, Grid: gauge.SameParity(across, gauge.Nearest), Least: 1},
		{Name: "shoulder", Want: shoulder, Times: 2, Least: least},
	}
	between := across // the armholes
	if f.begun != nil && f.begun.above {
		w.Inset = f.begun.piece.Widths.Inset
		between -= 2 * w.Inset
	} else if inset.Sign() > 0 {
		parts = append(parts, gauge.Part{Name: "inset", Want: inset, Times: 2, Least: 0})
	}
	rounded, err := gauge.RoundTogether(between, parts)
	if err != nil {
		return s.fitError("body.width", s.Body.Width, "too few stitches for a neck and two shoulders")
	}
	w.Neck, w.Shoulder = rounded[0].Whole, rounded[1].Whole+w.Seam
	if len(rounded) > 2 {
		w.Inset = rounded[2].Whole
	}
	w.Flat = f.flat(w.Neck)
	f.widths = w
	return f.chooseOverlap()
}

// noShoulders says what is too wide, and how wide it may be for shoulders of at
// least that many stitches that have one for each group.
func noShoulders(s Spec, g gauge.Gauge, seam, least int) error {
	millimetre := gauge.MustParseLength("1 mm")
	shoulders := s.shoulders(g, seam, least)
	if free := s.widestNeck(shoulders); free.Cmp(g.Width(1)) >= 0 && free.Cmp(millimetre) >= 0 {
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

// shoulders returns the width of two shoulders of at least that many stitches that have one
// for each group, and a stitch for what rounding takes.
func (s Spec) shoulders(g gauge.Gauge, seam, least int) gauge.Length {
	drop := g.Rows(s.Shoulder.Drop).Round(gauge.Even(gauge.Nearest))
	return g.Width(2*max(drop/2+2-seam, least) + 1)
}

// widestNeck returns what the body leaves beside the armholes and shoulders of that width.
func (s Spec) widestNeck(shoulders gauge.Length) gauge.Length {
	return s.Body.Width.Sub(s.Armhole.Inset.Mul(2)).Sub(shoulders)
}

// alsoAtMost says that another length must not be longer either, if it is.
func alsoAtMost(field string, l Optional, most gauge.Length) string {
	if l.Or(gauge.Length{}).Cmp(most) <= 0 {
		return ""
	}
	return ", and " + field + " no more"
}

// flat returns the stitches in the middle of a neck, with its parity. If left open it is
// a third of a round neck, two thirds of that of a back, the whole of a square one, and of
// a vee what parity asks for. Common practice, no source; two thirds are those of the back
// of leaflet no. 1262, Easy to Make Fashions from Rochelle's Mohlon (clyx.com), to a
// twentieth.
func (f *trunk) flat(neck int) int {
	want := f.gauge.Stitches(f.opening.Flat.Or(gauge.Length{}))
	if f.opening.Flat.IsZero() {
		switch f.opening.Shape {
		case RoundNeck:
			thirds := 1
			if f.name == shaping.Back {
				thirds = 2
			}
			want = f.gauge.Stitches(f.opening.Width.Mul(thirds)).Div(3)
		case SquareNeck:
			return neck
		}
	}
	flat := want.Round(gauge.SameParity(neck, gauge.Nearest))
	return min(max(flat, neck&1), neck)
}

// groups returns the shoulder's groups from tip to neck.
func (w Widths) groups(s Spec, h Heights, g gauge.Gauge) ([]int, error) {
	// With a stitch in every group and two in the last.
	highest := 2 * (w.Shoulder - 2)
	if h.Drop > 0 && highest <= 0 {
		return nil, s.fitError("shoulder.drop", s.Shoulder.Drop, fmt.Sprintf("a shoulder of %s has none to step: 0 cm, or a wider shoulder", plural.Stitches(w.Shoulder)))
	}
	if h.Drop > highest {
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
