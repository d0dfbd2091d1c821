// Command frontpiece plans the front of a garment and prints how to knit it.
//
//	go run ./examples/frontpiece
//	go run ./examples/frontpiece -spec my.json -as csv
//	go run ./examples/frontpiece -spec my.json -out front
//	go run ./examples/frontpiece -spec my.json -from 210 -panel "right half"
//	go run ./examples/frontpiece -check front/plan.json
//
// Without -spec it plans an embedded demo. With -out it writes everything that -as
// can print into a folder, and prints the paths of the files. With -from it prints how
// things stand at a counter reading and the rest from there. With -check it plans
// nothing, but knits the pieces of a plan, whoever made it, and prints what becomes
// of them; that the sizes in the plan are true is not checked.
//
// Exit status 0; 1 for a spec, plan or folder that cannot be used, with one line
// that says why; 2 for wrong usage. Nothing is printed or written unless everything
// could be made.
package main

import (
	_ "embed"
	"io"

	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

//go:embed demo.json
var demo []byte

var program = sample.Program[garment.Piece]{
	Name:   "frontpiece",
	Plans:  "the front of a garment",
	Demo:   demo,
	Plan:   garment.Front,
	Pieces: alone,
	Outputs: append([]sample.Output[garment.Piece]{
		{Form: "json", File: "plan.json", Write: writePlan},
		{Form: "text", File: "instructions.txt", Write: sheet.Write},
		{Form: "csv", File: "rows.csv", Write: writeRows},
		{Form: "html", File: "sheet.html", Write: sheet.WritePage},
	}, sample.Pictures(alone)...),
}

func main() { program.Main() }

func alone(front garment.Piece) []garment.Piece { return []garment.Piece{front} }

func writePlan(w io.Writer, front garment.Piece) error { return plan.Write(w, plan.From(front)) }

func writeRows(w io.Writer, front garment.Piece) error { return sheet.WriteTable(w, front.Work) }
