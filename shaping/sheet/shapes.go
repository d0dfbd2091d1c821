package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func (s *writer) shapes() {
	s.heading("Shapes in words")
	for _, shape := range s.shapesInWords() {
		s.para("  "+shape[0]+": ", shape[1])
	}
}

// shapesInWords says each edge of the piece: its name, and how it runs.
func (s *writer) shapesInWords() [][2]string {
	var said [][2]string
	for _, e := range s.piece.Edges {
		if !s.opened() && (e.Panel == shaping.LeftHalf || (e.Panel == shaping.Body && e.Side == shaping.Left)) {
			continue // said with the one at the right
		}
		said = append(said, [2]string{e.Name, s.edgeInWords(e)})
	}
	return said
}

func (s *writer) edgeInWords(e garment.Edge) string {
	steps, other := s.steps(e), s.steps(s.opposite(e))
	if len(other) != len(steps) {
		other = steps // no piece of package garment has such edges
	}
	if len(steps) == 0 {
		way := "upright"
		if e.Name == garment.ShoulderEdge {
			way = "level"
		}
		return way + ", without steps."
	}
	total, last := -steps.Total(), ""
	at := s.atEachSide(e)
	if total < 0 {
		total, at = -total, "more "+at
	}
	if e.Name == garment.ShoulderEdge {
		last = fmt.Sprintf("; the last %d stay to the end", e.Stitches-total)
		total = e.Stitches
	}
	return fmt.Sprintf("%s %s. %s%s. Off the drawn line lie %s of fabric; the least that whole stitches allow is %s.",
		plural.Stitches(total), at, oneline.Capital(s.spoken(e.Name, steps, other)), last, s.area(e.Area), s.area(e.Floor))
}

func (s *writer) beforeYouStart() {
	if list := s.toKnow(); len(list) > 0 {
		s.heading("Before you start")
		s.say(notes(list))
	}
}

// toKnow says what the knitter should know before starting.
func (s *writer) toKnow() []string {
	var list []string
	for _, text := range s.piece.Warnings {
		list = append(list, oneline.Of(text))
	}
	if text := s.mustStretch(); text != "" {
		list = append(list, text)
	}
	return list
}

// mustStretch says what must pass through the opening of the piece, unless a check has
// said whether it does.
func (s *writer) mustStretch() string {
	name := "cuff"
	if s.isTrunk() {
		name = "neck"
	}
	switch {
	case s.isTrunk() && s.opens():
		return ""
	case slices.ContainsFunc(s.checks, func(c garment.Check) bool { return c.Name == name }):
		return ""
	case s.isTrunk():
		return "The neck of front and back together, with its band, must stretch over the head: measure before you cast on, or plan an opening at a shoulder."
	case s.piece.Heights.Band > 0:
		return "The cuff, with its band, must stretch over the hand: measure before you cast on."
	}
	return "The cuff must stretch over the hand: measure before you cast on."
}

// way says what a step does with its stitches.
func way(step shaping.Step) string {
	switch step.Method {
	case shaping.Hold:
		return "on hold"
	case shaping.BindOff:
		return "bound off"
	case shaping.CastOn:
		return "cast on"
	}
	if step.Stitches > 0 {
		return "increased"
	}
	return "decreased"
}

// steps returns the steps of a drawn edge in rows of the piece, with those taken off at
// once at an underarm.
func (s *writer) steps(e garment.Edge) shaping.Schedule {
	if s.opened() && e.Name == garment.NeckEdge {
		return s.neckSteps(shaping.Body) // with the flat part
	}
	steps := e.Schedule.Shifted(e.FirstRow - 1)
	if e.Name == garment.ArmholeEdge || e.Name == garment.CapEdge {
		if first, ok := s.underarm(e.Side); ok && (len(steps) == 0 || first.Row < steps[0].Row) {
			steps = append(shaping.Schedule{first}, steps...)
		}
	}
	return steps
}

// opposite returns the same edge at the other side.
func (s *writer) opposite(e garment.Edge) garment.Edge {
	for _, other := range s.piece.Edges {
		if other.Name == e.Name && other.Side != e.Side {
			return other
		}
	}
	return e
}

// mostShort is how many phrases the shorthand is used for.
const mostShort = 6

// spoken says the steps of an edge at the right of the piece, each kind from the reading
// where it begins, with that at the left; others are the steps there. Tied steps are a row
// apart at the two edges and others are not, so that no distance from one kind to the next
// would hold for both.
func (s *writer) spoken(name string, steps, others shaping.Schedule) string {
	left := "at the left edge"
	if name == garment.NeckEdge {
		left = "in the left half"
	}
	var said []string
	for from, to := 0, 0; from < len(steps); from = to {
		for to = from + 1; to < len(steps) && goOn(steps, others, to); to++ {
		}
		text := "at "
		if from > 0 {
			text = "from "
		}
		text += s.voice.reading(steps[from].Row)
		if others[from].Row != steps[from].Row {
			text += fmt.Sprintf(" (%s %s)", left, s.voice.reading(others[from].Row))
		}
		said = append(said, fmt.Sprintf("%s %s: %s", text, way(steps[from]), inPhrases(steps[from:to])))
	}
	return strings.Join(said, "; ")
}

// goOn reports whether the n-th step is of the kind of the one before it and as far from it
// at both edges.
func goOn(steps, others shaping.Schedule, n int) bool {
	return way(steps[n]) == way(steps[n-1]) && steps[n].Row-steps[n-1].Row == others[n].Row-others[n-1].Row
}

// inPhrases says steps of one kind, with their shorthand if it is short.
func inPhrases(steps shaping.Schedule) string {
	var said, short []string
	begin := ""
	for i, run := range steps.Phrases() {
		if i == 0 && run.Times == 1 {
			begin = fmt.Sprintf(" after the first %d", max(run.Stitches, -run.Stitches))
		}
		if run.Every > 0 {
			short = append(short, strings.ReplaceAll(run.Shorthand(), "+", ""))
		}
		said = append(said, strings.TrimPrefix(run.String(), "+"))
	}
	text := strings.Join(said, "; ")
	if len(short) > 0 && len(short) <= mostShort {
		text += fmt.Sprintf(" (rows-stitches-times%s: %s)", begin, strings.Join(short, ", "))
	}
	return text
}

// underarm returns the step at which stitches are taken off at once at an underarm; ok is
// false if all of them are decreased.
func (s *writer) underarm(side shaping.Side) (step shaping.Step, ok bool) {
	for _, p := range s.work.Panels {
		if p.Parent != "" && s.outer(p.Name) != side {
			continue
		}
		for _, step := range p.Steps(side) {
			if step.Method == shaping.Hold || step.Method == shaping.BindOff {
				return step, s.piece.Widths.BindOff > 0
			}
		}
	}
	return step, false
}
