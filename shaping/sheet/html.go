package sheet

import (
	"bytes"
	"embed"
	"html/template"
	"io"
	"sync"

	"example.com/walewise/shaping/garment"
)

// WriteSetPage writes the instructions of a whole garment as a work sheet for the screen: one
// file of HTML that needs no other and no network. It holds what [WriteSet] says, with each
// time that something is done as a step of its own, the bands where they are picked up
// between the seams, and a schematic and a chart of each piece from package draw. Every step
// has a box to tick. Where scripts run, a panel shows the step in hand with what the counter
// reads before and after it, what comes next and how many rows are left, and the place is
// kept in the browser's storage; where they do not, the boxes are a list to check off, and so
// they are in print. Equal garments give equal bytes.
//
// It returns the first error of w, and [ErrPiece] for a set without pieces, or with one that
// was not planned and knitted.
func WriteSetPage(w io.Writer, set garment.Set) error {
	if !made(set) {
		return ErrPiece
	}
	v, err := newView(set)
	if err != nil {
		return err
	}
	var page bytes.Buffer
	if err := pageTemplate().Execute(&page, v); err != nil {
		return err
	}
	_, err = w.Write(bytes.ReplaceAll(page.Bytes(), []byte(noBreak), []byte("\u00a0")))
	return err
}

// WritePage writes the work sheet of a single piece, as [WriteSetPage] does that of a
// garment. It returns the first error of w, and [ErrPiece] for a piece that was not planned
// and knitted.
func WritePage(w io.Writer, piece garment.Piece) error {
	return WriteSetPage(w, garment.Set{Pieces: []garment.Piece{piece}})
}

//go:embed html
var files embed.FS

var pageTemplate = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page.gohtml").Funcs(template.FuncMap{
		"style":  func() template.CSS { return template.CSS(file("page.css")) },
		"script": func() template.JS { return template.JS(file("page.js")) },
		"table":  func(name string, heads []string, rows [][]string) tableView { return tableView{name, heads, rows} },
	}).ParseFS(files, "html/page.gohtml"))
})

// file returns an embedded file, which is there.
func file(name string) string {
	text, err := files.ReadFile("html/" + name)
	if err != nil {
		panic(err)
	}
	return string(text)
}
