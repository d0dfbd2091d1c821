package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/shaping"
)

func (h handVoice) asks(group []entry, first bool) string {
	e := group[0]
	var sentences []string
	if first {
		sentences = h.leadIn(e)
	}
	own := h.own(e)
	switch {
	case len(own) == 0:
		return strings.Join(append(sentences, plain(e)), " ")
	case len(group) > 1:
		var rows, left []string
		for _, e := range group {
			rows = append(rows, fmt.Sprint(e.counter+1))
			left = append(left, fmt.Sprint(e.inWork.Len()))
		}
		return fmt.Sprintf("%d times, at rows %s: %s. %s In turn %s sts are in work.",
			len(group), strings.Join(rows, ", "), h.row(e, own, true), h.after(e, "Each time then "), strings.Join(left, ", "))
	}
	return strings.TrimSpace(strings.Join(append(sentences, capital(h.row(e, own, false))+"."), " ") + " " + h.after(e, ""))
}

// leadIn says what is done before the first row of a panel, but for what its own
// edges ask for.
func (h handVoice) leadIn(e entry) []string {
	p, _ := h.work.Panels.Panel(e.panel)
	var text, away []string
	for _, a := range e.before {
		n := stsText(a.Needles.Len())
		switch {
		case a.Do == shaping.DoCastOn && h.piece.Heights.Band > 0:
			text = append(text, "These rows are the band, in rib or for a hem; plain rows would roll.")
		case a.Do == shaping.DoReturn && e.counter+1 == p.FirstRow && a.Needles.Len() > 0 && e.before[0] == a:
			edge := "neck"
			if e.from == h.outer(e.panel) {
				edge = "outer edge"
			}
			text = append(text, fmt.Sprintf("Put the %s of the %s back on the needle, RS facing, and join the yarn at the %s with a tail of 20 cm.", n, e.panel, edge))
		case a.Do == shaping.DoBindOff && a.Separate:
			text = append(text, fmt.Sprintf("Slip the sts before them out of the way and BO the %s in the middle with a separate length of yarn.", n))
		case a.Do == shaping.DoHold && !p.Needles.ContainsSpan(a.Needles):
			what := "in the middle"
			if name := h.halfWith(a.Needles); name != "" {
				what = "of the " + name
			}
			away = append(away, fmt.Sprintf("the %s %s", n, what))
		}
	}
	if len(away) > 0 {
		text = append(text, fmt.Sprintf("Slip %s to holders; go on with the yarn of the body.", strings.Join(away, " and ")))
	}
	return text
}

// own returns the actions at the panel's own edges, and those of its closing row.
func (h handVoice) own(e entry) []shaping.Action {
	p, _ := h.work.Panels.Panel(e.panel)
	var own []shaping.Action
	for i, a := range e.before {
		switch {
		case a.Do == shaping.DoCastOn || a.Separate:
		case a.Do == shaping.DoHold && !p.Needles.ContainsSpan(a.Needles):
		case a.Do == shaping.DoReturn && i == 0 && p.Parent != "" && e.counter+1 == p.FirstRow:
		default:
			own = append(own, a)
		}
	}
	return own
}

// plain says an entry of rows without shaping.
func plain(e entry) string {
	if e.rows() == 1 {
		return capital(stroke(e.counter+1)) + " 1 row even."
	}
	return fmt.Sprintf("Work %d rows even, to the end of row %d (%s).", e.rows(), e.to, sideOfRow(e.to))
}

// after says the rows of an entry after its first.
func (h handVoice) after(e entry, lead string) string {
	text := ""
	switch rest := e.rows() - 1; {
	case rest == 0:
		return ""
	case rest == 1 && e.holds():
		text = stroke(e.counter+2) + " back."
	case rest == 1:
		text = stroke(e.counter+2) + " 1 row."
	default:
		text = fmt.Sprintf("work %d rows even.", rest)
	}
	if lead == "" {
		return capital(text)
	}
	return lead + text
}

