package mirror

import (
	"fmt"
	"slices"

	"example.com/walewise/shaping"
)

// Axis is the line in which needles are reflected. The zero value is Even.
type Axis uint8

// The two axes.
const (
	Even Axis = iota // between L1 and R1: Ln and Rn change places
	Odd              // through R1: Ln and R(n+1) change places, R1 stays
)

// AxisFor returns the axis of a piece with that many stitches.
func AxisFor(stitches int) Axis {
	if stitches%2 != 0 {
		return Odd
	}
	return Even
}

// String returns "even" or "odd".
func (a Axis) String() string {
	switch a {
	case Even:
		return "even"
	case Odd:
		return "odd"
	}
	return fmt.Sprintf("Axis(%d)", uint8(a))
}

// Needle returns the reflection of a needle; that of no needle is no needle.
func (a Axis) Needle(n shaping.Needle) shaping.Needle {
	switch {
	case n == 0:
		return 0
	case a == Odd:
		return shaping.NeedleAt(-n.Index())
	}
	return shaping.NeedleAt(-1 - n.Index())
}

// Span returns the reflection of a span: its first needle is the reflection of
// the last.
func (a Axis) Span(s shaping.Span) shaping.Span {
	return shaping.Span{First: a.Needle(s.Last), Last: a.Needle(s.First)}
}

// Action returns the reflection of an action.
func (a Axis) Action(do shaping.Action) shaping.Action {
	do.Needles = a.Span(do.Needles)
	do.Toward = do.Toward.Opposite()
	do.Side = do.Side.Opposite()
	return do
}

// Row returns the reflection of a row. It starts at the other side and belongs to
// the panel whose name is the reflected one.
func (a Axis) Row(r shaping.Row) shaping.Row {
	r.Panel = Name(r.Panel)
	r.From = r.From.Opposite()
	r.Before = a.actions(r.Before)
	r.Knit = a.Span(r.Knit)
	r.After = a.actions(r.After)
	return r
}

// Panel returns the reflection of a panel: its left edge has the schedule of the
// right one, and the words left and right in its name and its parent's change
// places.
func (a Axis) Panel(p shaping.Panel) shaping.Panel {
	p.Name, p.Parent = Name(p.Name), Name(p.Parent)
	p.Needles = a.Span(p.Needles)
	p.Left, p.Right = slices.Clone(p.Right), slices.Clone(p.Left)
	return p
}

// Tree returns the reflection of a tree of panels in the same order.
func (a Axis) Tree(t shaping.Tree) shaping.Tree {
	t = slices.Clone(t)
	for i, p := range t {
		t[i] = a.Panel(p)
	}
	return t
}

func (a Axis) actions(do []shaping.Action) []shaping.Action {
	do = slices.Clone(do)
	for i := range do {
		do[i] = a.Action(do[i])
	}
	return do
}
