package sheet

import (
	"fmt"

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
		fmt.Sprintf("CO %s.", stsText(h.work.Panels[0].Needles.Len())),
		"Needles that give this gauge, two stitch holders or waste yarn, a row counter.",
	}
}

func (h handVoice) words() [][2]string {
	return [][2]string{
		{"BO", "bind off; where the row goes on, the st left on the right needle is the first one of the rest"},
		{"CO", "cast on"},
		{"k, p", "knit, purl; k5 means knit 5 sts"},
		{"k2tog", "knit two together: a decrease that leans to the right"},
		{"k3tog", "knit three together: two sts less, leaning to the right"},
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
		{"even", "without shaping, over the sts in work only: where sts wait unworked, turn before them"},
		{"in work", "the sts knitted in the last row, and how many they are"},
		{"[ ]", "a box to tick when the line is done; several boxes: once for each time"},
		{"", "Every line begins with its first row. Slip the first st of each further step that is bound off, for a smoother edge."},
	}
}

func (h handVoice) start() []string {
	sts := stsText(h.work.Panels[0].Needles.Len())
	if h.piece.Spec.Start.Edge == garment.Closed {
		return []string{fmt.Sprintf("CO %s. The cast on is not a row; row 1 is a RS row.", sts)}
	}
	return []string{fmt.Sprintf("CO %s over waste yarn, so that the lower edge stays open for a hem or a band, and leave a tail of 20 cm. The cast on is not a row; row 1 is a RS row.", sts)}
}

func (h handVoice) opening(e entry, half shaping.Panel) string {
	text := fmt.Sprintf("Begins with row %d (%s) over %s. Seen on the RS the neck is at its %v end, the outer edge at its %v end; it becomes %s.",
		e.counter+1, sideOfRow(e.counter+1), stsText(half.Needles.Len()), h.outer(e.panel).Opposite(), h.outer(e.panel), h.wearer(e.panel))
	if held := h.heldByBody(half); held > 0 {
		text += fmt.Sprintf(" Of them %s at the outer edge wait unworked already, as shoulder.", stsText(held))
	}
	return text
}

func (h handVoice) mark(counter int, _ shaping.Side) string {
	return fmt.Sprintf("row %3d %s", counter+1, sideOfRow(counter+1))
}

func (h handVoice) markAfter(e entry) string { return fmt.Sprintf("after %3d ", e.to) }

func (h handVoice) result(e entry) string {
	return fmt.Sprintf("-> after row %d (%s): %s in work", e.to, sideOfRow(e.to), stsText(e.inWork.Len()))
}

func (h handVoice) reading(row int) string { return fmt.Sprintf("row %d", row) }

func (h handVoice) takenOff(a shaping.Action, e entry) string {
	n := stsText(a.Needles.Len())
	if a.Do == shaping.DoBindOff {
		return fmt.Sprintf("BO the last %s, at the beginning of the next row. Break the yarn and draw it through.", n)
	}
	return fmt.Sprintf("Break the yarn with a tail of 20 cm. Slip the %s to a holder: they stay live for joining.", n)
}

func (h handVoice) waiting(strips []shaping.Span, what string) string {
	text := fmt.Sprintf("Put all %s of %s that wait on holders", stsText(count(strips)), what)
	if count(strips) == 1 {
		text = fmt.Sprintf("Put the st of %s that waits on a holder", what)
	}
	if what == neckStitches {
		text += ", ready for the neckband"
	}
	return text + "."
}

func (h handVoice) rest(waste int, onHold []shaping.Span) []string {
	var parts []string
	if waste > 0 {
		parts = append(parts, fmt.Sprintf("%d on holders", waste))
	}
	if len(onHold) > 0 {
		parts = append(parts, fmt.Sprintf("%d waiting", count(onHold)))
	}
	return parts
}

func (h handVoice) lowerEdge() string {
	return "The lower edge is still open on the waste yarn: pick up its sts for a hem or a band or bind them off, then pull the waste yarn out."
}

func (h handVoice) worn() string {
	return "Worn, this piece's right half lies on the wearer's left: it joins the left half of a back as you look at its RS."
}

func (h handVoice) cautions() []string { return nil }

// sideOfRow returns RS for the odd rows and WS for the even ones.
func sideOfRow(row int) string {
	if row%2 == 1 {
		return "RS"
	}
	return "WS"
}

func stsText(n int) string {
	if n == 1 {
		return "1 st"
	}
	return fmt.Sprintf("%d sts", n)
}
