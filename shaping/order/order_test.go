package order_test

import (
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/worked"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// The planned tiny front is the one written out by hand.
func TestTinyFront(t *testing.T) {
	if diff := cmp.Diff(worked.TinyWork(), plan(t, worked.TinyFront(), shaping.Right)); diff != "" {
		t.Errorf("(-by hand +planned):\n%s", diff)
	}
}

// fataler is what *testing.T and *rapid.T have in common.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// needReflection fails unless the second half's rows are the reflection of the
// first's, but for what leads over from one to the other and what clears the bed.
func needReflection(t fataler, w shaping.Work) {
	t.Helper()
	axis := mirror.AxisFor(w.Panels[0].Needles.Len())
	halves := [2][]shaping.Row{}
	for _, row := range w.Rows {
		switch row.Panel {
		case w.Panels[1].Name:
			halves[0] = append(halves[0], axis.Row(row))
		case w.Panels[2].Name:
			halves[1] = append(halves[1], row)
		}
	}
	for _, rows := range &halves {
		for i := range rows {
			switch i {
			case 0:
				rows[i].Before = only(rows[i].Before, w.Panels[2])
			case len(rows) - 1:
				rows[i].After = rows[i].After[:1]
			}
		}
		if len(rows) == 1 {
			rows[0].After = rows[0].After[:1]
		}
	}
	if diff := cmp.Diff(halves[0], halves[1], cmp.FilterValues(bothEmpty, cmp.Ignore())); diff != "" {
		t.Fatalf("(-first half reflected +second half):\n%s", diff)
	}
}

// needLater fails unless every needle of the half knitted second in the hand knits as
// many rows of it as its reflection does in the first, or one row more.
func needLater(t fataler, w shaping.Work, cloth bed.Cloth) {
	t.Helper()
	axis := mirror.AxisFor(w.Panels[0].Needles.Len())
	first, second := w.Panels[1], w.Panels[2]
	rows := map[shaping.Needle][2]int{}
	for course := range cloth.Courses() {
		for n := range course.Needles.All() {
			switch course.Panel {
			case first.Name:
				r := rows[n]
				rows[n] = [2]int{r[0] + 1, r[1]}
			case second.Name:
				r := rows[axis.Needle(n)]
				rows[axis.Needle(n)] = [2]int{r[0], r[1] + 1}
			}
		}
	}
	for n, r := range rows {
		if more := r[1] - r[0]; more < 0 || more > second.LastRow-first.LastRow {
			t.Fatalf("%v knits %d rows of its half, its reflection %d; the halves end with rows %d and %d", n, r[0], r[1], first.LastRow, second.LastRow)
		}
	}
}

func bothEmpty(a, b []shaping.Action) bool { return len(a) == 0 && len(b) == 0 }

// only returns the actions of a half's first row that are the half's own: those
// that its schedules ask for.
func only(actions []shaping.Action, half shaping.Panel) []shaping.Action {
	own := 0
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		if step, ok := half.Steps(edge).At(half.FirstRow); ok {
			if step.Method == shaping.Fashioned && step.Stitches < 0 {
				own -= step.Stitches
			} else {
				own++
			}
		}
	}
	return actions[len(actions)-own:]
}

func TestHalvesAreReflections(t *testing.T) {
	for _, side := range []shaping.Side{shaping.Right, shaping.Left} {
		for _, panels := range []shaping.Tree{worked.TinyFront(), worked.HandFront(), worked.HandFrontBoundOff(), worked.ArmholeFront()} {
			if side == shaping.Left {
				panels = mirror.AxisFor(panels[0].Needles.Len()).Tree(panels)
			}
			w := plan(t, panels, side)
			if w.Rows[0].From != side || w.Panels[1].Name != map[shaping.Side]string{shaping.Left: shaping.LeftHalf, shaping.Right: shaping.RightHalf}[side] {
				t.Errorf("carriage %v: row 1 from %v, first %s", side, w.Rows[0].From, w.Panels[1].Name)
			}
			needReflection(t, w)
			if _, err := bed.Knit(w); err != nil {
				t.Errorf("carriage %v: %v", side, err)
			}
		}
	}
}

