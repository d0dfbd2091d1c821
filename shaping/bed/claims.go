package bed

import (
	"fmt"

	"example.com/walewise/shaping"
)

// open makes the row's panel the one being worked, after finishing the one
// before where it changes, and checks the row's number.
func (j *judge) open(row *shaping.Row) error {
	if j.panel != nil && j.panel.Name == row.Panel {
		if want := j.panel.lastAt + 1; row.Row != want {
			return j.untrue(0, fmt.Sprintf("the next row is row %d, not %d", want, row.Row))
		}
		if row.Row > j.panel.LastRow {
			j.panel.row = row
			return j.untrue(0, fmt.Sprintf("the panel ends with row %d", j.panel.LastRow))
		}
		return nil
	}
	if err := j.close(); err != nil {
		return err
	}
	p, ok := j.work.Panels.Panel(row.Panel)
	if !ok {
		return j.untrue(0, fmt.Sprintf("row %d belongs to panel %q, which is not listed", row.Row, row.Panel))
	}
	if _, twice := j.done[p.Name]; twice {
		return j.untrue(0, fmt.Sprintf("row %d goes back to panel %q, which is finished", row.Row, p.Name))
	}
	if _, ready := j.done[p.Parent]; p.Parent != "" && !ready {
		return j.untrue(0, fmt.Sprintf("panel %q begins before panel %q is finished", p.Name, p.Parent))
	}
	joined := j.panel != nil && j.panel.Name == p.Parent
	j.panel = &panel{Panel: p, domain: p.Needles, ledger: shaping.Ledger{CastOn: p.Needles.Len()}, row: row}
	if row.Row != p.FirstRow {
		return j.untrue(0, fmt.Sprintf("the panel begins with row %d", p.FirstRow))
	}
	if j.castOn && !joined {
		j.yarn = 0
		if j.work.Place == shaping.Hand {
			j.carriage = row.From
		}
	}
	if p.Parent != "" {
		for n := range p.Needles.All() {
			if j.at(n).loops == 0 {
				return j.untrue(n, "the panel is said to begin with this needle, which holds no stitch")
			}
		}
	}
	return nil
}

// close finishes the panel being worked.
func (j *judge) close() error {
	p := j.panel
	if p == nil {
		return nil
	}
	if p.lastAt != p.LastRow {
		return j.untrue(0, fmt.Sprintf("the panel is said to end with row %d, its rows end with %d", p.LastRow, p.lastAt))
	}
	p.ledger.Live = p.ledger.CastOn + p.ledger.Increased - p.ledger.Decreased - p.ledger.BoundOff
	j.cloth.panels = append(j.cloth.panels, panelLedger{p.Name, p.ledger})
	j.done[p.Name] = p.lastAt
	return nil
}

// checkStart compares carriage and counter with what the row says.
func (j *judge) checkStart(row *shaping.Row) error {
	switch {
	case !j.castOn:
		return j.impossible(0, "nothing is cast on yet")
	case !row.From.IsValid():
		return j.untrue(0, "the row does not say from which side it starts")
	case j.work.Place == shaping.Hand && row.From != handSide(row.Row, j.work.Facing):
		return j.impossible(0, fmt.Sprintf("in the hand this row runs from the %v", handSide(row.Row, j.work.Facing)))
	case row.From != j.carriage:
		return j.impossible(0, fmt.Sprintf("the row is said to start at the %v, the carriage stands at the %v", row.From, j.carriage))
	case j.work.Place == shaping.Bed && j.counter != row.CounterBefore():
		return j.untrue(0, fmt.Sprintf("the counter shows %d before this row, it should show %d", j.counter, row.CounterBefore()))
	}
	return nil
}

// handSide returns where a row in the hand starts: right-side rows, the odd
// ones, run from right to left as seen on the knit side.
func handSide(row int, facing shaping.Facing) shaping.Side {
	if (row%2 == 1) == (facing == shaping.KnitSide) {
		return shaping.Right
	}
	return shaping.Left
}

// checkSteps compares what happened at the edges with the panel's schedules.
func (j *judge) checkSteps(row *shaping.Row) error {
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		done := *j.step(edge)
		said, _ := j.panel.Steps(edge).At(row.Row)
		if done.Stitches == said.Stitches && done.Method == said.Method {
			continue
		}
		return j.untrue(0, fmt.Sprintf("at the %v edge the schedule says %s, done is %s", edge, stepText(said), stepText(done)))
	}
	return nil
}

