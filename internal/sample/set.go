package sample

import (
	"io"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// OfSet returns the forms of a whole garment: its plan, its instructions, and the rows of
// all pieces in one table.
func OfSet() []Output[garment.Set] {
	return []Output[garment.Set]{
		{Form: "json", File: "plan.json", Write: WritePlan},
		{Form: "text", File: "instructions.txt", Write: sheet.WriteSet},
		{Form: "csv", File: "rows.csv", Write: WriteRows},
	}
}

// WritePlan writes the plan of a whole garment.
func WritePlan(w io.Writer, set garment.Set) error {
	return plan.Write(w, plan.From(set.Pieces...))
}

// WriteRows writes the rows of all pieces into one table.
func WriteRows(w io.Writer, set garment.Set) error {
	var works []shaping.Work
	for _, piece := range set.Pieces {
		works = append(works, piece.Work)
	}
	return sheet.WriteTable(w, works...)
}

// PiecesOf returns the pieces of a whole garment.
func PiecesOf(set garment.Set) []garment.Piece { return set.Pieces }
