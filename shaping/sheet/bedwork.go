package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// said returns what an entry at the bed asks for, in sentences.
func (b bedVoice) said(group []entry) string {
	e := group[0]
	var text string
	if len(group) > 1 {
		text = b.again(group)
	} else {
		text = strings.Join(b.done(e.before, e), " ")
	}
	return strings.TrimSpace(text + " " + knitting(group))
}

// done says tasks of an entry that stands alone, one sentence each; two decreases at one
// edge make one, and so do two steps of a kind at both ends.
func (b bedVoice) done(list []task, e entry) []string {
	var text []string
	for i := 0; i < len(list); i++ {
		t := list[i]
		rest := list[i+1:]
		switch {
		case t.Do != shaping.DoShift:
			text = append(text, b.once(t.Action, e))
		case len(rest) > 0 && doubles(t, rest[0]):
			text = append(text, b.double(t, rest[0], e))
			i++
		case len(rest) > 0 && atBothEnds(list[i:i+2]) && (len(rest) == 1 || !doubles(rest[0], rest[1])):
			text = append(text, bothEnds(leftToRight(list[i:i+2])))
			i++
		case t.increase:
			text = append(text, fmt.Sprintf("Increase 1 %s: push %v into work, move %v one needle to the %v; fill the empty %v with the purl bar of the neighbour.",
				b.where(e, t.edge()), t.beyond(), t.Needles, t.Toward, t.emptied()))
		default:
			text = append(text, fmt.Sprintf("Decrease 1 %s: move %v one needle to the %v; push the empty %v out of work.",
				b.where(e, t.edge()), t.Needles, t.Toward, t.emptied()))
		}
	}
	if b.onHold && slices.ContainsFunc(list, func(t task) bool { return t.Do == shaping.DoShift }) {
		text = append(text, sentence(backToWork))
	}
	return text
}

// backToWork is said after a transfer while the carriage is set to hold: the tool leaves
// needles where such a carriage passes them by.
const backToWork = "push the needles you moved back to working position"

// doubles reports whether two tasks are the moves of a double decrease.
func doubles(a, b task) bool {
	return b.Do == shaping.DoShift && b.edge() == a.edge() && !a.increase && !b.increase
}

// double says a double decrease, worked as two moves.
func (b bedVoice) double(first, second task, e entry) string {
	return fmt.Sprintf("Decrease 2 %s: move %v one needle to the %v, then %v, so that three loops lie on %v; push the empty %v and %v out of work.",
		b.where(e, first.edge()), first.Needles, first.Toward, second.Needles, second.Needles.Beyond(first.Toward, 1).First, first.emptied(), second.emptied())
}

// knitting says the rows and wraps of an entry.
func knitting(group []entry) string {
	e := group[0]
	if len(group) > 1 && e.fashioned() {
		rows, other, last := inTurn(group, func(e entry) string { return plural.Rows(e.rows()) })
		if other != "" {
			rows += " and " + other + " in turn"
		}
		if last != "" {
			rows += ", the last time " + last
		}
		return fmt.Sprintf("Each time knit %s.", rows)
	}
	var parts []string
	for _, k := range e.knits {
		parts = append(parts, "knit "+plural.Rows(k.rows))
		switch {
		case k.wrap != 0 && len(group) > 1 && e.before[0].Needles.Len() == 1:
			parts = append(parts, "wrap it")
		case k.wrap != 0 && len(group) > 1:
			parts = append(parts, "wrap the innermost of them ("+wraps(group)+")")
		case k.wrap != 0:
			parts = append(parts, fmt.Sprintf("wrap %v", k.wrap))
		}
	}
	text := strings.Join(parts, ", ")
	if len(group) > 1 {
		return "Each time " + text + "."
	}
	if len(e.before) == 0 && e.rows() > 0 && e.rows()%2 == 1 {
		text += fmt.Sprintf("; the carriage ends at the %v", e.end)
	}
	return oneline.Capital(text) + "."
}

// wraps lists the needles wrapped by entries that repeat.
func wraps(group []entry) string {
	var names []string
	for _, e := range group {
		for _, k := range e.knits {
			if k.wrap != 0 {
				names = append(names, k.wrap.String())
			}
		}
	}
	return strings.Join(names, "; ")
}

