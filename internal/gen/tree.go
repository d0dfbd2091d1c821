package gen

import (
	"fmt"

	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

// Sizes of what [Tree] generates.
const (
	mostStitches = 60 // of a body
	mostRows     = 12 // of a panel
	mostParts    = 4  // of a split
	deepest      = 3  // generations of panels after the body
)

// Tree generates trees of panels that are sound: bodies that are shaped by every
// method, splits into two or more panels that may leave stitches between and
// beside them, and panels that are split again. A body that is split in two has a
// right half and a left half, worked in either order; other panels are numbered.
func Tree() *rapid.Generator[shaping.Tree] {
	return rapid.Custom(func(t *rapid.T) shaping.Tree {
		g := &treeMaker{t: t}
		body := shaping.Panel{Name: shaping.Body, FirstRow: 1, Needles: shaping.Centred(g.draw("cast on", 1, mostStitches))}
		g.grow(body, outer{left: true, right: true}, 0)
		return g.tree
	})
}

// outer says at which edges there is nothing but empty needles beside a panel, so
// that it may grow there.
type outer struct{ left, right bool }

type treeMaker struct {
	t    *rapid.T
	tree shaping.Tree
}

func (g *treeMaker) draw(what string, least, most int) int {
	return rapid.IntRange(least, most).Draw(g.t, what)
}

// grow adds the panel, of which first row and needles are given, and all that
// grow out of it.
func (g *treeMaker) grow(p shaping.Panel, free outer, depth int) {
	parts := 0
	if depth < deepest && g.draw("split", 0, 2) > 0 {
		parts = g.draw("parts", 2, mostParts)
	}
	p.LastRow = p.FirstRow + g.draw("rows", 1, mostRows) - 1
	left := edge{outer: free.left, leaf: parts == 0, end: p.Needles.First, side: shaping.Left}
	right := edge{outer: free.right, leaf: parts == 0, end: p.Needles.Last, side: shaping.Right}
	inWork := p.Needles.Len()
	for row := p.FirstRow; row <= p.LastRow; row++ {
		for _, e := range []*edge{&left, &right} {
			inWork += g.step(e, row, inWork)
		}
	}
	p.Left, p.Right = left.steps, right.steps
	g.tree = append(g.tree, p)

	live := shaping.Span{First: left.end, Last: right.end}
	if parts < 2 || live.Len() < parts {
		return
	}
	spans := g.split(live, parts)
	order := rapid.Permutation(indices(len(spans))).Draw(g.t, "order")
	for _, i := range order {
		child := shaping.Panel{
			Name:     g.name(p, i, parts),
			Parent:   p.Name,
			FirstRow: p.LastRow + 1,
			Needles:  spans[i],
		}
		g.grow(child, outer{
			left:  free.left && child.Needles.First == live.First,
			right: free.right && child.Needles.Last == live.Last,
		}, depth+1)
	}
}

// edge is one edge of the panel being made.
type edge struct {
	side  shaping.Side
	outer bool           // empty needles beside it
	leaf  bool           // nothing grows out of the panel
	end   shaping.Needle // its outermost needle with a stitch, held ones included
	held  bool
	steps shaping.Schedule
}

// step may add a step at row and returns how the needles in work change.
func (g *treeMaker) step(e *edge, row, inWork int) int {
	if g.draw("shaped", 0, 3) > 0 {
		return 0
	}
	methods := []shaping.Method{}
	if inWork > 1 {
		methods = append(methods, shaping.Hold)
		// Stitches that go inside held ones leave a gap, on which nothing can grow.
		if !e.held || e.leaf {
			methods = append(methods, shaping.BindOff, shaping.Fashioned)
		}
	}
	coming := e.outer && !e.held
	if coming {
		methods = append(methods, shaping.CastOn)
	}
	if len(methods) == 0 {
		return 0
	}
	step := shaping.Step{Row: row, Method: rapid.SampledFrom(methods).Draw(g.t, "method")}
	switch step.Method {
	case shaping.CastOn:
		step.Stitches = g.draw("cast on", 1, 6)
	case shaping.Fashioned:
		step.Stitches = -1
		if coming && rapid.Bool().Draw(g.t, "increase") {
			step.Stitches = 1
		}
	default:
		step.Stitches = -g.draw("go", 1, min(6, inWork-1))
	}
	if step.Method == shaping.Hold {
		e.held = true
	} else {
		e.end = e.end.Toward(e.side, step.Stitches)
	}
	e.steps = append(e.steps, step)
	return step.Stitches
}

// split draws that many spans of at least one needle, from left to right, from
// live, which has enough; what lies between and beside them is left over.
func (g *treeMaker) split(live shaping.Span, parts int) []shaping.Span {
	spans := make([]shaping.Span, parts)
	first, left := live.First, live.Len()
	for i := range spans {
		spare := left - (parts - i) // with one needle for each part still to come
		gap := g.draw("gap", 0, spare)
		size := 1 + g.draw("size", 0, spare-gap)
		start := first.Toward(shaping.Right, gap)
		spans[i] = shaping.Span{First: start, Last: start.Toward(shaping.Right, size-1)}
		first = start.Toward(shaping.Right, size)
		left -= gap + size
	}
	return spans
}

func (g *treeMaker) name(parent shaping.Panel, i, parts int) string {
	switch {
	case parent.Name != shaping.Body || parts != 2:
		return fmt.Sprintf("panel %d", len(g.tree)+1)
	case i == 0:
		return shaping.LeftHalf
	}
	return shaping.RightHalf
}

func indices(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}
