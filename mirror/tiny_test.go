package mirror_test

import (
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
)

// one is the span of a single needle.
func one(n shaping.Needle) shaping.Span { return shaping.Span{First: n, Last: n} }

// do is an action on needles.
func do(d shaping.Do, needles shaping.Span) shaping.Action {
	return shaping.Action{Do: d, Needles: needles}
}

// tinyFront is a front of 20 stitches and 12 rows that can be knitted on a bed:
// a neck and two shoulders by holding.
func tinyFront() shaping.Work { return worked.TinyWork() }

// tinyOddFront is the tiny front with one stitch more in the middle: everything
// on the right lies one needle further out.
func tinyOddFront() shaping.Work {
	w := tinyFront()
	further := func(s *shaping.Span) {
		for _, n := range []*shaping.Needle{&s.First, &s.Last} {
			if *n > 0 {
				*n++
			}
		}
	}
	for i := range w.Panels {
		further(&w.Panels[i].Needles)
	}
	for i := range w.Rows {
		row := &w.Rows[i]
		further(&row.Knit)
		for _, actions := range [][]shaping.Action{row.Before, row.After} {
			for j := range actions {
				further(&actions[j].Needles)
			}
		}
	}
	w.Ledger.CastOn++
	w.Ledger.Live++
	return w
}
