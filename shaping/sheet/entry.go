package sheet

import "example.com/walewise/shaping"

// entry is one line of the order of work: what is done at one counter reading
// and the rows knitted after it.
type entry struct {
	panel   string
	counter int          // before
	from    shaping.Side // where the carriage stands before
	before  []shaping.Action
	knits   []stretch
	after   []shaping.Action
	to      int          // the counter after
	end     shaping.Side // where the carriage stands after
	inWork  shaping.Span
}

// stretch is a number of rows knitted, and the needle wrapped after them.
type stretch struct {
	rows int
	wrap shaping.Needle // no needle if none is wrapped
}

func (e entry) rows() int {
	rows := 0
	for _, k := range e.knits {
		rows += k.rows
	}
	return rows
}

// holds reports whether the entry puts stitches on hold.
func (e entry) holds() bool {
	for _, a := range e.before {
		if a.Do == shaping.DoHold {
			return true
		}
	}
	return false
}

// pair is the number of rows of a step that goes across and comes back.
const pair = 2

// longestStep is how many rows after an action are still said with it.
const longestStep = 8

// entries gathers the rows of the work. stops are counter readings at which a
// new entry begins in any case.
func entries(w shaping.Work, stops ...int) []entry {
	var list []entry
	for i, row := range w.Rows {
		if begins(w, i, list, stops) {
			list = append(list, entry{panel: row.Panel, counter: row.CounterBefore(), from: row.From, before: row.Before})
		}
		list[len(list)-1].knit(row)
	}
	return list
}

// begins reports whether the i-th row begins a new entry.
func begins(w shaping.Work, i int, list []entry, stops []int) bool {
	row := w.Rows[i]
	if i == 0 || len(row.Before) > 0 || row.Panel != w.Rows[i-1].Panel {
		return true
	}
	for _, stop := range stops {
		if row.CounterBefore() == stop {
			return true
		}
	}
	last := list[len(list)-1]
	if len(last.before) == 0 || last.before[0].Do == shaping.DoCastOn {
		return false
	}
	return last.rows() == stepRows(w, i, list)
}

// stepRows returns after how many rows the last entry ends though only plain rows
// follow: at the next action if they are few, else after as many as the step before
// had. In a half an odd row after a hold, which changes the end where the carriage
// waits, is always an entry of its own.
func stepRows(w shaping.Work, i int, list []entry) int {
	last := list[len(list)-1]
	all := last.rows()
	for ; i < len(w.Rows) && len(w.Rows[i].Before) == 0 && w.Rows[i].Panel == last.panel; i++ {
		all++
	}
	if all <= longestStep && (all%pair == 0 || !last.holds() || last.panel == shaping.Body) {
		return all
	}
	if len(list) > 1 && !last.holds() {
		if before := list[len(list)-2]; alike(before.before, last.before) {
			return before.rows()
		}
	}
	return pair
}

// knit adds a row.
func (e *entry) knit(row shaping.Row) {
	if n := len(e.knits); n == 0 || e.knits[n-1].wrap != 0 {
		e.knits = append(e.knits, stretch{})
	}
	last := &e.knits[len(e.knits)-1]
	last.rows++
	for _, a := range row.After {
		if a.Do == shaping.DoWrap {
			last.wrap = a.Needles.First
		} else {
			e.after = append(e.after, a)
		}
	}
	e.to = row.CounterAfter()
	e.end = row.From.Opposite()
	e.inWork = row.Knit
}

// alike reports whether two lists of actions are the same but for the names of
// the needles.
func alike(a, b []shaping.Action) bool {
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	for i := range a {
		if a[i].Do != b[i].Do || a[i].Toward != b[i].Toward || a[i].Needles.Len() != b[i].Needles.Len() {
			return false
		}
	}
	return true
}

// repeats reports whether f does again what e does.
func (e entry) repeats(f entry) bool {
	if e.panel != f.panel || !alike(leftToRight(e.before), leftToRight(f.before)) || len(e.after)+len(f.after) > 0 || len(e.knits) != len(f.knits) {
		return false
	}
	for i := range e.knits {
		if e.knits[i].rows != f.knits[i].rows || (e.knits[i].wrap == 0) != (f.knits[i].wrap == 0) {
			return false
		}
	}
	switch before := e.before; {
	case len(before) == 1 && before[0].Do == shaping.DoShift:
		return true
	case len(before) == 2 && before[0].Do == shaping.DoShift && before[1].Do == shaping.DoShift:
		return before[0].Toward != before[1].Toward
	case len(before) == 1 && (before[0].Do == shaping.DoHold || before[0].Do == shaping.DoBindOff):
		return e.from == f.from // they go on at the same edge
	}
	return false
}

// leftToRight returns the actions from left to right.
func leftToRight(actions []shaping.Action) []shaping.Action {
	if len(actions) == 2 && actions[1].Needles.First.Index() < actions[0].Needles.First.Index() && actions[0].Do == actions[1].Do {
		return []shaping.Action{actions[1], actions[0]}
	}
	return actions
}

// gather groups entries that repeat, as far as they may be joined.
func gather(list []entry, joined func(first, next entry) bool) [][]entry {
	var groups [][]entry
	for _, e := range list {
		if n := len(groups); n > 0 && groups[n-1][0].repeats(e) && joined(groups[n-1][0], e) {
			groups[n-1] = append(groups[n-1], e)
			continue
		}
		groups = append(groups, []entry{e})
	}
	return groups
}