// The work of a reflected outline is the reflected work.
func TestReflectedOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := gen.Outline().Draw(t, "outline")
		if o.Place == shaping.Hand {
			return // a reflected work in the hand starts at the wrong side
		}
		work, err := order.Arrange(o)
		if err != nil {
			t.Fatal(err)
		}
		o.Panels, o.Carriage = mirror.AxisFor(o.Panels[0].Needles.Len()).Tree(o.Panels), o.Carriage.Opposite()
		got, err := order.Arrange(o)
		if err != nil {
			t.Fatal(err)
		}
		want := mirror.Work(work)
		for _, w := range []shaping.Work{want, got} { // what waits goes to waste from left to right
			strips := w.Rows[len(w.Rows)-1].After[1:]
			slices.SortFunc(strips, func(a, b shaping.Action) int { return a.Needles.First.Index() - b.Needles.First.Index() })
		}
		if diff := cmp.Diff(want, got, cmp.FilterValues(bothEmpty, cmp.Ignore()),
			cmp.FilterValues(func(a, b shaping.Schedule) bool { return len(a)+len(b) == 0 }, cmp.Ignore())); diff != "" {
			t.Fatalf("(-reflected work +work of the reflected outline):\n%s", diff)
		}
	})
}

// Whatever can be worked is planned so that the judge accepts it, nothing is left
// on the needles, and the ledger is the one of the panels.
func TestPlansAreKnitted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := gen.Outline().Draw(t, "outline")
		w, err := order.Arrange(o)
		if err != nil {
			t.Fatal(err)
		}
		cloth, err := bed.Knit(w)
		if err != nil {
			t.Fatal(err)
		}
		if cloth.Ledger() != w.Ledger || cloth.Rows() != o.Panels.Rows() {
			t.Fatalf("%v in %d rows, promised %v in %d", cloth.Ledger(), cloth.Rows(), w.Ledger, o.Panels.Rows())
		}
		want, err := o.Panels.Ledger()
		if err != nil {
			t.Fatal(err)
		}
		if o.Top == order.OnWaste && o.Centre == order.OnWaste && w.Ledger != want {
			t.Fatalf("ledger %v, the panels have %v", w.Ledger, want)
		}
		if got := w.Ledger.Live + w.Ledger.BoundOff; got != want.Live+want.BoundOff {
			t.Fatalf("%d live or bound off, the panels have %d", got, want.Live+want.BoundOff)
		}
		if o.Place == shaping.Bed {
			needReflection(t, w)
		} else {
			needLater(t, w, cloth)
		}
		again, err := order.Arrange(o)
		if err != nil || !cmp.Equal(w, again) {
			t.Fatalf("a second plan differs: %v", err)
		}
	})
}

// Any sound tree of panels is either planned so that the judge accepts it, or
// refused with an *Error: no plan is made that cannot be knitted.
func TestAnyTree(t *testing.T) {
	planned, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		all++
		endings := rapid.SampledFrom([]order.Ending{order.OnWaste, order.BoundOff})
		o := order.Outline{
			Name: "front", Place: shaping.Bed, Panels: gen.Tree().Draw(t, "tree"),
			Carriage: rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right}).Draw(t, "carriage"),
			Centre:   endings.Draw(t, "centre"), Top: endings.Draw(t, "top"),
		}
		w, err := order.Arrange(o)
		if err != nil {
			if e, ok := errors.AsType[*order.Error](err); !ok || e.Panel == "" || e.Row == 0 {
				t.Fatalf("error without a place: %v", err)
			}
			return
		}
		planned++
		if _, err := bed.Knit(w); err != nil {
			t.Fatal(err)
		}
	})
	const enough = 100 // in a short run it may be so
	if all >= enough && planned == 0 {
		t.Error("nothing was planned")
	}
}

