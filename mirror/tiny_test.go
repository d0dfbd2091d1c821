package mirror_test

import (
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
)

// Needles that the tiny front names more than once.
var (
	l, r       = shaping.L, shaping.R
	whole      = shaping.Span{First: l(10), Last: r(10)}
	rightOuter = shaping.Span{First: r(9), Last: r(10)}
	leftOuter  = shaping.Span{First: l(10), Last: l(9)}
)

// one is the span of a single needle.
func one(n shaping.Needle) shaping.Span { return shaping.Span{First: n, Last: n} }

// do is an action on needles.
func do(d shaping.Do, needles shaping.Span) shaping.Action {
	return shaping.Action{Do: d, Needles: needles}
}

// tinyFront is a front of 20 stitches and 12 rows that can be knitted on a bed:
// a neck and two shoulders by holding.
func tinyFront() shaping.Work {
	type actions = []shaping.Action
	return shaping.Work{
		Name: "front", Place: shaping.Bed, Facing: shaping.Purl,
		Panels: worked.TinyFront(),
		Ledger: shaping.Ledger{CastOn: 20, Live: 20},
		Rows: []shaping.Row{
			{Row: 1, Panel: shaping.Body, From: shaping.Right, Before: actions{do(shaping.DoCastOn, whole)}, Knit: whole},
			{Row: 2, Panel: shaping.Body, From: shaping.Left, Knit: whole},
			{Row: 3, Panel: shaping.Body, From: shaping.Right, Knit: whole},
			{Row: 4, Panel: shaping.Body, From: shaping.Left, Knit: whole},
			{Row: 5, Panel: shaping.Body, From: shaping.Right, Knit: whole},
			{Row: 6, Panel: shaping.Body, From: shaping.Left, Knit: whole},

			{
				Row: 7, Panel: shaping.RightHalf, From: shaping.Right,
				Before: actions{
					do(shaping.DoHold, shaping.Span{First: l(2), Last: r(2)}),
					do(shaping.DoHold, shaping.Span{First: l(10), Last: l(3)}),
					do(shaping.DoHold, shaping.Span{First: r(3), Last: r(4)}),
				},
				Knit: shaping.Span{First: r(5), Last: r(10)}, After: actions{do(shaping.DoWrap, one(r(4)))},
			},
			{Row: 8, Panel: shaping.RightHalf, From: shaping.Left, Knit: shaping.Span{First: r(5), Last: r(10)}},
			{
				Row: 9, Panel: shaping.RightHalf, From: shaping.Right, Before: actions{do(shaping.DoHold, one(r(5)))},
				Knit: shaping.Span{First: r(6), Last: r(10)}, After: actions{do(shaping.DoWrap, one(r(5)))},
			},
			{
				Row: 10, Panel: shaping.RightHalf, From: shaping.Left, Before: actions{do(shaping.DoHold, rightOuter)},
				Knit: shaping.Span{First: r(6), Last: r(8)}, After: actions{do(shaping.DoWrap, one(r(9)))},
			},
			{Row: 11, Panel: shaping.RightHalf, From: shaping.Right, Knit: shaping.Span{First: r(6), Last: r(8)}},
			{
				Row: 12, Panel: shaping.RightHalf, From: shaping.Left, Before: actions{do(shaping.DoReturn, rightOuter)},
				Knit: shaping.Span{First: r(6), Last: r(10)}, After: actions{do(shaping.DoWaste, shaping.Span{First: r(6), Last: r(10)})},
			},

			{
				Row: 7, Panel: shaping.LeftHalf, From: shaping.Left,
				Before: actions{
					{Do: shaping.DoCarriage, Side: shaping.Left},
					{Do: shaping.DoCounter, Counter: 6},
					do(shaping.DoReturn, shaping.Span{First: l(10), Last: l(3)}),
					do(shaping.DoHold, shaping.Span{First: l(4), Last: l(3)}),
				},
				Knit: shaping.Span{First: l(10), Last: l(5)}, After: actions{do(shaping.DoWrap, one(l(4)))},
			},
			{Row: 8, Panel: shaping.LeftHalf, From: shaping.Right, Knit: shaping.Span{First: l(10), Last: l(5)}},
			{
				Row: 9, Panel: shaping.LeftHalf, From: shaping.Left, Before: actions{do(shaping.DoHold, one(l(5)))},
				Knit: shaping.Span{First: l(10), Last: l(6)}, After: actions{do(shaping.DoWrap, one(l(5)))},
			},
			{
				Row: 10, Panel: shaping.LeftHalf, From: shaping.Right, Before: actions{do(shaping.DoHold, leftOuter)},
				Knit: shaping.Span{First: l(8), Last: l(6)}, After: actions{do(shaping.DoWrap, one(l(9)))},
			},
			{Row: 11, Panel: shaping.LeftHalf, From: shaping.Left, Knit: shaping.Span{First: l(8), Last: l(6)}},
			{
				Row: 12, Panel: shaping.LeftHalf, From: shaping.Right, Before: actions{do(shaping.DoReturn, leftOuter)},
				Knit: shaping.Span{First: l(10), Last: l(6)},
				After: actions{
					do(shaping.DoWaste, shaping.Span{First: l(10), Last: l(6)}),
					do(shaping.DoWaste, shaping.Span{First: l(5), Last: r(5)}),
				},
			},
		},
	}
}

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
