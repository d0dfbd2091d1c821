package curve

import (
	"cmp"
	"slices"

	"example.com/walewise/shaping"
)

// choice chooses one schedule of a graph: the one of least greatest deviation, then the one
// with the fewest stitches moved at the first row that differs. The first key is fixed
// before the second is looked at, because a deviation cannot be compared place by place:
// a path with a smaller one so far may meet a greater one later. So limits to it are tried.
type choice struct {
	*told
	deviations []int64 // of each arc
	ends       []int64 // greatest deviation after the last step, for each place
	after      []int64 // for each place, least area to the end of the edge within a limit to deviations
	reached    []bool  // the places where the steps chosen so far may end
}

// choose returns the schedule; toward is the sign of stitches that go when levels rise.
func (g *told) choose(toward int) shaping.Schedule {
	if g.isPath() {
		return g.follow(toward)
	}
	c := &choice{
		told: g, deviations: make([]int64, len(g.arcs)), ends: make([]int64, len(g.places)), after: make([]int64, len(g.places)),
		reached: make([]bool, len(g.places)),
	}
	var limits []int64
	for n, from := range g.places {
		if from.follow == 0 {
			c.ends[n] = c.endDeviation(n)
			limits = append(limits, c.ends[n])
		}
		for a := from.first; a < from.end; a++ {
			c.deviations[a] = c.deviation(from, g.arcs[a])
			limits = append(limits, c.deviations[a])
		}
	}
	slices.Sort(limits)
	limits = slices.Compact(limits)
	least, _ := slices.BinarySearchFunc(limits, g.limit, func(limit, area int64) int {
		if c.within(limit) > area {
			return -1
		}
		return 1
	})
	limit := limits[least] + g.s.slack
	c.within(limit)
	return c.walk(limit, toward)
}

// isPath reports whether the graph holds one schedule, said in one way.
func (g *told) isPath() bool {
	for _, from := range g.places {
		if from.end-from.first > 1 {
			return false
		}
	}
	return true
}

// follow returns the schedule of a graph that is a path.
func (g *told) follow(toward int) shaping.Schedule {
	var steps shaping.Schedule
	for n := 0; g.places[n].end > g.places[n].first; {
		f := g.arcs[g.places[n].first]
		steps = f.appendTo(steps, g.s.p, toward)
		n = f.to
	}
	return steps
}

// appendTo appends the steps of a phrase and of the base before it.
func (f *phrase) appendTo(steps shaping.Schedule, p *program, toward int) shaping.Schedule {
	for n := range f.steps() {
		row, change := f.step(p, n)
		steps = append(steps, shaping.Step{Row: row, Stitches: -toward * change})
	}
	return steps
}

// steps returns how many steps the phrase has with the base before it.
func (f *phrase) steps() int {
	if f.base != 0 {
		return f.times + 1
	}
	return f.times
}

// step returns the row and the change of the n-th step, from 0.
func (f *phrase) step(p *program, n int) (row, change int) {
	if f.base != 0 {
		if n == 0 {
			return p.blocks[0].start + 1, f.base
		}
		n--
	}
	return p.blocks[f.lead].start + 1 + (n+1)/2*f.turn[0] + n/2*f.turn[1], f.change
}

// deviation returns the greatest one from the place where a phrase begins to its end.
func (c *choice) deviation(from place, f phrase) int64 {
	p := c.s.p
	start, level, greatest := 0, from.level, int64(0)
	if from.block >= 0 {
		start = p.blocks[from.block].start
	}
	for n := range f.steps() {
		row, change := f.step(p, n)
		greatest = max(greatest, p.d.deviation(start, row-1, level))
		start, level = row-1, level+change
	}
	return greatest
}

// endDeviation returns the greatest one from a place to the end of the edge.
func (c *choice) endDeviation(n int) int64 {
	at, start := c.places[n], 0
	if at.block >= 0 {
		start = c.s.p.blocks[at.block].start
	}
	return c.s.p.d.deviation(start, c.s.p.d.rows, at.level)
}

// within finds the least areas without what deviates by more than the limit, and returns
// that of a whole schedule.
func (c *choice) within(limit int64) int64 {
	p := c.s.p
	for n, from := range slices.Backward(c.places) {
		c.after[n] = unreachable
		if from.follow == 0 && c.ends[n] <= limit {
			c.after[n] = p.stay(max(from.block, 0), p.last(), from.level)
		}
		for a := from.first; a < from.end; a++ {
			c.after[n] = min(c.after[n], c.onward(a, limit))
		}
	}
	return c.after[0]
}

// onward returns the least area from the beginning of a phrase to the end of the edge,
// within the limit to deviations that the areas after places were found for.
func (c *choice) onward(a int, limit int64) int64 {
	if c.deviations[a] > limit {
		return unreachable
	}
	return c.arcs[a].area + c.after[c.arcs[a].to]
}

// saying is a way to say the steps chosen so far: within a phrase, so many of whose steps
// are chosen.
type saying struct {
	arc, steps int
	area       int64 // up to the beginning of the phrase
}

// walk chooses one step after the other: of those that lead to the end the latest, and in
// the same row the one that moves the fewest stitches, and of two the one that takes off.
func (c *choice) walk(limit int64, toward int) shaping.Schedule {
	p := c.s.p
	var chosen shaping.Schedule
	sayings := c.begun(nil, 0, 0, limit)
	for {
		// What can come next, where a saying with no steps left stands for the end.
		var best shaping.Step
		var next []saying
		for _, s := range sayings {
			step := shaping.Step{Row: p.d.rows + 1}
			if f := &c.arcs[s.arc]; s.steps < f.steps() {
				row, change := f.step(p, s.steps)
				step = shaping.Step{Row: row, Stitches: -toward * change}
			}
			order := -1
			if next != nil {
				order = later(step, best)
			}
			if order < 0 {
				best, next = step, next[:0]
			}
			if order <= 0 {
				s.steps++
				next = append(next, s)
			}
		}
		if best.Row > p.d.rows {
			return chosen
		}
		chosen = append(chosen, best)
		sayings = sayings[:0]
		for _, s := range next {
			f := c.arcs[s.arc]
			switch {
			case s.steps < f.steps() || c.places[f.to].follow == 0:
				sayings = append(sayings, s)
			case !c.reached[f.to]: // once: however the steps are said, the area is the same
				c.reached[f.to] = true
				sayings = c.begun(sayings, f.to, s.area+f.area, limit)
			}
		}
	}
}

// begun appends the phrases that begin at a place up to which there is so much area, and
// that lead to the end.
func (c *choice) begun(sayings []saying, at int, area, limit int64) []saying {
	for a := c.places[at].first; a < c.places[at].end; a++ {
		if area+c.onward(a, limit) <= c.limit {
			sayings = append(sayings, saying{arc: a, area: area})
		}
	}
	return sayings
}

// later compares two steps that may come next: it is negative if a is to be chosen.
func later(a, b shaping.Step) int {
	return cmp.Or(
		cmp.Compare(b.Row, a.Row),
		cmp.Compare(abs(a.Stitches), abs(b.Stitches)),
		cmp.Compare(a.Stitches, b.Stitches),
	)
}
