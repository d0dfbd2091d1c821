package order

import (
	"fmt"
	"slices"

	"example.com/walewise/shaping"
)

// Arrange writes the order of work, with panels of its own. It returns an [*Error] if the
// outline is not sound, or asks at some row for something its method cannot do there.
func Arrange(o Outline) (shaping.Work, error) {
	start, err := o.start()
	if err != nil {
		return shaping.Work{}, err
	}
	if err := o.Panels.Validate(); err != nil {
		return shaping.Work{}, &Error{Piece: o.Name, Reason: err.Error(), Err: err}
	}
	o.Panels = o.Panels.Clone()
	p := &planner{
		outline: o,
		yarn:    start,
		needles: make([]state, 2*shaping.MaxNeedle),
		work: shaping.Work{
			Name: o.Name, Place: o.Place, Facing: o.Place.Facing(), Panels: o.Panels,
			Rows: make([]shaping.Row, 0, o.Panels.Rows()),
		},
	}
	for i := range o.Panels {
		if err := p.panel(i); err != nil {
			return shaping.Work{}, err
		}
	}
	p.last().After = append(p.last().After, p.clearHeld()...)
	p.work.Ledger.Live = p.work.Ledger.Balance()
	return p.work, nil
}

// start returns where row 1 starts.
func (o Outline) start() (shaping.Side, error) {
	switch {
	case o.Centre > BoundOff || o.Top > BoundOff:
		return 0, &Error{Piece: o.Name, Reason: fmt.Sprintf("endings %v and %v: stitches are left on waste yarn or bound off", o.Centre, o.Top)}
	case o.Outer != 0 && !o.Outer.IsValid():
		return 0, &Error{Piece: o.Name, Reason: fmt.Sprintf("outer edge %v: it is the left or the right one, or left open", o.Outer)}
	case o.ShoulderRow < 0:
		return 0, &Error{Piece: o.Name, Reason: fmt.Sprintf("shoulder from row %d: rows count from 1, and 0 leaves it open", o.ShoulderRow)}
	case o.Place == shaping.Hand && o.Carriage != shaping.Left:
		return handSide(1), nil
	case o.Place == shaping.Hand:
		return 0, &Error{Piece: o.Name, Reason: "in the hand row 1 starts at the right; there is no carriage at the left"}
	case o.Place != shaping.Bed:
		return 0, &Error{Piece: o.Name, Reason: fmt.Sprintf("place %v: a piece is worked on the bed or in the hand", o.Place)}
	case !o.Carriage.IsValid():
		return 0, &Error{Piece: o.Name, Reason: "the carriage stands left or right before row 1"}
	}
	return o.Carriage, nil
}

// handSide returns where a row in the hand starts, as seen on the right side:
// right-side rows, the odd ones, run from right to left.
func handSide(row int) shaping.Side {
	if row%2 == 1 {
		return shaping.Right
	}
	return shaping.Left
}

// state is what a needle with a stitch does.
type state uint8

const (
	working state = iota + 1
	held          // not yet wrapped
	wrapped       // held, and wrapped at the first turn beside it
)

type planner struct {
	outline Outline
	yarn    shaping.Side // where the yarn hangs, on the bed at the carriage
	needles []state      // of L1000 to R1000; see at
	work    shaping.Work
}

// at returns the state of a needle.
func (p *planner) at(n shaping.Needle) *state { return &p.needles[n.Index()+shaping.MaxNeedle] }

func (p *planner) last() *shaping.Row { return &p.work.Rows[len(p.work.Rows)-1] }

