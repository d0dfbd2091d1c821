package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
)

// joined leaves an entry alone that starts at the other side, one after which stitches are
// slipped to a holder, and one that makes a single stitch of three.
func (h handVoice) joined(first, next entry) bool {
	return first.from == next.from && h.toHolder(first) == "" && h.toHolder(next) == "" && !first.meets() && !next.meets()
}

// meets reports whether the decreases at both ends of a row take the same stitch: three are
// knitted together then.
func (e entry) meets() bool {
	return atBothEnds(e.before) && !e.before[0].increase && e.inWork.Len() == 1
}

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
		var left []string
		for _, e := range group {
			left = append(left, fmt.Sprint(e.inWork.Len()))
		}
		rows := places(group, func(e entry) string { return fmt.Sprint(e.counter + 1) })
		return filled(" ", fmt.Sprintf("%d times, at rows %s: %s.", len(group), rows, h.row(e, own, true)),
			h.eachTime(group), fmt.Sprintf("In turn %s sts are in work.", strings.Join(left, ", ")))
	}
	return filled(" ", strings.Join(sentences, " "), oneline.Capital(h.row(e, own, false))+".", h.toHolder(e), sentence(h.after(e)))
}

// filled joins parts, leaving out empty ones.
func filled(between string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), between)
}

// toHolder says that the stitches of an underarm or a neck are slipped to a holder when
// the last of them have been left.
func (h handVoice) toHolder(e entry) string {
	if held, before, edge := h.underarmDone(e); held > 0 {
		holder, others := "a holder", "the sleeve"
		if before > 0 {
			holder = "the holder of that edge, in the same order"
		}
		if h.isSleeve() {
			others = "joining"
		}
		return fmt.Sprintf("Slip the %s at the %v edge to %s: %s live for %s.", thatWait(held-before), edge, holder, theyStay(held-before), others)
	}
	if !h.hasNeck(e.panel) || lastRow(h.neckSteps(e.panel).Of(shaping.Hold)) != e.counter+1 {
		return ""
	}
	held, inHalves := h.neckHeld(e.panel), 0
	for _, p := range h.neckPanels() {
		inHalves += h.neckHeld(p.Name)
	}
	holder := "a holder"
	switch {
	case h.liveNeck() > inHalves:
		holder = "the holder of the middle"
	case h.isLast(e.panel) && h.halved():
		holder = "the holder of the neck"
	}
	return fmt.Sprintf("Slip the %s at the neck to %s, in the same order.", thatWait(held), holder)
}

// leadIn says what is done before the first row of a panel, but for what its own
// edges ask for.
func (h handVoice) leadIn(e entry) []string {
	p, _ := h.work.Panels.Panel(e.panel)
	switch {
	case p.Parent == "" && h.piece.Heights.Band > 0:
		return []string{fmt.Sprintf("%s and then go on with row %d.", h.bandText(), h.piece.Heights.Band+1)}
	case p.Parent == "":
		return nil
	case h.isLast(e.panel):
		return []string{h.takeUp(e, p)}
	}
	return h.split(e, p)
}

// split says how the stitches behind the first half are put away.
func (h handVoice) split(e entry, p shaping.Panel) []string {
	text := []string{fmt.Sprintf("First slip the %s of this half to the right needle.", plural.Sts(h.inWorkBefore(p)))}
	for _, a := range e.before {
		n := plural.Sts(a.Needles.Len())
		other := h.halfWith(a.Needles)
		switch {
		case a.Separate:
			text = append(text, fmt.Sprintf("With a separate length of yarn, tails of %s, BO the next %s and draw the end through the last loop.", h.tail(), n))
		case a.Do == shaping.DoHold && other != "" && !p.Needles.ContainsSpan(a.Needles):
			half, _ := h.work.Panels.Panel(other)
			if wait := h.waitingBefore(half); wait > 0 {
				n = fmt.Sprintf("%s (with the %d that wait)", plural.Sts(a.Needles.Len()+wait), wait)
			}
			text = append(text, fmt.Sprintf("Slip the last %s, the %s, to a holder.", n, other))
		case a.Do == shaping.DoHold && !p.Needles.ContainsSpan(a.Needles):
			text = append(text, fmt.Sprintf("Slip the next %s, the middle, to a holder.", n))
		}
	}
	back := fmt.Sprintf("Slip the %s of the %s back to the left needle", plural.Sts(h.inWorkBefore(p)), p.Name)
	if held := h.heldByBody(p); held > 0 {
		back += fmt.Sprintf(", but not the %d that wait at the %v edge,", held, h.outer(p.Name))
	}
	return append(text, back+" and go on with the yarn of the body.")
}

