package sheet

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
)

// WriteOutlines writes the outlines of pieces at full size as a page of HTML to print, a
// picture of package draw for each sheet of paper: see [draw.Tile]. Pieces that are alike, such
// as two sleeves, have theirs once. It returns the first error of w, [ErrPiece] if there is no
// piece or one that was not planned and knitted, and [draw.ErrPaper].
func WriteOutlines(w io.Writer, paper draw.Paper, pieces ...garment.Piece) error {
	if !garment.Made(pieces...) {
		return ErrPiece
	}
	view := outlinesView{Title: oneline.Of(pieces[0].Spec.Title), Paper: paper.String(), Size: template.CSS(paper.String())}
	for i, alike := range draw.Alike(pieces...) {
		outlines, err := outlinesOf(alike, paper, i)
		if err != nil {
			return err
		}
		view.Pieces = append(view.Pieces, outlines)
	}
	var page bytes.Buffer
	if err := outlinesTemplate().Execute(&page, view); err != nil {
		return err
	}
	_, err := w.Write(page.Bytes())
	return err
}

var outlinesTemplate = sync.OnceValue(func() *template.Template {
	return template.Must(template.ParseFS(files, "html/outlines.gohtml"))
})

// outlinesView is what the page shows.
type outlinesView struct {
	Title, Paper string
	Size         template.CSS
	Pieces       []pieceOutlines
}

// pieceOutlines is the outline of pieces that are alike.
type pieceOutlines struct {
	Names, Sheets string
	Pictures      []template.HTML
}

func outlinesOf(alike []garment.Piece, paper draw.Paper, group int) (pieceOutlines, error) {
	tiling, err := draw.Tile(paper, alike...)
	if err != nil {
		return pieceOutlines{}, err
	}
	view := pieceOutlines{Names: oneline.Capital(tiling.Name())}
	blank := 0
	for row := 1; row <= tiling.Rows(); row++ {
		for column := 1; column <= tiling.Columns(); column++ {
			if tiling.IsBlank(row, column) {
				blank++
				continue
			}
			var picture strings.Builder
			look := draw.Look{Inline: true, ID: fmt.Sprintf("outline-%d-%d-%d", group+1, row, column)}
			if err := tiling.Write(&picture, look, row, column); err != nil {
				return view, err
			}
			view.Pictures = append(view.Pictures, template.HTML(picture.String())) // escaped by package draw
		}
	}
	view.Sheets = fmt.Sprintf("%d sheets, in %d rows and %d columns", len(view.Pictures), tiling.Rows(), tiling.Columns())
	if blank > 0 {
		view.Sheets += fmt.Sprintf("; %d on which nothing would stand left out", blank)
	}
	return view, nil
}
