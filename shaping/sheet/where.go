package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
)

// How things stand at a reading: for somebody who must find out whether that is so.

// whereYouAre says how things stand.
func (s *writer) whereYouAre(state bed.State) []byte {
	said := []line{heading("Where you are")}
	for _, text := range s.voice.here(state) {
		said = append(said, note(text))
	}
	return printed(append(said, line{kind: checkLine, text: s.standing(state) + "."}))
}

// waiting is stitches that wait on hold, and as what.
type waiting struct {
	what     string       // such as "the neck"
	edge     shaping.Side // the outer edge at which they wait, if they do at one
	half     string       // the half that they are, if they are one
	onHolder bool         // in the hand; else on the needle
	spans    []shaping.Span
}

// heldAt returns what waits at a state, from left to right.
func (s *writer) heldAt(state bed.State) []waiting {
	var list []waiting
	for _, run := range state.OnHold() {
		for n := range run.All() {
			w := s.waits(state, n)
			i := slices.IndexFunc(list, func(other waiting) bool { return other.what == w.what && other.onHolder == w.onHolder })
			if i < 0 {
				list = append(list, w)
				i = len(list) - 1
			}
			spans := &list[i].spans
			if k := len(*spans) - 1; k >= 0 && (*spans)[k].Last.Toward(shaping.Right, 1) == n {
				(*spans)[k].Last = n
			} else {
				*spans = append(*spans, shaping.Span{First: n, Last: n})
			}
		}
	}
	return list
}

// waits says as what a held needle waits.
func (s *writer) waits(state bed.State, n shaping.Needle) waiting {
	if s.isSplit(state) {
		left, _ := s.work.Panels.Panel(shaping.LeftHalf)
		right, _ := s.work.Panels.Panel(shaping.RightHalf)
		if n.Index() > left.Needles.Last.Index() && n.Index() < right.Needles.First.Index() {
			return waiting{what: "the middle", onHolder: true}
		}
		half := left
		if n.Index() >= right.Needles.First.Index() {
			half = right
		}
		return s.waitsInHalf(state, n, half)
	}
	edge := shaping.Left
	if work := state.InWork(); n.Index() > work[0].First.Index() {
		edge = shaping.Right
	}
	if s.opened() && edge != s.piece.Outer() {
		held := lastRow(s.neckSteps(shaping.Body).Of(shaping.Hold))
		return waiting{what: "the neck", onHolder: held <= state.Row()}
	}
	return s.waitsAtEdge(state, n, edge)
}

// waitsInHalf says as what a needle waits on one side of the neck's middle.
func (s *writer) waitsInHalf(state bed.State, n shaping.Needle, half shaping.Panel) waiting {
	begun := half.Name == state.Panel() && !s.panelBegins(state)
	over := half.Name != state.Panel() && finished(s.work, half.Name, state.Panel())
	outer := s.outer(half.Name)
	if !begun && !over {
		if half.Needles.Contains(n) {
			return waiting{what: "the " + half.Name, half: half.Name, onHolder: true}
		}
		return s.waitsAtEdge(state, n, outer)
	}
	work := s.lastKnit(half.Name)
	if begun {
		work = state.InWork()[0]
	}
	if (n.Index() < work.First.Index()) == (outer == shaping.Left) {
		return s.waitsAtEdge(state, n, outer)
	}
	held := lastRow(s.neckSteps(half.Name).Of(shaping.Hold))
	return waiting{what: "the neck of the " + half.Name, onHolder: over || held <= state.Row()}
}

// waitsAtEdge says as what a needle waits at an outer edge: the outermost are an underarm
// or the foot of a cap, those within them a shoulder.
func (s *writer) waitsAtEdge(state bed.State, n shaping.Needle, edge shaping.Side) waiting {
	outermost := 0 // held beyond the needle
	for _, run := range state.OnHold() {
		for other := range run.All() {
			if beyond := other.Index() < n.Index(); beyond == (edge == shaping.Left) && other != n {
				outermost++
			}
		}
	}
	row := state.Row()
	if p, _ := s.work.Panels.Panel(state.Panel()); s.isSplit(state) && s.outer(p.Name) != edge {
		row = s.lastRowAt(edge, state)
	}
	holds := s.underarmHolds(edge)
	switch away, all := -holds.Through(s.putAwayBefore(edge, row+1)), -holds.Through(row); {
	case outermost < away:
		return waiting{what: s.underarmName(edge), edge: edge, onHolder: true}
	case outermost < all:
		return waiting{what: s.underarmName(edge), edge: edge}
	}
	return waiting{what: fmt.Sprintf("the shoulder at the %v edge", edge), edge: edge}
}