// stroke returns k for RS rows and p for WS rows.
func stroke(row int) string {
	if row%2 == 1 {
		return "k"
	}
	return "p"
}

// row says the first row of an entry from its beginning to its end. again means that
// it is said for several, so that stitches are counted from the end.
func (h handVoice) row(e entry, own []shaping.Action, again bool) string {
	row := e.counter + 1
	k := stroke(row)
	begin, end := "", ""
	for i := 0; i < len(own); i++ {
		a := own[i]
		n := a.Needles.Len()
		switch a.Do {
		case shaping.DoBindOff:
			begin = fmt.Sprintf("BO %s %s", stsText(n), h.where(e, e.from))
		case shaping.DoCastOnEdge:
			begin = fmt.Sprintf("CO %s %s", stsText(n), h.where(e, e.from))
		case shaping.DoHold:
			if begin == "" && !again {
				end = fmt.Sprintf("%s%d, w&t: %s unworked %s", k, e.inWork.Len(), stay(n), h.where(e, e.from.Opposite()))
			} else if again {
				end = fmt.Sprintf("%s to the last %s in work, w&t", k, lastText(n))
			} else {
				end = fmt.Sprintf("%s until %s are on the right needle, w&t: %s unworked %s", k, stsText(e.inWork.Len()), stay(n), h.where(e, e.from.Opposite()))
			}
		case shaping.DoReturn:
			end = fmt.Sprintf("%s all %s, those that waited with their wraps: work each wrap together with its st", k, stsText(e.inWork.Len()))
		case shaping.DoShift:
			gone := 1
			if i+1 < len(own) && own[i+1].Do == shaping.DoShift && own[i+1].Toward == a.Toward {
				gone = 2
				i++
			}
			if a.Toward == e.from.Opposite() {
				begin = strings.TrimPrefix(edgeSts(k, n)+", ", ", ") + together(row, true, gone)
				continue
			}
			end = fmt.Sprintf("%s to last %s, %s", k, stsText(n+gone), strings.TrimSuffix(together(row, false, gone)+", "+edgeSts(k, n), ", "))
			if h.waits(e) {
				end = fmt.Sprintf("%s to %s before the turn, %s, turn", k, stsText(n+gone), strings.TrimSuffix(together(row, false, gone)+", "+edgeSts(k, n), ", "))
			}
		}
	}
	if end == "" {
		end = k + " to end"
		if h.waits(e) {
			end = k + " to the turn, turn"
		}
	}
	return strings.TrimPrefix(begin+", "+end, ", ")
}

// edgeSts says the stitches outside a decrease whose edge group has n stitches.
func edgeSts(k string, n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf("%s%d", k, n-1)
}

// together says the decrease at the beginning or the end of a row that leans with the
// edge. Common practice, no source.
func together(row int, begin bool, gone int) string {
	rs := row%2 == 1
	switch {
	case rs && begin:
		return [3]string{1: "ssk", 2: "sssk"}[gone]
	case rs:
		return [3]string{1: "k2tog", 2: "k3tog"}[gone]
	case begin:
		return [3]string{1: "p2tog", 2: "p3tog"}[gone]
	}
	return [3]string{1: "ssp", 2: "sssp"}[gone]
}

// waits reports whether stitches wait unworked beyond the end of the entry's rows.
func (h handVoice) waits(e entry) bool {
	p, _ := h.work.Panels.Panel(e.panel)
	end := e.from.Opposite()
	steps := p.At(end)
	if p.Parent != "" && end == h.outer(e.panel) {
		steps = append(h.work.Panels[0].At(end).Between(1, p.FirstRow-1), steps...)
	}
	for _, step := range steps {
		if step.Method == shaping.Hold && step.Row <= e.counter {
			return true
		}
	}
	return false
}

func stay(n int) string {
	if n == 1 {
		return "1 st stays"
	}
	return fmt.Sprintf("%d sts stay", n)
}

// lastText follows "the last".
func lastText(n int) string {
	if n == 1 {
		return "st"
	}
	return stsText(n)
}
