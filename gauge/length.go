package gauge

import "github.com/shopspring/decimal"

// Unit is a unit of length. The zero value is the centimetre.
type Unit uint8

// The units.
const (
	Centimetre Unit = iota
	Millimetre
	Inch // 25.4 mm exactly
)

var unitWords = [...]string{Centimetre: "cm", Millimetre: "mm", Inch: "in"}

var millimetresIn = [...]decimal.Decimal{
	Centimetre: decimal.New(10, 0), Millimetre: decimal.New(1, 0), Inch: decimal.New(254, -1),
}

// String returns "cm", "mm" or "in".
func (u Unit) String() string {
	if int(u) < len(unitWords) {
		return unitWords[u]
	}
	return "no unit"
}

// MarshalText returns the text of [Unit.String]; it returns an error for any other value.
func (u Unit) MarshalText() ([]byte, error) {
	if int(u) >= len(unitWords) {
		return nil, &Error{Field: "unit", Given: u.String(), Want: "cm, mm or in", Err: ErrUnit}
	}
	return []byte(u.String()), nil
}

// UnmarshalText reads "cm", "mm" or "in" and leaves u as it was on an error.
func (u *Unit) UnmarshalText(text []byte) error {
	for v, word := range unitWords {
		if word == string(text) {
			*u = Unit(v)
			return nil
		}
	}
	return &Error{Field: "unit", Given: quoted(string(text)), Want: "cm, mm or in", Err: ErrUnit}
}

// Length is an exact length, a decimal number of millimetres. It is immutable
// and safe for concurrent use; the zero value is no length. Lengths cannot be
// compared with == or used as map keys: use [Length.Equal] and [Length.Cmp].
type Length struct {
	_  [0]func()
	mm decimal.Decimal
}

// Millimetres returns a length of d millimetres. A number with an exponent beyond 1000 on
// either side, which nobody measures, is held there: it stays too long for everything that
// asks for a length, and what is finer is left out.
func Millimetres(d decimal.Decimal) Length { return Length{mm: held(d)} }

// Centimetres returns a length of d centimetres.
func Centimetres(d decimal.Decimal) Length { return in(d, Centimetre) }

// Inches returns a length of d inches of 25.4 mm.
func Inches(d decimal.Decimal) Length { return in(d, Inch) }

func in(d decimal.Decimal, u Unit) Length { return Millimetres(held(d).Mul(millimetresIn[u])) }

// held returns a number that can be computed with at once: comparing numbers writes out the
// zeros that an exponent stands for.
func held(d decimal.Decimal) decimal.Decimal {
	switch exponent := d.Exponent(); {
	case exponent > mostExponent:
		return decimal.NewFromBigInt(d.Coefficient(), mostExponent)
	case exponent >= -mostExponent:
		return d
	case int64(exponent)+int64(d.NumDigits()) <= -int64(mostExponent): // nothing of it is left
		return decimal.Decimal{}
	}
	return d.Truncate(mostExponent)
}

const mostExponent int32 = 1000

// Millimetres returns the length in millimetres, exactly.
func (l Length) Millimetres() decimal.Decimal { return l.mm }

// Centimetres returns the length in centimetres, exactly.
func (l Length) Centimetres() decimal.Decimal { return l.mm.Shift(-1) }

// Add returns l + m.
func (l Length) Add(m Length) Length { return Length{mm: l.mm.Add(m.mm)} }

// Sub returns l - m.
func (l Length) Sub(m Length) Length { return Length{mm: l.mm.Sub(m.mm)} }

// Mul returns n times l.
func (l Length) Mul(n int) Length { return Length{mm: l.mm.Mul(decimal.NewFromInt(int64(n)))} }

// Neg returns -l.
func (l Length) Neg() Length { return Length{mm: l.mm.Neg()} }

// Abs returns the length without its sign.
func (l Length) Abs() Length { return Length{mm: l.mm.Abs()} }

// Cmp returns -1, 0 or 1 as l is shorter than, equal to or longer than m.
func (l Length) Cmp(m Length) int { return l.mm.Cmp(m.mm) }

// Equal reports whether both are the same length, whatever units they were read in.
func (l Length) Equal(m Length) bool { return l.mm.Equal(m.mm) }

// IsZero reports whether l is no length.
func (l Length) IsZero() bool { return l.mm.IsZero() }

// Sign returns -1, 0 or 1.
func (l Length) Sign() int { return l.mm.Sign() }
