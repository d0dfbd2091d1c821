package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// One of two fronts is the half of a front in one piece that has its outer edge: numbers,
// heights and edges are chosen as there, so that sides, armholes and shoulders are those of
// the back. It is one panel with the neck at its inner edge.

// Fronts plans the two fronts of a garment that opens down the middle, knits them and
// returns them; right is the one on the wearer's right. It returns the same kinds of errors
// as [Front], and one for a spec without an opening.
//
// On the bed the left front is the reflection of the right one, the carriage at row 1
// included: that follows from the row where the neck begins, which must start at the outer
// edge, and not from the spec's [Setup.Carriage]. In the hand, where a reflection cannot be
// knitted as it is, what is held or bound off at neck and shoulder of the right front stands
// one row later; decreases are at the same rows in both.
func Fronts(s Spec) (right, left Piece, err error) {
	j, err := newJob(s)
	if err != nil {
		return right, left, err
	}
	if s.Opening == nil {
		return right, left, &Error{Field: "opening", Want: "missing: give it, if only as {}, or plan a front in one piece", Err: ErrSpec}
	}
	fronts, err := newFronts(j)
	if err != nil {
		return right, left, err
	}
	if right, err = j.alone(fronts[0], nil); err != nil {
		return right, left, err
	}
	left, err = j.alone(fronts[1], nil)
	return right, left, err
}

// newFronts plans the right and the left front.
func newFronts(j job) ([]Piece, error) {
	var fronts []Piece
	for _, name := range []string{shaping.RightFront, shaping.LeftFront} {
		front, err := newOneOfTwo(j, name)
		if err != nil {
			return nil, err
		}
		fronts = append(fronts, front)
	}
	return fronts, nil
}

// newOneOfTwo plans the front of that name.
func newOneOfTwo(j job, name string) (Piece, error) {
	f := newTrunk(name, j)
	f.neckField = "neck"
	f.outer = outerEdge(name, j.place.Facing())
	return f.plan()
}

// outerEdge returns the outer edge of one of two fronts: the purl side is inside, so that the
// wearer's right is at the right there, and at the left of the right side. Other pieces have
// none.
func outerEdge(name string, facing shaping.Facing) shaping.Side {
	var worn shaping.Side
	switch name {
	case shaping.RightFront:
		worn = shaping.Right
	case shaping.LeftFront:
		worn = shaping.Left
	}
	if facing == shaping.KnitSide {
		return worn.Opposite()
	}
	return worn
}

// overlap returns by how much the two fronts together are narrower than the back.
func (s Spec) overlap() gauge.Length {
	var asked gauge.Length
	if s.Band != nil {
		asked = s.Band.Height
	}
	return s.Opening.Overlap.Or(asked)
}

// checkOpening refuses an overlap that is out of range.
func checkOpening(s Spec) error {
	if s.Opening == nil {
		return nil
	}
	if n := s.Opening.Buttons; n < 0 || n > mostButtons {
		return &Error{Field: "opening.buttons", Given: fmt.Sprint(n), Want: fmt.Sprintf("0 to %d", mostButtons), Err: ErrSpec}
	}
	if s.Opening.Buttons > 0 && s.Band == nil {
		return &Error{Field: "opening.buttons", Given: fmt.Sprint(s.Opening.Buttons), Want: "buttons lie on bands along the fronts: give a band, or leave them out", Err: ErrSpec}
	}
	if s.Band != nil && s.overlap().Cmp(s.Band.Height.Mul(2)) > 0 {
		return s.fitError("opening.overlap", s.overlap(), "wider than both bands of band.height beside each other: at most "+s.limit(s.Band.Height.Mul(2)))
	}
	return s.checkLength("opening.overlap", s.overlap(), false)
}

// chooseOverlap chooses the stitches that two fronts have less than one, with the parity of
// the body. The neck's flat part is at least as wide as they are: a narrower one, as that of
// a vee, lies behind the bands, and the drawn edges begin at the front edges.
func (f *trunk) chooseOverlap() error {
	if !f.outer.IsValid() {
		return nil
	}
	if f.begun != nil {
		return f.keepOverlap()
	}
	w, s := &f.widths, f.spec
	least, most := w.Neck&1, w.Neck-2 // a stitch of the neck in either front
	if most < least {
		if needed := f.gauge.Width(least + 3); needed.Cmp(s.widestNeck(s.shoulders(f.gauge, w.Seam, max(2-w.Seam, 1)))) > 0 {
			return s.fitError("body.width", s.Body.Width, "too few stitches for two fronts with a neck and shoulders")
		}
		return s.fitError("neck.width", s.Neck.Width, fmt.Sprintf("a neck of %s cannot be parted into two fronts: at least %s",
			plural.Stitches(w.Neck), s.atLeast(f.gauge.Width(least+2))))
	}
	asked := s.overlap()
	w.Overlap = max(f.gauge.Stitches(asked).Round(gauge.SameParity(w.Neck, gauge.Nearest)), least)
	if w.Overlap > most {
		want := fmt.Sprintf("the bands would cover the whole neck of %s: at most %s", s.text(s.Neck.Width), s.atMost(f.gauge.Width(most)))
		if s.Opening.Overlap.IsZero() {
			want += " (left out, it is band.height)"
		}
		return s.fitError("opening.overlap", asked, want)
	}
	w.Flat = max(w.Flat, w.Overlap)
	return nil
}

