package sheet

import (
	"fmt"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
)

// voice is how the order of work is said: at the bed, or with two needles.
type voice interface {
	// view says on which side of the fabric left and right are seen.
	view() string
	// materials says what is needed beside the yarn.
	materials() []string
	// words are the words and short forms used, each with its meaning.
	words() [][2]string
	// start is what is done before row 1, one box each.
	start() []string
	// here says how things stand between two rows, one line each.
	here(state bed.State) []string
	// opening says how things stand when a half begins.
	opening(e entry, half shaping.Panel) string
	// joined reports whether an entry that repeats another may be said with it.
	joined(first, next entry) bool
	// asks says what an entry, or one that is repeated, asks for; first means that it
	// begins its panel.
	asks(group []entry, first bool) string
	// mark says where an entry begins: the counter reading and side, or the row.
	mark(counter int, from shaping.Side) mark
	// markAfter says where what follows a panel's last row begins.
	markAfter(e entry) mark
	// labels say what the number and the side of a mark are, where the mark does not.
	labels() (number, side string)
	// until says at which reading an entry ends, empty if that is the one where it begins,
	// and at the bed at which side.
	until(e entry) (reading, side string)
	// result says how things stand after an entry.
	result(e entry) string
	// takenOff says what becomes of the stitches in work after a panel's last row.
	takenOff(a shaping.Action, e entry) string
	// changeOver says how the work goes on from one half to the other.
	changeOver(last, next entry) string
	// putBack says what is put back when all is done.
	putBack() string
	// neckWaits and underarmWaits say what becomes of stitches that waited to the end, one
	// line each.
	neckWaits(strips []shaping.Span) []string
	underarmWaits(strips []shaping.Span) []string
	// rest says where the live stitches of an account are.
	rest(waste int, onHold []shaping.Span) []string
	// reading is the number by which a step of an edge at row is found.
	reading(row int) string
	// on names needles, where they have names.
	on(needles ...shaping.Needle) string
	// bandStitch says in what a band is knitted.
	bandStitch() string
	// lowerEdge says what becomes of an open lower edge; seen, how another piece is looked
	// at so that its sides are left and right as in this one.
	lowerEdge() string
	seen() string
	// across says how wide a span is, under the heading that columns returns.
	across(s shaping.Span) string
	columns() string
	// cautions are the dangers of the tools.
	cautions() []string
}

// newVoice returns the way of saying the work.
func (s *writer) newVoice() voice {
	if s.work.Place == shaping.Hand {
		return handVoice{s}
	}
	return bedVoice{s}
}

// where says at which edge something is done.
func (s *writer) where(e entry, edge shaping.Side) string {
	if s.atNeck(e.panel, edge) {
		return "at the neck"
	}
	return fmt.Sprintf("at the %v edge", edge)
}

// outer returns the side of the outer edge of a half, or of one of two fronts.
func (s *writer) outer(panel string) shaping.Side {
	if s.opened() {
		return s.piece.Outer()
	}
	if panel == shaping.LeftHalf {
		return shaping.Left
	}
	return shaping.Right
}

// halfWith returns the name of the half that the span lies in.
func (s *writer) halfWith(span shaping.Span) string {
	for _, p := range s.work.Panels {
		if p.Parent != "" && p.Needles.ContainsSpan(span) {
			return p.Name
		}
	}
	return ""
}

// wearer says on which side of the wearer a half lies.
func (s *writer) wearer(half string) string {
	return fmt.Sprintf("the wearer's %v shoulder", s.lies(s.outer(half)))
}

// nextText follows "the next".
func nextText(n int) string {
	if n == 1 {
		return "stitch"
	}
	return plural.Stitches(n)
}

// theyStay says that so many stitches stay.
func theyStay(n int) string {
	if n == 1 {
		return "it stays"
	}
	return "they stay"
}

// sentence returns the text as one.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	return oneline.Capital(text) + "."
}
