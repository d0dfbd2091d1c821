package bed

import (
	"errors"
	"fmt"
	"iter"
	"slices"

	"example.com/walewise/shaping"
)

// State is how things stand between two rows. It is immutable: what its methods return are
// copies. Its zero value is that of no work.
type State struct {
	piece, panel string
	row, counter int
	carriage     shaping.Side
	yarn         shaping.Needle
	base         int // Needle.Index of needles[0]
	needles      []needle
	heights      []int32
	courses      int
	wraps        []Wrap
	ledger       shaping.Ledger
}

// ErrNoRow: the work has no such row.
var ErrNoRow = errors.New("no such row")

// KnitTo knits the work up to a row of the piece in a panel and returns how things stand then: the row
// is knitted and wrapped, and what is taken off the needles after a panel's last row still
// hangs on them. The row before a panel's first one stands for the panel's beginning: the
// stitches are cast on, or, where the panel begins with a new end of yarn, the panel
// before it is finished, the carriage has been moved and the counter set.
//
// It returns a [*Refusal] as [Knit] does for the first thing up to there that cannot be
// done or is not true, and one that wraps [ErrNoRow] for a panel or row that the work does
// not have. What comes later is not judged. It is linear in the loops knitted.
func KnitTo(w shaping.Work, panel string, row int) (State, error) {
	j := &judge{work: w}
	if err := j.prepare(); err != nil {
		return State{}, err
	}
	p, ok := w.Panels.Panel(panel)
	if !ok {
		return State{}, noRow(w, panel, row, "panels", panelNames(w.Panels))
	}
	if row < p.FirstRow-1 || row > p.LastRow {
		return State{}, noRow(w, panel, row, "rows of the panel", fmt.Sprintf("%d to %d, and %d for its beginning", p.FirstRow, p.LastRow, p.FirstRow-1))
	}
	for i := range w.Rows {
		if w.Rows[i].Panel == panel {
			if w.Rows[i].Row == row {
				return j.stateAfter(i)
			}
			if row < p.FirstRow {
				return j.stateBefore(i)
			}
		}
		if err := j.row(i); err != nil {
			return State{}, err
		}
	}
	return State{}, j.untrue(0, fmt.Sprintf("panel %q has no row %d", panel, row))
}

// noRow is the error for a place that a work does not have.
func noRow(w shaping.Work, panel string, row int, what, has string) error {
	return &Refusal{Piece: w.Name, Panel: panel, Row: max(row, 0), Reason: fmt.Sprintf("there is no row %d of panel %q; %s are %s", row, panel, what, has), Err: ErrNoRow}
}

// panelNames lists the panels for a message.
func panelNames(panels shaping.Tree) string {
	text := ""
	for i, p := range panels {
		if i > 0 {
			text += ", "
		}
		text += p.Name
	}
	return text
}

// stateBefore returns how things stand when the panel of the i-th row begins.
func (j *judge) stateBefore(i int) (State, error) {
	row := &j.work.Rows[i]
	if err := j.open(row); err != nil {
		return State{}, err
	}
	j.panel.row = row
	for _, a := range row.Before {
		switch a.Do {
		case shaping.DoCastOn, shaping.DoCarriage, shaping.DoCounter:
			if err := j.do(a, false); err != nil {
				return State{}, err
			}
		}
	}
	return j.state(row.Row - 1), nil
}

// stateAfter returns how things stand after the i-th row.
func (j *judge) stateAfter(i int) (State, error) {
	row := &j.work.Rows[i]
	if err := j.open(row); err != nil {
		return State{}, err
	}
	if err := j.across(i); err != nil {
		return State{}, err
	}
	wraps := row.After
	off := slices.IndexFunc(wraps, func(a shaping.Action) bool { return a.Do == shaping.DoWaste || a.Do == shaping.DoBindOff })
	if off >= 0 {
		wraps = wraps[:off]
	}
	if err := j.follow(i, wraps); err != nil {
		return State{}, err
	}
	return j.state(row.Row), nil
}

// state returns how things stand; the judge is not used any more.
func (j *judge) state(row int) State {
	return State{
		piece: j.work.Name, panel: j.panel.Name, row: row, counter: row,
		carriage: j.carriage, yarn: j.yarn, base: j.base, needles: j.needles, heights: j.cloth.heights,
		courses: len(j.cloth.courses), wraps: j.cloth.wraps, ledger: j.counted(),
	}
}

