package curve

import (
	"cmp"
	"math"
	"slices"

	"example.com/walewise/shaping"
)

// mood is what is known of a phrase after one of its steps.
type mood int

const (
	atBase mood = iota // the step is the base, which is no phrase
	opened             // the first step of a phrase that starts freely: no distance yet
	once               // one distance so far
	evenly             // two or more equal distances
	// Two distances in turn, of which the next is longer or shorter than the last.
	// There are three or more so far, or only two: then the phrase may not end here.
	longer
	shorter
	longerStill
	shorterStill
	moods
)

// mayEnd reports whether a phrase may end here.
func (m mood) mayEnd() bool { return m < longerStill }

// next returns the mood after the next step if that stands at distance, and false if
// the phrase cannot go on so. The last distance was last; allowed rows are every apart.
func (m mood) next(last, distance, every int) (mood, bool) {
	for _, f := range m.follow(last, every) {
		if f.distance == distance {
			return f.mood, true
		}
	}
	return once, m == opened
}

// following is a distance at which a phrase may go on, and its mood then.
type following struct {
	distance int
	mood     mood
}

// follow returns the distances at which a phrase may go on; entries left over have
// distance 0. After its opening it may go on at any distance, and none is returned.
func (m mood) follow(last, every int) [3]following {
	switch m {
	case once:
		return [3]following{{last, evenly}, {last + every, shorterStill}, {last - every, longerStill}}
	case evenly:
		return [3]following{{last, evenly}}
	case longer, longerStill:
		return [3]following{{last + every, shorter}}
	case shorter, shorterStill:
		return [3]following{{last - every, longer}}
	}
	return [3]following{}
}

// phrasing chooses among the schedules of a graph of ties: fewest phrases, then least
// greatest deviation, then fewest stitches at the first row that differs. Each key is
// fixed before the next is looked at, because a deviation cannot be compared node by
// node: a path with a smaller one so far may meet a greater one later. So limits to
// it are tried.
type phrasing struct {
	*ties
	every  [2]int  // distance of allowed rows, for single stitches and for more
	based  bool    // what goes in the first block is a base
	fronts []front // for each arc and mood: how the schedule can go on after the arc
	afresh []front // for each node: how it can go on if the next step begins a phrase
	pool   []onward
}

// onward is one way to go on: the phrases that will begin and the area that will be
// given away.
type onward struct {
	phrases int
	given   int64
}

// front is a range of the pool: the ways to go on of which none is as good as another
// in both respects.
type front struct{ first, end int }

// bestArcs returns the arcs of the schedule chosen.
func (g *ties) bestArcs(rules shaping.Rules) []arc {
	p := &phrasing{
		ties:   g,
		every:  [2]int{rules.BeatOf(1).Every, rules.BeatOf(2).Every},
		based:  rules.Base > 0,
		fronts: make([]front, len(g.arcs)*int(moods)),
		afresh: make([]front, len(g.nodes)),
	}
	phrases := p.fewest(math.MaxInt64)
	limits := make([]int64, len(g.arcs))
	for i, a := range g.arcs {
		limits[i] = a.deviation
	}
	slices.Sort(limits)
	limits = slices.Compact(limits)
	least, _ := slices.BinarySearchFunc(limits, phrases, func(limit int64, phrases int) int {
		if p.fewest(limit) > phrases {
			return -1
		}
		return 1
	})
	p.fewest(limits[least] + g.slack)
	return p.walk(phrases)
}

// firstMood returns the mood after the first step, and the phrases that it begins.
func (p *phrasing) firstMood(a arc) (mood, int) {
	if p.based && p.nodes[a.to].block == 0 {
		return atBase, 0
	}
	return opened, 1
}

// fewest finds all ways to go on along arcs whose deviation is within the limit, and
// returns the fewest phrases that say a whole schedule, math.MaxInt if there is none.
func (p *phrasing) fewest(limit int64) int {
	p.pool = p.pool[:0]
	for _, n := range slices.Backward(p.order) {
		for i := p.nodes[n].first; i < p.nodes[n].end; i++ {
			p.goOn(n, i, limit)
		}
		start := len(p.pool)
		p.addArcs(start, n, once, 1, p.nodes[n].given)
		p.afresh[n] = front{start, len(p.pool)}
	}
	fewest := math.MaxInt
	for i, a := range p.arcsFrom(0) {
		m, begun := p.firstMood(a)
		for _, o := range p.onwards(p.front(i, m)) {
			fewest = min(fewest, begun+o.phrases)
		}
	}
	return fewest
}

// front returns the ways to go on after an arc in a mood.
func (p *phrasing) front(i int, m mood) front { return p.fronts[i*int(moods)+int(m)] }

func (p *phrasing) onwards(f front) []onward { return p.pool[f.first:f.end] }

