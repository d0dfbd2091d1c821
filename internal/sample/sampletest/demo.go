package sampletest

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/golden"
	"github.com/google/go-cmp/cmp"
)

// Demo tests what a program makes of its demo. Files are the names that -out uses, by the
// form that -as prints and that a golden file holds; json among them is a plan that can
// be knitted.
func (c Command) Demo(t *testing.T, files map[string]string) {
	dir := filepath.Join(t.TempDir(), "demo")
	if _, _, err := c.Run("", "-out", dir); err != nil {
		t.Fatal(err)
	}
	for form, file := range files {
		t.Run(form, func(t *testing.T) {
			printed, _, err := c.Run("", "-as", form)
			if err != nil {
				t.Fatal(err)
			}
			golden.Check(t, goldenFor(form, file), []byte(printed))
			written, err := os.ReadFile(filepath.Join(dir, file))
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(printed, string(written)); diff != "" {
				t.Errorf("%s is not what is printed (-printed +written):\n%s", file, diff)
			}
		})
	}
	t.Run("check", func(t *testing.T) {
		out, _, err := c.Run("", "-check", filepath.Join(dir, files["json"]))
		if err != nil {
			t.Fatal(err)
		}
		golden.Check(t, "testdata/check-demo.golden", []byte(out))
	})
}

// goldenFor returns the golden file of a form. Pictures keep their names, so that they can be
// looked at, and shown in README.
func goldenFor(form, file string) string {
	if filepath.Ext(file) == ".svg" {
		return filepath.Join("testdata", file)
	}
	return filepath.Join("testdata", "demo."+form+".golden")
}

// Help tests what -h says against a golden file.
func (c Command) Help(t *testing.T) {
	out, messages, err := c.Run("", "-h")
	if !errors.Is(err, command.ErrHelp) || out != "" {
		t.Errorf("error %v, printed %q", err, out)
	}
	golden.Check(t, "testdata/help.golden", []byte(messages))
}
