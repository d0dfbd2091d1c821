package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// bedVoice says the work at the bed: counter readings, sides of the carriage, needles.
type bedVoice struct{ *writer }

// wasteRows is how many rows of waste yarn are knitted over live stitches: an even number,
// so that the carriage is where it was. It stays there if no row without yarn follows.
const wasteRows = 8

// pushOff says how stitches on waste yarn leave the bed.
const pushOff = "break it and push the stitches off by hand, so that the carriage stays where it is"

// fewNeedles is how many needles the waste yarn runs past from strip to strip.
const fewNeedles = 4

func (b bedVoice) view() string {
	return "knitted on the bed with the purl side facing you. Left and right are those of the bed."
}

func (b bedVoice) materials() []string {
	needles := b.work.Panels[0].Needles
	bed := b.piece.Spec.Setup.BedNeedles()
	odd := ""
	switch evenly := needles == shaping.Centred(needles.Len()); {
	case !evenly:
		odd = ", so that the piece lies evenly where it is widest"
	case needles.Len()%2 == 1:
		odd = "; of an odd number one more lies on the right"
	}
	return []string{
		fmt.Sprintf("Cast on %d stitches: needles %v%s%s; the bed has L%d-R%d.", needles.Len(), needles, odd, b.widest(), bed/2, bed/2),
		oneline.Capital(strings.Join(b.tools(), ", ")) + ".",
	}
}

// widest says how wide the piece becomes if that is wider than its cast on.
func (b bedVoice) widest() string {
	all := b.extent()
	if all == b.work.Panels[0].Needles {
		return ""
	}
	return fmt.Sprintf("; at its widest the piece has %d, on %v", all.Len(), all)
}

// tools lists what the work needs beside main yarn and carriage.
func (b bedVoice) tools() []string {
	var list []string
	uses := b.uses()
	if b.piece.Spec.Start.Edge == garment.WasteEdge {
		list = append(list, "waste yarn", "ravel cord")
	} else if uses[shaping.DoWaste] {
		list = append(list, "waste yarn")
	}
	if n := b.separate(); n > 0 {
		list = append(list, b.separateText(n))
	}
	if uses[shaping.DoShift] {
		list = append(list, "a transfer tool")
	}
	return append(list, "weights", "a row counter")
}

func (b bedVoice) words() [][2]string {
	return [][2]string{
		{"counter", "what the row counter shows; 000 before the first row of main yarn"},
		{"L3, R3", "the third needle left or right of the middle; there is no needle 0"},
		{"hold", "needles pushed out so that the carriage, set to hold, passes them by; their stitches stay on them"},
		{"wrap", "lay the yarn under the named held needle before knitting back, or a hole stays"},
		{"increase", "push the needle beyond the edge into work and move the edge stitches outwards with the transfer tool; the purl bar for the empty needle is lifted from the stitch beside it, towards the middle"},
		{"bind off", "with the working yarn from the carriage's end; the last loop goes on the next needle in work, the emptied needles go out of work"},
		{"in work", "the needles that knitted the last row, and how many they are"},
		{"[ ]", "a box to tick when the line is done; several boxes: once for each time"},
		{"", "Every line begins with what the counter shows and where the carriage stands before it."},
	}
}

func (b bedVoice) start() []string {
	first, needles := b.work.Rows[0], b.work.Panels[0].Needles
	cast := fmt.Sprintf("Cast on %v (%d stitches) in waste yarn and knit 8 rows or more that end at the %v. Knit one row of ravel cord to the %v. Change to main yarn, leave a tail of %s. Counter to 000, carriage at the %v.",
		needles, needles.Len(), first.From.Opposite(), first.From, b.tail(), first.From)
	if b.piece.Spec.Start.Edge == garment.ClosedEdge {
		cast = fmt.Sprintf("Cast on %v (%d stitches) in main yarn with a closed edge and a tail of %s, so that the carriage then stands at the %v. The cast on is not a row. Counter to 000.",
			needles, needles.Len(), b.tail(), first.From) + b.rolls()
	}
	weights := "Hang weights under the stitches and move them up every 10 rows or so"
	if b.uses()[shaping.DoHold] {
		weights += "; when stitches go on hold, move their weights to those in work beside the turn"
	}
	if b.uses()[shaping.DoFill] {
		weights += "; after increases hang the outermost ones on the new edge stitches"
	}
	return []string{cast, weights + ". Count rows; do not measure on the bed."}
}

