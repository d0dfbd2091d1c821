package curve

import "example.com/walewise/shaping"

// search finds what can be said in few phrases. It goes from the end of the edge to its
// beginning, one phrase after the other: after its n-th round it knows, for each block
// and each level that a step at the block can lead to, the least area from there to the
// end of the edge if what follows is said in up to n phrases. Whatever cannot belong to a
// schedule within the limit is left out.
type search struct {
	*arrivals
	steady   bool  // no phrases of two distances in turn
	limit    int64 // the greatest area of a whole schedule that is of interest
	slack    int64
	blockAt  []int // by the rows below; -1 where no block starts
	footings []footing

	round   int
	whole   int64 // least area of a whole schedule in this round or before
	first   []opening
	onlyEnd bool // this round is the last: only whole schedules are looked for
	work    int  // phrases and steps gone through so far
	most    int  // after which a round is broken off

	best   []int64 // for each place what was found to follow a step to it; unreachable if nothing was
	newest []int   // for each place where that is kept, or -1
	kept   []kept
	from   spot   // where the phrases end that are gone through
	edge   []spot // what the last round has found
	then   []spot // and this one
	told   told
}

// footing is what is often asked of a block.
type footing struct {
	start int // rows below it
	sizes [ways]sizes
}

// may reports whether a step of a phrase may stand at the block.
func (f *footing) may(change int) bool {
	if change > 0 {
		return f.sizes[up].allow(change)
	}
	return f.sizes[down].allow(-change)
}

// kept is what a round has found for a place, and where what was found before stands.
type kept struct {
	round int
	area  int64
	older int
}

// spot is a place where a phrase ends, and the least area from there to the end.
type spot struct {
	block, level int
	area         int64
}

// opening is the first phrase of a whole schedule, and the area of that.
type opening struct {
	phrase
	round        int
	block, level int // where it ends
	area         int64
}

// reset makes the search one among these arrivals.
func (s *search) reset(a *arrivals, steady bool, most int) {
	p := a.p
	s.work, s.most = 0, most
	s.steady, s.slack = steady, p.d.slack()
	s.blockAt, s.footings = sized(s.blockAt, p.d.rows+1), sized(s.footings, len(p.blocks))
	for i := range s.blockAt {
		s.blockAt[i] = -1
	}
	for i := range p.last() {
		s.blockAt[p.blocks[i].start] = i
	}
	for i := range s.footings {
		k := &p.blocks[i]
		f := footing{start: k.start, sizes: k.sizes}
		for w := range ways {
			// A step at the first block is the base where one is named.
			if f.sizes[w].most == 0 || i == 0 && p.rules.based[w] {
				f.sizes[w] = sizes{1, 0}
			}
		}
		s.footings[i] = f
	}
	s.set(a)
}

// set gives the search tables that were filled anew.
func (s *search) set(a *arrivals) {
	s.arrivals = a
	size := len(a.there)
	s.best, s.newest = sized(s.best, size), sized(s.newest, size)
}

// wordless returns the area of the schedule that has no phrase, only a base or no step at
// all; unreachable if there is none.
func (s *search) wordless() int64 {
	p := s.p
	switch {
	case p.d.net == 0:
		return p.stay(0, p.last(), 0)
	case s.isBase(p.d.net):
		return p.stay(0, p.last(), p.d.net)
	}
	return unreachable
}

// bare returns the schedule that has no phrase; toward is the sign of stitches that go
// where levels rise.
func (s *search) bare(toward int) shaping.Schedule {
	if s.p.d.net == 0 {
		return nil
	}
	return shaping.Schedule{{Row: s.p.blocks[0].start + 1, Stitches: -toward * s.p.d.net}}
}

// begin sets out within a limit. Nothing follows the last step in round 0.
func (s *search) begin(limit int64) {
	p := s.p
	s.limit, s.whole, s.round, s.onlyEnd = limit, unreachable, 0, false
	s.kept, s.then, s.first = s.kept[:0], s.then[:0], s.first[:0]
	fill(s.best, unreachable)
	for n := range s.newest {
		s.newest[n] = -1
	}
	for i := range p.last() {
		if p.bands[i].holds(p.d.net) {
			s.reach(i, p.d.net, s.place(i, p.d.net), p.stay(i, p.last(), p.d.net))
		}
	}
	s.keep()
}

// again does one round more. It reports whether it had anything to do, and was not broken
// off.
func (s *search) again(last bool) bool {
	if len(s.edge) == 0 {
		return false
	}
	s.round++
	s.onlyEnd = last
	for _, s.from = range s.edge {
		if s.endsThere(); s.work > s.most {
			return false
		}
	}
	s.keep()
	return true
}

// keep keeps what a round has found.
func (s *search) keep() {
	s.edge, s.then = s.then, s.edge[:0]
	for i := range s.edge {
		spot := &s.edge[i]
		at := s.place(spot.block, spot.level)
		spot.area = s.best[at]
		s.kept = append(s.kept, kept{s.round, spot.area, s.newest[at]})
		s.newest[at] = len(s.kept) - 1
	}
}

// onward returns the least area to the end of the edge after a step at a block that led to
// a level, said in up to so many phrases.
func (s *search) onward(block, level, phrases int) int64 {
	for n := s.newest[s.place(block, level)]; n >= 0; n = s.kept[n].older {
		if s.kept[n].round <= phrases {
			return s.kept[n].area
		}
	}
	return unreachable
}

