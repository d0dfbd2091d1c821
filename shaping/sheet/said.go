package sheet

import (
	"bytes"
	"fmt"
	"strings"
)

// What is said in order, whether it is printed as text or set as a page for the screen.

// line is one thing that is said. What a kind has no use for is empty.
type line struct {
	kind lineKind
	text string

	// Of steps alone.
	mark   mark   // where a step of the work begins
	times  int    // how often it is done, once if 0
	rows   int    // how many rows it knits in all
	to     string // the reading that it ends at, if that is another
	end    string // and the side where the carriage stands then
	result string // how things stand after it
	place  string // of a step that picks up, the needles that it goes onto
	count  int    // and how many stitches it picks up
}

type lineKind int

const (
	headingLine lineKind = iota
	gapLine              // what follows is not of what was said before
	openingLine          // how things stand where a half begins
	noteLine             // something to know and not to do
	stepLine             // to be done, with boxes
	partLine             // likewise, of a list in which stitches are picked up
	seamLine             // in such a list, something without stitches
	checkLine            // where every stitch is when a panel is finished
)

func heading(text string) line { return line{kind: headingLine, text: text} }

func note(text string) line { return line{kind: noteLine, text: text} }

func step(text string) line { return line{kind: stepLine, text: text} }

// steps makes a step of each text.
func steps(texts []string) []line {
	var list []line
	for _, text := range texts {
		list = append(list, step(text))
	}
	return list
}

// notes makes a note of each text.
func notes(texts []string) []line {
	var list []line
	for _, text := range texts {
		list = append(list, note(text))
	}
	return list
}

// mark is where a step begins: at the bed what the counter shows and where the carriage
// stands, in the hand the row and its side; there a word stands before the number.
type mark struct{ word, number, side string }

// String returns the mark as it is printed, in the same width always.
func (m mark) String() string {
	const wordAndSide = 6 // "right" and a space, "row WS", "after "
	return fmt.Sprintf("%s%3s %-*s", m.word, m.number, wordAndSide-len(m.word), m.side)
}

// say prints what is said.
func (p *page) say(list []line) {
	column := 0
	for _, l := range list {
		column = max(column, len(l.place))
	}
	for _, l := range list {
		switch l.kind {
		case headingLine:
			p.heading(l.text)
		case gapLine:
			p.blank()
		case openingLine:
			p.para("  ", l.text)
			p.blank()
		case noteLine:
			p.para("  ", l.text)
		case stepLine:
			p.step(l)
		case partLine:
			p.para(fmt.Sprintf("      [ ] %-*s %4d  ", column, l.place, l.count), l.text)
		case seamLine:
			p.para(fmt.Sprintf("          %-*s %4s  ", column, "", ""), l.text)
		case checkLine:
			p.para("  Check: ", l.text)
		}
	}
}

// mostBoxes is how many boxes a step has at its beginning; where it is done more often they
// stand in the list of its places, see places.
const mostBoxes = 8

// boxWidth is the width of the column of boxes.
const boxWidth = 12

// step prints a step with its boxes.
func (p *page) step(l line) {
	if l.mark == (mark{}) {
		p.para("  [ ] ", l.text)
		return
	}
	box := strings.Repeat("[ ]", max(l.times, 1))
	if l.times > mostBoxes {
		box = "[ ]"
	}
	if len(box) > boxWidth {
		p.line("  %s", box)
		box = ""
	}
	head := fmt.Sprintf("  %-*s %v ", boxWidth, box, l.mark)
	p.para(head, l.text)
	if l.result != "" {
		p.line("%s-> %s", strings.Repeat(" ", len(head)), l.result)
	}
}

// printed returns what is said as it is printed.
func printed(list []line) []byte {
	var text bytes.Buffer
	p := &page{w: &text}
	p.say(list)
	return text.Bytes()
}
