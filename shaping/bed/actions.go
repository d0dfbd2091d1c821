package bed

import (
	"fmt"

	"example.com/walewise/shaping"
)

// mostShifted is how many edge needles move together; mostLoops how many loops a
// needle carries through a row: its own and those of a double decrease.
const (
	mostShifted = 3
	mostLoops   = 3
)

// do carries out one action. after says whether it follows its row.
func (j *judge) do(a shaping.Action, after bool) error {
	switch a.Do {
	case shaping.DoCarriage, shaping.DoCounter:
		return j.doCarriage(a)
	}
	if a.Needles.IsEmpty() || !a.Needles.IsValid() {
		return j.untrue(0, fmt.Sprintf("the action %v names no needles", a.Do))
	}
	switch a.Do {
	case shaping.DoCastOn:
		return j.doCastOn(a, after)
	case shaping.DoHold:
		return j.doHold(a, after)
	case shaping.DoReturn:
		return j.doReturn(a, after)
	case shaping.DoWaste:
		return j.doWaste(a, after)
	case shaping.DoBindOff:
		return j.doBindOff(a, after)
	case shaping.DoCastOnEdge:
		return j.doCastOnEdge(a, after)
	case shaping.DoWrap:
		return j.doWrap(a, after)
	case shaping.DoShift:
		return j.doShift(a, after)
	case shaping.DoFill:
		return j.doFill(a)
	}
	return j.untrue(0, fmt.Sprintf("%v is not an action", a.Do))
}

func (j *judge) doCarriage(a shaping.Action) error {
	switch {
	case j.work.Place != shaping.Bed:
		return j.impossible(0, fmt.Sprintf("%v: in the hand there is no carriage and no counter", a))
	case a.Do == shaping.DoCounter && a.Counter < 0:
		return j.impossible(0, fmt.Sprintf("the counter cannot show %d", a.Counter))
	case a.Do == shaping.DoCounter:
		j.counter = a.Counter
		return nil
	case !a.Side.IsValid():
		return j.untrue(0, "the carriage is moved to no side")
	}
	j.carriage = a.Side
	j.yarn = 0
	return nil
}

func (j *judge) doCastOn(a shaping.Action, after bool) error {
	if j.castOn || after || j.panel.Parent != "" {
		return j.impossible(a.Needles.First, "stitches are cast on once, before row 1; later ones at an edge")
	}
	if a.Needles != j.panel.Needles {
		return j.untrue(differs(a.Needles, j.panel.Needles), fmt.Sprintf("cast on are %v, the panel is said to have %v", a.Needles, j.panel.Needles))
	}
	for n := range a.Needles.All() {
		*j.at(n) = needle{position: inWork, loops: 1}
	}
	j.castOn = true
	j.ledger.CastOn += a.Needles.Len()
	return nil
}

func (j *judge) doHold(a shaping.Action, after bool) error {
	if after {
		return j.impossible(a.Needles.First, "needles are put on hold before a row, not after one")
	}
	if err := j.require(a, inWork); err != nil {
		return err
	}
	inPanel := j.panel.domain.ContainsSpan(a.Needles)
	if !inPanel && j.panel.domain.Overlaps(a.Needles) {
		return j.untrue(a.Needles.First, fmt.Sprintf("%v lies partly in the panel, which has %v", a.Needles, j.panel.domain))
	}
	if inPanel {
		edge, err := j.edgeOf(a)
		if err != nil {
			return err
		}
		if err := j.record(edge, -a.Needles.Len(), shaping.Hold); err != nil {
			return err
		}
	}
	for n := range a.Needles.All() {
		j.at(n).position = onHold
		j.at(n).unturned = true
	}
	return nil
}

func (j *judge) doReturn(a shaping.Action, after bool) error {
	if err := j.require(a, onHold); err != nil {
		return err
	}
	if beside := j.besideTurn(j.panel.row); after && a.Needles.Contains(beside) && j.panel.domain.Contains(beside) && j.at(beside).unturned {
		return j.impossible(beside, "the row turned beside this newly held needle: it is wrapped before it goes back to work")
	}
	for n := range a.Needles.All() {
		at := j.at(n)
		at.position, at.unturned, at.wrapped = inWork, false, false
	}
	return nil
}

func (j *judge) doWaste(a shaping.Action, after bool) error {
	atEnd := after && j.panel.lastAt == j.panel.LastRow
	for n := range a.Needles.All() {
		at := j.at(n)
		if at.loops == 0 {
			return j.impossible(n, "it holds no stitch to put on waste yarn")
		}
		if at.position == inWork && j.panel.domain.Contains(n) && !atEnd {
			return j.impossible(n, "a stitch in work goes to waste yarn after the panel's last row only")
		}
		j.empty(n, onWaste)
		j.wasted++
	}
	return nil
}

