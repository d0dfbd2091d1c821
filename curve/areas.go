package curve

// drawing is an edge over whole rows, as a function f over [0, rows] that says how many
// stitches are gone, from 0 to net. All entries are whole numbers of unit; nothing is
// rounded after they are made. At a whole number t of rows
//
//	taken[t]  is the integral of f over [0, t],
//	middle[t] is f(t + 1/2).
//
// What is known at whole numbers of stitches stands in the parts.
type drawing struct {
	net, rows int
	unit      int64 // of a stitch, and of a stitch-row
	taken     []int64
	middle    []int64
	parts     []part // in the order of their rows, from 0 to rows
}

// part is a stretch of whole rows in which f only rises, or only falls, or a single row
// in which it turns.
//
// Where f does not turn, at a whole number c = low + k of stitches,
//
//	before[k]  is the integral of c - f from 0 to where f reaches c in this part,
//	reached[k] is the least whole t with f(t) at c or beyond, and more than to if
//	           there is none.
//
// The integral of f and before are convex conjugates of each other on a rising part,
// which makes every area between the edge and a staircase a sum of few entries. Rounding
// before rather than the place where f reaches c keeps such an area within two units of
// the truth.
type part struct {
	from, to int
	falls    bool
	low      int // the level of the first entries
	before   []int64
	reached  []int
	// areas holds, for a row in which f turns, the area of the row at each level from
	// low on. f lies between the first and the last of these levels.
	areas []int64
}

// newRising returns a drawing that only rises, with entries to be filled in.
func newRising(stitches, rows int, unit int64) *drawing {
	entries := make([]int64, rows+1+rows+stitches+1)
	d := &drawing{net: stitches, rows: rows, unit: unit}
	d.taken, entries = entries[:rows+1], entries[rows+1:]
	d.middle, entries = entries[:rows], entries[rows:]
	d.parts = []part{{to: rows, before: entries, reached: make([]int, stitches+1)}}
	return d
}

// area returns the integral of |f - level| over [from, to].
func (d *drawing) area(from, to, level int) int64 {
	if len(d.parts) == 1 {
		return d.parts[0].area(d, from, to, level)
	}
	area := int64(0)
	for i := range d.parts {
		p := &d.parts[i]
		if start, end := max(from, p.from), min(to, p.to); start < end {
			area += p.area(d, start, end, level)
		}
	}
	return area
}

// areas fills in the integrals over [from, to] for the levels from low on.
func (d *drawing) areas(into []int64, from, to, low int) {
	if p := &d.parts[0]; len(d.parts) > 1 || p.falls || p.areas != nil || low < p.low || low+len(into) > p.low+len(p.before) {
		for k := range into {
			into[k] = d.area(from, to, low+k)
		}
		return
	}
	p := &d.parts[0]
	before, reached := p.before[low-p.low:][:len(into)], p.reached[low-p.low:][:len(into)]
	// As in part.area. Levels that are reached sooner are lower.
	sum, rows := d.taken[from]+d.taken[to], int64(from+to)
	taken, stretch := d.taken[to]-d.taken[from], int64(to-from)
	c := int64(low) * d.unit
	for k := range into {
		switch r := reached[k]; {
		case r > to:
			into[k] = c*stretch - taken
		case r > from:
			into[k] = sum - c*rows + 2*before[k]
		default:
			into[k] = taken - c*stretch
		}
		c += d.unit
	}
}

// area returns the integral of |f - level| over [from, to] within the part.
func (p *part) area(d *drawing, from, to, level int) int64 {
	c, k := int64(level)*d.unit, level-p.low
	if p.areas != nil {
		if from == to {
			return 0
		}
		switch last := len(p.areas) - 1; {
		case k < 0:
			return p.areas[0] - int64(k)*d.unit
		case k > last:
			return p.areas[last] + int64(k-last)*d.unit
		}
		return p.areas[k]
	}
	above := d.taken[to] - d.taken[from] - c*int64(to-from) // if f is never below
	switch {
	case k < 0:
		return above
	case k >= len(p.before):
		return -above
	}
	crossing := d.taken[from] + d.taken[to] - c*int64(from+to) + 2*p.before[k]
	switch r := p.reached[k]; {
	case p.falls && r <= from:
		return -above
	case p.falls && r <= to:
		return -crossing
	case r <= from || p.falls:
		return above
	case r <= to:
		return crossing
	}
	return -above
}

// deviation returns the greatest |f - level| in the middles of the rows from+1 to
// to. Where f does not turn, it is found at one of the two ends.
func (d *drawing) deviation(from, to, level int) int64 {
	c, greatest := int64(level)*d.unit, int64(0)
	for i := range d.parts {
		p := &d.parts[i]
		if start, end := max(from, p.from), min(to, p.to); start < end {
			first, last := d.middle[start], d.middle[end-1]
			greatest = max(greatest, c-first, first-c, c-last, last-c)
		}
	}
	return greatest
}

// floor returns the least area between the edge and any whole number in the row
// that ends at t. The area is convex in the level and least at the median of f. Where f
// does not turn that is its middle: the best whole number is one of the two beside it.
func (d *drawing) floor(p *part, t int) int64 {
	if p.areas != nil {
		least := p.areas[0]
		for _, area := range p.areas {
			least = min(least, area)
		}
		return least
	}
	below := int(floorDiv(d.middle[t-1], d.unit))
	return min(p.area(d, t-1, t, below), p.area(d, t-1, t, below+1))
}

// span returns whole levels between which the middles of the rows from+1 to to lie.
func (d *drawing) span(from, to int) (low, high int) {
	least, most := d.middle[from], d.middle[from]
	if len(d.parts) == 1 {
		least, most = min(d.middle[from], d.middle[to-1]), max(d.middle[from], d.middle[to-1])
	} else {
		for _, f := range d.middle[from:to] {
			least, most = min(least, f), max(most, f)
		}
	}
	return int(floorDiv(least, d.unit)), -int(floorDiv(-most, d.unit))
}

// levels returns the levels that schedules are looked for in.
func (d *drawing) levels(r *rules) (least, most int) {
	if !r.may[down] {
		return 0, d.net
	}
	const astray = 256 // stitches; further off the drawing no schedule is looked for
	low, high := d.span(0, d.rows)
	return min(low, 0, d.net) - astray, max(high, 0, d.net) + astray
}

// slack returns the area, and the deviation, below which differences do not count:
// 1e-7 stitch-rows, or stitches.
func (d *drawing) slack() int64 { return d.unit / 10_000_000 }

// float returns units as stitch-rows or stitches.
func (d *drawing) float(units int64) float64 { return float64(units) / float64(d.unit) }

// floorDiv returns a/b rounded down, b > 0.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a < 0 && q*b != a {
		q--
	}
	return q
}
