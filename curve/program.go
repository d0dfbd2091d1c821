package curve

import (
	"math"

	"example.com/walewise/shaping"
)

// block is an allowed row and those that follow it up to the next allowed row: a
// stretch in which the staircase cannot change. Blocks are numbered from 0.
type block struct {
	start       int // rows below it: the allowed row is start + 1
	least, most int // stitches that a step at the allowed row may move
	next        int // the first block where the next step may stand after one here
}

// program is the dynamic program over the blocks. A level is a number of stitches
// that are gone.
type program struct {
	d      *drawing
	blocks []block // and one more that starts where the edge ends
	// togo holds for each block and level the least area from the start of the block
	// to the end of the edge, if that level is reached before the block and a step
	// may stand there.
	togo []int64
}

// unreachable is more than any area and can be doubled.
const unreachable = math.MaxInt64 / 4

func newProgram(d *drawing, rules shaping.Rules) *program {
	p := &program{d: d}
	for row := rules.FirstRow(); row <= d.rows; row++ {
		if least, most := rules.SizesAt(row, d.rows); most > 0 {
			p.blocks = append(p.blocks, block{start: row - 1, least: least, most: min(most, d.stitches)})
		}
	}
	p.blocks = append(p.blocks, block{start: d.rows})
	next := 0
	for i := range p.blocks {
		for next < len(p.blocks)-1 && (next <= i || p.blocks[next].start-p.blocks[i].start < rules.Apart) {
			next++
		}
		p.blocks[i].next = next
	}
	return p
}

// last returns the number of the block that starts where the edge ends.
func (p *program) last() int { return len(p.blocks) - 1 }

// stay returns the area from the start of one block to the start of another at a level.
func (p *program) stay(from, to, level int) int64 {
	return p.d.area(p.blocks[from].start, p.blocks[to].start, level)
}

// togoAt returns the entry of togo.
func (p *program) togoAt(block, level int) int64 { return p.togo[block*(p.d.stitches+1)+level] }

// landed returns the least area from the start of a block to the end of the edge,
// if a step at the block leads to that level.
func (p *program) landed(block, level int) int64 {
	next := p.blocks[block].next
	return p.stay(block, next, level) + p.togoAt(next, level)
}

// solve fills togo, and reports whether there is any schedule.
func (p *program) solve() bool {
	levels := p.d.stitches + 1
	p.togo = make([]int64, len(p.blocks)*levels)
	end := p.togo[p.last()*levels:]
	for c := range end {
		end[c] = unreachable
	}
	end[p.d.stitches] = 0

	landed := make([]int64, levels)
	window := make([]int, levels) // levels of a window with falling areas
	for i := p.last() - 1; i >= 0; i-- {
		b := p.blocks[i]
		here, above := p.togo[i*levels:(i+1)*levels], p.togo[(i+1)*levels:(i+2)*levels]
		head, tail := 0, 0
		for c := levels - 1; c >= 0; c-- {
			landed[c] = p.landed(i, c)
			best := p.stay(i, i+1, c) + above[c]
			// The window is c + least to c + most.
			if enters := c + b.least; enters < levels {
				for tail > head && landed[window[tail-1]] > landed[enters] {
					tail--
				}
				window[tail] = enters
				tail++
			}
			if head < tail && window[head] > c+b.most {
				head++
			}
			if head < tail {
				best = min(best, landed[window[head]])
			}
			here[c] = min(best, unreachable)
		}
	}
	return p.togoAt(0, 0) < unreachable
}

// feasible reports whether any schedule of that many stitches over that many rows
// obeys the rules.
func feasible(stitches, rows int, rules shaping.Rules) bool {
	p := newProgram(&drawing{stitches: stitches, rows: rows}, rules)
	// reach holds for each block and level whether the rest can go from there on.
	levels := stitches + 1
	reach := make([]bool, len(p.blocks)*levels)
	reach[len(reach)-1] = true
	for i := p.last() - 1; i >= 0; i-- {
		b := p.blocks[i]
		landed := reach[b.next*levels : (b.next+1)*levels]
		inWindow := 0 // levels from c + least to c + most from which the rest can go
		for c := stitches; c >= 0; c-- {
			if enters := c + b.least; enters <= stitches && landed[enters] {
				inWindow++
			}
			if leaves := c + b.most + 1; leaves <= stitches && landed[leaves] {
				inWindow--
			}
			reach[i*levels+c] = reach[(i+1)*levels+c] || inWindow > 0
		}
	}
	return reach[0]
}
