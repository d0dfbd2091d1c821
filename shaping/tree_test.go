package shaping_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
)

// edges returns a schedule of one method from pairs of row and stitches.
func edges(m shaping.Method, pairs ...int) shaping.Schedule {
	var s shaping.Schedule
	for i := 0; i < len(pairs); i += 2 {
		s = append(s, shaping.Step{Row: pairs[i], Stitches: pairs[i+1], Method: m})
	}
	return s
}

// span is a span by the names of its ends.
func span(first, last string) shaping.Span {
	return shaping.Span{First: shaping.MustParseNeedle(first), Last: shaping.MustParseNeedle(last)}
}

// Two necks of 32 stitches, front and back of the same garment. The source gives
// the middle and the steps; the outline around them is assumed: 76 stitches, so
// shoulders of 22, which slope over 4 rows; the neck is bound off, the right half
// first, and the shoulder held.
// Source: knitting handbook, English edition, zanotowane.pl/713/7786 (the last
// figure of the back is blurred in the scan and fixed by the sum).
func TestPublishedNecksClose(t *testing.T) {
	const stitches, neck, firstRow = 76, 32, 101
	for _, c := range []struct {
		name   string
		middle int
		steps  []int
	}{
		{"front", 12, []int{3, 2, 2, 1, 1, 1}},
		{"back", 20, []int{4, 2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var neckEdge shaping.Schedule
			for i, n := range c.steps {
				neckEdge = append(neckEdge, shaping.Step{Row: firstRow + 1 + 2*i, Stitches: -n, Method: shaping.BindOff})
			}
			groups, err := shaping.ShoulderGroups((stitches-neck)/2, 4)
			if err != nil {
				t.Fatal(err)
			}
			lastRow := firstRow + 20
			shoulder := edges(shaping.Hold, lastRow-4, -groups[0], lastRow-2, -groups[1])
			half := (stitches - c.middle) / 2
			body := shaping.Centred(stitches)
			tree := shaping.Tree{
				{Name: shaping.Body, FirstRow: 1, LastRow: firstRow - 1, Needles: body},
				{
					Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: firstRow, LastRow: lastRow,
					Needles: body.Edge(shaping.Right, half), Left: neckEdge, Right: shoulder,
				},
				{
					Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: firstRow, LastRow: lastRow,
					Needles: body.Edge(shaping.Left, half), Left: shoulder, Right: neckEdge,
				},
			}
			got, err := tree.Ledger()
			if err != nil {
				t.Fatal(err)
			}
			taken := sum(c.steps)
			if c.middle+2*taken != neck {
				t.Errorf("the neck is %d wide", c.middle+2*taken)
			}
			// Live: both shoulders of 22 and the middle, which waits for the band.
			if want := (shaping.Ledger{CastOn: stitches, BoundOff: 2 * taken, Live: 2*22 + c.middle}); got != want {
				t.Errorf("ledger %v, want %v", got, want)
			}
			for _, p := range tree[1:] {
				if last := p.InWork(lastRow).Len(); last != groups[2] {
					t.Errorf("%s ends on %d stitches, want %d", p.Name, last, groups[2])
				}
			}
		})
	}
}

// count accounts for a tree stitch by stitch on a bed of needles: it knows the
// methods and nothing of schedules, spans and ledgers.
func count(tree shaping.Tree) shaping.Ledger {
	var l shaping.Ledger
	loops := map[int]bool{}
	for _, p := range tree {
		first, last := p.Needles.First.Index(), p.Needles.Last.Index()
		if p.Parent == "" {
			for i := first; i <= last; i++ {
				loops[i] = true
				l.CastOn++
			}
		}
		for row := p.FirstRow; row <= p.LastRow; row++ {
			for _, edge := range []struct {
				steps shaping.Schedule
				end   *int
				out   int
			}{{p.Left, &first, -1}, {p.Right, &last, 1}} {
				for _, step := range edge.steps {
					if step.Row != row {
						continue
					}
					for range max(step.Stitches, 0) {
						*edge.end += edge.out
						loops[*edge.end] = true
						if step.Method == shaping.CastOn {
							l.CastOn++
						} else {
							l.Increased++
						}
					}
					for range max(-step.Stitches, 0) {
						switch step.Method {
						case shaping.BindOff:
							delete(loops, *edge.end)
							l.BoundOff++
						case shaping.Fashioned:
							delete(loops, *edge.end)
							l.Decreased++
						}
						*edge.end -= edge.out
					}
				}
			}
		}
	}
	l.Live = len(loops)
	return l
}