// inWorkBefore returns the stitches in work of a half before its first row.
func (h handVoice) inWorkBefore(p shaping.Panel) int { return p.Needles.Len() - h.heldByBody(p) }

// waitingBefore returns the stitches that wait on the needle beside a half before its
// first row: as shoulder, or of an underarm that is not finished.
func (h handVoice) waitingBefore(half shaping.Panel) int {
	wait, underarm := h.heldByBody(half), h.underarmHolds(h.outer(half.Name))
	if lastRow(underarm) >= half.FirstRow {
		wait -= underarm.Through(half.FirstRow - 1)
	}
	return wait
}

// takeUp says how the second half is begun.
func (h handVoice) takeUp(e entry, p shaping.Panel) string {
	edge := "neck"
	if e.from == h.outer(e.panel) {
		edge = "outer edge"
	}
	text := fmt.Sprintf("Put the %s of the %s back on the needle, RS facing, and join the yarn at the %s with a tail of %s.", plural.Sts(h.inWorkBefore(p)+h.waitingBefore(p)), e.panel, edge, h.tail())
	if held := h.waitingBefore(p); held > 0 {
		text += fmt.Sprintf(" The %s at the %v edge go on waiting.", plural.Sts(held), h.outer(e.panel))
	}
	return text + fmt.Sprintf(" Set the row counter back: the next row is row %d.", e.counter+1)
}

// own returns the actions at the panel's own edges, and those of its closing row.
func (h handVoice) own(e entry) []task {
	p, _ := h.work.Panels.Panel(e.panel)
	var own []task
	for i, t := range e.before {
		switch {
		case t.Do == shaping.DoCastOn || t.Separate:
		case t.Do == shaping.DoHold && e.counter+1 == p.FirstRow && !p.Needles.ContainsSpan(t.Needles):
		case t.Do == shaping.DoReturn && i == 0 && p.Parent != "" && e.counter+1 == p.FirstRow:
		default:
			own = append(own, t)
		}
	}
	return own
}

// plain says an entry of rows without shaping.
func plain(e entry) string {
	if e.rows() == 1 {
		return oneline.Capital(stroke(e.counter+1)) + " 1 row even."
	}
	return fmt.Sprintf("Work %d rows even, to the end of row %d (%s).", e.rows(), e.to, sideOfRow(e.to))
}

// after says the rows of an entry after its first.
func (h handVoice) after(e entry) string {
	switch rest := e.rows() - 1; {
	case rest == 0:
		return ""
	case rest == 1 && e.holds():
		return stroke(e.counter+2) + " back"
	case rest == 1 && h.waits(e.panel, e.from, e.counter+2):
		return stroke(e.counter+2) + " 1 row, to the turn"
	case rest == 1:
		return stroke(e.counter+2) + " 1 row"
	default:
		return fmt.Sprintf("work %d rows even", rest)
	}
}

