package curve

import (
	"fmt"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// The kinds of error in this package, for use with [errors.Is]. They are the
// values of the same names in package shaping.
var (
	// ErrRange: a number or a length lies outside what is allowed.
	ErrRange = shaping.ErrRange
	// ErrInfeasible: each number is fine, together they cannot be worked.
	ErrInfeasible = shaping.ErrInfeasible
)

// Error says what was asked, what was given and what would work.
type Error struct {
	What  string // the thing asked for, such as "rows" or "edge width"
	Given string // what was given, as text
	Want  string // what is allowed, or why it does not work

	// Rule is the name of the rule that blocks an infeasible request, as
	// "most" or "single.phase", those of rules for coming stitches as "coming.most" where
	// stitches go as well; empty if no single rule does.
	Rule string
	// Asked is an infeasible request, and Nearest are requests close to it that do work,
	// each of them tried; there is at least one.
	Asked   Request
	Nearest []Request

	Err error // ErrRange, ErrInfeasible or ErrSyntax
}

// Request is what [Trace] is asked beside the edge. Stitches go if their number is
// positive, which is the reverse of the sign of a [shaping.Step].
type Request struct {
	Stitches, Rows int
	Rules          shaping.Rules
}

func (e *Error) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s: %s", e.What, e.Given, e.Want)
	for i, r := range e.Nearest {
		word := ", or "
		if i == 0 {
			word = "; what works: "
		}
		b.WriteString(word + r.unlike(e.Asked))
	}
	return b.String()
}

// unlike says in what a request differs from another.
func (q Request) unlike(asked Request) string {
	var differs []string
	if q.Stitches != asked.Stitches {
		differs = append(differs, plural.Stitches(q.Stitches))
	}
	if q.Rows != asked.Rows {
		differs = append(differs, plural.Rows(q.Rows))
	}
	for _, side := range sidesOf(asked.Rules) {
		mine, other := side.of(&q.Rules), side.of(&asked.Rules)
		for _, rule := range ruleList() {
			if value := *rule.of(mine); value != *rule.of(other) {
				differs = append(differs, fmt.Sprintf("%s%s %d", side.prefix, rule.name, value))
			}
		}
	}
	return strings.Join(differs, " and ")
}

// Unwrap returns the kind of the error.
func (e *Error) Unwrap() error { return e.Err }

func rangeError(what string, given any, want string) error {
	return &Error{What: what, Given: fmt.Sprint(given), Want: want, Err: ErrRange}
}
