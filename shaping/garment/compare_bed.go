package garment

import (
	"fmt"

	"example.com/walewise/shaping"
)

// room compares the needles that a piece takes on each side of the middle with those of
// the bed.
func (j job) room(p Piece) Check {
	needles, half := p.Cloth.Needles(), j.spec.Setup.BedNeedles()/2
	right := needles.Last.Index() + 1
	left := needles.Len() - right
	most := max(left, right)
	c := Check{
		Name: "bed", Pieces: []string{p.Name()}, What: p.Name() + " on the bed",
		First: Measured{Of: p.Name(), Count: most, Counted: "needles"}, Second: Measured{Of: "bed", Count: half, Counted: "needles"},
		Passed: most <= half, Severity: j.spec.Checks.Bed.Or(AsError),
	}
	c.Field, _ = j.spec.widest(p.Widths)
	c.Says = fmt.Sprintf("%s: %d needles left and %d right of the middle, %v; the bed has %d on each side: ", upper(p.Name()), left, right, needles, half)
	if c.Passed {
		c.Says += fmt.Sprintf("%d and %d to spare.", half-left, half-right)
	} else {
		c.Says += fmt.Sprintf("%d and %d are missing. It must be knitted in two parts or at another gauge.", max(left-half, 0), max(right-half, 0))
	}
	return c
}

// alone returns a piece that is planned by itself, with a word on a bed that is too narrow
// for it; of one that belongs to a set the checks tell.
func (j job) alone(p Piece, err error) (Piece, error) {
	if err != nil || j.place != shaping.Bed {
		return p, err
	}
	if c := j.room(p); !c.Passed {
		p.Warnings = append(p.Warnings, c.Says)
	}
	return p, nil
}