// once says one action of an entry that stands alone.
func (b bedVoice) once(a shaping.Action, e entry) string {
	n := a.Needles.Len()
	switch a.Do {
	case shaping.DoCastOn:
		return fmt.Sprintf("The %d stitches are on %v.", n, a.Needles)
	case shaping.DoHold:
		return fmt.Sprintf("Put %v on hold %s (%s).", a.Needles, b.where(e, e.from.Opposite()), plural.Stitches(n))
	case shaping.DoReturn:
		return fmt.Sprintf("Push %v (%s) back into work by hand; the carriage stays set to hold.", a.Needles, plural.Stitches(n))
	case shaping.DoBindOff:
		if a.Separate {
			return fmt.Sprintf("With a separate length of yarn, tails of %s, bind off the %s in the middle, %v, draw the end through the last loop and push %s out of work.", b.tail(), plural.Stitches(n), a.Needles, thisNeedle(n))
		}
		return fmt.Sprintf("Bind off %s %s: %v; push %s out of work.", plural.Stitches(n), b.where(e, e.from), fromEnd(a.Needles, e.from), thisNeedle(n))
	case shaping.DoCastOnEdge:
		return fmt.Sprintf("Cast on %s %s: %v.", plural.Stitches(n), b.where(e, e.from), a.Needles)
	case shaping.DoFill:
		return fmt.Sprintf("Fill the empty %v with the purl bar of its neighbour.", a.Needles)
	}
	return a.String() + "."
}

func thisNeedle(n int) string {
	if n == 1 {
		return "this needle"
	}
	return "these needles"
}

// bothEnds says a decrease or an increase at each end of a row, from left to right.
func bothEnds(two []task) string {
	left, right := two[0], two[1]
	what, then := "Decrease 1 at each end: ", "push the empty %v and %v out of work"
	if left.increase {
		what = fmt.Sprintf("Increase 1 at each end: push %v and %v into work, ", left.beyond(), right.beyond())
		then = "fill the empty %v and %v with the purl bar of the neighbour"
	}
	return what + fmt.Sprintf("move %v one needle to the %v and %v one needle to the %v; "+then+".",
		left.Needles, left.Toward, right.Needles, right.Toward, left.emptied(), right.emptied())
}

// again says the tasks of entries that repeat.
func (b bedVoice) again(group []entry) string {
	var names []string
	for _, e := range group {
		var came, went []string
		for _, t := range leftToRight(e.before) {
			if t.increase {
				came = append(came, t.beyond().String())
			}
			went = append(went, gone(t, e))
		}
		names = append(names, filled(", ", strings.Join(came, " and "), strings.Join(went, " and ")))
	}
	e := group[0]
	first := e.before[0]
	what, these := "", "these are"
	switch {
	case first.Do == shaping.DoHold:
		what = fmt.Sprintf("put the next %s on hold %s", nextText(first.Needles.Len()), b.where(e, e.from.Opposite()))
	case first.Do == shaping.DoBindOff:
		what = fmt.Sprintf("bind off the next %s %s", nextText(first.Needles.Len()), b.where(e, e.from))
	case first.increase:
		what, these = "increase 1 "+b.moves(e), "the needles to push into work and those to fill are"
		if len(e.before) == 1 {
			these = "the needle to push into work and the one to fill are"
		}
	default:
		what = "decrease 1 " + b.moves(e)
	}
	return fmt.Sprintf("%d times, %s: %s. In turn %s %s.", len(group), readings(group), what, these, strings.Join(names, "; "))
}

// moves says the moves of the first of several fashioned entries, and how they go on.
func (b bedVoice) moves(e entry) string {
	list := leftToRight(e.before)
	t := list[0]
	place, several, inOrOut, push, then := b.where(e, t.edge()), "", "in", "", "push the emptied needle%s out of work"
	if t.increase {
		inOrOut, push, then = "out", "push the next needle into work, ", "fill the emptied needle%s with the purl bar of the neighbour"
		if len(list) > 1 {
			push = "push the next needle at either end into work, "
		}
	}
	if b.onHold {
		then += "; " + backToWork
	}
	first := t.Needles.String()
	if len(list) > 1 {
		place, several = "at each end", "s"
		first = fmt.Sprintf("%v to the %v and %v to the %v", t.Needles, t.Toward, list[1].Needles, list[1].Toward)
	}
	return fmt.Sprintf("%s: %smove the %s one needle %swards (first %s, each time one needle further %s) and "+then,
		place, push, edgeText(t.Needles.Len()), inOrOut, first, inOrOut, several)
}

func edgeText(n int) string {
	if n == 1 {
		return "edge stitch"
	}
	return fmt.Sprintf("%d edge stitches", n)
}

// gone names the needles that a repeated task takes out, or that an increase fills.
func gone(t task, e entry) string {
	switch t.Do {
	case shaping.DoShift:
		return t.emptied().String()
	case shaping.DoBindOff:
		return fromEnd(t.Needles, e.from)
	}
	return t.Needles.String()
}

// readings lists the counter readings at which entries begin.
func readings(group []entry) string {
	same := true
	for _, e := range group {
		same = same && e.from == group[0].from
	}
	return "at counter " + places(group, func(e entry) string {
		if same {
			return fmt.Sprintf("%03d", e.counter)
		}
		return fmt.Sprintf("%03d %v", e.counter, e.from)
	})
}

// fromEnd names a span beginning at the given side.
func fromEnd(s shaping.Span, side shaping.Side) string {
	if side == shaping.Right && s.Len() > 1 {
		return s.Last.String() + "-" + s.First.String()
	}
	return s.String()
}
