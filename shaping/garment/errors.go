package garment

import (
	"errors"
	"strconv"
)

// The kinds of error in this package, for use with [errors.Is].
var (
	// ErrSpec: a field of the spec is missing, malformed or out of range.
	ErrSpec = errors.New("spec cannot be used")
	// ErrFit: the fields do not fit together in a piece.
	ErrFit = errors.New("measurements do not fit together")
	// ErrBed: the piece is wider than the bed.
	ErrBed = errors.New("bed too narrow")
	// ErrCheck: the pieces do not fit each other or the wearer, and the spec asks for a
	// refusal then. A bed that is too narrow is ErrBed.
	ErrCheck = errors.New("check failed")
	// ErrBegun: a piece that is begun cannot be gone on with from there, or not in that way.
	ErrBegun = errors.New("cannot be gone on with")
)

// Error names the field of the spec, what was given, and what would work.
type Error struct {
	Field string // such as "neck.width"; of [GoOn] also "piece" or "rows"; empty if it concerns none
	Given string // what was given, a length in the spec's unit
	Want  string // what is wrong, what is allowed, and the nearest value that works
	Err   error  // ErrSpec, ErrFit, ErrBed, ErrCheck or ErrBegun; package plan has kinds of its own
}

func (e *Error) Error() string {
	text := e.Field
	if e.Given != "" {
		if text != "" {
			text += " "
		}
		text += e.Given
	}
	if text == "" {
		return e.Want
	}
	return text + ": " + e.Want
}

// Unwrap returns the kind of the error.
func (e *Error) Unwrap() error { return e.Err }

func quoted(s string) string {
	const longest = 40
	if runes := []rune(s); len(runes) > longest {
		s = string(runes[:longest]) + "..."
	}
	return strconv.Quote(s)
}
