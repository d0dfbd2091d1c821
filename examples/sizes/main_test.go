package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sizes"
	"github.com/google/go-cmp/cmp"
)

var several = sampletest.Command(program.Run)

func TestMain(m *testing.M) { sampletest.Main(m, main) }

func TestHelp(t *testing.T) { several.Help(t) }

func TestForms(t *testing.T) {
	for name, args := range map[string]string{
		"demo.text":     "",
		"demo.csv":      "-as csv",
		"json.text":     "-bodies crew.json",
		"children.text": "-for children",
		"cardigan.text": "-spec testdata/cardigan.json",
	} {
		out, messages, err := several.Run("", strings.Fields(args)...)
		if err != nil || messages != "" {
			t.Errorf("%q: error %v, said %q", args, err, messages)
		}
		golden.Check(t, "testdata/"+name+".golden", []byte(out))
	}
}

// Each line of -as json is the plan of one size, in the order of the table, and what is
// written of it into its folder; its pieces can be knitted.
func TestPlans(t *testing.T) {
	t.Chdir(t.TempDir())
	out, _, err := several.Run("", "-as", "json")
	if err != nil {
		t.Fatal(err)
	}
	written, _, err := several.Run("", "-out", "crew")
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, name := range []string{"sizes.txt", "sizes.csv"} {
		want = append(want, filepath.Join("crew", name))
	}
	bodies, err := sizes.ReadCSV(bytes.NewReader(crew))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	if len(lines) != len(bodies) {
		t.Fatalf("%d lines for %d bodies", len(lines), len(bodies))
	}
	for i, b := range bodies {
		p, err := plan.Parse([]byte(lines[i]))
		if err != nil {
			t.Fatal(err)
		}
		for _, piece := range p.Pieces {
			if _, err := bed.Knit(piece.Work); err != nil {
				t.Errorf("size %s: %v", b.Name, err)
			}
		}
		text, err := os.ReadFile(filepath.Join("crew", b.Name, "plan.json"))
		if err != nil {
			t.Fatal(err)
		}
		inFolder, err := plan.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(p.Title, inFolder.Title); diff != "" || !strings.HasSuffix(p.Title, ", size "+b.Name) {
			t.Errorf("size %s: %s", b.Name, p.Title)
		}
		for _, name := range []string{"plan.json", "instructions.txt", "rows.csv", "sheet.html", "chart.svg", "schematic.svg", "outlines-a4.html", "outlines-letter.html"} {
			want = append(want, filepath.Join("crew", b.Name, name))
		}
	}
	if diff := cmp.Diff(strings.Join(want, "\n")+"\n", written); diff != "" {
		t.Errorf("paths (-want +got):\n%s", diff)
	}
	page, _, err := several.Run("")
	if err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(filepath.Join("crew", "sizes.txt")); err != nil || string(text) != page {
		t.Errorf("sizes.txt is not what is printed; error %v", err)
	}
	if _, _, err := several.Run("", "-check", filepath.Join("crew", "pilot", "plan.json")); err != nil {
		t.Error(err)
	}
	if _, _, err := several.Run("", "-out", "crew"); err == nil {
		t.Error("written over")
	}
	if _, _, err := several.Run("", "-out", "crew", "-force"); err != nil {
		t.Error(err)
	}
}

// Flags change what they say.
func TestEase(t *testing.T) {
	of := func(args ...string) string {
		t.Helper()
		out, _, err := several.Run("", append(args, "-as", "csv")...)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(out) {
			if strings.HasPrefix(line, "front,at the underarm,") {
				return line
			}
		}
		t.Fatal("no such line")
		return ""
	}
	// 68 and 12 cm round: half of it at 48 stitches to 20.6 cm are 93.2, and two in seams.
	if got := of("-ease", "12 cm"); !strings.HasPrefix(got, "front,at the underarm,stitches,95,") {
		t.Errorf("with an ease of 12 cm: %s", got)
	}
	if of("-ease", "8 cm") != of() {
		t.Error("8 cm are not the default")
	}
	if of("-ease", "0 cm") == of() {
		t.Error("no ease is taken as none given")
	}
}

