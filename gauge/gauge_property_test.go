package gauge_test

import (
	"strconv"
	"testing"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// drawGauge draws a gauge over 1 to 20 cm or inches with counts of up to two places.
func drawGauge(t *rapid.T) gauge.Gauge {
	over := gauge.Centimetres
	if rapid.Bool().Draw(t, "inches") {
		over = gauge.Inches
	}
	l := over(decimal.New(rapid.Int64Range(10, 200).Draw(t, "over"), -1))
	count := func(most int64, name string) decimal.Decimal {
		// Per 10 cm, hundredths, brought to the length and rounded up to hundredths.
		per := decimal.New(rapid.Int64Range(100, most*99).Draw(t, name), -2)
		return per.Mul(l.Centimetres()).Shift(-1).RoundUp(2)
	}
	g, err := gauge.New(count(200, "stitches"), count(300, "rows"), l)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestWidthAndStitchesAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGauge(t)
		n := rapid.IntRange(-100_000, 100_000).Draw(t, "n")
		if got := g.Stitches(g.Width(n)).Round(gauge.Rounding{}); got != n {
			t.Fatalf("%v: %d stitches are %v, which are %d", g, n, g.Width(n), got)
		}
		if got := g.Rows(g.Height(n)).Round(gauge.Rounding{}); got != n {
			t.Fatalf("%v: %d rows are %v, which are %d", g, n, g.Height(n), got)
		}
	})
}

// The same lengths written in cm, mm and inches give the same counts.
func TestUnitsDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inches := decimal.New(rapid.Int64Range(-40_000, 40_000).Draw(t, "hundredths of an inch"), -2)
		a := gauge.Inches(inches)
		b := gauge.Centimetres(inches.Mul(number("2.54")))
		c := length(a.Millimetres().String() + " mm")
		if !a.Equal(b) || !a.Equal(c) || a.String() != b.String() {
			t.Fatalf("%v, %v and %v differ", a, b, c)
		}
		stitches := decimal.New(rapid.Int64Range(100, 5000).Draw(t, "stitches"), -2)
		g, err := gauge.New(stitches, stitches, gauge.Inches(number("4")))
		h, err2 := gauge.New(stitches, stitches, length("101.6 mm"))
		if (err == nil) != (err2 == nil) {
			t.Fatal(err, err2)
		}
		if !g.Equal(h) || !g.Stitches(a).Equal(h.Stitches(b)) || !g.Rows(a).Equal(h.Rows(c)) {
			t.Fatalf("%v and %v differ for %v", g, h, a)
		}
	})
}

// What is read is written so that it reads as the same length, however many digits
// there are; with up to 28 decimals everything up to 1000 m is read.
func TestLengthTextsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		digits := rapid.StringOfN(rapid.RuneFrom([]rune("0123456789")), 0, 34, -1).Draw(t, "decimals")
		text := rapid.SampledFrom([]string{"", "-"}).Draw(t, "sign") + strconv.Itoa(rapid.IntRange(0, 39_369).Draw(t, "whole"))
		if digits != "" {
			text += "." + digits
		}
		text += rapid.SampledFrom([]string{"cm", " cm", "mm", " mm", "in", " in"}).Draw(t, "unit")
		l, err := gauge.ParseLength(text)
		if err != nil {
			if len(text) <= 40 && len(digits) <= 28 {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		if back, err := gauge.ParseLength(l.String()); err != nil || !back.Equal(l) {
			t.Fatalf("%q: %v came back as %v, %v", text, l, back, err)
		}
	})
}