func TestTreeTotals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tree := gen.Tree().Draw(t, "tree")
		got, err := tree.Ledger()
		if err != nil {
			t.Fatal(err)
		}
		if !got.Balances() || got.Balance() != 0 {
			t.Fatalf("%v is out by %d", got, got.Balance())
		}
		if want := count(tree); got != want {
			t.Fatalf("ledger %v, counted %v", got, want)
		}
		// What the last panels hold, what the splits left behind, and what is gone
		// make what came.
		leaves, leftBehind, gone, came := 0, 0, 0, 0
		for _, p := range tree {
			l := p.Ledger()
			if !l.Balances() {
				t.Fatalf("panel %s: %v", p.Name, l)
			}
			gone += l.BoundOff + l.Decreased
			came += l.CastOn + l.Increased
			if p.Parent != "" {
				came -= p.Needles.Len()
			}
			children := 0
			split := false
			for _, child := range tree {
				if child.Parent == p.Name {
					split = true
					children += child.Needles.Len()
				}
			}
			if split {
				leftBehind += l.Live - children
			} else {
				leaves += l.Live
			}
		}
		if leaves+leftBehind+gone != came || leftBehind < 0 {
			t.Fatalf("%d in the last panels + %d left by splits + %d gone, but %d came", leaves, leftBehind, gone, came)
		}
		if came != got.CastOn+got.Increased || leaves+leftBehind != got.Live {
			t.Fatalf("%d came and %d are live: ledger %v", came, leaves+leftBehind, got)
		}
	})
}

func TestTreeRowsAndHeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tree := gen.Tree().Draw(t, "tree")
		rows, height := 0, 0
		for _, p := range tree {
			for row := p.FirstRow; row <= p.LastRow; row++ {
				rows++
				height = max(height, row)
				// Row by row the needles in work are those that the steps leave.
				want := p.Needles.Len() + p.Left.Through(row) + p.Right.Through(row)
				if got := p.InWork(row); got.Len() != want || !got.IsValid() {
					t.Fatalf("row %d: %v in work, want %d", row, got, want)
				}
			}
		}
		if tree.Rows() != rows || tree.Height() != height {
			t.Fatalf("%d rows, height %d; want %d, %d", tree.Rows(), tree.Height(), rows, height)
		}
	})
}

// What comes at one edge may make up for what goes at the other, even where more
// go than the panel began with.
func TestInWorkCountsBothEdges(t *testing.T) {
	p := shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: 10, Needles: shaping.Centred(4),
		Left:  edges(shaping.BindOff, 5, -5),
		Right: edges(shaping.CastOn, 2, 3),
	}
	if err := p.Validate(); err != nil {
		t.Fatal(err)
	}
	if got, want := p.InWork(5), span("R4", "R5"); got != want {
		t.Errorf("in work %v, want %v", got, want)
	}
	child := shaping.Panel{Name: "panel 2", Parent: shaping.Body, FirstRow: 11, LastRow: 12, Needles: span("R4", "R5")}
	got, err := shaping.Tree{p, child}.Ledger()
	if want := (shaping.Ledger{CastOn: 7, BoundOff: 5, Live: 2}); err != nil || got != want {
		t.Errorf("%v (%v), want %v", got, err, want)
	}
}

func TestPanelByName(t *testing.T) {
	tree := worked.TinyFront()
	if p, ok := tree.Panel(shaping.LeftHalf); !ok || p.Needles != span("L10", "L3") {
		t.Errorf("got %v, %v", p, ok)
	}
	if p, ok := tree.Panel("sleeve"); ok || p.Name != "" {
		t.Errorf("got %v, %v", p, ok)
	}
}

