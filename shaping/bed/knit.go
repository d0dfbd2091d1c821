package bed

import (
	"fmt"

	"example.com/walewise/shaping"
)

// Knit knits the work and returns the cloth, or a [*Refusal] for the first thing
// that cannot be done or is not true. It does not change the work.
func Knit(w shaping.Work) (Cloth, error) {
	j := &judge{work: w}
	if err := j.prepare(); err != nil {
		return Cloth{}, err
	}
	for i := range w.Rows {
		if err := j.row(i); err != nil {
			return Cloth{}, err
		}
	}
	return j.finish()
}

// position is where a needle stands.
type position uint8

const (
	outOfWork position = iota
	inWork
	onHold
)

// needle is the state of one needle.
type needle struct {
	position position
	loops    uint8
	unturned bool // newly held: the first turn beside it needs a wrap
	wrapped  bool // on hold, with the yarn laid round it
	gone     gone // where the last stitch went that it held
}

// gone is what became of a stitch that a needle holds no more.
type gone uint8

const (
	knittedOn gone = iota // moved to another needle, or there was none
	onWaste
	boundOff
)

// judge is the bed in the middle of a work.
type judge struct {
	work shaping.Work

	base    int // Needle.Index of needles[0]
	needles []needle

	carriage shaping.Side   // where the carriage, in the hand the yarn, is
	counter  int            // what the row counter shows
	yarn     shaping.Needle // where the yarn hangs; no needle after it was broken
	castOn   bool           // the stitches are on
	wasted   int            // stitches on waste yarn

	panel  *panel         // the one being worked, nil at first
	done   map[string]int // finished panels and the row they ended with
	ledger shaping.Ledger // of the piece; Live is counted, not kept
	cloth  Cloth
}

// panel is the state of the panel being worked.
type panel struct {
	shaping.Panel
	domain shaping.Span // its needles, wider after increases
	lastAt int          // the last row knitted
	ledger shaping.Ledger
	gone   [2]shaping.Step // what happened at the left and right edge before this row
	row    *shaping.Row
}

// prepare checks what can be checked before a stitch is made and sets up the bed.
func (j *judge) prepare() error {
	w := j.work
	switch {
	case !w.Place.IsValid() || !w.Facing.IsValid():
		return j.untrue(0, "it must say where it is knitted (bed or hand) and which side faces the knitter (purl or knit)")
	case len(w.Rows) == 0:
		return j.untrue(0, "it has no rows")
	case len(w.Rows) > shaping.MaxRows:
		return j.untrue(0, fmt.Sprintf("it has %d rows, at most %d are judged", len(w.Rows), shaping.MaxRows))
	}
	if err := w.Panels.Validate(); err != nil {
		return &Refusal{Piece: w.Name, Reason: err.Error(), Err: ErrUntrue}
	}
	low, high, ok := j.extent()
	if !ok {
		return j.untrue(0, fmt.Sprintf("it names a needle beyond L%d or R%d, or from right to left", shaping.MaxNeedle, shaping.MaxNeedle))
	}
	j.base = low
	j.needles = make([]needle, high-low+1)
	j.cloth.base = low
	j.cloth.heights = make([]int32, high-low+1)
	j.cloth.courses = make([]Course, 0, len(w.Rows))
	j.done = make(map[string]int, len(w.Panels))
	j.carriage = w.Rows[0].From
	return nil
}

// extent returns the lowest and highest index of any needle that the work names.
func (j *judge) extent() (low, high int, ok bool) {
	low, high = shaping.MaxNeedle, -shaping.MaxNeedle
	ok = true
	include := func(s shaping.Span) {
		if s.IsEmpty() {
			return
		}
		if !s.IsValid() {
			ok = false
			return
		}
		low, high = min(low, s.First.Index()), max(high, s.Last.Index())
	}
	for _, p := range j.work.Panels {
		include(p.Needles)
	}
	for _, row := range j.work.Rows {
		include(row.Knit)
		for _, actions := range [2][]shaping.Action{row.Before, row.After} {
			for _, a := range actions {
				include(a.Needles)
				if a.Do == shaping.DoShift {
					include(a.Needles.Beyond(a.Toward, 1))
				}
			}
		}
	}
	return low, high, ok
}

// row knits the i-th row with what stands before and after it.
func (j *judge) row(i int) error {
	if err := j.open(&j.work.Rows[i]); err != nil {
		return err
	}
	if err := j.across(i); err != nil {
		return err
	}
	return j.follow(i, j.work.Rows[i].After)
}

