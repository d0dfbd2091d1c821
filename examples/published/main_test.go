package main

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"github.com/google/go-cmp/cmp"
)

var runPublished = sampletest.Command(run).Run

func TestMain(m *testing.M) { sampletest.Main(m, main) }

// printed returns what the program prints.
func printed(t testing.TB, args ...string) string {
	t.Helper()
	out, messages, err := runPublished("", args...)
	if err != nil || messages != "" {
		t.Fatalf("%q: error %v, said %q", args, err, messages)
	}
	return out
}

func TestHelp(t *testing.T) { sampletest.Command(run).Help(t) }

func TestText(t *testing.T) {
	page := printed(t)
	golden.Check(t, "testdata/published.text.golden", []byte(page))
	for line := range strings.Lines(page) {
		if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > pageWidth {
			t.Errorf("%d wide: %s", n, line)
		}
	}
	if printed(t, "-as", "text") != page {
		t.Error("text is not what is printed without -as")
	}
}

func TestOnly(t *testing.T) {
	golden.Check(t, "testdata/only.text.golden", []byte(printed(t, "-only", "neck-and-armhole-at-once")))
	all := printed(t, "-as", "json")
	for i, e := range examples(t) {
		if i%8 != 0 {
			continue // each time all are read
		}
		alone := printed(t, "-as", "json", "-only", e.ID)
		if strings.Count(alone, "\n") != 1 || !strings.Contains(all, alone) {
			t.Errorf("%s alone is not among all", e.ID)
		}
		if one := printed(t, "-only", e.ID); !strings.Contains(one, e.Call) {
			t.Errorf("%s does not name its call:\n%s", e.ID, one)
		}
	}
}

// Other programs read what people read.
func TestRecords(t *testing.T) {
	list := examples(t)
	lines, err := csv.NewReader(strings.NewReader(printed(t, "-as", "csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	records := json.NewDecoder(strings.NewReader(printed(t, "-as", "json")))
	for i, e := range list {
		c, err := compare(e)
		if err != nil {
			t.Fatal(err)
		}
		want := []string{e.ID, e.Topic, e.Asks, e.Source, e.Year, string(e.Standing), e.Call, e.Published, c.gives, c.verdict(), e.Differs, e.Note}
		if diff := cmp.Diff(want, lines[i+1]); diff != "" {
			t.Errorf("csv (-want +got):\n%s", diff)
		}
		var r record
		if err := records.Decode(&r); err != nil {
			t.Fatal(err)
		}
		if r.ID != e.ID || r.Gives != c.gives || r.Agrees != c.agrees {
			t.Errorf("json has %+v for %s", r, e.ID)
		}
	}
	if len(lines) != len(list)+1 || len(lines[0]) != len(lines[1]) || records.More() {
		t.Errorf("%d lines of csv for %d examples", len(lines), len(list))
	}
}

func TestUsage(t *testing.T) {
	for _, c := range []struct{ args, says string }{
		{"-as poem", `-as "poem": text, csv or json`},
		{"row-14-in-124", `unexpected "row-14-in-124"`},
		{"-nonsense", "-nonsense"},
		{"-table", "-table"},
	} {
		out, messages, err := runPublished("", strings.Fields(c.args)...)
		if !errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(messages, c.says) {
			t.Errorf("%s: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
}

// The module's table is found from any folder below it, and nowhere else.
func TestFindsTable(t *testing.T) {
	page, table := printed(t), absolute(t, "../../testdata/published.json")
	t.Chdir(filepath.Join("..", "..", "shaping", "sizes"))
	if printed(t) != page {
		t.Error("from another folder something else is printed")
	}
	t.Chdir(t.TempDir())
	if _, _, err := runPublished(""); err == nil || !strings.Contains(err.Error(), "-table") {
		t.Errorf("outside the module: %v", err)
	}
	if printed(t, "-table", table) != page {
		t.Error("with -table something else is printed")
	}
	text, err := os.ReadFile(table)
	if err != nil {
		t.Fatal(err)
	}
	if out, _, err := runPublished(string(text), "-table", "-"); err != nil || out != page {
		t.Errorf("from standard input: %v", err)
	}
}

func absolute(t *testing.T, file string) string {
	t.Helper()
	path, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	return path
}

type broken struct{ io.Writer }

var errBroken = errors.New("broken")

func (broken) Write([]byte) (int, error) { return 0, errBroken }

func (broken) Read([]byte) (int, error) { return 0, errBroken }

func TestBrokenEnds(t *testing.T) {
	for _, args := range [][]string{nil, {"-as", "csv"}, {"-as", "json"}, {"-only", "front-69"}} {
		if err := run(args, nil, broken{}, io.Discard); !errors.Is(err, errBroken) {
			t.Errorf("%q, standard output broken: %v", args, err)
		}
	}
	if err := run([]string{"-table", "-"}, broken{}, io.Discard, io.Discard); !errors.Is(err, errBroken) {
		t.Errorf("standard input broken: %v", err)
	}
}

func TestExitStatus(t *testing.T) {
	none := func() io.Reader { return strings.NewReader("") }
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "", Stdin: none(), Status: 0, Says: ""},
		{Args: "-only front-69", Stdin: none(), Status: 0, Says: ""},
		{Args: "-h", Stdin: none(), Status: 0, Says: "published puts"},
		{Args: "-only sock", Stdin: none(), Status: 1, Says: `published: -only "sock": the table has no example with this id, such as row-14-in-124`},
		{Args: "-table none.json", Stdin: none(), Status: 1, Says: "published: open none.json"},
		{Args: "-table -", Stdin: none(), Status: 1, Says: "published: table: "},
		{Args: "-table -", Stdin: strings.NewReader("nonsense\n\n"), Status: 1, Says: "published: table: "},
		{Args: "-as poem", Stdin: none(), Status: 2, Says: "published: -as"},
		{Args: "front-69", Stdin: none(), Status: 2, Says: "published: unexpected"},
	})
}
