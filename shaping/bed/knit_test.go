package bed_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

var (
	l, r    = shaping.L, shaping.R
	sixWide = shaping.Centred(6)
)

// six returns a strip of 6 stitches and 4 rows, the first row from the right.
func six() shaping.Work {
	w := shaping.Work{
		Name: "strip", Place: shaping.Bed, Facing: shaping.PurlSide,
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: 4, Needles: sixWide}},
		Ledger: shaping.Ledger{CastOn: 6, Live: 6},
	}
	for i, side := range []shaping.Side{shaping.Right, shaping.Left, shaping.Right, shaping.Left} {
		w.Rows = append(w.Rows, shaping.Row{Row: i + 1, Panel: shaping.Body, From: side, Knit: sixWide})
	}
	w.Rows[0].Before = []shaping.Action{do(shaping.DoCastOn, sixWide)}
	w.Rows[3].After = []shaping.Action{do(shaping.DoWaste, sixWide)}
	return w
}

// before adds actions before a row, after those after it.
func before(w *shaping.Work, row int, actions ...shaping.Action) {
	w.Rows[row-1].Before = append(w.Rows[row-1].Before, actions...)
}

func after(w *shaping.Work, row int, actions ...shaping.Action) {
	w.Rows[row-1].After = append(actions, w.Rows[row-1].After...)
}

// knits sets the needles of the rows from row on.
func knits(w *shaping.Work, row int, needles shaping.Span) {
	for i := row - 1; i < len(w.Rows); i++ {
		w.Rows[i].Knit = needles
	}
}

// edge sets the steps of the body's left edge to one step.
func edge(w *shaping.Work, row, stitches int, m shaping.Method) {
	w.Panels[0].Left = shaping.Schedule{{Row: row, Stitches: stitches, Method: m}}
}

// off takes the stitches off after the last row.
func off(w *shaping.Work, needles shaping.Span) {
	w.Rows[3].After = []shaping.Action{do(shaping.DoWaste, needles)}
}

// hold puts L3 on hold before row 1, where it ends, without a wrap.
func hold(w *shaping.Work) {
	before(w, 1, do(shaping.DoHold, one(l(3))))
	edge(w, 1, -1, shaping.Hold)
	knits(w, 1, span(l(2), r(3)))
}

// heldAndWrapped is hold with the wrap that it needs.
func heldAndWrapped(w *shaping.Work) {
	hold(w)
	after(w, 1, do(shaping.DoWrap, one(l(3))))
}

// boundOff binds off one stitch before row 2.
func boundOff(w *shaping.Work) {
	before(w, 2, do(shaping.DoBindOff, one(l(3))))
	edge(w, 2, -1, shaping.BindOff)
	knits(w, 2, span(l(2), r(3)))
	off(w, span(l(2), r(3)))
	w.Ledger = shaping.Ledger{CastOn: 6, BoundOff: 1, Live: 5}
}

// increased moves three stitches outwards before row 2; the needle they leave is empty.
func increased(w *shaping.Work) {
	before(w, 2, shift(span(l(3), l(1)), shaping.Left))
	edge(w, 2, 1, shaping.Fashioned)
	knits(w, 2, span(l(4), r(3)))
	off(w, span(l(4), r(3)))
	w.Ledger = shaping.Ledger{CastOn: 6, Increased: 1, Live: 7}
}

// onTwoNeedles works the strip in the hand, seen on the right side.
func onTwoNeedles(w *shaping.Work) { w.Place, w.Facing = shaping.Hand, shaping.KnitSide }

