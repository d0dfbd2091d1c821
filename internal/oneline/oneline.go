// Package oneline makes texts that others wrote fit for one line.
package oneline

import (
	"strings"
	"unicode"
	"unicode/utf8"
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

// Capital returns the text with a capital at its beginning.
func Capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}