// reach notes that after a step at a block that led to a level so much area follows.
func (s *search) reach(block, level, at int, area int64) {
	if s.onlyEnd || area >= s.best[at] || s.arrival[at].stepped+area > s.limit {
		return
	}
	if n := s.newest[at]; n < 0 && s.best[at] == unreachable || n >= 0 && s.kept[n].area == s.best[at] {
		s.then = append(s.then, spot{block, level, area}) // the first time in this round
	}
	s.best[at] = area
}

// isBase reports whether such a step may be the base of a schedule that begins with it.
func (s *search) isBase(change int) bool {
	if change == 0 || s.p.last() == 0 {
		return false
	}
	w := wayOf(change)
	return s.p.rules.based[w] && s.p.blocks[0].sizes[w].allow(change*w.sign())
}

// endsThere goes through the phrases that end with a step to the place.
func (s *search) endsThere() {
	f, b := &s.footings[s.from.block], &s.p.bands[s.from.block]
	for w := range ways {
		for stitches := f.sizes[w].least; stitches <= f.sizes[w].most; stitches++ {
			change := stitches * w.sign()
			if !b.holds(s.from.level - change) {
				break // what is that far off is not stepped from
			}
			s.endsWith(change, w)
		}
	}
}

// endsWith goes through the phrases of such steps that end with one to the place.
func (s *search) endsWith(change int, w way) {
	before := s.from.level - change
	apart, every := s.p.rules.apart[w], s.p.rules.inTurn(change)
	steps := 1 // at least, if the phrase is to be the first
	if s.onlyEnd && !s.p.rules.based[up] && !s.p.rules.based[down] {
		if s.from.level%change != 0 || s.from.level/change < 1 {
			return // no such steps lead there from level 0
		}
		steps = s.from.level / change
	}
	first := s.place(0, before)
	arrival, there := s.arrival[first:first+s.blocks], s.there[first:first+s.blocks]
	rest, start := s.from.area+arrival[s.from.block].along, s.footings[s.from.block].start
	if rest <= s.limit {
		s.begins(s.from.block, before, change, 0, 0, 0, rest)
	}
	for i := s.from.block - 1; i >= 0; i-- {
		s.work++
		f := &s.footings[i]
		distance := start - f.start
		if distance < apart {
			continue
		}
		if (steps-1)*(distance-every) > start {
			return // there is no room for the others
		}
		if there[i] >= unreachable {
			return // nor is it any sooner
		}
		area := rest - arrival[i].along
		if there[i]+area > s.limit {
			return // to be there sooner still makes it no less
		}
		if arrival[i].stepped+area > s.limit {
			continue
		}
		if area < s.best[first+i] {
			s.reach(i, before, first+i, area)
		}
		if !f.may(change) {
			continue
		}
		s.goesOn(i, before, area, change, distance, distance)
		if s.steady {
			continue
		}
		s.goesOn(i, before, area, change, distance, distance+every)
		if distance-every >= apart {
			s.goesOn(i, before, area, change, distance, distance-every)
		}
	}
}

// goesOn goes through the longer phrases of such steps that end at the place, of which the
// last but one leads to a level at a block, so much area before the end of the edge. The
// distances are, seen from the end, last and other in turn.
func (s *search) goesOn(block, level int, area int64, change, last, other int) {
	least := 3 // distances, of which two come in turn
	if last == other {
		least = 1
	}
	first, limit := s.place(0, level), s.limit
	next, then := other, last
	for distances := 1; ; distances++ {
		// The step at this block belongs to the phrase.
		level -= change
		first -= change * s.blocks
		if uint(first) >= uint(len(s.arrival)) {
			return
		}
		row := s.arrival[first:][:s.blocks]
		whole := area + row[block].along
		if whole <= limit && distances >= least {
			s.begins(block, level, change, last, other, distances, whole)
			limit = s.limit
		}
		s.work++
		below := s.footings[block].start - next
		if below < 0 {
			return
		}
		if block = s.blockAt[below]; block < 0 {
			return
		}
		area = whole - row[block].along
		if stepped := row[block].stepped; stepped >= unreachable || stepped+area > limit {
			return
		}
		if distances+1 >= least && area < s.best[first+block] {
			s.reach(block, level, first+block, area)
		}
		if !s.footings[block].may(change) {
			return
		}
		next, then = then, next
	}
}

// begins notes a schedule of that area in which the phrase that ends at the place is the
// first: its first step stands at the block, and before it are so many stitches gone, by a
// base if there are any. Seen from the end its distances are last and other in turn.
func (s *search) begins(block, before, change, last, other, distances int, area int64) {
	if area > s.whole+s.slack || before != 0 && (!s.isBase(before) || block < s.p.blocks[0].next[wayOf(change)]) {
		return
	}
	if area < s.whole {
		if area < s.whole-s.slack {
			s.first = s.first[:0]
		}
		s.whole = area
		s.limit = min(s.limit, area+s.slack)
	}
	f := phrase{base: before, lead: block, change: change, turn: [2]int{last, other}, times: distances + 1, area: area - s.from.area}
	if distances%2 == 0 {
		f.turn = [2]int{other, last}
	}
	s.first = append(s.first, opening{f, s.round, s.from.block, s.from.level, area})
}
