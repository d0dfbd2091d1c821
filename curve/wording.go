package curve

import (
	"fmt"

	"example.com/walewise/shaping"
)

// DefaultPhrases is how many phrases a wording has at most unless asked.
const DefaultPhrases = 12

// mostWork is after how many steps the search for wordings is broken off, and mostPlaces
// for how many blocks and levels it does not look further from the drawing: more than the
// largest edge has that does not turn.
const (
	mostWork   = 500_000_000
	mostPlaces = 1 << 21
)

// Phrasing says how schedules may be said. The zero value is the default.
type Phrasing struct {
	Most   int  // phrases at most; 0 means [DefaultPhrases]
	Steady bool // no phrases of two distances in turn
}

// Wording is a schedule and how it is said.
type Wording struct {
	// Base is how many stitches go (negative) or come in the first allowed row, where the
	// rules name a base; it is no phrase. 0 means that there is none.
	Base    int
	Phrases []shaping.Phrase
	Result
}

// Wordings are the schedules that can be said in few words.
type Wordings struct {
	// Trace is the schedule of least area, in however many phrases.
	Trace Wording
	// All holds, from the fewest phrases on, for each number of phrases the schedule of
	// least area that can be said so, with the tie rules of the package comment; a number
	// that brings no less area than a smaller one is left out. The last is the trace, if
	// that can be said in as few phrases as were asked for.
	All []Wording
	// Partial reports that the search was broken off: wordings of fewer phrases than the
	// first of All may be missing.
	Partial bool
}

// Default is [Wordings.Within] five hundredths: what a person who writes a pattern trades
// off by eye.
func (w Wordings) Default() Wording { return w.Within(0.05) }

// Within returns the wording of the fewest phrases whose area is greater than that of the
// trace by no more than the given part of it, as 0.05. If there is none it returns the one
// of least area, and without any the trace.
func (w Wordings) Within(part float64) Wording {
	for _, wording := range w.All {
		// The last digits of an area say nothing.
		if wording.Measures.Area <= float64(w.Trace.Measures.Area*(1+part))+1e-9 {
			return wording
		}
	}
	if len(w.All) > 0 {
		return w.All[len(w.All)-1]
	}
	return w.Trace
}

// Of returns the wording of least area in at most that many phrases, and false if there
// is none.
func (w Wordings) Of(phrases int) (Wording, bool) {
	for i := len(w.All) - 1; i >= 0; i-- {
		if len(w.All[i].Phrases) <= phrases {
			return w.All[i], true
		}
	}
	return Wording{}, false
}

// Wordings returns the trace and the schedules that come nearest to it in fewer phrases.
// It returns an error in the same cases as [Drawing.Trace], and one that wraps
// [ErrRange] if fewer than 0 or more than [MaxRows] phrases are asked for.
//
// It takes far more time than a trace: see the package comment. For edges larger than any
// body's, the search for the fewest phrases is broken off after a fixed number of steps,
// a few seconds, and the answer says that it is partial.
func (d Drawing) Wordings(r shaping.Rules, how Phrasing) (Wordings, error) {
	rules, err := d.rules(r)
	if err != nil {
		return Wordings{}, err
	}
	if how.Most < 0 || how.Most > MaxRows {
		return Wordings{}, rangeError("phrases", how.Most, fmt.Sprintf("0 to %d", MaxRows))
	}
	if how.Most == 0 {
		how.Most = DefaultPhrases
	}
	traced, ok := d.trace(rules, how)
	if !ok {
		return Wordings{}, d.infeasible(r)
	}
	words := func(s shaping.Schedule) Wording { return d.wording(s, r, rules, how.Steady) }
	w := Wordings{Trace: words(traced)}
	if d.isFlat() {
		w.All = []Wording{w.Trace}
		return w, nil
	}
	found, whole := d.inFew(rules, how)
	for _, schedule := range found {
		w.All = append(w.All, words(schedule))
	}
	w.Partial = !whole
	return w, nil
}

// inFew returns the schedules for each number of phrases that brings something, and false
// if it was broken off.
//
// It looks for those within a limit to the area, and then within ever greater ones for the
// smaller numbers of phrases that were not found: the fewer phrases, the more schedules
// lie within what the best of them needs, but the fewer rounds it takes to find it.
func (d Drawing) inFew(r *rules, how Phrasing) ([]shaping.Schedule, bool) {
	k := takeDesk(d.d, r)
	defer k.leave()
	p, a, s := &k.program, &k.arrivals, &k.search
	margin := narrow
	p.solve(margin)
	a.reset(p)
	s.reset(a, how.Steady, mostWork)
	least, slack := p.togoAt(0, 0), d.d.slack()

	found := make([]shaping.Schedule, how.Most+1)
	areas := make([]int64, how.Most+1)
	fill(areas, unreachable)
	areas[0] = s.wordless()
	if areas[0] < unreachable {
		found[0] = s.bare(d.toward())
	}
	whole := true
	most := how.Most // of the numbers that nothing has been found for, the greatest
	for excess := max(d.d.unit/2, 1); most > 0; excess *= 4 {
		limit := min(least+excess, areas[0]-slack-1)
		for a.leaves <= limit+slack {
			if len(a.there) > mostPlaces {
				whole = false
				break
			}
			margin *= 4
			p.solve(margin)
			a.fill()
			s.set(a)
		}
		if !whole {
			break
		}
		fewest, before := most+1, areas[0]
		s.begin(limit)
		for n := 1; n <= most && s.again(n == most); n++ {
			if s.whole > limit || s.whole >= before-slack {
				continue
			}
			within := s.whole + slack
			if s.whole <= least+slack {
				within = least + slack // the trace
			}
			areas[n], found[n] = s.whole, s.tell(within).choose(d.toward())
			fewest, before = min(fewest, n), s.whole
			if s.whole <= least+slack {
				break
			}
		}
		most = fewest - 1
		if whole = s.work <= mostWork; !whole {
			break
		}
		if limit >= p.greatest() || limit < least+excess {
			break // no schedule is further away, or only what needs no phrase
		}
	}
	var nearer []shaping.Schedule
	before := int64(unreachable)
	for n, area := range areas {
		if area < before-slack {
			nearer = append(nearer, found[n])
			before = area
		}
	}
	return nearer, whole
}

// wording says a schedule.
func (d Drawing) wording(s shaping.Schedule, r shaping.Rules, of *rules, steady bool) Wording {
	w := Wording{Result: Result{s, d.measure(s, of.first)}}
	rest := s
	if len(s) > 0 && s[0].Row == of.first && of.based[wayOf(-d.toward()*s[0].Stitches)] {
		w.Base, rest = s[0].Stitches, s[1:]
	}
	w.Phrases = r.Phrases(rest, steady)
	return w
}
