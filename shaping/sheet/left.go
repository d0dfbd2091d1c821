package sheet

// left returns what is left to do of a panel's entries at a counter reading. An entry in
// the middle of which it lies is begun anew there, and of one that repeats the times that
// have not been done are left. When all rows are knitted, what follows the last of them is
// left, as an entry without rows. It takes in what has been set by then.
func (s *writer) left(groups [][]entry, counter int) [][]entry {
	var left [][]entry
	var last entry
	for _, group := range groups {
		for len(group) > 0 && group[0].counter < counter {
			last = group[0]
			s.onHold = s.onHold || last.holds()
			group = group[1:]
			if last.to > counter {
				left = append(left, []entry{last.rest(counter)})
			}
		}
		if len(group) > 0 {
			left = append(left, group)
		}
	}
	if len(left) == 0 && len(last.after) > 0 {
		left = append(left, []entry{last.rest(counter)})
	}
	return left
}

// rest returns the entry as it is gone on with at a counter reading within it or at its
// end: what is done before its first row is done.
func (e entry) rest(counter int) entry {
	done := counter - e.counter
	if done%pair == 1 {
		e.from = e.from.Opposite()
	}
	e.counter, e.before = counter, nil
	var knits []stretch
	for _, k := range e.knits {
		gone := min(done, k.rows)
		done -= gone
		if k.rows -= gone; k.rows > 0 {
			knits = append(knits, k)
		}
	}
	e.knits = knits
	return e
}
