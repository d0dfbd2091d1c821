package main

import (
	"fmt"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// gauge says the swatch.
func (p planned) gauge() string {
	s := p.spec.Swatch
	return fmt.Sprintf("%s in %s, %s in %s", plural.Stitches(s.Stitches), p.length(s.Width), plural.Rows(s.Rows), p.length(s.Height))
}

// length says a length as it was given, in the unit of the example.
func (p planned) length(l gauge.Length) string {
	if p.spec.Units == gauge.Inch {
		const places = 3
		number, unit, _ := strings.Cut(l.Format(gauge.Inch, places), " ")
		return strings.TrimRight(strings.TrimRight(number, "0"), ".") + " " + unit
	}
	return l.String()
}

// rounded says a length that was worked out, in the unit of the example.
func (p planned) rounded(l gauge.Length) string {
	if p.spec.Units == gauge.Inch {
		return l.Format(gauge.Inch, 2)
	}
	return l.Format(gauge.Centimetre, 1)
}

// fine says a short length.
func (p planned) fine(l gauge.Length) string {
	if p.spec.Units == gauge.Inch {
		return l.Format(gauge.Inch, 2)
	}
	return l.Format(gauge.Millimetre, 1)
}

// area says an area that is measured in stitches times rows.
func (p planned) area(cells float64) string {
	cell := func(u gauge.Length) float64 { return u.Millimetres().InexactFloat64() }
	square := cells * cell(p.piece.Gauge.Width(1)) * cell(p.piece.Gauge.Height(1))
	if p.spec.Units == gauge.Inch {
		inch := cell(gauge.MustParseLength("1 in"))
		return fmt.Sprintf("%.3f in²", square/inch/inch)
	}
	const squareCentimetre = 100
	return fmt.Sprintf("%.2f cm²", square/squareCentimetre)
}

// shorthand says phrases in the shorthand of printed patterns: "row 1: 4, then 2-3-1, 2-1-4".
func shorthand(phrases []shaping.Phrase) string {
	var said []string
	for i, p := range phrases {
		switch {
		case i > 0:
			said = append(said, p.Shorthand())
		case p.Times == 1:
			said = append(said, fmt.Sprintf("row %d: %d", p.From, max(p.Stitches, -p.Stitches)))
		default:
			said = append(said, fmt.Sprintf("from row %d: %s", p.From, p.Shorthand()))
		}
	}
	return strings.Join(said, ", ")
}

// listed says numbers one after the other, equal neighbours together: "3 × 5, then 6".
func listed(numbers []int) string {
	var said []string
	for from, to := 0, 0; from < len(numbers); from = to {
		for to = from; to < len(numbers) && numbers[to] == numbers[from]; to++ {
		}
		if times := to - from; times > 1 {
			said = append(said, fmt.Sprintf("%d times %s", times, plural.Stitches(numbers[from])))
		} else {
			said = append(said, plural.Stitches(numbers[from]))
		}
	}
	return strings.Join(said, ", ")
}
