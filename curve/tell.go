package curve

// told is the graph of all schedules that can be said in so many phrases and whose area
// is within a limit. Its places are those where a phrase ends, its arcs the phrases. A
// schedule that can be said in several ways is found on several paths.
type told struct {
	s      *search
	limit  int64
	places []place // the first stands for the lower end of the edge
	arcs   []phrase
}

// place is where a phrase ends.
type place struct {
	block, level int
	follow       int   // phrases to follow
	before       int64 // least area up to the block
	arcs         []int // the phrases that begin here
}

// phrase is a run of equal steps from one place to another.
type phrase struct {
	to     int    // place
	base   int    // change of the level by a base before the first phrase; 0 without one
	lead   int    // block of the first step
	change int    // of the level, by each step
	turn   [2]int // distances after the first step, in turn
	times  int
	area   int64 // from the start of the block where it begins to that of its last step
}

// tell gathers the graph after so many rounds of the search.
func (s *search) tell(phrases int, limit int64) *told {
	g := &told{s: s, limit: limit, places: []place{{block: -1, follow: phrases}}}
	index := map[[3]int]int{}
	// Places stand in the order of the phrases before them, so that all that leads to a
	// place is known when it is gone on from.
	for from := 0; from < len(g.places); from++ {
		begin := g.places[from]
		if begin.follow == 0 {
			continue
		}
		g.phrasesFrom(begin, func(block, level int, f phrase) {
			key := [3]int{begin.follow - 1, block, level}
			to, known := index[key]
			if !known {
				to = len(g.places)
				index[key] = to
				g.places = append(g.places, place{block: block, level: level, follow: begin.follow - 1, before: unreachable})
			}
			f.to = to
			g.places[to].before = min(g.places[to].before, begin.before+f.area)
			g.places[from].arcs = append(g.places[from].arcs, len(g.arcs))
			g.arcs = append(g.arcs, f)
		})
	}
	return g
}

// phrasesFrom yields the phrases that begin at a place and belong to a schedule within the
// limit, with the block and level where they end.
func (g *told) phrasesFrom(begin place, yield func(block, level int, f phrase)) {
	r := run{g: g, begin: begin, yield: yield}
	if begin.block >= 0 {
		r.leads(begin.level, 0)
		return
	}
	r.leads(0, 0)
	p := g.s.p
	for w := range ways {
		if !p.rules.isBased(w) {
			continue
		}
		size := p.blocks[0].sizes[w]
		for stitches := size.least; stitches <= min(size.most, g.s.high-g.s.low); stitches++ {
			r.leads(stitches*w.sign(), stitches*w.sign())
		}
	}
}

// run goes through the phrases that begin at one place.
type run struct {
	g     *told
	begin place
	yield func(block, level int, f phrase)
}

// leads goes through the first steps from a level, after a base if that is not 0.
func (r *run) leads(level, base int) {
	s, p := r.g.s, r.g.s.p
	start := max(r.begin.block, 0)
	for i := start; i < p.last(); i++ {
		if base != 0 && i == 0 {
			continue
		}
		area := p.stay(start, i, level)
		if r.begin.before+area+p.togoAt(i, level) > r.g.limit {
			break
		}
		for w := range ways {
			if after := max(r.begin.block, -1); base != 0 || after >= 0 {
				if i < p.blocks[max(after, 0)].next[w] {
					continue
				}
			}
			size := p.blocks[i].sizes[w]
			for stitches := size.least; stitches <= size.most && size.most > 0; stitches++ {
				change := stitches * w.sign()
				if to := level + change; to < s.low || to > s.high {
					break
				}
				if s.may(i, change) {
					r.goesOn(w, level, phrase{base: base, lead: i, change: change, area: area})
				}
			}
		}
	}
}

// goesOn goes through the phrases with a given first step from a level.
func (r *run) goesOn(w way, level int, f phrase) {
	p := r.g.s.p
	apart, every := p.rules.apart(w), p.rules.every(f.change)
	start := p.blocks[f.lead].start
	if r.begin.block >= 0 {
		d := start - p.blocks[r.begin.block].start
		r.steps(level, f, [2]int{d, d}, 1)
		if !r.g.s.steady {
			r.steps(level, f, [2]int{d + every, d}, 3)
			if d-every >= apart {
				r.steps(level, f, [2]int{d - every, d}, 3)
			}
		}
		return
	}
	// The first phrase starts freely.
	r.steps(level, f, [2]int{p.d.rows, p.d.rows}, 1)
	for i := f.lead + 1; i < p.last(); i++ {
		d := p.blocks[i].start - start
		if d < apart {
			continue
		}
		area := r.begin.before + f.area + p.stay(f.lead, i, level+f.change)
		if area+p.togoAt(i, level+f.change) > r.g.limit {
			break
		}
		r.steps(level, f, [2]int{d, d}, 2)
		if !r.g.s.steady {
			r.steps(level, f, [2]int{d, d + every}, 4)
			if d-every >= apart {
				r.steps(level, f, [2]int{d, d - every}, 4)
			}
		}
	}
}

// steps takes one step after the other, and yields the phrases of that many steps or more.
func (r *run) steps(level int, f phrase, turn [2]int, least int) {
	s, p := r.g.s, r.g.s.p
	f.turn = turn
	for at := f.lead; s.may(at, f.change); {
		level += f.change
		f.times++
		if !p.bands[at].holds(level) || r.begin.before+f.area+p.landed[p.cell(at, level)] > r.g.limit {
			return
		}
		if f.times >= least && r.begin.before+f.area+s.onward(at, level, r.begin.follow-1) <= r.g.limit {
			r.yield(at, level, f)
		}
		row := p.blocks[at].start + turn[(f.times-1)%2]
		if row >= p.d.rows || s.blockAt[row] < 0 {
			return
		}
		f.area += p.stay(at, s.blockAt[row], level)
		at = s.blockAt[row]
	}
}
