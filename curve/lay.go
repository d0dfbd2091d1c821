package curve

import "example.com/walewise/shaping"

// Drawing is an edge laid over whole stitches and rows. It is immutable and safe for
// concurrent use. The zero value is no drawing: its methods return an error.
type Drawing struct {
	d        *drawing
	stitches int
	turns    bool
}

// In stretches the edge to a box of that many stitches and rows, so that its own size
// does not matter. Stitches go if the number is positive, and come if it is negative. An
// edge that turns back cannot be stretched so, see [Edge.At].
//
// It returns an [*Error] that wraps [ErrRange] if e is the zero Edge or turns back, if
// there are no rows, or if there are more than [MaxRows] or [MaxStitches].
func (e Edge) In(stitches, rows int) (Drawing, error) {
	switch {
	case e.shape == nil:
		return Drawing{}, noEdge()
	case e.turns():
		return Drawing{}, rangeError("edge", "that turns back", "one that does not; At lays this one at a gauge")
	}
	if err := checkBox(stitches, rows); err != nil {
		return Drawing{}, err
	}
	return Drawing{d: e.shape.drawing(abs(stitches), rows), stitches: stitches}, nil
}

// checkBox refuses boxes without rows and those that are too large.
func checkBox(stitches, rows int) error {
	switch {
	case rows < 1 || rows > MaxRows:
		return rangeError("rows", rows, rowsAllowed)
	case stitches < -MaxStitches || stitches > MaxStitches:
		return rangeError("stitches", stitches, stitchesAllowed)
	}
	return nil
}

// Stitches returns how many stitches go from the lower end to the upper end; fewer than
// 0 if they come.
func (d Drawing) Stitches() int { return d.stitches }

// Rows returns the number of rows.
func (d Drawing) Rows() int {
	if d.d == nil {
		return 0
	}
	return d.d.rows
}

// Turns reports whether the edge turns back, so that stitches go and come.
func (d Drawing) Turns() bool { return d.turns }

// toward returns the sign of stitches that go where levels rise.
func (d Drawing) toward() int {
	if d.turns {
		return 1
	}
	return sign(d.stitches)
}

// isFlat reports whether no stitches move.
func (d Drawing) isFlat() bool { return d.d.net == 0 && !d.turns }

// rules returns the rules for the steps of the drawing: those for levels that rise, which
// are the rules for stitches that come where only those do, and where the drawing turns
// also those for levels that fall.
func (d Drawing) rules(r shaping.Rules) (*rules, error) {
	if d.d == nil {
		return nil, rangeError("drawing", "without an edge", "one made by In or At")
	}
	if err := r.Validate(); err != nil {
		return nil, rangeError("rules", "not valid", err.Error())
	}
	made := &rules{}
	made.of[up], made.may[up] = r.For(-d.toward()), true
	if d.turns {
		made.of[down], made.may[down] = r.For(1), true
	}
	return made, nil
}

func abs(n int) int { return max(n, -n) }

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}
