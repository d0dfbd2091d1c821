package draw

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping/garment"
)

// Tiling is the outline of a piece at full size, for blocking, parted into sheets of paper
// that overlap. It is immutable; the zero value has no sheets.
type Tiling struct {
	pieces        []garment.Piece // that have the outline
	paper         Paper
	points, seam  []point // of the cloth, and within it of what the seams leave; none where they take nothing
	origin        point   // the lower left corner of the lowest sheet at the left
	columns, rows int
}

// overlap is how much of a sheet lies under the next one, in thousandths of a millimetre.
const overlap svgw.Number = 15_000

// Errors of a tiling.
var (
	// ErrPaper: the paper is none of the sizes.
	ErrPaper = errors.New("draw: no such paper: A4 and Letter are known")
	// ErrAlike: the pieces have not one outline.
	ErrAlike = errors.New("draw: the pieces do not come off the needles alike: tile them one by one")
	// ErrSheet: the tiling has no such sheet.
	ErrSheet = errors.New("draw: no such sheet")
)

// Tile parts the outline of pieces that are alike, see [Alike], into sheets. It is the outline
// of the whole cloth, since a piece is blocked before it is sewn; the seam is a line within it.
// It returns [ErrPiece] for a piece that was not planned and knitted, and if there is none,
// [ErrPaper] and [ErrAlike].
func Tile(paper Paper, alike ...garment.Piece) (Tiling, error) {
	switch {
	case !garment.Made(alike...):
		return Tiling{}, ErrPiece
	case !paper.IsValid():
		return Tiling{}, ErrPaper
	case len(Alike(alike...)) > 1:
		return Tiling{}, ErrAlike
	}
	o := drawn(alike[0]).blocked()
	t := Tiling{pieces: slices.Clone(alike), paper: paper, points: o.points()}
	if alike[0].Widths.Seam > 0 {
		t.seam = o.finished().points()
	}
	least, most := bounds(t.points)
	width, height := paper.sheet()
	var free point // about the outline, which stands in the middle of its sheets
	t.columns, free.x = sheetsFor(most.x-least.x, width)
	t.rows, free.y = sheetsFor(most.y-least.y, height)
	t.origin = point{least.x - free.x/2, least.y - max(free.y/2, free.y-headRoom)}
	return t, nil
}

// headRoom is how much of what is free stands above the outline at most; the rest is below
// it, where a sheet says what it is.
const headRoom svgw.Number = 20_000

// sheetsFor returns how many sheets of a size cover a length with a little about it, and how
// much of them is free then.
func sheetsFor(length, sheet svgw.Number) (sheets int, free svgw.Number) {
	const least = 1_600 // for the line itself and the frame
	step := sheet - overlap
	sheets = max(1, int((length+least-overlap+step-1)/step))
	return sheets, step*svgw.Number(sheets) + overlap - length
}

// Name names the pieces that have the outline, such as "right sleeve and left sleeve".
func (t Tiling) Name() string { return strings.Join(namesOf(t.pieces), " and ") }

// Columns returns how many sheets lie side by side.
func (t Tiling) Columns() int { return t.columns }

// Rows returns how many sheets lie above each other.
func (t Tiling) Rows() int { return t.rows }

// IsBlank reports whether no part of the outline lies on a sheet, so that it can be left out;
// that is so for sheets that there are not.
func (t Tiling) IsBlank(row, column int) bool {
	if row < 1 || row > t.rows || column < 1 || column > t.columns {
		return true
	}
	s := t.sheet(Look{}, row, column)
	for i, p := range t.points {
		if crosses(s.place(p), s.place(t.points[(i+1)%len(t.points)]), s.size) {
			return false
		}
	}
	return true
}

// crosses reports whether a part of a straight line lies within a rectangle of a size: what
// is cut off it at each side leaves something.
func crosses(from, to, size point) bool {
	enter, leave := 0.0, 1.0
	for _, side := range [][2]svgw.Number{{from.x, to.x - from.x}, {size.x - from.x, from.x - to.x}, {from.y, to.y - from.y}, {size.y - from.y, from.y - to.y}} {
		inside, by := float64(side[0]), float64(side[1])
		switch {
		case by == 0 && inside < 0:
			return false
		case by > 0:
			enter = max(enter, -inside/by)
		case by < 0:
			leave = min(leave, -inside/by)
		}
	}
	return enter <= leave
}

// sheet returns a sheet of a look.
func (t Tiling) sheet(look Look, row, column int) sheet {
	width, height := t.paper.sheet()
	return sheet{tiling: t, row: row, column: column, size: point{width, height}, flipped: look.flips(t.pieces[0])}
}