func (j *judge) doBindOff(a shaping.Action, after bool) error {
	if err := j.require(a, inWork); err != nil && !a.Separate {
		return err
	}
	if a.Separate {
		return j.bindOffSeparately(a)
	}
	run, _ := j.inWork(j.panel.domain)
	atEnd := after && j.panel.lastAt == j.panel.LastRow
	switch {
	case !run.ContainsSpan(a.Needles):
		return j.impossible(a.Needles.First, fmt.Sprintf("in work in the panel are %v", run))
	case after && !atEnd:
		return j.impossible(a.Needles.First, "stitches are bound off before the row that starts there, or after the panel's last row")
	case a.Needles.End(j.carriage) != run.End(j.carriage):
		return j.impossible(a.Needles.End(j.carriage), fmt.Sprintf("the yarn is at %v: stitches are bound off from there", run.End(j.carriage)))
	case j.yarn != 0 && j.yarn != run.End(j.carriage):
		return j.impossible(j.yarn, "the yarn hangs here, beside a stitch that is not in work")
	case a.Needles == run && !atEnd:
		return j.impossible(a.Needles.First, "a panel keeps at least one stitch in work")
	}
	if !atEnd {
		if err := j.record(j.carriage, -a.Needles.Len(), shaping.BindOff); err != nil {
			return err
		}
	}
	j.takeOff(a.Needles)
	j.panel.ledger.BoundOff += a.Needles.Len()
	if rest, _ := j.inWork(j.panel.domain); rest.IsEmpty() {
		j.yarn = 0
	} else {
		j.yarn = rest.End(j.carriage)
	}
	return nil
}

// bindOffSeparately binds off stitches outside the panel, as in the middle at a split.
func (j *judge) bindOffSeparately(a shaping.Action) error {
	if j.panel.domain.Overlaps(a.Needles) {
		return j.untrue(a.Needles.First, fmt.Sprintf("a separate yarn binds off stitches outside the panel, which has %v", j.panel.domain))
	}
	for n := range a.Needles.All() {
		if j.at(n).loops == 0 {
			return j.impossible(n, "it holds no stitch to bind off")
		}
	}
	j.takeOff(a.Needles)
	return nil
}

// takeOff empties the needles of bound-off stitches.
func (j *judge) takeOff(s shaping.Span) {
	for n := range s.All() {
		j.empty(n, boundOff)
	}
	j.ledger.BoundOff += s.Len()
}

func (j *judge) doCastOnEdge(a shaping.Action, after bool) error {
	run, _ := j.inWork(j.panel.domain)
	beside := run.Beyond(j.carriage, a.Needles.Len())
	switch {
	case after:
		return j.impossible(a.Needles.First, "stitches are cast on before the row that starts there")
	case run.IsEmpty() || a.Needles != beside:
		return j.impossible(a.Needles.First, fmt.Sprintf("the yarn is at the %v: the needles beside the stitches there are %v", j.carriage, beside))
	case j.yarn != 0 && j.yarn != run.End(j.carriage):
		return j.impossible(j.yarn, "the yarn hangs here, beside a stitch that is not in work")
	}
	if err := j.requireFree(a.Needles); err != nil {
		return err
	}
	if err := j.record(j.carriage, a.Needles.Len(), shaping.CastOn); err != nil {
		return err
	}
	for n := range a.Needles.All() {
		*j.at(n) = needle{position: inWork, loops: 1}
	}
	j.widen(a.Needles)
	j.ledger.CastOn += a.Needles.Len()
	j.panel.ledger.CastOn += a.Needles.Len()
	if j.yarn != 0 {
		j.yarn = a.Needles.End(j.carriage)
	}
	return nil
}

func (j *judge) doWrap(a shaping.Action, after bool) error {
	n := a.Needles.First
	switch {
	case a.Needles.Len() != 1:
		return j.untrue(n, "one needle is wrapped at a time")
	case !after:
		return j.impossible(n, "a needle is wrapped after the row that turns beside it")
	case j.at(n).position != onHold:
		return j.impossible(n, "only a needle on hold is wrapped")
	case n != j.besideTurn(j.panel.row):
		return j.impossible(n, fmt.Sprintf("the row turns beside %v", j.besideTurn(j.panel.row)))
	}
	at := j.at(n)
	at.unturned, at.wrapped = false, true
	j.cloth.wraps = append(j.cloth.wraps, Wrap{Row: j.panel.row.Row, Panel: j.panel.Name, Needle: n})
	return nil
}

