// Package curve turns the drawn edge of a garment piece into a schedule of whole
// stitches at whole rows: the one that lies closest to the drawing among all that
// the technique allows, and those that come nearest to it in few words.
//
//	edge, err := curve.ParsePath("M 0 80 C 30 80 60 50 60 0") // mm, from the lower end up
//	if err != nil {
//		return err
//	}
//	drawing, err := edge.At(g) // at a gauge; In stretches it to a box of stitches and rows
//	if err != nil {
//		return err
//	}
//	w, err := drawing.Wordings(shaping.Rules{Every: 2, Apart: 2}, curve.Phrasing{})
//	if err != nil {
//		return err
//	}
//	fmt.Println(w.Default().Phrases, w.Trace.Schedule, w.Trace.Measures.Area) // of the trace, stitch-rows
//
// # Model
//
// An [Edge] runs from its lower end to its upper end: a line, an ellipse, a superellipse,
// points, SVG path data, or several of these one above the other. Laid over R rows it is a
// [Drawing], a function f over [0, R] that says how many stitches are gone; where the edge
// jumps it has the value above. Row r, counted from 1, is the stretch [r-1, r]. A schedule
// makes a staircase: c(r) stitches are gone in row r, those of the steps at rows up to and
// including r. Then
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
// An edge that only goes out, or only comes in, is stretched to N whole stitches, and all
// its steps go, or all come. An edge that turns back, such as a waist, keeps its distances
// across: with x(t) stitches of the drawing gone after t rows, N the whole number nearest to
// x(R), and V(t) all that went and came up to t, f(t) = x(t) + (N - x(R)) V(t)/V(R). Its
// steps go and come, each by the rules for their kind; between two steps lie at least as
// many rows as the rules of the later one ask for.
//
// If the rules name a base, whatever goes in the first allowed row is the base. A
// phrase is a run of equal steps at equal distances, or, if there are at least three
// distances, at two distances in turn that differ by the distance of the allowed rows.
// The first phrase, and the first after a base, starts freely; the first step of a
// later phrase stands at that phrase's own first distance from the step before, and
// this distance counts as one of the phrase. The base is no phrase.
//
// [Drawing.Trace] returns the schedule of least area. Schedules whose areas are within 1e-7
// stitch-rows of the least tie, and among them is chosen, one after the other,
//
//  1. the fewest phrases,
//  2. the least greatest deviation, again within 1e-7 stitches,
//  3. at the first row where two differ, fewer stitches moved,
//  4. and if as many move, those that go before those that come.
//
// [Drawing.Wordings] returns for 0, 1, 2, ... phrases the schedule of least area that can
// be said so, until the trace is reached, with the same rules for ties.
//
// # Exactness
//
// Coordinates of path data and of points are rounded to 1/1000 mm when they are read. The
// integrals and the deviations are rounded once to whole numbers: of a straight edge
// to 1/(2NR), which is exact, of others to 2^-30. All that follows is integers, so that no
// comparison depends on rounding. Before that only operations are used that IEEE 754
// rounds correctly, none of them fused unless it is asked for: the answers are the same to
// the last bit on every platform. The values rounded are right within 2^-50 N R, which is
// about 2^-30 for the largest box.
//
// # Errors
//
// All errors are of type [*Error] and wrap [ErrRange], [ErrSyntax] or [ErrInfeasible], which
// are the values of package shaping; those of package gauge are others. A request that the
// rules leave no way for is an error that names each rule that alone is to blame, or those
// that are together, and the nearest requests that work, each of them tried. A schedule far
// from the drawing is none: see [Measures].
//
// # Complexity
//
// With K allowed rows and B levels in a band about the drawing, a trace takes time and memory
// in proportion to K B, whatever number of stitches may go at once: a dynamic program over
// the allowed rows with a sliding minimum over the levels. What lies outside the band is
// thrown together into one level below and one above, at the cost of the best of them; if a
// schedule that leaves the band might still be among the best, the band is widened. So the
// answer is exact, and B is a few levels unless the rules keep the schedule far away from the
// drawing.
//
// Schedules that tie are never listed. They, and wordings, are found phrase by phrase from
// the end of the edge to its beginning: for each place where a phrase may end, the least
// area that follows if it is said in n phrases. A place is left out when the least area of
// the way to it shows that no schedule within the limit passes there. Wordings start with a
// narrow limit, in which those of many phrases are found, and look for those of fewer in
// ever wider ones. In the worst case a round takes K B times the number of ways to begin a
// phrase, K M with at most M stitches at once, times the steps of it; in practice far less.
// Where several schedules tie, the greatest deviation is a maximum and cannot be minimized
// place by place; limits to it are tried by bisection with the phrases fixed.
//
// Of edges that turn, schedules that stray more than 256 stitches from the drawing are not
// looked at. The search for wordings is broken off after five hundred million steps, a few
// seconds, which only edges larger than any body's come to: see [Wordings.Partial].
//
// # References
//
//   - R. Bellman, Dynamic Programming, Princeton 1957: the principle of optimality.
//   - W3C, Scalable Vector Graphics (SVG) 2, chapter 9: path data and elliptical arcs.
//   - M. Steffen, A simple method for monotonic interpolation in one dimension, Astronomy
//     and Astrophysics 239, 1990: curves through measured points.
//   - NIST Digital Library of Mathematical Functions, sections 19.8 (the arithmetic-geometric
//     mean) and 19.30(i) (the arc of an ellipse).
//   - M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 1964, table 17.1:
//     values that lengths are tested against.
//
// # What it does not do
//
// It does not choose the rules (package shaping), does not join several edges to a piece
// (package garment), and does not say whether a whole piece can be knitted (package bed).
package curve
