package garment

import (
	"fmt"
	"unicode/utf8"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// MaxTitle is the greatest length of a title in characters.
const MaxTitle = 200

const (
	mostNeedles = shaping.MaxNeedle // of a bed, on both sides
	mostSeam    = 10
)

// check refuses what is out of range or contradicts itself in what all pieces share.
func check(s Spec) error {
	if len([]rune(s.Title)) > MaxTitle {
		return &Error{Field: "title", Given: quoted(s.Title), Want: fmt.Sprintf("at most %d characters", MaxTitle), Err: ErrSpec}
	}
	if _, err := s.Units.MarshalText(); err != nil {
		return &Error{Field: "units", Given: fmt.Sprint(uint8(s.Units)), Want: "centimetres, millimetres or inches", Err: ErrSpec}
	}
	if !utf8.ValidString(s.Title) {
		return &Error{Field: "title", Given: quoted(s.Title), Want: "a text in UTF-8", Err: ErrSpec}
	}
	for _, l := range []struct {
		field    string
		length   gauge.Length
		required bool
	}{
		{"body.width", s.Body.Width, true},
		{"body.length", s.Body.Length, true},
		{"armhole.depth", s.Armhole.Depth, true},
		{"neck.width", s.Neck.Width, true},
		{"neck.depth", s.Neck.Depth, true},
		{"shoulder.drop", s.Shoulder.Drop, false},
		{"armhole.inset", s.Armhole.Inset, false},
		{"armhole.bindOff", s.Armhole.BindOff.Or(gauge.Length{}), false},
		{"armhole.curve", s.Armhole.Curve.Or(s.Armhole.Depth), true},
		{"neck.flat", s.Neck.Flat.Or(gauge.Length{}), false},
		{"start.band", s.Start.Band, false},
		{"body.hem", s.Body.Hem, false},
		{"head", s.Head, false},
		{"hand", s.Hand, false},
	} {
		if err := s.checkLength(l.field, l.length, l.required); err != nil {
			return err
		}
	}
	if s.Seam.Stitches < 0 || s.Seam.Stitches > mostSeam {
		return &Error{Field: "seam.stitches", Given: fmt.Sprint(s.Seam.Stitches), Want: fmt.Sprintf("0 to %d", mostSeam), Err: ErrSpec}
	}
	if err := checkSetup(s.Setup); err != nil {
		return err
	}
	if err := s.checkChecks(); err != nil {
		return err
	}
	if err := s.checkYarn(); err != nil {
		return err
	}
	if err := checkMethods(s.Methods); err != nil {
		return err
	}
	if err := s.checkBand(); err != nil {
		return err
	}
	if !s.Start.Edge.IsValid() {
		return &Error{Field: "start.edge", Given: s.Start.Edge.String(), Want: "waste or closed", Err: ErrSpec}
	}
	if err := checkTogether(s); err != nil {
		return err
	}
	if err := checkOpening(s); err != nil {
		return err
	}
	if err := checkWaist(s); err != nil {
		return err
	}
	if !s.Neck.Shape.IsValid() {
		return &Error{Field: "neck.shape", Given: s.Neck.Shape.String(), Want: "round, vee, square or path", Err: ErrSpec}
	}
	return checkPaths(s)
}

// farthest is how far from the decimal point the last digit of a number may lie.
const farthest = 1000

// longestLength is the greatest length in a spec.
func longestLength() gauge.Length { return gauge.MustParseLength("1000 cm") }

func (s Spec) checkLength(field string, l gauge.Length, required bool) error {
	longest := longestLength()
	switch exponent := l.Millimetres().Exponent(); {
	case exponent < -farthest || exponent > farthest: // it would be long to write out
		return &Error{Field: field, Want: "too many digits", Err: ErrSpec}
	case required && l.Sign() <= 0:
		return &Error{Field: field, Given: short(s.text(l)), Want: "a length above 0 is needed", Err: ErrSpec}
	case l.Sign() < 0:
		return &Error{Field: field, Given: short(s.text(l)), Want: "0 or a length above it is needed", Err: ErrSpec}
	case l.Cmp(longest) > 0:
		return &Error{Field: field, Given: short(s.text(l)), Want: "at most " + s.limit(longest), Err: ErrSpec}
	}
	return nil
}

// checkTogether refuses lengths that contradict one another before any is rounded.
func checkTogether(s Spec) error {
	if by := s.Methods.Armhole; !by.IsZero() && !tied(by.Several) && s.Armhole.BindOff.Or(gauge.Length{}).Sign() > 0 {
		return s.fitError("armhole.bindOff", s.Armhole.BindOff.Or(gauge.Length{}), "methods.armhole has decreases only: leave it out, or name bindOff or hold for several stitches")
	}
	if s.Armhole.Inset.IsZero() && s.Armhole.BindOff.Or(gauge.Length{}).Sign() > 0 {
		return s.fitError("armhole.bindOff", s.Armhole.BindOff.Or(gauge.Length{}), "without an inset nothing is taken off: leave it out, or give armhole.inset")
	}
	if s.Armhole.BindOff.Or(gauge.Length{}).Cmp(s.Armhole.Inset) > 0 {
		return s.fitError("armhole.bindOff", s.Armhole.BindOff.Or(gauge.Length{}), "more than the inset: at most "+s.limit(s.Armhole.Inset))
	}
	if curve := s.Armhole.Curve.Or(s.Armhole.Depth); curve.Cmp(s.Armhole.Depth) > 0 {
		return s.fitError("armhole.curve", curve, "higher than the armhole: at most "+s.limit(s.Armhole.Depth))
	}
	if s.Start.Band.Cmp(s.Body.Length) > 0 {
		return s.fitError("start.band", s.Start.Band, "higher than the body up to the underarm: at most "+s.limit(s.Body.Length))
	}
	if s.Neck.Flat.Or(gauge.Length{}).Cmp(s.Neck.Width) > 0 {
		return s.fitError("neck.flat", s.Neck.Flat.Or(gauge.Length{}), "wider than the neck: at most "+s.limit(s.Neck.Width))
	}
	return nil
}

// checkWaist refuses a waist that is out of range, in the band or above the underarm.
func checkWaist(s Spec) error {
	waist := s.Body.Waist
	if waist == nil {
		return nil
	}
	if err := s.checkLength("body.waist.width", waist.Width, true); err != nil {
		return err
	}
	if err := s.checkLength("body.waist.height", waist.Height, true); err != nil {
		return err
	}
	switch {
	case s.Start.Band.Cmp(s.Body.Length) >= 0:
		return s.fitError("body.waist.height", waist.Height, "the band takes the whole body: leave body.waist out, or lower start.band")
	case waist.Height.Cmp(s.Start.Band) < 0:
		return s.fitError("body.waist.height", waist.Height, "within the band: at least "+s.floor(s.Start.Band))
	case waist.Height.Cmp(s.Body.Length) > 0:
		return s.fitError("body.waist.height", waist.Height, "above the underarm: at most "+s.limit(s.Body.Length))
	}
	return nil
}

// checkSetup refuses a place that there is not and a carriage where there is none.
func checkSetup(p Setup) error {
	refuse := func(field, given, want string) error {
		return &Error{Field: field, Given: given, Want: want, Err: ErrSpec}
	}
	switch n := p.Needles; {
	case p.On != 0 && !p.On.IsValid():
		return refuse("work.on", p.On.String(), "bed or hand")
	case n != 0 && (n < 2 || n > mostNeedles || n%2 != 0):
		return refuse("work.needles", fmt.Sprint(n), fmt.Sprintf("an even number from 2 to %d", mostNeedles))
	case p.Carriage != 0 && !p.Carriage.IsValid():
		return refuse("work.carriage", p.Carriage.String(), "left or right")
	case p.Carriage == shaping.Left && p.On == shaping.Hand:
		return refuse("work.carriage", p.Carriage.String(), "in the hand row 1 starts at the right: leave it out")
	}
	return nil
}