// Every rule of Validate is broken once, on a front that is sound without it.
func TestBrokenTreesAreRefused(t *testing.T) {
	const body, right, left = 0, 1, 2
	for _, c := range []struct {
		name   string
		spoil  func(t shaping.Tree) shaping.Tree
		reason string
	}{
		{"no panels", func(shaping.Tree) shaping.Tree { return nil }, "at least a body"},
		{"no name", func(t shaping.Tree) shaping.Tree { t[right].Name = ""; return t }, "needs a name"},
		{"row 0", func(t shaping.Tree) shaping.Tree { t[body].FirstRow = 0; return t }, "rows count from 1"},
		{"ends before it begins", func(t shaping.Tree) shaping.Tree { t[body].LastRow = 0; return t }, "rows count from 1"},
		{"too many rows", func(t shaping.Tree) shaping.Tree { t[left].LastRow = shaping.MaxRows + 1; return t }, "at most 5000 rows"},
		{"too many rows of both halves", func(t shaping.Tree) shaping.Tree { t[left].LastRow = shaping.MaxRows - 5; return t }, "rows of all panels 5001: at most 5000"},
		{"no needles", func(t shaping.Tree) shaping.Tree { t[body].Needles = shaping.Span{}; return t }, "at least one needle"},
		{"needles from right to left", func(t shaping.Tree) shaping.Tree { t[right].Needles = span("R10", "R3"); return t }, "from left to right"},
		{"step moves nothing", func(t shaping.Tree) shaping.Tree { t[right].Left[1].Stitches = 0; return t }, "at least one stitch"},
		{"steps out of order", func(t shaping.Tree) shaping.Tree { t[right].Left[1].Row = 7; return t }, "in the order of their rows"},
		{"step before its panel", func(t shaping.Tree) shaping.Tree { t[right].Left[0].Row = 6; return t }, "has rows 7 to 12"},
		{"step after its panel", func(t shaping.Tree) shaping.Tree { t[left].Left[0].Row = 13; return t }, "has rows 7 to 12"},
		{"no method", func(t shaping.Tree) shaping.Tree { t[right].Left[0].Method = 0; return t }, "needs a method"},
		{"comes by hold", func(t shaping.Tree) shaping.Tree { t[right].Left[0].Stitches = 2; return t }, "do not come by hold"},
		{"comes by bind off", func(t shaping.Tree) shaping.Tree {
			t[right].Right[0] = shaping.Step{Row: 10, Stitches: 2, Method: shaping.BindOff}
			return t
		}, "do not come by bindOff"},
		{"goes by cast on", func(t shaping.Tree) shaping.Tree { t[right].Right[0].Method = shaping.CastOn; return t }, "do not go by castOn"},
		{"no stitch left", func(t shaping.Tree) shaping.Tree { t[right].Right[0].Stitches = -5; return t }, "at least one stitch in work"},
		{"beyond the bed", func(t shaping.Tree) shaping.Tree {
			t[left].Left[0] = shaping.Step{Row: 10, Stitches: shaping.MaxNeedle, Method: shaping.CastOn}
			return t
		}, "1 to 1000"},
		{"the body has a parent", func(t shaping.Tree) shaping.Tree { t[body].Parent = shaping.LeftHalf; return t }, "the first panel has no parent"},
		{"two bodies", func(t shaping.Tree) shaping.Tree { t[left].Parent = ""; return t }, "the first panel has no parent"},
		{"named twice", func(t shaping.Tree) shaping.Tree { t[left].Name = shaping.RightHalf; return t }, "a name of its own"},
		{"unknown parent", func(t shaping.Tree) shaping.Tree { t[left].Parent = "yoke"; return t }, "no earlier panel"},
		{"its own parent", func(t shaping.Tree) shaping.Tree { t[left].Parent = shaping.LeftHalf; return t }, "no earlier panel"},
		{"rows missing between", func(t shaping.Tree) shaping.Tree { t[body].LastRow = 5; return t }, "follows row 5"},
		{"needles its parent has not", func(t shaping.Tree) shaping.Tree { t[left].Needles = span("L11", "L3"); return t }, "ends with L10-R10"},
		{"needles its parent bound off", func(t shaping.Tree) shaping.Tree {
			t[body].Left = edges(shaping.BindOff, 5, -2)
			return t
		}, "ends with L8-R10"},
		{"needles of its sibling", func(t shaping.Tree) shaping.Tree { t[left].Needles = span("L10", "R3"); return t }, "has R3-R10"},
	} {
		t.Run(c.name, func(t *testing.T) {
			sound := shaping.Work{Panels: worked.TinyFront()}.Clone().Panels
			if err := sound.Validate(); err != nil {
				t.Fatal(err)
			}
			_, err := c.spoil(sound).Ledger()
			if err == nil || !strings.Contains(err.Error(), c.reason) {
				t.Fatalf("error %v, want one about %q", err, c.reason)
			}
			kind := shaping.ErrInfeasible
			if strings.Contains(c.name, "step") && !strings.Contains(c.reason, "has rows") || strings.Contains(c.name, "too many") {
				kind = shaping.ErrRange
			}
			needError(t, err, kind)
		})
	}
}

// A child may begin on stitches that its parent holds.
func TestHeldStitchesBelongToTheChild(t *testing.T) {
	tree := worked.TinyFront()
	tree[0].Left = edges(shaping.Hold, 5, -2)
	if err := tree.Validate(); err != nil {
		t.Error(err)
	}
}

// A tree out of the generator is refused as soon as one of its panels is taken
// out from under another, or moved by a row.
func TestTreesDoNotHangInTheAir(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tree := gen.Tree().Draw(t, "tree")
		i := rapid.IntRange(0, len(tree)-1).Draw(t, "panel")
		hasChild := slices.ContainsFunc(tree, func(p shaping.Panel) bool { return p.Parent == tree[i].Name })
		if err := slices.Delete(slices.Clone(tree), i, i+1).Validate(); (err == nil) != (!hasChild && len(tree) > 1) {
			t.Fatalf("without %s: %v", tree[i].Name, err)
		}
		moved := slices.Clone(tree)
		moved[i].LastRow++
		if err := moved.Validate(); (err == nil) == hasChild {
			t.Fatalf("with a row more in %s: %v", tree[i].Name, err)
		}
	})
}
