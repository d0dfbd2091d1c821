package draw

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping/garment"
)

// Schematic writes the finished outlines of pieces to one scale on one page, as SVG: without
// what seams take, with the length asked for and the one that will be knitted where they
// differ, and with rows and stitches at every corner. Pieces that come off the needles alike,
// such as two sleeves, are drawn once. It returns the first error of w, and [ErrPiece] for a
// piece that was not planned and knitted, or if there is none.
func Schematic(w io.Writer, look Look, pieces ...garment.Piece) error {
	if err := look.check(pieces); err != nil {
		return err
	}
	p := layOut(look, grouped(pieces))
	s := look.begin(w, "schematic", p.width, p.height, pieces, "Schematic", p.says)
	for i, text := range p.heading {
		s.Text("text", text, label(p.width/2, 5_500+noteLine*svgw.Number(i), noteSize, "middle")...)
	}
	for _, d := range p.figures {
		d.canvas = s
		d.write()
	}
	return s.End()
}

// group is pieces of one form.
type group struct {
	piece  garment.Piece
	name   string  // of all of them
	drawn  outline // finished
	points []point // of it
}

func grouped(pieces []garment.Piece) []group {
	var groups []group
	for _, alike := range Alike(pieces...) {
		o := drawn(alike[0]).finished()
		groups = append(groups, group{alike[0], oneline.Capital(strings.Join(namesOf(alike), " and ")), o, o.points()})
	}
	return groups
}

// page is figures laid out beside and below each other.
type page struct {
	width, height svgw.Number
	scale         svgw.Number // a length on the page is one of so many
	figures       []*figure
	heading       []string
}

// Sizes of a page, in thousandths of a millimetre.
const (
	schematicWidth  svgw.Number = 190_000
	schematicHeight svgw.Number = 262_000
	oneWidth        svgw.Number = 102_000 // of the page of one figure
	oneHeight       svgw.Number = 150_000
	leastWidth      svgw.Number = 95_000 // that of the heading
	pageHead        svgw.Number = 17_500
)

// layOut chooses the largest scale, one of a whole number, at which all figures have room.
func layOut(look Look, groups []group) page {
	most := point{schematicWidth, schematicHeight}
	if len(groups) == 1 {
		most = point{oneWidth, oneHeight}
	}
	const smallest = 60
	var p page
	for scale := svgw.Number(1); ; scale++ {
		p = page{scale: scale, width: leastWidth, height: pageHead}
		fits := true
		for i := 0; i < len(groups); {
			var row []*figure
			width := svgw.Number(0)
			for ; i < len(groups); i++ {
				f := newFigure(groups[i], look, scale)
				if width > 0 && width+f.width > most.x {
					break
				}
				row, width = append(row, f), width+f.width
			}
			p.add(row, width)
			fits = fits && width <= most.x
		}
		if fits && p.height <= most.y || scale == smallest {
			p.heading = heading(groups[0].piece, look, scale)
			return p
		}
	}
}

// add appends a row of figures.
func (p *page) add(row []*figure, width svgw.Number) {
	x, height := svgw.Number(0), svgw.Number(0)
	for _, f := range row {
		f.at = point{x, p.height}
		x += f.width
		height = max(height, f.height)
	}
	p.figures = append(p.figures, row...)
	p.width = max(p.width, width)
	p.height += height
}

// heading says how the lengths are meant and which side of the fabric is seen. On a page of
// HTML, where pictures have no size of their own, it names no scale.
func heading(p garment.Piece, look Look, scale svgw.Number) []string {
	var lines []string
	if !look.Inline {
		lines = append(lines, fmt.Sprintf("Scale 1 : %d.", int64(scale)))
	}
	finished := "Lengths as they will be knitted, finished and flat."
	if p.Widths.Seam > 0 {
		finished = "Finished and flat; stitches with those of the seams."
	}
	side, means := view(p, look.facing(p))
	return append(lines, finished, side, means)
}

func (p page) says() string {
	last := len(p.heading) - 1 // what the side that is seen makes of left and right
	list := []string{strings.Join(p.heading[:last], " ") + ", " + p.heading[last] + "."}
	for _, f := range p.figures {
		list = append(list, f.says())
	}
	return strings.Join(list, " ")
}
