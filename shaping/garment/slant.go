package garment

import (
	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// slant is a straight stretch of the side edges, shaped evenly by single fashioned
// decreases or increases, at both edges in the same rows.
type slant struct {
	name     string
	above    int // the row below its first
	rows     int
	stitches int // that go at each edge; less than 0 if they come
	steps    shaping.Schedule
}

// slanted returns the steps of all stretches, from the lowest up.
func slanted(sides []slant) shaping.Schedule {
	var steps shaping.Schedule
	for _, s := range sides {
		steps = append(steps, s.steps...)
	}
	return steps
}

// apart is how many rows lie between fashioned steps at an edge at least, counting one of
// the two: no two neighbouring rows are shaped. Common practice, no source.
const apart = 2

// spaced returns the stretch with its steps spread by the division rule. In the hand they
// are at right-side rows. It is false if they do not fit.
//
// With plain rows kept elsewhere at both ends the first and the last row are shaped; else
// about as many rows stay plain at either end as lie between two steps.
func (j job) spaced(s slant, plainKept bool) (slant, bool) {
	request := shaping.SpacingRequest{Rows: s.rows, Times: max(s.stitches, -s.stitches)}
	above := s.above
	if plainKept && request.Times > 1 {
		request.Ends = shaping.FirstAndLastShaped
	}
	if j.place == shaping.Hand {
		request.EverySecondRow = true
		// Steps stand an even number of rows after the row they are counted from: row 1
		// of the stretch, or the one below it.
		counted := above
		if request.Ends == shaping.FirstAndLastShaped {
			counted++
		}
		if counted%2 == 0 {
			above, request.Rows = above+1, request.Rows-1
		}
		if request.Ends == shaping.FirstAndLastShaped {
			request.Rows -= 1 - request.Rows%2
		}
	}
	if request.Rows < 0 {
		return s, false
	}
	spacing, err := shaping.EvenSpacing(request)
	if err != nil {
		return s, false
	}
	rows := spacing.Rows()
	for i := 1; i < len(rows); i++ {
		if rows[i]-rows[i-1] < apart {
			return s, false
		}
	}
	if !plainKept && (rows[0] < apart || spacing.Plain < apart) {
		return s, false
	}
	by := -1
	if s.stitches < 0 {
		by = 1
	}
	s.steps = spacing.Schedule(by, shaping.Fashioned).Shifted(above)
	return s, true
}

// steepest returns how many stitches could go at each edge of the stretch at most.
func (j job) steepest(s slant, plainKept bool) int {
	for times := s.rows / apart; times > 0; times-- {
		s.stitches = times
		if _, ok := j.spaced(s, plainKept); ok {
			return times
		}
	}
	return 0
}

// lowest returns how many rows the stretch would need at least.
func (j job) lowest(s slant, plainKept bool) int {
	if s.stitches == 0 {
		return 0
	}
	for s.rows = 0; ; s.rows++ {
		if _, ok := j.spaced(s, plainKept); ok {
			return s.rows
		}
	}
}

// slantEdge returns the stretch as it is worked at one edge.
func (j job) slantEdge(s slant, side shaping.Side, panel string) (Edge, error) {
	width, height := j.gauge.Width(s.stitches), j.gauge.Height(s.rows)
	line, err := curve.Polyline(curve.Point{}, curve.Point{Across: width, Up: height})
	if err != nil {
		return Edge{}, err
	}
	made, err := j.worked(drawing{
		name: s.name, edge: line, stitches: s.stitches, rows: s.rows,
		rules: shaping.RulesFor(shaping.Fashioned, side, j.start(s.above+1), j.place),
	}, s.steps, s.above+1)
	made.Panel, made.Side = panel, side
	return made.counted(), err
}
