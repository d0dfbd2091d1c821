package main

import (
	"fmt"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/plural"
)

// appendText writes an answer for people: the words of the default wording, and how far it
// lies from the drawing.
func appendText(to []byte, a answer) []byte {
	id := string(a.id) // as it was given, escapes and all
	if len(id) > 1 && id[0] == '"' {
		id = id[1 : len(id)-1]
	}
	if id == "" {
		id = fmt.Sprintf("line %d", a.line)
	}
	if a.err != nil {
		return fmt.Appendf(to, "%s: %s", id, command.OneLine(a.err))
	}
	w, trace := a.wordings.Default(), a.wordings.Trace
	to = fmt.Appendf(to, "%s: %s\n", id, words(w, a.side))
	return fmt.Appendf(to, "  %s; area %.2f, where %.2f is least and %.2f the floor; deviation %.2f stitches",
		plural.Rows(a.drawing.Rows()), w.Measures.Area, trace.Measures.Area, trace.Measures.Floor, w.Measures.Deviation)
}
