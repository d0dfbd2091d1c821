package bed_test

import (
	"fmt"
	"slices"

	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
)

// mutant is a work with one thing changed.
type mutant struct {
	what string
	make func(*shaping.Work)
}

// panelMutants change one entry of one panel.
func panelMutants(w shaping.Work) []mutant {
	var list []mutant
	add := func(what string, change func(*shaping.Work)) { list = append(list, mutant{what, change}) }
	for i, p := range w.Panels {
		at := "panel " + p.Name + ": "
		add(at+"another name", func(w *shaping.Work) { w.Panels[i].Name += " too" })
		add(at+"no name", func(w *shaping.Work) { w.Panels[i].Name = "" })
		for _, parent := range []string{"", shaping.Body, shaping.RightHalf, shaping.LeftHalf, "yoke"} {
			add(at+"parent "+parent, func(w *shaping.Work) { w.Panels[i].Parent = parent })
		}
		for _, by := range []int{-1, 1} {
			add(at+"first row", func(w *shaping.Work) { w.Panels[i].FirstRow += by })
			add(at+"last row", func(w *shaping.Work) { w.Panels[i].LastRow += by })
			add(at+"first needle", func(w *shaping.Work) { nudge(&w.Panels[i].Needles.First, by) })
			add(at+"last needle", func(w *shaping.Work) { nudge(&w.Panels[i].Needles.Last, by) })
			add(at+"both needles", func(w *shaping.Work) { nudgeBoth(&w.Panels[i].Needles, by) })
			add(at+"left edge on other rows", func(w *shaping.Work) { w.Panels[i].Left = p.Left.Shifted(by) })
			add(at+"right edge on other rows", func(w *shaping.Work) { w.Panels[i].Right = p.Right.Shifted(by) })
		}
		add(at+"edges swapped", func(w *shaping.Work) { w.Panels[i].Left, w.Panels[i].Right = p.Right, p.Left })
		add(at+"reflected", func(w *shaping.Work) { w.Panels[i] = axisOf(*w).Panel(p) })
		add(at+"left out", func(w *shaping.Work) { w.Panels = slices.Delete(w.Panels, i, i+1) })
		add(at+"listed twice", func(w *shaping.Work) { w.Panels = slices.Insert(w.Panels, i, w.Panels[i]) })
		if i+1 < len(w.Panels) {
			add(at+"after the next", func(w *shaping.Work) { w.Panels[i], w.Panels[i+1] = w.Panels[i+1], w.Panels[i] })
		}
		for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
			for k, step := range p.Steps(edge) {
				at := fmt.Sprintf("%s%v step at row %d: ", at, edge, step.Row)
				change := func(what string, f func(*shaping.Schedule)) {
					add(at+what, func(w *shaping.Work) {
						if edge == shaping.Left {
							f(&w.Panels[i].Left)
						} else {
							f(&w.Panels[i].Right)
						}
					})
				}
				for _, by := range []int{-1, 1} {
					change("row", func(s *shaping.Schedule) { (*s)[k].Row += by })
					change("stitches", func(s *shaping.Schedule) { (*s)[k].Stitches += by })
				}
				change("sign", func(s *shaping.Schedule) { (*s)[k].Stitches *= -1 })
				for m := shaping.Method(0); m <= shaping.CastOn+1; m++ {
					if m != step.Method {
						change(fmt.Sprintf("method %d", m), func(s *shaping.Schedule) { (*s)[k].Method = m })
					}
				}
				change("left out", func(s *shaping.Schedule) { *s = slices.Delete(*s, k, k+1) })
				change("twice", func(s *shaping.Schedule) { *s = slices.Insert(*s, k, step) })
			}
		}
	}
	return list
}

