package sheet

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
)

// Reading is a place in the order of work: in a panel, what the row counter shows; in the
// hand, the row that was worked last. The reading before a panel's first row is its
// beginning.
type Reading struct {
	Panel   string // may be left empty where one panel alone has the reading
	Counter int    // the reading; in the hand the row that was worked last, 0 before row 1
}

// String returns the reading as it is printed, such as "counter 140 of the body".
func (r Reading) String() string {
	text := fmt.Sprintf("counter %03d", r.Counter)
	if r.Panel != "" {
		text += " of the " + r.Panel
	}
	return text
}

// ErrReading: a piece has no such reading, or more than one panel has it.
var ErrReading = errors.New("sheet: no such reading")

// ReadingError says which reading was asked for and which there are. It wraps
// [ErrReading].
type ReadingError struct {
	Piece string
	At    Reading
	Want  string
}

func (e *ReadingError) Error() string { return fmt.Sprintf("%s, %v: %s", e.Piece, e.At, e.Want) }

// Unwrap returns [ErrReading].
func (e *ReadingError) Unwrap() error { return ErrReading }

// WriteFrom writes the instructions of a piece from a reading on, for somebody who lost
// the place or goes on another day: how things stand there, needle by needle or stitch by
// stitch, and then the rest of what [Write] writes from the order of work on, in the same
// words. What is gone on with in the middle is begun anew: of a line with five boxes of
// which two are ticked, three are left. At the end of the body and at the beginning of the
// half that follows it the same is left.
//
// It returns the first error of w, [ErrPiece] for a piece that was not planned and
// knitted, and a [*ReadingError] for a reading that the piece does not have.
func WriteFrom(w io.Writer, piece garment.Piece, at Reading) error {
	if !garment.Made(piece) {
		return ErrPiece
	}
	s := newWriter(&page{w: w}, piece)
	at, err := s.found(at)
	if err != nil {
		return err
	}
	state, err := bed.KnitTo(piece.Work, at.Panel, at.Counter)
	if err != nil {
		return err
	}
	here, work := s.whereYouAre(state), printed(s.ordered(at, s.joined))
	s.title()
	s.kind()
	s.verbatim(here)
	s.key(slices.Concat(here, work))
	s.verbatim(work)
	s.account()
	s.finish()
	s.say(notes(s.joiningOrder()))
	s.takeCare()
	return s.err
}

// found returns the reading with its panel.
func (s *writer) found(at Reading) (Reading, error) {
	var has, all []string
	for i, p := range s.work.Panels {
		if at.Panel != "" && at.Panel != p.Name {
			continue
		}
		all = append(all, fmt.Sprintf("%03d to %03d of the %s", p.FirstRow-1, p.LastRow, p.Name))
		goesOn := i == 1 && at.Counter == p.FirstRow-1 && len(has) > 0 // where its parent ends
		if p.FirstRow-1 <= at.Counter && at.Counter <= p.LastRow && !goesOn {
			has = append(has, p.Name)
		}
	}
	switch {
	case len(has) == 1:
		at.Panel = has[0]
		return at, nil
	case len(has) > 1:
		return at, &ReadingError{s.work.Name, at, fmt.Sprintf("name the panel: %s have it", strings.Join(has, " and "))}
	case len(all) == 0:
		for _, p := range s.work.Panels {
			all = append(all, p.Name)
		}
		return at, &ReadingError{s.work.Name, at, "there is no such panel: " + strings.Join(all, ", ")}
	}
	return at, &ReadingError{s.work.Name, at, "there are " + strings.Join(all, ", ")}
}

// panelBegins reports whether nothing of the panel is knitted at a state.
func (s *writer) panelBegins(state bed.State) bool {
	p, _ := s.work.Panels.Panel(state.Panel())
	return state.Row() < p.FirstRow
}

// isSplit reports whether the halves are parted at a state.
func (s *writer) isSplit(state bed.State) bool {
	return state.Panel() != shaping.Body && (!s.panelBegins(state) || s.before(state.Panel()) != "")
}

// before returns the half that is finished before a panel begins with a new end of yarn,
// empty if the panel goes on with that of the body or is the body.
func (s *writer) before(panel string) string {
	for i := 2; i < len(s.work.Panels); i++ {
		if s.work.Panels[i].Name == panel {
			return s.work.Panels[i-1].Name
		}
	}
	return ""
}
