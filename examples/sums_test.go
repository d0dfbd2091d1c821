package examples_test

import (
	"fmt"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"regexp"
	"strings"
	"testing"
	"text/tabwriter"
)

// sum is a line of arithmetic by hand, beside what the library gives.
type sum struct {
	of    string
	by    string // such as "53 cm × 47 ÷ 19.6 cm"
	rule  rule
	gives string // by the library, a number first
}

// rule makes the result of a sum what a knitter writes down.
type rule struct {
	says  string
	whole func(x float64) float64 // nil if nothing is rounded but the print
}

var (
	exactly     = rule{}
	nearest     = rule{"nearest", math.Round}
	nearestEven = rule{"nearest even", func(x float64) float64 { return 2 * math.Round(x/2) }}
	nearestOdd  = rule{"nearest odd", func(x float64) float64 { return 2*math.Round((x-1)/2) + 1 }}
	upToEven    = rule{"up to even", func(x float64) float64 { return 2 * math.Ceil(x/2) }}
	up          = rule{"up", math.Ceil}
	down        = rule{"down", math.Floor}
)

// table writes sums as a block of README, and tests that the library agrees with each.
func table(t *testing.T, sums ...sum) string {
	t.Helper()
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 3, ' ', 0)
	fmt.Fprintln(w, "\tby hand\t\twalewise")
	for _, s := range sums {
		value := work(t, s.by)
		result, _, _ := strings.Cut(s.gives, " ")
		_, fraction, _ := strings.Cut(result, ".")
		hand := rounded(value, len(fraction))
		if s.rule.whole != nil {
			hand = rounded(s.rule.whole(value), 0)
		}
		by := s.by + " = " + strings.TrimSuffix(strings.TrimRight(rounded(value, 3), "0"), ".")
		if hand != result {
			t.Errorf("%s: %s, so %s %s by hand, %s by the library", s.of, by, s.rule.says, hand, s.gives)
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\n", s.of, by, strings.TrimSpace(s.rule.says+" "+hand), s.gives)
	}
	w.Flush()
	return trimmed(text.String())
}

var number = regexp.MustCompile(`\d+(\.\d+)?`)

// work returns the value of a sum, whose units do not count.
func work(t *testing.T, by string) float64 {
	t.Helper()
	expression := regexp.MustCompile(`[a-z%]`).ReplaceAllString(by, "")
	expression = strings.NewReplacer("×", "*", "÷", "/", "−", "-").Replace(expression)
	expression = number.ReplaceAllStringFunc(expression, func(n string) string {
		if strings.Contains(n, ".") {
			return n
		}
		return n + ".0" // whole numbers are divided as fractions
	})
	result, err := types.Eval(token.NewFileSet(), nil, token.NoPos, expression)
	if err != nil {
		t.Fatalf("%s: %v", by, err)
	}
	value, _ := constant.Float64Val(result.Value)
	return value
}

// rounded writes a number with so many places, halves away from zero; what a binary fraction
// loses is far smaller than what is added.
func rounded(x float64, places int) string {
	scale := math.Pow10(places)
	return fmt.Sprintf("%.*f", places, math.Round(x*scale*(1+1e-12))/scale)
}

// trimmed removes the blanks at the ends of lines.
func trimmed(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}
