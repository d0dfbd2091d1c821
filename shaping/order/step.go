package order

import (
	"fmt"

	"example.com/walewise/shaping"
)

// edgeStitches is how many stitches a fashioned step moves together, so that it
// sits inside the edge: on the bed those of the transfer tool, in the hand the edge
// stitch and the first of the two that are worked together. Common practice, no
// source.
func (p *planner) edgeStitches() int {
	if p.outline.Place == shaping.Hand {
		return 2
	}
	return 3
}

// mostDecreased is how many stitches a fashioned step takes away: two, as a double
// decrease, put three loops on one needle.
const mostDecreased = 2

// step returns what the panel's schedule asks for at one edge before row.
func (p *planner) step(panel shaping.Panel, row int, edge shaping.Side) ([]shaping.Action, error) {
	s, ok := panel.Steps(edge).At(row)
	if !ok {
		return nil, nil
	}
	fail := func(reason string) ([]shaping.Action, error) {
		return nil, p.errorAt(panel, row, edge, reason)
	}
	run := p.inWork(panel)
	if run.Len()+s.Stitches < 1 {
		return fail(fmt.Sprintf("%d stitches go, %d are in work: a panel keeps at least one", -s.Stitches, run.Len()))
	}
	atStart := p.yarn == edge
	switch s.Method {
	case shaping.Hold:
		if atStart {
			return fail(fmt.Sprintf("the row starts here: stitches are held where a row ends, at row %d or %d", row-1, row+1))
		}
		gone := run.Edge(edge, -s.Stitches)
		p.set(gone, held)
		return []shaping.Action{{Do: shaping.DoHold, Needles: gone}}, nil
	case shaping.BindOff:
		if !atStart {
			return fail(fmt.Sprintf("the row ends here: stitches are bound off where a row starts, at row %d or %d", row-1, row+1))
		}
		gone := run.Edge(edge, -s.Stitches)
		p.clear(gone)
		p.work.Ledger.BoundOff += gone.Len()
		return []shaping.Action{{Do: shaping.DoBindOff, Needles: gone}}, nil
	case shaping.CastOn:
		if !atStart {
			return fail(fmt.Sprintf("the row ends here: stitches are cast on where a row starts, at row %d or %d", row-1, row+1))
		}
		come := run.Beyond(edge, s.Stitches)
		if taken, ok := p.taken(come); ok {
			return fail(fmt.Sprintf("stitches are cast on at empty needles, %v has a stitch", taken))
		}
		p.set(come, working)
		p.work.Ledger.CastOn += come.Len()
		return []shaping.Action{{Do: shaping.DoCastOnEdge, Needles: come}}, nil
	}
	if -s.Stitches > mostDecreased {
		return fail(fmt.Sprintf("%d stitches are decreased at once, at most %d can be", -s.Stitches, mostDecreased))
	}
	if s.Stitches > 0 {
		if taken, ok := p.taken(run.Beyond(edge, s.Stitches)); ok {
			return fail(fmt.Sprintf("stitches are moved out to empty needles, %v has a stitch", taken))
		}
		if run.Len() == 1 && !atStart {
			return fail("the only stitch in work cannot be moved away from where the row starts")
		}
		return p.fashionedOut(run, edge, s.Stitches), nil
	}
	return p.fashionedIn(run, edge, -s.Stitches, p.reach(panel, row, edge)), nil
}

// reach returns how many edge stitches a decrease moves: as many as are usual, or
// what a narrow panel leaves, so that no stitch is moved from both edges.
func (p *planner) reach(panel shaping.Panel, row int, edge shaping.Side) int {
	self, _ := panel.Steps(edge).At(row)
	other, _ := panel.Steps(edge.Opposite()).At(row)
	room := p.inWork(panel).Len() + self.Stitches
	if edge == p.yarn { // the other edge's step is still to come
		room += min(other.Stitches, 0)
	}
	switch {
	case other.Method == shaping.Fashioned && other.Stitches < 0:
		room /= 2
	case other.Method == shaping.BindOff && p.outline.Place == shaping.Hand:
		room-- // the stitch left by the bind off is on the right needle already
	}
	return max(1, min(p.edgeStitches(), room))
}

