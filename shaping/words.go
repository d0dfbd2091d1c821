package shaping

import (
	"fmt"
	"strings"
)

// words are the texts of an enumeration, indexed by value. Index 0 stands for
// the zero value, which is not set and has no text.
type words []string

// name returns the text of v, or a number that cannot be mistaken for a text.
func (w words) name(kind string, v uint8) string {
	if int(v) < len(w) && v > 0 {
		return w[v]
	}
	return fmt.Sprintf("%s(%d)", kind, v)
}

func (w words) append(kind string, b []byte, v uint8) ([]byte, error) {
	if v == 0 || int(v) >= len(w) {
		return b, rangeError(kind, int(v), "one of "+w.list())
	}
	return append(b, w[v]...), nil
}

func (w words) parse(kind string, text []byte) (uint8, error) {
	for v, word := range w {
		if v > 0 && word == string(text) {
			return uint8(v), nil
		}
	}
	return 0, syntaxError(kind, string(text), "one of "+w.list())
}

func (w words) list() string { return strings.Join(w[1:], ", ") }
