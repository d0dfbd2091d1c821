package main

import (
	"fmt"
	"math"
	"strings"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// rounding is a [gauge.Rounding] in the table; left out it is the nearest whole number.
type rounding struct {
	Direction string // "up" or "down"
	Multiple  int
	Plus      int
}

func (r rounding) rule() (gauge.Rounding, error) {
	directions := map[string]gauge.Direction{"": gauge.Nearest, "up": gauge.Up, "down": gauge.Down}
	d, ok := directions[r.Direction]
	if !ok {
		return gauge.Rounding{}, fmt.Errorf("%w: direction %q: up, down or left out", errInputs, r.Direction)
	}
	return gauge.Rounding{Direction: d, Multiple: r.Multiple, Plus: r.Plus}, nil
}

// lengths are added up; those taken away have a minus.
type lengths struct {
	Gauge   gauge.Gauge
	Lengths []gauge.Length
	Percent int // of it; left out 100
	Less    int // that many stitches or rows
	Round   rounding
	Exactly bool // the exact count alone
}

func stitches(in lengths) (string, error) { return in.counted(in.Gauge.Stitches) }

func rows(in lengths) (string, error) { return in.counted(in.Gauge.Rows) }

// counted says the exact count and, if it is another, the whole number.
func (in lengths) counted(count func(gauge.Length) gauge.Count) (string, error) {
	var sum gauge.Length
	for _, l := range in.Lengths {
		sum = sum.Add(l)
	}
	if in.Gauge.IsZero() {
		return "", fmt.Errorf("%w: there is no gauge", errInputs)
	}
	exact := count(sum.Mul(or(in.Percent, 100))).Div(100).Sub(gauge.Whole(in.Less))
	if in.Exactly {
		return exact.String(), nil
	}
	return whole(exact, in.Round)
}

// or returns the number, or the default if it is left out.
func or(n, left int) int {
	if n == 0 {
		return left
	}
	return n
}

// whole says an exact count and, if it is another, the whole number.
func whole(exact gauge.Count, r rounding) (string, error) {
	rule, err := r.rule()
	if err != nil {
		return "", err
	}
	said, n := exact.String(), fmt.Sprint(exact.Round(rule))
	if said == n {
		return n, nil
	}
	return said + ", " + n, nil
}

// formatted says a length in a unit with that many places after the point.
type formatted struct {
	Unit   gauge.Unit
	Places int
}

func (f formatted) say(l gauge.Length) (string, error) {
	if f.Places < 0 || f.Places > 12 {
		return "", fmt.Errorf("%w: places %d: from 0 to 12", errInputs, f.Places)
	}
	return l.Format(f.Unit, f.Places), nil
}

func width(in struct {
	Gauge    gauge.Gauge
	Stitches int
	formatted
}) (string, error) {
	return in.say(in.Gauge.Width(in.Stitches))
}

func formatLength(in struct {
	Length gauge.Length
	formatted
}) (string, error) {
	return in.say(in.Length)
}

// conversion is a count of a pattern that is knitted at another gauge.
type conversion struct {
	Pattern, Own gauge.Gauge
	Count        int
	Round        rounding
}

func (in conversion) made(own func(gauge.Gauge, int) gauge.Count) (string, error) {
	if in.Pattern.IsZero() || in.Own.IsZero() {
		return "", fmt.Errorf("%w: a gauge is missing", errInputs)
	}
	return whole(own(in.Pattern, in.Count), in.Round)
}

func stitchesFor(in conversion) (string, error) { return in.made(in.Own.StitchesFor) }

func rowsFor(in conversion) (string, error) { return in.made(in.Own.RowsFor) }

// roundTogether makes parts whole. What is wanted is a decimal number, or one divided by a
// whole number such as "90/3".
func roundTogether(in struct {
	Total int
	Parts []struct {
		Name     string
		Want     string
		Times    int
		Multiple int
	}
}) (string, error) {
	var parts []gauge.Part
	for _, p := range in.Parts {
		want, err := countOf(p.Want)
		if err != nil {
			return "", err
		}
		parts = append(parts, gauge.Part{Name: p.Name, Want: want, Times: p.Times, Grid: gauge.Rounding{Multiple: p.Multiple}})
	}
	rounded, err := gauge.RoundTogether(in.Total, parts)
	var list []string
	for _, r := range rounded {
		list = append(list, fmt.Sprintf("%s %d", r.Name, r.Whole))
	}
	return strings.Join(list, ", "), err
}

// countOf reads a count. A gauge of one stitch to the millimetre makes it exact.
func countOf(s string) (gauge.Count, error) {
	over, by, divided := strings.Cut(s, "/")
	n, err := decimal.NewFromString(over)
	parts := 1
	if divided && err == nil {
		_, err = fmt.Sscanf(by, "%d", &parts)
	}
	if err != nil || len(s) > 20 || parts < 1 || n.Abs().GreaterThan(decimal.NewFromInt(math.MaxInt32)) || n.Exponent() < -12 {
		return gauge.Count{}, fmt.Errorf("%w: %q is not a number such as 8.4 or 90/3", errInputs, s)
	}
	one, err := gauge.New(decimal.NewFromInt(1), decimal.NewFromInt(1), gauge.Millimetres(decimal.NewFromInt(1)))
	if err != nil {
		return gauge.Count{}, err
	}
	return one.Stitches(gauge.Millimetres(n)).Div(parts), nil
}
