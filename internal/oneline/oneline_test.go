package oneline_test

import (
	"testing"

	"example.com/walewise/internal/oneline"
)

func TestOf(t *testing.T) {
	for text, want := range map[string]string{
		"":                           "",
		"A beekeeper's pullover":     "A beekeeper's pullover",
		" two\r\n lines\t, one tab ": "two lines , one tab",
		"a\x00b\x1b[31mc":            "a b [31mc",
		"\u202eturned":               "turned",
		"\xff":                       "\uFFFD",
		"naïve, 毛衣, سترة":            "naïve, 毛衣, سترة",
	} {
		if got := oneline.Of(text); got != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}

func TestCapital(t *testing.T) {
	for text, want := range map[string]string{"": "", "a": "A", "left half": "Left half", "écru": "Écru", "12 cm": "12 cm"} {
		if got := oneline.Capital(text); got != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}