// across does what stands before the i-th row of the panel that is open, and knits it.
func (j *judge) across(i int) error {
	row := &j.work.Rows[i]
	j.panel.row = row
	j.panel.gone = [2]shaping.Step{}
	for _, a := range row.Before {
		if err := j.do(a, false); err != nil {
			return err
		}
	}
	if err := j.checkStart(row); err != nil {
		return err
	}
	if err := j.checkSteps(row); err != nil {
		return err
	}
	if err := j.checkBegin(row); err != nil {
		return err
	}
	return j.knit(row)
}

// follow does what stands after the i-th row, or the beginning of it, and closes the row's
// account.
func (j *judge) follow(i int, after []shaping.Action) error {
	row := &j.work.Rows[i]
	for _, a := range after {
		if err := j.do(a, true); err != nil {
			return err
		}
	}
	turns := i+1 < len(j.work.Rows) && !j.newYarn(&j.work.Rows[i+1])
	if err := j.checkWrap(row, turns); err != nil {
		return err
	}
	return j.balance(row)
}

// newYarn reports whether the row begins with a new end of yarn.
func (j *judge) newYarn(row *shaping.Row) bool {
	for _, a := range row.Before {
		if a.Do == shaping.DoCarriage {
			return true
		}
	}
	next, _ := j.work.Panels.Panel(row.Panel)
	return row.Panel != j.panel.Name && next.Parent != j.panel.Name
}

// knit takes the carriage across.
func (j *judge) knit(row *shaping.Row) error {
	run, gap := j.inWork(shaping.Span{})
	switch {
	case gap != 0:
		return j.impossible(gap, "the needles in work are not neighbours: this one is not in work between others that are")
	case run.IsEmpty():
		return j.impossible(0, "no needle is in work")
	case run != row.Knit:
		return j.untrue(differs(run, row.Knit), fmt.Sprintf("the row is said to be knitted on %v, in work are %v", row.Knit, run))
	case !j.panel.domain.ContainsSpan(run):
		return j.untrue(differs(run, j.panel.domain), fmt.Sprintf("in work are %v, the panel has %v", run, j.panel.domain))
	}
	start := run.End(row.From)
	if j.yarn != 0 && j.yarn != start {
		return j.impossible(j.yarn, fmt.Sprintf("the yarn hangs here, the row would start at %v: stitches are held where a row ends, not where it starts", start))
	}
	first := run.First.Index() - j.base
	for k := range run.Len() {
		n := &j.needles[first+k]
		if n.loops == 0 {
			return j.impossible(shaping.NeedleAt(j.base+first+k), "it is in work without a loop: fill it first")
		}
		n.loops = 1
		j.cloth.heights[first+k]++
	}
	j.carriage = row.From.Opposite()
	j.yarn = run.End(j.carriage)
	j.counter++
	j.panel.lastAt = row.Row
	return nil
}

// inWork returns the run of needles in work within the given span, on the whole
// bed for an empty one, and the first needle that interrupts it.
func (j *judge) inWork(within shaping.Span) (run shaping.Span, gap shaping.Needle) {
	from, to := 0, len(j.needles)-1
	if !within.IsEmpty() {
		from, to = within.First.Index()-j.base, within.Last.Index()-j.base
	}
	first, last, missing := -1, -1, -1
	for i := from; i <= to; i++ {
		switch {
		case j.needles[i].position == inWork:
			if first < 0 {
				first = i
			} else if last != i-1 && missing < 0 {
				missing = last + 1
			}
			last = i
		}
	}
	if first < 0 {
		return shaping.Span{}, 0
	}
	if missing >= 0 {
		gap = shaping.NeedleAt(j.base + missing)
	}
	return shaping.Span{First: shaping.NeedleAt(j.base + first), Last: shaping.NeedleAt(j.base + last)}, gap
}

// differs returns a needle at an end where the spans differ.
func differs(a, b shaping.Span) shaping.Needle {
	if a.First != b.First {
		return a.First
	}
	return a.Last
}

func (j *judge) at(n shaping.Needle) *needle { return &j.needles[n.Index()-j.base] }

func (j *judge) refuse(n shaping.Needle, reason string, kind error) error {
	r := &Refusal{Piece: j.work.Name, Needle: n, Reason: reason, Err: kind}
	if j.panel != nil {
		r.Panel = j.panel.Name
		if j.panel.row != nil {
			r.Row = j.panel.row.Row
		}
	}
	return r
}

func (j *judge) impossible(n shaping.Needle, reason string) error {
	return j.refuse(n, reason, ErrImpossible)
}

func (j *judge) untrue(n shaping.Needle, reason string) error {
	return j.refuse(n, reason, ErrUntrue)
}
