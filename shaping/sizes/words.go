package sizes

import (
	"slices"

	"example.com/walewise/shaping"
)

// Words says the steps of one edge for sizes that follow each other.
type Words struct {
	From, To int   // the sizes from one to before another, counted from 0
	Rows     []int // of the first step of each of them, in the piece; None for one without steps
	Lines    []Line
}

// Line is a run of equal steps, said for the sizes of its [Words]: so many Stitches go
// (negative) or come, at the distances Every, or Every and Then in turn where Then is not 0,
// so many Times. All four have a value for each of the sizes. A size whose Times are 0
// leaves the line out; where the others differ its other values are 0. The first line
// that a size does not leave out begins at its row of Words.Rows; each other one at its own
// first distance from the step before.
type Line struct {
	Method      shaping.Method
	Stitches    []int // less than 0 if they go
	Every, Then []int // rows; 0 where a single step begins and needs no distance
	Times       []int
}

// Has reports whether the words are said for a size.
func (w Words) Has(size int) bool { return w.From <= size && size < w.To }

// Steps returns the steps that the words say for a size, in rows of the piece; none for a
// size that they are not said for, or for which a value is missing.
func (w Words) Steps(size int) shaping.Schedule {
	k := size - w.From
	if !w.Has(size) || k >= len(w.Rows) || slices.ContainsFunc(w.Lines, func(l Line) bool { return !l.has(k) }) {
		return nil
	}
	var steps shaping.Schedule
	for _, l := range w.Lines {
		turns := [2]int{l.Every[k], l.Every[k]}
		if l.Then[k] != 0 {
			turns[1] = l.Then[k]
		}
		// The first distance of a size's first line lies after its first step.
		before := 0
		if len(steps) == 0 {
			before = 1
		}
		for n := range min(l.Times[k], shaping.MaxRows-len(steps)) {
			row := w.Rows[k]
			if len(steps) > 0 {
				row = steps[len(steps)-1].Row + turns[(n+before)%2]
			}
			steps = append(steps, shaping.Step{Row: row, Stitches: l.Stitches[k], Method: l.Method})
		}
	}
	return steps
}

// has reports whether the line has all values of the k-th of its sizes.
func (l Line) has(k int) bool {
	return k < min(len(l.Stitches), len(l.Every), len(l.Then), len(l.Times))
}

// sayAll says schedules, one of each size, for as many sizes at a time as have words in
// common; of which no size has any steps it says nothing.
func sayAll(schedules []shaping.Schedule) []Words {
	var list []Words
	for from, to := 0, 0; from < len(schedules); from = to {
		best, _ := say(schedules[from : from+1])
		for to = from + 1; to < len(schedules); to++ {
			more, ok := say(schedules[from : to+1])
			if !ok {
				break
			}
			best = more
		}
		best.From, best.To = from, to
		if len(best.Lines) > 0 {
			list = append(list, best)
		}
	}
	return list
}

// say says schedules in words that all of them have; ok is false if there are none that are
// short enough.
func say(schedules []shaping.Schedule) (w Words, ok bool) {
	var columns []lineup
	most := 0
	for k, s := range schedules {
		first := None
		if len(s) > 0 {
			first = s[0].Row
		}
		w.Rows = append(w.Rows, first)
		list := phrasesOf(s)
		most = max(most, len(list))
		columns = align(columns, list, k)
	}
	// Lines that some sizes leave out are read over easily: one more than any size needs, and
	// a few where each needs many.
	const few = 4
	if len(columns) > most+1+most/few {
		return w, false
	}
	for _, c := range columns {
		w.Lines = append(w.Lines, c.line(len(schedules)))
	}
	return w, true
}

// phrase is how a run of steps is said, without its row.
type phrase struct {
	stitches    int
	method      shaping.Method
	every, then int // both 0 for a single step at the beginning, which has no distance
	times       int
}

