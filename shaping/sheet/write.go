package sheet

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Write writes the instructions of a piece: sizes and needs first, then the words
// used, the start, the order of work with boxes to tick, the account of the
// stitches, and how to finish. It returns the first error of w.
func Write(w io.Writer, piece garment.Piece) error {
	s := writer{page: page{w: w}, piece: piece, work: piece.Work}
	s.head()
	s.sizes()
	s.needs()
	s.notes()
	s.key()
	s.start()
	s.rows()
	s.account()
	s.finish()
	return s.err
}

// writer writes one piece.
type writer struct {
	page
	piece garment.Piece
	work  shaping.Work

	onHold bool // the carriage has been set to hold
}

// rows writes the order of work panel by panel.
func (s *writer) rows() {
	list := entries(s.work, s.piece.Heights.Band)
	for i := 0; i < len(list); {
		j := i
		for j < len(list) && list[j].panel == list[i].panel {
			j++
		}
		s.panel(list[i:j])
		i = j
	}
}

// panel writes the entries of one panel.
func (s *writer) panel(list []entry) {
	first, last := list[0], list[len(list)-1]
	s.heading(s.work.Name + ", " + first.panel)
	if first.panel != shaping.Body {
		s.para("  ", s.opening(first))
		s.blank()
	}
	shoulder := false
	for k, group := range gather(list) {
		e := group[0]
		if !shoulder && first.panel != shaping.Body && s.atShoulder(e) {
			shoulder = true
			s.line("  From here stitches go at the outer edge too, the %v end: mind the end on every line.", s.outer(e.panel))
		}
		place := "at the neck"
		if s.atShoulder(e) || e.panel == shaping.Body {
			place = fmt.Sprintf("at the %v edge", e.from.Opposite())
		}
		text := said(group, place)
		if k == 0 {
			text = s.firstText(e) + " " + knitting(group)
		}
		s.entry(len(group), e.counter, e.from, text, group[len(group)-1])
	}
	s.after(last)
}

// entry writes one entry with its boxes; result is the entry whose end is shown.
func (s *writer) entry(boxes, counter int, from shaping.Side, text string, result entry) {
	const mostBoxes = 8
	box := strings.Repeat("[ ]", min(boxes, mostBoxes))
	if boxes > mostBoxes {
		box = fmt.Sprintf("[ ] x %d", boxes)
	}
	const boxWidth = 12
	if len(box) > boxWidth {
		s.line("  %s", box)
		box = ""
	}
	head := fmt.Sprintf("  %-*s %03d %-6v ", boxWidth, box, counter, from)
	s.para(head, text)
	s.line("%s-> counter %03d; in work %v, %d", strings.Repeat(" ", len(head)), result.to, result.inWork, result.inWork.Len())
}

// opening says how things stand when a half begins.
func (s *writer) opening(e entry) string {
	p, _ := s.work.Panels.Panel(e.panel)
	return fmt.Sprintf("Begins at counter %03d with the carriage at the %v, set so that needles on hold do not knit. The half has %v, %d stitches: "+
		"the neck is at its %v end, the outer edge at its %v end.",
		e.counter, e.from, p.Needles, p.Needles.Len(), s.outer(e.panel).Opposite(), s.outer(e.panel))
}

// outer returns the side of a half's outer edge.
func (s *writer) outer(panel string) shaping.Side {
	if panel == shaping.LeftHalf {
		return shaping.Left
	}
	return shaping.Right
}

// atShoulder reports whether the entry takes shoulder stitches out.
func (s *writer) atShoulder(e entry) bool {
	if e.counter < s.piece.Heights.Tip()-1 || len(e.before) == 0 {
		return false
	}
	for _, a := range e.before {
		last := e.inWork.Beyond(s.outer(e.panel), 1).First
		if (a.Do == shaping.DoHold || a.Do == shaping.DoBindOff) && a.Needles.Contains(last) {
			return true
		}
	}
	return false
}

