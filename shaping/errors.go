package shaping

import (
	"errors"
	"fmt"
)

// The kinds of error in this package, for use with [errors.Is].
var (
	// ErrSyntax: a text does not read as the value it should be.
	ErrSyntax = errors.New("cannot be read")
	// ErrRange: a number lies outside what is allowed.
	ErrRange = errors.New("out of range")
	// ErrInfeasible: each number is fine, together they cannot be knitted.
	ErrInfeasible = errors.New("cannot be worked")
)

// Error says what was asked, what was given and what would work.
type Error struct {
	What  string // the thing asked for, such as "needle" or "shoulder groups"
	Given string // what was given, as text
	Want  string // what is allowed or would work
	Err   error  // ErrSyntax, ErrRange or ErrInfeasible
}

func (e *Error) Error() string {
	return fmt.Sprintf("%s %s: %s", e.What, e.Given, e.Want)
}

// Unwrap returns the kind of the error.
func (e *Error) Unwrap() error { return e.Err }

func syntaxError(what, given, want string) error {
	const longest = 40
	if len(given) > longest {
		given = given[:longest] + "..."
	}
	return &Error{What: what, Given: fmt.Sprintf("%q", given), Want: want, Err: ErrSyntax}
}

func rangeError(what string, given any, want string) error {
	return &Error{What: what, Given: fmt.Sprint(given), Want: want, Err: ErrRange}
}

func infeasible(what, given, want string) error {
	return &Error{What: what, Given: given, Want: want, Err: ErrInfeasible}
}
