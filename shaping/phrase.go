package shaping

// Phrase says a run of equal steps in few words: from row From on, Stitches go
// (negative) or come (positive) Times times. Between the steps lie Every rows, or
// Every and Then in turn when Then is not 0. With Times 1 the distances say how
// far the step lies from the step before.
type Phrase struct {
	From     int // the row of the first step, from 1
	Every    int // rows between two steps
	Then     int // rows between two steps in turn with Every; 0 if there is no second distance
	Stitches int // of each step: less than 0 if they go, as in a [Step]
	Times    int // steps
}

// Steps returns the steps that the phrase says, without a method.
func (p Phrase) Steps() Schedule {
	var steps Schedule
	row := p.From
	for i := range p.Times {
		steps = append(steps, Step{Row: row, Stitches: p.Stitches})
		if p.Then != 0 && i%2 == 1 {
			row += p.Then
		} else {
			row += p.Every
		}
	}
	return steps
}

// Phrases says the schedule by its runs from the first step to the last. The first
// run starts freely; the first step of every later run stands at the run's own
// distance from the step before it. Steps of one run are equal and of one method.
func (s Schedule) Phrases() []Phrase {
	var runs []Phrase
	for i := 0; i < len(s); {
		run := Phrase{From: s[i].Row, Stitches: s[i].Stitches, Times: 1}
		if i > 0 {
			run.Every = s[i].Row - s[i-1].Row
		} else if len(s) > 1 && sameKind(s[0], s[1]) {
			run.Every = s[1].Row - s[0].Row
		}
		j := i + 1
		for j < len(s) && sameKind(s[i], s[j]) && s[j].Row-s[j-1].Row == run.Every {
			run.Times++
			j++
		}
		runs = append(runs, run)
		i = j
	}
	return runs
}

func sameKind(a, b Step) bool { return a.Stitches == b.Stitches && a.Method == b.Method }
