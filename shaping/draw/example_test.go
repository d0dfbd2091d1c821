package draw_test

import (
	"fmt"
	"log"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
)

// A chart says which side of the fabric it shows.
func Example() {
	front := slipoverFront()
	for _, facing := range []shaping.Facing{shaping.PurlSide, shaping.KnitSide} {
		var picture strings.Builder
		if err := draw.Chart(&picture, draw.Look{Facing: facing, Folded: true}, front); err != nil {
			log.Fatal(err)
		}
		fmt.Println(described(picture.String()))
	}
	// Output:
	// Chart of front: 110 stitches at the widest, 180 rows high; 84 stitches are shaped one by one, as the written steps say. Bed view: the purl side faces you, left and right are those of the bed.
	// Chart of front: 110 stitches at the widest, 180 rows high; 84 stitches are shaped one by one, as the written steps say. Right side view: the knit side faces you, left and right are the other way round than at the bed.
}

func ExampleSchematic() {
	var picture strings.Builder
	if err := draw.Schematic(&picture, draw.Look{}, slipoverFront()); err != nil {
		log.Fatal(err)
	}
	_, lengths, _ := strings.Cut(described(picture.String()), "Front: ")
	fmt.Println(lengths)
	// Output:
	// width 50.0 cm, to underarm 35.7 cm, armhole 21.0 cm, neck 18.2 cm, neck depth 8.0 cm, shoulder 15.9 cm, shoulder drop 3.3 cm, whole height 60.0 cm.
}

// How many sheets of paper to stick together before the front is pinned out on them.
func ExampleTile() {
	front := slipoverFront()
	for _, paper := range []draw.Paper{draw.A4, draw.Letter} {
		tiling, err := draw.Tile(paper, front)
		if err != nil {
			log.Fatal(err)
		}
		sheets := 0
		for row := 1; row <= tiling.Rows(); row++ {
			for column := 1; column <= tiling.Columns(); column++ {
				if !tiling.IsBlank(row, column) {
					sheets++
				}
			}
		}
		fmt.Printf("%v: %d by %d, %d to print\n", paper, tiling.Columns(), tiling.Rows(), sheets)
	}
	// Output:
	// A4: 3 by 3, 8 to print
	// Letter: 3 by 3, 8 to print
}

func ExampleAlike() {
	front := slipoverFront()
	fmt.Println(len(draw.Alike(front, front)), "picture does for two")
	// Output:
	// 1 picture does for two
}

func slipoverFront() garment.Piece {
	cm := gauge.MustParseLength
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), cm("10 cm"))
	if err != nil {
		log.Fatal(err)
	}
	front, err := garment.Front(garment.Spec{
		Gauge:    g,
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("21 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
	})
	if err != nil {
		log.Fatal(err)
	}
	return front
}

// described returns what a picture says of itself to those who cannot see it.
func described(picture string) string {
	_, rest, _ := strings.Cut(picture, "<desc")
	_, rest, _ = strings.Cut(rest, ">")
	text, _, _ := strings.Cut(rest, "</desc>")
	return text
}