// Every action is accepted where it can be done and refused where it cannot.
func TestActions(t *testing.T) {
	can, not := bed.ErrImpossible, bed.ErrUntrue
	for _, c := range []struct {
		name   string
		change func(w *shaping.Work)
		kind   error // nil: accepted
		row    int
		needle shaping.Needle
	}{
		{"plain", func(*shaping.Work) {}, nil, 0, 0},
		{"plain in the hand", onTwoNeedles, nil, 0, 0},
		{"castOn twice", func(w *shaping.Work) { before(w, 2, do(shaping.DoCastOn, sixWide)) }, can, 2, l(3)},
		{"castOn other needles than the panel's", func(w *shaping.Work) { w.Rows[0].Before[0].Needles = span(l(2), r(3)) }, not, 1, l(2)},
		{"nothing cast on", func(w *shaping.Work) { w.Rows[0].Before = nil }, can, 1, 0},

		{"hold where the row ends", heldAndWrapped, nil, 0, 0},
		{"hold where the row starts", func(w *shaping.Work) {
			before(w, 2, do(shaping.DoHold, one(l(3))))
			edge(w, 2, -1, shaping.Hold)
			knits(w, 2, span(l(2), r(3)))
		}, can, 2, l(3)},
		{"hold after a row", func(w *shaping.Work) { after(w, 1, do(shaping.DoHold, one(l(3)))) }, can, 1, l(3)},
		{"hold inside the edge", func(w *shaping.Work) { before(w, 1, do(shaping.DoHold, one(l(2)))) }, can, 1, l(2)},
		{"hold everything", func(w *shaping.Work) { before(w, 1, do(shaping.DoHold, sixWide)) }, can, 1, l(3)},
		{"hold twice", func(w *shaping.Work) { heldAndWrapped(w); before(w, 3, do(shaping.DoHold, one(l(3)))) }, can, 3, l(3)},
		{"hold an empty needle", func(w *shaping.Work) { before(w, 3, do(shaping.DoHold, one(l(4)))) }, can, 3, l(4)},
		{"hold that the schedule does not have", func(w *shaping.Work) { heldAndWrapped(w); w.Panels[0].Left = nil }, not, 1, 0},
		{"hold that the schedule bounds off", func(w *shaping.Work) { heldAndWrapped(w); edge(w, 1, -1, shaping.BindOff) }, not, 1, 0},

		{"wrap twice", func(w *shaping.Work) { heldAndWrapped(w); after(w, 1, do(shaping.DoWrap, one(l(3)))) }, nil, 0, 0},
		{"wrap again at a later turn", func(w *shaping.Work) { heldAndWrapped(w); after(w, 3, do(shaping.DoWrap, one(l(3)))) }, nil, 0, 0},
		{"wrap missing", hold, can, 1, l(3)},
		{"wrap too late", func(w *shaping.Work) { hold(w); after(w, 3, do(shaping.DoWrap, one(l(3)))) }, can, 1, l(3)},
		{"wrap before a row", func(w *shaping.Work) { hold(w); before(w, 1, do(shaping.DoWrap, one(l(3)))) }, can, 1, l(3)},
		{"wrap a needle in work", func(w *shaping.Work) { after(w, 1, do(shaping.DoWrap, one(l(3)))) }, can, 1, l(3)},
		{"wrap where no row turns", func(w *shaping.Work) { heldAndWrapped(w); after(w, 2, do(shaping.DoWrap, one(l(3)))) }, can, 2, l(3)},
		{"wrap two needles", func(w *shaping.Work) { after(w, 1, do(shaping.DoWrap, span(l(3), l(2)))) }, not, 1, l(3)},

		{"return", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 3, do(shaping.DoReturn, one(l(3))))
			knits(w, 3, sixWide)
		}, nil, 0, 0},
		{"return after a row", func(w *shaping.Work) {
			heldAndWrapped(w)
			after(w, 2, do(shaping.DoReturn, one(l(3))))
			knits(w, 3, sixWide)
		}, nil, 0, 0},
		{"return where the next row would start", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 2, do(shaping.DoReturn, one(l(3))))
			knits(w, 2, sixWide)
		}, can, 2, l(2)},
		{"return instead of a wrap", func(w *shaping.Work) { hold(w); after(w, 1, do(shaping.DoReturn, one(l(3)))) }, can, 1, l(3)},
		{"return with a held needle between", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 3, do(shaping.DoHold, one(l(2))), do(shaping.DoReturn, one(l(3))))
			w.Panels[0].Left = shaping.Schedule{
				{Row: 1, Stitches: -1, Method: shaping.Hold}, {Row: 3, Stitches: -1, Method: shaping.Hold},
			}
			knits(w, 3, sixWide)
		}, can, 3, l(2)},
		{"return what is not held", func(w *shaping.Work) { before(w, 3, do(shaping.DoReturn, one(l(3)))) }, can, 3, l(3)},
		{"return and say otherwise", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 3, do(shaping.DoReturn, one(l(3))))
		}, not, 3, l(3)},

		{"waste what is held", func(w *shaping.Work) {
			heldAndWrapped(w)
			after(w, 2, do(shaping.DoWaste, one(l(3))))
			off(w, span(l(2), r(3)))
		}, nil, 0, 0},
		{"waste in the middle", func(w *shaping.Work) { after(w, 2, do(shaping.DoWaste, one(l(3)))) }, can, 2, l(3)},
		{"waste an empty needle", func(w *shaping.Work) { off(w, span(l(4), r(3))) }, can, 4, l(4)},
		{"waste not all at the right", func(w *shaping.Work) { off(w, span(l(3), r(2))) }, can, 0, r(3)},
		{"waste not all", func(w *shaping.Work) { off(w, span(l(2), r(3))) }, can, 0, l(3)},

		{"bindOff where the row starts", boundOff, nil, 0, 0},
		{"bindOff where the row ends", func(w *shaping.Work) { before(w, 2, do(shaping.DoBindOff, one(r(3)))) }, can, 2, r(3)},
		{"bindOff after a row", func(w *shaping.Work) { after(w, 1, do(shaping.DoBindOff, one(l(3)))) }, can, 1, l(3)},
		{"bindOff everything before a row", func(w *shaping.Work) { before(w, 2, do(shaping.DoBindOff, sixWide)) }, can, 2, l(3)},
		{"bindOff an empty needle", func(w *shaping.Work) { before(w, 2, do(shaping.DoBindOff, one(l(4)))) }, can, 2, l(4)},
		{"bindOff after the last row", func(w *shaping.Work) {
			w.Rows[3].After[0].Do = shaping.DoBindOff
			w.Ledger = shaping.Ledger{CastOn: 6, BoundOff: 6}
		}, nil, 0, 0},
		{"bindOff inside a held stitch", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 2, do(shaping.DoReturn, one(l(3))), do(shaping.DoBindOff, one(l(3))))
		}, can, 2, l(2)},
		{"bindOff in the panel with separate yarn", func(w *shaping.Work) {
			before(w, 2, shaping.Action{Do: shaping.DoBindOff, Needles: one(l(3)), Separate: true})
		}, not, 2, l(3)},
		{"bindOff nothing with separate yarn", func(w *shaping.Work) {
			before(w, 2, shaping.Action{Do: shaping.DoBindOff, Needles: one(l(4)), Separate: true})
		}, can, 2, l(4)},

		{"castOnEdge where the row starts", func(w *shaping.Work) {
			before(w, 2, do(shaping.DoCastOnEdge, span(l(5), l(4))))
			edge(w, 2, 2, shaping.CastOn)
			knits(w, 2, span(l(5), r(3)))
			off(w, span(l(5), r(3)))
			w.Ledger = shaping.Ledger{CastOn: 8, Live: 8}
		}, nil, 0, 0},
		{"castOnEdge where the row ends", func(w *shaping.Work) { before(w, 2, do(shaping.DoCastOnEdge, one(r(4)))) }, can, 2, r(4)},
		{"castOnEdge with a gap", func(w *shaping.Work) { before(w, 2, do(shaping.DoCastOnEdge, one(l(5)))) }, can, 2, l(5)},
		{"castOnEdge after a row", func(w *shaping.Work) { after(w, 1, do(shaping.DoCastOnEdge, one(l(4)))) }, can, 1, l(4)},
		{"castOnEdge on a held needle", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 2, do(shaping.DoCastOnEdge, one(l(3))))
		}, can, 2, l(3)},

		{"shift inwards", func(w *shaping.Work) {
			before(w, 2, shift(span(l(3), l(1)), shaping.Right))
			edge(w, 2, -1, shaping.Fashioned)
			knits(w, 2, span(l(2), r(3)))
			off(w, span(l(2), r(3)))
			w.Ledger = shaping.Ledger{CastOn: 6, Decreased: 1, Live: 5}
		}, nil, 0, 0},
		{"shift inwards twice", func(w *shaping.Work) {
			before(w, 2, shift(one(l(3)), shaping.Right), shift(one(l(2)), shaping.Right))
			edge(w, 2, -2, shaping.Fashioned)
			knits(w, 2, span(l(1), r(3)))
			off(w, span(l(1), r(3)))
			w.Ledger = shaping.Ledger{CastOn: 6, Decreased: 2, Live: 4}
		}, nil, 0, 0},
		{"shift inwards three times", func(w *shaping.Work) {
			before(w, 2, shift(one(l(3)), shaping.Right), shift(one(l(2)), shaping.Right), shift(one(l(1)), shaping.Right))
		}, can, 2, r(1)},
		{"shift four", func(w *shaping.Work) { before(w, 2, shift(span(l(3), r(1)), shaping.Right)) }, can, 2, l(3)},
		{"shift inside the edge", func(w *shaping.Work) { before(w, 2, shift(span(l(2), l(1)), shaping.Right)) }, can, 2, l(2)},
		{"shift to no side", func(w *shaping.Work) { before(w, 2, shift(span(l(3), l(1)), 0)) }, not, 2, l(3)},
		{"shift after a row", func(w *shaping.Work) { after(w, 1, shift(span(l(3), l(1)), shaping.Right)) }, can, 1, l(3)},
		{"shift an empty needle", func(w *shaping.Work) { before(w, 2, shift(one(l(4)), shaping.Right)) }, can, 2, l(4)},
		{"shift onto a held needle", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 2, shift(span(l(2), l(1)), shaping.Left))
		}, can, 2, l(3)},

		{"fill", func(w *shaping.Work) { increased(w); before(w, 2, do(shaping.DoFill, one(l(1)))) }, nil, 0, 0},
		{"fill missing", increased, can, 2, l(1)},
		{"fill missing beside a held stitch", func(w *shaping.Work) {
			heldAndWrapped(w)
			before(w, 3, shift(span(r(1), r(3)), shaping.Right))
			w.Panels[0].Right = shaping.Schedule{{Row: 3, Stitches: 1, Method: shaping.Fashioned}}
			knits(w, 3, span(l(2), r(4)))
		}, can, 3, r(1)},
		{"fill a needle with a stitch", func(w *shaping.Work) { before(w, 2, do(shaping.DoFill, one(l(1)))) }, can, 2, l(1)},
		{"fill a needle out of work", func(w *shaping.Work) { before(w, 2, do(shaping.DoFill, one(l(4)))) }, can, 2, l(4)},
		{"two methods at one edge", func(w *shaping.Work) {
			before(w, 2, do(shaping.DoBindOff, one(l(3))), shift(one(l(2)), shaping.Right))
		}, not, 2, 0},

		{"carriage", func(w *shaping.Work) {
			before(w, 3, shaping.Action{Do: shaping.DoCarriage, Side: shaping.Left})
			w.Rows[2].From, w.Rows[3].From = shaping.Left, shaping.Right
		}, nil, 0, 0},
		{"carriage at the other side", func(w *shaping.Work) { before(w, 3, shaping.Action{Do: shaping.DoCarriage, Side: shaping.Left}) }, can, 3, 0},
		{"carriage to no side", func(w *shaping.Work) { before(w, 3, shaping.Action{Do: shaping.DoCarriage}) }, not, 3, 0},
		{"carriage in the hand", func(w *shaping.Work) {
			onTwoNeedles(w)
			before(w, 3, shaping.Action{Do: shaping.DoCarriage, Side: shaping.Right})
		}, can, 3, 0},
		{"counter", func(w *shaping.Work) { before(w, 3, shaping.Action{Do: shaping.DoCounter, Counter: 2}) }, nil, 0, 0},
		{"counter at the beginning", func(w *shaping.Work) { before(w, 1, shaping.Action{Do: shaping.DoCounter}) }, nil, 0, 0},
		{"counter at another row", func(w *shaping.Work) { before(w, 3, shaping.Action{Do: shaping.DoCounter, Counter: 3}) }, not, 3, 0},
		{"counter below 0", func(w *shaping.Work) { before(w, 3, shaping.Action{Do: shaping.DoCounter, Counter: -1}) }, can, 3, 0},
		{"counter in the hand", func(w *shaping.Work) {
			onTwoNeedles(w)
			before(w, 3, shaping.Action{Do: shaping.DoCounter, Counter: 2})
		}, can, 3, 0},

		{"no action", func(w *shaping.Work) { before(w, 3, do(0, one(l(3)))) }, not, 3, 0},
		{"an action on no needles", func(w *shaping.Work) { before(w, 3, do(shaping.DoHold, shaping.Span{})) }, not, 3, 0},
		{"wrong side in the hand", func(w *shaping.Work) { onTwoNeedles(w); w.Facing = shaping.PurlSide }, can, 1, 0},
		{"row from no side", func(w *shaping.Work) { w.Rows[2].From = 0 }, not, 3, 0},
		{"needle beyond the highest", func(w *shaping.Work) { w.Rows[2].Knit = span(l(shaping.MaxNeedle+1), r(3)) }, not, 0, 0},
		{"moved beyond the highest", func(w *shaping.Work) { before(w, 2, shift(one(l(shaping.MaxNeedle)), shaping.Left)) }, not, 0, 0},
		{"neither bed nor hand", func(w *shaping.Work) { w.Place = 0 }, not, 0, 0},
		{"no facing", func(w *shaping.Work) { w.Facing = 0 }, not, 0, 0},
		{"no panels", func(w *shaping.Work) { w.Panels = nil }, not, 0, 0},
		{"a row too many", func(w *shaping.Work) {
			w.Rows = append(w.Rows, shaping.Row{Row: 5, Panel: shaping.Body, From: shaping.Right, Knit: sixWide})
		}, not, 5, 0},
		{"a row too few", func(w *shaping.Work) { w.Rows = w.Rows[:3] }, not, 3, 0},
		{"too many rows", func(w *shaping.Work) { w.Rows = make([]shaping.Row, shaping.MaxRows+1) }, not, 0, 0},
		{"another ledger", func(w *shaping.Work) { w.Ledger.Live = 5 }, not, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := six()
			c.change(&w)
			_, err := bed.Knit(w)
			if c.kind == nil {
				if err != nil {
					t.Fatal(err)
				}
				return
			}
			got := asRefusal(t, err)
			if got.Row != c.row || got.Needle != c.needle || !errors.Is(got, c.kind) {
				t.Errorf("row %d, needle %v: %v; want row %d, needle %v, %v", got.Row, got.Needle, got, c.row, c.needle, c.kind)
			}
		})
	}
}

