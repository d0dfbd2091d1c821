package worked

import "example.com/walewise/shaping"

// TinyWork returns the order of work of [TinyFront] on a bed, the carriage at the
// right before row 1, written out by hand. Common practice, no source.
func TinyWork() shaping.Work {
	type actions = []shaping.Action
	l, r := shaping.L, shaping.R
	whole := shaping.Span{First: l(10), Last: r(10)}
	rightOuter := shaping.Span{First: r(9), Last: r(10)}
	leftOuter := shaping.Span{First: l(10), Last: l(9)}
	one := func(n shaping.Needle) shaping.Span { return shaping.Span{First: n, Last: n} }
	do := func(d shaping.Do, needles shaping.Span) shaping.Action {
		return shaping.Action{Do: d, Needles: needles}
	}
	return shaping.Work{
		Name: "front", Place: shaping.Bed, Facing: shaping.PurlSide,
		Panels: TinyFront(),
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
