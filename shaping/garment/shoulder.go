package garment

import (
	"fmt"

	"example.com/walewise/shaping"
)

// chooseGroups parts the shoulder, and refuses methods that cannot take its groups.
func (f *trunk) chooseGroups() error {
	var err error
	if f.groups, err = f.widths.groups(f.spec, f.heights, f.gauge); err != nil {
		return err
	}
	if f.spec.Shoulder.Path != "" && f.heights.Drop > 0 {
		return f.drawShoulder()
	}
	largest := 0
	for _, group := range f.groups[:len(f.groups)-1] {
		largest = max(largest, group)
	}
	if most := f.shoulder.most(); most > 0 && largest > most {
		return f.steepShoulder(largest, most)
	}
	// Held stitches come back for a closing row, which must not pass over empty needles;
	// other pairs may meet in neighbouring rows.
	if f.heldInPart() || neighbours(f.shoulderSteps(shaping.Left)) || neighbours(f.shoulderSteps(shaping.Right)) {
		return &Error{Field: "methods.shoulder", Given: f.shoulder.String(), Err: ErrFit,
			Want: "the shoulder has groups of 1 and of 2 stitches, which these two methods cannot work one after the other: hold or bindOff for all"}
	}
	return nil
}

// heldInPart reports whether some groups of the shoulder are held and some are not.
func (f *trunk) heldInPart() bool {
	held := 0
	for _, group := range f.groups[:len(f.groups)-1] {
		if f.shoulder.of(group) == shaping.Hold {
			held++
		}
	}
	return held > 0 && held < len(f.groups)-1
}

// steepShoulder says why decreases cannot work the shoulder, and over how many rows
// they alone could.
func (f *trunk) steepShoulder(largest, most int) error {
	want := fmt.Sprintf("%d stitches go at once, a fashioned decrease takes %d: hold or bindOff", largest, most)
	if f.shoulder.Single == shaping.Fashioned {
		drop := f.widths.Shoulder - 2 // two in the last group
		if most == 1 {
			drop *= 2
		}
		want += ", or a shoulder.drop of " + f.spec.nearly(f.gauge.Height(drop+drop%2))
	}
	return &Error{Field: "methods.shoulder", Given: f.shoulder.String(), Want: want, Err: ErrFit}
}

// shoulderSteps returns the steps at one shoulder, from tip to neck. On the bed a
// shoulder that begins in the body has its tied steps one row earlier at the edge
// that is not the first half's; in the hand they are one row later at the left.
func (f *trunk) shoulderSteps(edge shaping.Side) shaping.Schedule {
	var steps shaping.Schedule
	for i, group := range f.groups[:len(f.groups)-1] {
		if group == 0 {
			continue // of a drawn shoulder
		}
		m := f.shoulder.of(group)
		row := f.heights.Tip() + 2*i
		if m != shaping.Hold {
			row++
		}
		if tied(m) {
			row += f.tiedLag(edge, row)
		}
		steps = append(steps, shaping.Step{Row: row, Stitches: -group, Method: m})
	}
	return steps
}

// tiedLag returns by how many rows a step that works at one end of a row is moved at
// an edge against the edge of the first half, where it stands at row.
func (f *trunk) tiedLag(edge shaping.Side, row int) int {
	switch {
	case edge == f.firstHalf():
		return 0
	case f.place == shaping.Hand:
		return 1
	case row <= f.heights.NeckStart():
		return -1 // in the body; the halves are worked alike
	}
	return 0
}

// lag returns 1 for the half in the hand that ends a row later than the other, as
// steps of it work at the ends of rows.
func (f *trunk) lag(side shaping.Side, edges ...shaping.Schedule) int {
	if f.place != shaping.Hand || side == f.firstHalf() {
		return 0
	}
	for _, steps := range edges {
		for _, step := range steps {
			if tied(step.Method) {
				return 1
			}
		}
	}
	return 0
}

// firstShoulderRow returns the first row at which either shoulder is shaped, and of
// shoulders without steps the second row above the piece.
func (f *trunk) firstShoulderRow() int {
	first := f.heights.Top() + 2
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		if steps := f.shoulderSteps(edge); len(steps) > 0 {
			first = min(first, steps[0].Row)
		}
	}
	return first
}

// shoulderHeld returns the stitches of one shoulder that are on hold after row.
func (f *trunk) shoulderHeld(side shaping.Side, row int) int {
	return -f.shoulderSteps(side).Between(1, row).Of(shaping.Hold).Total()
}
