package shaping

import "slices"

// Row is one row of the order of work.
type Row struct {
	Row    int      // the row's number in the piece, from 1
	Panel  string   // the panel it belongs to
	From   Side     // the side where it starts
	Before []Action // done before it is knitted, in this order
	Knit   Span     // the needles it is knitted on
	After  []Action // done after it, in this order
}

// CounterBefore returns what the row counter shows before the row.
func (r Row) CounterBefore() int { return r.Row - 1 }

// CounterAfter returns what the row counter shows after the row.
func (r Row) CounterAfter() int { return r.Row }

// Work is the order of work of one piece and what it promises: its panels with
// their schedules, its rows in the order in which they are knitted, and its
// ledger. Treat a Work as a value: do not change one that others hold, make a
// [Work.Clone] first.
type Work struct {
	Name   string // the piece, such as "front"
	Place  Place
	Facing Facing
	Panels Tree
	Rows   []Row
	Ledger Ledger
}

// Clone returns a deep copy.
func (w Work) Clone() Work {
	w.Panels = w.Panels.Clone()
	w.Rows = slices.Clone(w.Rows)
	for i := range w.Rows {
		r := &w.Rows[i]
		r.Before, r.After = slices.Clone(r.Before), slices.Clone(r.After)
	}
	return w
}