// lastRowAt returns the last row that was knitted at the outer edge of the half that is not
// being worked.
func (s *writer) lastRowAt(edge shaping.Side, state bed.State) int {
	for _, p := range s.work.Panels[1:] {
		if s.outer(p.Name) == edge && finished(s.work, p.Name, state.Panel()) {
			return p.LastRow
		}
	}
	return s.work.Panels[0].LastRow
}

// underarmName names what is held at an outer edge below the shoulder.
func (s *writer) underarmName(edge shaping.Side) string {
	if s.isTrunk() {
		return fmt.Sprintf("the underarm at the %v edge", edge)
	}
	return fmt.Sprintf("the cap's %v edge", edge)
}

// standing is the account of the stitches at a state.
func (s *writer) standing(state bed.State) string {
	l := state.Ledger()
	inWork, waste := count(state.InWork()), count(state.OnWaste())
	parts := s.voice.rest(waste, state.OnHold())
	if inWork > 0 {
		parts = append([]string{fmt.Sprintf("%d in work", inWork)}, parts...)
	}
	if l.BoundOff > 0 {
		parts = append(parts, fmt.Sprintf("%d bound off", l.BoundOff))
	}
	if l.Decreased > 0 {
		parts = append(parts, fmt.Sprintf("%d decreased", l.Decreased))
	}
	text := strings.Join(parts, " + ") + fmt.Sprintf(" = %d cast on", l.CastOn)
	if l.Increased > 0 {
		text += fmt.Sprintf(" + %d increased", l.Increased)
	}
	return text
}

// bandLeft says that the band is being knitted.
func (s *writer) bandLeft(state bed.State) string {
	if band := s.piece.Heights.Band; state.Panel() == shaping.Body && 0 < state.Row() && state.Row() < band {
		return fmt.Sprintf("This is the band, in %s: it has %s, of which %d are left.", s.voice.bandStitch(), plural.Rows(band), band-state.Row())
	}
	return ""
}

// halfLies says how a half that has begun lies, or one of two fronts; seen is put before where its ends are.
func (s *writer) halfLies(state bed.State, seen string) string {
	switch {
	case s.opened():
		return s.frontLies()
	case state.Panel() == shaping.Body || s.panelBegins(state):
		return ""
	}
	outer := s.outer(state.Panel())
	return fmt.Sprintf("This is the %s: %sthe neck is at its %v end, the outer edge at its %v end; it becomes %s.",
		state.Panel(), seen, outer.Opposite(), outer, s.wearer(state.Panel()))
}

// here says how things stand at the bed.
func (b bedVoice) here(state bed.State) []string {
	lines := []string{b.lastKnitted(state), b.halfLies(state, ""), b.bandLeft(state)}
	if work := state.InWork(); len(work) > 0 {
		lines = append(lines, fmt.Sprintf("In work: %v, %s.", work[0], plural.Stitches(work[0].Len())))
	} else {
		lines = append(lines, "In work: nothing.")
	}
	if held := b.heldAt(state); len(held) > 0 {
		var parts []string
		for _, w := range held {
			parts = append(parts, fmt.Sprintf("%s %s (%d)", w.what, names(w.spans), count(w.spans)))
		}
		lines = append(lines, fmt.Sprintf("On hold: %s.", strings.Join(parts, "; ")))
	}
	if b.setToHold(state) {
		lines = append(lines, "The carriage is set to hold.")
	}
	if half := b.before(state.Panel()); half != "" {
		off := "Bound off"
		if len(state.OnWaste()) > 0 {
			off = "On waste yarn"
		}
		lines = append(lines, fmt.Sprintf("%s: the shoulder of the %s, %s that are off the bed.", off, half, plural.Stitches(b.lastKnit(half).Len())))
	}
	return slices.DeleteFunc(lines, func(line string) bool { return line == "" })
}

// setToHold reports whether anything has been put on hold so far: the carriage then stays set
// to it.
func (s *writer) setToHold(state bed.State) bool {
	return slices.ContainsFunc(s.work.Rows[:state.Rows()], func(row shaping.Row) bool {
		return slices.ContainsFunc(row.Before, func(a shaping.Action) bool { return a.Do == shaping.DoHold })
	})
}

// lastKnitted says where the counter and the carriage are, and what the last row did.
func (b bedVoice) lastKnitted(state bed.State) string {
	text := fmt.Sprintf("Counter %03d, carriage at the %v. ", state.Counter(), state.Carriage())
	switch {
	case state.Rows() == 0:
		return text + "The stitches are cast on; no row is knitted yet."
	case b.panelBegins(state) && b.before(state.Panel()) != "":
		return text + fmt.Sprintf("The %s is finished, its yarn is broken; the %s begins.", b.before(state.Panel()), state.Panel())
	}
	text += fmt.Sprintf("You have just knitted row %d, from %v to %v", state.Row(), state.Carriage().Opposite(), state.Carriage())
	if n := b.justWrapped(state); n != 0 {
		text += fmt.Sprintf(", and wrapped %v", n)
	}
	return text + "."
}

