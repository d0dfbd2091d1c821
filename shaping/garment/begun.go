package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// begun is the part of a piece that is on the needles when its rest is planned anew. What is
// planned carries it along and asks it what cannot be changed any more; a piece that is
// planned from its cast on has none.
type begun struct {
	piece Piece // as it was planned
	rows  int   // of its body that are knitted
	above bool  // an armhole has been begun, or the underarm is passed
	least int   // rows up to the underarm at least, while it is not passed
}

// body returns the body as it was planned.
func (b *begun) body() shaping.Panel { return b.piece.Work.Panels[0] }

// stitches returns the stitches that are in work: of one of two fronts those of both and what
// lies between them, as of a front in one piece.
func (b *begun) stitches() int { return b.together(b.body().InWork(b.rows).Len()) }

// together returns how many stitches of a front in one piece so many of one of two fronts
// are, seam stitches included. What lies between the fronts stays as it was: a back has the
// same cast on as both and that.
func (b *begun) together(own int) int {
	if !b.piece.Outer().IsValid() {
		return own
	}
	return 2*own + b.piece.Widths.Overlap
}

// atOuter returns the edge that has side and armhole: the only one of one of two fronts, of
// which the other is thought as its reflection, and of other pieces the edge itself.
func (b *begun) atOuter(edge shaping.Side) shaping.Side {
	if outer := b.piece.Outer(); outer.IsValid() {
		return outer
	}
	return edge
}

// steps returns what was done at one outer edge of the body.
func (b *begun) steps(edge shaping.Side) shaping.Schedule {
	return b.body().Steps(b.atOuter(edge)).Between(1, b.rows)
}

// outer returns what was planned at one outer edge of a front or a back below the shoulder.
func (b *begun) outer(edge shaping.Side) shaping.Schedule {
	edge = b.atOuter(edge)
	half, _ := b.piece.Work.Panels.Panel(shaping.HalfAt(edge))
	steps := append(slices.Clone(b.body().Steps(edge)), half.Steps(edge)...)
	return steps.Between(1, b.piece.ShoulderRow-1)
}

// goesOnWith returns the steps at one edge of the body: those that were done, and of the
// planned ones those that are still to come.
func (b *begun) goesOnWith(planned shaping.Schedule, edge shaping.Side) shaping.Schedule {
	if b == nil {
		return planned
	}
	steps := b.steps(edge)
	for _, step := range planned {
		if step.Row > b.rows {
			steps = append(steps, step)
		}
	}
	return steps
}

// firstArmhole returns the row before which the first stitch goes at an armhole of a front
// or a back: one above the underarm, or, where one edge goes first, the underarm's own. It is
// beyond the piece where none goes.
func (b *begun) firstArmhole() int {
	first := b.piece.Heights.Top() + 1
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		for _, e := range b.piece.Edges {
			if e.Name == ArmholeEdge && e.Side == edge {
				first = min(first, e.FirstRow)
			}
		}
		if b.piece.Widths.BindOff > 0 {
			for _, step := range b.outer(edge) {
				if step.Row >= b.piece.Heights.Underarm && tied(step.Method) {
					first = min(first, step.Row)
				}
			}
		}
	}
	return first
}

// slant returns a straight stretch of the sides as it was planned; ok is false if the piece
// has none of that name.
func (b *begun) slant(name string) (s slant, ok bool) {
	for _, e := range b.piece.Edges {
		if e.Name == name && e.Side == b.atOuter(shaping.Right) {
			above := e.FirstRow - 1
			return slant{name, above, e.Rows, e.Stitches, e.Schedule.Shifted(above)}, true
		}
	}
	return slant{}, false
}

// knitted returns the stretches that are knitted to their ends.
func (b *begun) knitted() []slant {
	var list []slant
	for _, name := range []string{HemToUnderarm, HemToWaist, WaistToUnderarm, CuffToUnderarm} {
		if s, ok := b.slant(name); ok && (b.above || s.top() <= b.rows) {
			list = append(list, s)
		}
	}
	return list
}

// kept returns a stretch as it was planned if what is left of it leads to the same row by
// as many stitches as s, the stretch from here on.
func (b *begun) kept(s slant) (slant, bool) {
	old, ok := b.slant(s.name)
	if !ok || old.above > s.above || old.top() != s.top() {
		return s, false
	}
	left := old.steps.Total() - old.steps.Through(b.rows)
	return old, left == -s.stitches
}

// top returns the row in which the stretch ends.
func (s slant) top() int { return s.above + s.rows }

// leads returns the stretch from here on that leads from so many stitches to so many, or as
// near to them as single steps can.
func (j job) leads(name string, above, top, from, to int, plainKept bool) slant {
	s := slant{name: name, above: above, rows: max(top-above, 0), stitches: (from - to) / 2}
	if _, kept := j.begun.kept(s); kept || s.stitches == 0 {
		return s
	}
	if _, ok := j.spaced(s, plainKept); ok {
		return s
	}
	if most := j.steepest(s, plainKept); s.stitches > 0 {
		s.stitches = most
	} else {
		s.stitches = -most
	}
	return s
}

// gone returns the stretches with their steps, those before them that are knitted included:
// of one that was to end here and goes on, what is new.
func (j job) gone(stretches []slant, plainKept bool) []slant {
	made := j.begun.knitted()
	for _, s := range stretches {
		old, kept := j.begun.kept(s)
		switch {
		case s.top() <= j.begun.rows:
			continue
		case kept:
			s = old
		case s.stitches == 0:
			continue
		default:
			s, _ = j.spaced(s, plainKept) // leads has seen to it
		}
		made = append(slices.DeleteFunc(made, func(before slant) bool { return before.name == s.name }), s)
	}
	return made
}

