package sheet

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping/garment"
)

func (s *writer) title() { s.line("%s", s.titleText()) }

func (s *writer) titleText() string {
	if title := oneline.Of(s.piece.Spec.Title); title != "" {
		return title
	}
	return "A garment"
}

// kind writes what the piece is and how it is worked.
func (s *writer) kind() { s.para("", s.kindText()) }

func (s *writer) kindText() string { return oneline.Capital(s.work.Name) + ", " + s.voice.view() }

// places returns how many decimals a length has that is given to a millimetre or to a
// hundredth of an inch.
func (s *writer) places() int {
	switch s.piece.Spec.Units {
	case gauge.Inch:
		return 2
	case gauge.Millimetre:
		return 0
	}
	return 1
}

// length prints a length in the spec's unit.
func (s *writer) length(l gauge.Length) string { return l.Format(s.piece.Spec.Units, s.places()) }

// fine prints a length to a tenth of a millimetre or a hundredth of an inch, so
// that a difference is the difference of what is printed beside it.
func (s *writer) fine(l gauge.Length) string {
	places := s.places()
	if s.piece.Spec.Units != gauge.Inch {
		places++
	}
	return l.Format(s.piece.Spec.Units, places)
}

// area prints an area given in cm2 in the spec's unit.
func (s *writer) area(cm2 float64) string {
	const cm2InSquareInch = 2.54 * 2.54
	if s.piece.Spec.Units == gauge.Inch {
		return fmt.Sprintf("%.2f square in", cm2/cm2InSquareInch)
	}
	return fmt.Sprintf("%.1f cm2", cm2)
}

// signed prints a difference with its sign.
func (s *writer) signed(l gauge.Length) string {
	text := s.fine(l)
	if l.Sign() > 0 && strings.Trim(text, "0. cmin") != "" {
		return "+" + text
	}
	return text
}

func (s *writer) sizes() {
	s.heading("Sizes")
	if s.piece.Gauge.Swatches() > 1 {
		s.para("  ", s.sizesNote())
	} else {
		for _, line := range wrapText(s.sizesNote(), tableWidth) {
			s.line("  %s", line)
		}
	}
	s.blank()
	for _, row := range append([][]string{sizeHeads()}, s.sizeRows()...) {
		s.line("  %-21s %10s %10s %10s   %-14s %s", row[0], row[1], row[2], row[3], row[4], row[5])
	}
	for _, text := range s.sizeRemarks() {
		s.para("  * ", text)
	}
}

// tableWidth is how long the lines above the table of sizes are.
const tableWidth = 91

// sizesNote says what the table of sizes holds.
func (s *writer) sizesNote() string {
	text := "Finished and flat, without seam stitches. The last column is what counting a swatch to half a stitch and half a row leaves uncertain."
	if s.piece.Gauge.Swatches() > 1 {
		text = "Finished and flat, without seam stitches. The last column is what counting each swatch to half a stitch and half a row leaves uncertain, or how far the swatches lie apart where that is more."
	}
	return text + s.armholeEnds()
}

func sizeHeads() []string {
	return []string{"", "asked", "knitted", "off", "in whole", "give or take"}
}

// sizeRows are the rows of the table of sizes.
func (s *writer) sizeRows() [][]string {
	var rows [][]string
	for _, size := range s.piece.Sizes {
		asked, off := s.fine(size.Asked), s.signed(size.Off())
		if follows(size) {
			asked, off = "", ""
		}
		rows = append(rows, []string{s.sizeName(size), asked, s.fine(size.Knitted), off, inWhole(size), s.fine(size.PlusMinus)})
	}
	return rows
}

// sizeRemarks say of sizes why they are off.
func (s *writer) sizeRemarks() []string {
	var texts []string
	for _, size := range s.piece.Sizes {
		switch {
		case follows(size):
			texts = append(texts, fmt.Sprintf("%s: not asked; it follows from the length along the cap's edge.", s.sizeName(size)))
		case size.Why != "":
			texts = append(texts, fmt.Sprintf("%s, %s off: %s.", s.sizeName(size), s.signed(size.Off()), size.Why))
		}
	}
	return texts
}

// follows reports whether a length was not asked but follows from others.
func follows(size garment.Size) bool { return size.Name == "cap" }

// inWhole says a length in stitches or rows; one along an edge goes through both.
func inWhole(size garment.Size) string {
	if size.Name == "capEdge" {
		return ""
	}
	return fmt.Sprintf("%d %s", size.Count, size.Counted)
}

