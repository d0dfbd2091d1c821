package sheet

import (
	"fmt"
	"io"
	"strings"
)

// width is the longest line of the sheet in characters.
const width = 88

// page collects lines; the first write error stops it and is kept.
type page struct {
	w   io.Writer
	err error
}

func (p *page) line(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintln(p.w, strings.TrimRight(fmt.Sprintf(format, args...), " "))
	}
}

// verbatim writes text that is set already.
func (p *page) verbatim(text []byte) {
	if p.err == nil {
		_, p.err = p.w.Write(text)
	}
}

func (p *page) blank() { p.line("") }

// heading writes a line in capitals after a blank one.
func (p *page) heading(text string) {
	p.blank()
	p.line("%s", strings.ToUpper(text))
}

// noBreak is written as a space at which no line ends.
const noBreak = "\x1f"

// para writes text in lines that begin with first and then with as many spaces.
func (p *page) para(first, text string) {
	indent := strings.Repeat(" ", len([]rune(first)))
	for i, line := range wrapText(text, width-len(indent)) {
		if i > 0 {
			first = indent
		}
		p.line("%s%s", first, strings.ReplaceAll(line, noBreak, " "))
	}
}

// wrapText breaks text at spaces into lines of at most most characters, longer
// only where a word is.
func wrapText(text string, most int) []string {
	var lines []string
	var line strings.Builder
	length := 0
	for _, word := range strings.Fields(text) {
		n := len([]rune(word))
		if length > 0 && length+1+n > most {
			lines = append(lines, line.String())
			line.Reset()
			length = 0
		}
		if length > 0 {
			line.WriteByte(' ')
			length++
		}
		line.WriteString(word)
		length += n
	}
	return append(lines, line.String())
}
