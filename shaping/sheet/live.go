package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/gauge"
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

// necksAndUnderarms parts strips that waited to the end: the neck's lie between the
// shoulders.
func (s *writer) necksAndUnderarms(strips []shaping.Span) (neck []shaping.Span, underarms [][]shaping.Span) {
	if !s.halved() {
		return nil, s.edgesOfCap(strips)
	}
	left, right := s.lastKnit(shaping.LeftHalf), s.lastKnit(shaping.RightHalf)
	for _, strip := range strips {
		if strip.First.Index() > left.Last.Index() && strip.Last.Index() < right.First.Index() {
			neck = append(neck, strip)
		} else {
			underarms = append(underarms, []shaping.Span{strip})
		}
	}
	return neck, underarms
}

// edgesOfCap parts strips that waited at a sleeve into those at its left and its right.
func (s *writer) edgesOfCap(strips []shaping.Span) [][]shaping.Span {
	top := s.lastKnit(shaping.Body)
	right := slices.IndexFunc(strips, func(strip shaping.Span) bool { return strip.First.Index() > top.Last.Index() })
	if right < 0 {
		right = len(strips)
	}
	return slices.DeleteFunc([][]shaping.Span{strips[:right], strips[right:]}, func(edge []shaping.Span) bool { return len(edge) == 0 })
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

// underarmHolds returns the steps that put stitches of the armhole at one edge on hold,
// or those of a sleeve's cap.
func (s *writer) underarmHolds(edge shaping.Side) shaping.Schedule {
	if !s.halved() {
		return s.work.Panels[0].Steps(edge).Of(shaping.Hold)
	}
	var holds shaping.Schedule
	for _, p := range s.work.Panels {
		if p.Parent == "" || s.outer(p.Name) == edge {
			holds = append(holds, p.Steps(edge).Between(1, s.piece.ShoulderRow-1).Of(shaping.Hold)...)
		}
	}
	return holds
}

// putAway returns the rows after which stitches held at one edge are put away: that of
// an armhole's last step on hold, in a cap each after which the edge is shaped otherwise.
func (s *writer) putAway(edge shaping.Side) []int {
	holds := s.underarmHolds(edge)
	if len(holds) == 0 {
		return nil
	}
	var rows []int
	if !s.halved() {
		steps := s.work.Panels[0].Steps(edge)
		for i := 1; i < len(steps); i++ {
			if steps[i-1].Method == shaping.Hold && steps[i].Method != shaping.Hold {
				rows = append(rows, steps[i-1].Row)
			}
		}
	}
	if last := lastRow(holds); len(rows) == 0 || rows[len(rows)-1] < last {
		rows = append(rows, last)
	}
	return rows
}

// putAwayBefore returns the last row before the given one after which stitches held at an
// edge are put away, 0 if there is none.
func (s *writer) putAwayBefore(edge shaping.Side, row int) int {
	last := 0
	for _, away := range s.putAway(edge) {
		if away < row {
			last = away
		}
	}
	return last
}

// underarmDone returns the stitches of an underarm on hold and its edge if the entry
// holds the last of them, and how many of them have been put away before; else 0.
func (s *writer) underarmDone(e entry) (held, before int, edge shaping.Side) {
	edge = e.from.Opposite()
	row := e.counter + 1
	if !slices.Contains(s.putAway(edge), row) || (e.panel != shaping.Body && edge != s.outer(e.panel)) {
		return 0, 0, 0
	}
	holds := s.underarmHolds(edge)
	return -holds.Through(row), -holds.Through(s.putAwayBefore(edge, row)), edge
}

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

// separateText says how long a separate length of yarn must be: four times the width
// that it binds off, and two tails. Common practice, no source.
func (s *writer) separateText(stitches int) string {
	length := s.piece.Gauge.Width(4 * stitches).Add(gauge.MustParseLength("40 cm"))
	return fmt.Sprintf("a separate length of main yarn, %s", s.length(length))
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
