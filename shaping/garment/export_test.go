package garment

import (
	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// CapsOf returns what the caps of a spec's sleeve are chosen from: by how many millimetres
// the edges of those of so many rows are off the length that is wanted.
func CapsOf(spec Spec) (off func(rows int) ([]float64, error), err error) {
	j, err := newJob(spec)
	if err != nil {
		return nil, err
	}
	trunks, err := j.trunks()
	if err != nil {
		return nil, err
	}
	s, err := fittedSleeve(j, shaping.Right, trunks)
	if err != nil {
		return nil, err
	}
	// Fitted, the drawing is that of the chosen rows.
	if s.cap.drawing.edge, err = curve.ParsePath(capShape); err != nil {
		return nil, err
	}
	return func(rows int) ([]float64, error) {
		var offs []float64
		for _, part := range []float64{sayable, roughly} {
			tries, err := s.caps(rows, part)
			if err != nil {
				return nil, err
			}
			for _, t := range tries {
				offs = append(offs, t.off)
			}
		}
		return offs, nil
	}, nil
}

// ChecksOf returns the checks of pieces that need not be of one spec.
func ChecksOf(spec Spec, pieces ...Piece) ([]Check, error) {
	j, err := newJob(spec)
	return j.checks(Set{Pieces: pieces}), err
}

// InRows says how stitches are spread over rows.
func InRows(stitches, rows int, upwards bool) string { return inRows(stitches, rows, upwards) }

// StripOf makes parts whole together as those of a garment knitted on the bed.
func StripOf(parts []Part, grid gauge.Rounding) (Strip, error) {
	return job{place: shaping.Bed}.strip("strip", parts, grid)
}
