package shaping

import "math"

// Phrase says a run of equal steps in few words: Stitches go (negative) or come
// (positive) Times times, for the first time at row From. The distances in rows are all
// Every, or Every and Then in turn if Then is not 0, in the order of time.
//
// The first phrase of a schedule starts freely: its distances lie between its own steps.
// A later one begins with the distance from the step before it to its first step, so
// that with Times 1 it has that distance only. A first phrase with Times 1 has none.
type Phrase struct {
	From     int // the row of the first step, from 1
	Every    int // the first distance, in rows
	Then     int // the second, in rows, in turn with the first; 0 if there is none
	Stitches int // of each step: less than 0 if they go, as in a [Step]
	Times    int // steps
}

// Expand returns the steps that the phrases of a schedule say, without a method; of more than
// [MaxRows] of them, which no piece has, the first.
func Expand(phrases ...Phrase) Schedule {
	var steps Schedule
	for i, p := range phrases {
		row, turns := p.From, [2]int{p.Every, p.Every}
		if p.Then != 0 {
			turns[1] = p.Then
		}
		if i > 0 {
			turns[0], turns[1] = turns[1], turns[0]
		}
		for n := range min(p.Times, MaxRows-len(steps)) {
			steps = append(steps, Step{Row: row, Stitches: p.Stitches})
			row += turns[n%2]
		}
	}
	return steps
}

// Phrases says the schedule in as few phrases as can be; of several ways, in the one whose
// first phrase is longest, then its second, and so on. Two distances come in turn only if
// there are at least three distances in all and the two differ by one row, or by two where
// every second row is worked. Steps of one phrase are of one method.
//
// It takes time that grows with the steps times the length of the phrases.
func (s Schedule) Phrases() []Phrase {
	return s.phrases(func(_ Step, by int) bool { return by == 1 || by == 2 })
}

// Phrases says a schedule as [Schedule.Phrases] does, with two distances in turn only
// where they differ by the distance of the rows at which such steps may stand; never, if
// it is to be steady.
func (r Rules) Phrases(s Schedule, steady bool) []Phrase {
	return s.phrases(func(step Step, by int) bool {
		return !steady && by == r.For(step.Stitches).BeatOf(step.Stitches).Every
	})
}

// phrases takes which differences of two distances in turn are said.
func (s Schedule) phrases(inTurn func(step Step, by int) bool) []Phrase {
	// From the last step to the first: how few phrases say the rest, and where the first
	// of them ends.
	fewest, ends := make([]int, len(s)+1), make([]int, len(s))
	for from := len(s) - 1; from >= 0; from-- {
		fewest[from] = math.MaxInt
		for to := range s.runs(from, inTurn) {
			if fewest[to] < fewest[from] { // of as few, the one that ends later
				fewest[from], ends[from] = fewest[to]+1, to
			}
		}
	}
	var phrases []Phrase
	for from := 0; from < len(s); from = ends[from] {
		phrases = append(phrases, s.phrase(from, ends[from]))
	}
	return phrases
}

// runs yields where a phrase may end that begins with a step: the number of the step
// after it, rising.
func (s Schedule) runs(from int, inTurn func(Step, int) bool) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		distance := func(n int) int { return s[n].Row - s[n-1].Row }
		first := max(from, 1) // the step that the first distance leads to
		steady, turning := true, true
		for to := from + 1; ; to++ {
			whole := steady || turning && to-first >= 3
			if whole && !yield(to) {
				return
			}
			if to == len(s) || !sameKind(s[from], s[to]) {
				return
			}
			switch n := to - first; {
			case n == 1:
				by := distance(to) - distance(first)
				steady, turning = by == 0, inTurn(s[from], max(by, -by))
			case n > 1:
				steady = steady && distance(to) == distance(first)
				turning = turning && distance(to) == distance(to-2)
			}
			if !steady && !turning {
				return
			}
		}
	}
}

// phrase returns the phrase of the steps from one to before another.
func (s Schedule) phrase(from, to int) Phrase {
	p := Phrase{From: s[from].Row, Stitches: s[from].Stitches, Times: to - from}
	first := max(from, 1)
	if first < to {
		p.Every = s[first].Row - s[first-1].Row
	}
	if first+1 < to {
		if then := s[first+1].Row - s[first].Row; then != p.Every {
			p.Then = then
		}
	}
	return p
}

func sameKind(a, b Step) bool { return a.Stitches == b.Stitches && a.Method == b.Method }