func (b bedVoice) opening(e entry, half shaping.Panel) string {
	text := fmt.Sprintf("Begins at counter %03d with the carriage at the %v. The half has %v, %d stitches: "+
		"the neck is at its %v end, the outer edge at its %v end; it becomes %s.",
		e.counter, e.from, half.Needles, half.Needles.Len(), b.outer(e.panel).Opposite(), b.outer(e.panel), b.wearer(e.panel))
	if held := b.heldByBody(half); held > 0 {
		text += fmt.Sprintf(" Of them %v (%s) are on hold already, as shoulder.", half.Needles.Edge(b.outer(e.panel), held), plural.Stitches(held))
	}
	return text
}

func (b bedVoice) mark(counter int, from shaping.Side) mark {
	return mark{"", fmt.Sprintf("%03d", counter), from.String()}
}

func (b bedVoice) labels() (number, side string) { return "counter", "carriage at the " }

func (b bedVoice) markAfter(e entry) mark { return b.mark(e.to, e.end) }

func (b bedVoice) until(e entry) (reading, side string) {
	at := b.markAfter(e)
	return at.number, at.side
}

func (b bedVoice) result(e entry) string {
	return fmt.Sprintf("counter %03d; in work %v, %d", e.to, e.inWork, e.inWork.Len())
}

func (b bedVoice) reading(row int) string { return fmt.Sprintf("counter %03d", row-1) }

func (b bedVoice) joined(entry, entry) bool { return true }

func (b bedVoice) asks(group []entry, first bool) string {
	setsHold := group[0].holds() && !b.onHold
	b.onHold = b.onHold || setsHold
	var text string
	if first {
		text = b.first(group[0]) + " " + knitting(group)
	} else {
		text = b.said(group)
	}
	if held, _, edge := b.underarmDone(group[len(group)-1]); held > 0 {
		text += fmt.Sprintf(" Hang a small weight on the %s held at the %v edge: %s on hold to the end.", plural.Stitches(held), edge, theyStay(held))
	}
	if setsHold {
		text = "Set the carriage to hold; it stays so until the last stitches are off. " + text
	}
	return text
}

// first says what is done before the first row of a panel.
func (b bedVoice) first(e entry) string {
	var text []string
	var held []shaping.Span
	var edges []task // what the panel's own edges ask for
	for _, a := range e.before {
		switch {
		case a.Do == shaping.DoCastOn && b.piece.Heights.Band > 0:
			text = append(text, fmt.Sprintf("The %d stitches are on %v. %s and then set the counter to %03d.", a.Needles.Len(), a.Needles, b.bandText(), b.piece.Heights.Band))
		case a.Do == shaping.DoCarriage || a.Do == shaping.DoCounter: // see changeOver
		case a.Do == shaping.DoReturn:
			text = append(text, fmt.Sprintf("Push %v (%s) back into work; everything else stays on hold. Join the main yarn at the %v with a tail of %s: the first stitch to knit is %v.",
				a.Needles, plural.Stitches(a.Needles.Len()), e.from, b.tail(), a.Needles.End(e.from)))
		case a.Do == shaping.DoHold:
			held = append(held, a.Needles)
		case a.Do == shaping.DoCastOn || a.Separate:
			text = append(text, b.once(a.Action, e))
		default:
			edges = append(edges, a)
		}
	}
	if len(held) > 0 {
		text = append(text, b.heldText(held, e))
	}
	text = append(text, b.done(edges, e)...)
	return strings.Join(text, " ")
}

// heldText says several spans put on hold at once, and what each of them is.
func (b bedVoice) heldText(held []shaping.Span, e entry) string {
	p, _ := b.work.Panels.Panel(e.panel)
	if len(held) == 1 && p.Needles.ContainsSpan(held[0]) {
		return fmt.Sprintf("Put %v on hold %s (%s).", held[0], b.where(e, e.from.Opposite()), plural.Stitches(held[0].Len()))
	}
	slices.SortFunc(held, func(a, b shaping.Span) int { return a.First.Index() - b.First.Index() })
	all := shaping.Span{First: held[0].First, Last: held[len(held)-1].Last}
	var parts []string
	for _, h := range held {
		what := fmt.Sprintf("the middle %v (%d)", h, h.Len())
		if p.Needles.ContainsSpan(h) {
			what = fmt.Sprintf("the first neck stitches %v (%d)", h, h.Len())
		} else if name := b.halfWith(h); name != "" {
			what = fmt.Sprintf("the %s %v (%d)", name, h, h.Len())
		}
		parts = append(parts, what)
	}
	if len(parts) == 1 {
		return fmt.Sprintf("Put %s on hold.", parts[0])
	}
	if count(held) < all.Len() { // the middle between them is bound off
		return fmt.Sprintf("Put on hold: %s.", strings.Join(parts, ", "))
	}
	return fmt.Sprintf("Put %v on hold: %s.", all, strings.Join(parts, ", "))
}

