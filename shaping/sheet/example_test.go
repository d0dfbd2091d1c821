package sheet_test

import (
	"fmt"
	"log"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// How things stand in the middle of the first half.
func ExampleWriteFrom() {
	cm := gauge.MustParseLength
	g, err := gauge.New(decimal.NewFromInt(20), decimal.NewFromInt(28), cm("10 cm"))
	if err != nil {
		log.Fatal(err)
	}
	front, err := garment.Front(garment.Spec{
		Gauge:    g,
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("20 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
	})
	if err != nil {
		log.Fatal(err)
	}
	var text strings.Builder
	if err := sheet.WriteFrom(&text, front, sheet.Reading{Panel: shaping.LeftHalf, Counter: 150}); err != nil {
		log.Fatal(err)
	}
	_, here, _ := strings.Cut(text.String(), "WHERE YOU ARE\n")
	here, _, _ = strings.Cut(here, "\n\n")
	fmt.Println(here)
	// Output:
	// Counter 150, carriage at the right. You have just knitted row 150, from left to right,
	//   and wrapped L15.
	//   This is the left half: the neck is at its right end, the outer edge at its left end;
	//   it becomes the wearer's left shoulder.
	//   In work: L50-L16, 35 stitches.
	//   On hold: the neck of the left half L15-L7 (9); the middle L6-R6 (12); the right half
	//   R7-R50 (44).
	//   The carriage is set to hold.
	//   Check: 35 in work + 65 on hold (L15-R50) = 100 cast on.
}
