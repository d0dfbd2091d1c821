package plan_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/walewise/shaping/plan"
)

// document is one of the forms: a document of it, how it is read, and how what was read is
// written.
type document struct {
	format, text string
	rewrite      func(from io.Reader, to io.Writer) error
}

func documents(t testing.TB) []document {
	t.Helper()
	return []document{
		documentOf(plan.SpecFormat, least, plan.ReadSpec, plan.WriteSpec),
		documentOf(plan.PlanFormat, string(tiny(t)), plan.Read, plan.Write),
		documentOf(plan.GaugeFormat, gaugeDocument(`"swatch": `+oneSwatch), plan.ReadGauge, plan.WriteGauge),
		documentOf(plan.SizesFormat, twoBodies, plan.ReadBodies, plan.WriteBodies),
	}
}

func documentOf[T any](format, text string, read func(io.Reader) (T, error), write func(io.Writer, T) error) document {
	return document{format, text, func(from io.Reader, to io.Writer) error {
		value, err := read(from)
		if err != nil {
			return fmt.Errorf("reading: %w", err)
		}
		return write(to, value)
	}}
}

// errBroken is what a disk says that is gone.
var errBroken = errors.New("the disk is gone")

type brokenWriter struct{}

func (brokenWriter) Write([]byte) (int, error) { return 0, errBroken }

func TestDocumentsOnBrokenDisks(t *testing.T) {
	for _, d := range documents(t) {
		if err := d.rewrite(strings.NewReader(d.text), io.Discard); err != nil {
			t.Fatal(d.format, err)
		}
		for name, err := range map[string]error{
			"read":    d.rewrite(iotest.ErrReader(errBroken), io.Discard),
			"half":    d.rewrite(io.MultiReader(strings.NewReader(d.text[:40]), iotest.ErrReader(errBroken)), io.Discard),
			"written": d.rewrite(strings.NewReader(d.text), brokenWriter{}),
		} {
			if !errors.Is(err, errBroken) {
				t.Errorf("%s %s: %v does not wrap what the disk says", d.format, name, err)
			}
		}
	}
}

func TestDocumentsAreBounded(t *testing.T) {
	for _, d := range documents(t) {
		err := d.rewrite(strings.NewReader(d.text+strings.Repeat(" ", plan.MaxBytes)), io.Discard)
		if want := "reading: document of more than 1048576 bytes: at most 1 MiB, 1048576 bytes"; err == nil || err.Error() != want {
			t.Errorf("%s says %v, want %s", d.format, err, want)
		}
	}
}

// A document says of which version it is. This release reads the first of each; one that is
// later or was never made is refused by the name of what can be read.
func TestVersionsOfDocuments(t *testing.T) {
	for _, d := range documents(t) {
		name, version, _ := strings.Cut(d.format, "/")
		if version != "1" {
			t.Errorf("%s: read the versions before it as well, and say so here", d.format)
		}
		for other, hint := range map[string]string{
			name + "/2":  "; this is a later version: a later release of walewise reads it",
			name + "/0":  "",
			name + "/1 ": "",
			name:         "",
			"spec/1":     "",
		} {
			var b bytes.Buffer
			err := d.rewrite(strings.NewReader(replaced(t, d.text, d.format, other)), &b)
			if want := fmt.Sprintf("reading: format %q: only %q can be read here%s", other, d.format, hint); err == nil || err.Error() != want {
				t.Errorf("says %v, want %s", err, want)
			}
		}
	}
}
