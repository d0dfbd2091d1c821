package shaping

import (
	"fmt"
	"strings"
)

// Ends says what stands at the two ends of an evenly shaped edge. The zero value
// is PlainAfter.
type Ends uint8

// The three conventions.
const (
	// PlainAfter leaves plain rows after the last shaping, about as many as lie
	// between two: n shapings part the rows into n+1 distances. Neither the first
	// nor the last row need be shaped.
	PlainAfter Ends = iota
	// LastShaped puts the last shaping on the last row, as where a plain part
	// follows anyway: n shapings part the rows into n distances.
	LastShaped
	// FirstAndLastShaped shapes the first row and the last: n shapings lie n-1
	// distances apart.
	FirstAndLastShaped
)

// String returns the convention in words.
func (e Ends) String() string {
	switch e {
	case PlainAfter:
		return "plain rows after the last shaping"
	case LastShaped:
		return "last row shaped"
	case FirstAndLastShaped:
		return "first and last row shaped"
	}
	return fmt.Sprintf("Ends(%d)", uint8(e))
}

// SpacingRequest asks for a number of shapings spread evenly over the rows of an
// edge. Its zero value asks for none in no rows.
type SpacingRequest struct {
	Rows           int  // the rows to spread them over, from row 1 to row Rows
	Times          int  // the number of shapings
	Ends           Ends // PlainAfter if not set
	EverySecondRow bool // every 2nd row only, so that all distances are even; otherwise any row
}

// Distance is one distance of an even spacing and how often it is used: every
// 4th row, 8 times; or every 9th stitch, 12 times.
type Distance struct {
	Every int // rows, or along a row stitches
	Times int // how often
}

// Spacing is an even spacing of shapings over the rows of an edge. The zero
// value shapes no row.
type Spacing struct {
	// From is the row that the first distance is counted from: 0, the row before
	// the first one, or 1 if row 1 is shaped itself.
	From      int
	Distances []Distance // in the order of the rows: the smaller, then the larger
	Plain     int        // plain rows after the last shaping
}

// EvenSpacing spreads shapings by the division rule. Where r rows are parted by n
// shapings into n distances, r = q*n + rem, the distance q is used n-rem times
// and q+1 rem times; for every 2nd row these are pairs of rows, so the two
// distances differ by 2, and an odd row left over joins the plain rows at the
// end. The distances are grouped, the smaller ones first, and the plain rows
// after the last shaping count as the last distance.
//
// It returns an [*Error] if a number is negative or larger than [MaxRows], and
// one that names the nearest requests that work if there are too many shapings
// for the rows, or if even distances do not add up to them.
func EvenSpacing(r SpacingRequest) (Spacing, error) {
	if err := r.validate(); err != nil {
		return Spacing{}, err
	}
	if r.Times == 0 {
		return Spacing{Plain: r.Rows}, nil
	}
	from, parts := r.parts()
	s := Spacing{From: from, Plain: r.Rows - from}
	if parts == 0 {
		return s, nil // the only row there is, shaped
	}
	s.Distances = division((r.Rows-from)/r.unit(), parts)
	if r.Ends == PlainAfter {
		// The last distance is the plain rows.
		last := len(s.Distances) - 1
		if s.Distances[last].Times--; s.Distances[last].Times == 0 {
			s.Distances = s.Distances[:last]
		}
	}
	for i := range s.Distances {
		s.Distances[i].Every *= r.unit()
		s.Plain -= s.Distances[i].Every * s.Distances[i].Times
	}
	return s, nil
}

// AlongRow spreads increases or decreases over the stitches of one row by the
// same rule as [EvenSpacing]: the row is parted into as many groups as there are
// shapings, and the groups, the smaller ones first, are returned as distances.
// An increase follows the last stitch of its group; a decrease knits the last two
// stitches of its group together, so its groups need two. With times 0 there are
// no groups.
//
// It returns an [*Error] if a number is negative, and one that names the nearest
// requests that work if there are more shapings than stitches.
func AlongRow(stitches, times int) ([]Distance, error) {
	switch {
	case stitches < 0:
		return nil, rangeError("stitches of a row", stitches, "0 or more")
	case times < 0:
		return nil, rangeError("shapings along a row", times, "0 or more")
	case times > stitches:
		return nil, infeasible("shapings along a row", fmt.Sprintf("%d times in %d stitches", times, stitches),
			fmt.Sprintf("nearest that can be worked: %d times in %d stitches, or %d times in %d stitches", stitches, stitches, times, times))
	case times == 0:
		return nil, nil
	}
	return division(stitches, times), nil
}

