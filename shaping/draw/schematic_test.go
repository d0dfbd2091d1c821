package draw_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
	"pgregory.net/rapid"
)

func schematic(t tester, look draw.Look, pieces ...garment.Piece) picture {
	t.Helper()
	var svg bytes.Buffer
	if err := draw.Schematic(&svg, look, pieces...); err != nil {
		t.Fatal(err)
	}
	return read(t, svg.Bytes())
}

// scaleOf returns of how many parts of a length the picture shows one.
func scaleOf(t tester, p picture) int {
	t.Helper()
	for _, e := range p {
		var scale int
		if n, _ := fmt.Sscanf(e.text, "Scale 1 : %d", &scale); n == 1 && e.name == "text" {
			return scale
		}
	}
	t.Fatal("the picture names no scale")
	return 0
}

// Every line that measures something is as long as the piece says, to scale.
func TestSchematicLinesAreTheLengthsOfThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		look := looks().Draw(t, "look")
		look.Inline = false // where no scale is named
		p := drawPiece(t)
		picture := schematic(t, look, p)
		scale := scaleOf(t, picture)
		knitted := map[string]int{}
		for _, s := range p.Sizes {
			knitted[s.Name] = thousandths(s.Knitted.Millimetres().InexactFloat64())
		}
		has := func(what string, length int, names ...string) {
			for _, name := range names {
				if off := length*scale - knitted[name]; knitted[name] > 0 && off > -25*scale && off < 25*scale {
					return
				}
			}
			t.Fatalf("%s: a line %s is %d long, 1 : %d; the piece has %v", p.Name(), what, length, scale, knitted)
		}
		lines := 0
		for _, e := range picture.classed("lengths") {
			for _, ends := range e.subpaths(t) {
				if len(ends) == 2 && ends[0].x == ends[1].x {
					has("upwards", max(ends[1].y-ends[0].y, ends[0].y-ends[1].y), "drop", "armhole", "cap", "height", "length", "waistHeight")
					lines++
				}
			}
		}
		for _, e := range picture.classed("widths") {
			ends := e.subpaths(t)[0]
			if len(ends) == 2 {
				has("across", max(ends[1].x-ends[0].x, ends[0].x-ends[1].x), "hem", "cuff", "width", "waist", "flat", "neckWidth", "shoulder")
				lines++
			}
		}
		if lines < 3 {
			t.Fatalf("%s: only %d lines measure something", p.Name(), lines)
		}
	})
}

// Every size is written: what is knitted, and what was asked where that reads otherwise; and
// the rows and stitches of the corners.
func TestSchematicNamesEverySize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		picture := schematic(t, draw.Look{}, p)
		var notes, corners []string
		for _, e := range picture.in("notes") {
			notes = append(notes, e.text)
		}
		for _, e := range picture.in("corners") {
			corners = append(corners, e.text)
		}
		places := 1
		if p.Spec.Units == gauge.Inch {
			places = 2
		}
		for _, s := range p.Sizes {
			asked, knitted := s.Asked.Format(p.Spec.Units, places), s.Knitted.Format(p.Spec.Units, places)
			if !slices.Contains(notes, knitted) {
				t.Fatalf("%s: %s, knitted %s, is not among %q", p.Name(), s.Name, knitted, notes)
			}
			if asked != knitted && !slices.Contains(notes, "asked "+asked) {
				t.Fatalf("%s: %s, asked %s, is not among %q", p.Name(), s.Name, asked, notes)
			}
		}
		wanted := []string{"0 rows", fmt.Sprintf("%d st", p.Widths.CastOn)}
		for _, s := range p.Sizes {
			switch s.Name {
			case "length", "height":
				wanted = append(wanted, fmt.Sprintf("%d rows", s.Count))
			}
		}
		// Stitches at a corner are those that the row that ends there has.
		for i := 1; i < len(corners); i++ {
			var rows, stitches int
			_, err := fmt.Sscanf(corners[i-1], "%d rows", &rows)
			if _, also := fmt.Sscanf(corners[i], "%d st", &stitches); err != nil || also != nil || rows == 0 {
				continue
			}
			has := stitches == p.Widths.Shoulder || stitches == p.Widths.Flat
			for _, row := range p.Work.Rows {
				has = has || row.Row == rows && row.Knit.Len() == stitches
			}
			if !has {
				t.Fatalf("%s: %d stitches at %d rows", p.Name(), stitches, rows)
			}
		}
		for _, text := range wanted {
			if !slices.ContainsFunc(corners, func(c string) bool { return strings.Contains(c, text) }) {
				t.Fatalf("%s: %q is not among the corners %q", p.Name(), text, corners)
			}
		}
	})
}

// Two sleeves that are the same are drawn once; two fronts are not the same.
func TestSchematicDrawsWhatIsAlikeOnce(t *testing.T) {
	for program, want := range map[string]int{"pullover": 3, "cardigan": 4} {
		set, err := garment.Pieces(demo(t, program))
		if err != nil {
			t.Fatal(err)
		}
		picture := schematic(t, draw.Look{}, set.Pieces...)
		if got := len(picture.classed("outline")); got != want {
			t.Errorf("%s: %d outlines, want %d", program, got, want)
		}
		if title := picture.named("title")[0].text; !strings.HasSuffix(title, "right sleeve, left sleeve") {
			t.Errorf("%s: the title is %q", program, title)
		}
	}
}

// Nothing stands outside of the picture, whose texts are taken to be as wide as a wide font
// makes them.
func TestSchematicStaysOnThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := drawSet(t)
		picture := schematic(t, draw.Look{}, set.Pieces...)
		box := numbersOf(t, picture[0].attrs["viewBox"])
		const widest = 190_000 // of the page
		if box[2] > widest {
			t.Fatalf("the page is %d wide", box[2])
		}
		anchor, size := "", 0
		for _, e := range picture {
			if e.name == "g" {
				anchor, size = e.attrs["text-anchor"], e.number(t, "font-size")
			}
			if e.name != "text" {
				continue
			}
			own, wide := anchor, size
			if e.group == "" {
				own, wide = e.attrs["text-anchor"], e.number(t, "font-size")
			}
			x, length := e.number(t, "x"), len(e.text)*wide*6/10
			left, right := x, x+length
			switch own {
			case "end":
				left, right = x-length, x
			case "middle":
				left, right = x-length/2, x+length/2
			}
			if y := e.number(t, "y"); left < 0 || right > box[2] || y < wide || y > box[3] {
				t.Fatalf("%q from %d to %d at height %d lies outside of %v", e.text, left, right, y, box)
			}
		}
	})
}