// goOn sets the fronts of an arc from a node, those of the arcs that follow being set.
func (p *phrasing) goOn(from, i int, limit int64) {
	a := p.arcs[i]
	before := p.nodes[from].given + a.given
	for m := range moods {
		start := len(p.pool)
		switch {
		case a.deviation > limit || m == atBase && from > 0 || m == opened && p.nodes[from].block > 0:
			// No way, or a mood that no arc from here can have.
		case p.isLast(a.to):
			if m.mayEnd() {
				p.pool = append(p.pool, onward{})
			}
		case m == atBase:
			p.addArcs(start, a.to, opened, 1, before)
		default:
			if m.mayEnd() {
				p.add(start, p.afresh[a.to], 0, 0, before)
			}
			p.addSamePhrase(start, a, m, before)
		}
		p.fronts[i*int(moods)+int(m)] = front{start, len(p.pool)}
	}
}

// addSamePhrase adds the ways to go on with the phrase of an arc.
func (p *phrasing) addSamePhrase(start int, a arc, m mood, before int64) {
	next := p.arcsFrom(a.to)
	first := p.nodes[a.to].first
	if m == opened {
		for i, b := range next {
			if b.stitches == a.stitches {
				p.add(start, p.front(first+i, once), 0, b.given, before)
			}
		}
		return
	}
	for _, f := range m.follow(a.rows, p.everyOf(a)) {
		i, ok := slices.BinarySearchFunc(next, f.distance, func(b arc, distance int) int {
			return cmp.Or(cmp.Compare(b.rows, distance), cmp.Compare(b.stitches, a.stitches))
		})
		if ok {
			p.add(start, p.front(first+i, f.mood), 0, next[i].given, before)
		}
	}
}

// everyOf returns the distance of the rows where such a step may stand.
func (p *phrasing) everyOf(a arc) int { return p.every[min(a.stitches, 2)-1] }

// addArcs adds the ways to go on with any arc from a node, at which a mood begins.
func (p *phrasing) addArcs(start, from int, m mood, phrases int, before int64) {
	for i := p.nodes[from].first; i < p.nodes[from].end; i++ {
		p.add(start, p.front(i, m), phrases, p.arcs[i].given, before)
	}
}

// add unites the front at the end of the pool with another, to which so many phrases
// and so much area are added. Ways that give away too much with what was given away
// before are left out.
func (p *phrasing) add(start int, f front, phrases int, given, before int64) {
	for i := f.first; i < f.end; i++ {
		o := onward{p.pool[i].phrases + phrases, p.pool[i].given + given}
		if before+o.given > p.slack || slices.ContainsFunc(p.pool[start:], o.isNoBetterThan) {
			continue
		}
		kept := slices.DeleteFunc(p.pool[start:], func(k onward) bool { return k.isNoBetterThan(o) })
		p.pool = append(p.pool[:start+len(kept)], o)
	}
}

func (o onward) isNoBetterThan(k onward) bool { return o.phrases >= k.phrases && o.given >= k.given }

// walk goes through the schedules that are left with so many phrases, and at each
// step takes the latest row that still leads to the end, and there the fewest
// stitches.
func (p *phrasing) walk(phrases int) []arc {
	var (
		chosen []arc
		given  int64
		said   = heard{} // of the steps so far
	)
	for n := 0; !p.isLast(n); {
		best, bestSaid := -1, heard{}
		for i := p.nodes[n].first; i < p.nodes[n].end; i++ {
			a := p.arcs[i]
			if best >= 0 && p.nodes[a.to].block == p.nodes[p.arcs[best].to].block {
				continue // more stitches at the same row
			}
			var next heard
			if n == 0 {
				m, begun := p.firstMood(a)
				next.note(m, begun)
			} else {
				next = said.after(chosen[len(chosen)-1], a, p.everyOf(a))
			}
			if p.leadsOn(&next, i, phrases, given+a.given) {
				best, bestSaid = i, next
			}
		}
		chosen = append(chosen, p.arcs[best])
		given += p.arcs[best].given
		said, n = bestSaid, p.arcs[best].to
	}
	return chosen
}

// leadsOn drops the moods after an arc that cannot lead to the end with so many
// phrases in all, and reports whether any is left.
func (p *phrasing) leadsOn(h *heard, i, phrases int, given int64) bool {
	some := false
	for m := range moods {
		if h[m] == 0 {
			continue
		}
		leads := slices.ContainsFunc(p.onwards(p.front(i, m)), func(o onward) bool {
			return h[m]-1+o.phrases <= phrases && given+o.given <= p.slack
		})
		if !leads {
			h[m] = 0
		}
		some = some || leads
	}
	return some
}

// heard holds for each mood in which a row of steps can be heard how many phrases it
// has at least, plus 1; or 0 if it cannot be heard so.
type heard [moods]int

// note records that the steps can be heard with so many phrases.
func (h *heard) note(m mood, phrases int) {
	if h[m] == 0 || phrases+1 < h[m] {
		h[m] = phrases + 1
	}
}

// after returns how the steps can be heard when the step of arc b follows that of a.
func (h heard) after(a, b arc, every int) heard {
	var next heard
	for m := range moods {
		if h[m] == 0 {
			continue
		}
		phrases := h[m] - 1
		if m == atBase {
			next.note(opened, phrases+1)
			continue
		}
		if m.mayEnd() {
			next.note(once, phrases+1)
		}
		if a.stitches == b.stitches {
			if then, ok := m.next(a.rows, b.rows, every); ok {
				next.note(then, phrases)
			}
		}
	}
	return next
}