// A step that falls on the row before or after the one its method can work at is
// refused with panel, row and edge.
func TestWrongPhase(t *testing.T) {
	refused := 0
	rapid.Check(t, func(t *rapid.T) {
		o := gen.Outline().Draw(t, "outline")
		i := rapid.IntRange(0, len(o.Panels)-1).Draw(t, "panel")
		edge := rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right}).Draw(t, "edge")
		steps := o.Panels[i].Steps(edge)
		if len(steps) == 0 {
			return
		}
		last := &steps[len(steps)-1]
		if last.Method == shaping.Fashioned || last.Row == o.Panels[i].LastRow {
			return
		}
		last.Row++
		_, err := order.Arrange(o)
		e, ok := errors.AsType[*order.Error](err)
		if !ok || !errors.Is(err, order.ErrOrder) || e.Panel != o.Panels[i].Name || e.Row != last.Row || e.Edge != edge {
			t.Fatalf("%s, row %d, %v edge: %v", o.Panels[i].Name, last.Row, edge, err)
		}
		refused++
	})
	if refused == 0 {
		t.Error("no step was out of phase")
	}
}

// Decreases at both edges of a narrow panel move no stitch twice.
func TestNarrowDecreases(t *testing.T) {
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for stitches := 3; stitches <= 12; stitches++ {
			for left := range 3 {
				for right := range 3 {
					if stitches-left-right < 2 {
						continue
					}
					p := shaping.Panel{Name: shaping.Body, FirstRow: 1, LastRow: 4, Needles: shaping.Centred(stitches)}
					if left > 0 {
						p.Left = shaping.Schedule{{Row: 3, Stitches: -left, Method: shaping.Fashioned}}
					}
					if right > 0 {
						p.Right = shaping.Schedule{{Row: 3, Stitches: -right, Method: shaping.Fashioned}}
					}
					w, err := order.Arrange(order.Outline{Name: "strip", Place: place, Carriage: shaping.Right, Panels: shaping.Tree{p}})
					if err != nil {
						t.Fatal(err)
					}
					moved := map[shaping.Needle]shaping.Side{}
					for _, a := range w.Rows[2].Before {
						for n := range a.Needles.Around(a.Needles.Beyond(a.Toward, 1)).All() {
							if toward, again := moved[n]; again && toward != a.Toward {
								t.Errorf("%v, %d stitches, %d and %d go: %v is moved from both edges", place, stitches, left, right, n)
							}
							moved[n] = a.Toward
						}
					}
					if _, err := bed.Knit(w); err != nil {
						t.Errorf("%v, %d stitches, %d and %d go: %v", place, stitches, left, right, err)
					}
				}
			}
		}
	}
}

// In the hand the stitch that a bind off leaves on the right needle cannot be worked
// together with others at the end of the row.
func TestDecreaseAfterBindOff(t *testing.T) {
	for stitches := 4; stitches <= 8; stitches++ {
		p := shaping.Panel{
			Name: shaping.Body, FirstRow: 1, LastRow: 4, Needles: shaping.Centred(stitches),
			Right: shaping.Schedule{{Row: 3, Stitches: -1, Method: shaping.BindOff}},
			Left:  shaping.Schedule{{Row: 3, Stitches: -1, Method: shaping.Fashioned}},
		}
		w, err := order.Arrange(order.Outline{Name: "strip", Place: shaping.Hand, Panels: shaping.Tree{p}})
		if err != nil {
			t.Fatal(err)
		}
		first := p.Needles.Moved(shaping.Right, -1).Last // left by the bind off
		for _, a := range w.Rows[2].Before {
			if a.Do == shaping.DoShift && a.Needles.Around(a.Needles.Beyond(a.Toward, 1)).Contains(first) {
				t.Errorf("%d stitches: %v works %v", stitches, a, first)
			}
		}
	}
}