// Write writes one sheet as SVG in millimetres: rows count from 1 at the top, columns from 1 at
// the left. Every sheet has a bar of 10 cm to check the printer by, says where it belongs, and
// has lines where its neighbours begin. It returns the first error of w, and [ErrSheet].
func (t Tiling) Write(w io.Writer, look Look, row, column int) error {
	if row < 1 || row > t.rows || column < 1 || column > t.columns {
		return fmt.Errorf("%w: row %d, column %d of %d rows and %d columns", ErrSheet, row, column, t.rows, t.columns)
	}
	s := t.sheet(look, row, column)
	if look.ID == "" {
		look.ID = fmt.Sprintf("outline-%d-%d", row, column)
	}
	look.sized = true
	s.canvas = look.begin(w, "outline", s.size.x, s.size.y, t.pieces, "Outline at full size", s.says)
	s.side, s.means = view(t.pieces[0], look.facing(t.pieces[0]))
	s.write()
	return s.End()
}

// sheet is one sheet of a tiling.
type sheet struct {
	canvas
	tiling      Tiling
	row, column int
	size        point
	flipped     bool
	side, means string
}

func (s *sheet) says() string {
	return fmt.Sprintf("Sheet in row %d of %d and column %d of %d of the outline of the %s, to be printed at its true size.",
		s.row, s.tiling.rows, s.column, s.tiling.columns, s.tiling.Name())
}

// place returns where a point of the piece lies on the sheet.
func (s *sheet) place(p point) point {
	t := s.tiling
	x, y := p.x-t.origin.x, p.y-t.origin.y
	if s.flipped {
		x = s.size.x + (s.size.x-overlap)*svgw.Number(t.columns-1) - x
	}
	return point{
		x - (s.size.x-overlap)*svgw.Number(s.column-1),
		s.size.y - y + (s.size.y-overlap)*svgw.Number(t.rows-s.row),
	}
}

func (s *sheet) write() {
	s.frame()
	s.polygon("outline", s.tiling.points, 600)
	if seam := s.tiling.seam; seam != nil {
		s.polygon("seam", seam, 250, svgw.A("stroke-dasharray", "4 2"))
	}
	s.checkBar()
	s.caption()
}

func (s *sheet) polygon(class string, points []point, width svgw.Number, attrs ...svgw.Attr) {
	s.stroke(class, through(points, s.place).Close(), width, attrs...)
}

// frame draws the edge of the sheet, and the lines up to which the next one to the right
// and the one below are laid over it.
func (s *sheet) frame() {
	var edge, under svgw.Path
	edge.Box(100, 100, s.size.x-200, s.size.y-200)
	if s.column < s.tiling.columns {
		under.Move(s.size.x-overlap, 0).Down(s.size.y)
	}
	if s.row < s.tiling.rows {
		under.Move(0, s.size.y-overlap).Right(s.size.x)
	}
	s.stroke("sheet", &edge, 150, svgw.A("stroke-opacity", ".5"))
	s.stroke("overlap", &under, 400, svgw.A("stroke-dasharray", "0 2"), svgw.A("stroke-linecap", "round"))
}

// checkBar draws 10 cm in centimetres.
func (s *sheet) checkBar() {
	const length, tick svgw.Number = 100_000, 2_000
	x, y := (s.size.x-length)/2, s.size.y-overlap-3_000
	var bar svgw.Path
	bar.Move(x, y).Right(length)
	for cm := range svgw.Number(11) {
		high := tick
		if cm%5 == 0 {
			high *= 2
		}
		bar.Move(x+cm*10_000, y).Down(-high)
	}
	s.stroke("check-bar", &bar, 250)
	s.Text("text", "10 cm on paper? Else print again at 100 %, not fitted to the page.", label(s.size.x/2, y-5_000, textSize, "middle")...)
}

// caption says which sheet it is.
func (s *sheet) caption() {
	t := s.tiling
	lines := []string{s.side + ", " + s.means + "."}
	if t.columns*t.rows > 1 {
		lines = append(lines, "Cut along the frame at the left and at the top, and lay each sheet over the one before it",
			"up to the dotted line, so that the outlines meet.")
	}
	if t.seam != nil {
		lines = append(lines, "Pin the edge to the solid line. The dashed line is the seam.")
	}
	const x, y svgw.Number = 6_000, 8_000
	s.Text("text", fmt.Sprintf("%s, full size: row %d of %d from the top, column %d of %d from the left", oneline.Capital(t.Name()), s.row, t.rows, s.column, t.columns),
		label(x, y, textSize, "", svgw.A("font-weight", "bold"))...)
	for i, text := range lines {
		s.Text("text", text, label(x, y+4_500+4_000*svgw.Number(i), noteSize, "")...)
	}
}
