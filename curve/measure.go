package curve

import (
	"fmt"

	"example.com/walewise/shaping"
)

// Measures say how far a schedule lies from the drawn edge.
type Measures struct {
	// Area lies between the drawing and the knitted staircase, in stitch-rows: times
	// the width of a stitch and the height of a row it is an area of fabric. Rows
	// before the first allowed row are left out.
	Area float64
	// Floor is the same area, in stitch-rows, with every row at its own best whole number,
	// whatever the rules: no staircase can do better.
	Floor float64
	// Deviation is the greatest distance in stitches between the drawing in the
	// middle of a row and the staircase there, over all rows.
	Deviation float64
}

// Measure measures any schedule against the edge drawn in a box of that
// many stitches and rows, whether or not the schedule keeps to the rules or takes
// all the stitches; of the rules only the first allowed row matters. Stitches and
// rows are as in [Trace], and the steps' rows count from 1 at the edge's first row.
//
// It returns an [*Error] that wraps [ErrRange] if the edge is the zero Edge, if
// there are no rows, if there are more than [MaxRows] or [MaxStitches], if a step
// stands outside the rows or the steps are out of order, if a million stitches or
// more are gone at any row, or if the rules are not valid.
//
// It takes time that grows with rows + stitches.
func Measure(edge Edge, stitches, rows int, rules shaping.Rules, schedule shaping.Schedule) (Measures, error) {
	d, err := edge.In(stitches, rows)
	if err != nil {
		return Measures{}, err
	}
	return d.Measure(rules, schedule)
}

// Measure is the function [Measure] for the drawing; of one that turns back steps may go
// and come.
func (d Drawing) Measure(r shaping.Rules, schedule shaping.Schedule) (Measures, error) {
	rules, err := d.rules(r)
	if err != nil {
		return Measures{}, err
	}
	if err := schedule.Validate(); err != nil {
		return Measures{}, rangeError("schedule", "out of order", err.Error())
	}
	const most = 1_000_000
	gone := 0
	for _, step := range schedule {
		if step.Row > d.d.rows {
			return Measures{}, rangeError("step at row", step.Row, fmt.Sprintf("the edge has %d rows", d.d.rows))
		}
		// Each step alone first, so that the sum cannot overflow.
		if s := step.Stitches; s <= -most || s >= most || gone-s <= -most || gone-s >= most {
			return Measures{}, rangeError("step of stitches", s, fmt.Sprintf("less than %d gone at any row", most))
		}
		gone -= step.Stitches
	}
	return d.measure(schedule, rules.first), nil
}

// measure measures a schedule, from the first allowed row on.
func (d Drawing) measure(schedule shaping.Schedule, firstRow int) Measures {
	return d.d.measure(schedule, d.toward(), firstRow)
}

// measure measures a schedule whose steps that raise the level have the sign -toward.
func (d *drawing) measure(schedule shaping.Schedule, toward, firstRow int) Measures {
	skipped := min(firstRow-1, d.rows)
	var area, floor, deviation int64
	from, level := 0, 0
	stretch := func(to int) {
		deviation = max(deviation, d.deviation(from, to, level))
		if start := max(from, skipped); start < to {
			area += d.area(start, to, level)
		}
		from = to
	}
	for _, step := range schedule {
		stretch(step.Row - 1)
		level -= toward * step.Stitches
	}
	stretch(d.rows)
	for i := range d.parts {
		p := &d.parts[i]
		for t := max(skipped, p.from) + 1; t <= p.to; t++ {
			floor += d.floor(p, t)
		}
	}
	return Measures{d.float(area), d.float(floor), d.float(deviation)}
}
