package bed

import (
	"iter"
	"slices"

	"example.com/walewise/shaping"
)

// Cloth is what came off the needles. It is immutable; its zero value is no cloth.
type Cloth struct {
	base    int // Needle.Index of heights[0]
	heights []int32
	courses []Course
	wraps   []Wrap
	panels  []panelLedger
	ledger  shaping.Ledger
}

// Course is one knitted row.
type Course struct {
	Row     int // of the piece, from 1
	Panel   string
	From    shaping.Side
	Needles shaping.Span   // the needles that knitted
	Ledger  shaping.Ledger // of the piece, after the row and what followed it
}

// Wrap is the yarn laid round a held needle after a row.
type Wrap struct {
	Row    int // of the piece, from 1
	Panel  string
	Needle shaping.Needle
}

type panelLedger struct {
	name   string
	ledger shaping.Ledger
}

// Equal reports whether both are the same cloth, row by row.
func (c Cloth) Equal(d Cloth) bool {
	return c.base == d.base && c.ledger == d.ledger && slices.Equal(c.heights, d.heights) &&
		slices.Equal(c.courses, d.courses) && slices.Equal(c.wraps, d.wraps) && slices.Equal(c.panels, d.panels)
}

// Needles returns the needles between the outermost ones that held a stitch.
func (c Cloth) Needles() shaping.Span {
	if len(c.heights) == 0 {
		return shaping.Span{}
	}
	return shaping.Span{First: shaping.NeedleAt(c.base), Last: shaping.NeedleAt(c.base + len(c.heights) - 1)}
}

// Height returns the number of rows that the needle knitted: the height of its
// wale. It is 0 for needles that the piece does not use.
func (c Cloth) Height(n shaping.Needle) int {
	i := n.Index() - c.base
	if i < 0 || i >= len(c.heights) {
		return 0
	}
	return int(c.heights[i])
}

// Wales yields the needles of [Cloth.Needles] from left to right with the
// height of each one's wale. It can be ranged over more than once.
func (c Cloth) Wales() iter.Seq2[shaping.Needle, int] {
	return func(yield func(shaping.Needle, int) bool) {
		for i, height := range c.heights {
			if !yield(shaping.NeedleAt(c.base+i), int(height)) {
				return
			}
		}
	}
}

// Courses yields the rows in the order in which they were knitted. It can be
// ranged over more than once.
func (c Cloth) Courses() iter.Seq[Course] { return slices.Values(c.courses) }

// Rows returns the number of rows knitted in all, those of both halves counted.
func (c Cloth) Rows() int { return len(c.courses) }

// Wraps yields the wraps in the order in which they were made. It can be ranged
// over more than once.
func (c Cloth) Wraps() iter.Seq[Wrap] { return slices.Values(c.wraps) }

// Loops returns the number of stitches knitted: the sum of all heights.
func (c Cloth) Loops() int {
	loops := 0
	for _, height := range c.heights {
		loops += int(height)
	}
	return loops
}

// Ledger returns the ledger of the piece as it was counted.
func (c Cloth) Ledger() shaping.Ledger { return c.ledger }

// PanelLedger returns the ledger of one panel as it was counted: CastOn are the
// stitches it began with and those cast on at its edges, Live those it left on
// the needles, on hold or on waste yarn. ok is false if there is no such panel.
func (c Cloth) PanelLedger(name string) (ledger shaping.Ledger, ok bool) {
	for _, p := range c.panels {
		if p.name == name {
			return p.ledger, true
		}
	}
	return shaping.Ledger{}, false
}
