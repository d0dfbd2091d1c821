package sheet

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"example.com/walewise/internal/oneline"
)

// listView is steps in a row, with what is to be known between them.
type listView struct {
	Heading string
	Where   string // how the step in hand names it
	Lines   []lineView
}

// lineView is a step, which has a number in the garment, or something to know, which has
// none.
type lineView struct {
	Number              int
	Check               bool // of something to know: it says where every stitch is
	Word, Reading, Side string
	To, End             string // the reading and the side that it ends at
	Text, Result        string
	Left                string // of a step of a piece, the rows left before it
}

// numbering numbers the steps of a garment and keeps what they say.
type numbering struct {
	steps int
	text  strings.Builder
}

// lists sets what is said of a piece, a band or the joining, a list below each heading.
func (n *numbering) lists(name string, said []line) []listView {
	var lists []listView
	all := rowsOf(said)
	inPiece := all
	for _, part := range parted(said) {
		list, panel := listView{Where: name}, ""
		if part[0].kind == headingLine {
			list.Heading = oneline.Capital(part[0].text)
			list.Where, panel = below(name, part[0].text)
		}
		inPanel := rowsOf(part)
		for _, l := range part {
			if l.kind == headingLine || l.kind == gapLine {
				continue
			}
			shown := n.show(l)
			switch {
			case shown.Number == 0 || all == 0:
			case panel == "":
				shown.Left = fmt.Sprintf("%d in the piece", inPiece)
			default:
				shown.Left = fmt.Sprintf("%d in the %s, %d in the piece", inPanel, panel, inPiece)
			}
			inPanel, inPiece = inPanel-l.rows, inPiece-l.rows
			list.Lines = append(list.Lines, shown)
		}
		if len(list.Lines) > 0 {
			lists = append(lists, list)
		}
	}
	return lists
}

// parted parts what is said before every heading and gap.
func parted(said []line) [][]line {
	var parts [][]line
	for i, l := range said {
		if i == 0 || l.kind == headingLine || l.kind == gapLine {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], l)
	}
	return parts
}

// below returns how a heading is named below the name of a piece or a band, and the panel if
// it is that of one.
func below(name, heading string) (where, panel string) {
	panel, ok := strings.CutPrefix(heading, name+", ")
	switch {
	case ok:
		return heading, panel
	case heading == name:
		return name, ""
	}
	return name + ", " + strings.ToLower(heading), ""
}

// rowsOf returns the rows that are knitted in what is said.
func rowsOf(said []line) int {
	rows := 0
	for _, l := range said {
		rows += l.rows
	}
	return rows
}

// show sets a line, and numbers it if it is a step.
func (n *numbering) show(l line) lineView {
	text := l.text
	switch l.kind {
	case checkLine:
		return lineView{Check: true, Text: "Check: " + text}
	case partLine:
		on := ""
		if l.place != "" {
			on = " on " + l.place
		}
		text = fmt.Sprintf("Pick up %d%s: %s.", l.count, on, text)
	case stepLine:
	default:
		return lineView{Text: text}
	}
	n.steps++
	v := lineView{
		Number: n.steps, Word: strings.TrimSpace(l.mark.word), Reading: l.mark.number, Side: l.mark.side,
		To: l.to, End: l.end, Text: text, Result: l.result,
	}
	if v.Word != "" && v.Side == "" {
		v.Word += " row"
	}
	fmt.Fprintln(&n.text, l.mark, text, l.result)
	return v
}

// fingerprint returns a name that sheets with other steps do not have.
func (n *numbering) fingerprint() string {
	const bytes = 8
	sum := sha256.Sum256([]byte(n.text.String()))
	return hex.EncodeToString(sum[:bytes])
}
