package main

import (
	"strconv"
	"strings"
)

// fault says which field of a request cannot be used, what was given and what works.
type fault struct{ field, given, want string }

func (f *fault) Error() string {
	if f.given == "" {
		return f.field + ": " + f.want
	}
	return f.field + " " + f.given + ": " + f.want
}

const longestShown = 40

// short returns what was given, not long.
func short(s string) string {
	if len(s) > longestShown {
		return strings.ToValidUTF8(s[:longestShown], "") + "..."
	}
	return s
}

// quoted returns a text that was given: in quotes and not long.
func quoted(s string) string { return strconv.Quote(short(s)) }
