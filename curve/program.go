package curve

import (
	"math"
	"slices"
)

// program is the dynamic program over the blocks. A level is a number of stitches
// that are gone.
//
// Of each block only the levels of a band about the drawing are looked at one by one.
// All levels below it are thrown together, and so are all above: a schedule may move
// among them as it likes, at the cost of the best of them. That is less than it would
// cost in truth. So if no schedule that leaves the band is among the best even then, the
// band holds all that are; if there is one, the band is widened.
type program struct {
	d      *drawing
	rules  rules
	blocks []block // and one more that starts where the edge ends
	least  int     // bounds of the levels
	most   int

	bands []band // for each block
	// along holds for each block and level of its band the area at that level from the
	// first block to there: two of them differ by the area between two blocks.
	along []int64
	// togo holds for each block and level of its band the least area from the start of
	// the block to the end of the edge, if that level is reached before the block and
	// steps may stand there.
	togo []int64
	// landed holds the same if a step at the block leads to that level.
	landed []int64
	// stepped holds the same if a step at the block leads away from that level up, or
	// down; it is kept only where one may follow sooner than the other.
	stepped [ways][]int64

	lowest lowest
}

// band is a range of levels, and what a schedule costs at best that is below or above.
type band struct {
	low, high    int
	at           int // place of low in the tables
	below, above int64
	under, over  int64 // the same for one that stays there in the block
}

func (b *band) holds(level int) bool { return b.low <= level && level <= b.high }
func (b *band) size() int            { return b.high - b.low + 1 }

// unreachable is more than any area, and eight of them can be added.
const unreachable = math.MaxInt64 / 8

// reset makes the program one for a drawing under rules.
func (p *program) reset(d *drawing, r *rules) {
	p.d, p.rules = d, *r
	p.least, p.most = d.levels(r)
	p.blocks = appendBlocks(p.blocks[:0], &p.rules, d.rows, p.most-p.least)
	if p.blocks[0].start+1 > r.first {
		p.rules.based = [ways]bool{} // there is no row for it
	}
}

// last returns the number of the block that starts where the edge ends.
func (p *program) last() int { return len(p.blocks) - 1 }

// stay returns the area from the start of one block to the start of another at a level.
func (p *program) stay(from, to, level int) int64 {
	return p.d.area(p.blocks[from].start, p.blocks[to].start, level)
}

// cell returns the place of a block and a level of its band in the tables.
func (p *program) cell(block, level int) int { return p.bands[block].at + level - p.bands[block].low }

// togoAt returns the entry of togo, or what stands for it outside the band.
func (p *program) togoAt(block, level int) int64 {
	switch b := &p.bands[block]; {
	case level < b.low:
		return b.below
	case level > b.high:
		return b.above
	default:
		return p.togo[b.at+level-b.low]
	}
}

// setBands lays the bands about the drawing, margin levels wide on each side. Where the
// drawing is steeper than the rules let a schedule be, that falls behind or goes ahead, and
// the bands reach to where it can be.
func (p *program) setBands(margin int) {
	last := p.last()
	p.bands = sized(p.bands, last+1)
	const far = 16 // rows; a schedule that may not step for longer will leave such a band
	wait := min(max(p.rules.apart[up], p.rules.apart[down]), far)
	for i := range p.bands {
		b := &p.bands[i]
		if b.low, b.high = p.d.net, p.d.net; i < last {
			start := p.blocks[i].start
			b.low, b.high = p.d.span(max(start-wait, 0), min(max(start+wait, p.blocks[i+1].start), p.d.rows))
		}
	}
	if !p.rules.may[down] {
		p.reachAlong()
	}
	cells := 0
	for i := range p.bands {
		b := &p.bands[i]
		if i < last {
			if i == 0 {
				b.low, b.high = min(b.low, 0), max(b.high, 0)
			}
			b.low, b.high = max(b.low-margin, p.least), min(b.high+margin, p.most)
			b.low, b.high = min(b.low, p.most), max(b.high, p.least)
		}
		b.at = cells
		cells += b.size()
	}
}

