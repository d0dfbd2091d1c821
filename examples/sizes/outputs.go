package main

import (
	"bytes"
	"encoding/json"
	"io"

	"example.com/walewise/internal/folder"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
	"example.com/walewise/shaping/sizes"
)

// writePlans writes the plan of each size on a line.
func writePlans(w io.Writer, r sizes.Range) error {
	for _, size := range r.Sizes {
		var text, line bytes.Buffer
		if err := writePlan(&text, size.Set); err != nil {
			return err
		}
		if err := json.Compact(&line, text.Bytes()); err != nil {
			return err
		}
		line.WriteByte('\n')
		if _, err := w.Write(line.Bytes()); err != nil {
			return err
		}
	}
	return nil
}

func writePlan(w io.Writer, set garment.Set) error { return plan.Write(w, plan.From(set.Pieces...)) }

// writeRows writes the rows of all pieces into one table.
func writeRows(w io.Writer, set garment.Set) error {
	var works []shaping.Work
	for _, piece := range set.Pieces {
		works = append(works, piece.Work)
	}
	return sheet.WriteTable(w, works...)
}

// bySize returns the files of each size, in a folder of its name.
func bySize(r sizes.Range) []folder.File {
	var files []folder.File
	for _, size := range r.Sizes {
		for _, f := range []struct {
			name  string
			write func(io.Writer, garment.Set) error
		}{{"plan.json", writePlan}, {"instructions.txt", sheet.WriteSet}, {"rows.csv", writeRows}} {
			files = append(files, folder.File{
				Name:  size.Body.Name + "/" + f.name,
				Write: func(w io.Writer) error { return f.write(w, size.Set) },
			})
		}
	}
	return files
}
