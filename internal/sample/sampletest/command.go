// Package sampletest is what the tests of the sample programs share.
package sampletest

import (
	"bytes"
	"io"
	"strings"
	"testing"
)

// Command is a program as its tests run it, such as the method Run of a sample.Program.
type Command func(args []string, stdin io.Reader, stdout, stderr io.Writer) error

// Run runs the command within the test.
func (c Command) Run(stdin string, args ...string) (stdout, stderr string, err error) {
	var out, messages bytes.Buffer
	err = c(args, strings.NewReader(stdin), &out, &messages)
	return out.String(), messages.String(), err
}

// Replaced returns a document with one place changed; there must be such a place.
func Replaced(t testing.TB, document, old, by string) string {
	t.Helper()
	if !strings.Contains(document, old) {
		t.Fatalf("the document has no %s", old)
	}
	return strings.Replace(document, old, by, 1)
}
