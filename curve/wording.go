package curve

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
		return Drawing{}, rangeError("edge", "that turns back", "an edge that only grows or only shrinks; At lays one that turns at a gauge")
	}
	if err := checkBox(stitches, rows); err != nil {
		return Drawing{}, err
	}
	return Drawing{d: e.shape.drawing(abs(stitches), rows), stitches: stitches}, nil
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

// Phrasing says how schedules are said. The zero value is the default.
type Phrasing struct {
	Most   int  // phrases, at most; 0 means [MostPhrases]
	Steady bool // no phrases of two distances in turn
}

// MostPhrases is how many phrases a wording has at most unless asked.
const MostPhrases = 12