// eachTime says the rows after the first ones of entries that repeat.
func (h handVoice) eachTime(group []entry) string {
	once, other, last := inTurn(group, h.after)
	text := "Each time then " + once
	switch {
	case once == "":
		return ""
	case other != "":
		text = fmt.Sprintf("Then in turn: after the first time %s, after the second %s, and so on", once, other)
	}
	if last != "" {
		text += ", after the last time " + last
	}
	return text + "."
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
func (h handVoice) row(e entry, own []task, again bool) string {
	row := e.counter + 1
	k := stroke(row)
	if e.meets() {
		return together(row, false, 2)
	}
	begin, end := "", ""
	done := 0 // stitches in work that are on the right needle after the beginning
	for i := 0; i < len(own); i++ {
		a := own[i]
		n := a.Needles.Len()
		switch a.Do {
		case shaping.DoBindOff:
			begin = fmt.Sprintf("BO %s %s", plural.Sts(n), h.where(e, e.from))
			done = 1
		case shaping.DoCastOnEdge:
			begin = fmt.Sprintf("CO %s %s", plural.Sts(n), h.where(e, e.from))
		case shaping.DoHold:
			end = fmt.Sprintf("%s%d, w&t: %s unworked %s", k, e.inWork.Len()-done, stay(n), h.where(e, e.from.Opposite()))
			if e.knits[0].wrap == 0 {
				end = fmt.Sprintf("%s%d, leaving %s unworked %s", k, e.inWork.Len()-done, plural.Sts(n), h.where(e, e.from.Opposite()))
			}
			if again {
				end = fmt.Sprintf("%s to the last %s in work, w&t", k, lastText(n))
			}
		case shaping.DoReturn:
			which := "all"
			if done > 0 {
				which = "the other"
			}
			end = fmt.Sprintf("%s %s %s, those that waited with their wraps: work each wrap together with its st", k, which, plural.Sts(e.inWork.Len()-done))
		case shaping.DoShift:
			times := 1
			if i+1 < len(own) && own[i+1].Do == shaping.DoShift && own[i+1].edge() == a.edge() {
				times = 2
				i++
			}
			atBegin := a.edge() == e.from
			before, change, past := n+times, together(row, atBegin, times), edgeSts(k, n-1)
			switch {
			case a.increase && atBegin:
				change, past, done = makes(times), edgeSts(k, n), n+times
			case a.increase:
				before = min(n, e.inWork.Len()-done-times) // of those that the beginning has left
				change, past = makes(times), edgeSts(k, before)
			case atBegin:
				done = n
			}
			if atBegin {
				begin = filled(", ", past, change)
				continue
			}
			end = fmt.Sprintf("%s to last %s, %s", k, plural.Sts(before), filled(", ", change, past))
			if h.waits(e.panel, e.from.Opposite(), row) {
				end = fmt.Sprintf("%s to %s before the turn, %s, turn", k, plural.Sts(before), filled(", ", change, past))
			}
		}
	}
	if end == "" {
		end = k + " to end"
		if h.waits(e.panel, e.from.Opposite(), row) {
			end = k + " to the turn, turn"
		}
	}
	return filled(", ", begin, end)
}

// edgeSts says the stitches outside a decrease or an increase.
func edgeSts(k string, n int) string {
	if n < 1 {
		return ""
	}
	return fmt.Sprintf("%s%d", k, n)
}

// makes says increases at one place.
func makes(times int) string { return strings.Repeat(", m1", times)[len(", "):] }

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

// waits reports whether stitches wait unworked on the needle beyond an edge at row:
// those of an underarm or a neck are on a holder when the last of them have been left.
func (h handVoice) waits(panel string, edge shaping.Side, row int) bool {
	onHolder := h.putAwayBefore(edge, row)
	if last := lastRow(h.neckSteps(panel).Of(shaping.Hold)); h.atNeck(panel, edge) {
		onHolder = 0
		if last < row {
			onHolder = last
		}
	}
	for _, p := range h.work.Panels {
		if p.Name != panel && (p.Parent != "" || edge != h.outer(panel)) {
			continue
		}
		for _, step := range p.Steps(edge).Of(shaping.Hold) {
			if onHolder < step.Row && step.Row < row {
				return true
			}
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

// thatWait follows "the".
func thatWait(n int) string {
	if n == 1 {
		return "1 st that waits"
	}
	return fmt.Sprintf("%d sts that wait", n)
}

// lastText follows "the last".
func lastText(n int) string {
	if n == 1 {
		return "st"
	}
	return plural.Sts(n)
}
