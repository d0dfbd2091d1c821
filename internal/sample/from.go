package sample

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// writeFrom writes the rest of a piece from a counter reading on.
func writeFrom(w io.Writer, pieces []garment.Piece, o options) error {
	piece, ok := pieces[0], true
	if o.given["piece"] {
		piece, ok = garment.Set{Pieces: pieces}.Piece(o.piece)
	}
	if !ok {
		return fmt.Errorf("-piece %q: there is %s", o.piece, Names(pieces))
	}
	return sheet.WriteFrom(w, piece, sheet.Reading{Panel: o.panel, Counter: o.from})
}

// Names lists the names of pieces, as a message about one that there is not gives them.
func Names(pieces []garment.Piece) string {
	var names []string
	for _, p := range pieces {
		names = append(names, p.Name())
	}
	return strings.Join(names, ", ")
}
