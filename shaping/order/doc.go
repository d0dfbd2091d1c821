// Package order is the planner: from the panels of a piece and the schedules of
// their edges it writes the order of work, row by row, with everything that is
// done before and after each row.
//
//	work, err := order.Arrange(order.Outline{
//		Name:     "front",
//		Place:    shaping.Bed,
//		Carriage: shaping.Right,
//		Panels:   panels, // body, then the half on the carriage's side, then the other
//	})
//
// # Model
//
// On the bed the body is worked first, on all its needles. At a split the half on the
// carriage's side goes on with the same yarn, while the stitches between the
// halves and those of the other half are held. Then the yarn is broken, the
// carriage goes to the outer edge of the other half, the counter goes back, and
// that half is worked. Shoulder stitches that were held at the outer edge come back
// for one closing row over all of them, which ends at the outer edge; what was held
// at the neck stays held until both halves are done and goes to waste yarn in one
// strip.
//
// One of two fronts is a body without halves: its neck is one edge, and the outline says
// that its shoulder is held at the other.
//
// In the hand odd rows start at the right and even ones at the left, as seen on the
// right side. The half where the row after the split starts goes on with the yarn; the
// other begins with a new end, wherever its first row starts, so that its steps at the
// ends of rows stand one row later. A decrease leaves one edge stitch outside.
//
// Rows and steps are rows of the piece, counted from 1. A step must fall on a row
// that its method can work: holding where the row ends, binding off and casting on
// where it starts (see [shaping.RulesFor]).
//
// # Exactness
//
// Everything is an integer. Nothing is rounded and no step is moved: what cannot be worked at
// its row is refused.
//
// # Errors
//
// [Arrange] returns an [*Error] that names panel, row and edge and says what would
// work. It wraps [ErrOrder], and where the panels are not sound the error of package
// shaping.
//
// # Complexity
//
// Time grows with the rows times the width of the piece, memory with the rows: the front of a
// jumper takes less than a tenth of a millisecond.
//
// # What it does not do
//
// It does not choose the schedules, and it does not judge its own plans: package
// bed does that and shares no code with this one.
package order
