package sheet

import "example.com/walewise/shaping"

// entry is one line of the order of work: what is done at one counter reading
// and the rows knitted after it.
type entry struct {
	panel   string
	half    bool         // the neck is at one edge of the panel
	counter int          // before
	from    shaping.Side // where the carriage stands before
	before  []task
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

// entries gathers the rows of the work, of one of two fronts if it is opened. stops are
// counter readings at which a new entry begins in any case.
func entries(w shaping.Work, opened bool, stops ...int) []entry {
	var list []entry
	for i, row := range w.Rows {
		if begins(w, i, list, stops) {
			list = append(list, entry{panel: row.Panel, half: opened || row.Panel != shaping.Body, counter: row.CounterBefore(), from: row.From, before: tasks(row.Before)})
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
	if all <= longestStep && (all%pair == 0 || !last.holds() || !last.half) {
		return all
	}
	if i < len(w.Rows) && last.goesOn(entry{panel: w.Rows[i].Panel, from: w.Rows[i].From, before: tasks(w.Rows[i].Before)}) {
		return all
	}
	rows := pair
	if n := len(list); n > 1 && list[n-2].goesOn(last) {
		rows = list[n-2].rows()
		if n > 3 && list[n-4].goesOn(last) && list[n-3].goesOn(last) && list[n-4].rows() == rows {
			rows = list[n-3].rows() // they may come in turn
		}
	}
	return rows
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
