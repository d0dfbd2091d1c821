// Package oneline makes texts that others wrote fit for one line.
package oneline

import (
	"strings"
	"unicode"
)

// Of returns the text in one line of characters that can be printed: without line ends,
// control characters and those that turn the direction of what follows.
func Of(text string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return ' '
		}
		return r
	}, text)), " ")
}
