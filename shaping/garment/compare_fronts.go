package garment

import (
	"fmt"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// Two fronts are compared with each other and, together, with the back.

// reflected compares the stitches, rows and steps of two fronts.
func (j job) reflected(s Set) Check {
	right, _ := s.Piece(shaping.RightFront)
	left, _ := s.Piece(shaping.LeftFront)
	first, second := right.Work.Panels.Height(), left.Work.Panels.Height()
	c := Check{
		Name: "fronts", Pieces: []string{right.Name(), left.Name()}, Field: "opening", What: "right front against left front",
		First: j.up(right.Name(), first), Second: j.up(left.Name(), second), Within: j.gauge.Height(1),
		Severity: j.spec.Checks.Fronts.Or(AsError),
	}
	cast := func(p Piece) int { return p.shoulderPanel(p.Outer()).Needles.Len() }
	c.Passed = near(c.CountOff()) && cast(right) == cast(left) && right.likeReflected(left)
	c.Says = fmt.Sprintf("Right and left front: %s and %s in the right one, %d and %d in the left one: ",
		plural.Stitches(cast(right)), plural.Rows(first), cast(left), second)
	switch {
	case !c.Passed:
		c.Says += "they are not each other's reflection."
	case first != second:
		c.Says += "each other's reflection, but for what is held or bound off a row later in one of them."
	default:
		c.Says += "each other's reflection."
	}
	return c
}

// likeReflected reports whether both edges have as many steps as those of the other front,
// of the same stitches by the same method: at the same rows, or where a step is tied to one
// end of a row, a row apart at most.
func (p Piece) likeReflected(other Piece) bool {
	mine, others := p.shoulderPanel(p.Outer()), other.shoulderPanel(other.Outer())
	for _, edge := range []shaping.Side{p.Outer(), p.Outer().Opposite()} {
		steps, reflected := mine.Steps(edge), others.Steps(edge.Opposite())
		if len(steps) != len(reflected) {
			return false
		}
		for i, step := range steps {
			off := step.Row - reflected[i].Row
			if step.Stitches != reflected[i].Stitches || step.Method != reflected[i].Method || !near(off) || (off != 0 && !tied(step.Method)) {
				return false
			}
		}
	}
	return true
}

// together compares the stitches of both fronts and the overlap with those of the back, at
// the underarms, the waist and the hem.
func (j job) together(s Set) Check {
	right, _ := s.Piece(shaping.RightFront)
	left, _ := s.Piece(shaping.LeftFront)
	back, _ := s.Piece(shaping.Back)
	both := func(of func(Widths) int) int {
		return right.Finished(of(right.Widths)) + left.Finished(of(left.Widths)) + right.Widths.Overlap
	}
	body := func(w Widths) int { return w.Body }
	c := Check{
		Name: "fronts", Pieces: []string{right.Name(), left.Name(), back.Name()}, Field: "opening.overlap", What: "both fronts against the back",
		First: j.across("both fronts and what lies between them", both(body)), Second: j.across(back.Name(), back.Finished(back.Widths.Body)),
		Severity: j.spec.Checks.Fronts.Or(AsError),
	}
	c.Passed = c.CountOff() == 0
	for _, of := range []func(Widths) int{func(w Widths) int { return w.Waist }, func(w Widths) int { return w.CastOn }} {
		c.Passed = c.Passed && (of(back.Widths) == 0) == (of(right.Widths) == 0) &&
			(of(back.Widths) == 0 || both(of) == back.Finished(of(back.Widths)))
	}
	c.Says = fmt.Sprintf("Both fronts and what lies between them: %d, %d and %s at the underarms, %d in the back: %s.",
		right.Finished(right.Widths.Body), left.Finished(left.Widths.Body), plural.Stitches(right.Widths.Overlap), c.Second.Count, difference(c.CountOff()))
	if !c.Passed && c.CountOff() == 0 {
		c.Says += " At the waist or the hem they are not equal."
	}
	return c
}
