package sheet_test

import (
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// fronts returns both fronts of a spec by their names; ok is false if they cannot be made.
func fronts(s garment.Spec) (both map[string]garment.Piece, ok bool) {
	right, left, err := garment.Fronts(s)
	return map[string]garment.Piece{right.Name(): right, left.Name(): left}, err == nil
}

// The sheets of two fronts suffice to knit them.
func TestFrontsAreEnough(t *testing.T) {
	made := 0
	rapid.Check(t, func(rt *rapid.T) {
		both, ok := fronts(gen.CardiganSpec(gauge.MustParseLength("1 mm")).Draw(rt, "spec"))
		if !ok {
			return
		}
		made++
		for name, piece := range both {
			if err := compare(sheetOfPiece(t, piece), piece); err != nil {
				rt.Fatalf("%s: %v", name, err)
			}
		}
	})
	if made == 0 {
		t.Error("no fronts were made")
	}
}

func TestGoldenFronts(t *testing.T) {
	l := gauge.MustParseLength
	vee := jumper()
	vee.Title = "A child's waisted cardigan"
	vee.Neck = garment.Neck{Shape: garment.VeeNeck, Width: vee.Neck.Width, Depth: l("15 cm")}
	vee.Methods.Neck = garment.By(shaping.Fashioned)
	vee.Opening = &garment.Opening{Overlap: garment.Exactly(l("2 cm"))}
	round := jumper()
	round.Title = "A child's round cardigan"
	round.Opening = &garment.Opening{Overlap: garment.Exactly(l("2 cm"))}
	round.Setup.On = shaping.Hand
	for kind, s := range map[string]garment.Spec{"vee": vee, "hand-round": round} {
		both, ok := fronts(s)
		if !ok {
			t.Fatalf("%s: no fronts", kind)
		}
		for name, piece := range both {
			text := sheetOfPiece(t, piece)
			golden.Check(t, filepath.Join("testdata", kind+"-"+strings.ReplaceAll(name, " ", "-")+".golden"), []byte(text))
			if err := compare(text, piece); err != nil {
				t.Errorf("%s %s: %v", kind, name, err)
			}
		}
	}
}
