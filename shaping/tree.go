package shaping

import (
	"fmt"
	"slices"
)

// Tree holds the panels of one piece in the order in which they are worked: the
// body first, every panel after the one it grew out of.
type Tree []Panel

// Panel returns the panel of that name.
func (t Tree) Panel(name string) (p Panel, ok bool) {
	for _, p := range t {
		if p.Name == name {
			return p, true
		}
	}
	return Panel{}, false
}

// Clone returns a deep copy.
func (t Tree) Clone() Tree {
	t = slices.Clone(t)
	for i := range t {
		p := &t[i]
		p.Left, p.Right = slices.Clone(p.Left), slices.Clone(p.Right)
	}
	return t
}

// Rows returns the number of rows worked in all, those of both halves counted.
func (t Tree) Rows() int {
	rows := 0
	for _, p := range t {
		rows += p.Rows()
	}
	return rows
}

// Height returns the highest row.
func (t Tree) Height() int {
	highest := 0
	for _, p := range t {
		highest = max(highest, p.LastRow)
	}
	return highest
}

// Ledger accounts for the stitches of the whole piece: those the panels took
// over from their parents are counted once. It returns the error of
// [Tree.Validate] if the tree is not sound.
func (t Tree) Ledger() (Ledger, error) {
	if err := t.Validate(); err != nil {
		return Ledger{}, err
	}
	var sum Ledger
	for _, p := range t {
		l := p.Ledger()
		if p.Parent != "" {
			// These stitches are the parent's: it cast them on and has them live.
			l.CastOn -= p.Needles.Len()
			l.Live -= p.Needles.Len()
		}
		sum = sum.Add(l)
	}
	return sum, nil
}

// Validate returns an [*Error] if a panel is not sound in itself (see
// [Panel.Validate]), if the first is not the only one without a parent, if a name
// stands twice, or if a panel does not follow its parent: a panel begins at the
// row after its parent's last, on needles that are its parent's at the end
// (held ones count), and shares none with its siblings; or if all panels together
// have more than [MaxRows].
func (t Tree) Validate() error {
	if len(t) == 0 {
		return infeasible("piece", "without panels", "at least a body")
	}
	for i, p := range t {
		if err := p.Validate(); err != nil {
			return err
		}
		what := "panel " + p.Name
		if (p.Parent == "") != (i == 0) {
			return infeasible(what, fmt.Sprintf("parent %q", p.Parent), "the first panel has no parent, every other has one")
		}
		if _, twice := t[:i].Panel(p.Name); twice {
			return infeasible(what, "named twice", "every panel has a name of its own")
		}
		if i > 0 {
			if err := t[:i].follows(p); err != nil {
				return err
			}
		}
	}
	if rows := t.Rows(); rows > MaxRows {
		return rangeError("rows of all panels", rows, fmt.Sprintf("at most %d", MaxRows))
	}
	return nil
}

// follows checks p against its parent and its earlier siblings in t.
func (t Tree) follows(p Panel) error {
	what := "panel " + p.Name
	parent, ok := t.Panel(p.Parent)
	switch {
	case !ok:
		return infeasible(what, fmt.Sprintf("parent %q", p.Parent), "no earlier panel has that name")
	case p.FirstRow != parent.LastRow+1:
		return infeasible(what, fmt.Sprintf("first row %d", p.FirstRow), fmt.Sprintf("it follows row %d of panel %s", parent.LastRow, parent.Name))
	case !parent.livesAtEnd().ContainsSpan(p.Needles):
		return infeasible(what, fmt.Sprintf("needles %v", p.Needles), fmt.Sprintf("panel %s ends with %v", parent.Name, parent.livesAtEnd()))
	}
	for _, sibling := range t {
		if sibling.Parent == p.Parent && sibling.Parent != "" && sibling.Needles.Overlaps(p.Needles) {
			return infeasible(what, fmt.Sprintf("needles %v", p.Needles), fmt.Sprintf("panel %s has %v", sibling.Name, sibling.Needles))
		}
	}
	return nil
}

// livesAtEnd returns the panel's needles with a stitch after its last row, held
// stitches included.
func (p Panel) livesAtEnd() Span {
	change := func(steps Schedule) int {
		stitches := 0
		for _, step := range steps {
			if step.Method != Hold {
				stitches += step.Stitches
			}
		}
		return stitches
	}
	return p.Needles.movedBoth(change(p.Left), change(p.Right))
}