// Stitches between two halves are bound off with a yarn of their own, and what is
// said about the halves is compared with the needles.
func TestSplit(t *testing.T) {
	w := plan(t, outline(worked.ArmholeFront(), order.BoundOff, order.OnWaste))
	knit(t, w)
	first := slices.IndexFunc(w.Rows, func(row shaping.Row) bool { return row.Panel == shaping.RightHalf })
	for _, c := range []struct {
		name   string
		change func(w *shaping.Work)
		kind   error
		row    int
		needle shaping.Needle
	}{
		{"centre bound off with the working yarn", func(w *shaping.Work) { w.Rows[first].Before[0].Separate = false }, bed.ErrImpossible, 31, l(5)},
		{"centre bound off into the half", func(w *shaping.Work) { w.Rows[first].Before[0].Needles.Last = r(6) }, bed.ErrUntrue, 31, l(5)},
		{"the other half bound off too", func(w *shaping.Work) { w.Rows[first].Before[0].Needles.First = l(6) }, bed.ErrImpossible, 31, l(6)},
		{"held partly in the panel", func(w *shaping.Work) { w.Rows[first].Before[1].Needles.Last = r(6) }, bed.ErrImpossible, 31, l(5)},
		{"left half never worked", func(w *shaping.Work) {
			w.Rows = slices.DeleteFunc(w.Rows, func(row shaping.Row) bool { return row.Panel == shaping.LeftHalf })
		}, bed.ErrUntrue, 0, 0},
		{"back to the body", func(w *shaping.Work) { w.Rows[first+1].Panel = shaping.Body }, bed.ErrUntrue, 31, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := w.Clone()
			c.change(&w)
			_, err := bed.Knit(w)
			got := asRefusal(t, err)
			if got.Row != c.row || got.Needle != c.needle || !errors.Is(got, c.kind) {
				t.Errorf("row %d, needle %v: %v; want row %d, needle %v, %v", got.Row, got.Needle, got, c.row, c.needle, c.kind)
			}
		})
	}
	// A half that claims a stitch of the middle, which stays on hold, is not true.
	tiny := worked.TinyWork()
	tiny.Panels[2].Needles.Last = l(2)
	_, err := bed.Knit(tiny)
	if got := asRefusal(t, err); !errors.Is(got, bed.ErrUntrue) || got.Panel != shaping.LeftHalf || got.Row != 7 {
		t.Errorf("a half said to be one needle wider: %v", got)
	}
}