// checkBegin compares the needles that a panel is said to begin with and those that
// are in work at its first row: the schedules say which of them went, and what the
// parent left on hold at its edges may stay there.
func (j *judge) checkBegin(row *shaping.Row) error {
	p := j.panel
	if p.Parent == "" || row.Row != p.FirstRow {
		return nil
	}
	parent, _ := j.work.Panels.Panel(p.Parent)
	said, left := p.Needles, parent.InWork(parent.LastRow)
	if said.First.Index() < left.First.Index() {
		said.First = left.First
	}
	if said.Last.Index() > left.Last.Index() {
		said.Last = left.Last
	}
	if said.First.Index() > said.Last.Index() {
		return nil // all of it was left on hold
	}
	said = said.Moved(shaping.Left, p.Left.Through(row.Row)).Moved(shaping.Right, p.Right.Through(row.Row))
	if run, _ := j.inWork(p.domain); !run.ContainsSpan(said) {
		return j.untrue(differs(said, run), fmt.Sprintf("the panel is said to begin with %v, in work are %v", said, run))
	}
	return nil
}

func stepText(s shaping.Step) string {
	if s.Stitches == 0 {
		return "nothing"
	}
	return fmt.Sprintf("%+d by %v", s.Stitches, s.Method)
}

// step returns the record of what happened at one edge before this row.
func (j *judge) step(edge shaping.Side) *shaping.Step {
	if edge == shaping.Left {
		return &j.panel.gone[0]
	}
	return &j.panel.gone[1]
}

// record notes stitches that went or came at an edge of the panel.
func (j *judge) record(edge shaping.Side, stitches int, m shaping.Method) error {
	step := j.step(edge)
	if step.Stitches != 0 && step.Method != m {
		return j.untrue(0, fmt.Sprintf("at the %v edge two methods meet in one row: %v and %v", edge, step.Method, m))
	}
	step.Stitches += stitches
	step.Method = m
	return nil
}

// checkWrap asks for a wrap where the row turned beside a newly held needle.
func (j *judge) checkWrap(row *shaping.Row, turns bool) error {
	beyond := j.besideTurn(row)
	if !turns || beyond == 0 || !j.panel.domain.Contains(beyond) {
		return nil
	}
	if n := j.at(beyond); n.position == onHold && n.unturned {
		return j.impossible(beyond, "the row turns beside this newly held needle: without a wrap a hole stays")
	}
	return nil
}

// besideTurn returns the needle beyond the end of the row, no needle if there is none.
func (j *judge) besideTurn(row *shaping.Row) shaping.Needle {
	beyond := row.Knit.Beyond(row.From.Opposite(), 1).First
	if i := beyond.Index() - j.base; i < 0 || i >= len(j.needles) {
		return 0
	}
	return beyond
}

// counted returns the ledger with the stitches that are on the needles and on waste yarn.
func (j *judge) counted() shaping.Ledger {
	l := j.ledger
	l.Live = j.wasted
	for i := range j.needles {
		if j.needles[i].loops > 0 {
			l.Live++
		}
	}
	return l
}

// balance counts the stitches on the needles and closes the row's account.
func (j *judge) balance(row *shaping.Row) error {
	j.ledger = j.counted()
	if !j.ledger.Balances() {
		return j.untrue(0, fmt.Sprintf("%d stitches are not accounted for: %v", j.ledger.Balance(), j.ledger))
	}
	j.cloth.courses = append(j.cloth.courses, Course{
		Row: row.Row, Panel: row.Panel, From: row.From, Needles: row.Knit, Ledger: j.ledger,
	})
	return nil
}

// finish checks what must hold when the last row is done.
func (j *judge) finish() (Cloth, error) {
	if err := j.close(); err != nil {
		return Cloth{}, err
	}
	j.panel = nil
	for _, p := range j.work.Panels {
		if _, ok := j.done[p.Name]; !ok {
			return Cloth{}, j.untrue(0, fmt.Sprintf("panel %q has no rows", p.Name))
		}
	}
	for i, n := range j.needles {
		if n.loops > 0 {
			return Cloth{}, j.impossible(shaping.NeedleAt(j.base+i), "it still holds a stitch after the last row")
		}
	}
	if j.ledger != j.work.Ledger {
		return Cloth{}, j.untrue(0, fmt.Sprintf("the ledger says %v, counted are %v", j.work.Ledger, j.ledger))
	}
	j.cloth.ledger = j.ledger
	return j.cloth, nil
}