// armholeEnds says up to where an armhole is measured, if there is one.
func (s *writer) armholeEnds() string {
	if s.isSleeve() {
		return ""
	}
	return " The armhole ends at the shoulder's outer end."
}

// sizeName returns the name of a length for people.
func (s *writer) sizeName(size garment.Size) string {
	switch size.Name {
	case "width":
		if s.isSleeve() || s.hasSize("hem") || s.hasSize("waist") {
			return "width at the underarm"
		}
	case "hem":
		return "width at the hem"
	case "waist":
		return "width at the waist"
	case "waistHeight":
		return "cast on to waist"
	case "cuff":
		return "width at the cuff"
	case "cap":
		return "height of the cap"
	case "capEdge":
		return "the cap's edge, along"
	case "flat":
		return "top of the cap"
	case "length":
		return "cast on to underarm"
	case "armhole":
		return "armhole depth"
	case "neckWidth":
		if s.opened() {
			return "neck in this front"
		}
		return "neck width"
	case "neckDepth":
		return "neck depth"
	case "shoulder":
		if s.opened() {
			return "shoulder"
		}
		return "each shoulder"
	case "drop":
		return "shoulder drop"
	case "height":
		return "whole height"
	case "inset":
		if s.opened() {
			return "armhole inset"
		}
		return "armhole inset, each"
	}
	return size.Name
}

// hasSize reports whether the piece has a length of that name.
func (s *writer) hasSize(name string) bool {
	return slices.ContainsFunc(s.piece.Sizes, func(size garment.Size) bool { return size.Name == name })
}

func (s *writer) needs() {
	s.heading("Needed")
	s.say(notes(s.needed()))
}

// needed says what the piece needs, how many stitches and rows it has, and what they contain.
func (s *writer) needed() []string {
	materials := s.voice.materials()
	texts := []string{
		fmt.Sprintf("Gauge: %s, washed and rested.%s", gaugeText(s.piece), meanText(s.piece)),
		materials[0],
	}
	if seam := s.piece.Widths.Seam; seam > 0 {
		where := "at each side"
		if s.opened() {
			where = fmt.Sprintf("at the %v edge", s.piece.Outer())
		}
		texts = append(texts, fmt.Sprintf("They contain %s %s that the seam will take.", plural.Stitches(seam), where))
	}
	if s.opened() {
		texts = append(texts, "The front edge has none for a seam: a band is picked up by the outer loop of its edge stitch.")
	}
	high := fmt.Sprintf("The piece is %d rows high", s.height())
	switch {
	case s.halved():
		high += fmt.Sprintf(" where neck and shoulder meet; %d rows are knitted in all, as both halves count", s.piece.Cloth.Rows())
	case s.opened():
		high += fmt.Sprintf(" where neck and shoulder meet, its front edge %d up to the neck, which are %s",
			s.piece.FrontEdge(), s.length(s.piece.Gauge.Height(s.piece.FrontEdge())))
	}
	texts = append(texts, high+".")
	if text := s.yarnText(); text != "" {
		texts = append(texts, text)
	}
	return append(texts, materials[1:]...)
}

// topTail is how long a tail is left at stitches taken off live.
func (s *writer) topTail(stitches int) string {
	joined := "top is"
	switch {
	case s.opened():
		joined = "shoulder is"
	case s.halved():
		joined = "shoulders are"
	}
	return fmt.Sprintf("%s if the %s joined with it, else %s", s.joiningTail(stitches), joined, s.tail())
}

// rolls warns of a closed edge without a band.
func (s *writer) rolls() string {
	if s.piece.Heights.Band > 0 {
		return ""
	}
	return " Plain knitting rolls at such an edge: plan a band or a hem unless you like it so."
}

// bandText says what the first rows are; an odd number of them ends at the other side
// than an even one.
func (s *writer) bandText() string {
	rows, parity := s.piece.Heights.Band, "even"
	if rows%2 == 1 {
		parity = "odd"
	}
	which := "row is the band and counts in the length: knit it"
	if rows > 1 {
		which = fmt.Sprintf("%d rows are the band and count in the length: knit them", rows)
	}
	return fmt.Sprintf("The first %s in %s. If its rows are higher or lower than the gauge's, count in a washed swatch of it how many make %s, knit that many, an %s number,",
		which, s.voice.bandStitch(), s.length(s.piece.Gauge.Height(rows)), parity)
}

func (s *writer) start() []line {
	return append([]line{heading("Start")}, steps(s.voice.start())...)
}