func (j *judge) doShift(a shaping.Action, after bool) error {
	run, _ := j.inWork(j.panel.domain)
	switch {
	case after:
		return j.impossible(a.Needles.First, "stitches are moved before a row")
	case !a.Toward.IsValid():
		return j.untrue(a.Needles.First, "the stitches are moved to no side")
	case a.Needles.Len() > mostShifted:
		return j.impossible(a.Needles.First, fmt.Sprintf("%d stitches are moved at once, at most %d can be", a.Needles.Len(), mostShifted))
	}
	if err := j.require(a, inWork); err != nil {
		return err
	}
	target := a.Needles.Beyond(a.Toward, 1).First
	switch {
	case a.Needles.End(a.Toward) == run.End(a.Toward):
		return j.shiftOutward(a, target)
	case a.Needles.End(a.Toward.Opposite()) == run.End(a.Toward.Opposite()):
		return j.shiftInward(a, target)
	}
	return j.impossible(a.Needles.First, fmt.Sprintf("edge stitches are moved, the edges are %v and %v", run.First, run.Last))
}

// shiftInward moves the edge stitches onto their neighbours: one stitch less.
func (j *judge) shiftInward(a shaping.Action, target shaping.Needle) error {
	edge := a.Toward.Opposite()
	j.move(a)
	if j.at(target).loops > mostLoops {
		return j.impossible(target, fmt.Sprintf("it would hold %d loops", j.at(target).loops))
	}
	outer := a.Needles.End(edge)
	j.empty(outer, knittedOn)
	if j.yarn == outer {
		j.yarn = outer.Toward(a.Toward, 1)
	}
	j.ledger.Decreased++
	j.panel.ledger.Decreased++
	return j.record(edge, -1, shaping.Fashioned)
}

// shiftOutward moves the edge stitches by one and leaves a needle to fill.
func (j *judge) shiftOutward(a shaping.Action, target shaping.Needle) error {
	if err := j.requireFree(shaping.Span{First: target, Last: target}); err != nil {
		return err
	}
	*j.at(target) = needle{position: inWork}
	j.move(a)
	j.widen(shaping.Span{First: target, Last: target})
	if j.yarn == a.Needles.End(a.Toward) {
		j.yarn = target
	}
	return j.record(a.Toward, 1, shaping.Fashioned)
}

// move lifts the loops of the needles over by one, the leading needle first.
func (j *judge) move(a shaping.Action) {
	n := a.Needles.End(a.Toward)
	for range a.Needles.Len() {
		j.at(n.Toward(a.Toward, 1)).loops += j.at(n).loops
		j.at(n).loops = 0
		n = n.Toward(a.Toward.Opposite(), 1)
	}
}

func (j *judge) doFill(a shaping.Action) error {
	for n := range a.Needles.All() {
		at := j.at(n)
		if at.position != inWork || at.loops != 0 {
			return j.impossible(n, "only an empty needle in work is filled")
		}
		at.loops = 1
	}
	j.ledger.Increased += a.Needles.Len()
	j.panel.ledger.Increased += a.Needles.Len()
	return nil
}

// require checks that every needle of the action stands at that position with a
// loop to take.
func (j *judge) require(a shaping.Action, p position) error {
	for n := range a.Needles.All() {
		at := j.at(n)
		switch {
		case at.position == p && at.loops > 0:
		case at.loops == 0:
			return j.impossible(n, fmt.Sprintf("%v: it holds no stitch", a.Do))
		case p == inWork:
			return j.impossible(n, fmt.Sprintf("%v: it is on hold already", a.Do))
		default:
			return j.impossible(n, fmt.Sprintf("%v: it is not on hold", a.Do))
		}
	}
	return nil
}

// requireFree checks that the needles are empty and out of work.
func (j *judge) requireFree(s shaping.Span) error {
	for n := range s.All() {
		if at := j.at(n); at.position != outOfWork || at.loops > 0 {
			return j.impossible(n, "the needle is not free")
		}
	}
	return nil
}

// edgeOf returns the edge of the panel at which the action's needles lie.
func (j *judge) edgeOf(a shaping.Action) (shaping.Side, error) {
	run, _ := j.inWork(j.panel.domain)
	switch {
	case run == a.Needles:
		return 0, j.impossible(a.Needles.First, "a panel keeps at least one stitch in work")
	case run.First == a.Needles.First:
		return shaping.Left, nil
	case run.Last == a.Needles.Last:
		return shaping.Right, nil
	}
	return 0, j.impossible(a.Needles.First, fmt.Sprintf("%v: the panel's edges are %v and %v", a.Do, run.First, run.Last))
}

// widen makes the needles part of the panel.
func (j *judge) widen(s shaping.Span) { j.panel.domain = j.panel.domain.Around(s) }

// empty takes a needle out of work whose stitch is gone.
func (j *judge) empty(n shaping.Needle, how gone) { *j.at(n) = needle{gone: how} }