// shortRows returns a back of 63 stitches in the hand, whose last rows leave 7,
// then 13, then 19 stitches at each end, and are then closed.
func shortRows() shaping.Work {
	const straight = 10
	w := shaping.Work{
		Name: "back", Place: shaping.Hand, Facing: shaping.KnitSide, Ledger: shaping.Ledger{CastOn: 63, Live: 63},
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: straight + 8, Needles: shaping.Centred(63)}},
	}
	body := &w.Panels[0]
	run := body.Needles
	for number := 1; number <= body.LastRow; number++ {
		row := shaping.Row{Row: number, Panel: shaping.Body, From: shaping.Right}
		if number%2 == 0 {
			row.From = shaping.Left
		}
		end := row.From.Opposite()
		switch k := number - straight - 1; {
		case number == 1:
			row.Before = []shaping.Action{do(shaping.DoCastOn, run)}
		case k >= 0 && k < 6:
			size := []int{7, 6, 6}[k/2]
			gone := run.Edge(end, size)
			run = run.Moved(end, -size)
			row.Before = []shaping.Action{do(shaping.DoHold, gone)}
			row.After = []shaping.Action{do(shaping.DoWrap, run.Beyond(end, 1))}
			step := shaping.Step{Row: number, Stitches: -size, Method: shaping.Hold}
			if end == shaping.Left {
				body.Left = append(body.Left, step)
			} else {
				body.Right = append(body.Right, step)
			}
		case k >= 6:
			row.Before = []shaping.Action{do(shaping.DoReturn, run.Beyond(end, 19))}
			run = run.Moved(end, 19)
		}
		row.Knit = run
		w.Rows = append(w.Rows, row)
	}
	last := &w.Rows[len(w.Rows)-1]
	last.After = append(last.After, do(shaping.DoWaste, run))
	return w
}

