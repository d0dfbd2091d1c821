package gauge

import (
	"errors"
	"strconv"
)

// The kinds of error in this package, for use with [errors.Is].
var (
	// ErrSyntax: a text does not read as a length, JSON not as a gauge or a swatch, or a gauge
	// cannot be written as such JSON.
	ErrSyntax = errors.New("cannot be read")
	// ErrUnit: the unit is missing or unknown.
	ErrUnit = errors.New("no known unit")
	// ErrRange: a number lies outside what is allowed.
	ErrRange = errors.New("out of range")
	// ErrParity: whole numbers cannot add up because of odd and even, or of multiples.
	ErrParity = errors.New("cannot add up")
)

// ParseError says what is wrong with a text that should be a length.
type ParseError struct {
	Input   string
	Problem string // what is wrong
	Try     string // what to type instead
	Err     error  // ErrSyntax, ErrUnit or ErrRange
}

func (e *ParseError) Error() string {
	return "length " + quoted(e.Input) + ": " + e.Problem + ": " + e.Try
}

// Unwrap returns the kind of the error.
func (e *ParseError) Unwrap() error { return e.Err }

// Error names a field, what was given and what is allowed.
type Error struct {
	Field string
	Given string
	Want  string
	Err   error // the kind, or the *ParseError of a length that was given
}

func (e *Error) Error() string { return e.Field + " " + e.Given + ": " + e.Want }

// Unwrap returns the kind of the error, or the [*ParseError] that wraps it.
func (e *Error) Unwrap() error { return e.Err }

// quoted returns what was given for a message: in quotes and not long.
func quoted(s string) string {
	const longest = 40
	if len(s) > longest {
		s = s[:longest] + "..."
	}
	return strconv.Quote(s)
}

// plain returns what was given for a message without quotes, unless it is empty, long
// or cannot be printed.
func plain(s string) string {
	if text := quoted(s); s == "" || text != `"`+s+`"` {
		return text
	}
	return s
}
