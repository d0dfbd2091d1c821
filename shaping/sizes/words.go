package sizes

import (
	"slices"

	"example.com/walewise/shaping"
)

// Words says the steps of one edge for sizes that follow each other.
type Words struct {
	From, To int   // the sizes from one to before another, counted from 0
	Rows     []int // of the first step of each of them, in the piece
	Lines    []Line
}

// Line is a run of equal steps, said for the sizes of its [Words]: so many Stitches go
// (negative) or come, at the distances Every, or Every and Then in turn where Then is not 0,
// so many Times. All four have a value for each of the sizes; a size whose Times are 0
// leaves the line out. The first line that a size does not leave out begins at its row of
// Words.Rows; each other one at its own first distance from the step before.
type Line struct {
	Method      shaping.Method
	Stitches    []int
	Every, Then []int // 0 where a single step begins and needs no distance
	Times       []int
}

// Has reports whether the words are said for a size.
func (w Words) Has(size int) bool { return w.From <= size && size < w.To }

// Steps returns the steps that the words say for a size, in rows of the piece; none for a
// size that they are not said for.
func (w Words) Steps(size int) shaping.Schedule {
	if !w.Has(size) {
		return nil
	}
	k := size - w.From
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
		for n := range l.Times[k] {
			row := w.Rows[k]
			if len(steps) > 0 {
				row = steps[len(steps)-1].Row + turns[(n+before)%2]
			}
			steps = append(steps, shaping.Step{Row: row, Stitches: l.Stitches[k], Method: l.Method})
		}
	}
	return steps
}

// sayAll says schedules, one of each size, for as many sizes at a time as have words in
// common.
func sayAll(schedules []shaping.Schedule) []Words {
	var list []Words
	for from := 0; from < len(schedules); from++ {
		if len(schedules[from]) == 0 {
			continue
		}
		best, _ := say(schedules[from : from+1])
		to := from + 1
		for ; to < len(schedules) && len(schedules[to]) > 0; to++ {
			more, ok := say(schedules[from : to+1])
			if !ok {
				break
			}
			best = more
		}
		best.From, best.To = from, to
		list = append(list, best)
		from = to - 1
	}
	return list
}

// say says schedules, of which none is empty, in words that all of them have; ok is false if
// there are none that are short enough.
func say(schedules []shaping.Schedule) (w Words, ok bool) {
	var phrases [][]phrase
	most := 0
	for _, s := range schedules {
		list := phrasesOf(s)
		phrases = append(phrases, list)
		most = max(most, len(list))
		w.Rows = append(w.Rows, s[0].Row)
	}
	merged := merge(phrases)
	if len(merged) > most {
		if lines, ok := inStep(phrases); ok {
			w.Lines = lines
			return w, true
		}
	}
	// One line that some sizes leave out is read over easily.
	if len(merged) > most+1 {
		return w, false
	}
	for _, key := range merged {
		w.Lines = append(w.Lines, key.line(len(phrases)))
	}
	for k, list := range phrases {
		for n, at := range standing(merged, list) {
			w.Lines[at].Times[k] = list[n].times
		}
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

// fits reports whether two phrases differ in their times only.
func (p phrase) fits(q phrase) bool {
	return p.stitches == q.stitches && p.method == q.method &&
		(p.every == 0 || q.every == 0 || p.every == q.every && p.then == q.then)
}

// with returns the phrase with the distance of another that fits, if it has none.
func (p phrase) with(q phrase) phrase {
	if p.every == 0 {
		p.every, p.then = q.every, q.then
	}
	return p
}

// line returns the line of the phrase for so many sizes, all of which leave it out yet.
func (p phrase) line(sizes int) Line {
	all := func(n int) []int { return slices.Repeat([]int{n}, sizes) }
	return Line{p.method, all(p.stitches), all(p.every), all(p.then), all(0)}
}

// merge returns a short list of phrases of which each size's are a part, in order.
func merge(lists [][]phrase) []phrase {
	var merged []phrase
	for _, list := range lists {
		merged = mergeTwo(merged, list)
	}
	return merged
}

// mergeTwo returns a shortest list that has both in order.
func mergeTwo(a, b []phrase) []phrase {
	// least[i][j] is how long the shortest is for what follows from a[i] and b[j] on.
	least := make([][]int, len(a)+1)
	for i := len(a); i >= 0; i-- {
		least[i] = make([]int, len(b)+1)
		for j := len(b); j >= 0; j-- {
			switch {
			case i == len(a):
				least[i][j] = len(b) - j
			case j == len(b):
				least[i][j] = len(a) - i
			case a[i].fits(b[j]):
				least[i][j] = 1 + least[i+1][j+1]
			default:
				least[i][j] = 1 + min(least[i+1][j], least[i][j+1])
			}
		}
	}
	var merged []phrase
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		switch {
		case a[i].fits(b[j]):
			merged = append(merged, a[i].with(b[j]))
			i, j = i+1, j+1
		case least[i+1][j] <= least[i][j+1]:
			merged = append(merged, a[i])
			i++
		default:
			merged = append(merged, b[j])
			j++
		}
	}
	return append(append(merged, a[i:]...), b[j:]...)
}

// standing returns where in the merged list each phrase of one of its lists stands.
func standing(merged, list []phrase) []int {
	var at []int
	i := 0
	for _, p := range list {
		for !p.fits(merged[i]) || p.every != 0 && merged[i].every == 0 {
			i++
		}
		at = append(at, i)
		i++
	}
	return at
}

// inStep says lists that have the same methods one after the other, with stitches and at
// distances of their own.
func inStep(lists [][]phrase) (lines []Line, ok bool) {
	for n, first := range lists[0] {
		l := first.line(len(lists))
		every := 0 // a single step at the beginning may be said at any distance
		for k, list := range lists {
			if len(list) != len(lists[0]) {
				return nil, false
			}
			p := list[n]
			if p.method != first.method || (p.stitches < 0) != (first.stitches < 0) || (p.then == 0) != (first.then == 0) {
				return nil, false
			}
			l.Stitches[k], l.Every[k], l.Then[k], l.Times[k] = p.stitches, p.every, p.then, p.times
			every = max(every, p.every)
		}
		for k := range l.Every {
			if l.Every[k] == 0 {
				l.Every[k] = every
			}
		}
		lines = append(lines, l)
	}
	return lines, true
}