// division parts a whole number into parts as equal as can be, the smaller first.
func division(whole, parts int) []Distance {
	q, rem := whole/parts, whole%parts
	distances := []Distance{{Every: q, Times: parts - rem}}
	if rem > 0 {
		distances = append(distances, Distance{Every: q + 1, Times: rem})
	}
	return distances
}

// Rows returns the shaped rows in order; of more than [MaxRows] of them, the first.
func (s Spacing) Rows() []int {
	var rows []int
	row := s.From
	if row > 0 {
		rows = append(rows, row)
	}
	for _, d := range s.Distances {
		for range min(d.Times, MaxRows-len(rows)) {
			row += d.Every
			rows = append(rows, row)
		}
	}
	return rows
}

// Schedule returns the spacing as steps of that many stitches each: negative if
// stitches go, positive if they come.
func (s Spacing) Schedule(stitches int, m Method) Schedule {
	var steps Schedule
	for _, row := range s.Rows() {
		steps = append(steps, Step{Row: row, Stitches: stitches, Method: m})
	}
	return steps
}

// Phrases says the spacing in steps of that many stitches each: one phrase where
// all distances are equal, two otherwise.
func (s Spacing) Phrases(stitches int) []Phrase { return s.Schedule(stitches, 0).Phrases() }

func (r SpacingRequest) unit() int {
	if r.EverySecondRow {
		return 2
	}
	return 1
}

// parts returns the row that the distances are counted from and their number,
// the plain rows included. There must be at least one shaping.
func (r SpacingRequest) parts() (from, parts int) {
	switch r.Ends {
	case LastShaped:
		return 0, r.Times
	case FirstAndLastShaped:
		return 1, r.Times - 1
	}
	return 0, r.Times + 1
}

// works reports whether the shapings fit the rows.
func (r SpacingRequest) works() bool {
	if r.Times == 0 {
		return true
	}
	from, parts := r.parts()
	rows := r.Rows - from
	switch {
	case rows < parts*r.unit():
		return false
	case parts == 0:
		return rows == 0
	case r.Ends == PlainAfter:
		return true
	}
	return rows%r.unit() == 0
}

func (r SpacingRequest) validate() error {
	allowed := fmt.Sprintf("0 to %d", MaxRows)
	switch {
	case r.Rows < 0 || r.Rows > MaxRows:
		return rangeError("rows to shape", r.Rows, allowed)
	case r.Times < 0 || r.Times > MaxRows:
		return rangeError("shapings", r.Times, allowed)
	case r.Ends > FirstAndLastShaped:
		return rangeError("ends of a spacing", int(r.Ends), "plain rows after, last row shaped, or first and last row shaped")
	case r.works():
		return nil
	}
	want := "nothing near it can be worked"
	if near := r.nearest(); len(near) > 0 {
		want = "nearest that can be worked: " + strings.Join(near, ", or ")
	}
	return infeasible("even spacing, "+r.Ends.String()+",", r.text(), want)
}

// nearest lists the nearest requests that work: the nearest number of shapings
// in the same rows, and the nearest numbers of rows for the same shapings.
func (r SpacingRequest) nearest() []string {
	var near []string
	for by := 1; by <= MaxRows; by++ {
		fewer, more := r, r
		fewer.Times -= by
		more.Times += by
		if fewer.Times > 0 && fewer.works() {
			near = append(near, fewer.text())
			break
		}
		if more.Times <= MaxRows && more.works() {
			near = append(near, more.text())
			break
		}
	}
	for by, found := 1, false; by <= MaxRows && !found; by++ {
		for _, rows := range []int{r.Rows - by, r.Rows + by} {
			other := r
			other.Rows = rows
			if rows > 0 && rows <= MaxRows && other.works() {
				near = append(near, other.text())
				found = true
			}
		}
	}
	return near
}

func (r SpacingRequest) text() string {
	text := fmt.Sprintf("%d times in %d rows", r.Times, r.Rows)
	if r.EverySecondRow {
		text += " on every 2nd row"
	}
	return text
}