// String says where the work stands in short, such as "front, row 60 of the body, carriage
// right, in work L55-R55"; of no work it is "no state".
func (s State) String() string {
	if s.piece == "" && s.panel == "" {
		return "no state"
	}
	text := fmt.Sprintf("%s, row %d of the %s", s.piece, s.row, s.panel)
	if s.carriage.IsValid() {
		text += fmt.Sprintf(", carriage %v", s.carriage)
	}
	for _, run := range s.InWork() {
		text += fmt.Sprintf(", in work %v", run)
	}
	return text
}

// Piece returns the name of the work.
func (s State) Piece() string { return s.piece }

// Panel returns the name of the panel that is being worked, or that begins here.
func (s State) Panel() string { return s.panel }

// Row returns the row of the piece that was knitted last in the panel; one less than the
// panel's first row when it begins.
func (s State) Row() int { return s.row }

// Counter returns what the row counter shows, in the hand what one would show.
func (s State) Counter() int { return s.counter }

// Carriage returns the side where the carriage stands, in the hand where the yarn is: where
// the next row starts.
func (s State) Carriage() shaping.Side { return s.carriage }

// Yarn returns the needle at which the yarn hangs; no needle before the first row and
// where a panel begins with a new end of yarn.
func (s State) Yarn() shaping.Needle { return s.yarn }

// Rows returns the number of rows knitted so far, those of both halves counted.
func (s State) Rows() int { return s.courses }

// Ledger returns the ledger of the piece so far: Live are all stitches on the needles and
// on waste yarn.
func (s State) Ledger() shaping.Ledger { return s.ledger }

// Wraps yields the wraps made so far. It can be ranged over more than once.
func (s State) Wraps() iter.Seq[Wrap] { return slices.Values(s.wraps) }

// Height returns the number of rows that the needle has knitted so far, 0 for needles that
// the work does not name.
func (s State) Height(n shaping.Needle) int {
	if i := n.Index() - s.base; n != 0 && i >= 0 && i < len(s.heights) {
		return int(s.heights[i])
	}
	return 0
}

// InWork returns the runs of needles in work, from left to right. There is more than one
// only where a half is still to be put on hold, none between two halves.
func (s State) InWork() []shaping.Span {
	return s.runs(func(n needle) bool { return n.position == inWork })
}

// OnHold returns the runs of needles on hold, from left to right.
func (s State) OnHold() []shaping.Span {
	return s.runs(func(n needle) bool { return n.position == onHold })
}

// OnWaste returns the runs of empty needles whose stitches are on waste yarn.
func (s State) OnWaste() []shaping.Span {
	return s.runs(func(n needle) bool { return n.loops == 0 && n.gone == onWaste })
}

// BoundOff returns the runs of empty needles whose stitches were bound off.
func (s State) BoundOff() []shaping.Span {
	return s.runs(func(n needle) bool { return n.loops == 0 && n.gone == boundOff })
}

// IsWrapped reports whether the needle is on hold with the yarn laid round it.
func (s State) IsWrapped(n shaping.Needle) bool {
	i := n.Index() - s.base
	return n != 0 && i >= 0 && i < len(s.needles) && s.needles[i].wrapped
}

// extent returns the needles that the work names.
func (s State) extent() shaping.Span {
	if len(s.needles) == 0 {
		return shaping.Span{}
	}
	return shaping.Span{First: shaping.NeedleAt(s.base), Last: shaping.NeedleAt(s.base + len(s.needles) - 1)}
}

func (s State) runs(wanted func(needle) bool) []shaping.Span {
	return s.extent().Runs(func(n shaping.Needle) bool { return wanted(s.needles[n.Index()-s.base]) })
}

// Equal reports whether two works have come to the same state: the same needles in work, on
// hold and wrapped, the same wales, carriage, counter and ledger. Which other needles the
// works name later, and what they are called, does not count.
func (s State) Equal(t State) bool {
	if s.panel != t.panel || s.row != t.row || s.counter != t.counter || s.carriage != t.carriage || s.yarn != t.yarn ||
		s.courses != t.courses || s.ledger != t.ledger || !slices.Equal(s.wraps, t.wraps) {
		return false
	}
	for n := range s.extent().Around(t.extent()).All() {
		if s.needle(n) != t.needle(n) || s.Height(n) != t.Height(n) {
			return false
		}
	}
	return true
}

// needle returns the state of a needle, that of an empty one for those that the work does
// not name.
func (s State) needle(n shaping.Needle) needle {
	if i := n.Index() - s.base; i >= 0 && i < len(s.needles) {
		return s.needles[i]
	}
	return needle{}
}
