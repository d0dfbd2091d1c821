package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func (s *writer) notes() {
	s.heading("Shapes in words")
	for _, e := range s.piece.Edges {
		if e.Panel == shaping.LeftHalf || (e.Panel == shaping.Body && e.Side == shaping.Left) {
			continue // said with the one at the right
		}
		steps, other := s.steps(e), s.steps(s.opposite(e))
		if len(steps) == 0 {
			way := "upright"
			if e.Name == garment.ShoulderEdge {
				way = "level"
			}
			s.para("  "+e.Name+": ", way+", without steps.")
			continue
		}
		total, last := -steps.Total(), ""
		at := "at each side"
		if total < 0 {
			total, at = -total, "more at each side"
		}
		if e.Name == garment.ShoulderEdge {
			last = fmt.Sprintf("; the last %d stay to the end", e.Stitches-total)
			total = e.Stitches
		}
		s.para("  "+e.Name+": ", fmt.Sprintf("%s %s. %s%s. Off the drawn line lie %s of fabric; the least that whole stitches allow is %s.",
			plural.Stitches(total), at, capital(s.spoken(e.Name, steps, other[0].Row)), last, s.area(e.Area), s.area(e.Floor)))
	}
	s.heading("Before you start")
	for _, warning := range s.piece.Warnings {
		s.para("  ", clean(warning))
	}
	if s.halved() {
		s.para("  ", "The neck of front and back together, with its band, must stretch over the head: measure before you cast on, or plan an opening at a shoulder.")
	} else {
		cuff := "The cuff"
		if s.piece.Heights.Band > 0 {
			cuff += ", with its band,"
		}
		s.para("  ", cuff+" must stretch over the hand: measure before you cast on.")
	}
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

// spoken says the steps of an edge at the right of the piece; other is the row of the
// first one at the left.
func (s *writer) spoken(name string, steps shaping.Schedule, other int) string {
	var short []string
	var before string
	text, begin, at := "", "", 0
	for i, run := range steps.Phrases() {
		way := way(steps[at])
		at += run.Times
		switch {
		case i == 0:
			if run.Times == 1 {
				begin = fmt.Sprintf(" after the first %d", max(run.Stitches, -run.Stitches))
			}
			text = "at " + s.voice.reading(run.From)
			if other != run.From {
				left := "at the left edge"
				if name == garment.NeckEdge {
					left = "in the left half"
				}
				text += fmt.Sprintf(" (%s %s)", left, s.voice.reading(other))
			}
			text += " " + way + ": "
		case way != before:
			text += "; " + way + ": "
		default:
			text += "; "
		}
		if run.Every > 0 {
			short = append(short, strings.ReplaceAll(run.Shorthand(), "+", ""))
		}
		before = way
		text += strings.TrimPrefix(run.String(), "+")
	}
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
