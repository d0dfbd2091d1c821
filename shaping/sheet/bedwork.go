package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// said returns what an entry at the bed asks for, in sentences.
func (b bedVoice) said(group []entry) string {
	e := group[0]
	var text string
	if len(group) > 1 {
		text = b.repeated(group)
	} else {
		text = strings.Join(b.done(e.before, e), " ")
	}
	return strings.TrimSpace(text + " " + knitting(group))
}

// done says actions of an entry that stands alone, one sentence each; two decreases
// that belong together make one.
func (b bedVoice) done(actions []shaping.Action, e entry) []string {
	var text []string
	for i := 0; i < len(actions); i++ {
		a := actions[i]
		var next shaping.Action
		if i+1 < len(actions) {
			next = actions[i+1]
		}
		switch {
		case a.Do != shaping.DoShift:
			text = append(text, b.once(a, e))
		case next.Do == shaping.DoFill:
			text = append(text, fmt.Sprintf("Increase 1 %s: move %v one needle to the %v.", b.where(e, a.Toward), a.Needles, a.Toward))
		case next.Do == shaping.DoShift && next.Toward == a.Toward:
			text = append(text, b.double(a, next, e))
			i++
		case next.Do == shaping.DoShift && (i+2 >= len(actions) || actions[i+2].Toward != next.Toward):
			text = append(text, bothEnds(leftToRight(actions[i:i+2])))
			i++
		default:
			edge := a.Toward.Opposite()
			text = append(text, fmt.Sprintf("Decrease 1 %s: move %v one needle to the %v; push the empty %v out of work.",
				b.where(e, edge), a.Needles, a.Toward, a.Needles.End(edge)))
		}
	}
	return text
}

// double says a double decrease, worked as two moves.
func (v bedVoice) double(a, b shaping.Action, e entry) string {
	edge := a.Toward.Opposite()
	return fmt.Sprintf("Decrease 2 %s: move %v one needle to the %v, then %v, so that three loops lie on %v; push the empty %v and %v out of work.",
		v.where(e, edge), a.Needles, a.Toward, b.Needles, b.Needles.Beyond(a.Toward, 1).First, a.Needles.End(edge), b.Needles.End(edge))
}

// knitting says the rows and wraps of an entry.
func knitting(group []entry) string {
	e := group[0]
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
	return capital(text) + "."
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
			return fmt.Sprintf("With a separate length of yarn, tails of 20 cm, bind off the %s in the middle, %v, draw the end through the last loop and push %s out of work.", plural.Stitches(n), a.Needles, thisNeedle(n))
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

// bothEnds says a decrease at each end of a row, from left to right.
func bothEnds(two []shaping.Action) string {
	left, right := two[0], two[1]
	return fmt.Sprintf("Decrease 1 at each end: move %v one needle to the right and %v one needle to the left; push the empty %v and %v out of work.",
		left.Needles, right.Needles, left.Needles.First, right.Needles.Last)
}

// repeated says the actions of entries that repeat.
func (b bedVoice) repeated(group []entry) string {
	var names []string
	for _, e := range group {
		var one []string
		for _, a := range leftToRight(e.before) {
			one = append(one, gone(a, e))
		}
		names = append(names, strings.Join(one, " and "))
	}
	e := group[0]
	first := e.before[0]
	what := ""
	switch {
	case first.Do == shaping.DoHold:
		what = fmt.Sprintf("put the next %s on hold %s", nextText(first.Needles.Len()), b.where(e, e.from.Opposite()))
	case first.Do == shaping.DoBindOff:
		what = fmt.Sprintf("bind off the next %s %s", nextText(first.Needles.Len()), b.where(e, e.from))
	case len(e.before) > 1:
		two := leftToRight(e.before)
		what = fmt.Sprintf("decrease 1 at each end: move the %s one needle inwards (first %v to the right and %v to the left, each time one needle further in) and push the emptied needles out of work",
			edgeText(first.Needles.Len()), two[0].Needles, two[1].Needles)
	default:
		what = fmt.Sprintf("decrease 1 %s: move the %s one needle inwards (first %v, each time one needle further in) and push the emptied needle out of work",
			b.where(e, first.Toward.Opposite()), edgeText(first.Needles.Len()), first.Needles)
	}
	return fmt.Sprintf("%d times, %s: %s. In turn these are %s.", len(group), readings(group), what, strings.Join(names, "; "))
}

func edgeText(n int) string {
	if n == 1 {
		return "edge stitch"
	}
	return fmt.Sprintf("%d edge stitches", n)
}

// gone names the needles that a repeated action takes out.
func gone(a shaping.Action, e entry) string {
	if a.Do == shaping.DoShift {
		return a.Needles.End(a.Toward.Opposite()).String()
	}
	if a.Do == shaping.DoBindOff {
		return fromEnd(a.Needles, e.from)
	}
	return a.Needles.String()
}

// readings lists the counter readings at which entries begin.
func readings(group []entry) string {
	same := true
	for _, e := range group {
		same = same && e.from == group[0].from
	}
	var list []string
	for _, e := range group {
		text := fmt.Sprintf("%03d", e.counter)
		if !same {
			text += fmt.Sprintf(" %v", e.from)
		}
		list = append(list, text)
	}
	return "at counter " + strings.Join(list, ", ")
}

// fromEnd names a span beginning at the given side.
func fromEnd(s shaping.Span, side shaping.Side) string {
	if side == shaping.Right && s.Len() > 1 {
		return s.Last.String() + "-" + s.First.String()
	}
	return s.String()
}
