package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// What of a front or a back is as it is when the rest is planned anew.

// heightsLeft returns the heights of a piece that is begun; h are those that the spec asks
// for. An underarm that is passed stays where it is, and one that would lie in the rows that
// are knitted goes up; the armhole keeps its depth above it.
func (f *trunk) heightsLeft(h Heights) (Heights, error) {
	b, g := f.begun, f.gauge
	if !b.above {
		if h.Underarm >= b.least {
			return h, nil
		}
		return f.heightsOver(g.Height(b.least), b.least)
	}
	underarm := b.piece.Heights.Underarm
	if h.Underarm == underarm {
		return h, nil
	}
	over, err := f.heightsOver(g.Height(underarm), underarm)
	over.Armhole += over.Underarm - underarm
	over.Underarm = underarm
	return over, err
}

// startingAtOuter sees to it that the rows of one of two fronts on the bed start at the outer
// edge above the start of the neck, as row 1 started where it did: if they would not, the
// armhole has a row less, and shoulder and neck begin a row lower. The underarm stays that of
// the back, of which one half may have its shoulder a row lower as well, but none a row higher.
func (f *trunk) startingAtOuter() {
	h := &f.heights
	if !f.outer.IsValid() || f.place != shaping.Bed || f.start(h.NeckStart()+1) == f.outer {
		return
	}
	f.turned = -1
	if h.Armhole == 1 {
		f.turned = 1
	}
	h.Armhole += f.turned
}

// keepOverlap leaves the stitches between two fronts as they were, so that these stay as wide
// together as the back that is cast on for them; the neck must leave a stitch in either.
func (f *trunk) keepOverlap() error {
	w := &f.widths
	w.Overlap = f.begun.piece.Widths.Overlap
	if least := w.Overlap + 2; w.Neck < least {
		const rounding = 2 // stitches
		return f.spec.fitError("neck.width", f.spec.Neck.Width, fmt.Sprintf("a neck of %s leaves no stitch in either front beside the %d between them, for which the fronts are cast on: %s is enough",
			plural.Stitches(w.Neck), w.Overlap, f.spec.atLeast(f.gauge.Width(least+rounding))))
	}
	w.Flat = max(w.Flat, w.Overlap)
	return nil
}

// checkFrontLeft refuses a waist that would leave no front, and one of two fronts that would
// become wider than its bed: it lies where it was cast on, and widens at its outer edge.
func (f *trunk) checkFrontLeft() error {
	w, s := f.widths, f.spec
	if waist := s.Body.Waist; waist != nil && f.heights.Waist > f.begun.rows {
		if err := f.checkLeast("body.waist.width", waist.Width, w.Waist-2*w.Seam, f.least()); err != nil {
			return err
		}
	}
	own, half := f.ownWidths(), f.mostStitches()/2
	span := f.needles()
	left, right := -span.First.Index(), span.Last.Index()+1
	more := own.Widest() - span.Len()
	if f.outer == shaping.Right {
		right += more
	} else {
		left += more
	}
	over := max(left, right) - half
	if over <= 0 {
		return nil
	}
	field, width := s.widest(own)
	if over > more {
		return &Error{Field: "work.needles", Given: fmt.Sprint(2 * half), Err: ErrBegun,
			Want: fmt.Sprintf("the stitches that are cast on need %d needles on each side of the middle", max(left, right)-more)}
	}
	return &Error{Field: field, Given: s.text(width), Err: ErrBed, Want: fmt.Sprintf(
		"%s, cast on over %v, would need %d needles %v of the middle, there are %d: at most %s with the other front and the overlap",
		plural.Stitches(own.Widest()), span, half+over, f.outer, half, s.atMost(f.gauge.Width(own.whole(own.Widest()-over, true))))}
}

// openedLeft says what of one of two fronts is not what was asked since it is begun.
func (f *trunk) openedLeft() []string {
	if f.begun == nil {
		return nil
	}
	var list []string
	if f.turned != 0 {
		less := "less"
		if f.turned > 0 {
			less = "more"
		}
		list = append(list, fmt.Sprintf("The armhole has a row %s than that of the back: row 1 started at the %v, and so the rows from the neck on start at the outer edge.", less, f.carriage))
	}
	asked, stitches := f.spec.overlap(), f.widths.Overlap
	if f.gauge.Stitches(asked).Sub(gauge.Whole(stitches)).Abs().Cmp(gauge.Whole(1)) > 0 {
		list = append(list, fmt.Sprintf("Between the fronts: asked are %s, it becomes %s: the fronts are cast on for it.", f.spec.fine(asked), f.spec.fine(f.gauge.Width(stitches))))
	}
	return list
}

// waist returns the height of the waist: one that is passed stays where it was, and one that
// should be lower than what is knitted goes up.
func (b *begun) waist(rows int) int {
	if old := b.piece.Heights.Waist; rows <= b.rows && 0 < old && old <= b.rows {
		return old
	}
	return max(rows, b.rows)
}