// rowMutants change one entry of one row.
func rowMutants(w shaping.Work) []mutant {
	var list []mutant
	add := func(what string, change func(*shaping.Work)) { list = append(list, mutant{what, change}) }
	for i, row := range w.Rows {
		at := fmt.Sprintf("%s row %d: ", row.Panel, row.Row)
		for _, by := range []int{-2, -1, 1, 2} {
			add(at+"number", func(w *shaping.Work) { w.Rows[i].Row += by })
		}
		for _, by := range []int{-1, 1} {
			add(at+"knit first", func(w *shaping.Work) { nudge(&w.Rows[i].Knit.First, by) })
			add(at+"knit last", func(w *shaping.Work) { nudge(&w.Rows[i].Knit.Last, by) })
			add(at+"knit both", func(w *shaping.Work) { nudgeBoth(&w.Rows[i].Knit, by) })
		}
		add(at+"knits nothing", func(w *shaping.Work) { w.Rows[i].Knit = shaping.Span{} })
		for _, side := range []shaping.Side{0, row.From.Opposite(), 3} {
			add(at+"side", func(w *shaping.Work) { w.Rows[i].From = side })
		}
		for _, panel := range []string{"", shaping.Body, shaping.RightHalf, shaping.LeftHalf, "yoke"} {
			if panel != row.Panel {
				add(at+"panel "+panel, func(w *shaping.Work) { w.Rows[i].Panel = panel })
			}
		}
		add(at+"reflected", func(w *shaping.Work) { w.Rows[i] = axisOf(*w).Row(row) })
		add(at+"left out", func(w *shaping.Work) { w.Rows = slices.Delete(w.Rows, i, i+1) })
		add(at+"twice", func(w *shaping.Work) { w.Rows = slices.Insert(w.Rows, i, w.Rows[i]) })
		if i+1 < len(w.Rows) {
			add(at+"after the next", func(w *shaping.Work) { w.Rows[i], w.Rows[i+1] = w.Rows[i+1], w.Rows[i] })
			add(at+"left out with the next", func(w *shaping.Work) { w.Rows = slices.Delete(w.Rows, i, i+2) })
		}
	}
	return list
}

// place is where an action stands.
type place struct {
	row   int
	after bool
	index int
}

func (p place) list(w *shaping.Work) *[]shaping.Action {
	if p.after {
		return &w.Rows[p.row].After
	}
	return &w.Rows[p.row].Before
}

// actionMutants change, remove, repeat or move one action.
func actionMutants(w shaping.Work) []mutant {
	var list []mutant
	for i, row := range w.Rows {
		for k := range row.Before {
			list = append(list, mutantsOf(w, place{i, false, k})...)
		}
		for k := range row.After {
			list = append(list, mutantsOf(w, place{i, true, k})...)
		}
	}
	return list
}

