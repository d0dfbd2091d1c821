// Command cardigan plans a whole cardigan and prints how to knit it: right and left front,
// back and two sleeves, and whether they fit each other, the wearer and the bed. Without
// sleeves in the spec it is a waistcoat.
//
//	go run ./examples/cardigan
//	go run ./examples/cardigan -spec my.json -as csv
//	go run ./examples/cardigan -spec my.json -out cardigan
//	go run ./examples/cardigan -spec my.json -from 130 -piece "left front"
//	go run ./examples/cardigan -check cardigan/plan.json
//
// Without -spec it plans an embedded demo. With -out it writes everything that -as
// can print into a folder, and prints the paths of the files. With -from it prints how
// things stand in a piece at a counter reading and the rest from there. With -check it plans
// nothing, but knits the pieces of a plan, whoever made it, and prints what becomes
// of them; that the sizes in the plan are true is not checked.
//
// Exit status 0; 1 for a spec, plan or folder that cannot be used, with one line
// that says why; 2 for wrong usage. Nothing is printed or written unless everything
// could be made.
package main

import (
	_ "embed"

	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/garment"
)

//go:embed demo.json
var demo []byte

var program = sample.Program[garment.Set]{
	Name:    "cardigan",
	Plans:   "a whole cardigan",
	Demo:    demo,
	Plan:    cardigan,
	Pieces:  sample.PiecesOf,
	Outputs: sample.OfSet(),
}

func main() { program.Main() }

// cardigan plans the pieces of a spec that says how the front opens.
func cardigan(s garment.Spec) (garment.Set, error) {
	if s.Opening == nil {
		return garment.Set{}, &garment.Error{
			Field: "opening", Want: `missing: a cardigan opens down the front, "opening": {} will do; without one it is a pullover`, Err: garment.ErrSpec,
		}
	}
	return garment.Pieces(s)
}
