// Command sizes plans one garment for several bodies and prints the counts of all sizes side
// by side, as printed patterns do: "cast on 98 (106, 114, 124)".
//
//	go run ./examples/sizes
//	go run ./examples/sizes -spec my.json -bodies family.csv
//	go run ./examples/sizes -spec my.json -for children -out jerseys
//	go run ./examples/sizes -check jerseys/"6 years"/plan.json
//
// The spec is that of the garment in any one size: what it says of the body is replaced by
// the measurements of each size, with -ease, -sleeve-ease and -armhole-ease added. Without
// -spec it is an embedded demo. The bodies are a table, CSV or JSON, with one line or object
// a size; -for takes those of men, women or children that are built in. Without either it is
// an embedded demo too. What is missing in the table is filled in by rules, which are
// printed.
//
// -as json prints the plan of each size on a line of its own, in the order of the table.
// With -out it writes the sizes side by side into a folder, and plan, instructions, rows, work
// sheet and pictures of each size into a folder of its name in it, and prints the paths of the files. With
// -check it plans nothing, but knits the pieces of a plan.
//
// Exit status 0; 1 for a spec, table, plan or folder that cannot be used, with one line
// that says why; 2 for wrong usage. Nothing is printed or written unless everything could be
// made.
package main

import (
	_ "embed"

	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/sheet"
	"example.com/walewise/shaping/sizes"
)

//go:embed demo.json
var demo []byte

//go:embed crew.csv
var crew []byte

var program = sample.Program[sizes.Range]{
	Name:      "sizes",
	Plans:     "a garment in several sizes",
	Prints:    "their counts side by side",
	Demo:      demo,
	Inputs:    newInputs,
	PlansFrom: "[-spec FILE] [-bodies FILE]",
	Outputs: []sample.Output[sizes.Range]{
		{Form: "text", File: "sizes.txt", Write: sheet.WriteSizes},
		{Form: "csv", File: "sizes.csv", Write: sheet.WriteSizesTable},
		{Form: "json", Write: writePlans},
	},
	Beside:      bySize,
	BesideNames: "and what is written of one garment in a folder for each size,",
}

func main() { program.Main() }
