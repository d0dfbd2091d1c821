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

// cardigan returns the spec of the small jumper, opened.
func cardigan() garment.Spec {
	s := jumper()
	s.Title = "A child's round cardigan"
	s.Opening = &garment.Opening{Overlap: garment.Exactly(gauge.MustParseLength("2 cm"))}
	return s
}

func veeCardigan() garment.Spec {
	s := cardigan()
	s.Title = "A child's waisted cardigan"
	s.Neck = garment.Neck{Shape: garment.VeeNeck, Width: s.Neck.Width, Depth: gauge.MustParseLength("15 cm")}
	s.Methods.Neck = garment.By(shaping.Fashioned)
	return s
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
	round := cardigan()
	round.Setup.On = shaping.Hand
	for kind, s := range map[string]garment.Spec{"vee": veeCardigan(), "hand-round": round} {
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

// What is wrong in the sheet of a front shows when it is followed.
func TestReaderNoticesFaultsInFronts(t *testing.T) {
	hand := cardigan()
	hand.Setup.On = shaping.Hand
	for _, fault := range []struct {
		name           string
		spec           garment.Spec
		piece          string
		wrong, instead string // what is printed, and of what it takes the place
	}{
		{"the other front", veeCardigan(), shaping.RightFront, "LEFT FRONT\n", "RIGHT FRONT\n"},
		{"worn on the other side", veeCardigan(), shaping.LeftFront, "worn on the wearer's right", "worn on the wearer's left"},
		{"edges changed", veeCardigan(), shaping.RightFront, "is at its right end, the outer edge with side\n  and armhole at its left end", "is at its left end, the outer edge with side\n  and armhole at its right end"},
		{"both ends the other way", veeCardigan(), shaping.RightFront, "the neck at the right and the outer edge at the left", "the neck at the left and the outer edge at the right"},
		{"the neck at the outer edge", veeCardigan(), shaping.RightFront, "Decrease 1 at the right edge: move L", "Decrease 1 at the neck: move L"},
		{"the neck forgotten", hand, shaping.RightFront, "The 13 sts of the neck are", "The 14 sts of the neck are"},
		{"stitches left waiting", hand, shaping.LeftFront, "Slip the 13 sts", "Slip the 14 sts"},
	} {
		both, ok := fronts(fault.spec)
		if !ok {
			t.Fatalf("%s: no fronts", fault.name)
		}
		piece := both[fault.piece]
		checkNoticed(t, sheetOfPiece(t, piece), piece, fault.name, fault.wrong, fault.instead)
	}
}
