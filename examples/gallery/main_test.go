package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/folder"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"github.com/google/go-cmp/cmp"
)

var runGallery = sampletest.Command(run).Run

func TestMain(m *testing.M) { sampletest.Main(m, main) }

// printed returns what the program prints.
func printed(t testing.TB, args ...string) string {
	t.Helper()
	out, messages, err := runGallery("", args...)
	if err != nil || messages != "" {
		t.Fatalf("%q: error %v, said %q", args, err, messages)
	}
	return out
}

func TestHelp(t *testing.T) { sampletest.Command(run).Help(t) }

func TestForms(t *testing.T) {
	golden.Check(t, "testdata/gallery.text.golden", []byte(printed(t, "-as", "text")))
	// What a chart looks like is tested where it is drawn.
	page := svgs.ReplaceAllString(printed(t, "-only", "neck-round-bound"), "<svg></svg>")
	golden.Check(t, "testdata/neck-round-bound.html.golden", []byte(page))
	if printed(t) != printed(t, "-as", "html") {
		t.Error("html is not what is printed without -as")
	}
}

// An example alone is the same as among the others.
func TestOnly(t *testing.T) {
	text, page := printed(t, "-as", "text"), printed(t)
	for _, e := range all() {
		_, alone, _ := strings.Cut(printed(t, "-as", "text", "-only", e.name), "\n\n")
		if !strings.HasPrefix(alone, e.name+": ") || !strings.Contains(text, alone) {
			t.Errorf("%s alone is not in the text of all", e.name)
		}
		_, rest, _ := strings.Cut(printed(t, "-only", e.name), "<article")
		alone, _, _ = strings.Cut(rest, "</article>")
		if alone == "" || !strings.Contains(page, alone) {
			t.Errorf("%s alone is not in the page of all", e.name)
		}
	}
}

func TestOut(t *testing.T) {
	t.Chdir(t.TempDir())
	want := map[string]string{"gallery.html": printed(t)}
	paths := filepath.Join("made", "gallery.html") + "\n"
	for _, e := range all() {
		want[e.name+".svg"] = printed(t, "-only", e.name, "-as", "svg")
		paths += filepath.Join("made", e.name+".svg") + "\n"
	}
	if diff := cmp.Diff(paths, printed(t, "-out", "made")); diff != "" {
		t.Errorf("paths (-want +got):\n%s", diff)
	}
	got := map[string]string{}
	entries, err := os.ReadDir("made")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		text, err := os.ReadFile(filepath.Join("made", e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		got[e.Name()] = string(text)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("files (-want +got):\n%s", diff)
	}
	if out, _, err := runGallery("", "-out", "made"); !errors.Is(err, folder.ErrTaken) || out != "" {
		t.Errorf("into the same folder: error %v, printed %q", err, out)
	}
	printed(t, "-out", "made", "-force")
}

func TestUsage(t *testing.T) {
	for _, c := range []struct{ args, says string }{
		{"-as poem", `-as "poem": html, text or svg`},
		{"-as svg", "-as svg without -only"},
		{"-only neck", `-only "neck": there is neck-round-shallow, `},
		{"-only=", `-only "": there is`},
		{"-out x -as text", "-out with -as or -only"},
		{"-out x -only neck-vee", "-out with -as or -only"},
		{"-force", "-force without -out"},
		{"neck-vee", `unexpected "neck-vee"`},
		{"-nonsense", "-nonsense"},
	} {
		out, messages, err := runGallery("", strings.Fields(c.args)...)
		if !errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(messages, c.says) {
			t.Errorf("%s: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
}

type broken struct{ io.Writer }

var errBroken = errors.New("broken")

func (broken) Write([]byte) (int, error) { return 0, errBroken }

func TestBrokenOutput(t *testing.T) {
	if err := run([]string{"-only", "neck-square"}, nil, broken{}, io.Discard); !errors.Is(err, errBroken) {
		t.Errorf("standard output broken: %v", err)
	}
}

func TestExitStatus(t *testing.T) {
	none := strings.NewReader("")
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-only neck-square", Stdin: none, Status: 0, Says: ""},
		{Args: "-h", Stdin: none, Status: 0, Says: "gallery prints"},
		{Args: "-out main.go", Stdin: none, Status: 1, Says: "gallery: main.go: is no folder"},
		{Args: "-out=", Stdin: none, Status: 1, Says: `gallery: "": is no folder`},
		{Args: "-as poem", Stdin: none, Status: 2, Says: "gallery: -as"},
		{Args: "-only sock", Stdin: none, Status: 2, Says: "gallery: -only"},
	})
}
