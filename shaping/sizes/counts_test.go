package sizes_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// Every size of every table knits, which the judge has found when Plan returns, and the
// words side by side are its own steps again: what is taken off at once, sides, armhole and
// shoulder make up its outer edge, the neck the inner edge of its half. Only sides that would
// be too steep between hem, waist and underarm are refused; straight ones then do.
//
// A body with a larger chest never has fewer stitches at the underarm, whatever else is
// measured of it. Of nothing else is that promised: a taller body may have a smaller chest.
func TestEverySizeKnitsAsItIsSaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style, bodies := gen.Style().Draw(t, "style"), gen.Bodies().Draw(t, "bodies")
		r, err := sizes.Plan(style, bodies)
		if e, ok := errors.AsType[*sizes.Error](err); ok && strings.HasPrefix(e.Key, "body.waist.") && e.Size != "" {
			style.Spec.Body.Waist = nil
			r, err = sizes.Plan(style, bodies)
		}
		if err != nil {
			t.Fatal(err)
		}
		checkWords(t, r)
		checkOrder(t, r)
	})
}

func checkOrder(t fataler, r sizes.Range) {
	t.Helper()
	for _, p := range r.Counts() {
		if p.Name != shaping.Front && p.Name != shaping.Back {
			continue
		}
		values, _ := p.Count(sizes.AtUnderarm)
		for i, a := range r.Sizes {
			for j, b := range r.Sizes {
				if a.Body.Chest.Cmp(b.Body.Chest) < 0 && values[i] > values[j] {
					t.Fatalf("%s: a chest of %v has %d stitches, one of %v %d", p.Name, a.Body.Chest, values[i], b.Body.Chest, values[j])
				}
			}
		}
	}
}

// Of the built-in bodies as well.
func TestBuiltInAsItIsSaid(t *testing.T) {
	for name, bodies := range map[string][]sizes.Body{"men": sizes.Men(), "women": sizes.Women(), "children": sizes.Children()} {
		t.Run(name, func(t *testing.T) {
			r := planned(t, jersey(), bodies)
			checkWords(t, r)
			for _, s := range r.Sizes {
				for _, c := range s.Set.Failed() {
					t.Errorf("size %s: %s", s.Body.Name, c.Says)
				}
			}
		})
	}
}

type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
	Errorf(format string, args ...any)
}

// checkWords expands the words of every edge for every size.
func checkWords(t fataler, r sizes.Range) {
	t.Helper()
	for _, p := range r.Counts() {
		for k, size := range r.Sizes {
			piece, ok := size.Set.Piece(p.Name)
			if !ok {
				t.Fatalf("size %s has no %s", size.Body.Name, p.Name)
			}
			// What is said at each side; straight sides are alike at both.
			said := map[shaping.Side]shaping.Schedule{}
			for _, e := range p.Edges {
				steps := expanded(t, e, k)
				if e.Name == garment.NeckEdge {
					want := inner(piece, e.Sides[k])
					if diff := cmp.Diff(want, steps, cmpopts.EquateEmpty()); diff != "" {
						t.Fatalf("%s, size %s, neck (-want +got):\n%s", p.Name, size.Body.Name, diff)
					}
					continue
				}
				sides := []shaping.Side{e.Sides[k]}
				switch e.Name {
				case garment.HemToUnderarm, garment.HemToWaist, garment.WaistToUnderarm, garment.CuffToUnderarm:
					sides = []shaping.Side{shaping.Left, shaping.Right}
				case garment.ShoulderEdge:
					if e.Last[k] != piece.Widths.Shoulder+steps.Total() {
						t.Fatalf("%s, size %s: %d stay of a shoulder of %d with steps of %d", p.Name, size.Body.Name, e.Last[k], piece.Widths.Shoulder, steps.Total())
					}
				}
				for _, side := range sides {
					said[side] = append(said[side], steps...)
				}
			}
			for side, steps := range said {
				whole := outline(piece, side)
				for _, step := range steps {
					if at, ok := whole.At(step.Row); !ok || at != step {
						t.Fatalf("%s, size %s, %v edge: %v is said, the work has %v", p.Name, size.Body.Name, side, step, at)
					}
				}
			}
			// Every step is said: as many stitches go at an edge as are said of either side.
			total := 0
			for _, e := range p.Edges {
				if e.Name != garment.NeckEdge {
					total += expanded(t, e, k).Total()
				}
			}
			if want := outline(piece, shaping.Right).Total(); total != want {
				t.Fatalf("%s, size %s: %d stitches are said of the outer edge, the work has %d", p.Name, size.Body.Name, total, want)
			}
		}
	}
}