// taken returns the first of the needles that has a stitch.
func (p *planner) taken(s shaping.Span) (n shaping.Needle, ok bool) {
	for n := range s.All() {
		if *p.at(n) != 0 {
			return n, true
		}
	}
	return 0, false
}

// fashionedIn moves the edge stitches inwards by one needle for every stitch that goes.
func (p *planner) fashionedIn(run shaping.Span, edge shaping.Side, stitches, reach int) []shaping.Action {
	var actions []shaping.Action
	for range stitches {
		group := run.Edge(edge, reach)
		actions = append(actions, shaping.Action{Do: shaping.DoShift, Needles: group, Toward: edge.Opposite()})
		p.clear(run.Edge(edge, 1))
		p.work.Ledger.Decreased++
		run = run.Moved(edge, -1)
	}
	return actions
}

// fashionedOut moves the edge stitches outwards by one needle for every stitch that comes and
// fills the needle they leave, from the neighbour of which the new loop is lifted: so one
// stitch stays where it is, if there are two.
func (p *planner) fashionedOut(run shaping.Span, edge shaping.Side, stitches int) []shaping.Action {
	var actions []shaping.Action
	for range stitches {
		group := run.Edge(edge, max(1, min(p.edgeStitches(), run.Len()-1)))
		empty := group.End(edge.Opposite())
		actions = append(actions,
			shaping.Action{Do: shaping.DoShift, Needles: group, Toward: edge},
			shaping.Action{Do: shaping.DoFill, Needles: shaping.Span{First: empty, Last: empty}})
		p.set(run.Beyond(edge, 1), working)
		p.work.Ledger.Increased++
		run = run.Moved(edge, 1)
	}
	return actions
}

// closingRow returns what brings the stitches held at the panel's outer edge back
// for the row over all of them.
func (p *planner) closingRow(panel shaping.Panel) ([]shaping.Action, error) {
	outer := p.outerEdge(panel)
	if !outer.IsValid() {
		return nil, nil
	}
	back, all := p.shoulderHeld(panel, outer)
	switch {
	case !all:
		return nil, p.errorAt(panel, panel.LastRow, outer, "stitches of the shoulder on hold cannot come back: others between them and those in work are gone")
	case back.IsEmpty():
		return nil, nil
	}
	if p.yarn == outer {
		return nil, p.errorAt(panel, panel.LastRow, outer,
			fmt.Sprintf("the closing row would start here: it ends here, as row %d or %d", panel.LastRow-1, panel.LastRow+1))
	}
	p.set(back, working)
	return []shaping.Action{{Do: shaping.DoReturn, Needles: back}}, nil
}

// shoulderHeld returns the needles beside those in work on which the panel's
// shoulder is held, those that its parent held among them, and whether these are all.
func (p *planner) shoulderHeld(panel shaping.Panel, outer shaping.Side) (beside shaping.Span, all bool) {
	stitches := panel.Needles.Len() - p.withoutHeldByParent(panel).Len()
	stitches -= panel.Steps(outer).Between(p.outline.ShoulderRow, panel.LastRow).Of(shaping.Hold).Total()
	run := p.inWork(panel)
	for count := range stitches {
		n := run.Beyond(outer, count+1).End(outer)
		if s := *p.at(n); s != held && s != wrapped {
			return run.Beyond(outer, count), false
		}
	}
	return run.Beyond(outer, stitches), true
}

// wrap returns the wrap that the turn after the row needs.
func (p *planner) wrap(panel shaping.Panel, r shaping.Row) []shaping.Action {
	beyond := r.Knit.Beyond(r.From.Opposite(), 1)
	if !p.domain(panel).Contains(beyond.First) || *p.at(beyond.First) != held {
		return nil
	}
	*p.at(beyond.First) = wrapped
	return []shaping.Action{{Do: shaping.DoWrap, Needles: beyond}}
}
