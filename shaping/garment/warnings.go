package garment

import (
	"fmt"
	"slices"

	"example.com/walewise/shaping"
)

// warnings says what the knitter should know before starting.
func (f *trunk) warnings(sizes []Size) []string {
	list := append(f.swatchWarnings(), f.begunWarnings(sizes)...)
	add := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	if f.outer.IsValid() {
		return slices.Concat(list, f.openedWarnings(), f.heldWarnings())
	}
	if f.lastTied > 0 {
		list = append(list, apartWarning(f.armholeStart(shaping.Left), f.armholeStart(shaping.Right))...)
	}
	if f.heights.NeckStart() < f.heights.Tip() && f.heights.NeckStart() <= f.heights.Underarm {
		add("The neck begins below the underarms: the armholes are shaped in the halves.")
	}
	if left, right := f.shoulderSteps(shaping.Left), f.shoulderSteps(shaping.Right); len(left) > 0 && min(left[0].Row, right[0].Row) <= f.heights.NeckStart() {
		switch {
		case left[0].Row < right[0].Row:
			add("The shoulders begin below the neck, the left edge first and the right edge one row later.")
		case left[0].Row > right[0].Row:
			add("The shoulders begin below the neck, the right edge first and the left edge one row later.")
		default:
			add("The shoulders begin below the neck.")
		}
	}
	if f.top(shaping.Left) > f.top(shaping.Right) {
		add("The left half is one row later than the right: what is held or bound off at its neck and shoulder happens one row later, and it ends with row %d instead of %d.", f.top(shaping.Left), f.top(shaping.Right))
	}
	return append(list, f.heldWarnings()...)
}

// heldWarnings says where many single stitches are held.
func (f *trunk) heldWarnings() []string {
	var list []string
	for _, edge := range []struct {
		name  string
		steps shaping.Schedule
	}{{"neck", f.neckEdge.right.Schedule}, {"armhole", f.armholeEdge.right.Schedule}} {
		if single := heldSingly(edge.steps); single >= manyHeld {
			list = append(list, fmt.Sprintf("At the %s %d single stitches are held, which leaves small steps; with fashioned for single stitches they are decreased instead.", edge.name, single))
		}
	}
	return list
}

// apartWarning says which underarm is shaped first, by the rows of both edges.
func apartWarning(left, right int) []string {
	if left == right {
		return nil
	}
	first := shaping.Left
	if right < left {
		first = shaping.Right
	}
	return []string{fmt.Sprintf("The underarms are shaped one row apart: the %v edge first, the %v edge one row later.", first, first.Opposite())}
}

// manyHeld is how many single stitches held at one edge are worth a word.
const manyHeld = 4

// heldSingly returns how many steps hold a single stitch.
func heldSingly(steps shaping.Schedule) int {
	single := 0
	for _, step := range steps {
		if step.Method == shaping.Hold && step.Stitches == -1 {
			single++
		}
	}
	return single
}
