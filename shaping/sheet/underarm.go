package sheet

import (
	"slices"

	"example.com/walewise/shaping"
)

// Stitches that wait on hold at an outer edge, of an underarm or a sleeve's cap, and are
// put away.

// underarmHolds returns the steps that put stitches of the armhole at one edge on hold,
// or those of a sleeve's cap.
func (s *writer) underarmHolds(edge shaping.Side) shaping.Schedule {
	switch {
	case s.isSleeve():
		return s.work.Panels[0].Steps(edge).Of(shaping.Hold)
	case s.opened() && edge != s.piece.Outer():
		return nil
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
	if s.isSleeve() {
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
	if !slices.Contains(s.putAway(edge), row) || s.atNeck(e.panel, edge) {
		return 0, 0, 0
	}
	holds := s.underarmHolds(edge)
	return -holds.Through(row), -holds.Through(s.putAwayBefore(edge, row)), edge
}

// necksAndUnderarms parts strips that waited to the end: the neck's lie between the
// shoulders.
func (s *writer) necksAndUnderarms(strips []shaping.Span) (neck []shaping.Span, underarms [][]shaping.Span) {
	if s.isSleeve() {
		return nil, s.edgesOfCap(strips)
	}
	if s.opened() {
		return s.neckAndUnderarm(strips)
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
