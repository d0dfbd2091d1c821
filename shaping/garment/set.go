package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/shaping"
)

// Set is the pieces of one garment and what was checked between them, as [Pieces] makes it:
// one that is put together from pieces by hand is not checked. Treat it as a value: what it
// holds is shared. Its document is the plan that plan.Write writes of its pieces; what
// encoding/json makes of a Set is none.
type Set struct {
	Pieces []Piece // in the order in which they are best knitted
	Bands  []Band  // picked up from the knitted pieces; none without a band in the spec
	Checks []Check
}

// Piece returns the piece of that name; ok is false if there is none.
func (s Set) Piece(name string) (p Piece, ok bool) {
	i := slices.IndexFunc(s.Pieces, func(p Piece) bool { return p.Name() == name })
	if i < 0 {
		return Piece{}, false
	}
	return s.Pieces[i], true
}

// front returns the front, or of two the one whose outer edge is at that side.
func (s Set) front(side shaping.Side) Piece {
	for _, p := range s.trunks() {
		if p.Name() != shaping.Back && p.hasShoulder(side) {
			return p
		}
	}
	return Piece{}
}

// trunks returns the pieces that lie before and behind the wearer.
func (s Set) trunks() []Piece {
	return slices.DeleteFunc(slices.Clone(s.Pieces), Piece.isSleeve)
}

// Failed returns the checks that did not pass.
func (s Set) Failed() []Check {
	return slices.DeleteFunc(slices.Clone(s.Checks), func(c Check) bool { return c.Passed })
}

// Pieces plans front, back and two sleeves from one spec, knits them, plans the bands if the
// spec has any, and checks that all fit together, the wearer and the bed. A spec with an
// opening gives the right and the left front in place of the one, a spec without sleeves
// none. A check that fails is among the warnings of the pieces concerned, or, where the spec
// asks for it, an [*Error] of the kind [ErrCheck]; of a bed that is too narrow, [ErrBed].
// It returns the same kinds of errors as [Front] besides.
func Pieces(s Spec) (Set, error) {
	j, err := newJob(s)
	if err != nil {
		return Set{}, err
	}
	if s.Sleeve != nil {
		if err := checkSleeve(s); err != nil {
			return Set{}, err
		}
	}
	pieces, err := j.trunks()
	if err != nil {
		return Set{}, err
	}
	if s.Sleeve != nil {
		right, err := newSleeve(j, shaping.Right, pieces)
		if err != nil {
			return Set{}, err
		}
		left := right.clone()
		left.Work.Name = shaping.LeftSleeve
		pieces = append(pieces, right, left)
	}
	for i := range pieces {
		pieces[i].Spec = s.Clone()
	}
	set := Set{Pieces: pieces}
	if set.Bands, err = j.bands(set); err != nil {
		return Set{}, err
	}
	return checked(j, set)
}

// checked adds the checks to a set. Of those that fail and are errors it returns one error.
func checked(j job, s Set) (Set, error) {
	s.Checks = j.checks(s)
	var refused *Error
	for _, c := range s.Failed() {
		if c.Severity == AsError {
			says := fmt.Sprintf("%s To plan it all the same, set checks.%s to warning.", c.Says, c.Name)
			if refused == nil {
				refused = &Error{Field: c.Field, Given: j.spec.given(c.Field), Want: says, Err: ErrCheck}
			} else {
				refused.Want += " " + says
			}
			continue
		}
		for i, p := range s.Pieces {
			if slices.Contains(c.Pieces, p.Name()) {
				s.Pieces[i].Warnings = append(slices.Clone(p.Warnings), c.Says)
			}
		}
	}
	if refused != nil {
		return Set{}, refused
	}
	return s, nil
}

// given returns what the spec says in a field that a check names.
func (s Spec) given(field string) string {
	switch field {
	case "body.length":
		return s.text(s.Body.Length)
	case "opening.overlap":
		return s.text(s.overlap())
	case "shoulder.drop":
		return s.text(s.Shoulder.Drop)
	case "neck.width":
		return s.text(s.Neck.Width)
	case "sleeve.cuff":
		return s.text(s.Sleeve.Cuff)
	case "sleeve.top":
		return s.text(s.Sleeve.Top)
	}
	return ""
}
