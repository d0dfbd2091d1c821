package curve

import "example.com/walewise/shaping"

// ties looks for schedules whose area is least within the slack.
type ties struct {
	p     *program
	limit int64 // the greatest area that still ties
}

// outcome is what a search among schedules that tie came to.
type outcome int

const (
	sole    outcome = iota // there is one
	several                // there are more
	leaves                 // one may leave the bands
)

// sole returns the schedule, if there is only one; toward is the sign of stitches that go
// where levels rise.
func (t *ties) sole(toward int) (shaping.Schedule, outcome) {
	p := t.p
	steps := make(shaping.Schedule, 0, 16)
	area, from, level := int64(0), -1, 0 // up to the start of block from, where a step led to level
	for {
		next, found := arc{}, 0
		wait := 0
		if from >= 0 {
			wait, _ = p.blocks[from].ready()
		}
		for i := wait; ; i++ {
			here := area + p.stay(max(from, 0), i, level)
			if here+p.togoAt(i, level) > t.limit {
				break
			}
			if !p.bands[i].holds(level) {
				return nil, leaves
			}
			if i == p.last() {
				found++
				next = arc{block: i}
				break
			}
			out := t.stepsAt(i, from, level, here, func(a arc) {
				found++
				next = a
			})
			if out {
				return nil, leaves
			}
			if found > 1 {
				return nil, several
			}
		}
		if found != 1 {
			return nil, several
		}
		if next.block == p.last() {
			return steps, sole
		}
		steps = append(steps, shaping.Step{Row: p.blocks[next.block].start + 1, Stitches: -toward * next.change})
		area, from, level = next.area, next.block, level+next.change
	}
}

// arc is a step at a block, the area up to which is area.
type arc struct {
	block, change int
	area          int64
}

// stepsAt yields the steps at a block from a level that are among the best, the last step
// being at block from. It reports whether one that leaves the band might be.
func (t *ties) stepsAt(i, from, level int, here int64, yield func(arc)) bool {
	p, b, k := t.p, &t.p.bands[i], &t.p.blocks[i]
	for w := range ways {
		size := k.sizes[w]
		if size.most == 0 || from >= 0 && i < p.blocks[from].next[w] {
			continue
		}
		least, most := level+w.sign()*size.least, level+w.sign()*size.most
		low, high := min(least, most), max(least, most)
		if high > b.high && here+b.over <= t.limit || low < b.low && here+b.under <= t.limit {
			return true
		}
		for to := max(low, b.low); to <= min(high, b.high); to++ {
			if here+p.landed[b.at+to-b.low] <= t.limit {
				yield(arc{i, to - level, here})
			}
		}
	}
	return false
}
