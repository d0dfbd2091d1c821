package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// A seam between front and back lies at the right of the front and at the left of the
// back, or the other way round, both seen on the same side of the fabric.

// worn returns the side of the wearer on which one side of a front lies: the same, seen on
// the purl side, which is inside, and the other on the right side.
func (j job) worn(side shaping.Side) shaping.Side {
	if j.place.Facing() == shaping.KnitSide {
		return side.Opposite()
	}
	return side
}

// shoulder compares the stitches of the two halves that are joined, and how they end.
func (j job) shoulder(front, back Piece, side shaping.Side) Check {
	first, second := front.shoulder(side), back.shoulder(side.Opposite())
	c := Check{
		Name: "shoulders", Pieces: []string{front.Name(), back.Name()}, Field: "shoulder.drop", What: fmt.Sprintf("wearer's %v shoulder", j.worn(side)),
		First: j.across(front.halfName(side), first.stitches()), Second: j.across(back.halfName(side.Opposite()), second.stitches()),
		Passed: first.live == second.live && slices.Equal(first.groups, second.groups), Severity: j.spec.Checks.Shoulders.Or(AsError),
	}
	c.Says = fmt.Sprintf("%s: %s in the %s, %d in the %s: %s. ", upper(c.What),
		plural.Stitches(first.stitches()), c.First.Of, second.stitches(), c.Second.Of, difference(c.CountOff()))
	switch {
	case first.live != second.live:
		c.Says += fmt.Sprintf("The one %s, the other %s: they cannot be joined alike.", ending(first.live), ending(second.live))
	case first.live:
		c.Says += "Both are live: graft them, or bind them off together."
	default:
		c.Says += "Both are bound off: sew them."
	}
	return c
}

// halfName names what has the shoulder at one side: a half of the piece, or one of two
// fronts.
func (p Piece) halfName(side shaping.Side) string {
	if p.Outer().IsValid() {
		return p.Name()
	}
	return fmt.Sprintf("%s's %s", p.Name(), shaping.HalfAt(side))
}

// shoulderHeight compares the rows from the cast-on edge to the neck points of two halves.
func (j job) shoulderHeight(front, back Piece, side shaping.Side) Check {
	first, second := front.Heights.Top()+front.later(side), back.Heights.Top()+back.later(side.Opposite())
	tip, other := front.tip(side), back.tip(side.Opposite())
	c := Check{
		Name: "shoulders", Pieces: []string{front.Name(), back.Name()}, Field: "shoulder.drop", What: fmt.Sprintf("height of the wearer's %v shoulder", j.worn(side)),
		First: j.up(front.halfName(side), first), Second: j.up(back.halfName(side.Opposite()), second), Within: j.gauge.Height(1),
		Severity: j.spec.Checks.Shoulders.Or(AsError),
	}
	// In the hand the left half of each piece may end a row later than the right.
	c.Passed = near(c.CountOff()) && near(tip-other)
	c.Says = fmt.Sprintf("%s: from row %d to row %d in the %s, from row %d to row %d in the %s: at the neck %s.", upper(c.What),
		tip, first, c.First.Of, other, second, c.Second.Of, difference(c.CountOff()))
	return c
}

// near reports whether two counts of rows differ by one at most: what is bound off or held
// at both edges of a piece stands a row apart.
func near(off int) bool { return -1 <= off && off <= 1 }

// sideSeam compares the rows from the cast-on edge to the underarms of two edges.
func (j job) sideSeam(front, back Piece, side shaping.Side) Check {
	first, second := front.sideRows(side), back.sideRows(side.Opposite())
	c := Check{
		Name: "sides", Pieces: []string{front.Name(), back.Name()}, Field: "body.length", What: fmt.Sprintf("wearer's %v side", j.worn(side)),
		First: j.up(front.edgeName(side), first), Second: j.up(back.edgeName(side.Opposite()), second), Within: j.gauge.Height(1),
		Severity: j.spec.Checks.Sides.Or(AsError),
	}
	c.Passed = near(c.CountOff())
	c.Says = fmt.Sprintf("%s: %s up to the underarm at the %s, %d at the %s: %s.", upper(c.What), plural.Rows(first), c.First.Of, second, c.Second.Of, difference(c.CountOff()))
	return c
}

// edgeName names an edge.
func (p Piece) edgeName(side shaping.Side) string { return fmt.Sprintf("%s's %v edge", p.Name(), side) }

