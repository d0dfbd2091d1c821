package sheet

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Write writes the instructions of a piece: sizes and needs first, then the words
// used, the start, the order of work with boxes to tick, the account of the
// stitches, and how to finish. A piece for the bed is said by counter readings and
// needles, one for the hand by rows, right and wrong sides and stitches. It returns
// the first error of w, and [ErrPiece] for a piece that was not planned and knitted.
func Write(w io.Writer, piece garment.Piece) error {
	if !garment.Made(piece) {
		return ErrPiece
	}
	s := newWriter(&page{w: w}, piece)
	s.title()
	s.instructions()
	s.say(notes(s.joiningOrder()))
	s.takeCare()
	return s.err
}

// newWriter returns the writer of a piece that was made.
func newWriter(p *page, piece garment.Piece) *writer {
	s := &writer{page: p, piece: piece, work: piece.Work}
	s.voice = s.newVoice()
	return s
}

// instructions writes what belongs to one piece alone.
func (s *writer) instructions() {
	work := printed(s.ordered(s.beginning(), s.joined))
	s.kind()
	s.sizes()
	s.needs()
	s.shapes()
	s.beforeYouStart()
	s.key(work)
	s.say(s.start())
	s.verbatim(work)
	s.account()
	s.finish()
}

// beginning is the reading before the first row.
func (s *writer) beginning() Reading { return Reading{Panel: shaping.Body} }

// ErrPiece is returned for a piece that package garment has not made.
var ErrPiece = errors.New("sheet: the piece was not planned and knitted: make it with package garment")

// writer writes one piece.
type writer struct {
	*page
	piece garment.Piece
	work  shaping.Work
	voice voice

	checks []garment.Check // between this piece and others, said elsewhere
	bands  []garment.Band  // picked up from this piece and others, likewise

	onHold bool // the carriage has been set to hold
}

// ordered returns the order of work from a reading on, panel by panel; entries that repeat
// are gathered where they may be joined. A writer of its own keeps what it remembers of the
// work, such as the carriage set to hold, away from the rest of the page.
func (s *writer) ordered(from Reading, joined func(first, next entry) bool) []line {
	order := *s
	order.voice = order.newVoice()
	return order.order(from, joined)
}

func (s *writer) order(from Reading, joined func(first, next entry) bool) []line {
	var said []line
	list := entries(s.work, s.opened(), s.stops()...)
	for i := 0; i < len(list); {
		j := i
		for j < len(list) && list[j].panel == list[i].panel {
			j++
		}
		groups := gather(list[i:j], joined)
		switch panel := list[i].panel; {
		case panel == from.Panel:
			groups = s.left(groups, from.Counter)
		case finished(s.work, panel, from.Panel):
			s.left(groups, list[j-1].to)
			groups = nil
		}
		if len(groups) > 0 {
			said = append(said, s.panel(groups, list[j:])...)
		}
		i = j
	}
	return said
}

// stops returns the counter readings at which something is said.
func (s *writer) stops() []int {
	stops := []int{s.piece.Heights.Band}
	if s.marksUnderarm(entry{counter: s.piece.Heights.Underarm}) {
		stops = append(stops, s.piece.Heights.Underarm)
	}
	return stops
}

// joined reports whether an entry that repeats another is said with it.
func (s *writer) joined(first, next entry) bool {
	return !s.marksUnderarm(first) && !s.marksUnderarm(next) && s.voice.joined(first, next)
}

// alone joins no entry with another.
func alone(first, next entry) bool { return false }

