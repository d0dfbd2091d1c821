package curve

import "example.com/walewise/shaping"

// search finds what can be said in few phrases. It goes from the end of the edge to its
// beginning, one phrase after the other: after its n-th round it knows, for each block
// and each level that a step at the block can lead to, the least area from there to the
// end of the edge if what follows is said in up to n phrases. Whatever cannot belong to a
// schedule within the limit is left out.
type search struct {
	*arrivals
	steady  bool  // no phrases of two distances in turn
	limit   int64 // the greatest area of a whole schedule that is of interest
	slack   int64
	blockAt []int // by the rows below; -1 where no block starts

	round   int
	whole   int64 // least area of a whole schedule in this round or before
	first   []opening
	onlyEnd bool // this round is the last: only whole schedules are looked for

	kept []kept
	edge []spot // what the last round has found
	then []spot // and this one
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

func newSearch(a *arrivals, steady bool) *search {
	p := a.p
	s := &search{arrivals: a, steady: steady, slack: p.d.slack(), blockAt: make([]int, p.d.rows+1)}
	for i := range s.blockAt {
		s.blockAt[i] = -1
	}
	for i := range p.last() {
		s.blockAt[p.blocks[i].start] = i
	}
	return s
}

// begin sets out within a limit. Round 0 is what has no phrase: nothing follows the last
// step, or the base, or there is no step at all.
func (s *search) begin(limit int64) {
	p := s.p
	s.limit, s.whole, s.round, s.onlyEnd = limit, unreachable, 0, false
	s.kept, s.then, s.first = s.kept[:0], s.then[:0], s.first[:0]
	for n := range s.cells {
		s.cells[n].best, s.cells[n].newest = unreachable, -1
	}
	if p.d.net == 0 {
		s.whole = p.stay(0, p.last(), 0)
	} else if s.isBase(p.d.net) {
		s.whole = p.stay(0, p.last(), p.d.net)
	}
	for i := range p.last() {
		if p.bands[i].holds(p.d.net) {
			s.reach(i, p.d.net, p.cell(i, p.d.net), p.stay(i, p.last(), p.d.net))
		}
	}
	s.keep()
}

// again does one round more and reports whether it had anything to do.
func (s *search) again(last bool) bool {
	if len(s.edge) == 0 {
		return false
	}
	s.round++
	s.onlyEnd = last
	for _, from := range s.edge {
		s.endsAt(from)
	}
	s.keep()
	return true
}

// schedule returns the schedule that ties choose among those of so many phrases as there
// were rounds, whose area is within a limit; toward is the sign of stitches that go where
// levels rise.
func (s *search) schedule(limit int64, toward int) shaping.Schedule {
	if s.round > 0 {
		return s.tell(limit).choose(toward)
	}
	if s.p.d.net == 0 {
		return nil
	}
	return shaping.Schedule{{Row: s.p.blocks[0].start + 1, Stitches: -toward * s.p.d.net}} // the base
}

// keep keeps what a round has found.
func (s *search) keep() {
	s.edge, s.then = s.then, s.edge[:0]
	for i := range s.edge {
		spot := &s.edge[i]
		c := &s.cells[s.p.cell(spot.block, spot.level)]
		spot.area = c.best
		s.kept = append(s.kept, kept{s.round, c.best, c.newest})
		c.newest = len(s.kept) - 1
	}
}

// onward returns the least area to the end of the edge after a step at a block that led to
// a level, said in up to so many phrases.
func (s *search) onward(block, level, phrases int) int64 {
	for n := s.cells[s.p.cell(block, level)].newest; n >= 0; n = s.kept[n].older {
		if s.kept[n].round <= phrases {
			return s.kept[n].area
		}
	}
	return unreachable
}

// reach notes that after a step at a block that led to a level so much area follows.
func (s *search) reach(block, level, at int, area int64) {
	c := &s.cells[at]
	if area >= c.best || c.stepped+area > s.limit || s.onlyEnd {
		return
	}
	if c.newest < 0 && c.best == unreachable || c.newest >= 0 && s.kept[c.newest].area == c.best {
		s.then = append(s.then, spot{block, level, area}) // the first time in this round
	}
	c.best = area
}

// isBase reports whether such a step may be the base of a schedule that begins with it.
func (s *search) isBase(change int) bool {
	if change == 0 || s.p.last() == 0 {
		return false
	}
	w := wayOf(change)
	return s.p.rules.based[w] && s.p.blocks[0].sizes[w].allow(change*w.sign())
}

// may reports whether a step of a phrase may stand at a block. A step at the first is the
// base where one is named.
func (s *search) may(block, change int) bool {
	w := wayOf(change)
	return s.p.blocks[block].sizes[w].allow(change*w.sign()) && !(block == 0 && s.p.rules.based[w])
}

// endsAt goes through the phrases that end with a step to a place.
func (s *search) endsAt(from spot) {
	p := s.p
	for w := range ways {
		size := p.blocks[from.block].sizes[w]
		if size.most == 0 {
			continue
		}
		b := &p.bands[from.block]
		for stitches := size.least; stitches <= size.most; stitches++ {
			change := stitches * w.sign()
			if before := from.level - change; !b.holds(before) {
				break // what is that far off is not stepped from
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
	apart, every := p.rules.apart[w], p.rules.inTurn(change)
	begin := p.blocks[from.block].start
	rest := from.area + s.cells[p.cell(from.block, before)].along
	s.begins(from, from.block, before, phrase{change: change, turn: [2]int{p.d.rows, p.d.rows}, times: 1}, from.area)
	for i := from.block - 1; i >= 0; i-- {
		distance := begin - p.blocks[i].start
		if distance < apart {
			continue
		}
		b := &p.bands[i]
		if !b.holds(before) {
			break
		}
		n := b.at + before - b.low
		c := &s.cells[n]
		area := rest - c.along
		if c.there+area > s.limit {
			break // to be there sooner still makes it no less
		}
		if c.stepped+area > s.limit {
			continue
		}
		s.reach(i, before, n, area)
		s.goesOn(from, spot{i, before, area}, change, distance, distance)
		if s.steady {
			continue
		}
		s.goesOn(from, spot{i, before, area}, change, distance, distance+every)
		if distance-every >= apart {
			s.goesOn(from, spot{i, before, area}, change, distance, distance-every)
		}
	}
}

// goesOn goes through the longer phrases of such steps to a place: at is that of the step
// before the last one, and from there on the distances are, seen from the end, last and
// other in turn.
func (s *search) goesOn(from, at spot, change, last, other int) {
	p := s.p
	turning := 0
	if last != other {
		turning = 1
	}
	next, then := other, last
	for distances := 1; s.may(at.block, change); distances++ {
		// The step at this place belongs to the phrase.
		before := at.level - change
		if turning == 0 || distances >= 3 {
			turn := [2]int{last, other}
			if distances%2 == 0 {
				turn = [2]int{other, last}
			}
			s.begins(from, at.block, before, phrase{change: change, turn: turn, times: distances + 1}, at.area)
		}
		row := p.blocks[at.block].start - next
		if row < 0 || s.blockAt[row] < 0 {
			return
		}
		i := s.blockAt[row]
		here, b := &p.bands[at.block], &p.bands[i]
		if !b.holds(before) || !here.holds(before) {
			return
		}
		n := b.at + before - b.low
		c := &s.cells[n]
		at = spot{i, before, at.area + s.cells[here.at+before-here.low].along - c.along}
		if c.stepped+at.area > s.limit {
			return
		}
		if turning == 0 || distances >= 2 {
			s.reach(i, before, n, at.area)
		}
		next, then = then, next
	}
}

// begins notes the schedules in which such a step at a block is the first one of all, or
// the first after the base, if before it that many stitches were gone.
func (s *search) begins(from spot, block, before int, f phrase, area int64) {
	p := s.p
	switch {
	case before == 0:
	case s.isBase(before) && block >= p.blocks[0].next[wayOf(f.change)]:
		f.base = before
	default:
		return
	}
	b := &p.bands[block]
	if !b.holds(before) {
		return
	}
	area += s.cells[b.at+before-b.low].along
	if area > s.limit || area > s.whole+s.slack {
		return
	}
	if area < s.whole {
		if area < s.whole-s.slack {
			s.first = s.first[:0]
		}
		s.whole = area
		s.limit = min(s.limit, area+s.slack)
	}
	f.lead, f.area = block, area-from.area
	s.first = append(s.first, opening{f, s.round, from.block, from.level, area})
}
