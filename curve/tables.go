package curve

import "math"

// tables makes a drawing from the pieces of an outline.
type tables struct {
	pieces []laid
	d      *drawing
}

func newTables(pieces []laid, stitches, rows int) *tables {
	return &tables{pieces, &drawing{
		net: stitches, rows: rows, unit: fine,
		taken: make([]int64, rows+1), middle: make([]int64, rows),
	}}
}

func (t *tables) drawing() *drawing {
	t.alongRows()
	for from, n := 0, 0; from < t.d.rows; {
		var p part
		p, n = t.part(from, n)
		t.d.parts = append(t.d.parts, p)
		from = p.to
	}
	return t.d
}

// alongRows fills what is known of rows.
func (t *tables) alongRows() {
	n, d := 0, t.d
	// Where the edge jumps it has the value above.
	at := func(rows float64) *laid {
		for n+1 < len(t.pieces) && t.pieces[n].end() <= rows {
			n++
		}
		return &t.pieces[n]
	}
	for r := range d.rows {
		l := at(float64(r))
		d.taken[r] = round(float64(l.integral(l.height(float64(r))) * fine))
		half := float64(r) + 0.5
		l = at(half)
		d.middle[r] = round(float64(l.at(l.height(half)) * fine))
	}
	last := &t.pieces[len(t.pieces)-1]
	d.taken[d.rows] = round(float64(last.integral(last.y1) * fine))
}

// near is the part of a row within which a turn counts as standing between two rows.
const near = 1e-9

// nextTurn returns the rows up to where f stops going one way, from a piece on, and that
// way.
func (t *tables) nextTurn(n int) (rows float64, way int) {
	for ; n < len(t.pieces); n++ {
		l := &t.pieces[n]
		direction := l.direction()
		if way*direction < 0 {
			return l.start(), way
		}
		if direction != 0 {
			way = direction
		}
	}
	return float64(t.d.rows), way
}

// part returns the part that begins after so many rows, and the first piece that belongs to
// it; those before piece n end below.
func (t *tables) part(from, n int) (part, int) {
	for n+1 < len(t.pieces) && t.pieces[n].end() <= float64(from)+near {
		n++
	}
	rows, way := t.nextTurn(n)
	to := int(math.Floor(rows + near))
	if to <= from {
		return t.turningRow(from, n), n
	}
	p := part{from: from, to: min(to, t.d.rows), falls: way < 0}
	t.alongLevels(&p, n)
	return p, n
}

// alongLevels fills what is known of the levels of a part that does not turn and begins
// in piece n.
func (t *tables) alongLevels(p *part, n int) {
	low, high := t.bounds(p.from, p.to, n)
	p.low = low
	p.before, p.reached = make([]int64, high-low+1), make([]int, high-low+1)
	for k := range p.before {
		if p.falls {
			k = len(p.before) - 1 - k
		}
		c := float64(low + k)
		reached := false
		for ; ; n++ {
			l := &t.pieces[n]
			ending := l.gone(l.x1)
			if reached = !p.falls && ending >= c || p.falls && ending <= c; reached || n == len(t.pieces)-1 || l.end() >= float64(p.to) {
				break
			}
		}
		p.reached[k] = p.to + 1
		l := &t.pieces[n]
		y := l.y1
		if reached {
			y = l.y0
			if beginning := l.gone(l.x0); !p.falls && beginning < c || p.falls && beginning > c {
				y = l.reaches(c)
			}
		}
		y = max(y, l.height(float64(p.from)))
		rows := min(max(l.inRows(y), float64(p.from)), float64(t.d.rows))
		if reached || p.to == t.d.rows {
			p.reached[k] = min(int(math.Ceil(rows)), p.to+1)
		}
		p.before[k] = round(float64((float64(c*rows) - l.integral(y)) * fine))
	}
}

// turningRow returns the part of a single row in which f turns.
func (t *tables) turningRow(from, n int) part {
	p := part{from: from, to: from + 1}
	low, high := t.bounds(p.from, p.to, n)
	p.low = low
	p.areas = make([]int64, high-low+1)
	for k := range p.areas {
		c, area := float64(low+k), 0.0
		for i := n; i < len(t.pieces) && t.pieces[i].start() < float64(p.to); i++ {
			area += t.pieces[i].area(float64(p.from), float64(p.to), c)
		}
		p.areas[k] = round(float64(area * fine))
	}
	return p
}

// area returns the integral of |f - level| over the piece as far as it lies between so
// many rows.
func (l *laid) area(from, to, level float64) float64 {
	y0, y1 := l.height(from), l.height(to)
	if y0 >= y1 {
		return 0
	}
	side := func(y0, y1 float64) float64 {
		return math.Abs(l.integral(y1) - l.integral(y0) - float64(level*l.inRows(y1-y0)))
	}
	f0, f1 := l.at(y0), l.at(y1)
	if (f0 < level) == (f1 < level) {
		return side(y0, y1)
	}
	y := min(max(l.reaches(level), y0), y1)
	return side(y0, y) + side(y, y1)
}

// bounds returns whole levels between which f lies over a stretch of rows that begins in
// piece n.
func (t *tables) bounds(from, to, n int) (low, high int) {
	least, most := math.Inf(1), math.Inf(-1)
	for ; n < len(t.pieces) && t.pieces[n].start() <= float64(to); n++ {
		l := &t.pieces[n]
		if l.end() < float64(from) {
			continue
		}
		f0, f1 := l.at(l.height(float64(from))), l.at(l.height(float64(to)))
		if l.y0 == l.y1 {
			f0 = l.gone(l.x0)
		}
		least, most = min(least, f0, f1), max(most, f0, f1)
	}
	return int(math.Floor(least)), int(math.Ceil(most))
}
