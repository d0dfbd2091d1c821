package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/shaping"
)

// tally says where every stitch is when the panel is finished.
func (s *writer) tally(panel string) string {
	onHold := map[shaping.Needle]bool{}
	waste := 0
	var counted shaping.Ledger
	next := s.work.Rows
	for course := range s.piece.Cloth.Courses() {
		if course.Panel != panel && finished(s.work, panel, course.Panel) {
			break
		}
		row := next[0]
		next = next[1:]
		counted = course.Ledger
		for _, actions := range [2][]shaping.Action{row.Before, row.After} {
			for _, a := range actions {
				switch a.Do {
				case shaping.DoHold:
					setHeld(onHold, a.Needles, true)
				case shaping.DoReturn, shaping.DoBindOff:
					setHeld(onHold, a.Needles, false)
				case shaping.DoWaste:
					waste += a.Needles.Len()
					setHeld(onHold, a.Needles, false)
				}
			}
		}
	}
	var parts []string
	add := func(n int, what string) {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, what))
		}
	}
	parts = append(parts, s.voice.rest(waste, s.extent().Runs(func(n shaping.Needle) bool { return onHold[n] }))...)
	add(counted.BoundOff, "bound off")
	add(counted.Decreased, "decreased")
	return strings.Join(parts, " + ") + fmt.Sprintf(" = %d", counted.CastOn+counted.Increased)
}

// finished reports whether the panel is worked before the other.
func finished(w shaping.Work, panel, other string) bool {
	for _, p := range w.Panels {
		switch p.Name {
		case panel:
			return true
		case other:
			return false
		}
	}
	return false
}

func setHeld(onHold map[shaping.Needle]bool, s shaping.Span, held bool) {
	for n := range s.All() {
		onHold[n] = held
	}
}