// ownWidths returns the widths of the piece: of one of two fronts its own part of those of
// both. Only its outer edge has seam stitches.
func (f *trunk) ownWidths() Widths {
	w := f.widths
	if !f.outer.IsValid() {
		return w
	}
	w.CastOn, w.Body = f.own(w.CastOn), f.own(w.Body)
	if w.Waist > 0 {
		w.Waist = f.own(w.Waist)
	}
	w.Neck, w.Flat = (w.Neck-w.Overlap)/2, (w.Flat-w.Overlap)/2
	return w
}

// ownRows returns the heights of the piece as its edges have them: at the edges of one of two
// fronts what is held or bound off may stand a row later than in a front in one piece.
func (f *trunk) ownRows() Heights {
	h := f.heights
	if !f.outer.IsValid() {
		return h
	}
	top, tip := f.top(f.outer), h.Tip()
	switch steps := f.shoulderSteps(f.outer); {
	case len(steps) == 0:
		tip = top
	case tied(steps[0].Method):
		tip += f.tiedLag(f.outer, steps[0].Row)
	}
	if f.widths.BindOff > 0 {
		h.Underarm = f.armholeStart(f.outer) - 1
	}
	h.Armhole = tip - h.Underarm
	h.Drop = top - tip
	if flat := f.flatStep(); len(flat) > 0 {
		h.Neck -= flat[0].Row - 1
	}
	return h
}

// own returns how many of the stitches of a front in one piece, seam stitches included, one
// of two fronts has.
func (f *trunk) own(stitches int) int { return (stitches - f.widths.Overlap) / 2 }

// needles returns those that one of two fronts is cast on: so that it lies evenly where it is
// widest, though it widens at its outer edge only, and that the fronts are each other's
// reflection.
func (f *trunk) needles() shaping.Span {
	if f.begun != nil {
		return f.begun.body().Needles
	}
	w := f.ownWidths()
	inwards := (w.Widest() - w.CastOn + w.CastOn%2) / 2
	return shaping.Centred(w.CastOn).Moved(f.outer.Opposite(), inwards).Moved(f.outer, -inwards)
}

// chooseCarriage chooses where row 1 of one of two fronts starts on the bed: so that its
// rows above the start of the neck start at its outer edge, as those of a half do. In the
// hand odd rows start at the right.
//
// Of one that is begun row 1 stays as it was: see startingAtOuter.
func (f *trunk) chooseCarriage() error {
	if f.outer.IsValid() && f.place == shaping.Bed && f.firstHalf() != f.outer {
		f.carriage = f.carriage.Opposite()
	}
	return nil
}

// opened returns the panel of one of two fronts.
func (f *trunk) opened() shaping.Panel {
	last := f.top(f.outer)
	p := shaping.Panel{Name: shaping.Body, FirstRow: 1, LastRow: last, Needles: f.needles()}
	outer, neck := f.outerSteps(f.outer).Between(1, last), f.neckSteps(f.outer)
	if f.outer == shaping.Right {
		p.Left, p.Right = neck, outer
	} else {
		p.Left, p.Right = outer, neck
	}
	return p
}

// flatStep returns the step by which one of two fronts takes off its part of the neck's flat
// middle, counted from the start of the neck: before the first row that its method can work.
// Where the neck is worked by decreases it is held. There is none without a flat part, and in
// a front in one piece, where the middle is taken off as the halves part.
func (f *trunk) flatStep() shaping.Schedule {
	flat := f.ownWidths().Flat
	if !f.outer.IsValid() || flat == 0 {
		return nil
	}
	by := shaping.Hold
	if f.neck.Several == shaping.BindOff {
		by = shaping.BindOff
	}
	row := shaping.RulesFor(by, shaping.Left, shaping.Right, f.place).Phase + 1
	return shaping.Schedule{{Row: row, Stitches: -flat, Method: by}}
}

// afterFlat returns the rules for the neck of a front that begins with a flat part: steps of
// its method may go with it, others stand two rows later at least. In the hand it is one row
// later in one of the fronts, where decreases are not.
func (f *trunk) afterFlat(rules shaping.Rules) shaping.Rules {
	flat := f.flatStep()
	if len(flat) == 0 {
		return rules
	}
	phase := func(m shaping.Method, phase, every int) int {
		least := flat[0].Row + 1
		switch {
		case m == flat[0].Method:
			return phase
		case f.place == shaping.Hand && !tied(m):
			least++
		}
		for phase < least {
			phase += max(every, 1)
		}
		return phase
	}
	several := f.neck.Several
	if several == 0 {
		several = f.neck.Single
	}
	rules.Phase = phase(several, rules.Phase, rules.Every)
	if !rules.Single.IsZero() {
		rules.Single.Phase = phase(f.neck.Single, rules.Single.Phase, rules.Single.Every)
	}
	return rules
}

