package garment

import (
	"fmt"

	"example.com/walewise/gauge"
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

// widths chooses the stitches: the body keeps its nearest whole number, the neck
// the parity of the body, and neck, shoulders and insets together make up the body
// with the least relative error.
func widths(s Spec, g gauge.Gauge) (Widths, []gauge.Rounded, error) {
	body, neck, inset := g.Stitches(s.Body.Width), g.Stitches(s.Neck.Width), g.Stitches(s.Armhole.Inset)
	w := Widths{Seam: s.Seam.Stitches}
	across := body.Round(gauge.Rounding{})
	w.Body = across + 2*w.Seam
	shoulder := body.Sub(neck).Over(2).Sub(inset)
	// A shoulder needs two stitches, fewer when seams add some.
	least := max(2-w.Seam, 1)
	if shoulder.Cmp(gauge.Whole(least)) < 0 {
		free := s.Body.Width.Sub(s.Armhole.Inset.Mul(2)).Sub(g.Width(2 * least))
		if free.Sign() <= 0 {
			return Widths{}, nil, fitError("armhole.inset", s.Armhole.Inset, fmt.Sprintf("the body of %v leaves no shoulders", s.Body.Width))
		}
		return Widths{}, nil, fitError("neck.width", s.Neck.Width, fmt.Sprintf("wider than the body leaves: at most %s", floorCentimetres(free)))
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
		return Widths{}, nil, fitError("body.width", s.Body.Width, "too few stitches for a neck and two shoulders")
	}
	w.Neck, w.Shoulder = rounded[0].Whole, rounded[1].Whole+w.Seam
	if len(rounded) > 2 {
		w.Inset = rounded[2].Whole
	}
	w.BindOff = min(g.Stitches(s.Armhole.BindOff.Or(defaultBindOff())).Round(gauge.Rounding{}), w.Inset)
	if w.BindOff == 0 && w.Inset > 0 && !s.Armhole.BindOff.IsZero() && s.Armhole.BindOff.Or(gauge.Length{}).Sign() > 0 {
		w.BindOff = 1
	}
	w.Flat = w.flat(s, g)
	return w, rounded, nil
}

// flat returns the stitches in the middle of the neck: a third of a round one if
// left open, with the parity of the neck, and no fewer than parity asks for.
func (w Widths) flat(s Spec, g gauge.Gauge) int {
	want := g.Stitches(s.Neck.Flat.Or(s.Neck.Width))
	if s.Neck.Flat.IsZero() {
		want = g.Stitches(s.Neck.Width).Over(3)
	}
	flat := want.Round(gauge.SameParity(w.Neck, gauge.Nearest))
	return min(max(flat, w.Neck&1), w.Neck)
}

// groups returns the shoulder's groups from tip to neck.
func (w Widths) groups(s Spec, h Heights) ([]int, error) {
	groups, err := shaping.ShoulderGroups(w.Shoulder, h.Drop)
	if err != nil {
		return nil, &Error{Field: "shoulder.drop", Given: s.Shoulder.Drop.String(), Want: err.Error(), Err: ErrFit}
	}
	return groups, nil
}

// defaultBindOff is what is bound off at an underarm: about 2.5 cm. Common
// practice, no source.
func defaultBindOff() gauge.Length { return gauge.MustParseLength("2.5 cm") }

// floorCentimetres returns the length in centimetres, rounded down to a millimetre.
func floorCentimetres(l gauge.Length) string {
	return gauge.Centimetres(l.Centimetres().RoundFloor(1)).Format(gauge.Centimetre, 1)
}
