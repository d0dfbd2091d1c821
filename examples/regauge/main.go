// Command regauge plans a garment anew when the swatch lied: the same measurements, by
// swatches that were washed and measured again. It prints for each piece what changes, the
// yarn, and which checks fail now.
//
//	go run ./examples/regauge
//	go run ./examples/regauge -spec my.json -new washed.json
//	go run ./examples/regauge -spec my.json -new washed.json -as instructions
//	go run ./examples/regauge -spec my.json -new washed.json -out pullover
//	go run ./examples/regauge -spec my.json -new measured.json -knitted 60 -piece front
//	go run ./examples/regauge -check pullover/plan.json
//
// The file of -new is a document of its own, of the format walewise-gauge/1, with one of
// gauge, swatch and swatches:
//
//	{"format": "walewise-gauge/1", "swatch": {"stitches": 40, "width": "17.6 cm", "rows": 58, "height": "18.2 cm"}}
//
// Without -spec and -new it plans an embedded demo: a swatch measured as it came off the
// bed, and two that were washed. With -knitted one piece is gone on with: so many rows of it
// are on the needles, knitted as the spec has them, and the rest is planned anew from these
// stitches by the gauge that was found on the piece itself. What changes is followed by the
// rest of the instructions. What -as json, csv and instructions print is the new garment,
// or the rest of the one piece. With -out it writes everything that -as can print into a
// folder, and prints the paths of the files. With -check it plans nothing, but knits the pieces of a plan,
// whoever made it, and prints what becomes of them; that the sizes in the plan are true is
// not checked.
//
// Exit status 0; 1 for a spec, gauge, plan or folder that cannot be used, with one line
// that says why; 2 for wrong usage. Nothing is printed or written unless everything could
// be made.
package main

import (
	_ "embed"
	"io"
	"strings"

	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

var (
	//go:embed demo.json
	demo []byte
	//go:embed washed.json
	washed []byte
)

// regauged is a garment before and after, or one piece of it that is gone on with.
type regauged struct {
	before, after garment.Set
	from          *sheet.Reading // where the piece is gone on with, nil for a garment
}

var program = sample.Program[regauged]{
	Name:      "regauge",
	Plans:     "a garment anew by another gauge",
	Prints:    "what changes",
	Demo:      demo,
	Inputs:    newInputs,
	PlansFrom: "[-spec FILE -new FILE] [-knitted ROWS]",
	Outputs: append([]sample.Output[regauged]{
		{Form: "json", File: "plan.json", Write: writePlan},
		{Form: "instructions", File: "instructions.txt", Write: writeInstructions},
		{Form: "csv", File: "rows.csv", Write: writeRows},
		{Form: "text", File: "changes.txt", Write: writeChanges},
		{Form: "html", File: "sheet.html", Write: writeSheet},
	}, sample.Pictures(func(r regauged) []garment.Piece { return r.after.Pieces })...),
}

func main() { program.Main() }

func writeChanges(w io.Writer, r regauged) error {
	if err := sheet.WriteChanges(w, r.before, r.after); err != nil || r.from == nil {
		return err
	}
	if _, err := io.WriteString(w, "\n"+strings.Repeat("=", 88)+"\n"); err != nil {
		return err
	}
	return writeInstructions(w, r)
}

func writeInstructions(w io.Writer, r regauged) error {
	if r.from != nil {
		return sheet.WriteFrom(w, r.after.Pieces[0], *r.from)
	}
	return sheet.WriteSet(w, r.after)
}

func writeSheet(w io.Writer, r regauged) error { return sheet.WriteSetPage(w, r.after) }

func writePlan(w io.Writer, r regauged) error {
	return sample.WritePlan(w, r.after)
}

func writeRows(w io.Writer, r regauged) error {
	return sample.WriteRows(w, r.after)
}
