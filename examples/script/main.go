// Command script turns a gauge and a neck into steps in words: a first program to copy.
//
//	go run ./examples/script
package main

import (
	"fmt"
	"log"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

func main() {
	cm := gauge.MustParseLength
	swatch := must(gauge.Swatch{Stitches: 40, Width: cm("18.5 cm"), Rows: 60, Height: cm("19.8 cm")}.Gauge())
	neck := must(curve.QuarterEllipse(cm("6 cm"), cm("8 cm"))) // one side, without the flat middle
	box := must(neck.At(swatch))
	held := shaping.RulesFor(shaping.Hold, shaping.Left, shaping.Right, shaping.Bed) // of the right half
	steps := must(box.Wordings(held, curve.Phrasing{})).Default().Schedule
	fmt.Printf("%d stitches go over %d rows.\nFrom the middle up, %s.\n", box.Stitches(), box.Rows(), steps.Words())
}

func must[T any](value T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return value
}
