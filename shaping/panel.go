package shaping

import "fmt"

// MaxRows is the greatest number of rows of a piece, those of both halves counted, and so the
// highest row.
const MaxRows = 5000

// Panel is a run of neighbouring needles worked over consecutive rows, shaped at
// its left and its right edge. Rows of the panel and of its steps are rows of the
// piece.
type Panel struct {
	Name     string
	Parent   string   // the panel it grew out of, empty for the body
	FirstRow int      // a row of the piece, from 1
	LastRow  int      // a row of the piece, the last that is worked
	Needles  Span     // its needles before anything is done at its first row
	Left     Schedule // the steps at its left edge
	Right    Schedule // the steps at its right edge
}

// Steps returns the schedule of one edge.
func (p Panel) Steps(edge Side) Schedule {
	if edge == Left {
		return p.Left
	}
	return p.Right
}

// Rows returns the number of rows; that of the zero Panel, which is not sound, is 1.
func (p Panel) Rows() int { return p.LastRow - p.FirstRow + 1 }

// InWork returns the needles that row is knitted on, as the schedules say it;
// held stitches are counted as gone, and the closing row that brings them back
// is not looked at.
func (p Panel) InWork(row int) Span {
	return p.Needles.movedBoth(p.Left.Through(row), p.Right.Through(row))
}

// Ledger accounts for the panel's own stitches. CastOn are those it began with
// and those cast on at its edges; held stitches are live.
func (p Panel) Ledger() Ledger {
	l := Ledger{CastOn: p.Needles.Len()}
	for _, edge := range []Schedule{p.Left, p.Right} {
		for _, step := range edge {
			switch {
			case step.Method == CastOn:
				l.CastOn += step.Stitches
			case step.Method == BindOff:
				l.BoundOff -= step.Stitches
			case step.Method == Fashioned && step.Stitches > 0:
				l.Increased += step.Stitches
			case step.Method == Fashioned:
				l.Decreased -= step.Stitches
			}
		}
	}
	l.Live = l.CastOn + l.Increased - l.Decreased - l.BoundOff
	return l
}

// Validate returns an [*Error] if the panel is not sound in itself: no name, no
// rows, rows beyond [MaxRows], no needles, steps outside its rows, steps without a method or with one
// that cannot do what they say, edges that take the last stitch or go beyond the
// highest needle.
func (p Panel) Validate() error {
	what := "panel " + p.Name
	switch {
	case p.Name == "":
		return infeasible("panel", "without a name", "a panel needs a name")
	case p.FirstRow < 1 || p.LastRow < p.FirstRow:
		return infeasible(what, fmt.Sprintf("rows %d to %d", p.FirstRow, p.LastRow), "rows count from 1, the first is not after the last")
	case p.LastRow > MaxRows:
		return rangeError("last row of "+what, p.LastRow, fmt.Sprintf("a piece has at most %d rows", MaxRows))
	case p.Needles.IsEmpty() || !p.Needles.IsValid():
		return infeasible(what, fmt.Sprintf("needles %v", p.Needles), "at least one needle, named from left to right")
	}
	for _, edge := range []Side{Left, Right} {
		if err := p.validateEdge(edge); err != nil {
			return err
		}
	}
	for row := range p.shapedRows() {
		at := func() string { return fmt.Sprintf("row %d", row) } // only for a fault
		switch inWork := p.InWork(row); {
		case inWork.IsEmpty():
			return infeasible(what, at(), "a panel keeps at least one stitch in work")
		case !inWork.IsValid():
			return infeasible(what, at(), fmt.Sprintf("needles are numbered 1 to %d on each side", MaxNeedle))
		}
	}
	return nil
}

func (p Panel) validateEdge(edge Side) error {
	what := fmt.Sprintf("panel %s, %v edge", p.Name, edge)
	steps := p.Steps(edge)
	if err := steps.Validate(); err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	for _, step := range steps {
		at := func() string { return fmt.Sprintf("step at row %d", step.Row) }
		switch {
		case step.Row < p.FirstRow || step.Row > p.LastRow:
			return infeasible(what, at(), fmt.Sprintf("the panel has rows %d to %d", p.FirstRow, p.LastRow))
		case !step.Method.IsValid():
			return infeasible(what, at(), "a step needs a method")
		case step.Stitches > 0 && (step.Method == Hold || step.Method == BindOff):
			return infeasible(what, at(), fmt.Sprintf("stitches do not come by %v", step.Method))
		case step.Stitches < 0 && step.Method == CastOn:
			return infeasible(what, at(), "stitches do not go by castOn")
		}
	}
	return nil
}

// shapedRows yields the rows that have a step at either edge.
func (p Panel) shapedRows() func(yield func(int) bool) {
	return func(yield func(int) bool) {
		for _, edge := range []Schedule{p.Left, p.Right} {
			for _, step := range edge {
				if !yield(step.Row) {
					return
				}
			}
		}
	}
}