// keepSides chooses the stitches from the cast on to the underarm and returns those there,
// seam stitches included, with the parity of those on the needles.
func (f *trunk) keepSides(w *Widths) (body int) {
	b, h, spec := f.begun, f.heights, f.spec.Body
	old := b.piece.Widths
	w.CastOn = b.together(old.CastOn)
	there := b.stitches()
	if h.Waist > 0 {
		w.Waist = there
		if h.Waist <= b.rows && h.Waist == b.piece.Heights.Waist {
			w.Waist = b.together(old.Waist)
		}
	}
	if b.above {
		return b.together(old.Body)
	}
	if !f.sidesMove() {
		return there
	}
	nearest := func(width gauge.Length) int {
		return f.gauge.Stitches(width).Round(gauge.SameParity(there, gauge.Nearest)) + 2*w.Seam
	}
	from := max(h.Band, b.rows)
	if h.Waist <= from {
		return there - 2*f.leads(f.lastStretch(), from, h.Underarm, there, nearest(spec.Width), false).stitches
	}
	w.Waist = there - 2*f.leads(HemToWaist, from, h.Waist, there, nearest(spec.Waist.Width), false).stitches
	return w.Waist - 2*f.leads(WaistToUnderarm, h.Waist, h.Underarm, w.Waist, nearest(spec.Width), false).stitches
}

// sidesMove reports whether the spec asks for other widths than that at the underarm.
func (f *trunk) sidesMove() bool { return !f.spec.Body.Hem.IsZero() || f.spec.Body.Waist != nil }

// lastStretch returns the name of the stretch that ends at the underarm.
func (f *trunk) lastStretch() string {
	if f.spec.Body.Waist != nil {
		return WaistToUnderarm
	}
	return HemToUnderarm
}

// sidesLeft returns the stretches of the sides, with their steps from here on.
func (f *trunk) sidesLeft() []slant {
	b, w, h := f.begun, f.widths, f.heights
	if b.above || !f.sidesMove() {
		return f.gone(nil, false)
	}
	from, there := max(h.Band, b.rows), b.stitches()
	if h.Waist <= from {
		return f.gone([]slant{f.leads(f.lastStretch(), from, h.Underarm, there, w.Body, false)}, false)
	}
	return f.gone([]slant{
		f.leads(HemToWaist, from, h.Waist, there, w.Waist, false),
		f.leads(WaistToUnderarm, h.Waist, h.Underarm, w.Waist, w.Body, false),
	}, false)
}

// keepArmhole takes over the armholes of a piece in which they are begun, and refuses a
// shoulder or a neck with which their last steps cannot be worked.
func (f *trunk) keepArmhole() error {
	b := f.begun
	for _, e := range b.piece.Edges {
		if e.Name != ArmholeEdge {
			continue
		}
		edge, err := b.remeasured(e, f.gauge)
		if err != nil {
			return err
		}
		switch {
		case f.outer.IsValid():
			f.armholeEdge = twoEdges{edge, edge}
		case e.Side == shaping.Left:
			f.armholeEdge.left = edge
		default:
			f.armholeEdge.right = edge
		}
	}
	last, lastTied := 0, 0
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		for _, step := range b.outer(side) {
			last = max(last, step.Row)
			if tied(step.Method) {
				lastTied = max(lastTied, step.Row)
			}
		}
	}
	if least := last + 2; f.firstShoulderRow() < least {
		const rounding = 4
		return f.spec.fitError("armhole.depth", f.spec.Armhole.Depth, fmt.Sprintf("the armholes are begun and have steps up to row %d, below the shoulders: %s is enough",
			last, f.spec.atLeast(f.gauge.Height(least+rounding-f.heights.Underarm))))
	}
	if f.outer.IsValid() {
		return nil // a single panel goes on as it would
	}
	// On the bed a half starts at its own edge, whatever side the body's next row would.
	old, split := b.piece.Heights.NeckStart(), f.heights.NeckStart()
	if f.place == shaping.Bed && lastTied > b.rows && split != old && lastTied > min(split, old) {
		return &Error{Field: "rows", Given: fmt.Sprint(b.rows), Err: ErrBegun, Want: fmt.Sprintf(
			"the armholes are begun and the neck would begin at row %d instead of %d among their steps, which then cannot be worked as they were planned: go on from row %d or a lower one, or leave %s.depth so that the neck begins above row %d",
			split+1, old+1, min(b.firstArmhole()-1, b.piece.Heights.Underarm), f.neckField, lastTied)}
	}
	return nil
}

// checkBegun refuses an armhole or a shoulder that would begin in the rows that are knitted.
func (f *trunk) checkBegun() error {
	b := f.begun
	if first := f.shoulderRow(); first <= b.rows {
		const rounding = 4
		return f.spec.fitError("armhole.depth", f.spec.Armhole.Depth, fmt.Sprintf("the shoulders would begin in the rows that are knitted: at least %s",
			f.spec.atLeast(f.gauge.Height(b.rows+rounding-f.heights.Underarm))))
	}
	if b.above {
		return nil
	}
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		edge = b.atOuter(edge)
		for _, step := range append(f.underarm(edge), f.armholeEdge.at(edge).Schedule...) {
			if step.Row <= b.rows {
				return errTooSoon
			}
		}
	}
	return nil
}