func TestBodiesFromStandardInput(t *testing.T) {
	csv, _, err := several.Run(string(crew), "-bodies", "-")
	if err != nil {
		t.Fatal(err)
	}
	if page, _, _ := several.Run(""); page != csv {
		t.Error("the demo's own table gives another page")
	}
	text, err := os.ReadFile("crew.json")
	if err != nil {
		t.Fatal(err)
	}
	if out, _, err := several.Run(" \n"+string(text), "-bodies", "-"); err != nil || !strings.Contains(out, "Sizes lookout (stoker)\n") {
		t.Errorf("JSON: error %v", err)
	}
}

// What cannot be used is refused in a line, and nothing is printed.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		why, bodies string
		args        []string
		is          error
		says        string
	}{
		{"no table", "", nil, sizes.ErrBodies, "the table is empty"},
		{"another document", string(demo), nil, sizes.ErrBodies, `only "walewise-sizes/1" can be read here`},
		{"a list", "[]", nil, sizes.ErrBodies, "write an object in { }"},
		{"a chest alone", "name,chest\nS,92 cm\n", nil, sizes.ErrBodies, "size S, shoulders: missing"},
		{"unknown column", "name,girth\nS,92 cm\n", nil, sizes.ErrBodies, `line 1, "girth": unknown column`},
		{"too wide", strings.Replace(string(crew), "captain,115", "captain,175", 1), nil, garment.ErrBed, "size captain, body.width"},
		{"too large", strings.Repeat("#", 2<<20), nil, sizes.ErrBodies, "at most 1 MiB"},
	} {
		out, _, err := several.Run(c.bodies, append([]string{"-bodies", "-"}, c.args...)...)
		if !errors.Is(err, c.is) || out != "" {
			t.Errorf("%s: error %v, printed %d bytes", c.why, err, len(out))
			continue
		}
		if text := command.OneLine(err); !strings.Contains(text, c.says) || text != err.Error() {
			t.Errorf("%s: says\n%s, want\n%s", c.why, err, c.says)
		}
	}
	several.Refuses(t, sampletest.Replaced(t, string(demo), `"inset"`, `"insert"`), "armhole.insert", "inset")
}

func TestUsage(t *testing.T) {
	for args, says := range map[string]string{
		"-for babies":               `-for "babies": men, women or children`,
		"-for men -bodies crew.csv": "-bodies with -for",
		"-spec - -bodies -":         "only one of them can be standard input",
		"-ease 8":                   "the unit is missing",
		"-check - -bodies crew.csv": "-check with -bodies",
		"-check - -ease 4cm":        "-check with -ease",
		"-as poem":                  `-as "poem": text, csv or json`,
		"crew.csv":                  `unexpected "crew.csv"`,
	} {
		out, messages, err := several.Run("", strings.Fields(args)...)
		if !errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(messages, says) {
			t.Errorf("%s: error %v, printed %q, said %q", args, err, out, messages)
		}
	}
}

func TestExitStatus(t *testing.T) {
	in := strings.NewReader
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-as csv", Stdin: in(""), Status: 0, Says: ""},
		{Args: "-for women", Stdin: in(""), Status: 0, Says: ""},
		{Args: "-bodies none.csv", Stdin: in(""), Status: 1, Says: "sizes: open none.csv"},
		{Args: "-bodies -", Stdin: in("name,chest\n"), Status: 1, Says: "sizes: no bodies"},
		{Args: "-for nobody", Stdin: in(""), Status: 2, Says: "sizes: -for"},
	})
}

// What README shows of the output is what the sample prints.
func TestReadmeIsTrue(t *testing.T) {
	out, _, err := several.Run("")
	if err != nil {
		t.Fatal(err)
	}
	if shown := sampletest.Readme(t, "counts side by side"); len(shown) < 200 || !strings.Contains(out, shown) {
		t.Errorf("README shows what the demo does not print:\n%s", shown)
	}
}