// expanded returns the steps of an edge that are said for one size.
func expanded(t fataler, e sizes.Edge, k int) shaping.Schedule {
	t.Helper()
	var steps shaping.Schedule
	if e.Once[k].Stitches != 0 {
		steps = append(steps, e.Once[k])
	}
	times := 0
	for _, w := range e.Words {
		if w.Has(k) {
			times++
			steps = append(steps, w.Steps(k)...)
		}
	}
	if times > 1 {
		t.Fatalf("%s is said %d times for one size", e.Name, times)
	}
	if err := steps.Validate(); err != nil {
		t.Fatalf("%s: %v", e.Name, err)
	}
	return steps
}

// outline returns all steps of the work at one outer edge.
func outline(p garment.Piece, side shaping.Side) shaping.Schedule {
	var steps shaping.Schedule
	for _, panel := range p.Work.Panels {
		half := map[shaping.Side]string{shaping.Left: shaping.LeftHalf, shaping.Right: shaping.RightHalf}[side]
		if panel.Name == shaping.Body || panel.Name == half {
			steps = append(steps, panel.Steps(side)...)
		}
	}
	return steps
}

// inner returns the steps of the work at the neck of one half.
func inner(p garment.Piece, side shaping.Side) shaping.Schedule {
	name := shaping.RightHalf
	if side == shaping.Left {
		name = shaping.LeftHalf
	}
	half, _ := p.Work.Panels.Panel(name)
	return half.Steps(side.Opposite())
}

// The chest alone moves the body's width and what goes in at the armholes, and neither
// shoulders nor neck, sleeves or lengths, which are measured by themselves.
func TestChestMovesTheWidth(t *testing.T) {
	measured := sizes.Men()[2]
	wider := measured
	wider.Name, wider.Chest = "wider", wider.Chest.Add(length("4 cm"))
	counts := planned(t, jersey(), []sizes.Body{measured, wider}).Counts()
	for _, c := range counts[0].Counts {
		moved := c.Values[0] != c.Values[1]
		want := slices.Contains([]string{sizes.CastOn, sizes.AtUnderarm, sizes.AtOnce, sizes.Inset}, c.Name)
		if moved != want {
			t.Errorf("%s: %v", c.Name, c.Values)
		}
	}
}

// Words with numbers of each size, by hand.
func TestWordsSteps(t *testing.T) {
	w := sizes.Words{From: 1, To: 4, Rows: []int{11, 21, sizes.None}, Lines: []sizes.Line{
		{Method: shaping.BindOff, Stitches: []int{-3, -3, -3}, Every: []int{2, 2, 2}, Then: []int{0, 0, 0}, Times: []int{2, 0, 0}},
		{Method: shaping.Fashioned, Stitches: []int{-1, -1, 0}, Every: []int{3, 4, 0}, Then: []int{0, 6, 0}, Times: []int{2, 3, 0}},
		{Method: shaping.Fashioned, Stitches: []int{-1, -1, 0}, Every: []int{2, 2, 0}, Then: []int{4, 4, 0}, Times: []int{3, 1, 0}},
	}}
	step := func(row, stitches int, m shaping.Method) shaping.Step {
		return shaping.Step{Row: row, Stitches: stitches, Method: m}
	}
	for size, want := range []shaping.Schedule{
		nil,
		{
			step(11, -3, shaping.BindOff), step(13, -3, shaping.BindOff), step(16, -1, shaping.Fashioned), step(19, -1, shaping.Fashioned),
			step(21, -1, shaping.Fashioned), step(25, -1, shaping.Fashioned), step(27, -1, shaping.Fashioned),
		},
		{step(21, -1, shaping.Fashioned), step(25, -1, shaping.Fashioned), step(31, -1, shaping.Fashioned), step(33, -1, shaping.Fashioned)},
		nil,
		nil,
	} {
		if diff := cmp.Diff(want, w.Steps(size)); diff != "" {
			t.Errorf("size %d (-want +got):\n%s", size, diff)
		}
	}
}
