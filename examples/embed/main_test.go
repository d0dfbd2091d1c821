package main

import (
	"bytes"
	"errors"
	"os"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

func Example() {
	main()
	// Output:
	// The breakfast pot, 47 cm round
	//   Cast on 92, carriage at the right, and knit 14 rows.
	//   Then two domes of 46 stitches and 41 rows, first the right one. Decrease at both edges, row 23: 1 stitch every 4th and 3rd row in turn, 4 times; 1 stitch every 2nd row, 6 times; 2 stitches every 2nd and 3rd row in turn, 3 times; 1 stitch 2 rows later.
	//   Gather the last 12 of each. Knitted by the judge: 92 cast on = 68 decreased + 24 live.
	// .........######................######.........
	// ......###########............###########......
	// .....##############........##############.....
	// ....################......################....
	// ..###################....###################..
	// ..####################..####################..
	// .############################################.
	// ##############################################
	// ##############################################
	// ##############################################
	// ##############################################
	// The squat pot, 58 cm round
	//   No dome takes off 23 stitches at an edge in 19 rows. One takes off 23 in 23. One takes off 20 in 19.
	// The breakfast pot, 47 cm round
	//   Take a finer yarn: 45.2 cm round: does not sit on the pot
}

// Whoever wants to embed the library can read the program in one go.
func TestStaysShort(t *testing.T) {
	text, err := os.ReadFile("main.go")
	if err != nil {
		t.Fatal(err)
	}
	if lines := bytes.Count(text, []byte("\n")); lines >= 150 {
		t.Errorf("%d lines, want fewer than 150", lines)
	}
}

// pot returns a pot of a girth; with 10 stitches to 10 cm a stitch is a centimetre wide.
func pot(girth string) (Pot, gauge.Swatch) {
	cm := gauge.MustParseLength
	return Pot{Name: "pot", Girth: cm(girth), Knob: cm("10 cm"), Wall: cm("6 cm"), Dome: cm("16 cm")},
		gauge.Swatch{Stitches: 20, Width: cm("20 cm"), Rows: 40, Height: cm("20 cm")}
}

// A cosy has two equal domes, so with such a gauge it is an even number of centimetres round.
func TestSits(t *testing.T) {
	for _, c := range []struct {
		girth    string
		stitches int
	}{
		{"48 cm", 48},
		{"49 cm", 50}, // a centimetre more
		{"48.9 cm", 48},
		{"51.1 cm", 52},
	} {
		cosy, err := NewCosy(pot(c.girth))
		if got := cosy.Cloth.Needles().Len(); got != c.stitches || err != nil {
			t.Errorf("%s: %d stitches round, want %d; error %v", c.girth, got, c.stitches, err)
		}
	}
	// The same cloth on other pots.
	cosy, err := NewCosy(pot("48 cm"))
	if err != nil {
		t.Fatal(err)
	}
	for girth, sits := range map[string]bool{"46.9 cm": false, "47 cm": true, "49 cm": true, "49.1 cm": false} {
		cosy.Pot.Girth = gauge.MustParseLength(girth)
		if err := cosy.sits(); (err == nil) != sits || errors.Is(err, ErrLoose) == sits {
			t.Errorf("48 cm round on a pot of %s: %v", girth, err)
		}
	}
	// Where a stitch is 2 cm wide, 46 cm lie as far from 44 cm as from 48 cm.
	coarse, swatch := pot("46 cm")
	swatch.Width = swatch.Width.Mul(2)
	if _, err := NewCosy(coarse, swatch); !errors.Is(err, ErrLoose) {
		t.Errorf("48 cm round on a pot of 46 cm: %v", err)
	}
}

// The judge finds both domes alike, each its own reflection, with the knob's stitches on top.
func TestDomes(t *testing.T) {
	cosy, err := NewCosy(pot("48 cm"))
	if err != nil {
		t.Fatal(err)
	}
	heights := map[int]int{} // by the place from the left
	for _, height := range cosy.Cloth.Wales() {
		heights[len(heights)] = height
	}
	highest := 0
	for i, height := range heights {
		for what, other := range map[string]int{"the other dome": (i + 24) % 48, "its reflection": 47 - i} {
			if heights[other] != height {
				t.Errorf("wale %d is %d rows high, in %s %d", i, height, what, heights[other])
			}
		}
		if height == 12+32 {
			highest++
		}
	}
	if ledger := (shaping.Ledger{CastOn: 48, Decreased: 36, Live: 12}); cosy.Cloth.Ledger() != ledger || highest != 12 {
		t.Errorf("%v, %d wales to the top; want %v", cosy.Cloth.Ledger(), highest, ledger)
	}
}

// What walewise refuses can be told apart, and what it says would work does.
func TestRefusals(t *testing.T) {
	low, swatch := pot("80 cm")
	low.Dome = gauge.MustParseLength("5 cm")
	_, err := NewCosy(low, swatch)
	blocked, ok := errors.AsType[*curve.Error](err)
	if !ok || !errors.Is(err, curve.ErrInfeasible) || len(blocked.Nearest) == 0 {
		t.Fatalf("a dome too low: %v", err)
	}
	tried := 0
	for _, other := range blocked.Nearest {
		if other.Stitches == blocked.Asked.Stitches && other.Rules == blocked.Asked.Rules {
			low.Dome = gauge.MustParseLength("5 mm").Mul(other.Rows)
			if _, err := NewCosy(low, swatch); err != nil {
				t.Errorf("%d rows were said to work: %v", other.Rows, err)
			}
			tried++
		}
	}
	if tried == 0 {
		t.Errorf("no other dome was proposed: %v", err)
	}
	if _, err := NewCosy(low, gauge.Swatch{}); !errors.Is(err, gauge.ErrRange) {
		t.Errorf("no swatch: %v", err)
	}
}
