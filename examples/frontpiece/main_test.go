package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

var frontpiece = sampletest.Command(program.Run)

func TestMain(m *testing.M) { sampletest.Main(m, main) }

func TestDemo(t *testing.T) {
	frontpiece.Demo(t, map[string]string{"json": "plan.json", "text": "instructions.txt", "csv": "rows.csv", "svg": "chart.svg", "schematic": "schematic.svg", "html": "sheet.html"})
}

func TestHelp(t *testing.T) { frontpiece.Help(t) }

func TestExitStatus(t *testing.T) {
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-as csv", Stdin: strings.NewReader(""), Status: 0, Says: ""},
		{Args: "-spec -", Stdin: strings.NewReader("[]"), Status: 1, Says: "frontpiece: document"},
	})
}

// The second spec of this folder: another neck, other methods, in the hand, in inches.
func TestVeeInHand(t *testing.T) {
	out, _, err := frontpiece.Run("", "-spec", "vee-in-hand.json")
	if err != nil {
		t.Fatal(err)
	}
	golden.Check(t, filepath.Join("testdata", "vee-in-hand.text.golden"), []byte(out))
}

// The third: drawn neck, armhole and shoulder.
func TestDrawnNeck(t *testing.T) {
	out, _, err := frontpiece.Run("", "-spec", "drawn-neck.json")
	if err != nil {
		t.Fatal(err)
	}
	golden.Check(t, filepath.Join("testdata", "drawn-neck.text.golden"), []byte(out))
}

// For somebody who lost the place in the first half, between two holds at the neck.
func TestFromReading(t *testing.T) {
	out, _, err := frontpiece.Run("", "-from", "204", "-panel", "left half")
	if err != nil {
		t.Fatal(err)
	}
	golden.Check(t, filepath.Join("testdata", "demo-from-204.text.golden"), []byte(out))
}

// What README shows of the output is what the sample prints.
func TestReadmeIsTrue(t *testing.T) {
	out, _, err := frontpiece.Run("")
	if err != nil {
		t.Fatal(err)
	}
	shown := sampletest.Readme(t, "from the demo")
	if len(shown) < 200 || !strings.Contains(out, shown) {
		t.Errorf("README shows what the demo does not print:\n%s", shown)
	}
	spec, err := plan.ParseSpec(demo)
	if err != nil {
		t.Fatal(err)
	}
	piece, err := garment.Front(spec)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := sampletest.Readme(t, "from the cloth"), picture(piece); got != want {
		t.Errorf("README's picture is not the cloth, which is\n%s", want)
	}
}

// picture draws the left half of the piece from the heights of its wales, a
// character for two stitches and two rows.
func picture(piece garment.Piece) string {
	const stitches, rows = 2, 2
	half, _ := piece.Work.Panels.Panel(shaping.LeftHalf)
	var text strings.Builder
	for row := half.LastRow; row >= half.FirstRow-rows; row -= rows {
		line := fmt.Sprintf("row %3d  ", row)
		for i := 0; i < half.Needles.Len(); i += stitches {
			n := half.Needles.First.Toward(shaping.Right, i)
			if piece.Cloth.Height(n) >= row {
				line += "#"
			} else {
				line += " "
			}
		}
		text.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return text.String()
}

func TestRefusals(t *testing.T) {
	demoWith := func(old, by string) string { return sampletest.Replaced(t, string(demo), old, by) }
	for _, c := range []struct {
		why, spec string
		says      []string
	}{
		{"no document", "", []string{"empty"}},
		{"not JSON", "{", nil},
		{"unknown key", demoWith(`"depth": "8.5 cm"`, `"deep": "8.5 cm"`), []string{"neck.deep", "unknown key"}},
		{"repeated key", demoWith(`"seam":`, `"seam": {"stitches": 1}, "seam":`), []string{"seam"}},
		{"decimal comma", demoWith(`"18.5 cm"`, `"18,5 cm"`), []string{"neck.width", `"18,5 cm"`, "18.5 cm"}},
		{"no unit", demoWith(`"18.5 cm"`, `"18.5"`), []string{"neck.width", "18.5 cm"}},
		{"number for a length", demoWith(`"18.5 cm"`, `18.5`), []string{"neck.width"}},
		{"not a number", demoWith(`"18.5 cm"`, `"NaN cm"`), []string{"neck.width", "NaN"}},
		{"absurd", demoWith(`"18.5 cm"`, `"1000000000 cm"`), []string{"neck.width", "1000 m"}},
		{"negative", demoWith(`"18.5 cm"`, `"-18.5 cm"`), []string{"neck.width", "above 0"}},
		{"zero", demoWith(`"18.5 cm"`, `"0 cm"`), []string{"neck.width", "above 0"}},
		{"neck too wide", demoWith(`"18.5 cm"`, `"45 cm"`), []string{"neck.width", "at most"}},
		{"neck too deep", demoWith(`"depth": "8.5 cm"`, `"depth": "80 cm"`), []string{"neck.depth", "at most"}},
		{"no whole group", demoWith(`"inset": "6.5 cm"`, `"inset": "16.5 cm"`), []string{"shoulder.drop"}},
		{"bed too narrow", demoWith(`"needles": 200`, `"needles": 120`), []string{"10 needles are missing", "49.2 cm"}},
		{"gauge and swatch", demoWith(`"start":`, `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}, "start":`), []string{"gauge", "swatch"}},
		{"neither", `{"format": "walewise-spec/1", "body": {"width": "53 cm", "length": "41 cm"}, "armhole": {"depth": "22 cm"}, "neck": {"shape": "round", "width": "18 cm", "depth": "8 cm"}, "shoulder": {"drop": "3 cm"}}`, []string{"gauge"}},
		{"too large", `{"title": "` + strings.Repeat("x", 2<<20) + `"}`, []string{"1 MiB"}},
		{"null", demoWith(`"18.5 cm"`, `null`), []string{"neck.width", "null"}},
	} {
		t.Run(c.why, func(t *testing.T) { frontpiece.Refuses(t, c.spec, c.says...) })
	}
}

// BenchmarkSpecToPlan goes the whole way: the text of a spec to the text of a plan.
func BenchmarkSpecToPlan(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		spec, err := plan.ParseSpec(demo)
		if err != nil {
			b.Fatal(err)
		}
		piece, err := garment.Front(spec)
		if err != nil {
			b.Fatal(err)
		}
		if err := plan.Write(io.Discard, plan.From(piece)); err != nil {
			b.Fatal(err)
		}
	}
}
