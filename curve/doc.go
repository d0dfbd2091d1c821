// Package curve turns the drawn edge of a garment piece into a schedule of whole
// stitches at whole rows: the one that lies closest to the drawing among all that
// the technique allows.
//
//	edge, err := curve.QuarterEllipse(gauge.MustParseLength("60 mm"), gauge.MustParseLength("80 mm"))
//	if err != nil {
//		return err
//	}
//	r, err := curve.Trace(edge, 12, 24, shaping.Rules{Every: 2, Apart: 2})
//	// r.Schedule, r.Measure.Area, r.Measure.Deviation
//
// # Model
//
// An [Edge] runs from its lower end to its upper end. Stretched to a box of N
// stitches and R rows it is a function f over [0, R] that says how many stitches are
// gone: f(0) = 0 where nothing goes at once, f(R) = N. Row r, counted from 1, is the
// stretch [r-1, r]. A schedule makes a staircase: c(r) stitches are gone in row r, those of
// the steps at rows up to and including r. Then
//
//   - the area is the sum over the rows of the integral of |f - c(r)| over the row,
//     in stitch-rows;
//   - the floor is the same sum with every row at its own best whole number;
//   - the deviation in a row is |f(r-1/2) - c(r)| in stitches.
//
// The rows before the first one that the [shaping.Rules] allow cannot be shaped. The
// drawing is not moved for them; they are left out of the area and of the floor, and
// stay in the greatest deviation.
//
// If the rules name a base, whatever goes in the first allowed row is the base. A
// phrase is a run of equal steps at equal distances, or, if there are at least three
// distances, at two distances in turn that differ by the distance of the allowed rows.
// The first phrase, and the first after a base, starts freely; the first step of a
// later phrase stands at that phrase's own first distance from the step before, and
// this distance counts as one of the phrase. The base is no phrase.
//
// [Trace] returns the schedule of least area. Schedules whose areas are within 1e-7
// stitch-rows of the least tie, and among them is chosen, one after the other,
//
//  1. the fewest phrases,
//  2. the least greatest deviation, again within 1e-7 stitches,
//  3. at the first row where two differ, fewer stitches moved.
//
// The edges of this package never turn back, so that of one edge all steps go, or all
// come.
//
// # Exactness
//
// The integrals and the deviations are rounded once to whole numbers: of a straight edge
// to 1/(2NR), which is exact, of others to 2^-30. All that follows is integers, so that no
// comparison depends on rounding. Before that only operations are used that IEEE 754
// rounds correctly, none of them fused: the answers are the same to the last bit on every
// platform. The values rounded are right within 2^-52 N R, which is less than 2^-30 up
// to the largest box.
//
// # Errors
//
// All errors are of type [*Error] and wrap [ErrRange] or [ErrInfeasible]. A request that
// the rules leave no way for is an error that names the rule and the nearest requests
// that work. A schedule far from the drawing is none: see [Measures].
//
// # Complexity
//
// With K allowed rows, Trace takes time and memory in proportion to K N, whatever number
// of stitches may go at once: a dynamic program over the allowed rows with a sliding
// minimum over the levels. Schedules that tie are never listed: they are the paths of
// a graph, and phrases are counted on its arcs. For the edges of this package the graph is
// a narrow band, and costs little beside the program. The greatest deviation is a maximum
// and cannot be minimized node by node; limits to it are tried by bisection with the
// phrases fixed.
//
// # References
//
//   - R. Bellman, Dynamic Programming, Princeton 1957: the principle of optimality.
//   - NIST Digital Library of Mathematical Functions, sections 19.8 (the arithmetic-geometric
//     mean) and 19.30(i) (the arc of an ellipse).
//   - M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 1964, table 17.1:
//     values that lengths are tested against.
//
// # What it does not do
//
// It does not choose how many stitches and rows a length is (package gauge does), nor
// the rules (package shaping), and does not say whether a whole piece can be knitted.
package curve
