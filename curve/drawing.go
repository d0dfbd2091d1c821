package curve

// drawing is an edge in a box of whole stitches and rows, as a function f over
// [0, rows] that says how many stitches are gone, rising from 0 to stitches. All
// entries are whole numbers of unit; nothing is rounded after they are made. At a
// whole number t of rows and a whole number c of stitches
//
//	taken[t]   is the integral of f over [0, t],
//	before[c]  is the integral of c - f from 0 to where f reaches c,
//	reached[c] is the least whole t with f(t) >= c,
//	middle[t]  is f(t + 1/2).
//
// The first two are convex conjugates of each other, which makes every area between
// the edge and a staircase a sum of few entries. Rounding before[c] rather than the
// place where f reaches c keeps such an area within two units of the truth.
type drawing struct {
	stitches, rows int
	unit           int64 // of a stitch, and of a stitch-row
	taken, before  []int64
	middle         []int64
	reached        []int
}

func newDrawing(stitches, rows int, unit int64) *drawing {
	entries := make([]int64, rows+1+stitches+1+rows)
	d := &drawing{stitches: stitches, rows: rows, unit: unit, reached: make([]int, stitches+1)}
	d.taken, entries = entries[:rows+1], entries[rows+1:]
	d.before, d.middle = entries[:stitches+1], entries[stitches+1:]
	return d
}

// area returns the integral of |f - level| over [from, to].
func (d *drawing) area(from, to, level int) int64 {
	c, stretch := int64(level)*d.unit, int64(to-from)
	switch {
	case level <= 0 || level <= d.stitches && d.reached[level] <= from:
		return d.taken[to] - d.taken[from] - c*stretch
	case level > d.stitches || d.reached[level] > to:
		return c*stretch - (d.taken[to] - d.taken[from])
	}
	return d.taken[from] + d.taken[to] - c*int64(from+to) + 2*d.before[level]
}

// deviation returns the greatest |f - level| in the middles of the rows from+1 to
// to. As f rises, it is found at one of the two ends.
func (d *drawing) deviation(from, to, level int) int64 {
	if from >= to {
		return 0
	}
	c := int64(level) * d.unit
	first, last := d.middle[from], d.middle[to-1]
	return max(c-first, first-c, c-last, last-c)
}

// floor returns the least area between the edge and any whole number in the row
// that ends at t. The area is convex in the level and least at the median of f,
// which is its middle: the best whole number is one of the two beside it.
func (d *drawing) floor(t int) int64 {
	below := int(d.middle[t-1] / d.unit)
	return min(d.area(t-1, t, below), d.area(t-1, t, below+1))
}

// slack returns the area, and the deviation, below which differences do not count:
// 1e-7 stitch-rows, or stitches.
func (d *drawing) slack() int64 { return d.unit / 10_000_000 }

// float returns units as stitch-rows or stitches.
func (d *drawing) float(units int64) float64 { return float64(units) / float64(d.unit) }