// neckSteps returns the steps at the neck of the half at one side, or of one of two fronts,
// where the flat part goes with the first of them or before it.
func (f *trunk) neckSteps(side shaping.Side) shaping.Schedule {
	steps := f.neckEdge.at(side).Schedule
	flat := f.flatStep()
	if len(flat) == 0 {
		return steps
	}
	flat = flat.Shifted(f.heights.NeckStart() + f.lag(side, steps, flat))
	if len(steps) > 0 && steps[0].Row == flat[0].Row {
		flat[0].Stitches += steps[0].Stitches
		steps = steps[1:]
	}
	return append(flat, steps...)
}

// shoulderRow returns the first row at which a shoulder of the piece is shaped, and of one
// without steps the second row above it.
func (f *trunk) shoulderRow() int {
	if !f.outer.IsValid() {
		return f.firstShoulderRow()
	}
	if steps := f.shoulderSteps(f.outer); len(steps) > 0 {
		return steps[0].Row
	}
	return f.heights.Top() + 2
}

// Outer returns the edge with side seam and armhole of a front that is one of two, seen on
// the piece's facing; it is none for a piece that has them at both edges.
func (p Piece) Outer() shaping.Side { return outerEdge(p.Work.Name, p.Work.Facing) }

// FrontEdge returns the rows of the front edge of one of two fronts, from the cast on to the
// neck; 0 for other pieces.
func (p Piece) FrontEdge() int {
	switch outer := p.Outer(); {
	case !outer.IsValid():
		return 0
	case p.Widths.Flat > 0: // its outermost stitch is as high as the edge
		return p.Cloth.Height(p.Work.Panels[0].Needles.End(outer.Opposite()))
	}
	return p.Heights.NeckStart()
}

// Finished returns how many of the stitches side by side in the piece the seams leave: those
// of two edges, and of one of two fronts those of the outer one.
func (p Piece) Finished(stitches int) int {
	if p.Outer().IsValid() {
		return stitches - p.Widths.Seam
	}
	return stitches - 2*p.Widths.Seam
}

// hasShoulder reports whether the piece has an armhole and a shoulder at one side.
func (p Piece) hasShoulder(side shaping.Side) bool {
	outer := p.Outer()
	return !p.isSleeve() && side.IsValid() && (outer == side || !outer.IsValid())
}

// shoulderPanel returns the panel that has the shoulder at one side: a half, or the body of
// one of two fronts.
func (p Piece) shoulderPanel(side shaping.Side) shaping.Panel {
	name := shaping.HalfAt(side)
	if p.Outer().IsValid() {
		name = shaping.Body
	}
	panel, _ := p.Work.Panels.Panel(name)
	return panel
}

// andParent returns a panel after the one that it grew out of, if it did.
func (p Piece) andParent(panel shaping.Panel) []shaping.Panel {
	if parent, ok := p.Work.Panels.Panel(panel.Parent); ok {
		return []shaping.Panel{parent, panel}
	}
	return []shaping.Panel{panel}
}

// openedWarnings says what is peculiar to one of two fronts.
func (f *trunk) openedWarnings() []string {
	var list []string
	add := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	if f.begun == nil && f.place == shaping.Bed && f.spec.Setup.Carriage.IsValid() && f.carriage != f.spec.Setup.carriage() {
		add("Row 1 starts at the %v, so that the rows from the neck on start at the outer edge.", f.carriage)
	}
	if f.widths.Overlap > f.flat(f.widths.Neck) && f.opening.Shape != VeeNeck {
		add("The bands are wider than the flat part of the neck: its curve begins at the front edge.")
	}
	list = append(list, f.openedLeft()...)
	if band := f.spec.Band; band != nil && f.spec.overlap().Sub(band.Height).Abs().Cmp(f.gauge.Width(1)) > 0 {
		add("Between the fronts lie %s, the bands are %s high: they do not lie one exactly on the other, and the garment is so much wider or narrower round.", f.spec.text(f.spec.overlap()), f.spec.text(band.Height))
	}
	if f.heights.NeckStart() <= f.heights.Underarm {
		add("The neck begins below the underarm: both edges are shaped at the same time.")
	}
	if steps := f.shoulderSteps(f.outer); len(steps) > 0 && steps[0].Row <= f.heights.NeckStart() {
		add("The shoulder begins below the neck.")
	}
	if top := f.top(f.outer); top > f.heights.Top() {
		add("What is held or bound off at neck and shoulder happens one row later than in the other front, and this one ends with row %d instead of %d.", top, f.heights.Top())
	}
	return list
}