// panel says the entries of one panel, those that repeat in one group; rest are those
// of the panels after it.
func (s *writer) panel(groups [][]entry, rest []entry) []line {
	first, last := groups[0][0], groups[len(groups)-1]
	said := []line{heading(s.work.Name)}
	if s.halved() {
		said = []line{heading(s.work.Name + ", " + first.panel)}
	}
	panel, _ := s.work.Panels.Panel(first.panel)
	begins := first.counter < panel.FirstRow
	var second shaping.Schedule // the steps that make both ends shaped: at a half's outer edge, at the neck of one of two fronts
	later := 0                  // at the outer edge of one of two fronts, the row of the first step above the start of its neck
	switch {
	case s.opened():
		if begins {
			said = append(said, line{kind: openingLine, text: s.frontLies()})
		}
		second = s.neckSteps(first.panel)
		if above := panel.Steps(s.outer(panel.Name)).Between(second[0].Row+1, panel.LastRow); len(above) > 0 && lastRow(second) > above[0].Row {
			later = above[0].Row
		}
	case first.panel != shaping.Body:
		if begins {
			said = append(said, line{kind: openingLine, text: s.voice.opening(first, panel)})
		}
		second = panel.Steps(s.outer(panel.Name))
	}
	both := 0 // the row from which that is said
	if lastRow(second) > first.counter {
		both = max(second[0].Row, first.counter+1)
	}
	for k, group := range groups {
		e := group[0]
		if e.rows() == 0 {
			continue // all of it is knitted, and only what follows is left
		}
		if both > 0 && e.counter+1 >= both {
			said = append(said, note(s.bothEnds(e)))
			if both = 0; later > e.counter+soon {
				both, later = later, 0
			}
		}
		text := s.voice.asks(group, begins && k == 0)
		if s.marksUnderarm(e) {
			text = s.threads(e) + " " + text
		}
		said = append(said, s.entry(group, text))
	}
	return append(said, s.after(last[len(last)-1], rest)...)
}

// entry is the step of entries that are one or repeat.
func (s *writer) entry(group []entry, text string) line {
	e, last, rows := group[0], group[len(group)-1], 0
	for _, each := range group {
		rows += each.rows()
	}
	to, end := s.voice.until(last)
	return line{
		kind: stepLine, text: text, mark: s.voice.mark(e.counter, e.from), times: len(group),
		rows: rows, to: to, end: end, result: s.voice.result(last),
	}
}

// soon is how many rows ahead the shaping of the other edge is told with that of the first.
const soon = 4

// bothEnds says from which entry on stitches go at the outer edge of a half, or at the neck
// of one of two fronts.
func (s *writer) bothEnds(e entry) string {
	outer := s.outer(e.panel)
	if s.opened() && len(s.work.Panels[0].Steps(outer).Between(e.counter+1, e.counter+soon)) == 0 {
		return fmt.Sprintf("From here stitches go at the neck, the %v end.", outer.Opposite())
	}
	if lastRow(s.neckSteps(e.panel)) > e.counter {
		return fmt.Sprintf("From here both ends are shaped, the neck at the %v and the outer edge at the %v: mind the end.", outer.Opposite(), outer)
	}
	half, _ := s.work.Panels.Panel(e.panel)
	how := "go"
	if half.Steps(outer).Between(e.counter+1, half.LastRow)[0].Stitches > 0 {
		how = "come"
	}
	return fmt.Sprintf("From here stitches %s at the outer edge, the %v end.", how, outer)
}

// places lists the places of entries that repeat, each with its box if they are many.
func places(group []entry, place func(entry) string) string {
	var list []string
	for _, e := range group {
		text := place(e)
		if len(group) > mostBoxes {
			text = strings.ReplaceAll("[ ] "+text, " ", noBreak)
		}
		list = append(list, text)
	}
	return strings.Join(list, ", ")
}

// after says what follows a panel's last row and where every stitch is then; rest are the
// entries of the panels after it.
func (s *writer) after(e entry, rest []entry) []line {
	if len(e.after) == 0 {
		return nil
	}
	top, strips := takenOff(e.after, e.inWork)
	texts := []string{s.voice.takenOff(top, e)}
	neck, underarms := s.necksAndUnderarms(strips)
	if len(neck) > 0 {
		texts = append(texts, s.voice.neckWaits(neck)...)
	}
	for _, strips := range underarms {
		texts = append(texts, s.voice.underarmWaits(strips)...)
	}
	if len(rest) > 0 {
		texts = append(texts, s.voice.changeOver(e, rest[0]))
	} else {
		texts = append(texts, s.voice.putBack())
	}
	var said []line
	for _, text := range texts {
		if text != "" {
			said = append(said, line{kind: stepLine, text: text, mark: s.voice.markAfter(e)})
		}
	}
	return append(said, line{kind: checkLine, text: s.tally(e.panel) + "."})
}