// band returns the rows of the band: those that are knitted if it is finished, and at least
// those that are.
func (b *begun) band(rows int) int {
	if old := b.piece.Heights.Band; b.rows >= old {
		return old
	}
	return max(rows, b.rows)
}

// remeasured returns an edge of the piece as it was planned, measured by another gauge: the
// same steps in the same box of stitches and rows.
func (b *begun) remeasured(e Edge, g gauge.Gauge) (Edge, error) {
	e.Schedule = e.Schedule.Shifted(e.FirstRow - 1)
	old := b.piece.Gauge
	if old.Equal(g) {
		return e, nil
	}
	drawn, err := curve.ParsePath(e.Path)
	if err != nil {
		return e, err
	}
	if drawn, err = drawn.Scaled(g.Width(e.Stitches), g.Height(e.Rows)); err != nil {
		return e, err
	}
	wider := millimetres(g.Width(1)) / millimetres(old.Width(1))
	higher := millimetres(g.Height(1)) / millimetres(old.Height(1))
	e.Path = drawn.Path()
	e.Area, e.Floor = e.Area*wider*higher, e.Floor*wider*higher
	e.Deviation = rounded(millimetres(e.Deviation) * wider)
	return e, nil
}

// begunWarnings says what is knitted, and which lengths cannot be what was asked any more.
func (j job) begunWarnings(sizes []Size) []string {
	b := j.begun
	if b == nil {
		return nil
	}
	list := []string{"The stitches are cast on; all rows are planned anew."}
	if b.rows > 0 {
		list[0] = fmt.Sprintf("Rows 1 to %d are knitted as they were planned before; the rest is planned anew.", b.rows)
	}
	if old := b.piece.Heights.Band; b.rows >= old && !b.piece.isSleeve() && j.gauge.Rows(j.spec.Start.Band).Sub(gauge.Whole(old)).Abs().Cmp(gauge.Whole(1)) > 0 {
		list = append(list, fmt.Sprintf("The band: asked are %s, it becomes %s: it is knitted already.", j.spec.fine(j.spec.Start.Band), j.spec.fine(j.gauge.Height(old))))
	}
	for _, s := range sizes {
		if outOfReach(s.Why) {
			list = append(list, fmt.Sprintf("%s: asked are %s, it becomes %s: %s.", upper(missedNames[s.Name]), j.spec.fine(s.Asked), j.spec.fine(s.Knitted), s.Why))
		}
	}
	return list
}

// Why a length of a piece that is gone on with is not what was asked.
const (
	knittedAlready = "it is knitted already"
	onNeedles      = "the stitches are on the needles, and without body.hem the sides stay straight"
	nearestLeft    = "the nearest that single steps over the rows left can reach"
)

// outOfReach reports whether why says that a length can no longer be what was asked.
func outOfReach(why string) bool {
	return why == knittedAlready || why == onNeedles || why == nearestLeft
}

// missedNames are the lengths that may be out of reach.
var missedNames = map[string]string{
	"hem": "the hem", "cuff": "the cuff", "waist": "the waist", "waistHeight": "the height of the waist",
	"width": "the width at the underarm", "length": "the length up to the underarm", "inset": "the armhole's inset",
}

// whyKnitted says why a length is off that lies in the rows that are knitted, and otherwise
// for a piece that is not begun.
func (j job) whyKnitted(otherwise string) string {
	if j.begun == nil {
		return otherwise
	}
	return knittedAlready
}

// whyReached says why a width is off to which the sides lead: because its parity is the
// cast on's, or because single steps do not lead so far.
func (j job) whyReached(asked gauge.Length, stitches int, otherwise string) string {
	if j.begun != nil && j.gauge.Stitches(asked).Round(gauge.SameParity(stitches, gauge.Nearest)) != stitches {
		return nearestLeft
	}
	return otherwise
}

// whyWidth says why a front or a back is not as wide at the underarm as was asked.
func (f *trunk) whyWidth() string {
	switch {
	case f.begun == nil:
		return ""
	case f.begun.above:
		return knittedAlready
	case !f.sidesMove():
		return onNeedles
	}
	return f.whyReached(f.spec.Body.Width, f.widths.Body-2*f.widths.Seam, parity(f.widths.Body)+", as the stitches on the needles are")
}

// whyLength says why the underarm is not as high as was asked.
func (f *trunk) whyLength() string {
	if b := f.begun; b != nil && (b.above || f.heights.Underarm <= b.least && f.gauge.Rows(f.spec.Body.Length).Cmp(gauge.Whole(b.rows)) < 0) {
		return knittedAlready
	}
	return "what armhole and shoulder leave of the whole height"
}

// whyHeight says why the whole is not as high as was asked, and otherwise for a piece whose
// underarm is not passed.
func (f *trunk) whyHeight(otherwise string) string {
	if f.whyLength() == knittedAlready {
		return "the rows up to the underarm are knitted already"
	}
	return otherwise
}

// whyWaist says why the waist is not as was asked.
func (f *trunk) whyWaist(otherwise string) string {
	switch b := f.begun; {
	case b == nil:
		return otherwise
	case f.heights.Waist <= b.rows:
		return knittedAlready
	}
	return f.whyReached(f.spec.Body.Waist.Width, f.widths.Waist-2*f.widths.Seam, otherwise)
}

// whyInset says why the inset of the armholes is not as was asked.
func (f *trunk) whyInset() string {
	if f.begun != nil && f.begun.above {
		return knittedAlready
	}
	return "what neck and shoulders leave of the body"
}
