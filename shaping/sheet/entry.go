package sheet

import "example.com/walewise/shaping"

// entry is one line of the order of work: what is done at one counter reading
// and the rows knitted after it.
type entry struct {
	panel   string
	counter int          // before
	from    shaping.Side // where the carriage stands before
	before  []task
	knits   []stretch
	after   []shaping.Action
	to      int          // the counter after
	end     shaping.Side // where the carriage stands after
	inWork  shaping.Span
}

// task is an action before a row as it is said: an increase, which shifts stitches
// outwards and fills the needle that this empties, is one.
type task struct {
	shaping.Action
	increase bool
}

// tasks joins the two actions of every increase.
func tasks(actions []shaping.Action) []task {
	var list []task
	for i := 0; i < len(actions); i++ {
		t := task{Action: actions[i]}
		if t.Do == shaping.DoShift && i+1 < len(actions) && actions[i+1].Do == shaping.DoFill {
			t.increase = true
			i++
		}
		list = append(list, t)
	}
	return list
}

// edge returns the edge that a shift shapes.
func (t task) edge() shaping.Side {
	if t.increase {
		return t.Toward
	}
	return t.Toward.Opposite()
}

// emptied returns the needle that a shift leaves without a stitch.
func (t task) emptied() shaping.Needle { return t.Needles.End(t.Toward.Opposite()) }

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
			list = append(list, entry{panel: row.Panel, counter: row.CounterBefore(), from: row.From, before: tasks(row.Before)})
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
// follow: at the next action if they are few or if it is done again there, else after as
// many as the step before had. In a half an odd row after a hold, which changes the end
// where the carriage waits, is always an entry of its own.
func stepRows(w shaping.Work, i int, list []entry) int {
	last := list[len(list)-1]
	all := last.rows()
	for ; i < len(w.Rows) && len(w.Rows[i].Before) == 0 && w.Rows[i].Panel == last.panel; i++ {
		all++
	}
	if all <= longestStep && (all%pair == 0 || !last.holds() || last.panel == shaping.Body) {
		return all
	}
	if last.holds() {
		return pair
	}
	if i < len(w.Rows) && last.goesOn(entry{panel: w.Rows[i].Panel, from: w.Rows[i].From, before: tasks(w.Rows[i].Before)}) {
		return all
	}
	if n := len(list); n > 1 && alike(list[n-2].before, last.before) {
		return list[n-2].rows()
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

// alike reports whether two lists of tasks are the same but for the names of the
// needles and the end that comes first.
func alike(a, b []task) bool {
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	a, b = leftToRight(a), leftToRight(b)
	for i := range a {
		if a[i].Do != b[i].Do || a[i].Toward != b[i].Toward || a[i].increase != b[i].increase || a[i].Needles.Len() != b[i].Needles.Len() {
			return false
		}
	}
	return true
}

// goesOn reports whether f does again, at the same edges, what e does, whatever rows are
// knitted after it.
func (e entry) goesOn(f entry) bool {
	if e.panel != f.panel || !alike(e.before, f.before) || len(e.after)+len(f.after) > 0 {
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

// atBothEnds reports whether the tasks are one decrease at each end or one increase at
// each end, each of which leaves the stitches of the other where they are.
func atBothEnds(two []task) bool {
	return len(two) == 2 && two[0].Do == shaping.DoShift && two[1].Do == shaping.DoShift &&
		two[0].increase == two[1].increase && two[0].edge() != two[1].edge() && !two[0].Needles.Overlaps(two[1].Needles)
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

// leftToRight returns the tasks from left to right.
func leftToRight(list []task) []task {
	if len(list) == 2 && list[1].Needles.First.Index() < list[0].Needles.First.Index() && list[0].Do == list[1].Do {
		return []task{list[1], list[0]}
	}
	return list
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
	return n < len(list) && list[0].panel == shaping.Body && list[0].rows() > 1 && list[n].rows() > 1 &&
		list[0].goesOn(list[n]) && joined(list[0], list[n]) &&
		(n+1 == len(list) || !list[0].goesOn(list[n+1]))
}

// inTurn says what is done each time by entries that repeat, given how it is said of one:
// the same always, or two things in turn, and something else the last time.
func inTurn(group []entry, said func(entry) string) string {
	text, last := said(group[0]), group[len(group)-1]
	turn := (len(group) - 1) % 2
	if steady := said(group[1]) == text; !steady && len(group) > 2 {
		text += " and " + said(group[1]) + " in turn"
	} else {
		turn = 0
	}
	if once := said(last); once != said(group[turn]) {
		text += ", the last time " + once
	}
	return text
}