func (b bedVoice) takenOff(a shaping.Action, e entry) string {
	if a.Do == shaping.DoBindOff {
		return fmt.Sprintf("Bind off the last %s, %v, break the yarn with a tail of %s and draw it through the last loop. Push the empty needles out of work.",
			plural.Stitches(a.Needles.Len()), fromEnd(a.Needles, e.end), b.tail())
	}
	return fmt.Sprintf("Break the yarn with a tail of %s. Counter off. Knit %d rows of waste yarn over %v (%s), %s: they stay live for joining. Push the empty needles out of work.",
		b.topTail(a.Needles.Len()), wasteRows, a.Needles, plural.Stitches(a.Needles.Len()), pushOff)
}

func (b bedVoice) changeOver(_, next entry) string {
	return fmt.Sprintf("Take the carriage, unthreaded, to the %v: everything is on hold, so nothing knits. Counter on, set back to %03d.", next.from, next.counter)
}

func (b bedVoice) putBack() string {
	if !b.onHold {
		return ""
	}
	return "Set the carriage back to knit all needles."
}

func (b bedVoice) neckWaits(strips []shaping.Span) []string {
	return onWaste(strips, "the neck", ", ready for the neckband")
}

func (b bedVoice) underarmWaits(strips []shaping.Span) []string {
	what := "the underarm"
	if b.isSleeve() {
		side := shaping.Left
		if strips[0].First.Index() > b.lastKnit(shaping.Body).Last.Index() {
			side = shaping.Right
		}
		what = fmt.Sprintf("the cap's %v edge", side)
	}
	return onWaste(strips, what, "")
}

// pastEmpty says how the yarn goes where strips do not lie side by side.
func pastEmpty(strips []shaping.Span) string {
	if len(strips) < 2 {
		return ""
	}
	return "; the yarn runs past the empty needles between them"
}

// onWaste says how strips that waited on hold are taken off the bed, those that lie close
// closeTogether at once, and what they are ready for.
func onWaste(strips []shaping.Span, what, ready string) []string {
	var lines []string
	parts := closeTogether(strips)
	the := "the"
	if len(parts) > 1 {
		the = "a"
	}
	for _, strips := range parts {
		if count(strips) == 1 {
			lines = append(lines, fmt.Sprintf("Lift %s, %s stitch of %s, onto a safety pin: it stays live.", names(strips), the, what))
			continue
		}
		lines = append(lines, fmt.Sprintf("Push %s (%s, %s) back into work. Counter off. Knit %d rows of waste yarn over them in one strip%s%s; %s.",
			names(strips), plural.Stitches(count(strips)), what, wasteRows, ready, pastEmpty(strips), pushOff))
	}
	return lines
}

// closeTogether parts strips, from left to right, where many needles lie between them.
func closeTogether(strips []shaping.Span) [][]shaping.Span {
	var parts [][]shaping.Span
	for i, strip := range strips {
		if i == 0 || strip.First.Index()-strips[i-1].Last.Index() > fewNeedles+1 {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], strip)
	}
	return parts
}

func (b bedVoice) rest(waste int, onHold []shaping.Span) []string {
	var parts []string
	if waste > 0 {
		parts = append(parts, fmt.Sprintf("%d on waste yarn", waste))
	}
	if len(onHold) > 0 {
		parts = append(parts, fmt.Sprintf("%d on hold (%s)", count(onHold), names(onHold)))
	}
	return parts
}

func (b bedVoice) on(needles ...shaping.Needle) string {
	var names []string
	for _, n := range needles {
		names = append(names, n.String())
	}
	return ", on " + strings.Join(names, " and ")
}

// bandStitch says what a single bed can knit: it has no rib. Common practice, no source.
func (b bedVoice) bandStitch() string {
	return "mock rib, a rib reformed by hand with the latch tool, or another stitch that does not roll"
}

func (b bedVoice) lowerEdge() string { return b.openEdge("the ravel cord", "the cord") }

func (b bedVoice) seen() string { return "knitted with the purl side facing you" }

func (b bedVoice) cautions() []string {
	return []string{"Latch needles and transfer tools are sharp."}
}