func mutantsOf(w shaping.Work, p place) []mutant {
	original := (*p.list(&w))[p.index]
	at := fmt.Sprintf("%s row %d: %v (after %v): ", w.Rows[p.row].Panel, w.Rows[p.row].Row, original, p.after)
	var list []mutant
	edit := func(what string, change func(*shaping.Action)) {
		list = append(list, mutant{at + what, func(w *shaping.Work) { change(&(*p.list(w))[p.index]) }})
	}
	move := func(what string, keep bool, to place) {
		list = append(list, mutant{at + what, func(w *shaping.Work) {
			if !keep {
				from := p.list(w)
				*from = slices.Delete(*from, p.index, p.index+1)
			}
			if to.row >= 0 && to.row < len(w.Rows) {
				into := to.list(w)
				*into = slices.Insert(*into, min(to.index, len(*into)), original)
			}
		}})
	}
	const last = 1 << 20
	move("removed", false, place{row: -1})
	move("repeated", true, p)
	for _, keep := range []bool{true, false} {
		what := fmt.Sprintf("moved (kept %v) to ", keep)
		move(what+"the other side of the row", keep, place{p.row, !p.after, last})
		for _, by := range []int{-2, -1, 1, 2} {
			if p.row+by < 0 || p.row+by >= len(w.Rows) {
				continue
			}
			move(what+fmt.Sprintf("before, %d rows on", by), keep, place{p.row + by, false, last})
			move(what+fmt.Sprintf("after, %d rows on", by), keep, place{p.row + by, true, 0})
		}
		move(what+"the first row", keep, place{0, false, last})
		move(what+"the last row", keep, place{len(w.Rows) - 1, true, 0})
		move(what+"the front of its row", keep, place{p.row, p.after, 0})
		move(what+"the end of its row", keep, place{p.row, p.after, last})
	}
	for _, by := range []int{-1, 1} {
		edit("first needle", func(a *shaping.Action) { nudge(&a.Needles.First, by) })
		edit("last needle", func(a *shaping.Action) { nudge(&a.Needles.Last, by) })
		edit("both needles", func(a *shaping.Action) { nudgeBoth(&a.Needles, by) })
		edit("counter", func(a *shaping.Action) { a.Counter += by })
	}
	edit("reflected", func(a *shaping.Action) { *a = axisOf(w).Action(original) })
	edit("no needles", func(a *shaping.Action) { a.Needles = shaping.Span{} })
	edit("from right to left", func(a *shaping.Action) { a.Needles.First, a.Needles.Last = a.Needles.Last, a.Needles.First })
	edit("separate", func(a *shaping.Action) { a.Separate = !a.Separate })
	for side := shaping.Side(0); side <= shaping.Right+1; side++ {
		edit("side", func(a *shaping.Action) { a.Side = side })
		edit("toward", func(a *shaping.Action) { a.Toward = side })
	}
	for d := shaping.Do(0); d <= shaping.DoCounter+1; d++ {
		if d != original.Do {
			edit(fmt.Sprintf("do %d", d), func(a *shaping.Action) { a.Do = d })
		}
	}
	return list
}

// pieceMutants change what concerns the whole piece.
func pieceMutants(shaping.Work) []mutant {
	list := []mutant{
		{"another name", func(w *shaping.Work) { w.Name = "back" }},
		{"no rows", func(w *shaping.Work) { w.Rows = nil }},
		{"no panels", func(w *shaping.Work) { w.Panels = nil }},
	}
	for v := range uint8(4) {
		list = append(list,
			mutant{"place", func(w *shaping.Work) { w.Place = shaping.Place(v) }},
			mutant{"facing", func(w *shaping.Work) { w.Facing = shaping.Facing(v) }})
	}
	for _, by := range []int{-1, 1} {
		list = append(list,
			mutant{"ledger: cast on", func(w *shaping.Work) { w.Ledger.CastOn += by }},
			mutant{"ledger: increased", func(w *shaping.Work) { w.Ledger.Increased += by }},
			mutant{"ledger: decreased", func(w *shaping.Work) { w.Ledger.Decreased += by }},
			mutant{"ledger: bound off", func(w *shaping.Work) { w.Ledger.BoundOff += by }},
			mutant{"ledger: live", func(w *shaping.Work) { w.Ledger.Live += by }},
			// These balance.
			mutant{"ledger: cast on and live", func(w *shaping.Work) { w.Ledger.CastOn += by; w.Ledger.Live += by }},
			mutant{"ledger: bound off, not live", func(w *shaping.Work) { w.Ledger.BoundOff += by; w.Ledger.Live -= by }},
			mutant{"ledger: increased and decreased", func(w *shaping.Work) { w.Ledger.Increased += by; w.Ledger.Decreased += by }})
	}
	return list
}

// nudge moves a needle by one, past the middle too.
func nudge(n *shaping.Needle, by int) { *n = shaping.NeedleAt(n.Index() + by) }

func nudgeBoth(s *shaping.Span, by int) { nudge(&s.First, by); nudge(&s.Last, by) }

func axisOf(w shaping.Work) mirror.Axis { return mirror.AxisFor(w.Panels[0].Needles.Len()) }
