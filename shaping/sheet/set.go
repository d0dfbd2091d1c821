package sheet

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// made reports whether all pieces were planned and knitted, and the bands with them.
func made(set garment.Set) bool {
	noBand := func(p garment.Piece) bool { return p.Spec.Band == nil }
	return garment.Made(set.Pieces...) && (len(set.Bands) == 0 || !slices.ContainsFunc(set.Pieces, noBand))
}

// WriteSet writes the instructions of a whole garment: a table of its pieces, the checks
// between them, the order in which they are joined, and then each piece as [Write] does,
// with what is the same for all of them said once, and the bands that are picked up from
// them. It returns the first error of w, and [ErrPiece] for a set without pieces, or with
// one that was not planned and knitted.
func WriteSet(w io.Writer, set garment.Set) error {
	if !made(set) {
		return ErrPiece
	}
	s := newSetWriter(&page{w: w}, set)
	s.pieces[0].title()
	s.contents()
	s.yarn(set)
	s.checked()
	s.say(s.joining())
	for i, piece := range s.pieces {
		s.blank()
		s.line("%s", strings.Repeat("=", width))
		s.line("%s", strings.ToUpper(s.nameOf(i)))
		s.blank()
		piece.instructions()
	}
	s.pickUp()
	s.blank()
	s.line("%s", strings.Repeat("=", width))
	s.halved().takeCare()
	return s.err
}

// newSetWriter returns the writer of a set of pieces that were made.
func newSetWriter(p *page, set garment.Set) *setWriter {
	s := &setWriter{page: p, checks: set.Checks, bands: set.Bands}
	for _, piece := range set.Pieces {
		one := newWriter(p, piece)
		one.checks, one.bands = set.Checks, set.Bands
		s.pieces = append(s.pieces, one)
	}
	return s
}

// setWriter writes the pieces of a garment on one page.
type setWriter struct {
	*page
	pieces []*writer
	checks []garment.Check
	bands  []garment.Band
}

// nameOf returns the heading of the i-th piece.
func (s *setWriter) nameOf(i int) string {
	return fmt.Sprintf("Piece %d of %d: %s", i+1, len(s.pieces), s.pieces[i].work.Name)
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
	s.para("  ", fmt.Sprintf("In this order. %s", s.contentsNote()))
	s.blank()
	s.line("  %-14s %7s %5s %7s", "", "", "rows", "rows")
	s.line("  %-14s %7s %5s %7s   %-24s %s", "", "cast on", "high", "knitted", s.pieces[0].voice.columns(), "width x height")
	for _, p := range s.pieces {
		c := p.inContents()
		s.line("  %-14s %7d %5d %7d   %-24s %s", p.work.Name, c.CastOn, c.High, c.Knitted, c.Across, c.Finished)
	}
	s.blank()
	s.say(notes(s.together()))
}

// contentsNote says what the table of pieces holds.
func (s *setWriter) contentsNote() string {
	return fmt.Sprintf("Rows high are counted up to the top; rows knitted count both halves. %s are those in work where the piece is widest. Sizes are finished, where it is widest and up to its top.",
		oneline.Capital(s.pieces[0].voice.columns()))
}

// inContents is what the table of pieces says of one.
type inContents struct {
	CastOn, High, Knitted int
	Across, Finished      string
}

func (s *writer) inContents() inContents {
	all := s.extent()
	finished := s.piece.Gauge.Width(max(s.piece.Finished(all.Len()), 0))
	return inContents{
		s.work.Panels[0].Needles.Len(), s.height(), s.piece.Cloth.Rows(), s.voice.across(all),
		fmt.Sprintf("%s x %s", s.length(finished), s.length(s.piece.Gauge.Height(s.height()))),
	}
}

// together says what is so of all pieces: how wide they are together, and their gauge.
func (s *setWriter) together() []string {
	return slices.DeleteFunc([]string{s.round(), s.gauge()}, func(text string) bool { return text == "" })
}

// piece returns the front, or the first of two, or the back; ok is false if there is none.
func (s *setWriter) piece(back bool) (p *writer, ok bool) {
	i := slices.IndexFunc(s.pieces, func(p *writer) bool { return p.isTrunk() && p.isBack() == back })
	if i < 0 {
		return nil, false
	}
	return s.pieces[i], true
}

// round says how wide front and back are together, at hem and waist where they differ
// from the underarms.
func (s *setWriter) round() string {
	front, ok := s.piece(false)
	back, also := s.piece(true)
	if !ok || !also {
		return ""
	}
	var said []string
	var underarms gauge.Length
	for _, place := range []struct{ name, where string }{{"width", "round the underarms"}, {"waist", "at the waist"}, {"hem", "at the hem"}} {
		round := front.acrossFront(place.name).Add(back.knitted(place.name))
		if round.IsZero() || round.Equal(underarms) {
			continue
		}
		if place.name == "width" {
			underarms = round
		}
		said = append(said, fmt.Sprintf("%s %s", place.where, front.length(round)))
	}
	what := "Front and back together"
	if front.opened() {
		what = fmt.Sprintf("Both fronts, %s (%s) between them, which the bands fill, and the back together",
			plural.Stitches(front.piece.Widths.Overlap), front.length(front.piece.Gauge.Width(front.piece.Widths.Overlap)))
	}
	return fmt.Sprintf("%s, finished: %s.", what, strings.Join(said, ", "))
}

// knitted returns a length of the piece as it will be knitted, 0 if it has none of that
// name.
func (s *writer) knitted(name string) gauge.Length {
	for _, size := range s.piece.Sizes {
		if size.Name == name {
			return size.Knitted
		}
	}
	return gauge.Length{}
}

// gauge says the gauge as the swatch has it and over the length that gauges are compared
// by.
func (s *setWriter) gauge() string {
	piece := s.pieces[0].piece
	return fmt.Sprintf("Gauge: %s; %s.%s%s", gaugeText(piece), overText(piece), spreadText(piece), doubtText(piece))
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
		s.para(fmt.Sprintf("  %-12s  ", outcome(c)), oneline.Of(c.Says))
	}
}

// outcome says in words what became of a check.
func outcome(c garment.Check) string {
	switch {
	case c.Passed:
		return "passed"
	case c.Severity == garment.AsError:
		return "error"
	}
	return "look at this"
}
