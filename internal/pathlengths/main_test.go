package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"
)

func TestPaths(t *testing.T) {
	got := paths("# lines\n\nM 0 1 L 0 0\n  M 0 2 V 0  \r\n#M 0 3 V 0\nM 0 4 V 0")
	if want := []string{"M 0 1 L 0 0", "M 0 2 V 0", "M 0 4 V 0"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// The page holds the paths as text and a place for their lengths, which is found again.
func TestPage(t *testing.T) {
	text := page([]string{`M 0 1 L 0 0`, `"<>&`})
	for _, want := range []string{`<path d="M 0 1 L 0 0"/>`, `<path d="&#34;&lt;&gt;&amp;"/>`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in\n%s", want, text)
		}
	}
	filled := strings.Replace(text, opening+closing, opening+"[1.5,2]"+closing, 1)
	if got, err := lengthsIn(filled); err != nil || !slices.Equal(got, []float64{1.5, 2}) {
		t.Errorf("got %v, %v", got, err)
	}
	for _, dom := range []string{"", text, opening + "[1", opening + "[1" + closing} {
		if got, err := lengthsIn(dom); err == nil {
			t.Errorf("%q: got %v", dom, got)
		}
	}
}

func TestRunRefuses(t *testing.T) {
	for _, args := range [][]string{{}, {"no-such-file"}, {"a", "b"}, {"-no-such-flag", "a"}} {
		var out, errors bytes.Buffer
		if code := run(args, &out, &errors); code != 2 || out.Len() > 0 || errors.Len() == 0 {
			t.Errorf("%q: code %d, output %q, errors %q", args, code, &out, &errors)
		}
	}
}
