package sample

import (
	"io"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// OfSet returns the forms of a whole garment: its plan, its instructions, the rows of all
// pieces in one table, its work sheet for the screen, and its pictures.
func OfSet() []Output[garment.Set] {
	return append([]Output[garment.Set]{
		{Form: "json", File: "plan.json", Write: WritePlan},
		{Form: "text", File: "instructions.txt", Write: sheet.WriteSet},
		{Form: "csv", File: "rows.csv", Write: WriteRows},
		{Form: "html", File: "sheet.html", Write: sheet.WriteSetPage},
	}, Pictures(PiecesOf)...)
}

// Pictures returns the forms that show pieces: their charts, their schematic, and their
// outlines at full size on two sizes of paper.
func Pictures[T any](pieces func(T) []garment.Piece) []Output[T] {
	outlines := func(form string, paper draw.Paper) Output[T] {
		return Output[T]{Form: form, File: form + ".html", Write: func(w io.Writer, planned T) error {
			return sheet.WriteOutlines(w, paper, pieces(planned)...)
		}}
	}
	return []Output[T]{
		{Form: "svg", File: "chart.svg", Write: func(w io.Writer, planned T) error {
			return draw.Chart(w, draw.Look{}, pieces(planned)...)
		}},
		{Form: "schematic", File: "schematic.svg", Write: func(w io.Writer, planned T) error {
			return draw.Schematic(w, draw.Look{}, pieces(planned)...)
		}},
		outlines("outlines-a4", draw.A4),
		outlines("outlines-letter", draw.Letter),
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