// firstText says what is done before the first row of a panel.
func (s *writer) firstText(e entry) string {
	p, _ := s.work.Panels.Panel(e.panel)
	var text []string
	var held []shaping.Span
	for _, a := range e.before {
		switch a.Do {
		case shaping.DoCastOn:
			if s.piece.Heights.Band > 0 {
				text = append(text, fmt.Sprintf("The %d stitches are on %v. These rows are the band, in rib or for a hem; plain rows would roll.", a.Needles.Len(), a.Needles))
				continue
			}
			text = append(text, once(a, e, ""))
		case shaping.DoCarriage:
			text = append(text, fmt.Sprintf("Unthread the carriage and take it to the %v; everything is on hold, so nothing knits. Join the main yarn there, with a tail of 20 cm;", a.Side))
		case shaping.DoCounter:
			text = append(text, fmt.Sprintf("counter on, set back to %03d.", a.Counter))
		case shaping.DoReturn:
			text = append(text, fmt.Sprintf("Push %v (%s) back into work; everything else stays on hold.", a.Needles, stitchesText(a.Needles.Len())))
		case shaping.DoHold:
			held = append(held, a.Needles)
		default:
			text = append(text, once(a, e, ""))
		}
	}
	if len(held) > 0 {
		text = append(text, s.heldText(held, p))
	}
	if p.Parent != "" && !s.onHold {
		s.onHold = true
		text = append([]string{"Set the carriage to hold; it stays so until the last stitches are off."}, text...)
	}
	return strings.Join(text, " ")
}

// heldText says several spans put on hold at once, and what each of them is.
func (s *writer) heldText(held []shaping.Span, p shaping.Panel) string {
	if len(held) == 1 && p.Needles.ContainsSpan(held[0]) {
		return fmt.Sprintf("Put %v on hold at the neck (%s).", held[0], stitchesText(held[0].Len()))
	}
	slices.SortFunc(held, func(a, b shaping.Span) int { return a.First.Index() - b.First.Index() })
	all := shaping.Span{First: held[0].First, Last: held[len(held)-1].Last}
	var parts []string
	for _, h := range held {
		what := fmt.Sprintf("the middle %v (%d)", h, h.Len())
		if p.Needles.ContainsSpan(h) {
			what = fmt.Sprintf("the first neck stitches %v (%d)", h, h.Len())
		} else if name := s.halfWith(h); name != "" {
			what = fmt.Sprintf("the %s %v (%d)", name, h, h.Len())
		}
		parts = append(parts, what)
	}
	return fmt.Sprintf("Put %v on hold: %s.", all, strings.Join(parts, ", "))
}

// halfWith returns the name of the half that the span lies in.
func (s *writer) halfWith(span shaping.Span) string {
	for _, p := range s.work.Panels {
		if p.Parent != "" && p.Needles.ContainsSpan(span) {
			return p.Name
		}
	}
	return ""
}

// wasteRows is how many rows of waste yarn are knitted over live stitches.
const wasteRows = 8

// after says what follows a panel's last row and checks the stitches.
func (s *writer) after(e entry) {
	if len(e.after) == 0 {
		return
	}
	for _, a := range e.after {
		text := ""
		switch {
		case a.Do == shaping.DoWaste && a.Needles == e.inWork:
			text = fmt.Sprintf("Break the yarn with a tail of 20 cm. Counter off. Knit %d rows of waste yarn over %v (%s) and take them off the bed: they stay live for joining. Push the empty needles out of work.",
				wasteRows, a.Needles, stitchesText(a.Needles.Len()))
		case a.Do == shaping.DoWaste:
			text = fmt.Sprintf("Push %v (%s, the neck) back into work. Counter off. Knit %d rows of waste yarn over them in one strip and take it off, ready for the neckband. Set the carriage back to knit all needles.",
				a.Needles, stitchesText(a.Needles.Len()), wasteRows)
		case a.Do == shaping.DoBindOff:
			text = fmt.Sprintf("Bind off the last %s: %v. Break the yarn and push the empty needles out of work.", stitchesText(a.Needles.Len()), fromEnd(a.Needles, e.end))
		default:
			text = once(a, e, "")
		}
		s.para(fmt.Sprintf("  %-12s %03d %-6v ", "[ ]", e.to, e.end), text)
	}
	s.para("  Check: ", s.tally(e.panel)+".")
}