// Every error that Arrange returns.
func TestErrors(t *testing.T) {
	strip := func(left ...shaping.Step) func(*order.Outline) {
		return func(o *order.Outline) {
			o.Panels = shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: 6, Needles: shaping.Centred(10), Left: left}}
		}
	}
	for _, c := range []struct {
		name   string
		change func(*order.Outline)
		want   string
		cause  error
	}{
		{"a carriage in the hand", func(o *order.Outline) { o.Place, o.Carriage = shaping.Hand, shaping.Left },
			"order: front: in the hand row 1 starts at the right; there is no carriage at the left", nil},
		{"both halves alike in the hand", func(o *order.Outline) { o.Place = shaping.Hand },
			"order: front, left half, row 7, right edge: the row starts here: stitches are held where a row ends, at row 6 or 8", nil},
		{"another ending", func(o *order.Outline) { o.Top = 7 },
			"order: front: endings on waste and Ending(7): stitches are left on waste yarn or bound off", nil},
		{"another ending of the middle", func(o *order.Outline) { o.Centre, o.Top = 2, order.BoundOff },
			"order: front: endings Ending(2) and bound off: stitches are left on waste yarn or bound off", nil},
		{"an outer edge that is no side", func(o *order.Outline) { o.Outer = 9 },
			"order: front: outer edge Side(9): it is the left or the right one, or left open", nil},
		{"a shoulder below row 1", func(o *order.Outline) { o.ShoulderRow = -1 },
			"order: front: shoulder from row -1: rows count from 1, and 0 leaves it open", nil},
		{"nowhere", func(o *order.Outline) { o.Place = 0 },
			"order: front: place Place(0): a piece is worked on the bed or in the hand", nil},
		{"nothing at all", func(o *order.Outline) { *o = order.Outline{} },
			"order: piece without a name: place Place(0): a piece is worked on the bed or in the hand", nil},
		{"no carriage", func(o *order.Outline) { o.Carriage = 0 },
			"order: front: the carriage stands left or right before row 1", nil},
		{"a shoulder that cannot come back", func(o *order.Outline) {
			o.Panels[1].Right = shaping.Schedule{{Row: 8, Stitches: -2, Method: shaping.Hold}, {Row: 9, Stitches: -1, Method: shaping.BindOff}}
		}, "order: front, right half, row 12, right edge: stitches of the shoulder on hold cannot come back: others between them and those in work are gone", nil},
		{"no panels", func(o *order.Outline) { o.Panels = nil },
			"order: front: piece without panels: at least a body", shaping.ErrInfeasible},
		{"a billion rows", func(o *order.Outline) { o.Panels[2].LastRow = 1_000_000_000 },
			"order: front: last row of panel left half 1000000000: a piece has at most 5000 rows", shaping.ErrRange},
		{"hold where the row starts", strip(shaping.Step{Row: 2, Stitches: -2, Method: shaping.Hold}),
			"order: front, body, row 2, left edge: the row starts here: stitches are held where a row ends, at row 1 or 3", nil},
		{"bind off where the row ends", strip(shaping.Step{Row: 3, Stitches: -2, Method: shaping.BindOff}),
			"order: front, body, row 3, left edge: the row ends here: stitches are bound off where a row starts, at row 2 or 4", nil},
		{"cast on where the row ends", strip(shaping.Step{Row: 3, Stitches: 2, Method: shaping.CastOn}),
			"order: front, body, row 3, left edge: the row ends here: stitches are cast on where a row starts, at row 2 or 4", nil},
		{"three decreases at once", strip(shaping.Step{Row: 3, Stitches: -3, Method: shaping.Fashioned}),
			"order: front, body, row 3, left edge: 3 stitches are decreased at once, at most 2 can be", nil},
		{"the other half first", func(o *order.Outline) { o.Panels[1], o.Panels[2] = o.Panels[2], o.Panels[1] },
			"order: front, left half, row 7: the yarn is at the right: the half on that side goes first", nil},
		{"nothing of the half at the yarn", func(o *order.Outline) { o.Panels[1].Needles.Last = shaping.R(9) },
			"order: front, right half, row 7, right edge: the yarn hangs at R10, which is not the panel's", nil},
		{"a half that is all on hold", func(o *order.Outline) {
			o.Panels[0].Left = shaping.Schedule{{Row: 5, Stitches: -8, Method: shaping.Hold}}
			o.Panels[2].Left = nil
		}, "order: front, left half, row 7: all its stitches are on hold already", nil},
		{"cast on over held stitches", strip(
			shaping.Step{Row: 1, Stitches: -2, Method: shaping.Hold}, shaping.Step{Row: 4, Stitches: 2, Method: shaping.CastOn}),
			"order: front, body, row 4, left edge: stitches are cast on at empty needles, L5 has a stitch", nil},
		{"increase over held stitches", strip(
			shaping.Step{Row: 1, Stitches: -2, Method: shaping.Hold}, shaping.Step{Row: 4, Stitches: 1, Method: shaping.Fashioned}),
			"order: front, body, row 4, left edge: stitches are moved out to empty needles, L4 has a stitch", nil},
		{"increase of the only stitch away from the yarn", func(o *order.Outline) {
			strip(shaping.Step{Row: 3, Stitches: 1, Method: shaping.Fashioned})(o)
			o.Panels[0].Needles = shaping.Centred(1)
		}, "order: front, body, row 3, left edge: the only stitch in work cannot be moved away from where the row starts", nil},
		{"closing row where it would start", func(o *order.Outline) { o.Panels[1].LastRow = 11 },
			"order: front, right half, row 11, right edge: the closing row would start here: it ends here, as row 10 or 12", nil},
		{"everything goes", func(o *order.Outline) {
			o.Panels[1].Right = shaping.Schedule{{Row: 10, Stitches: -5, Method: shaping.Hold}}
		}, "order: front: panel right half row 10: a panel keeps at least one stitch in work", shaping.ErrInfeasible},
		{"the near edge goes before the far one comes", func(o *order.Outline) {
			o.Panels = shaping.Tree{{
				Name: shaping.Body, FirstRow: 1, LastRow: 6, Needles: shaping.Centred(4),
				Left:  shaping.Schedule{{Row: 2, Stitches: -4, Method: shaping.BindOff}},
				Right: shaping.Schedule{{Row: 2, Stitches: 1, Method: shaping.Fashioned}},
			}}
		}, "order: front, body, row 2, left edge: 4 stitches go, 4 are in work: a panel keeps at least one", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := order.Outline{Name: "front", Place: shaping.Bed, Carriage: shaping.Right, Panels: worked.TinyFront()}
			c.change(&o)
			w, err := order.Arrange(o)
			if err == nil || err.Error() != c.want {
				t.Fatalf("got %v\nwant %s", err, c.want)
			}
			if _, ok := errors.AsType[*order.Error](err); !ok || !errors.Is(err, order.ErrOrder) {
				t.Errorf("%v is no *order.Error", err)
			}
			if c.cause != nil && !errors.Is(err, c.cause) {
				t.Errorf("%v does not wrap %v", err, c.cause)
			}
			if !cmp.Equal(w, shaping.Work{}) {
				t.Errorf("a work beside the error: %v", w)
			}
		})
	}
}

// What a piece gained at its edges and holds to the end is cleared too.
func TestHeldOnNewNeedles(t *testing.T) {
	w := plan(t, worked.FlaredStrip(), shaping.Right)
	cloth, err := bed.Knit(w)
	if err != nil {
		t.Fatal(err)
	}
	want := shaping.Ledger{CastOn: 18, Increased: 4, Decreased: 3, Live: 19}
	if cloth.Ledger() != want {
		t.Errorf("ledger %v, want %v", cloth.Ledger(), want)
	}
}

// The work has panels of its own.
func TestPanelsAreTheWorksOwn(t *testing.T) {
	o := order.Outline{Name: "front", Place: shaping.Bed, Carriage: shaping.Right, Panels: worked.TinyFront()}
	w, err := order.Arrange(o)
	if err != nil {
		t.Fatal(err)
	}
	before := w.Clone()
	o.Panels[1].Name, o.Panels[1].Left[0].Row = "yoke", 8
	if diff := cmp.Diff(before, w); diff != "" {
		t.Errorf("changed with its outline (-before +after):\n%s", diff)
	}
}
