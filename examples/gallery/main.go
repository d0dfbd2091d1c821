// Command gallery prints worked examples to study: necks, shoulders, armholes and caps,
// each with its chart, the sums by hand, the ways to say its edge and its figures.
//
//	go run ./examples/gallery > gallery.html
//	go run ./examples/gallery -as text
//	go run ./examples/gallery -only neck-vee -as svg > neck-vee.svg
//	go run ./examples/gallery -out gallery
//
// The page is one file of HTML that needs no other, no network and no script. With -out it
// and the chart of each example, a file of its own such as neck-vee.svg, are written into a
// folder, and the paths of the files are printed.
//
// Exit status 0; 1 for a folder that cannot be used, with one line that says why; 2 for
// wrong usage. Nothing is printed or written unless everything could be made.
package main

import (
	"bytes"
	"fmt"
	"io"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/folder"
	"example.com/walewise/shaping/draw"
)

func main() { command.Main("gallery", run) }

func run(args []string, _ io.Reader, stdout, stderr io.Writer) error {
	o, err := parse(args, stderr)
	if err != nil {
		return err
	}
	shown, err := show(o.groups())
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if o.toFolder {
		err = writeFolder(&out, shown, o.out, o.force)
	} else {
		form, _ := formOf(o.form)
		err = form.write(&out, shown)
	}
	if err != nil {
		return err
	}
	_, err = stdout.Write(out.Bytes())
	return err
}

// writeFolder writes the page and all charts into a folder and prints the paths.
func writeFolder(w io.Writer, shown []shownGroup, dir string, replace bool) error {
	files := []folder.File{{Name: "gallery.html", Write: func(w io.Writer) error { return writePage(w, shown) }}}
	for _, g := range shown {
		for _, s := range g.Examples {
			files = append(files, folder.File{Name: s.Name + ".svg", Write: s.writeChart})
		}
	}
	paths, err := folder.Write(dir, files, replace)
	for _, path := range paths {
		fmt.Fprintln(w, path)
	}
	return err
}

// writeChart writes the chart as a file of its own.
func (s shown) writeChart(w io.Writer) error {
	return draw.Chart(w, draw.Look{Folded: true, ID: s.Name}, s.piece)
}

// writeChartOf writes the chart of the one example there is.
func writeChartOf(w io.Writer, groups []shownGroup) error { return groups[0].Examples[0].writeChart(w) }
