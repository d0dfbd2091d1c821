package main

import (
	"slices"
	"strings"
	"testing"

	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"github.com/google/go-cmp/cmp"
)

var pullover = sampletest.Command(program.Run)

func TestMain(m *testing.M) { sampletest.Main(m, main) }

func TestDemo(t *testing.T) {
	pullover.Demo(t, map[string]string{"json": "plan.json", "text": "instructions.txt", "csv": "rows.csv", "svg": "chart.svg", "schematic": "schematic.svg"})
}

func TestHelp(t *testing.T) { pullover.Help(t) }

func TestExitStatus(t *testing.T) {
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-as csv", Stdin: strings.NewReader(""), Status: 0, Says: ""},
		{Args: "-spec -", Stdin: strings.NewReader("[]"), Status: 1, Says: "pullover: document"},
	})
}

// The pieces of the demo fit each other, the head, the hands and the bed.
func TestDemoFits(t *testing.T) {
	spec, err := plan.ParseSpec(demo)
	if err != nil {
		t.Fatal(err)
	}
	set, err := garment.Pieces(spec)
	if err != nil {
		t.Fatal(err)
	}
	checked := map[string]bool{}
	for _, c := range set.Checks {
		checked[c.Name] = true
		if !c.Passed {
			t.Error(c.Says)
		}
	}
	for _, name := range []string{"shoulders", "sides", "armholes", "neck", "cuff", "bed"} {
		if !checked[name] {
			t.Errorf("no check of %s", name)
		}
	}
}

// What README shows of the output is what the sample prints.
func TestReadmeIsTrue(t *testing.T) {
	out, _, err := pullover.Run("")
	if err != nil {
		t.Fatal(err)
	}
	for _, mark := range []string{"checks of the pullover", "neckband of the pullover"} {
		if shown := sampletest.Readme(t, mark); len(shown) < 200 || !strings.Contains(out, shown) {
			t.Errorf("README shows what the demo does not print:\n%s", shown)
		}
	}
}

// What does not fit is told with the instructions, and refused where the spec says so.
func TestMisfit(t *testing.T) {
	tight := sampletest.Replaced(t, string(demo), `"head": "56.5 cm"`, `"head": "75 cm"`)
	out, _, err := pullover.Run(tight, "-spec", "-")
	if err != nil || !strings.Contains(out, "75.00 cm") {
		t.Errorf("error %v; what is printed does not tell of the head", err)
	}
	pullover.Refuses(t, sampletest.Replaced(t, tight, `"methods"`, `"checks": {"neck": "error"}, "methods"`), "neck.width", "75.00 cm")
}

// A spec without sleeves gives the two other pieces.
func TestSlipover(t *testing.T) {
	before, rest, _ := strings.Cut(string(demo), ` "sleeve": `)
	_, after, ok := strings.Cut(rest, "\n")
	if !ok {
		t.Fatal("the demo has no sleeve")
	}
	rows, _, err := pullover.Run(before+after, "-spec", "-", "-as", "csv")
	if err != nil {
		t.Fatal(err)
	}
	var pieces []string
	for line := range strings.Lines(rows) {
		piece, _, _ := strings.Cut(line, ",")
		pieces = append(pieces, piece)
	}
	if diff := cmp.Diff([]string{"piece", "front", "back"}, slices.Compact(pieces)); diff != "" {
		t.Errorf("first column (-want +got):\n%s", diff)
	}
}

// Measurements that only a whole pullover has are refused by their names.
func TestRefusals(t *testing.T) {
	demoWith := func(old, by string) string { return sampletest.Replaced(t, string(demo), old, by) }
	for _, c := range []struct {
		why, spec string
		says      []string
	}{
		{"unknown key", demoWith(`"cuff":`, `"girth":`), []string{"sleeve.girth", "unknown key", "cuff"}},
		{"no such top", demoWith(`"set-in"`, `"puffed"`), []string{"sleeve.cap", `"puffed"`, "straight or set-in"}},
		{"no cuff", demoWith(`"cuff": "22 cm"`, `"cuff": "0 cm"`), []string{"sleeve.cuff 0 cm", "above 0"}},
		{"sleeve too narrow for the top of its cap", demoWith(`"top": "34.8 cm"`, `"top": "12 cm"`), []string{"sleeve.flat 8 cm", "at most"}},
		{"sleeve too narrow for its underarms", demoWith(`"top": "34.8 cm", "cap": "set-in", "ease": "1.5 cm", "flat": "8 cm"`, `"top": "4 cm", "cap": "set-in"`), []string{"sleeve.top 4 cm", "at least"}},
		{"sleeve too wide", demoWith(`"top": "34.8 cm"`, `"top": "70 cm"`), []string{"sleeve.top 70 cm", "the bed has 90", "66.0 cm"}},
		{"sleeve too short", demoWith(`"length": "43.5 cm"`, `"length": "8 cm"`), []string{"sleeve.", "at most"}},
		{"negative ease", demoWith(`"ease": "1.5 cm"`, `"ease": "-1 cm"`), []string{"sleeve.ease -1 cm"}},
		{"hem too wide", demoWith(`"hem": "47 cm"`, `"hem": "90 cm"`), []string{"body.hem 90 cm", "the bed has 90", "66.4 cm"}},
		{"waist too narrow", demoWith(`"width": "44 cm"`, `"width": "12 cm"`), []string{"body.waist.width 12 cm", "from", "to"}},
		{"waist above the underarm", demoWith(`"height": "17.5 cm"`, `"height": "50 cm"`), []string{"body.waist.height 50 cm", "at most"}},
		{"back's neck too deep", demoWith(`"depth": "2.2 cm"`, `"depth": "60 cm"`), []string{"back.neck.depth 60 cm", "at most"}},
		{"stretch with a sign", demoWith(`"stretch": "30"`, `"stretch": "-3"`), []string{"neck.stretch", `"-3"`}},
		{"no such severity", demoWith(`"methods"`, `"checks": {"cuff": "fatal"}, "methods"`), []string{"checks.cuff", "warning or error"}},
	} {
		t.Run(c.why, func(t *testing.T) { pullover.Refuses(t, c.spec, c.says...) })
	}
}
