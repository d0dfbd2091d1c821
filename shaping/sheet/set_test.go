package sheet_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

func writeSet(t testing.TB, s garment.Spec) (string, garment.Set) {
	t.Helper()
	set, err := garment.Pieces(s)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := sheet.WriteSet(&out, set); err != nil {
		t.Fatal(err)
	}
	return out.String(), set
}

// What comes before the pieces; each of them stands on the page as by itself.
func TestGoldenSet(t *testing.T) {
	hand := straight()
	hand.Setup.On = shaping.Hand
	for name, s := range map[string]garment.Spec{"set": jumper(), "hand-set": hand} {
		_, set := writeSet(t, s)
		set.Checks = invented()
		var out bytes.Buffer
		if err := sheet.WriteSet(&out, set); err != nil {
			t.Fatal(err)
		}
		before, pieces, _ := strings.Cut(out.String(), "\nPIECE ")
		golden.Check(t, filepath.Join("testdata", name+".golden"), []byte(before+"\n"))
		for _, piece := range set.Pieces {
			alone := sheetOfPiece(t, piece)
			_, alone, _ = strings.Cut(alone, "\n")
			alone, _, _ = strings.Cut(alone, "\n  Joining order")
			alone, _, _ = strings.Cut(alone, "\n\nTAKE CARE")
			if !strings.Contains(pieces, alone) {
				t.Errorf("%s: the %s is not said as by itself", name, piece.Name())
			}
		}
	}
}

// invented returns checks of every outcome.
func invented() []garment.Check {
	return []garment.Check{
		{Says: "The first two agree.", Passed: true, Severity: garment.AsError},
		{Says: "The second two are 3 rows apart.", Severity: garment.AsWarning},
		{Says: "The third two\nare 4 stitches apart.", Severity: garment.AsError},
	}
}

// Each piece can be knitted from its part of the page.
func TestSetIsEnough(t *testing.T) {
	for name, set := range map[string]struct {
		spec    garment.Spec
		joining int // steps
	}{"jumper": {jumper(), 5}, "cardigan": {cardigan(), 5}} {
		t.Run(name, func(t *testing.T) { checkSet(t, set.spec, set.joining) })
	}
}

func checkSet(t *testing.T, s garment.Spec, joining int) {
	t.Helper()
	text, set := writeSet(t, s)
	parts := strings.Split(text, "\nPIECE ")[1:]
	if len(parts) != len(set.Pieces) {
		t.Fatalf("%d parts for %d pieces", len(parts), len(set.Pieces))
	}
	for i, piece := range set.Pieces {
		if err := compare(parts[i], piece); err != nil {
			t.Errorf("%s: %v", piece.Name(), err)
		}
		if head := fmt.Sprintf("%d OF %d: %s\n", i+1, len(parts), strings.ToUpper(piece.Name())); !strings.HasPrefix(parts[i], head) {
			t.Errorf("part %d does not begin with %q", i+1, head)
		}
	}
	if before := text[:strings.Index(text, "\nPIECE ")]; strings.Count(before, "\n  [ ] ") != joining {
		t.Errorf("not %d steps of joining:\n%s", joining, before)
	}
}

func TestNoSet(t *testing.T) {
	_, set := writeSet(t, jumper())
	withBand := jumper()
	withBand.Band = &garment.BandSpec{Height: gauge.MustParseLength("2 cm")}
	_, banded := writeSet(t, withBand)
	set.Pieces[2].Work.Rows = nil
	banded.Pieces[0].Spec = garment.Spec{}
	for _, set := range []garment.Set{{}, set, banded} {
		for _, write := range []func(io.Writer, garment.Set) error{sheet.WriteSet, sheet.WriteSetPage} {
			var out bytes.Buffer
			if err := write(&out, set); !errors.Is(err, sheet.ErrPiece) || out.Len() > 0 {
				t.Errorf("error %v, %d bytes", err, out.Len())
			}
		}
	}
}

func TestWriteSetError(t *testing.T) {
	_, set := writeSet(t, jumper())
	for _, room := range []int{0, 500, 9000} {
		if err := sheet.WriteSet(&full{room}, set); !errors.Is(err, errFull) {
			t.Errorf("room for %d bytes: error %v", room, err)
		}
	}
}
