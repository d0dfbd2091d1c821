package curve

// search finds what can be said in few phrases. It goes from the end of the edge to its
// beginning, one phrase after the other: after its n-th round it knows, for each block
// and each level that a step at the block can lead to, the least area from there to the
// end of the edge if what follows is said in up to n phrases. Whatever cannot belong to a
// schedule within the limit any more is left out.
type search struct {
	*arrivals
	steady  bool // no phrases of two distances in turn
	blockAt []int
	low     int // the levels of all bands
	high    int
	slack   int64
	limit   int64 // the greatest area of a whole schedule that is of interest

	best   []int64 // for each block and level; unreachable if nothing leads on from there
	kept   []kept
	newest []int // for each block and level its newest entry in kept, or -1
	round  int
	whole  int64 // least area of a whole schedule in this round or before
	edge   []spot
	then   []spot
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

func newSearch(a *arrivals, steady bool, limit int64) *search {
	p := a.p
	s := &search{
		arrivals: a, steady: steady, slack: p.d.slack(), limit: limit, whole: unreachable,
		best: make([]int64, len(p.togo)), newest: make([]int, len(p.togo)), blockAt: make([]int, p.d.rows+1),
	}
	fill(s.best, unreachable)
	for i := range s.newest {
		s.newest[i] = -1
	}
	for i := range s.blockAt {
		s.blockAt[i] = -1
	}
	for i := range p.last() {
		s.blockAt[p.blocks[i].start] = i
		s.low, s.high = min(s.low, p.bands[i].low), max(s.high, p.bands[i].high)
	}
	s.begin()
	return s
}

// begin does round 0: nothing follows the last step, or the base, or no step at all.
func (s *search) begin() {
	p := s.p
	if p.d.net == 0 {
		s.finish(p.stay(0, p.last(), 0))
	}
	for i := range p.last() {
		s.reach(i, p.d.net, p.stay(i, p.last(), p.d.net))
	}
	if change := p.d.net; s.isBase(0, change) {
		s.finish(p.stay(0, p.last(), change))
	}
	s.next()
}

// again does one round more and reports whether it had anything to do.
func (s *search) again() bool {
	if len(s.edge) == 0 {
		return false
	}
	s.round++
	for _, from := range s.edge {
		s.endsAt(from)
	}
	s.next()
	return true
}

// next keeps what a round has found.
func (s *search) next() {
	s.edge, s.then = s.then, s.edge[:0]
	for i := range s.edge {
		spot := &s.edge[i]
		at := s.p.cell(spot.block, spot.level)
		spot.area = s.best[at]
		s.kept = append(s.kept, kept{s.round, spot.area, s.newest[at]})
		s.newest[at] = len(s.kept) - 1
	}
}

// onward returns the least area to the end of the edge after a step at a block that led to
// a level, said in up to so many phrases.
func (s *search) onward(block, level, phrases int) int64 {
	if !s.p.bands[block].holds(level) {
		return unreachable
	}
	for n := s.newest[s.p.cell(block, level)]; n >= 0; n = s.kept[n].older {
		if s.kept[n].round <= phrases {
			return s.kept[n].area
		}
	}
	return unreachable
}

// finish notes a whole schedule.
func (s *search) finish(area int64) {
	if area < s.whole {
		s.whole = area
		s.limit = min(s.limit, area+s.slack)
	}
}

// reach notes that after a step at a block that led to a level so much area follows.
func (s *search) reach(block, level int, area int64) {
	if !s.p.bands[block].holds(level) {
		return
	}
	at := s.p.cell(block, level)
	if area >= s.best[at] || s.stepped[at]+area > s.limit {
		return
	}
	if n := s.newest[at]; s.best[at] == unreachable || n >= 0 && s.kept[n].area == s.best[at] {
		s.then = append(s.then, spot{block, level, area}) // the first time in this round
	}
	s.best[at] = area
}

// isBase reports whether such a step at a block is the base of a schedule that begins
// with it.
func (s *search) isBase(block, change int) bool {
	if block > 0 || change == 0 || s.p.last() == 0 {
		return false
	}
	w := wayOf(change)
	return s.p.rules.isBased(w) && s.p.blocks[0].sizes[w].allow(change*w.sign())
}

// may reports whether a step of a phrase may stand at a block.
func (s *search) may(block, change int) bool {
	w := wayOf(change)
	return s.p.blocks[block].sizes[w].allow(change*w.sign()) && !(block == 0 && s.p.rules.isBased(w))
}

// begins notes the schedules in which such a step at a block is the first one of all, or
// the first after the base, if before it that many stitches were gone.
func (s *search) begins(block, before, change int, area int64) {
	switch p := s.p; {
	case before == 0:
		s.finish(p.stay(0, block, 0) + area)
	case s.isBase(0, before) && block >= p.blocks[0].next[wayOf(change)]:
		s.finish(p.stay(0, block, before) + area)
	}
}

// endsAt goes through the phrases that end with a step to a place.
func (s *search) endsAt(from spot) {
	p := s.p
	for w := range ways {
		size := p.blocks[from.block].sizes[w]
		if size.most == 0 {
			continue
		}
		for stitches := size.least; stitches <= size.most; stitches++ {
			change := stitches * w.sign()
			before := from.level - change
			if before < s.low || before > s.high {
				break
			}
			if s.may(from.block, change) {
				s.endsWith(from, change, w)
			}
		}
	}
}

// endsWith goes through the phrases of such steps that end with one to a place.
func (s *search) endsWith(from spot, change int, w way) {
	p, before := s.p, from.level-change
	s.begins(from.block, before, change, from.area)
	every := p.rules.every(change)
	start := p.blocks[from.block].start
	for i := from.block - 1; i >= 0; i-- {
		distance := start - p.blocks[i].start
		if distance < p.rules.apart(w) {
			continue
		}
		if !p.bands[i].holds(before) {
			break
		}
		area := from.area + p.stay(i, from.block, before)
		if s.there[p.cell(i, before)]+area > s.limit {
			break // stepping there sooner still makes it no less
		}
		s.reach(i, before, area)
		s.goesOn(spot{i, before, area}, change, distance, distance)
		if s.steady {
			continue
		}
		s.goesOn(spot{i, before, area}, change, distance, distance+every)
		if distance-every >= p.rules.apart(w) {
			s.goesOn(spot{i, before, area}, change, distance, distance-every)
		}
	}
}

// goesOn goes through the longer phrases: from the second step on, seen from the end, with
// the distances last and other in turn.
func (s *search) goesOn(at spot, change, last, other int) {
	p := s.p
	for distances := 1; s.may(at.block, change); distances++ {
		// The step at this place belongs to the phrase.
		whole := last == other || distances >= 3
		before := at.level - change
		if whole {
			s.begins(at.block, before, change, at.area)
		}
		distance := last
		if distances%2 == 1 {
			distance = other
		}
		row := p.blocks[at.block].start - distance
		if row < 0 {
			return
		}
		i := s.blockAt[row]
		if i < 0 || !p.bands[i].holds(before) {
			return
		}
		at = spot{i, before, at.area + p.stay(i, at.block, before)}
		if s.stepped[p.cell(i, before)]+at.area > s.limit {
			return
		}
		if last == other || distances >= 2 {
			s.reach(at.block, at.level, at.area)
		}
	}
}
