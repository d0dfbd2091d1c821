package curve

// arrivals says what the way to a place costs at least: the program from the beginning of
// the edge instead of from its end. Its tables hold the blocks of one level side by side,
// since a schedule stays at its level for long.
type arrivals struct {
	p       *program
	low     int // the lowest level of all bands
	blocks  int
	arrival []arrival
	there   []int64 // least area up to the start of a block if a level is reached there or before
	// leaves is no more than the area of any schedule that leaves the bands.
	leaves int64

	ready   [ways][]int64 // least area to a level where a step of each way may stand, by block
	scratch []int64
}

// arrival is what is known of a block and a level. Outside the band both are unreachable:
// two of them must not be set off against each other.
type arrival struct {
	// along is the area at the level from the first block to this one: two of them differ
	// by the area between two blocks.
	along   int64
	stepped int64 // least area up to the start of the block if a step at it leads to the level
}

// reset makes the arrivals those of a program.
func (a *arrivals) reset(p *program) {
	a.p, a.blocks = p, len(p.blocks)
	a.fill()
}

// place returns the place of a block and a level in the tables.
func (a *arrivals) place(block, level int) int { return (level-a.low)*a.blocks + block }

// fill fills the tables for the bands that the program has now.
func (a *arrivals) fill() {
	p, widest, high := a.p, 0, 0
	a.low = 0
	for i := range p.bands {
		b := &p.bands[i]
		a.low, high, widest = min(a.low, b.low), max(high, b.high), max(widest, b.size())
	}
	size := (high - a.low + 1) * a.blocks
	a.arrival, a.there = sized(a.arrival, size), sized(a.there, size)
	a.leaves = unreachable
	fill(a.there, unreachable)
	for n := range a.arrival {
		a.arrival[n] = arrival{unreachable, unreachable}
	}
	for i := range p.bands {
		b := &p.bands[i]
		for level := b.low; level <= b.high; level++ {
			a.arrival[a.place(i, level)].along = p.along[b.at+level-b.low]
		}
	}
	cells := len(p.togo)
	for w := range ways {
		if p.rules.may[w] {
			a.ready[w] = sized(a.ready[w], cells)
			fill(a.ready[w], unreachable)
		}
	}
	if p.bands[0].holds(0) {
		a.there[a.place(0, 0)] = 0
		for w := range ways {
			if p.rules.may[w] {
				a.ready[w][p.cell(0, 0)] = 0
			}
		}
	}
	a.scratch = sized(a.scratch, widest)
	for i := range p.last() {
		a.arrive(i, a.scratch[:p.bands[i].size()])
	}
}

// arrive fills what concerns the steps at a block, and passes on what follows from it.
func (a *arrivals) arrive(i int, stepped []int64) {
	p, b, ready := a.p, &a.p.bands[i], &a.ready
	from, to := b.at, b.at+b.size()
	fill(stepped, unreachable)
	if size := p.blocks[i].sizes[up]; size.most > 0 {
		p.lowest.into(stepped, ready[up][from:to], -size.most, -size.least)
		a.stepOut(ready[up][max(from, to-size.most):to], b.over)
	}
	if size := p.blocks[i].sizes[down]; size.most > 0 {
		p.lowest.into(stepped, ready[down][from:to], size.least, size.most)
		a.stepOut(ready[down][from:min(to, from+size.most)], b.under)
	}
	for n, arrived := range stepped {
		level := b.low + n
		at := a.place(i, level)
		a.arrival[at].stepped = arrived
		there := min(a.there[at], arrived)
		a.there[at] = there
		if there >= unreachable {
			continue
		}
		along := a.arrival[at].along
		held := p.bands[i+1].holds(level)
		if held {
			a.there[at+1] = min(a.there[at+1], there+a.arrival[at+1].along-along)
		} else if then := p.togoAt(i+1, level); then < unreachable {
			a.leaves = min(a.leaves, there+p.stay(i, i+1, level)+then)
		}
		for w := range ways {
			if !p.rules.may[w] {
				continue
			}
			if r := ready[w][from+n]; r < unreachable && held {
				k := p.cell(i+1, level)
				ready[w][k] = min(ready[w][k], r+a.arrival[at+1].along-along)
			}
			if arrived >= unreachable {
				continue
			}
			if j := p.blocks[i].next[w]; p.bands[j].holds(level) {
				k := p.cell(j, level)
				ready[w][k] = min(ready[w][k], arrived+a.arrival[a.place(j, level)].along-along)
			}
		}
	}
}

// stepOut notes steps out of the band from levels that are near enough to its end.
func (a *arrivals) stepOut(ready []int64, outside int64) {
	if outside >= unreachable {
		return
	}
	for _, r := range ready {
		a.leaves = min(a.leaves, r+outside)
	}
}
