package gauge

import (
	"fmt"
	"sort"
)

// Part is one of several counts that must add up when they are whole.
type Part struct {
	Name  string
	Want  Count
	Times int      // how many equal parts of this kind there are; below 1 means 1
	Grid  Rounding // the whole numbers allowed; its direction does not count
	Least int      // the smallest number of stitches or rows allowed
}

// Rounded is a part made whole.
type Rounded struct {
	Name  string
	Times int   // how many equal parts there are, 1 at least
	Whole int   // stitches or rows of each
	Off   Count // Whole less what was wanted
}

const (
	mostParts = 16
	mostTotal = 1_000_000
	farthest  = 128 // enough for one part to make up for what the others cannot
)

// RoundTogether makes the parts whole so that they add up to total, each counted
// Times times. No part moves by more than one from what was wanted if that can be,
// else by no more than two, and so on, up to 128; among the choices left it takes the
// one with the least sum of relative differences |whole - wanted| / wanted over all
// parts, copies counted (the plain difference for a wanted 0), and among equals the
// one whose first part is smaller. The answers are in the order of the parts.
//
// It returns an [*Error] that wraps [ErrParity] if the grids and the copies of the
// parts never add up to total, however far the parts move. The error wraps [ErrRange]
// if a Least or the bound of 128 is in the way, and for more than 16 parts or a total,
// a wanted number, a Times or a Multiple beyond a million. An error about the total
// names the nearest one that works, if there is one. Time grows with the number of
// different sums that the parts can make within the distance.
func RoundTogether(total int, parts []Part) ([]Rounded, error) {
	if err := checkJoint(total, parts); err != nil {
		return nil, err
	}
	s, sum := search{parts: parts}, int64(total)
	if !s.reaches(sum, 1) {
		if !s.reaches(sum, farthest) {
			return nil, refusal(total, parts)
		}
		// What can be reached within a distance can be reached within a larger one.
		distance := 2 + sort.Search(farthest-2, func(i int) bool { return s.reaches(sum, 2+i) })
		s.prepare(distance) // the search may have ended on another
	}
	return s.rounded(sum), nil
}

// checkJoint refuses numbers whose products could leave a machine word.
func checkJoint(total int, parts []Part) error {
	if len(parts) == 0 || len(parts) > mostParts {
		return &Error{Field: "parts", Given: fmt.Sprint(len(parts)), Want: fmt.Sprintf("1 to %d", mostParts), Err: ErrRange}
	}
	if total < -mostTotal || total > mostTotal {
		return &Error{Field: "total", Given: fmt.Sprint(total), Want: fmt.Sprintf("%d to %d", -mostTotal, mostTotal), Err: ErrRange}
	}
	for _, p := range parts {
		beyond := func(format string, given int) error {
			return p.fault(fmt.Sprintf(format, given), "at most "+fmt.Sprintf(format, mostTotal))
		}
		switch {
		case p.Want.Abs().Cmp(Whole(mostTotal)) > 0:
			return beyond("wanted %d", p.Want.Round(Rounding{}))
		case p.Times > mostTotal:
			return beyond("%d times", p.Times)
		case p.Grid.Multiple > mostTotal:
			return beyond("multiple of %d", p.Grid.Multiple)
		}
	}
	return nil
}

// fault returns an error about the part.
func (p Part) fault(given, want string) error {
	return &Error{Field: "part " + quoted(p.Name), Given: given, Want: want, Err: ErrRange}
}