// Another habit: the larger group of a shoulder first. The needles are numbered
// and the rows before the shoulder shortened here; the row that closes the
// shoulder is taken for two, one to each end. Source: Handbook of Wool Knitting and
// Crochet, 1918, "A serviceable sweater", back of 63 stitches, rows 177 to 183.
func TestShoulderLargerGroupFirst(t *testing.T) {
	cloth := knit(t, shortRows())
	middle := 0
	for n, height := range cloth.Wales() {
		switch {
		case height == 18:
			middle++
		case height > 18 || height < 12:
			t.Errorf("wale %v is %d high", n, height)
		}
	}
	if middle != 25 { // 63 less two shoulders of 19
		t.Errorf("%d stitches between the shoulders, want 25", middle)
	}
}

// The ledger balances at every course of every piece, and at every panel.
func TestLedgerBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := plan(t, gen.Outline().Draw(t, "outline"))
		cloth := knit(t, w)
		courses, loops := 0, 0
		for c := range cloth.Courses() {
			courses++
			loops += c.Needles.Len()
			if !c.Ledger.Balances() {
				t.Fatalf("row %d: %v", c.Row, c.Ledger)
			}
		}
		if courses != cloth.Rows() || loops != cloth.Loops() {
			t.Fatalf("%d courses of %d loops, want %d of %d", courses, loops, cloth.Rows(), cloth.Loops())
		}
		sum := shaping.Ledger{}
		for _, p := range w.Panels {
			got, ok := cloth.PanelLedger(p.Name)
			if !ok || !got.Balances() {
				t.Fatalf("%s: %v", p.Name, got)
			}
			want := p.Ledger()
			if top := w.Rows[lastRow(w, p.Name)].After; len(top) > 0 && top[0].Do == shaping.DoBindOff {
				want.BoundOff += top[0].Needles.Len()
				want.Live -= top[0].Needles.Len()
			}
			if got != want {
				t.Fatalf("%s: counted %v, its schedules say %v", p.Name, got, want)
			}
			sum.Increased += got.Increased
			sum.Decreased += got.Decreased
		}
		if total := cloth.Ledger(); total.Increased != sum.Increased || total.Decreased != sum.Decreased {
			t.Fatalf("the piece has %v, its panels together %v", total, sum)
		}
	})
}

