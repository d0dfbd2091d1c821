package main

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/internal/folder"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// output is one of the things that a piece is printed or written as.
type output struct {
	form  string // as -as calls it
	file  string // as -out calls it
	write func(io.Writer, garment.Piece) error
}

// outputs are all of them, in the order in which -out writes them.
var outputs = []output{
	{"json", "plan.json", func(w io.Writer, p garment.Piece) error { return plan.Write(w, plan.From(p)) }},
	{"text", "instructions.txt", sheet.Write},
	{"csv", "rows.csv", func(w io.Writer, p garment.Piece) error { return sheet.WriteTable(w, p.Work) }},
}

// outputAs returns the output of the given form.
func outputAs(form string) (output, bool) {
	for _, o := range outputs {
		if o.form == form {
			return o, true
		}
	}
	return output{}, false
}

// writeForm writes the piece in one form.
func writeForm(w io.Writer, o options, stdin io.Reader) error {
	piece, err := planned(o.spec, stdin)
	if err != nil {
		return err
	}
	form, _ := outputAs(o.form)
	return form.write(w, piece)
}

// writeFolder writes the piece into a folder in every form and prints the paths.
func writeFolder(w io.Writer, o options, stdin io.Reader) error {
	piece, err := planned(o.spec, stdin)
	if err != nil {
		return err
	}
	var files []folder.File
	for _, output := range outputs {
		files = append(files, folder.File{
			Name:  output.file,
			Write: func(w io.Writer) error { return output.write(w, piece) },
		})
	}
	paths, err := folder.Write(o.out, files, o.force)
	for _, path := range paths {
		fmt.Fprintln(w, path)
	}
	return err
}

// formNames lists the forms for a message.
func formNames() string { return listed("or", func(o output) string { return o.form }) }

// fileNames lists the files for a message.
func fileNames() string { return listed("and", func(o output) string { return o.file }) }

// listed lists the outputs by one of their names: "a, b or c".
func listed(last string, name func(output) string) string {
	var names []string
	for _, o := range outputs {
		names = append(names, name(o))
	}
	n := len(names) - 1
	return fmt.Sprintf("%s %s %s", strings.Join(names[:n], ", "), last, names[n])
}
