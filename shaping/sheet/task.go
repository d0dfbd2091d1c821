package sheet

import "example.com/walewise/shaping"

// task is an action before a row as it is said: an increase, which shifts stitches
// outwards and fills the needle that this empties, is one.
type task struct {
	shaping.Action
	increase bool
}

// tasks joins the two actions of every increase.
func tasks(actions []shaping.Action) []task {
	var list []task
	for i := 0; i < len(actions); i++ {
		t := task{Action: actions[i]}
		if t.Do == shaping.DoShift && i+1 < len(actions) && actions[i+1].Do == shaping.DoFill {
			t.increase = true
			i++
		}
		list = append(list, t)
	}
	return list
}

// edge returns the edge that a shift shapes.
func (t task) edge() shaping.Side {
	if t.increase {
		return t.Toward
	}
	return t.Toward.Opposite()
}

// emptied returns the needle that a shift leaves without a stitch.
func (t task) emptied() shaping.Needle { return t.Needles.End(t.Toward.Opposite()) }

// beyond returns the needle that an increase brings into work.
func (t task) beyond() shaping.Needle { return t.Needles.Beyond(t.Toward, 1).First }

// alike reports whether two lists of tasks are the same but for the names of the
// needles and the end that comes first.
func alike(a, b []task) bool {
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	a, b = leftToRight(a), leftToRight(b)
	for i := range a {
		if a[i].Do != b[i].Do || a[i].Toward != b[i].Toward || a[i].increase != b[i].increase || a[i].Needles.Len() != b[i].Needles.Len() {
			return false
		}
	}
	return true
}

// leftToRight returns the tasks from left to right.
func leftToRight(list []task) []task {
	if len(list) == 2 && list[1].Needles.First.Index() < list[0].Needles.First.Index() && list[0].Do == list[1].Do {
		return []task{list[1], list[0]}
	}
	return list
}

// atBothEnds reports whether the tasks are one decrease at each end or one increase at
// each end, each of which leaves the stitches of the other where they are.
func atBothEnds(two []task) bool {
	return len(two) == 2 && two[0].Do == shaping.DoShift && two[1].Do == shaping.DoShift &&
		two[0].increase == two[1].increase && two[0].edge() != two[1].edge() && !two[0].Needles.Overlaps(two[1].Needles)
}