func lastRow(w shaping.Work, panel string) int {
	last := 0
	for i, row := range w.Rows {
		if row.Panel == panel {
			last = i
		}
	}
	return last
}

func TestZeroValues(t *testing.T) {
	var c bed.Cloth
	for range c.Wales() {
		t.Error("a wale")
	}
	for range c.Courses() {
		t.Error("a course")
	}
	for range c.Wraps() {
		t.Error("a wrap")
	}
	if _, ok := c.PanelLedger(shaping.Body); ok || !c.Needles().IsEmpty() || c.Height(r(1)) != 0 || c.Height(0) != 0 ||
		c.Rows() != 0 || c.Loops() != 0 || c.Ledger() != (shaping.Ledger{}) {
		t.Error("no cloth has something")
	}
	if !c.Equal(bed.Cloth{}) || c.Equal(knit(t, six())) {
		t.Error("no cloth is like some, or unlike itself")
	}
	_, err := bed.Knit(shaping.Work{})
	if got := asRefusal(t, err); !errors.Is(got, bed.ErrUntrue) {
		t.Errorf("no work: %v", got)
	}
	if text := (&bed.Refusal{Reason: "why"}).Error(); text != "piece without a name: why" {
		t.Errorf("got %q", text)
	}
	if text := (&bed.Refusal{Piece: "front", Panel: "body", Row: 7, Needle: l(2), Reason: "why"}).Error(); text != "front, body, row 7, needle L2: why" {
		t.Errorf("got %q", text)
	}
}

