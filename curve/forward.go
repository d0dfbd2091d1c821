package curve

// arrivals says what the way to a place costs at least: the program from the beginning of
// the edge instead of from its end. Entries are unreachable where no schedule within the
// bands gets to.
type arrivals struct {
	p *program
	// stepped holds for each block and level the least area up to the start of the block
	// if a step at the block leads to that level.
	stepped []int64
	// there holds the same if that level is reached at the block or before.
	there []int64
	// leaves is no more than the area of any schedule that leaves the bands.
	leaves int64
}

func newArrivals(p *program) *arrivals {
	cells := len(p.togo)
	tables := make([]int64, (2+int(ways))*cells)
	fill(tables, unreachable)
	table := func(n int) []int64 { return tables[n*cells : (n+1)*cells : (n+1)*cells] }
	a := &arrivals{p: p, stepped: table(0), there: table(1), leaves: unreachable}
	ready := [ways][]int64{table(2), table(3)}
	if !p.rules.may[down] {
		ready[down] = nil
	}
	if p.bands[0].holds(0) {
		a.there[p.cell(0, 0)] = 0
		for w := range ways {
			if ready[w] != nil {
				ready[w][p.cell(0, 0)] = 0
			}
		}
	}
	for i := range p.last() {
		a.arrive(i, ready)
	}
	return a
}

// arrive fills what concerns the steps at a block, and passes on what follows from it.
// ready holds the least area to a level where a step of each way may stand.
func (a *arrivals) arrive(i int, ready [ways][]int64) {
	p, b := a.p, &a.p.bands[i]
	from, to := b.at, b.at+b.size()
	stepped, there := a.stepped[from:to], a.there[from:to]
	if size := p.blocks[i].sizes[up]; size.most > 0 {
		p.lowest.into(stepped, ready[up][from:to], -size.most, -size.least)
		a.stepOut(ready[up][max(from, to-size.most):to], p.above(i))
	}
	if size := p.blocks[i].sizes[down]; size.most > 0 {
		p.lowest.into(stepped, ready[down][from:to], size.least, size.most)
		a.stepOut(ready[down][from:min(to, from+size.most)], p.below(i))
	}
	for n := range stepped {
		there[n] = min(there[n], stepped[n])
		if there[n] >= unreachable {
			continue
		}
		level := b.low + n
		stay := p.stay(i, i+1, level)
		a.lower(a.there, i+1, level, there[n]+stay)
		for w := range ways {
			if ready[w] == nil {
				continue
			}
			if r := ready[w][from+n]; r < unreachable {
				a.lower(ready[w], i+1, level, r+stay)
			}
			if next := p.blocks[i].next[w]; stepped[n] < unreachable {
				a.lower(ready[w], next, level, stepped[n]+p.stay(i, next, level))
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

// lower lowers the entry of a table for a block and level, or notes that the level has
// left the band.
func (a *arrivals) lower(table []int64, block, level int, value int64) {
	if p := a.p; p.bands[block].holds(level) {
		at := p.cell(block, level)
		table[at] = min(table[at], value)
	} else {
		a.leaves = min(a.leaves, value+p.togoAt(block, level))
	}
}
