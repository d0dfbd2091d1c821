package gauge_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/walewise/gauge"
)

func TestParseLengthAccepts(t *testing.T) {
	for _, c := range []struct{ text, millimetres, why string }{
		{"235 mm", "235", "millimetres"},
		{"235mm", "235", "no space"},
		{"23.5 cm", "235", "centimetres"},
		{"23.5cm", "235", "no space"},
		{"1 in", "25.4", "international inch, 1959"},
		{"9.25 in", "234.95", "decimal inches"},
		{"9 1/4 in", "234.95", "mixed fraction"},
		{"9 1/4in", "234.95", "mixed fraction, no space"},
		{"3/4 in", "19.05", "fraction"},
		{"5/8 cm", "6.25", "a fraction of a centimetre"},
		{"3/6 in", "12.7", "not in lowest terms, but exact"},
		{"1/8192 in", "0.0031005859375", "the largest power of two in four digits"},
		{"1/3125 mm", "0.00032", "a power of five"},
		{"6/4 in", "38.1", "more than one"},
		{"0/4 in", "0", "nothing"},
		{"-23.5 cm", "-235", "minus"},
		{"-9 1/4 in", "-234.95", "the minus holds for all of a mixed fraction"},
		{"-0 cm", "0", "there is one zero"},
		{"007.50 cm", "75", "zeros around"},
		{"0.0000001 mm", "0.0000001", "small"},
		{"1000000 mm", "1000000", "1000 m exactly"},
		{"-100000 cm", "-1000000", "1000 m exactly"},
		{"-39370." + zeros(27) + "1in", "-999998." + zeros(26) + "254", "28 decimals, before them as much as can be"},
		{"0." + zeros(34) + "1 cm", "0." + zeros(33) + "1", "40 characters that stay 40"},
		{"1." + zeros(35) + " in", "25.4", "zeros at the end do not count"},
	} {
		l, err := gauge.ParseLength(c.text)
		if err != nil || !l.Millimetres().Equal(number(c.millimetres)) {
			t.Errorf("%q (%s): got %v mm, %v; want %s mm", c.text, c.why, l.Millimetres(), err, c.millimetres)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	syntax, unit, tooFar := gauge.ErrSyntax, gauge.ErrUnit, gauge.ErrRange
	for _, c := range []struct {
		text string
		kind error
		why  string
	}{
		{"23,5 cm", syntax, "decimal comma"},
		{"23,5", syntax, "decimal comma, no unit"},
		{"1.234,5 cm", syntax, "comma and point"},
		{"1,234,5 cm", syntax, "two commas"},
		{"\x1b[1m2,5 cm", syntax, "a comma among control characters"},
		{"23.5", unit, "no unit"},
		{"-23.5", unit, "no unit"},
		{"9 1/4", unit, "no unit"},
		{"23.5 m", unit, "metres"},
		{"23.5 CM", unit, "capitals"},
		{"9\"", unit, "inch mark"},
		{"23.5 cm ", unit, "space after"},
		{"23.5 cm\n", unit, "line end after"},
		{"23.5 cm\x00", unit, "control character after"},
		{" 23.5 cm", syntax, "space before"},
		{"23.5\tcm", syntax, "tab"},
		{"23.5  cm", syntax, "two spaces"},
		{"23.5\u00a0cm", syntax, "no-break space"},
		{"23\x00.5 cm", syntax, "control character inside"},
		{"- 5 cm", syntax, "space after the minus"},
		{"--5 cm", syntax, "two minuses"},
		{"+5 cm", syntax, "plus"},
		{"\u22125 cm", syntax, "U+2212 is no ASCII minus"},
		{"NaN cm", syntax, "not a number"},
		{"Inf cm", syntax, "infinity"},
		{"-Inf in", syntax, "infinity"},
		{"1e9 cm", syntax, "exponent"},
		{"1e3 cm", syntax, "exponent"},
		{"1E3 cm", syntax, "exponent"},
		{"1e999999999 cm", syntax, "exponent"},
		{"1e9", unit, "exponent, no unit"},
		{"0x10 cm", syntax, "hexadecimal"},
		{"1_000 cm", syntax, "underscore"},
		{"10 000 cm", syntax, "space among digits"},
		{"\u0661\u0662 cm", syntax, "Arabic digits"},
		{"\uff11\uff12 cm", syntax, "wide digits"},
		{"\u00bd in", syntax, "the character for a half"},
		{".5 cm", syntax, "no digit before the point"},
		{"5. cm", syntax, "no digit after the point"},
		{"1.2.3 cm", syntax, "two points"},
		{"1/3 in", syntax, "no exact decimal"},
		{"9 2/3 in", syntax, "no exact decimal"},
		{"1/9999 in", syntax, "no exact decimal"},
		{"1/0 in", syntax, "division by zero"},
		{"1/0000 in", syntax, "division by zero"},
		{"1/16384 in", syntax, "five digits below"},
		{"1/2/2 in", syntax, "two bars"},
		{"1.5/2 in", syntax, "point in a fraction"},
		{"1/-2 in", syntax, "minus in a fraction"},
		{"9-1/4 in", syntax, "hyphen in a mixed fraction"},
		{"", syntax, "empty"},
		{" ", syntax, "blank"},
		{"cm", syntax, "a unit alone"},
		{"-cm", syntax, "no digits"},
		{"long", syntax, "a word"},
		{strings.Repeat("1", 38) + " cm", syntax, "41 characters"},
		{strings.Repeat("9", 1_000_000) + " cm", syntax, "a million digits"},
		{"1000000.1 mm", tooFar, "more than 1000 m"},
		{"-100000.1 cm", tooFar, "more than 1000 m"},
		{"39370.1 in", tooFar, "more than 1000 m"},
		{strings.Repeat("9", 37) + " cm", tooFar, "40 characters are read"},
		{"0." + zeros(34) + "1 in", tooFar, "40 characters that would be 42 in centimetres"},
		{"0." + zeros(34) + "1 mm", tooFar, "40 characters that would be 41 in centimetres"},
		{"-39370." + zeros(28) + "1in", tooFar, "29 decimals, before them as much as can be"},
	} {
		l, err := gauge.ParseLength(c.text)
		if !errors.Is(err, c.kind) || !l.IsZero() {
			t.Errorf("%.50q (%s): got %v, %v; want %q", c.text, c.why, l, err, c.kind)
			continue
		}
		var p *gauge.ParseError
		if !errors.As(err, &p) || p.Input != c.text {
			t.Errorf("%.50q (%s): %T does not hold the input", c.text, c.why, err)
		}
		for _, r := range err.Error() {
			if r < ' ' || r == 0x7f {
				t.Errorf("%.50q (%s): control character in %q", c.text, c.why, err)
			}
		}
		if len(err.Error()) > 300 {
			t.Errorf("%.50q (%s): message of %d bytes", c.text, c.why, len(err.Error()))
		}
	}
}

func TestParseLengthMessages(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"23,5 cm", `length "23,5 cm": write the decimal point as ".": 23.5 cm`},
		{"-9,25in", `length "-9,25in": write the decimal point as ".": -9.25in`},
		{"23,5", `length "23,5": write the decimal point as ".": 23.5 cm, 23.5 mm or 23.5 in`},
		{"23.5", `length "23.5": the unit is missing: 23.5 cm, 23.5 mm or 23.5 in`},
		{"9", `length "9": the unit is missing: 9 cm, 9 mm or 9 in`},
		{"0", `length "0": the unit is missing: 0 cm, 0 mm or 0 in`},
		{"9 1/4", `length "9 1/4": the unit is missing: 9 1/4 cm, 9 1/4 mm or 9 1/4 in`},
		{"23 m", `length "23 m": the unit is not mm, cm or in: 23.5 cm, 235 mm or 9 1/4 in`},
		{"1/3 in", `length "1/3 in": this fraction has no exact decimal value: halves, quarters, eighths, fifths or tenths, or a decimal such as 0.333 in`},
		{"x\x1b[2J cm", `length "x\x1b[2J cm": not a number with a unit: 23.5 cm, 235 mm or 9 1/4 in`},
		{"1000.1 m", `length "1000.1 m": the unit is not mm, cm or in: 23.5 cm, 235 mm or 9 1/4 in`},
		{"0." + zeros(34) + "1 in", `length "0.00000000000000000000000000000000001 in": too many decimals: at most 28`},
		{"100001 cm", `length "100001 cm": too long: at most 1000 m`},
	} {
		if _, err := gauge.ParseLength(c.text); err == nil || err.Error() != c.want {
			t.Errorf("%q:\n got %v\nwant %s", c.text, err, c.want)
		}
	}
}

func TestMustParseLengthPanics(t *testing.T) {
	defer func() {
		if err, ok := recover().(error); !ok || !errors.Is(err, gauge.ErrUnit) {
			t.Errorf("got %v, want a panic with ErrUnit", err)
		}
	}()
	gauge.MustParseLength("5")
}

func zeros(n int) string { return strings.Repeat("0", n) }
