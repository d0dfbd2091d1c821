package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/shaping"
)

// said returns what an entry asks for, in sentences.
func said(group []entry, place string) string {
	e := group[0]
	var text []string
	if len(group) > 1 {
		text = append(text, repeated(group, place))
	} else {
		for i := 0; i < len(e.before); i++ {
			a := e.before[i]
			if a.Do == shaping.DoShift && i+1 < len(e.before) && e.before[i+1].Do == shaping.DoShift && e.before[i+1].Toward != a.Toward {
				text = append(text, bothEnds(sorted(e.before[i:i+2])))
				i++
				continue
			}
			text = append(text, once(a, e, place))
		}
	}
	text = append(text, knitting(group))
	return strings.Join(text, " ")
}

// knitting says the rows and wraps of an entry.
func knitting(group []entry) string {
	e := group[0]
	var parts []string
	for _, k := range e.knits {
		parts = append(parts, "knit "+rowsText(k.rows))
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
	return strings.ToUpper(text[:1]) + text[1:] + "."
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

func rowsText(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}

// once says one action of an entry that stands alone; place says where stitches
// are put on hold, such as "at the neck".
func once(a shaping.Action, e entry, place string) string {
	n := a.Needles.Len()
	switch a.Do {
	case shaping.DoCastOn:
		return fmt.Sprintf("The %d stitches are on %v.", n, a.Needles)
	case shaping.DoHold:
		return fmt.Sprintf("Put %v on hold %s (%s).", a.Needles, place, stitchesText(n))
	case shaping.DoReturn:
		return fmt.Sprintf("Push %v (%s) back into work by hand; the carriage stays set to hold.", a.Needles, stitchesText(n))
	case shaping.DoBindOff:
		if a.Separate {
			return fmt.Sprintf("Bind off the %d middle stitches %v with a separate length of yarn.", n, a.Needles)
		}
		return fmt.Sprintf("Bind off %s at the %v: %v; push these needles out of work.", stitchesText(n), e.from, fromEnd(a.Needles, e.from))
	case shaping.DoCastOnEdge:
		return fmt.Sprintf("Cast on %s at the %v: %v.", stitchesText(n), e.from, a.Needles)
	case shaping.DoShift:
		if edge := a.Toward.Opposite(); a.Needles.End(edge) == beyondWork(e.inWork, edge) {
			return fmt.Sprintf("Decrease 1 at the %v: move %v one needle to the %v; push the empty %v out of work.", edge, a.Needles, a.Toward, a.Needles.End(edge))
		}
		return fmt.Sprintf("Increase 1 at the %v: move %v one needle outwards to the %v.", a.Toward, a.Needles, a.Toward)
	case shaping.DoFill:
		return fmt.Sprintf("Fill the empty %v with the purl bar of its neighbour.", a.Needles)
	}
	return a.String() + "."
}

// beyondWork returns the needle outside the ones in work: the one emptied by a decrease.
func beyondWork(s shaping.Span, edge shaping.Side) shaping.Needle {
	return s.Beyond(edge, 1).End(edge)
}

// bothEnds says a decrease or an increase at each end of a row, from left to right.
func bothEnds(two []shaping.Action) string {
	left, right := two[0], two[1]
	if left.Toward == shaping.Right {
		return fmt.Sprintf("Decrease 1 at each end: move %v one needle to the right and %v one needle to the left; push the empty %v and %v out of work.",
			left.Needles, right.Needles, left.Needles.First, right.Needles.Last)
	}
	return fmt.Sprintf("Increase 1 at each end: move %v one needle to the left and %v one needle to the right.", left.Needles, right.Needles)
}

// repeated says the actions of entries that repeat.
func repeated(group []entry, place string) string {
	var names []string
	for _, e := range group {
		var one []string
		for _, a := range sorted(e.before) {
			one = append(one, gone(a, e))
		}
		names = append(names, strings.Join(one, " and "))
	}
	first := group[0].before[0]
	what := ""
	switch {
	case first.Do == shaping.DoHold:
		what = fmt.Sprintf("put the next %s on hold %s", nextText(first.Needles.Len()), place)
	case first.Do == shaping.DoBindOff:
		what = fmt.Sprintf("bind off the next %s at the %v", nextText(first.Needles.Len()), group[0].from)
	case len(group[0].before) > 1:
		two := sorted(group[0].before)
		what = fmt.Sprintf("decrease 1 at each end: move the %d edge stitches one needle inwards (first %v to the right and %v to the left, each time one needle further in) and push the emptied needles out of work",
			first.Needles.Len(), two[0].Needles, two[1].Needles)
	default:
		what = fmt.Sprintf("decrease 1 at the %v: move the %d edge stitches one needle inwards (first %v, each time one needle further in) and push the emptied needle out of work",
			first.Toward.Opposite(), first.Needles.Len(), first.Needles)
	}
	return fmt.Sprintf("%d times, %s: %s. In turn these are %s.", len(group), readings(group), what, strings.Join(names, "; "))
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

// nextText follows "the next".
func nextText(n int) string {
	if n == 1 {
		return "stitch"
	}
	return stitchesText(n)
}

func stitchesText(n int) string {
	if n == 1 {
		return "1 stitch"
	}
	return fmt.Sprintf("%d stitches", n)
}
