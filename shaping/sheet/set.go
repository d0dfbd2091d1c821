package sheet

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// WriteSet writes the instructions of a whole garment: a table of its pieces, the checks
// between them, the order in which they are joined, and then each piece as [Write] does,
// with what is the same for all of them said once. It returns the first error of w, and
// [ErrPiece] for a set without pieces, or with one that was not planned and knitted.
func WriteSet(w io.Writer, set garment.Set) error {
	if len(set.Pieces) == 0 || slices.ContainsFunc(set.Pieces, func(p garment.Piece) bool { return !made(p) }) {
		return ErrPiece
	}
	s := setWriter{page: &page{w: w}, checks: set.Checks}
	for _, piece := range set.Pieces {
		s.pieces = append(s.pieces, newWriter(s.page, piece))
	}
	s.pieces[0].title()
	s.contents()
	s.checked()
	s.joining()
	for i, piece := range s.pieces {
		s.blank()
		s.line("%s", strings.Repeat("=", width))
		s.line("%s", strings.ToUpper(fmt.Sprintf("Piece %d of %d: %s", i+1, len(s.pieces), piece.work.Name)))
		s.blank()
		piece.instructions()
	}
	s.blank()
	s.line("%s", strings.Repeat("=", width))
	s.halved().takeCare()
	return s.err
}

// setWriter writes the pieces of a garment on one page.
type setWriter struct {
	*page
	pieces []*writer
	checks []garment.Check
}

// halved returns a piece with halves, of which most is to be said, else the first one.
func (s *setWriter) halved() *writer {
	if i := slices.IndexFunc(s.pieces, (*writer).halved); i >= 0 {
		return s.pieces[i]
	}
	return s.pieces[0]
}

// contents writes the table of pieces.
func (s *setWriter) contents() {
	s.heading("Pieces")
	s.para("  ", fmt.Sprintf("In this order. Rows are counted up to the top; those knitted in all count both halves. %s are those in work where the piece is widest. Sizes are finished, where it is widest and up to its top.",
		capital(s.pieces[0].voice.columns())))
	s.blank()
	s.line("  %-14s %7s %5s %6s   %-24s %s", "", "cast on", "rows", "in all", s.pieces[0].voice.columns(), "width x height")
	for _, p := range s.pieces {
		all := p.extent()
		finished := p.piece.Gauge.Width(max(all.Len()-2*p.piece.Widths.Seam, 0))
		s.line("  %-14s %7d %5d %6d   %-24s %s x %s", p.work.Name, p.work.Panels[0].Needles.Len(), p.height(), p.piece.Cloth.Rows(),
			p.voice.across(all), p.length(finished), p.length(p.piece.Gauge.Height(p.height())))
	}
}

// across says the needles of a span on each side of the middle.
func (b bedVoice) across(s shaping.Span) string {
	left := 0
	for n := range s.All() {
		if n.Index() < shaping.R(1).Index() {
			left++
		}
	}
	return fmt.Sprintf("%d left, %d right: %d", left, s.Len()-left, s.Len())
}

func (b bedVoice) columns() string { return "needles" }

// across says how many stitches a span has.
func (h handVoice) across(s shaping.Span) string { return plural.Sts(s.Len()) }

func (h handVoice) columns() string { return "stitches" }

// checked writes the checks between the pieces.
func (s *setWriter) checked() {
	if len(s.checks) == 0 {
		return
	}
	s.heading("Checks")
	for _, c := range s.checks {
		result := "passed"
		switch {
		case c.Passed:
		case c.Severity == garment.AsError:
			result = "error"
		default:
			result = "look at this"
		}
		s.para(fmt.Sprintf("  %-12s  ", result), clean(c.Says))
	}
}

// joining writes the order in which the pieces are joined, for those that there are.
// Common practice, no source.
func (s *setWriter) joining() {
	has := func(is func(*writer) bool) bool { return slices.ContainsFunc(s.pieces, is) }
	both := has((*writer).isBack) && has(func(p *writer) bool { return p.halved() && !p.isBack() })
	var steps []string
	if both {
		steps = append(steps,
			"One shoulder: the right half of the front to the left half of the back, as their instructions call them.",
			"The neckband, from the open shoulder along front and back to the open shoulder: what it takes up stands at the end of each of them.",
			"The other shoulder: the left half of the front to the right half of the back, and with it the ends of the neckband.")
	}
	if has((*writer).isSleeve) {
		steps = append(steps, "The sleeves, while the sides are open: the middle of the top to the shoulder seam, then to both underarms. Either sleeve fits either side.")
	}
	if both {
		sides := "The sides: on each side one seam up to the underarm."
		if has((*writer).isSleeve) {
			sides = "The sides: on each side one seam, from the cuff by the underarm to the hem."
		}
		steps = append(steps, sides)
	}
	if len(steps) == 0 {
		return
	}
	s.heading("Joining, when all pieces are washed and blocked")
	for _, step := range steps {
		s.para("  [ ] ", step)
	}
}
