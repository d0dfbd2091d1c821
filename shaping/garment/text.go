package garment

import (
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// Lengths in messages are in the spec's unit: whole millimetres, tenths of a centimetre,
// hundredths of an inch. One that is at most or at least something is rounded so that it
// still is.

// atMost returns the length for people, rounded down.
func (s Spec) atMost(l gauge.Length) string { return s.rounded(l, decimal.Decimal.RoundFloor) }

// atLeast returns the length for people, rounded up.
func (s Spec) atLeast(l gauge.Length) string { return s.rounded(l, decimal.Decimal.RoundCeil) }

// nearly returns the length for people, rounded to the nearest.
func (s Spec) nearly(l gauge.Length) string { return s.rounded(l, decimal.Decimal.Round) }

func (s Spec) rounded(l gauge.Length, round func(decimal.Decimal, int32) decimal.Decimal) string {
	switch s.Units {
	case gauge.Inch:
		return gauge.Inches(round(inches(l), 2)).Format(gauge.Inch, 2)
	case gauge.Millimetre:
		return gauge.Millimetres(round(l.Millimetres(), 0)).Format(gauge.Millimetre, 0)
	}
	return gauge.Centimetres(round(l.Centimetres(), 1)).Format(gauge.Centimetre, 1)
}

// fine returns the length to a tenth of a millimetre or a hundredth of an inch.
func (s Spec) fine(l gauge.Length) string {
	switch s.Units {
	case gauge.Millimetre:
		return l.Format(gauge.Millimetre, 1)
	case gauge.Inch:
		return l.Format(gauge.Inch, 2)
	}
	return l.Format(gauge.Centimetre, 2)
}

// text returns the length as it was given, in the spec's unit.
func (s Spec) text(l gauge.Length) string { return s.exact(l, decimal.Decimal.Round) }

// limit returns a length of the spec that another may not exceed.
func (s Spec) limit(l gauge.Length) string { return s.exact(l, decimal.Decimal.RoundFloor) }

// floor returns a length of the spec that another may not fall short of.
func (s Spec) floor(l gauge.Length) string { return s.exact(l, decimal.Decimal.RoundCeil) }

// exact returns the length without rounding, but for inches that were given otherwise.
func (s Spec) exact(l gauge.Length, round func(decimal.Decimal, int32) decimal.Decimal) string {
	switch s.Units {
	case gauge.Inch:
		const thousandths = 3
		return round(inches(l), thousandths).String() + " in"
	case gauge.Millimetre:
		return l.Millimetres().String() + " mm"
	}
	return l.String()
}

// inches returns the length in inches, far finer than any rounding of it.
func inches(l gauge.Length) decimal.Decimal {
	const places = 12
	return l.Millimetres().DivRound(gauge.MustParseLength("1 in").Millimetres(), places)
}

// short returns a text of a length that is not longer than any length is written.
func short(text string) string {
	const longest = 40
	if len(text) > longest {
		return text[:longest] + "..."
	}
	return text
}

// fitError is the error for a length that does not fit the others.
func (s Spec) fitError(field string, given gauge.Length, want string) error {
	return &Error{Field: field, Given: s.text(given), Want: want, Err: ErrFit}
}
