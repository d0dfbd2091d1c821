package shaping_test

import (
	"encoding"
	"testing"

	"example.com/walewise/shaping"
)

// Every text that is a word of an enumeration reads as it is written; every other leaves the
// value as it was.
func FuzzWords(f *testing.F) {
	for _, seed := range []string{"", "left", "Right", "purl", "bed", "hand", "hold", "bindOff", "castOnEdge", "Side(0)", "\x00"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		readsAsWritten[shaping.Side](t, text)
		readsAsWritten[shaping.Facing](t, text)
		readsAsWritten[shaping.Place](t, text)
		readsAsWritten[shaping.Method](t, text)
		readsAsWritten[shaping.Do](t, text)
		readsAsWritten[shaping.Needle](t, text)
	})
}

func readsAsWritten[T comparable, P interface {
	*T
	encoding.TextUnmarshaler
	encoding.TextMarshaler
}](t *testing.T, text []byte) {
	t.Helper()
	var none, value T
	if err := P(&value).UnmarshalText(text); err != nil {
		if value != none {
			t.Errorf("%q: %v beside the error %v", text, value, err)
		}
		return
	}
	if again, err := P(&value).MarshalText(); err != nil || string(again) != string(text) {
		t.Errorf("%q reads as %v and is written as %q (%v)", text, value, again, err)
	}
}
