package garment

import (
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// Back plans the back of a garment, knits it and returns it: body, armholes and shoulders
// are those of the front, the neck is its own: 2.5 cm deep in a spec that says nothing of a
// back, and flat for two thirds where that is left open. It returns the same kinds of errors as [Front].
func Back(s Spec) (Piece, error) {
	j, err := newJob(s)
	if err != nil {
		return Piece{}, err
	}
	return j.alone(newBack(j))
}

func newBack(j job) (Piece, error) {
	neck := BackNeck{Depth: defaultBackNeck()}
	if j.spec.Back != nil {
		neck = j.spec.Back.Neck
	}
	if err := j.spec.checkLength("back.neck.depth", neck.Depth, true); err != nil {
		return Piece{}, err
	}
	flat := neck.Flat.Or(gauge.Length{})
	if err := j.spec.checkLength("back.neck.flat", flat, false); err != nil {
		return Piece{}, err
	}
	if flat.Cmp(j.spec.Neck.Width) > 0 {
		return Piece{}, j.spec.fitError("back.neck.flat", flat, "wider than the neck: at most "+j.spec.limit(j.spec.Neck.Width))
	}
	b := newTrunk(shaping.Back, j)
	b.opening = Neck{Shape: RoundNeck, Width: j.spec.Neck.Width, Depth: neck.Depth, Flat: neck.Flat}
	b.neckField = "back.neck"
	if !tied(b.neck.Several) {
		b.neck.Several = shaping.Hold // the bottom of a round neck takes several stitches at once
	}
	return b.plan()
}

// trunks plans the front, or the two of an opened one, and the back.
func (j job) trunks() ([]Piece, error) {
	fronts, err := j.fronts()
	if err != nil {
		return nil, err
	}
	back, err := newBack(j)
	return append(fronts, back), err
}

// fronts plans what lies before the wearer: one front, or the right and the left one.
func (j job) fronts() ([]Piece, error) {
	if j.spec.Opening != nil {
		return newFronts(j)
	}
	front, err := newFront(j)
	return []Piece{front}, err
}

// defaultBackNeck is the depth of a back's neck: 2 to 2.5 cm are common practice, no
// source; an inch on most patterns (knittingrobin.blogspot.com, 3 March 2014).
func defaultBackNeck() gauge.Length { return gauge.MustParseLength("2.5 cm") }
