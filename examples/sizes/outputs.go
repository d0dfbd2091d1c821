package main

import (
	"bytes"
	"encoding/json"
	"io"

	"example.com/walewise/internal/folder"
	"example.com/walewise/internal/sample"
	"example.com/walewise/shaping/sizes"
)

// writePlans writes the plan of each size on a line.
func writePlans(w io.Writer, r sizes.Range) error {
	for _, size := range r.Sizes {
		var text, line bytes.Buffer
		if err := sample.WritePlan(&text, size.Set); err != nil {
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

// bySize returns the files of each size, in a folder of its name: all that is written of one
// garment.
func bySize(r sizes.Range) []folder.File {
	var files []folder.File
	for _, size := range r.Sizes {
		for _, output := range sample.OfSet() {
			files = append(files, folder.File{
				Name:  size.Body.Name + "/" + output.File,
				Write: func(w io.Writer) error { return output.Write(w, size.Set) },
			})
		}
	}
	return files
}