// reachAlong widens the bands to what steps as large and as close as may be reach from
// below, and to where they must come from.
func (p *program) reachAlong() {
	level, ready := 0, 0
	for i := range p.last() {
		b := &p.bands[i]
		b.low = min(b.low, level)
		if i >= ready {
			level = min(level+p.blocks[i].sizes[up].most, b.high)
			ready = p.blocks[i].next[up]
		}
	}
	level, ready = p.d.net, p.last()
	for i := p.last() - 1; i >= 0; i-- {
		b := &p.bands[i]
		b.high = max(b.high, level)
		if p.blocks[i].next[up] <= ready {
			level = max(level-p.blocks[i].sizes[up].most, int(floorDiv(p.d.middle[p.blocks[i].start], p.d.unit)))
			ready = i
		}
	}
}

// greatest returns no less than the area of any schedule within the bands.
func (p *program) greatest() int64 {
	area := int64(0)
	for i := range p.last() {
		b := &p.bands[i]
		area += max(p.stay(i, i+1, b.low), p.stay(i, i+1, b.high), p.stay(i, i+1, 0), p.stay(i, i+1, p.d.net))
	}
	return area
}

// solve lays bands of a margin and fills the tables, from the end of the edge to its
// beginning.
func (p *program) solve(margin int) {
	p.setBands(margin)
	cells := p.bands[p.last()].at + 1
	p.along, p.togo, p.landed = sized(p.along, cells), sized(p.togo, cells), sized(p.landed, cells)
	for i := range p.bands {
		b := &p.bands[i]
		p.d.areas(p.along[b.at:][:b.size()], p.blocks[0].start, p.blocks[i].start, b.low)
	}
	if p.rules.may[down] && p.rules.apart[up] != p.rules.apart[down] {
		for w := range ways {
			p.stepped[w] = make([]int64, cells)
			p.stepped[w][cells-1] = unreachable
		}
	} else {
		p.stepped = [ways][]int64{}
	}
	p.togo[cells-1], p.landed[cells-1] = 0, 0
	end := &p.bands[p.last()]
	end.below, end.above = unreachable, unreachable
	for i := p.last() - 1; i >= 0; i-- {
		p.solveBlock(i)
	}
}

func (p *program) solveBlock(i int) {
	b, k := &p.bands[i], &p.blocks[i]
	from, to := b.at, b.at+b.size()
	togo, landed := p.togo[from:to], p.landed[from:to]
	below, above := p.below(i), p.above(i)
	b.under, b.over = below, above
	p.wait(togo, i, i+1)
	b.below = min(below, stepIn(togo, k.sizes[up], above))
	if b.above = above; k.sizes[down].most > 0 {
		slices.Reverse(togo)
		b.above = min(above, stepIn(togo, k.sizes[down], below))
		slices.Reverse(togo)
	}
	if one, both := k.ready(); one == i+1 && both == i+1 {
		copy(landed, togo)
	} else {
		p.wait(landed, i, both)
		for j := one; j < both; j++ {
			p.stepSooner(i, j, landed)
		}
	}
	p.stepAway(togo, landed, k.sizes, below, above)
	if p.stepped[up] != nil {
		for w := range ways {
			stepped := p.stepped[w][from:to]
			fill(stepped, unreachable)
			only := [ways]sizes{}
			only[w] = k.sizes[w]
			p.stepAway(stepped, landed, only, below, above)
		}
	}
}