// justWrapped returns the needle that was wrapped after the last row, if one was.
func (s *writer) justWrapped(state bed.State) shaping.Needle {
	var last bed.Wrap
	for w := range state.Wraps() {
		last = w
	}
	if last.Row == state.Row() && (last.Panel == state.Panel() || s.panelBegins(state)) {
		return last.Needle
	}
	return 0
}

// here says how things stand in the hand.
func (h handVoice) here(state bed.State) []string {
	lines := []string{h.lastWorked(state), h.halfLies(state, "seen on the RS "), h.bandLeft(state)}
	var onNeedle, onHolders []string
	if work := state.InWork(); len(work) > 0 {
		onNeedle = append(onNeedle, fmt.Sprintf("%s in work", plural.Sts(work[0].Len())))
	}
	for _, w := range h.heldAt(state) {
		n := count(w.spans)
		switch {
		case !w.onHolder && h.withOtherHalf(state, w):
		case !w.onHolder:
			onNeedle = append(onNeedle, fmt.Sprintf("%s unworked %s", stay(n), h.place(w)))
		case w.half != "":
			text := fmt.Sprintf("%s of %s", plural.Sts(n+h.pending(state, w.half)), w.what)
			p, _ := h.work.Panels.Panel(w.half)
			if wait := h.waitingBefore(p); wait > 0 {
				text += fmt.Sprintf(" (with the %d that wait)", wait)
			}
			onHolders = append(onHolders, text)
		default:
			onHolders = append(onHolders, fmt.Sprintf("%s of %s", plural.Sts(n), w.what))
		}
	}
	if len(onNeedle) > 0 {
		lines = append(lines, "On the needle: "+strings.Join(onNeedle, "; ")+".")
	} else {
		lines = append(lines, "On the needle: nothing.")
	}
	if len(onHolders) > 0 {
		lines = append(lines, "On holders: "+strings.Join(onHolders, "; ")+".")
	}
	if half := h.before(state.Panel()); half != "" {
		off := "Bound off"
		if len(state.OnWaste()) > 0 {
			off = "On a holder, off"
		}
		lines = append(lines, fmt.Sprintf("%s: the shoulder of the %s, %s.", off, half, plural.Sts(h.lastKnit(half).Len())))
	}
	return slices.DeleteFunc(lines, func(line string) bool { return line == "" })
}

// lastWorked says which row was worked last and which is next.
func (h handVoice) lastWorked(state bed.State) string {
	row := state.Row()
	switch {
	case state.Rows() == 0:
		return "The sts are cast on; no row is worked yet. The next row is row 1 (RS)."
	case h.panelBegins(state) && h.before(state.Panel()) != "":
		return fmt.Sprintf("The %s is finished, its yarn is broken; the %s begins. The next row is row %d (%s).", h.before(state.Panel()), state.Panel(), row+1, sideOfRow(row+1))
	}
	text := fmt.Sprintf("You have just worked row %d (%s)", row, sideOfRow(row))
	if h.justWrapped(state) != 0 {
		text += ", which ended with w&t"
	}
	return text + fmt.Sprintf(". The next row is row %d (%s); seen on the RS it begins at the %v.", row+1, sideOfRow(row+1), state.Carriage())
}

// place says where stitches wait on the needle.
func (h handVoice) place(w waiting) string {
	if w.edge == 0 {
		return "at the neck"
	}
	return fmt.Sprintf("at the %v edge", w.edge)
}

// withOtherHalf reports whether stitches wait on the holder of the half that has not begun.
func (h handVoice) withOtherHalf(state bed.State, w waiting) bool {
	return h.isSplit(state) && h.otherHalf(state) != "" && w.edge == h.outer(h.otherHalf(state))
}

// otherHalf returns the half that waits as a whole, empty if none does.
func (s *writer) otherHalf(state bed.State) string {
	second := s.work.Panels[len(s.work.Panels)-1].Name
	if s.isSplit(state) && (state.Panel() != second || s.panelBegins(state)) {
		return second
	}
	return ""
}

// pending returns the stitches of an underarm that wait with a half that has not begun.
func (h handVoice) pending(state bed.State, half string) int {
	n := 0
	for _, w := range h.heldAt(state) {
		if !w.onHolder && h.withOtherHalf(state, w) {
			n += count(w.spans)
		}
	}
	return n
}
