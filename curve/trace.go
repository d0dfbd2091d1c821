package curve

import "example.com/walewise/shaping"

// Result is a schedule and how far it lies from the drawing.
type Result struct {
	Schedule shaping.Schedule
	Measures Measures
}

// Trace returns the schedule of least area between the edge and its staircase that
// the rules allow, exactly, with the tie rules of the package comment. The edge is
// stretched to the box of that many stitches and rows, so that its own size does not
// matter. Stitches go if the number is positive, so that the steps are negative; of
// a negative number that many come, by the rules for coming stitches. Rows of the
// steps count from 1 at the first row of the edge; the steps have no method.
//
// Zero stitches give no steps. It returns an [*Error] that wraps
//
//   - [ErrRange] if the edge is the zero Edge, if there are no rows, if there are
//     more than [MaxRows] or [MaxStitches], or if the rules are not valid;
//   - [ErrInfeasible] if no schedule obeys the rules, with requests that work.
//
// Time and memory grow with the allowed rows times the stitches.
func Trace(edge Edge, stitches, rows int, rules shaping.Rules) (Result, error) {
	going, err := checked(edge, stitches, rows, rules)
	if err != nil {
		return Result{}, err
	}
	d, toward := edge.shape.drawing(abs(stitches), rows), sign(stitches)
	var schedule shaping.Schedule
	if stitches != 0 {
		p := newProgram(d, going)
		if !p.solve() {
			return Result{}, infeasible(Request{stitches, rows, rules})
		}
		schedule = newTies(p).best(going, toward)
	}
	return Result{schedule, measure(d, schedule, toward, going.FirstRow())}, nil
}