func phrasesOf(s shaping.Schedule) []phrase {
	var list []phrase
	for _, p := range s.Phrases() {
		step, _ := s.At(p.From)
		list = append(list, phrase{p.Stitches, step.Method, p.Every, p.Then, p.Times})
	}
	return list
}

// lineup is the phrases of several sizes that become one line; a size without one leaves
// the line out.
type lineup map[int]phrase

// The cost of lines that are harder to read.
const (
	otherStitches = 2
	otherDistance = 2
	leftOut       = 1 // by one size
	another       = 5 // a line more
)

// cost returns what it costs to have a phrase in the line; ok is false if it cannot be.
func (l lineup) cost(p phrase) (cost int, ok bool) {
	stitches, distance := false, false
	for _, q := range l {
		if p.method != q.method || (p.stitches < 0) != (q.stitches < 0) || p.every*q.every != 0 && (p.then == 0) != (q.then == 0) {
			return 0, false
		}
		stitches = stitches || p.stitches != q.stitches
		distance = distance || p.every*q.every != 0 && (p.every != q.every || p.then != q.then)
	}
	if stitches {
		cost += otherStitches
	}
	if distance {
		cost += otherDistance
	}
	return cost, true
}

// align lines the phrases of one more size up with those of the sizes before it, at the
// least cost.
func align(columns []lineup, list []phrase, size int) []lineup {
	// least[i][j] is what all from column i and phrase j on costs.
	least := make([][]int, len(columns)+1)
	for i := range least {
		least[i] = make([]int, len(list)+1)
	}
	together := func(i, j int) (int, bool) {
		if i == len(columns) || j == len(list) {
			return 0, false
		}
		cost, ok := columns[i].cost(list[j])
		return cost + least[i+1][j+1], ok
	}
	for i := len(columns); i >= 0; i-- {
		for j := len(list); j >= 0; j-- {
			best := -1
			try := func(cost int) {
				if best < 0 || cost < best {
					best = cost
				}
			}
			if cost, ok := together(i, j); ok {
				try(cost)
			}
			if i < len(columns) {
				try(leftOut + least[i+1][j])
			}
			if j < len(list) {
				try(another + least[i][j+1])
			}
			least[i][j] = max(best, 0)
		}
	}
	var aligned []lineup
	for i, j := 0, 0; i < len(columns) || j < len(list); {
		cost, ok := together(i, j)
		switch {
		case ok && cost == least[i][j]:
			columns[i][size] = list[j]
			aligned = append(aligned, columns[i])
			i, j = i+1, j+1
		case i < len(columns) && leftOut+least[i+1][j] == least[i][j]:
			aligned = append(aligned, columns[i])
			i++
		default:
			aligned = append(aligned, lineup{size: list[j]})
			j++
		}
	}
	return aligned
}

// line returns the line for so many sizes. A size that leaves it out, and a single step at
// the beginning, which may be said at any distance, are said as the others are where these
// are alike.
func (l lineup) line(sizes int) Line {
	line := Line{Times: make([]int, sizes)}
	for k := range sizes {
		p, ok := l[k]
		if ok {
			line.Method, line.Times[k] = p.method, p.times
		}
		line.Stitches, line.Every, line.Then = append(line.Stitches, p.stitches), append(line.Every, p.every), append(line.Then, p.then)
	}
	for k := range sizes {
		p, ok := l[k]
		if !ok {
			line.Stitches[k] = l.common(func(q phrase) (int, bool) { return q.stitches, true })
		}
		if !ok || p.every == 0 {
			line.Every[k] = l.common(func(q phrase) (int, bool) { return q.every, q.every > 0 })
			line.Then[k] = l.common(func(q phrase) (int, bool) { return q.then, q.every > 0 })
		}
	}
	return line
}

// common returns the value that all phrases have that have one, 0 if none has or if they
// differ.
func (l lineup) common(of func(phrase) (value int, has bool)) int {
	value, found := 0, false
	for _, p := range l {
		v, has := of(p)
		switch {
		case !has:
		case found && v != value:
			return 0
		default:
			value, found = v, true
		}
	}
	return value
}
