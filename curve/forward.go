package curve

import "slices"

// arrivals says what the way to a place costs at least: the program from the beginning of
// the edge instead of from its end.
type arrivals struct {
	p     *program
	cells []cell // for each block and level of its band
	// leaves is no more than the area of any schedule that leaves the bands.
	leaves int64

	ready   [ways][]int64 // least area to a level where a step of each way may stand
	scratch []int64
}

// cell is what is known of a block and a level. Areas are unreachable where no schedule
// within the bands gets to.
type cell struct {
	// along is the area from the beginning of the edge to the start of the block at the
	// level: two of them differ by the area between two blocks.
	along   int64
	stepped int64 // least area up to the start of the block if a step at it leads to the level
	there   int64 // the same if the level is reached at the block or before
	best    int64 // what a search has found to follow a step at the block that leads to the level
	newest  int   // place where the search keeps that, or -1
}

func newArrivals(p *program) *arrivals {
	a := &arrivals{p: p}
	a.fill()
	return a
}

// fill fills the cells for the bands that the program has now.
func (a *arrivals) fill() {
	p, cells, widest := a.p, len(a.p.togo), 0
	a.cells, a.leaves = slices.Grow(a.cells[:0], cells)[:cells], unreachable
	for n := range a.cells {
		a.cells[n] = cell{along: p.along[n], stepped: unreachable, there: unreachable}
	}
	for i := range p.bands {
		widest = max(widest, p.bands[i].size())
	}
	for w := range ways {
		if p.rules.may[w] {
			a.ready[w] = slices.Grow(a.ready[w][:0], cells)[:cells]
			fill(a.ready[w], unreachable)
		}
	}
	if p.bands[0].holds(0) {
		begin := p.cell(0, 0)
		a.cells[begin].there = 0
		for w := range ways {
			if p.rules.may[w] {
				a.ready[w][begin] = 0
			}
		}
	}
	a.scratch = slices.Grow(a.scratch[:0], widest)[:widest]
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
		c := &a.cells[from+n]
		c.stepped = arrived
		c.there = min(c.there, arrived)
		if c.there >= unreachable {
			continue
		}
		level := b.low + n
		at, next := a.inBand(i+1, level, c.there-c.along)
		if at {
			next.there = min(next.there, c.there+next.along-c.along)
		}
		for w := range ways {
			if !p.rules.may[w] {
				continue
			}
			if r := ready[w][from+n]; r < unreachable && at {
				k := p.cell(i+1, level)
				ready[w][k] = min(ready[w][k], r+next.along-c.along)
			}
			if arrived >= unreachable {
				continue
			}
			if j := p.blocks[i].next[w]; p.bands[j].holds(level) {
				k := p.cell(j, level)
				ready[w][k] = min(ready[w][k], arrived+a.cells[k].along-c.along)
			}
		}
	}
}

// inBand returns the cell of a block and level, if the band holds the level, and notes
// else that it has left the band. The area up to there is less by its own than there.
func (a *arrivals) inBand(block, level int, less int64) (bool, *cell) {
	p := a.p
	if p.bands[block].holds(level) {
		return true, &a.cells[p.cell(block, level)]
	}
	if then := p.togoAt(block, level); then < unreachable {
		a.leaves = min(a.leaves, less+p.stay(0, block, level)+then)
	}
	return false, nil
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
