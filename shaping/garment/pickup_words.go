package garment

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/shaping"
)

// phrase says how the stitches of a part are spread over it, in the order in which they are
// picked up.
func (j job) phrase(p Part) string {
	switch p.Kind {
	case LivePart, BoundOffPart:
		return fmt.Sprintf("%d %v, one for one", p.Count, p.Kind)
	case PointPart, SeamPart:
		return fmt.Sprint(p.Count)
	}
	upwards := p.Side != j.fromSide()
	if p.Piece == shaping.RightFront || p.Piece == shaping.LeftFront {
		upwards = p.Piece == shaping.RightFront
	}
	more := p.Count - p.Live
	switch {
	case p.Kind == StraightPart, p.Kind == EdgePart, p.Kind == EndPart, p.Live == 0 && p.Steps == p.Stitches && p.Rows >= leastStraight:
		return inRows(p.Count, p.Rows, upwards)
	case p.Live == 0:
		return fmt.Sprintf("%d over %s, evenly", p.Count, j.spec.nearly(p.Length))
	case more == 0:
		return fmt.Sprintf("%d live", p.Live)
	}
	between := "the turns between them"
	if p.Live < p.Stitches {
		between = "turns and decreases"
	}
	return fmt.Sprintf("%d live and %d from %s, evenly", p.Live, more, between)
}

// mostAtOnce is the largest number of rows that "in every" counts where it fits throughout.
const mostAtOnce = 12

// inRows says how stitches are picked up along rows: "1 in each row", "3 in every 4 rows",
// or, where no such ratio gives the count exactly, by two neighbouring ones in turn, so that
// the edge stays even: "5 times in turn: 3 in every 4 rows, 2 times, and 2 in 3 rows". What
// is left over follows. Upwards all of it is named the other way round.
func inRows(stitches, rows int, upwards bool) string {
	if stitches%rows == 0 {
		return fmt.Sprintf("%d in each row", stitches/rows)
	}
	if times := commonDivisor(stitches, rows); rows/times <= mostAtOnce {
		return ratio(stitches/times, rows/times, min(times, 2))
	}
	// Whole stitches for every row, and among the rest the rows that stand out: those with
	// one more, or those without. Each ends a block of rows; blocks differ by one row at most.
	each, out, off := stitches/rows, stitches%rows, 1
	if 2*out > rows {
		each, out, off = each+1, rows-out, -1
	}
	short, longer := rows/out, rows%out
	often, seldom := block{each*(short+1) + off, short + 1, longer}, block{each*short + off, short, out - longer}
	if often.times < seldom.times {
		often, seldom = seldom, often
	}
	said := []string{often.String(), seldom.String()}
	if seldom.times > 1 {
		each, left := often, often
		each.times, left.times = often.times/seldom.times, often.times%seldom.times
		once := seldom
		once.times = 1
		turn := []string{each.String(), once.String()}
		if upwards {
			slices.Reverse(turn)
		} else if each.times > 1 {
			turn[0] += "," // it ends in a number of times
		}
		said = []string{fmt.Sprintf("%d times in turn: %s and %s", seldom.times, turn[0], turn[1]), left.String()}
	}
	said = slices.DeleteFunc(said, func(text string) bool { return text == "" })
	if upwards {
		slices.Reverse(said)
	}
	return strings.Join(said, ", then ")
}

// block is a ratio that is picked up so many times.
type block struct{ stitches, rows, times int }

// String says the ratio and how often it comes, nothing if it does not.
func (b block) String() string {
	switch {
	case b.times < 1:
		return ""
	case b.times == 1:
		return ratio(b.stitches, b.rows, 1)
	}
	return fmt.Sprintf("%s, %d times", ratio(b.stitches, b.rows, b.times), b.times)
}

// ratio says how many stitches go into so many rows, once or every time.
func ratio(stitches, rows, times int) string {
	if times == 1 {
		return fmt.Sprintf("%d in %d rows", stitches, rows)
	}
	return fmt.Sprintf("%d in every %d rows", stitches, rows)
}

func commonDivisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
