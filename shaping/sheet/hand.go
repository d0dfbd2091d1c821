package sheet

import (
	"fmt"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// handVoice says the work with two needles: rows, right and wrong sides, stitches.
// Abbreviations are those of the Craft Yarn Council's list (from memory; most are seen
// in the leaflets that print it), each with its meaning on the page.
type handVoice struct{ *writer }

func (h handVoice) view() string {
	return "knitted in the hand. Left and right are those of the right side (RS) as you look at it."
}

func (h handVoice) materials() []string {
	return []string{
		fmt.Sprintf("CO %s%s.", plural.Sts(h.work.Panels[0].Needles.Len()), h.widest()),
		oneline.Capital(strings.Join(h.tools(), ", ")) + ".",
	}
}

// widest says how many stitches the piece has at most if that is more than are cast on.
func (h handVoice) widest() string {
	if h.extent() == h.work.Panels[0].Needles {
		return ""
	}
	return fmt.Sprintf("; at its widest the piece has %s", plural.Sts(h.extent().Len()))
}

// tools lists what the work needs beside main yarn.
func (h handVoice) tools() []string {
	list := []string{"needles that give this gauge"}
	if n := h.holders(); n > 0 {
		list = append(list, holdersText(n))
	}
	if n := h.separate(); n > 0 {
		list = append(list, h.separateText(n))
	}
	return append(list, "a row counter")
}

func (h handVoice) words() [][2]string {
	return [][2]string{
		{"BO", "bind off; where the row goes on, the st left on the right needle is the first one of the rest; slip the first st of each further step, for a smoother edge"},
		{"CO", "cast on"},
		{"k, p", "knit, purl; k5 means knit 5 sts"},
		{"k2tog", "knit two together: a decrease that leans to the right"},
		{"k3tog", "knit three together: two sts less, leaning to the right"},
		{"m1", "make one: with the left needle lift the bar before the next st from front to back, and work it through its back loop: knit it in a RS row, purl it in a WS row"},
		{"p2tog", "purl two together"},
		{"p3tog", "purl three together"},
		{"RS, WS", "right side, wrong side; the odd rows are RS rows: knit them and purl the even ones"},
		{"ssk", "slip, slip, knit the two together: a decrease that leans to the left"},
		{"sssk", "slip three, knit them together: two sts less, leaning to the left"},
		{"ssp", "slip, slip, purl the two together through the back"},
		{"sssp", "slip three, purl them together through the back"},
		{"st, sts", "stitch, stitches"},
		{"w&t", "wrap and turn: slip the next st, bring the yarn to the other side of it, slip it back, turn"},
		{"back", "over the sts just worked, to where the row began"},
		{"turn", "before sts that wait unworked, without a wrap unless w&t is said"},
		{"even", "without shaping, over the sts in work only: where sts wait unworked, turn before them"},
		{"in work", "the sts knitted in the last row, and how many they are"},
		{"[ ]", "a box to tick when the line is done; several boxes: once for each time"},
		{"", "Every line begins with its first row."},
	}
}

func holdersText(n int) string {
	if n > 1 {
		return fmt.Sprintf("%d stitch holders or lengths of waste yarn", n)
	}
	return "a stitch holder or a length of waste yarn"
}

// holders returns how many stitch holders are in use at once at most: for the other
// half, for the neck, for a live shoulder, for the underarms.
func (h handVoice) holders() int {
	needed := 0
	if h.halved() {
		needed++
	}
	if h.liveNeck() > 0 {
		needed++
	}
	last := h.work.Rows[len(h.work.Rows)-1]
	if top, _ := takenOff(last.After, last.Knit); top.Do == shaping.DoWaste {
		needed++
	}
	if len(h.underarmHolds(h.anArmhole())) > 0 {
		needed++
		if !h.opened() {
			needed++
		}
	}
	return needed
}

func (h handVoice) start() []string {
	sts := plural.Sts(h.work.Panels[0].Needles.Len())
	if h.piece.Spec.Start.Edge == garment.ClosedEdge {
		return []string{fmt.Sprintf("CO %s with a tail of %s. The cast on is not a row; row 1 is a RS row.", sts, h.tail()) + h.rolls()}
	}
	later := "for a hem or a band"
	if h.piece.Heights.Band > 0 {
		later = "and is bound off at the end"
	}
	return []string{fmt.Sprintf("CO %s in waste yarn and work 6 rows, the last one a WS row. Change to main yarn with a tail of %s: the lower edge stays open %s. Row 1 is the next row, a RS row.", sts, h.tail(), later)}
}

func (h handVoice) opening(e entry, half shaping.Panel) string {
	text := fmt.Sprintf("Begins with row %d (%s) over %s. Seen on the RS the neck is at its %v end, the outer edge at its %v end; it becomes %s.",
		e.counter+1, sideOfRow(e.counter+1), plural.Sts(half.Needles.Len()), h.outer(e.panel).Opposite(), h.outer(e.panel), h.wearer(e.panel))
	if held := h.heldByBody(half); held > 0 {
		text += fmt.Sprintf(" Of them %s at the outer edge wait unworked already, as shoulder.", plural.Sts(held))
	}
	return text
}

func (h handVoice) mark(counter int, _ shaping.Side) mark {
	return mark{"row ", fmt.Sprint(counter + 1), sideOfRow(counter + 1)}
}

func (h handVoice) labels() (number, side string) { return "", "" }

func (h handVoice) markAfter(e entry) mark { return mark{"after ", fmt.Sprint(e.to), ""} }

func (h handVoice) until(e entry) (reading, side string) {
	if e.rows() == 1 {
		return "", "" // its row is where it begins
	}
	return h.markAfter(e).number, ""
}

func (h handVoice) result(e entry) string {
	return fmt.Sprintf("after row %d (%s): %s in work", e.to, sideOfRow(e.to), plural.Sts(e.inWork.Len()))
}

func (h handVoice) reading(row int) string { return fmt.Sprintf("row %d", row) }

func (h handVoice) takenOff(a shaping.Action, _ entry) string {
	n := plural.Sts(a.Needles.Len())
	text := fmt.Sprintf("Break the yarn with a tail of %s. Slip the %s to a holder: they stay live for joining.", h.topTail(a.Needles.Len()), n)
	if a.Do == shaping.DoBindOff {
		loosely := ""
		if h.piece.Widths.Inset == 0 { // a sleeve's straight top, or a dropped shoulder
			loosely = " loosely"
		}
		text = fmt.Sprintf("BO the last %s%s, at the beginning of the next row. Break the yarn and draw it through.", n, loosely)
	}
	return text
}

func (h handVoice) changeOver(entry, entry) string { return "" }

func (h handVoice) putBack() string { return "" }

func (h handVoice) neckWaits(strips []shaping.Span) []string {
	n := count(strips)
	if n > 1 && h.opened() {
		return []string{fmt.Sprintf("The %s of the neck are on their holder, ready for the neckband.", plural.Sts(n))}
	}
	if n > 1 {
		return []string{fmt.Sprintf("Slip all %s of the neck onto one holder, ready for the neckband.", plural.Sts(n))}
	}
	return []string{"The st of the neck is on its holder, ready for the neckband."}
}

// underarmWaits says nothing: an underarm is on its holder since its last row.
func (h handVoice) underarmWaits([]shaping.Span) []string { return nil }

func (h handVoice) rest(waste int, onHold []shaping.Span) []string {
	var parts []string
	if waste > 0 {
		parts = append(parts, fmt.Sprintf("%d taken off live", waste))
	}
	if len(onHold) > 0 {
		parts = append(parts, fmt.Sprintf("%d waiting or on holders", count(onHold)))
	}
	return parts
}

// on names nothing: in the hand no needle has a name.
func (h handVoice) on(...shaping.Needle) string { return "" }

func (h handVoice) bandStitch() string { return "rib or another stitch that does not roll" }

func (h handVoice) lowerEdge() string { return h.openEdge("the waste yarn", "the waste yarn") }

func (h handVoice) seen() string { return "as you look at its RS" }

func (h handVoice) cautions() []string { return nil }

// sideOfRow returns RS for the odd rows and WS for the even ones.
func sideOfRow(row int) string {
	if row%2 == 1 {
		return "RS"
	}
	return "WS"
}
