package sample

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// writeFrom writes the rest of a piece from a counter reading on.
func writeFrom(w io.Writer, pieces []garment.Piece, o options) error {
	i := 0
	if o.given["piece"] {
		i = slices.IndexFunc(pieces, func(p garment.Piece) bool { return p.Name() == o.piece })
	}
	if i < 0 {
		var names []string
		for _, p := range pieces {
			names = append(names, p.Name())
		}
		return fmt.Errorf("-piece %q: there is %s", o.piece, strings.Join(names, ", "))
	}
	return sheet.WriteFrom(w, pieces[i], sheet.Reading{Panel: o.panel, Counter: o.from})
}
