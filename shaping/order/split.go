package order

import (
	"fmt"

	"example.com/walewise/shaping"
)

// begin returns what is done before the first row of the i-th panel: the cast
// on, the split, or the change to the other half.
func (p *planner) begin(i int) ([]shaping.Action, error) {
	panel := p.outline.Panels[i]
	if i == 0 {
		p.set(panel.Needles, working)
		p.work.Ledger.CastOn += panel.Needles.Len()
		return []shaping.Action{{Do: shaping.DoCastOn, Needles: panel.Needles}}, nil
	}
	next := p.change
	if p.outline.Panels[i-1].Name == panel.Parent {
		next = p.split
	}
	actions, err := next(panel)
	if err == nil && p.inWork(panel).IsEmpty() {
		err = p.errorAt(panel, panel.FirstRow, 0, "all its stitches are on hold already")
	}
	return actions, err
}

// errorAt is the error for what cannot be done before a row.
func (p *planner) errorAt(panel shaping.Panel, row int, edge shaping.Side, reason string) error {
	return &Error{Piece: p.outline.Name, Panel: panel.Name, Row: row, Edge: edge, Reason: reason}
}

// split holds what is not the panel's: the stitches between the halves, then
// the other halves. The panel goes on with the working yarn.
func (p *planner) split(panel shaping.Panel) ([]shaping.Action, error) {
	if outer := p.outerEdge(panel); outer != p.yarn {
		return nil, p.errorAt(panel, panel.FirstRow, 0, fmt.Sprintf("the yarn is at the %v: the half on that side goes first", p.yarn))
	}
	parent, _ := p.outline.Panels.Panel(panel.Parent)
	if yarn := p.inWork(parent).End(p.yarn); !panel.Needles.Contains(yarn) {
		return nil, p.errorAt(panel, panel.FirstRow, p.yarn, fmt.Sprintf("the yarn hangs at %v, which is not the panel's", yarn))
	}
	var between, others []shaping.Action
	for _, rest := range p.restOf(panel) {
		if _, isHalf := p.siblingAt(panel, rest.First); isHalf {
			p.set(rest, held)
			others = append(others, shaping.Action{Do: shaping.DoHold, Needles: rest})
			continue
		}
		between = append(between, p.centre(rest))
	}
	return append(between, others...), nil
}

// centre parks the stitches between two halves.
func (p *planner) centre(s shaping.Span) shaping.Action {
	if p.outline.Centre == BoundOff {
		p.clear(s)
		p.work.Ledger.BoundOff += s.Len()
		return shaping.Action{Do: shaping.DoBindOff, Needles: s, Separate: true}
	}
	p.set(s, held)
	return shaping.Action{Do: shaping.DoHold, Needles: s}
}

// change begins the panel with a new end of yarn, on the bed from its outer edge,
// and puts it back to work.
func (p *planner) change(panel shaping.Panel) ([]shaping.Action, error) {
	var actions []shaping.Action
	if p.outline.Place == shaping.Hand {
		p.yarn = handSide(panel.FirstRow)
	} else {
		p.yarn = p.outerEdge(panel)
		actions = []shaping.Action{
			{Do: shaping.DoCarriage, Side: p.yarn},
			{Do: shaping.DoCounter, Counter: panel.FirstRow - 1},
		}
	}
	back := p.outer(p.withoutHeldByParent(panel), func(s state) bool { return s == held })
	if back.IsEmpty() {
		return nil, nil
	}
	p.set(back, working)
	return append(actions, shaping.Action{Do: shaping.DoReturn, Needles: back}), nil
}

// withoutHeldByParent returns the panel's needles less those that its parent
// put on hold at its edges.
func (p *planner) withoutHeldByParent(panel shaping.Panel) shaping.Span {
	parent, ok := p.outline.Panels.Panel(panel.Parent)
	if !ok {
		return panel.Needles
	}
	end := parent.InWork(parent.LastRow)
	s := panel.Needles
	if s.First.Index() < end.First.Index() {
		s.First = end.First
	}
	if s.Last.Index() > end.Last.Index() {
		s.Last = end.Last
	}
	return s
}

// restOf returns the runs of needles in work outside the panel, a run of its own
// for every sibling.
func (p *planner) restOf(panel shaping.Panel) []shaping.Span {
	parent, _ := p.outline.Panels.Panel(panel.Parent)
	var rest []shaping.Span
	var owner string
	open := false
	for n := range parent.InWork(parent.LastRow).All() {
		name, _ := p.siblingAt(panel, n)
		switch {
		case panel.Needles.Contains(n), *p.at(n) != working: // what the parent's parent holds is on hold already
			open = false
		case open && name == owner:
			rest[len(rest)-1].Last = n
		default:
			rest = append(rest, shaping.Span{First: n, Last: n})
			open, owner = true, name
		}
	}
	return rest
}

// siblingAt returns the other panel with the same parent that has the needle.
func (p *planner) siblingAt(panel shaping.Panel, n shaping.Needle) (name string, ok bool) {
	for _, other := range p.outline.Panels {
		if other.Parent == panel.Parent && other.Name != panel.Name && other.Needles.Contains(n) {
			return other.Name, true
		}
	}
	return "", false
}

// outerEdge returns the side on which the panel shares its parent's edge, and of a body
// the one that the outline names.
func (p *planner) outerEdge(panel shaping.Panel) shaping.Side {
	if panel.Parent == "" {
		return p.outline.Outer
	}
	for _, other := range p.outline.Panels {
		if other.Parent == panel.Parent && other.Name != panel.Name && other.Needles.First.Index() > panel.Needles.First.Index() {
			return shaping.Left
		}
	}
	return shaping.Right
}