// Ranging stops when asked, and the work that is judged stays as it was.
func TestRanging(t *testing.T) {
	w := worked.TinyWork()
	cloth := knit(t, w)
	if diff := cmp.Diff(worked.TinyWork(), w); diff != "" {
		t.Errorf("the work was changed (-want +got):\n%s", diff)
	}
	for n, height := range cloth.Wales() {
		if n != l(10) || height != 10 {
			t.Errorf("first wale %v, %d high", n, height)
		}
		break
	}
	want := []bed.Wrap{
		{Row: 7, Panel: shaping.RightHalf, Needle: r(4)}, {Row: 9, Panel: shaping.RightHalf, Needle: r(5)}, {Row: 10, Panel: shaping.RightHalf, Needle: r(9)},
		{Row: 7, Panel: shaping.LeftHalf, Needle: l(4)}, {Row: 9, Panel: shaping.LeftHalf, Needle: l(5)}, {Row: 10, Panel: shaping.LeftHalf, Needle: l(9)},
	}
	if diff := cmp.Diff(want, slices.Collect(cloth.Wraps())); diff != "" {
		t.Errorf("wraps (-want +got):\n%s", diff)
	}
	if cloth.Height(math.MaxInt) != 0 || cloth.Height(math.MinInt) != 0 {
		t.Error("a needle that is none has a height")
	}
}
