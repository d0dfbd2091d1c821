package draw

import (
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// fabric is a piece as it lies: on which rows of height every wale has its stitches, and
// where it is shaped. Heights count rows from the cast-on edge: those of a wale that
// waited on hold go on where it stopped.
type fabric struct {
	needles shaping.Span
	wales   [][]run // of each needle, from left to right, from below
	marks   []mark
	height  int // of the highest wale
}

// run is a stretch of one wale without a gap: its stitches lie on the rows from+1 to to.
type run struct {
	from, to   int
	begins     shaping.Do // DoCastOn, DoWaste of a cast on in waste yarn, DoCastOnEdge, or DoShift of an increase
	ends       shaping.Do // DoBindOff, DoWaste, or DoShift of a decrease
	waitedLong bool       // put on waste yarn from the hold, without being knitted again
}

// mark is one stitch that goes or comes at a step of an edge.
type mark struct {
	step   shaping.Step
	panel  string
	edge   shaping.Side
	needle shaping.Needle
	height int // the row of height on which its cell lies
}

// lay returns the fabric of a piece. It goes through the order of work once, with a loop
// on each needle that remembers how high its wale is.
func lay(p garment.Piece) fabric {
	needles := p.Cloth.Needles()
	l := layer{fabric: fabric{needles: needles, wales: make([][]run, needles.Len())}, loops: make([]loop, needles.Len()), castOn: shaping.DoCastOn}
	if p.Spec.Start.Edge == garment.WasteEdge {
		l.castOn = shaping.DoWaste
	}
	for _, row := range p.Work.Rows {
		panel, _ := p.Work.Panels.Panel(row.Panel)
		l.markGone(panel, row)
		l.do(row.Before)
		l.knit(row.Knit)
		l.markCome(panel, row)
		l.do(row.After)
	}
	return l.fabric
}

type layer struct {
	fabric
	loops  []loop
	castOn shaping.Do // how wales begin then
}

// loop is what a needle holds.
type loop struct {
	there, held bool
	height      int // of its wale
}

func (l *layer) index(n shaping.Needle) int { return n.Index() - l.needles.First.Index() }

func (l *layer) loop(n shaping.Needle) *loop { return &l.loops[l.index(n)] }

func (l *layer) do(actions []shaping.Action) {
	for _, a := range actions {
		switch a.Do {
		case shaping.DoCastOn:
			for n := range a.Needles.All() {
				l.begin(n, 0, l.castOn)
			}
		case shaping.DoCastOnEdge:
			l.castOnEdge(a)
		case shaping.DoHold, shaping.DoReturn:
			for n := range a.Needles.All() {
				l.loop(n).held = a.Do == shaping.DoHold
			}
		case shaping.DoBindOff, shaping.DoWaste:
			for n := range a.Needles.All() {
				l.end(n, a.Do)
			}
		case shaping.DoShift:
			outermost := a.Needles.End(a.Toward)
			if next := outermost.Toward(a.Toward, 1); !l.loop(next).there {
				l.begin(next, l.loop(outermost).height, a.Do)
			}
			l.end(a.Needles.End(a.Toward.Opposite()), a.Do)
		case shaping.DoFill:
			for n := range a.Needles.All() {
				l.begin(n, l.loop(n).height, a.Do)
			}
		}
	}
}

// castOnEdge begins wales beside an edge, as high as it is there.
func (l *layer) castOnEdge(a shaping.Action) {
	height := 0
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		beside := a.Needles.Beyond(side, 1).First
		if l.needles.Contains(beside) && l.loop(beside).there {
			height = l.loop(beside).height
		}
	}
	for n := range a.Needles.All() {
		l.begin(n, height, a.Do)
	}
}

// begin puts a loop on a needle. Where its wale ends at this height, as that of a needle
// which is filled again at once, it goes on.
func (l *layer) begin(n shaping.Needle, height int, by shaping.Do) {
	*l.loop(n) = loop{there: true, height: height}
	runs := &l.wales[l.index(n)]
	if k := len(*runs) - 1; k >= 0 && (*runs)[k].to == height {
		(*runs)[k].ends = 0
		return
	}
	*runs = append(*runs, run{from: height, to: height, begins: by})
}

// end takes the loop off a needle.
func (l *layer) end(n shaping.Needle, by shaping.Do) {
	at := l.loop(n)
	at.there = false
	if runs := l.wales[l.index(n)]; len(runs) > 0 {
		last := &runs[len(runs)-1]
		last.ends, last.waitedLong = by, at.held
	}
}

func (l *layer) knit(needles shaping.Span) {
	for n := range needles.All() {
		at := l.loop(n)
		at.height++
		runs := l.wales[l.index(n)]
		runs[len(runs)-1].to = at.height
		l.height = max(l.height, at.height)
	}
}

// markGone marks the stitches that go before a row: they lie beside those that it knits.
func (l *layer) markGone(panel shaping.Panel, row shaping.Row) {
	l.marksOf(panel, row, func(edge shaping.Side, stitches int) shaping.Span { return row.Knit.Beyond(edge, -stitches) })
}

// markCome marks the stitches that came before a row: they are the outermost of it.
func (l *layer) markCome(panel shaping.Panel, row shaping.Row) {
	l.marksOf(panel, row, func(edge shaping.Side, stitches int) shaping.Span { return row.Knit.Edge(edge, stitches) })
}

func (l *layer) marksOf(panel shaping.Panel, row shaping.Row, where func(shaping.Side, int) shaping.Span) {
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		for _, step := range panel.Steps(edge).Between(row.Row, row.Row) {
			for n := range where(edge, step.Stitches).All() {
				l.marks = append(l.marks, mark{step, panel.Name, edge, n, l.loop(n).height})
			}
		}
	}
}