// wait fills the entries of a block with what follows if one stays at a level up to
// another block, where steps may stand.
func (p *program) wait(entries []int64, from, to int) {
	b, then := &p.bands[from], &p.bands[to]
	low, high := max(b.low, then.low), min(b.high, then.high) // in both
	if low > high {
		low, high = b.low, b.low-1
	}
	for level := b.low; level < low; level++ {
		entries[level-b.low] = min(p.stay(from, to, level)+p.togoAt(to, level), unreachable)
	}
	for level := high + 1; level <= b.high; level++ {
		entries[level-b.low] = min(p.stay(from, to, level)+p.togoAt(to, level), unreachable)
	}
	n := high - low + 1
	if n == 0 {
		return
	}
	entries, here := entries[low-b.low:][:n], p.along[b.at+low-b.low:][:n]
	there, togo := p.along[then.at+low-then.low:][:n], p.togo[then.at+low-then.low:][:n]
	for k := range entries {
		entries[k] = min(there[k]-here[k]+togo[k], unreachable)
	}
}

// stepAway lowers the entries of levels to what steps of those sizes lead to, within the
// band or out of it.
func (p *program) stepAway(entries, landed []int64, of [ways]sizes, below, above int64) {
	if size := of[up]; size.most > 0 {
		p.lowest.into(entries, landed, size.least, size.most)
		for n := max(0, len(entries)-size.most); n < len(entries) && above < unreachable; n++ {
			entries[n] = min(entries[n], above)
		}
	}
	if size := of[down]; size.most > 0 {
		p.lowest.into(entries, landed, -size.most, -size.least)
		for n := 0; n < min(size.most, len(entries)) && below < unreachable; n++ {
			entries[n] = min(entries[n], below)
		}
	}
}

// stepIn returns the least of what a step into the band from beside its first level can
// lead to, or across it to what lies beyond.
func stepIn(entries []int64, size sizes, beyond int64) int64 {
	least := int64(unreachable)
	for _, entry := range entries[:min(size.most, len(entries))] {
		least = min(least, entry)
	}
	if size.most > len(entries) {
		least = min(least, beyond)
	}
	return least
}

// stepSooner lowers what follows a step at block i to what a step at block j can lead to,
// where only steps of one way may stand so soon.
func (p *program) stepSooner(i, j int, landed []int64) {
	w := up
	if p.blocks[i].next[down] <= j {
		w = down
	}
	for n := range landed {
		level, next := p.bands[i].low+n, &p.bands[j]
		then := next.below
		switch {
		case level > next.high:
			then = next.above
		case level >= next.low:
			then = p.stepped[w][p.cell(j, level)]
		}
		landed[n] = min(landed[n], p.stay(i, j, level)+then)
	}
}

// below returns the least area from the start of a block to the end of the edge for a
// schedule that is below the band in that block, unreachable if no level is.
func (p *program) below(i int) int64 {
	level := p.bands[i].low - 1
	if level < p.least {
		return unreachable
	}
	return min(p.atBest(i, level, level-1)+p.leastOf(i+1, math.MinInt, level), unreachable)
}

// above is below for the other side.
func (p *program) above(i int) int64 {
	level := p.bands[i].high + 1
	if level > p.most {
		return unreachable
	}
	return min(p.atBest(i, level, level+1)+p.leastOf(i+1, level, math.MaxInt), unreachable)
}

// leastOf returns the least of togo over some levels of a block.
func (p *program) leastOf(block, from, to int) int64 {
	b := &p.bands[block]
	// One level stands for all that are on the same side of the band.
	from, to = min(max(from, b.low-1), b.high+1), min(max(to, b.low-1), b.high+1)
	least := int64(unreachable)
	for level := from; level <= to; level++ {
		least = min(least, p.togoAt(block, level))
	}
	return least
}

// atBest returns no more than the area of a block at a level, or at any on the side of the
// one beyond: areas are convex in the level.
func (p *program) atBest(i, level, beyond int) int64 {
	area := p.stay(i, i+1, level)
	if p.stay(i, i+1, beyond) < area {
		return 0
	}
	return area
}

func fill(entries []int64, value int64) {
	for i := range entries {
		entries[i] = value
	}
}
