package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"github.com/google/go-cmp/cmp"
)

var regauging = sampletest.Command(program.Run)

func TestMain(m *testing.M) { sampletest.Main(m, main) }

func TestDemo(t *testing.T) {
	regauging.Demo(t, map[string]string{"json": "plan.json", "text": "changes.txt", "csv": "rows.csv"})
}

func TestHelp(t *testing.T) { regauging.Help(t) }

func TestExitStatus(t *testing.T) {
	none := func() *strings.Reader { return strings.NewReader("") }
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-as csv", Stdin: none(), Status: 0, Says: ""},
		{Args: "-as instructions", Stdin: none(), Status: 0, Says: ""},
		{Args: "-spec demo.json -new -", Stdin: strings.NewReader("[]"), Status: 1, Says: "regauge: document [...]: write an object in { } whose format is \"walewise-gauge/1\""},
		{Args: "-spec demo.json -new none.json", Stdin: none(), Status: 1, Says: "regauge: open none.json"},
		{Args: "-spec demo.json -new demo.json", Stdin: none(), Status: 1, Says: `regauge: format "walewise-spec/1": only "walewise-gauge/1" can be read here`},
		{Args: "-spec - -new washed.json", Stdin: strings.NewReader("\x00\xff"), Status: 1, Says: "regauge: document"},
		{Args: "-spec demo.json", Stdin: none(), Status: 2, Says: "regauge: -spec without -new: give both, or neither for the demo"},
		{Args: "-new washed.json", Stdin: none(), Status: 2, Says: "regauge: -new without -spec: give both, or neither for the demo"},
		{Args: "-spec - -new -", Stdin: none(), Status: 2, Says: "regauge: -spec and -new: only one of them can be read from standard input"},
		{Args: "-check - -new washed.json", Stdin: none(), Status: 2, Says: "regauge: -check with -new"},
	})
}

// The files of the demo, named, give the demo; either of them may be standard input.
func TestFilesAndStandardInput(t *testing.T) {
	want, _, err := regauging.Run("")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ args, stdin string }{
		{"-spec demo.json -new washed.json", ""},
		{"-spec - -new washed.json", string(demo)},
		{"-spec demo.json -new -", string(washed)},
	} {
		if got, _, err := regauging.Run(c.stdin, strings.Fields(c.args)...); err != nil || got != want {
			t.Errorf("%s: error %v (-demo +got):\n%s", c.args, err, cmp.Diff(want, got))
		}
	}
}

// Both garments of the demo fit; in the new one the swatches agree.
func TestDemoFits(t *testing.T) {
	spec, err := plan.ParseSpec(demo)
	if err != nil {
		t.Fatal(err)
	}
	by, err := plan.ParseGauge(washed)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []garment.Spec{spec, spec.Regauged(by)} {
		set, err := garment.Pieces(s)
		if err != nil {
			t.Fatal(err)
		}
		if failed := set.Failed(); len(failed) > 0 || !set.Pieces[0].Gauge.Agree() {
			t.Errorf("%v, agree: %v", failed, set.Pieces[0].Gauge.Agree())
		}
	}
}

// What cannot be planned, before or now, is refused in a line that says which it is.
func TestRefusals(t *testing.T) {
	with := func(document []byte, old, by string) string {
		return sampletest.Replaced(t, string(document), old, by)
	}
	for _, c := range []struct {
		why, args, stdin string
		says             []string
	}{
		{"a body too wide for the bed before", "-spec - -new washed.json", with(demo, `"needles": 180`, `"needles": 120`), []string{"by the gauge of the spec: body.width 54.5 cm", "needles are missing"}},
		{"too wide by the new gauge only", "-spec demo.json -new -", with(washed, `"width": "26.2 cm"`, `"width": "12 cm"`), []string{"by the new gauge: body.width 54.5 cm", "needles are missing"}},
		{"no swatch", "-spec demo.json -new -", `{"format": "walewise-gauge/1"}`, []string{"gauge: the key is missing"}},
		{"none of several", "-spec demo.json -new -", `{"format": "walewise-gauge/1", "swatches": []}`, []string{"swatches 0 of them: 1 to 16"}},
		{"a swatch of nothing", "-spec demo.json -new -", with(washed, `"25.3 cm"`, `"0 cm"`), []string{"swatches[1].height 0 cm"}},
		{"unknown key", "-spec demo.json -new -", with(washed, `"grams"`, `"gram"`), []string{"swatches[0].gram", "unknown key", "grams"}},
		{"more than a gauge", "-spec demo.json -new -", with(washed, `"swatches"`, `"title": "x", "swatches"`), []string{"title: unknown key"}},
		{"weight with a sign", "-spec demo.json -new -", with(washed, `"10.4"`, `"-10.4"`), []string{"swatches[0].grams", "-10.4"}},
		{"margin too large", "-spec - -new washed.json", with(demo, `"yarn": {`, `"yarn": {"margin": "101", `), []string{"yarn.margin 101: 0 to 100"}},
	} {
		out, _, err := regauging.Run(c.stdin, strings.Fields(c.args)...)
		if err == nil || out != "" || errors.Is(err, command.ErrUsage) {
			t.Errorf("%s: error %v, %d bytes printed", c.why, err, len(out))
			continue
		}
		for _, part := range c.says {
			if text := command.OneLine(err); !strings.Contains(text, part) || len(text) > 300 {
				t.Errorf("%s: does not say %q: %s", c.why, part, text)
			}
		}
	}
}

// The folder has the instructions as they are printed.
func TestInstructions(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if _, _, err := regauging.Run("", "-out", dir); err != nil {
		t.Fatal(err)
	}
	printed, _, err := regauging.Run("", "-as", "instructions")
	if err != nil {
		t.Fatal(err)
	}
	written, err := os.ReadFile(filepath.Join(dir, "instructions.txt"))
	if err != nil || printed != string(written) || !strings.Contains(printed, "in 2 swatches together") {
		t.Errorf("error %v (-printed +written):\n%s", err, cmp.Diff(printed, string(written)))
	}
}

// One piece is gone on with: what changes, and the rest of its instructions.
func TestKnitted(t *testing.T) {
	out, _, err := regauging.Run("", "-knitted", "60")
	if err != nil {
		t.Fatal(err)
	}
	golden.Check(t, "testdata/knitted.text.golden", []byte(out))
	back, _, err := regauging.Run("", "-knitted", "60", "-piece", "back", "-as", "instructions")
	if err != nil || !strings.Contains(back, "Back, knitted") || !strings.Contains(back, "Counter 060") {
		t.Errorf("error %v, printed\n%s", err, back)
	}
	for _, c := range []struct{ args, says string }{
		{"-knitted 190", "rows 190: row 0, the cast on, to row"},
		{"-knitted -1", "rows -1: row 0, the cast on, to row"},
		{"-knitted 60 -piece collar", `-piece "collar": the pieces are front, back, right sleeve, left sleeve`},
	} {
		if _, _, err := regauging.Run("", strings.Fields(c.args)...); err == nil || !strings.Contains(command.OneLine(err), c.says) {
			t.Errorf("%s: error %v", c.args, err)
		}
	}
	for args, says := range map[string]string{"-piece back": "-piece without -knitted", "-knitted many": "invalid value", "-check - -knitted 3": "-check with -knitted"} {
		if _, messages, err := regauging.Run("", strings.Fields(args)...); !errors.Is(err, command.ErrUsage) || !strings.Contains(messages, says) {
			t.Errorf("%s: error %v, said %q", args, err, messages)
		}
	}
}
