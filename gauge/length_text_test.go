package gauge_test

import (
	"encoding/json"
	"errors"
	"flag"
	"io"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

func TestLengthString(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"9 1/4 in", "23.495 cm"}, {"235 mm", "23.5 cm"}, {"0 in", "0 cm"}, {"-0 cm", "0 cm"},
		{"-0.5 cm", "-0.5 cm"}, {"1200 cm", "1200 cm"}, {"10.00 cm", "10 cm"}, {"4 in", "10.16 cm"},
		{"0.001 mm", "0.0001 cm"},
	} {
		l := length(c.text)
		if l.String() != c.want || !length(l.String()).Equal(l) {
			t.Errorf("%s: got %v, want %s", c.text, l, c.want)
		}
		if want := `gauge.MustParseLength("` + c.want + `")`; l.GoString() != want {
			t.Errorf("%s: got %#v, want %s", c.text, l, want)
		}
		var back struct{ L gauge.Length }
		text, err := json.Marshal(struct{ L gauge.Length }{l})
		if err == nil {
			err = json.Unmarshal(text, &back)
		}
		if err != nil || !back.L.Equal(l) || string(text) != `{"L":"`+c.want+`"}` {
			t.Errorf("%s: JSON %s came back as %v, %v", c.text, text, back.L, err)
		}
	}
}

func TestLengthUnmarshalKeepsValueOnError(t *testing.T) {
	for _, text := range []string{`"5"`, `"5,5 cm"`, `5`, `""`, `{}`} {
		l := length("7 cm")
		if err := json.Unmarshal([]byte(text), &l); err == nil || !l.Equal(length("7 cm")) {
			t.Errorf("%s: got %v, %v", text, l, err)
		}
	}
}

func TestLengthIsAFlag(t *testing.T) {
	l := length("7 cm")
	flags := flag.NewFlagSet("knit", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.Var(&l, "width", "the finished width")
	if err := flags.Parse([]string{"-width", "9 1/4 in"}); err != nil || !l.Equal(length("23.495 cm")) {
		t.Errorf("got %v, %v", l, err)
	}
	if err := flags.Parse([]string{"-width", "9,25 in"}); err == nil || !l.Equal(length("23.495 cm")) {
		t.Errorf("after a text that does not read: got %v, %v", l, err)
	}
	if err := l.Set("9"); !errors.Is(err, gauge.ErrUnit) || !l.Equal(length("23.495 cm")) {
		t.Errorf("Set: got %v, %v", l, err)
	}
}

func TestLengthFormat(t *testing.T) {
	for _, c := range []struct {
		text   string
		unit   gauge.Unit
		places int
		want   string
	}{
		{"9 1/4 in", gauge.Inch, 2, "9.25 in"},
		{"9 1/4 in", gauge.Inch, 1, "9.3 in"},
		{"-9 1/4 in", gauge.Inch, 1, "-9.3 in"},
		{"9 1/4 in", gauge.Centimetre, 1, "23.5 cm"},
		{"9 1/4 in", gauge.Millimetre, 0, "235 mm"},
		{"10 cm", gauge.Inch, 3, "3.937 in"},
		{"10 cm", gauge.Centimetre, 1, "10.0 cm"},
		{"0.4 mm", gauge.Centimetre, 1, "0.0 cm"},
		{"-0.4 mm", gauge.Centimetre, 1, "0.0 cm"},
		{"-0.1 mm", gauge.Inch, 0, "0 in"},
		{"0.5 mm", gauge.Centimetre, 1, "0.1 cm"},
		{"-0.5 mm", gauge.Centimetre, 1, "-0.1 cm"},
		{"5 cm", gauge.Centimetre, -3, "5 cm"},
		{"5 cm", gauge.Centimetre, 100, "5.000000000 cm"},
		{"5 cm", gauge.Unit(9), 0, "5 cm"},
		{"5 cm", gauge.Inch + 1, 0, "5 cm"},
	} {
		if got := length(c.text).Format(c.unit, c.places); got != c.want {
			t.Errorf("%s in %v with %d places: got %q, want %q", c.text, c.unit, c.places, got, c.want)
		}
	}
}

func TestUnitText(t *testing.T) {
	for unit, want := range map[gauge.Unit]string{gauge.Centimetre: "cm", gauge.Millimetre: "mm", gauge.Inch: "in"} {
		text, err := unit.MarshalText()
		back := gauge.Unit(9)
		if err != nil || string(text) != want || unit.String() != want || back.UnmarshalText(text) != nil || back != unit {
			t.Errorf("%s: got %q, %v; back %v", want, text, err, back)
		}
	}
	if text, err := gauge.Unit(3).MarshalText(); !errors.Is(err, gauge.ErrUnit) || gauge.Unit(3).String() != "no unit" {
		t.Errorf("unknown unit: got %q, %v", text, err)
	}
	unit := gauge.Inch
	for _, text := range []string{"", "CM", "m", "inch", " cm"} {
		if err := unit.UnmarshalText([]byte(text)); !errors.Is(err, gauge.ErrUnit) || unit != gauge.Inch {
			t.Errorf("%q: got %v, %v", text, unit, err)
		}
	}
}

func TestLengthArithmetic(t *testing.T) {
	a, b := length("9 1/4 in"), length("10 cm")
	for _, c := range []struct {
		name      string
		got, want gauge.Length
	}{
		{"Add", a.Add(b), length("33.495 cm")},
		{"Sub", b.Sub(a), length("-13.495 cm")},
		{"Mul", a.Mul(-4), length("-37 in")},
		{"Neg", a.Neg(), length("-9.25 in")},
		{"Abs", b.Sub(a).Abs(), length("13.495 cm")},
		{"Millimetres", gauge.Millimetres(number("235")), length("23.5 cm")},
		{"Centimetres", gauge.Centimetres(a.Centimetres()), a},
		{"Inches", gauge.Inches(number("9.25")), a},
	} {
		if !c.got.Equal(c.want) || c.got.Cmp(c.want) != 0 {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
	if a.Cmp(b) != 1 || b.Cmp(a) != -1 || a.Sign() != 1 || a.Neg().Sign() != -1 || a.IsZero() || a.Equal(b) {
		t.Error("9 1/4 in and 10 cm compare wrongly")
	}
}

// A number that nobody measures is held where it can be computed with at once, and stays too
// long, or as short as nothing.
func TestLengthsAreHeld(t *testing.T) {
	for _, make := range []func(decimal.Decimal) gauge.Length{gauge.Millimetres, gauge.Centimetres, gauge.Inches} {
		for _, digits := range []int64{1, -1} {
			long, short := make(decimal.New(digits, 1<<30)), make(decimal.New(digits, -1<<30))
			if long.Abs().Cmp(length("1000000 mm")) <= 0 || long.Sign() != int(digits) || !short.IsZero() {
				t.Errorf("%d with a long exponent: too short, or longer than nothing", digits)
			}
			swatch := gauge.Swatch{Stitches: 20, Width: long, Rows: 30, Height: length("10 cm")}
			if _, err := swatch.Gauge(); field(err) != "width" {
				t.Errorf("a swatch that is too wide: %v", err)
			}
		}
		if got := make(decimal.New(0, 1<<30)); !got.IsZero() {
			t.Errorf("nothing is %v", got)
		}
	}
	fine := number("0." + strings.Repeat("3", 5000))
	if got := gauge.Millimetres(fine).Millimetres(); !got.Equal(fine.Truncate(1000)) {
		t.Errorf("%d places are left of a fine number", -got.Exponent())
	}
}
