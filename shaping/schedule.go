package shaping

import "slices"

// Step is one change at one edge: before row Row is knitted, Stitches go
// (negative) or come (positive). Held stitches go at the row of the hold; the
// closing row that knits them again is no step.
type Step struct {
	Row      int // from 1
	Stitches int // less than 0 if they go
	Method   Method
}

// Schedule holds the steps of one edge in the order of their rows, at most one
// step a row. Rows count from 1, in the piece or in the edge's own height as the
// place of use says.
type Schedule []Step

// Total returns the sum of the stitches of all steps: what the edge gains
// (positive) or loses (negative).
func (s Schedule) Total() int {
	total := 0
	for _, step := range s {
		total += step.Stitches
	}
	return total
}

// Through returns the sum of the stitches of the steps at rows up to and
// including row.
func (s Schedule) Through(row int) int {
	total := 0
	for _, step := range s {
		if step.Row > row {
			break
		}
		total += step.Stitches
	}
	return total
}

// At returns the step at row; ok is false if there is none.
func (s Schedule) At(row int) (step Step, ok bool) {
	i, ok := slices.BinarySearchFunc(s, row, func(step Step, row int) int { return step.Row - row })
	if !ok {
		return Step{}, false
	}
	return s[i], true
}

// Shifted returns a copy with every row moved by the given number of rows.
func (s Schedule) Shifted(rows int) Schedule {
	shifted := slices.Clone(s)
	for i := range shifted {
		shifted[i].Row += rows
	}
	return shifted
}

// Between returns a copy of the steps at rows from first to last, both included.
func (s Schedule) Between(first, last int) Schedule {
	var part Schedule
	for _, step := range s {
		if first <= step.Row && step.Row <= last {
			part = append(part, step)
		}
	}
	return part
}

// Of returns a copy of the steps that are worked by the method.
func (s Schedule) Of(m Method) Schedule {
	var part Schedule
	for _, step := range s {
		if step.Method == m {
			part = append(part, step)
		}
	}
	return part
}

// By returns a copy in which steps of two or more stitches have the method
// several and steps of one stitch the method single.
func (s Schedule) By(several, single Method) Schedule {
	made := slices.Clone(s)
	for i := range made {
		if made[i].Stitches == 1 || made[i].Stitches == -1 {
			made[i].Method = single
		} else {
			made[i].Method = several
		}
	}
	return made
}

// Validate returns an [*Error] if a row is below 1, if rows do not rise from
// step to step, or if a step moves no stitch.
func (s Schedule) Validate() error {
	before := 0
	for _, step := range s {
		switch {
		case step.Row < 1:
			return rangeError("step at row", step.Row, "rows count from 1")
		case step.Row <= before:
			return rangeError("step at row", step.Row, "steps stand in the order of their rows, one a row")
		case step.Stitches == 0:
			return rangeError("step at row", step.Row, "a step moves at least one stitch")
		}
		before = step.Row
	}
	return nil
}
