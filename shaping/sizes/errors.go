package sizes

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// ErrBodies: a table of bodies is malformed, or a measurement is missing or out of range.
var ErrBodies = errors.New("bodies cannot be used")

// Error names the place in a table or the size, what was given, and what would work.
type Error struct {
	Line  int    // of a CSV table, from 1; 0 if it concerns none
	Size  string // the name of the size; empty if it concerns none
	Key   string // of a measurement such as "chest", or the field of a spec such as "sleeve.top"
	Given string
	Want  string // what is wrong, what is allowed
	Err   error  // ErrBodies, or the error of package garment
}

func (e *Error) Error() string {
	var place []string
	if e.Line > 0 {
		place = append(place, fmt.Sprintf("line %d", e.Line))
	}
	if e.Size != "" {
		place = append(place, "size "+e.Size)
	}
	if e.Key != "" {
		place = append(place, e.Key)
	}
	text := strings.Join(place, ", ")
	if e.Given != "" {
		text = strings.TrimSpace(text + " " + e.Given)
	}
	if text == "" {
		return e.Want
	}
	return text + ": " + e.Want
}

// Unwrap returns the kind of the error, or the error of package garment.
func (e *Error) Unwrap() error { return e.Err }

// quoted returns a text from a table for a message: in quotes and not long.
func quoted(s string) string {
	const most = 40
	if runes := []rune(s[:min(len(s), 4*most+4)]); len(runes) > most {
		s = string(runes[:most]) + "..."
	}
	return strconv.Quote(s)
}
