package shaping

import (
	"fmt"
	"strings"

	"example.com/walewise/internal/plural"
)

// String says the phrase in words without its first row: "2 stitches every 4th
// row, 3 times", or "3 stitches 2 rows later" for a single step.
func (p Phrase) String() string {
	what := stitches(p.Stitches)
	switch {
	case p.Times == 1 && p.Every == 0:
		return what
	case p.Times == 1 && p.Every == 1:
		return what + " in the next row"
	case p.Times == 1:
		return fmt.Sprintf("%s %d rows later", what, p.Every)
	case p.Then != 0:
		return fmt.Sprintf("%s every %s and %s row in turn, %d times", what, plural.Ordinal(p.Every), plural.Ordinal(p.Then), p.Times)
	case p.Every == 1:
		return fmt.Sprintf("%s every row, %d times", what, p.Times)
	}
	return fmt.Sprintf("%s every %s row, %d times", what, plural.Ordinal(p.Every), p.Times)
}

// Shorthand returns the phrase in the shorthand of printed patterns, rows,
// stitches, times: "2-1-5" for every 2nd row, 1 stitch, 5 times, "6/8-1-4" for the 6th
// and 8th row in turn. Stitches that come have a plus sign.
func (p Phrase) Shorthand() string {
	every := fmt.Sprint(p.Every)
	if p.Then != 0 {
		every += "/" + fmt.Sprint(p.Then)
	}
	if p.Stitches > 0 {
		return fmt.Sprintf("%s-+%d-%d", every, p.Stitches, p.Times)
	}
	return fmt.Sprintf("%s-%d-%d", every, -p.Stitches, p.Times)
}

// Words says the schedule by its phrases: "row 127: 4 stitches; 3 stitches 2 rows
// later; 1 stitch every 2nd row, 4 times". An empty schedule has no words.
func (s Schedule) Words() string { return Words(s.Phrases()...) }

// Words says the phrases of a schedule as [Schedule.Words] does.
func Words(phrases ...Phrase) string {
	var said []string
	for i, p := range phrases {
		if i == 0 {
			said = append(said, fmt.Sprintf("row %d: %v", p.From, p))
		} else {
			said = append(said, p.String())
		}
	}
	return strings.Join(said, "; ")
}

func stitches(n int) string {
	sign := ""
	if n > 0 {
		sign = "+"
	}
	n = max(n, -n)
	if n == 1 {
		return sign + "1 stitch"
	}
	return fmt.Sprintf("%s%d stitches", sign, n)
}
