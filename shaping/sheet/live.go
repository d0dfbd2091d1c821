package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/shaping"
)

// What the sheet asks about the work: which stitches wait where, which are left, and what
// the work needs.

// takenOff parts what follows a panel's last row: what is done with the stitches in work,
// and the strips that waited.
func takenOff(after []shaping.Action, inWork shaping.Span) (top shaping.Action, strips []shaping.Span) {
	for _, a := range after {
		if a.Needles == inWork {
			top = a
		} else if a.Do == shaping.DoWaste {
			strips = append(strips, a.Needles)
		}
	}
	return top, strips
}

// lastKnit returns the needles of a panel's last row.
func (s *writer) lastKnit(panel string) shaping.Span {
	var last shaping.Span
	for _, row := range s.work.Rows {
		if row.Panel == panel {
			last = row.Knit
		}
	}
	return last
}

// liveNeck returns the stitches of the neck that stay live.
func (s *writer) liveNeck() int {
	last := s.work.Rows[len(s.work.Rows)-1]
	_, strips := takenOff(last.After, last.Knit)
	neck, _ := s.necksAndUnderarms(strips)
	return count(neck)
}

// neckSteps returns the steps at the neck of a half.
func (s *writer) neckSteps(panel string) shaping.Schedule {
	p, _ := s.work.Panels.Panel(panel)
	return p.Steps(s.outer(panel).Opposite())
}

// neckHeld returns the stitches that wait at the neck of a half.
func (s *writer) neckHeld(panel string) int { return -s.neckSteps(panel).Of(shaping.Hold).Total() }

// heldByBody returns the shoulder stitches of a half that the body put on hold.
func (s *writer) heldByBody(half shaping.Panel) int {
	body := s.work.Panels[0]
	return -body.Steps(s.outer(half.Name)).Between(s.piece.ShoulderRow, body.LastRow).Of(shaping.Hold).Total()
}

// lastRow returns the row of the last step, 0 if there is none.
func lastRow(steps shaping.Schedule) int {
	if len(steps) == 0 {
		return 0
	}
	return steps[len(steps)-1].Row
}

// uses returns the actions of the work.
func (s *writer) uses() map[shaping.Do]bool {
	uses := map[shaping.Do]bool{}
	for _, row := range s.work.Rows {
		for _, a := range row.Before {
			uses[a.Do] = true
		}
		for _, a := range row.After {
			uses[a.Do] = true
		}
	}
	return uses
}

// separate returns the stitches bound off with a separate length of yarn.
func (s *writer) separate() int {
	n := 0
	for _, row := range s.work.Rows {
		for _, a := range row.Before {
			if a.Separate {
				n += a.Needles.Len()
			}
		}
	}
	return n
}

// separateText says how long a separate length of yarn must be.
func (s *writer) separateText(stitches int) string {
	return fmt.Sprintf("a separate length of main yarn, %s", s.newYarn(stitches))
}

// isLast reports whether no panel follows.
func (s *writer) isLast(panel string) bool {
	return panel == s.work.Panels[len(s.work.Panels)-1].Name
}

// names lists spans, and count adds up their needles.
func names(spans []shaping.Span) string {
	var list []string
	for _, span := range spans {
		list = append(list, span.String())
	}
	return strings.Join(list, ", ")
}

func count(spans []shaping.Span) int {
	sum := 0
	for _, span := range spans {
		sum += span.Len()
	}
	return sum
}
