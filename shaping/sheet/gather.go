package sheet

import "example.com/walewise/shaping"

// goesOn reports whether f does again, at the same edges, what e does, whatever rows are
// knitted after it.
func (e entry) goesOn(f entry) bool {
	if e.panel != f.panel || !alike(e.before, f.before) {
		return false
	}
	switch {
	case e.fashioned():
		return true
	case len(e.before) == 1 && (e.before[0].Do == shaping.DoHold || e.before[0].Do == shaping.DoBindOff):
		return e.from == f.from
	}
	return false
}

// fashioned reports whether the entry decreases or increases by one stitch at one end, or
// does either at both ends.
func (e entry) fashioned() bool {
	return len(e.before) == 1 && e.before[0].Do == shaping.DoShift || atBothEnds(e.before)
}

// knitsLike reports whether as many rows are knitted and wraps made after e as after f.
func (e entry) knitsLike(f entry) bool {
	if len(e.knits) != len(f.knits) {
		return false
	}
	for i := range e.knits {
		if e.knits[i].rows != f.knits[i].rows || (e.knits[i].wrap == 0) != (f.knits[i].wrap == 0) {
			return false
		}
	}
	return true
}

// gather groups entries that repeat, as far as they may be joined.
func gather(list []entry, joined func(first, next entry) bool) [][]entry {
	var groups [][]entry
	for len(list) > 0 {
		n := repeated(list, 1, joined)
		if list[0].fashioned() {
			const twoTurns = 4
			if inTurn := repeated(list, 2, joined); inTurn > n && inTurn >= twoTurns {
				n = inTurn
			}
			if n > 1 && goesOnOnce(list, n, joined) {
				n++
			}
		}
		groups = append(groups, list[:n])
		list = list[n:]
	}
	return groups
}

// repeated returns how many entries, from the first of the list, do the same, each with
// the rows of the one so many places before it.
func repeated(list []entry, places int, joined func(first, next entry) bool) int {
	n := 1
	for n < len(list) && list[0].goesOn(list[n]) && joined(list[0], list[n]) && (n < places || list[n].knitsLike(list[n-places])) {
		n++
	}
	return n
}

// goesOnOnce reports whether the n-th entry does for the last time what those before it
// do, and only its rows differ. In a half, where the next row may shape the other edge, it
// stays alone.
func goesOnOnce(list []entry, n int, joined func(first, next entry) bool) bool {
	return n < len(list) && !list[0].half && list[0].rows() > 1 && list[n].rows() > 1 &&
		list[0].goesOn(list[n]) && joined(list[0], list[n]) &&
		(n+1 == len(list) || !list[0].goesOn(list[n+1]))
}

// inTurn returns what is done each time by entries that repeat, given how it is said of
// one: the same always, or that and another thing in turn, and something else the last
// time. What there is not is empty.
func inTurn(group []entry, said func(entry) string) (once, other, last string) {
	once, last = said(group[0]), said(group[len(group)-1])
	before := once
	if second := said(group[1]); second != once && len(group) > 2 {
		other = second
		if len(group)%2 == 0 {
			before = other
		}
	}
	if last == before {
		last = ""
	}
	return once, other, last
}