// armholes compares the edge of a sleeve's top with that of the armhole, front and back
// together, and the ease.
func (j job) armholes(trunks []Piece, sleeve Piece) Check {
	armhole, ease := armholeLength(trunks), j.spec.Sleeve.Ease
	c := Check{
		Name: "armholes", Pieces: []string{shaping.RightSleeve, shaping.LeftSleeve}, Field: "sleeve.top", What: "sleeve into armhole",
		Second:   Measured{Of: "armhole", Length: armhole.Add(ease)},
		Severity: j.spec.Checks.Armholes.Or(AsWarning),
	}
	eased := ""
	if ease.Sign() > 0 {
		eased = fmt.Sprintf(" and %s of ease", j.spec.text(ease))
	}
	if sleeve.Widths.Inset > 0 {
		c.First = Measured{Of: "cap", Count: sleeve.Heights.Cap, Counted: "rows", Length: sleeve.CapLength()}
		// What whole rows at both edges cannot avoid is eased in.
		c.Within = longer(capTolerance(), j.gauge.Height(2))
		c.Passed = c.Off().Abs().Cmp(c.Within) <= 0
		c.Says = fmt.Sprintf("Cap of %s: %s along its edge, the armhole has %s along front and back%s: %s",
			plural.Rows(c.First.Count), j.spec.fine(c.First.Length), j.spec.fine(armhole), eased, j.differs(c.Off()))
		if c.Passed && c.Off().Abs().Cmp(capTolerance()) > 0 {
			c.Says += ", the nearest that was found"
		}
		c.Says += "."
		return c
	}
	count := sleeve.Widths.Body - 2*sleeve.Widths.Seam
	c.First = Measured{Of: "top of the sleeve", Count: count, Counted: "stitches", Length: j.gauge.Width(count)}
	c.Within = straightTolerance()
	c.Passed = c.Off().Abs().Cmp(c.Within) <= 0
	c.Says = fmt.Sprintf("Top of the sleeve: %s, %s, the armhole has %s along front and back%s: %s.",
		plural.Stitches(count), j.spec.fine(c.First.Length), j.spec.fine(armhole), eased, j.differs(c.Off()))
	if !c.Passed {
		c.Says += fmt.Sprintf(" With a top of %s it would fit.", j.spec.nearly(c.Second.Length))
	}
	return c
}

// capTolerance is how far the edge of a cap may be off, if whole rows allow it.
func capTolerance() gauge.Length { return gauge.MustParseLength("3 mm") }

// straightTolerance is how far the straight top of a sleeve may be off: what can be eased
// in unseen. Common practice, no source.
func straightTolerance() gauge.Length { return gauge.MustParseLength("1 cm") }

// longer returns the longer of two lengths.
func longer(a, b gauge.Length) gauge.Length {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}

func ending(live bool) string {
	if live {
		return "is live"
	}
	return "is bound off"
}

// shoulderEnd is how a half ends at its shoulder.
type shoulderEnd struct {
	groups []int // from tip to neck
	live   bool
}

func (s shoulderEnd) stitches() int {
	sum := 0
	for _, group := range s.groups {
		sum += group
	}
	return sum
}

// shoulder returns how the half at one side ends, as it was knitted.
func (p Piece) shoulder(side shaping.Side) shoulderEnd {
	var end shoulderEnd
	half := p.shoulderPanel(side)
	body, _ := p.Work.Panels.Panel(half.Parent)
	for _, panel := range p.andParent(half) {
		for _, step := range panel.Steps(side).Between(p.ShoulderRow, panel.LastRow) {
			end.groups = append(end.groups, -step.Stitches)
		}
	}
	// What the body put on hold is among the half's stitches.
	last := half.InWork(half.LastRow).Len() + body.Steps(side).Between(p.ShoulderRow, body.LastRow).Of(shaping.Hold).Total()
	end.groups = append(end.groups, last)
	for _, row := range p.Work.Rows {
		if row.Panel != half.Name || row.Row != half.LastRow {
			continue
		}
		for _, a := range row.After {
			end.live = end.live || (a.Do == shaping.DoWaste && a.Needles == row.Knit)
		}
	}
	return end
}

// sideRows returns the rows up to the underarm at one edge of the cloth: those below its
// first stitches that are taken off, or where nothing is, those of the body.
func (p Piece) sideRows(side shaping.Side) int {
	return p.outerStairs(side, p.ShoulderRow, p.tip(side)).foot
}