// panel writes the rows of the i-th panel.
func (p *planner) panel(i int) error {
	panel := p.outline.Panels[i]
	before, err := p.begin(i)
	if err != nil {
		return err
	}
	leaf := p.isLeaf(panel)
	for row := panel.FirstRow; row <= panel.LastRow; row++ {
		r := shaping.Row{Row: row, Panel: panel.Name, From: p.yarn, Before: before}
		before = nil
		// From where the row starts to where it ends, so that a reflected
		// panel gives the reflected actions in the same order.
		for _, edge := range []shaping.Side{p.yarn, p.yarn.Opposite()} {
			actions, err := p.step(panel, row, edge)
			if err != nil {
				return err
			}
			r.Before = append(r.Before, actions...)
		}
		if leaf && row == panel.LastRow {
			actions, err := p.closingRow(panel)
			if err != nil {
				return err
			}
			r.Before = append(r.Before, actions...)
		}
		r.Knit = p.inWork(panel)
		if row < panel.LastRow || p.goesOn(i) {
			r.After = p.wrap(panel, r)
		}
		p.yarn = p.yarn.Opposite()
		p.work.Rows = append(p.work.Rows, r)
	}
	if leaf {
		p.finish(panel)
	}
	return nil
}

func (p *planner) isLeaf(panel shaping.Panel) bool {
	for _, other := range p.outline.Panels {
		if other.Parent == panel.Name {
			return false
		}
	}
	return true
}

// goesOn reports whether the panel after the i-th is its child, worked on with
// the same yarn.
func (p *planner) goesOn(i int) bool {
	return i+1 < len(p.outline.Panels) && p.outline.Panels[i+1].Parent == p.outline.Panels[i].Name
}

// finish takes off the stitches in work after a panel's last row.
func (p *planner) finish(panel shaping.Panel) {
	top := p.inWork(panel)
	action := shaping.Action{Do: shaping.DoWaste, Needles: top}
	if p.outline.Top == BoundOff {
		action.Do = shaping.DoBindOff
		p.work.Ledger.BoundOff += top.Len()
	}
	p.clear(top)
	p.last().After = append(p.last().After, action)
}

// clearHeld puts everything still held on waste yarn, strip by strip from left to right; of
// a body with a shoulder from its other edge, so that its reflection has them in the same
// order.
func (p *planner) clearHeld() []shaping.Action {
	var actions []shaping.Action
	strips := p.runs(p.extent(), func(s state) bool { return s == held || s == wrapped })
	if p.outline.Outer == shaping.Left {
		slices.Reverse(strips)
	}
	for _, strip := range strips {
		actions = append(actions, shaping.Action{Do: shaping.DoWaste, Needles: strip})
		p.clear(strip)
	}
	return actions
}

// extent returns all needles of the piece, those that came at its edges included.
func (p *planner) extent() shaping.Span {
	var all shaping.Span
	for _, panel := range p.outline.Panels {
		all = all.Around(p.domain(panel))
	}
	return all
}

// inWork returns the needles of the panel that are in work.
func (p *planner) inWork(panel shaping.Panel) shaping.Span {
	run := p.domain(panel)
	for !run.IsEmpty() && *p.at(run.First) != working {
		run = run.Moved(shaping.Left, -1)
	}
	for !run.IsEmpty() && *p.at(run.Last) != working {
		run = run.Moved(shaping.Right, -1)
	}
	return run
}

// domain returns the panel's needles as wide as its edges ever were.
func (p *planner) domain(panel shaping.Panel) shaping.Span {
	domain := panel.Needles
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		widest, at := 0, 0
		for _, step := range panel.Steps(edge) {
			at += step.Stitches
			widest = max(widest, at)
		}
		domain = domain.Moved(edge, widest)
	}
	return domain
}

// outer returns the span between the outermost needles of the domain whose state
// is wanted.
func (p *planner) outer(domain shaping.Span, wanted func(state) bool) shaping.Span {
	runs := p.runs(domain, wanted)
	if len(runs) == 0 {
		return shaping.Span{}
	}
	return shaping.Span{First: runs[0].First, Last: runs[len(runs)-1].Last}
}

// runs returns the runs of neighbouring needles in the domain whose state is wanted.
func (p *planner) runs(domain shaping.Span, wanted func(state) bool) []shaping.Span {
	return domain.Runs(func(n shaping.Needle) bool { return wanted(*p.at(n)) })
}

func (p *planner) set(s shaping.Span, to state) {
	for n := range s.All() {
		*p.at(n) = to
	}
}

// clear empties the needles of stitches that are gone.
func (p *planner) clear(s shaping.Span) { p.set(s, 0) }
