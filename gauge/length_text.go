package gauge

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// The bounds of texts and of lengths that are read.
const (
	longestText     = 40
	longestFraction = 4 // digits of a denominator

	// Decimals of a length in any unit with which its text is never too long:
	// "-99999." and " cm" leave 30, and inches make two more of them.
	surePlaces = 28
)

var longest = decimal.New(1, 6) // 1000 m in millimetres

// ParseLength reads a length with its unit, which may not be left out: mm, cm or
// in, with or without a space before it. The number is a decimal ("23.5 cm"), a
// fraction ("3/4 in") or a mixed fraction ("9 1/4 in"), with an ASCII minus in front
// or without, which holds for all of it: "-9 1/4 in" is -9.25 in. A fraction may be more than
// 1, "1 3/2 in" is 2.5 in, but must have an exact decimal value, as halves, quarters and
// eighths have. "-0 cm" is 0, as "0 cm" is. It returns a [*ParseError]
//
//   - that wraps [ErrUnit] if the unit is missing or unknown;
//   - that wraps [ErrSyntax] if the number does not read, a decimal comma included;
//   - that wraps [ErrRange] if the length is longer than 1000 m, or has more decimals
//     than fit into 40 characters in centimetres, which 28 decimals always do.
//
// The texts that [Length.String] makes of the lengths returned read as the same lengths.
func ParseLength(s string) (Length, error) {
	fail := func(problem, try string, kind error) (Length, error) {
		return Length{}, &ParseError{Input: s, Problem: problem, Try: try, Err: kind}
	}
	const example = "23.5 cm, 235 mm or 9 1/4 in"
	if len(s) > longestText {
		return fail(fmt.Sprintf("longer than %d characters", longestText), example, ErrSyntax)
	}
	number, unit, ok := cutUnit(s)
	plain := strings.TrimPrefix(number, "-")
	pointed := strings.ReplaceAll(s, ",", ".")
	withUnits := fmt.Sprintf("%[1]s cm, %[1]s mm or %[1]s in", pointed)
	switch {
	case pointed != s && isNumber(strings.ReplaceAll(plain, ",", ".")):
		// Only what reads then is proposed, and so repeated as it is.
		if !ok {
			pointed = withUnits
		}
		return fail(`write the decimal point as "."`, pointed, ErrSyntax)
	case !ok && isNumber(plain):
		return fail("the unit is missing", withUnits, ErrUnit)
	case !ok && startsWithDigit(s):
		return fail("the unit is not mm, cm or in", example, ErrUnit)
	case !ok || !isNumber(plain):
		return fail("not a number with a unit", example, ErrSyntax)
	}
	value, exact := numberValue(plain)
	if !exact {
		return fail("this fraction has no exact decimal value", "halves, quarters, eighths, fifths or tenths, or a decimal such as 0.333 in", ErrSyntax)
	}
	if len(number) > len(plain) {
		value = value.Neg()
	}
	l := in(value, unit)
	if l.mm.Abs().Cmp(longest) > 0 {
		return fail("too long", "at most 1000 m", ErrRange)
	}
	if len(l.String()) > longestText {
		return fail("too many decimals", fmt.Sprintf("at most %d", surePlaces), ErrRange)
	}
	return l, nil
}

// MustParseLength is [ParseLength] for literals; it panics on an error.
func MustParseLength(s string) Length {
	l, err := ParseLength(s)
	if err != nil {
		panic(err)
	}
	return l
}

func cutUnit(s string) (number string, u Unit, ok bool) {
	for v, word := range unitWords {
		if number, ok = strings.CutSuffix(s, word); ok {
			return strings.TrimSuffix(number, " "), Unit(v), true
		}
	}
	return s, 0, false
}

func startsWithDigit(s string) bool {
	s = strings.TrimPrefix(s, "-")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}

// isNumber reports whether s is "12", "12.5", "3/4" or "9 1/4".
func isNumber(s string) bool {
	if whole, fraction, mixed := strings.Cut(s, " "); mixed {
		return isDigits(whole) && isFraction(fraction)
	}
	if isFraction(s) {
		return true
	}
	whole, part, hasPoint := strings.Cut(s, ".")
	return isDigits(whole) && (!hasPoint || isDigits(part))
}

func isFraction(s string) bool {
	top, bottom, ok := strings.Cut(s, "/")
	return ok && isDigits(top) && isDigits(bottom) && len(bottom) <= longestFraction && strings.Trim(bottom, "0") != ""
}

func isDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// numberValue returns the value of a text that is a number; exact is false if
// it is a fraction without an exact decimal value.
func numberValue(s string) (value decimal.Decimal, exact bool) {
	whole, fraction, mixed := strings.Cut(s, " ")
	if !mixed {
		whole, fraction = "0", s
		if !strings.Contains(s, "/") {
			return decimal.RequireFromString(s), true
		}
	}
	top, bottom, _ := strings.Cut(fraction, "/")
	// A denominator of four digits divides 10^13 if it has no other prime
	// factors than 2 and 5: 2^13 = 8192 is the largest power of two.
	const places = 13
	numerator, denominator := decimal.RequireFromString(top), decimal.RequireFromString(bottom)
	quotient, rest := numerator.QuoRem(denominator, places)
	return decimal.RequireFromString(whole).Add(quotient), rest.IsZero()
}

// String returns the length in centimetres without loss, such as "23.495 cm".
// [ParseLength] reads it back if it has at most 40 characters and is no longer than
// 1000 m, as every length is that was read.
func (l Length) String() string { return plainDecimal(l.Centimetres()) + " cm" }

// plainDecimal returns d without an exponent and without zeros at its end,
// whatever the settings of the decimal package are.
func plainDecimal(d decimal.Decimal) string {
	places := max(-d.Exponent(), 0)
	text := d.StringFixed(places)
	if places > 0 {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// Format returns the length for people: in the unit, rounded to that many
// places, ties away from zero, such as "9.25 in".
func (l Length) Format(u Unit, places int) string {
	if int(u) >= len(unitWords) {
		u = Centimetre
	}
	places = min(max(places, 0), 9)
	return l.mm.DivRound(millimetresIn[u], int32(places)).StringFixed(int32(places)) + " " + u.String()
}

// GoString returns a Go expression for l.
func (l Length) GoString() string { return fmt.Sprintf("gauge.MustParseLength(%q)", l.String()) }

// AppendText appends the text of [Length.String].
func (l Length) AppendText(b []byte) ([]byte, error) { return append(b, l.String()...), nil }

// MarshalText returns the text of [Length.String].
func (l Length) MarshalText() ([]byte, error) { return l.AppendText(nil) }

// UnmarshalText is [ParseLength]; it leaves l as it was on an error.
func (l *Length) UnmarshalText(text []byte) error { return l.Set(string(text)) }

// Set is [ParseLength], for package flag; it leaves l as it was on an error.
func (l *Length) Set(s string) error {
	parsed, err := ParseLength(s)
	if err == nil {
		*l = parsed
	}
	return err
}
