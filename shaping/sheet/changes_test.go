package sheet_test

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func number(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// counted returns a swatch; grams may be 0.
func counted(stitches int, width string, rows int, height, grams string) gauge.Swatch {
	l := gauge.MustParseLength
	return gauge.Swatch{Stitches: stitches, Width: l(width), Rows: rows, Height: l(height), Grams: number(grams)}
}

func pieceSet(t testing.TB, s garment.Spec) garment.Set {
	t.Helper()
	set, err := garment.Pieces(s)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func changes(t testing.TB, before, after garment.Set) string {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.WriteChanges(&out, before, after); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// bySwatches returns the spec by swatches that lie far apart, with yarn in balls.
func bySwatches(s garment.Spec) garment.Spec {
	s = s.Regauged(garment.GaugeSpec{Swatches: []gauge.Swatch{
		counted(30, "13.1 cm", 42, "13.4 cm", "5.2"), counted(44, "20.6 cm", 60, "19.8 cm", "11.4"),
	}})
	s.Swatches[0].Metres = number("13")
	s.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Grams: number("50"), Metres: number("125")}}
	return s
}

func TestGoldenChanges(t *testing.T) {
	large, inches := bySwatches(jumper()), jumper()
	large.Head = gauge.MustParseLength("60 cm")
	inches.Units, inches.Setup.On = gauge.Inch, shaping.Hand
	slipover := bySwatches(inches)
	slipover.Sleeve = nil
	for name, c := range map[string][2]garment.Spec{
		"changes":      {jumper(), large},
		"changes-less": {inches, slipover}, // the sleeves fall away
		"changes-more": {slipover, inches},
	} {
		text := changes(t, pieceSet(t, c[0]), pieceSet(t, c[1]))
		golden.Check(t, filepath.Join("testdata", name+".golden"), []byte(text))
		for line := range strings.Lines(text) {
			if len([]rune(line)) > 89 {
				t.Errorf("%s: a line of %d characters: %s", name, len([]rune(line)), line)
			}
		}
	}
}

// Every number that changes stands in the table of its piece, or of one that is like it.
func TestChangesAreAllSaid(t *testing.T) {
	before, after := pieceSet(t, jumper()), pieceSet(t, bySwatches(jumper()))
	parts := map[string]string{}
	for part := range strings.SplitSeq(changes(t, before, after), "\n\n") {
		name, rest, _ := strings.Cut(part, "\n")
		parts[name] = strings.Join(strings.Fields(rest), " ") + " "
	}
	if parts["LEFT SLEEVE"] != "As the right sleeve. " {
		t.Errorf("left sleeve: %s", parts["LEFT SLEEVE"])
	}
	for _, c := range garment.Compare(before, after) {
		if c.Piece == shaping.LeftSleeve || c.What == "needles" {
			continue
		}
		said := fmt.Sprintf("%d %d %s ", c.Before.Count, c.After.Count, c.After.Counted)
		if c.After.Counted == "" {
			said = ""
		}
		if !c.After.Length.IsZero() {
			said += c.Before.Length.Format(gauge.Centimetre, 2) + " " + c.After.Length.Format(gauge.Centimetre, 2) + " "
			// The difference of what is printed, by which a reader checks it.
			printed := func(r garment.Figure) gauge.Length {
				return gauge.MustParseLength(r.Length.Format(gauge.Centimetre, 2))
			}
			off := printed(c.After).Sub(printed(c.Before))
			moves := off.Format(gauge.Centimetre, 2)
			if off.Sign() > 0 {
				moves = "+" + moves
			}
			said += moves + " "
		}
		if !strings.Contains(parts[strings.ToUpper(c.Piece)], said) {
			t.Errorf("%s of the %s, %q, is not in %s", c.What, c.Piece, said, parts[strings.ToUpper(c.Piece)])
		}
	}
}

// What stays is said in a line a piece.
func TestNothingChanges(t *testing.T) {
	set := pieceSet(t, jumper())
	text := changes(t, set, set)
	if strings.Count(text, "\n  Stays as it was.\n") != len(set.Pieces) || !strings.Contains(text, "The gauge stays: ") || strings.Contains(text, "moves by") {
		t.Error(text)
	}
}

// From the other side everything is knitted in other rows, and becomes as large.
func TestOnlyStepsChange(t *testing.T) {
	s := jumper()
	s.Setup.Carriage = shaping.Left
	text := changes(t, pieceSet(t, jumper()), pieceSet(t, s))
	if strings.Count(text, "\n  Its numbers stay; its steps change: take them from the new instructions.\n") != 4 {
		t.Error(text)
	}
}

func TestNoChanges(t *testing.T) {
	set, torn := pieceSet(t, jumper()), pieceSet(t, jumper())
	torn.Pieces[1].Work.Rows = nil
	for _, c := range [][2]garment.Set{{set, {}}, {{}, set}, {set, torn}, {torn, set}} {
		var out bytes.Buffer
		if err := sheet.WriteChanges(&out, c[0], c[1]); !errors.Is(err, sheet.ErrPiece) || out.Len() > 0 {
			t.Errorf("error %v, %d bytes", err, out.Len())
		}
	}
	for _, room := range []int{0, 300, 1500} {
		if err := sheet.WriteChanges(&full{room}, set, pieceSet(t, bySwatches(jumper()))); !errors.Is(err, errFull) {
			t.Errorf("room for %d bytes: error %v", room, err)
		}
	}
}

// What any jumper becomes by swatches a tenth off fits on the page.
func TestChangesOfJumpers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := gen.JumperSpec(gauge.MustParseLength("1 mm")).Draw(t, "spec")
		before, err := garment.Pieces(s)
		if err != nil {
			return // package garment tests refusals
		}
		g := before.Pieces[0].Gauge
		over := gauge.MustParseLength("11 cm")
		swatch := gauge.Swatch{
			Stitches: g.Stitches(gauge.MustParseLength("10 cm")).Round(gauge.Rounding{}), Width: over,
			Rows: g.Rows(over).Round(gauge.Rounding{}), Height: over, Grams: number("9.9"), Metres: number("21"),
		}
		after, err := garment.Pieces(s.Regauged(garment.GaugeSpec{Swatches: []gauge.Swatch{swatch, swatch}}))
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := sheet.WriteChanges(&out, before, after); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(out.String()) {
			if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > 88 {
				t.Fatalf("a line of %d characters: %s", n, line)
			}
		}
		for _, p := range after.Pieces {
			if strings.Count(out.String(), "\n"+strings.ToUpper(p.Name())+"\n") != 1 {
				t.Fatalf("the %s is not said once:\n%s", p.Name(), out.String())
			}
		}
	})
}
