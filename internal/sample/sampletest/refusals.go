package sampletest

import (
	"strings"
	"testing"

	"example.com/walewise/internal/command"
)

// Refuses tests that a spec is refused in a short line, that the line has the given parts,
// and that nothing is printed.
func (c Command) Refuses(t *testing.T, spec string, says ...string) {
	t.Helper()
	out, _, err := c.Run(spec, "-spec", "-")
	if err == nil || out != "" {
		t.Fatalf("error %v, %d bytes printed", err, len(out))
	}
	text := command.OneLine(err)
	if len(text) > 300 {
		t.Errorf("a message of %d characters", len(text))
	}
	for _, part := range says {
		if !strings.Contains(text, part) {
			t.Errorf("the message does not say %q: %s", part, text)
		}
	}
}
