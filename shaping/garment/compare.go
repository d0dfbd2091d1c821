package garment

import (
	"fmt"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// Check is one comparison between two pieces, or of a piece with the wearer or the bed.
type Check struct {
	Name     string   // "shoulders", "sides", "fronts", "armholes", "neck", "cuff" or "bed"
	Pieces   []string // those concerned
	Field    string   // of the spec, where a change would help
	What     string   // what is compared, such as "wearer's right shoulder"
	First    Measured
	Second   Measured
	Within   gauge.Length // how far apart the two may be; for neck, cuff and bed, where the first may be larger, 0
	Passed   bool
	Severity Severity // of a failure
	Says     string   // the two, their difference and what follows from it, in one or two sentences
}

// Measured is one side of a check.
type Measured struct {
	Of      string // such as "front's right half"
	Count   int    // of what Counted says; 0 for what is a length only
	Counted string // "stitches", "rows", "needles", or empty
	Length  gauge.Length
}

// Off returns the length of the first less that of the second.
func (c Check) Off() gauge.Length { return c.First.Length.Sub(c.Second.Length) }

// CountOff returns the count of the first less that of the second.
func (c Check) CountOff() int { return c.First.Count - c.Second.Count }

// checks compares the pieces of a set with each other, the wearer and the bed.
func (j job) checks(s Set) []Check {
	back, _ := s.Piece(shaping.Back)
	sleeve, sleeves := s.Piece(shaping.RightSleeve)
	left, right := s.front(shaping.Left), s.front(shaping.Right) // the same where the front is one
	var list []Check
	list = append(list, j.shoulder(right, back, shaping.Right), j.shoulderHeight(right, back, shaping.Right))
	list = append(list, j.shoulder(left, back, shaping.Left), j.shoulderHeight(left, back, shaping.Left))
	list = append(list, j.sideSeam(right, back, shaping.Right), j.sideSeam(left, back, shaping.Left))
	if right.Outer().IsValid() {
		list = append(list, j.reflected(s), j.together(s))
	}
	if sleeves {
		list = append(list, j.armholes(s.trunks(), sleeve))
	}
	if j.spec.Head.Sign() > 0 && !right.Outer().IsValid() {
		list = append(list, j.head(right, back, s))
	}
	if sleeves && j.spec.Hand.Sign() > 0 {
		list = append(list, j.hand(sleeve))
	}
	if j.place == shaping.Bed {
		for _, p := range s.Pieces {
			list = append(list, j.room(p))
		}
		for _, b := range s.Bands {
			for _, strip := range b.Strips {
				list = append(list, j.bandRoom(b, strip))
			}
		}
	}
	return list
}

// across measures stitches.
func (j job) across(of string, stitches int) Measured {
	return Measured{Of: of, Count: stitches, Counted: "stitches", Length: j.gauge.Width(stitches)}
}

// up measures rows.
func (j job) up(of string, rows int) Measured {
	return Measured{Of: of, Count: rows, Counted: "rows", Length: j.gauge.Height(rows)}
}

// difference says how two counts differ.
func difference(off int) string {
	if off == 0 {
		return "equal"
	}
	return fmt.Sprintf("%d apart", max(off, -off))
}

// differs says by how much a length is more or less than another.
func (j job) differs(off gauge.Length) string {
	switch {
	case off.Sign() < 0:
		return j.spec.fine(off.Neg()) + " less"
	case off.IsZero():
		return "no difference"
	}
	return j.spec.fine(off) + " more"
}

// upper returns the text with a capital at its beginning.
func upper(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
