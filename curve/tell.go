package curve

// told is the graph of all schedules that can be said in so many phrases and whose area
// is within a limit. Its places are those where a phrase ends, its arcs the phrases. A
// schedule that can be said in several ways is found on several paths.
type told struct {
	s      *search
	limit  int64
	places []place // the first stands for the lower end of the edge
	arcs   []phrase
	// where holds for each block and level where it stands among the places, if it does.
	where []int
}

// place is where a phrase ends.
type place struct {
	block, level int
	follow       int   // phrases to follow
	before       int64 // least area up to the block
	first, end   int   // the phrases that begin here, among the arcs
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

// tell gathers the graph after so many rounds of the search, at least one.
func (s *search) tell(limit int64) *told {
	g := &s.told
	*g = told{
		s: s, limit: limit, places: append(g.places[:0], place{block: -1, follow: s.round}), arcs: g.arcs[:0],
		where: sized(g.where, len(s.there)),
	}
	for _, o := range s.first {
		if o.round == s.round && o.area <= limit {
			g.add(0, o.block, o.level, o.phrase)
		}
	}
	// Places stand in the order of the phrases before them, so that all that leads to a
	// place is known when it is gone on from.
	for from := 1; from < len(g.places); from++ {
		g.places[from].first, g.places[from].end = len(g.arcs), len(g.arcs)
		if begin := g.places[from]; begin.follow > 0 {
			r := run{told: g, from: from, begin: begin}
			r.leads()
		}
	}
	return g
}

// add adds a phrase that begins at a place, and the place where it ends if that is new.
func (g *told) add(from, block, level int, f phrase) {
	follow, where := g.places[from].follow-1, &g.where[g.s.place(block, level)]
	f.to = *where
	if f.to >= len(g.places) || g.places[f.to].block != block || g.places[f.to].level != level || g.places[f.to].follow != follow {
		f.to = len(g.places)
		*where = f.to
		g.places = append(g.places, place{block: block, level: level, follow: follow, before: unreachable})
	}
	to := &g.places[f.to]
	to.before = min(to.before, g.places[from].before+f.area)
	g.arcs = append(g.arcs, f)
	g.places[from].end = len(g.arcs)
}

// run goes through the phrases that begin at one place and belong to a schedule within the
// limit.
type run struct {
	*told
	from  int
	begin place
}

// leads goes through the first steps.
func (r *run) leads() {
	s, p, begin := r.s, r.s.p, r.begin
	for i := begin.block + 1; i < p.last(); i++ {
		area := p.stay(begin.block, i, begin.level)
		if begin.before+area+p.togoAt(i, begin.level) > r.limit {
			break
		}
		for w := range ways {
			if i < p.blocks[begin.block].next[w] {
				continue
			}
			size := p.blocks[i].sizes[w]
			for stitches := size.least; stitches <= size.most && size.most > 0; stitches++ {
				change := stitches * w.sign()
				if !p.bands[i].holds(begin.level + change) {
					break
				}
				if s.footings[i].may(change) {
					r.goesOn(w, phrase{lead: i, change: change, area: area})
				}
			}
		}
	}
}

// goesOn goes through the phrases with a given first step.
func (r *run) goesOn(w way, f phrase) {
	p := r.s.p
	apart, every := p.rules.apart[w], p.rules.inTurn(f.change)
	d := p.blocks[f.lead].start - p.blocks[r.begin.block].start
	r.steps(f, [2]int{d, d}, 1)
	if r.s.steady {
		return
	}
	r.steps(f, [2]int{d + every, d}, 3)
	if d-every >= apart {
		r.steps(f, [2]int{d - every, d}, 3)
	}
}

// steps takes one step after the other, and adds the phrases of that many steps or more.
func (r *run) steps(f phrase, turn [2]int, least int) {
	s, p := r.s, r.s.p
	f.turn = turn
	level := r.begin.level
	for at := f.lead; s.footings[at].may(f.change); {
		level += f.change
		f.times++
		if !p.bands[at].holds(level) {
			return
		}
		before := r.begin.before + f.area
		if before+p.landed[p.cell(at, level)] > r.limit {
			return
		}
		// What is left of equal distances is said in no more phrases than the whole.
		if turn[0] == turn[1] && before+s.onward(at, level, r.begin.follow) > r.limit {
			return
		}
		if f.times >= least && before+s.onward(at, level, r.begin.follow-1) <= r.limit {
			r.add(r.from, at, level, f)
		}
		row := p.blocks[at].start + turn[(f.times-1)%2]
		if row >= p.d.rows || s.blockAt[row] < 0 {
			return
		}
		f.area += p.stay(at, s.blockAt[row], level)
		at = s.blockAt[row]
	}
}
