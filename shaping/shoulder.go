package shaping

import "fmt"

// ShoulderGroups parts the stitches of a shoulder that slopes over drop rows
// into the groups that short rows leave behind one after the other, from the tip
// to the neck: drop/2 + 1 groups as equal as can be, the larger ones at the neck.
// The last group is never held, and has at least 2 stitches so that a row can
// still be knitted on it. In 16 stitches over 4 rows these are 5, 5 and 6.
//
// It returns an [*Error] if there are fewer than 2 stitches or more than a bed
// holds, and one that names the nearest drop that works if drop is negative or
// odd, or leaves a group without a stitch.
func ShoulderGroups(stitches, drop int) ([]int, error) {
	const leastLast = 2
	if stitches < leastLast || stitches > 2*MaxNeedle {
		return nil, rangeError("shoulder of stitches", stitches, fmt.Sprintf("%d to %d", leastLast, 2*MaxNeedle))
	}
	// With a stitch in every group and leastLast in the last.
	highest := 2 * (stitches - leastLast)
	allowed := fmt.Sprintf("%d stitches slope over an even number of rows from 0 to %d", stitches, highest)
	const what = "shoulder drop in rows"
	switch {
	case drop < 0:
		return nil, rangeError(what, drop, allowed+", the nearest is 0")
	case drop > highest:
		return nil, infeasible(what, fmt.Sprint(drop), fmt.Sprintf("%s, the nearest is %d", allowed, highest))
	case drop%2 != 0:
		return nil, rangeError(what, drop, fmt.Sprintf("%s, the nearest are %d and %d", allowed, drop-1, drop+1))
	}
	groups := make([]int, drop/2+1)
	for i := range groups {
		// The remainder goes to the groups at the neck, one stitch each.
		groups[i] = (stitches + i) / len(groups)
	}
	return groups, nil
}
