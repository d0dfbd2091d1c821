package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

var cardigans = sampletest.Command(program.Run)

func TestMain(m *testing.M) { sampletest.Main(m, main) }

func TestDemo(t *testing.T) {
	cardigans.Demo(t, map[string]string{"json": "plan.json", "text": "instructions.txt", "csv": "rows.csv", "svg": "chart.svg", "schematic": "schematic.svg"})
}

func TestHelp(t *testing.T) { cardigans.Help(t) }

func TestExitStatus(t *testing.T) {
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-as csv", Stdin: strings.NewReader(""), Status: 0, Says: ""},
		{Args: "-spec -", Stdin: strings.NewReader("[]"), Status: 1, Says: "cardigan: document"},
	})
}

const roundFile = "round-in-hand.json"

// The second spec of this folder: a waistcoat with a round neck, on two needles, in inches.
func TestRoundInHand(t *testing.T) {
	out, _, err := cardigans.Run("", "-spec", roundFile)
	if err != nil {
		t.Fatal(err)
	}
	golden.Check(t, filepath.Join("testdata", "round-in-hand.text.golden"), []byte(out))
}

// The pieces of both specs fit each other, the hands and the bed.
func TestSpecsFit(t *testing.T) {
	round, err := os.ReadFile(roundFile)
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string][]byte{"demo": demo, "round": round} {
		spec, err := plan.ParseSpec(text)
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
				t.Errorf("%s: %s", name, c.Says)
			}
		}
		want := []string{"shoulders", "sides", "fronts"}
		if name == "demo" {
			want = append(want, "armholes", "cuff", "bed")
		}
		for _, check := range want {
			if !checked[check] {
				t.Errorf("%s: no check of %s", name, check)
			}
		}
		if checked["neck"] {
			t.Errorf("%s: the neck is compared with the head, though it opens", name)
		}
	}
}

// The pieces in the order in which they are knitted.
func TestPieces(t *testing.T) {
	rows, _, err := cardigans.Run("", "-as", "csv")
	if err != nil {
		t.Fatal(err)
	}
	var pieces []string
	for line := range strings.Lines(rows) {
		piece, _, _ := strings.Cut(line, ",")
		pieces = append(pieces, piece)
	}
	want := []string{"piece", "right front", "left front", "back", "right sleeve", "left sleeve"}
	if diff := cmp.Diff(want, slices.Compact(pieces)); diff != "" {
		t.Errorf("first column (-want +got):\n%s", diff)
	}
}

// A head that no pullover would go over does not concern a cardigan.
func TestOpenNeckHasNoHead(t *testing.T) {
	out, _, err := cardigans.Run(sampletest.Replaced(t, string(demo), `"hand": "24 cm"`, `"hand": "24 cm", "head": "75 cm"`), "-spec", "-")
	if err != nil || strings.Contains(out, "75.00 cm") {
		t.Errorf("error %v; the head is compared", err)
	}
}

func TestRefusals(t *testing.T) {
	demoWith := func(old, by string) string { return sampletest.Replaced(t, string(demo), old, by) }
	const opening = ` "opening": {"buttons": 6},` + "\n"
	for _, c := range []struct {
		why, spec string
		says      []string
	}{
		{"no opening", demoWith(opening, ""), []string{"opening", "missing", "pullover"}},
		{"unknown key", demoWith(`{"buttons": 6}`, `{"zip": "60 cm"}`), []string{"opening.zip", "unknown key", "overlap"}},
		{"negative overlap", demoWith(`{"buttons": 6}`, `{"overlap": "-1 cm"}`), []string{"opening.overlap -1 cm", "0 or a length above it"}},
		{"overlap as wide as the neck", demoWith(`{"buttons": 6}`, `{"overlap": "18.5 cm"}`), []string{"opening.overlap 18.5 cm", "both bands", "at most"}},
		{"band as high as the neck is wide", demoWith(`"height": "3 cm"`, `"height": "19 cm"`), []string{"opening.overlap 19 cm", "at most", "left out, it is band.height"}},
		{"neck too deep", demoWith(`"depth": "26 cm"`, `"depth": "70 cm"`), []string{"neck.depth 70 cm", "at most"}},
		{"hem too narrow for two fronts", demoWith(`"length": "40 cm"`, `"length": "40 cm", "hem": "4 cm"`), []string{"body.hem 4 cm", "at least"}},
		{"too wide for the bed", demoWith(`"needles": 150`, `"needles": 50`), []string{"body.width 53 cm", "the bed has 25", "6 needles"}},
		{"no such severity", demoWith(`"methods"`, `"checks": {"fronts": "fatal"}, "methods"`), []string{"checks.fronts", "warning or error"}},
	} {
		t.Run(c.why, func(t *testing.T) { cardigans.Refuses(t, c.spec, c.says...) })
	}
}
