package garment

import (
	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// drawShoulder traces a drawn shoulder from the tip to the neck point.
func (f *trunk) drawShoulder() error {
	if f.shoulder.Several != f.shoulder.Single || !tied(f.shoulder.Several) {
		return &Error{Field: "methods.shoulder", Given: f.shoulder.String(), Err: ErrFit,
			Want: "groups of a drawn shoulder have any number of stitches: hold or bindOff for all, or leave shoulder.path out"}
	}
	d := drawing{
		name: ShoulderEdge, stitches: f.widths.Shoulder, rows: f.heights.Drop,
		methods: f.shoulder, rules: shaping.Rules{Every: 2, Apart: 2},
	}
	var err error
	if d.edge, err = f.boxed(f.paths.shoulder, d.stitches, d.rows); err == nil {
		if f.groups, err = f.drawnGroups(d); err == nil {
			f.shoulderEdge, err = f.lay(d, f.shoulderSteps, f.shoulderStart)
		}
	}
	if err != nil {
		return f.spec.fitError("shoulder.drop", f.spec.Shoulder.Drop, err.Error())
	}
	return nil
}

// drawnGroups parts a drawn shoulder into groups, some of which may have no stitch.
//
// Held or bound off, the n-th group counted from 0 ends up 2n rows higher than the tip (a
// held one gets the closing row on top) and is gone from the drawing in the row after
// that. The last group goes in the row above the drawing, which is therefore traced with
// one more row, in which it is upright.
func (f *trunk) drawnGroups(d drawing) ([]int, error) {
	const leastLast = 2 // a row is still knitted on it
	above, err := curve.Line(gauge.Length{}, f.gauge.Height(1))
	if err != nil {
		return nil, err
	}
	taller := d
	taller.rows++
	if taller.edge, err = curve.Join(d.edge, above); err != nil {
		return nil, err
	}
	traced, err := taller.trace()
	if err != nil {
		return nil, err
	}
	groups := make([]int, d.rows/2+1)
	left := d.stitches
	for _, step := range traced {
		// Any number may go at every second row, so that what is best for two rows does
		// not depend on the others: of levels that leave too little for the last group,
		// the nearest that does not is best.
		groups[step.Row/2] = min(-step.Stitches, left-leastLast)
		left -= groups[step.Row/2]
	}
	groups[d.rows/2] += left
	return groups, nil
}

// shoulderStart returns the row at which the drawing of the shoulder begins at one edge.
func (f *trunk) shoulderStart(edge shaping.Side) int {
	row := f.heights.Tip()
	if f.shoulder.Several != shaping.Hold {
		row++
	}
	return row + f.tiedLag(edge, row)
}
