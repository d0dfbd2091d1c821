// Package svgw writes SVG: one element after the other, every text and every value of an
// attribute escaped, every number through one formatter, and nothing else, so that equal
// drawings are equal byte for byte.
package svgw

import (
	"encoding/xml"
	"io"
	"strings"
)

// Attr is an attribute. Its value is escaped when it is written.
type Attr struct{ Name, Value string }

// A returns an attribute.
func A(name, value string) Attr { return Attr{name, value} }

// N returns an attribute that is a number.
func N(name string, value Number) Attr { return Attr{name, value.String()} }

// Writer writes elements. The first error is kept and returned by [Writer.End].
type Writer struct {
	w    io.Writer
	open []string // the names of the open elements
	line []byte   // what has not been written yet
	err  error
}

// New returns a writer to w.
func New(w io.Writer) *Writer { return &Writer{w: w} }

// Open begins an element, on a line of its own. Names are constants of the caller and are
// not escaped.
func (s *Writer) Open(name string, attrs ...Attr) {
	s.tag(name, attrs)
	s.text(">")
	s.open = append(s.open, name)
}

// Leaf writes an element that holds nothing.
func (s *Writer) Leaf(name string, attrs ...Attr) {
	s.tag(name, attrs)
	s.text("/>")
}

// Text writes an element that holds text alone. Characters that XML does not allow are
// replaced by U+FFFD.
func (s *Writer) Text(name, text string, attrs ...Attr) {
	s.tag(name, attrs)
	s.text(">")
	s.escaped(text)
	s.text("</" + name + ">")
}

// Close ends the element that was opened last.
func (s *Writer) Close() {
	last := len(s.open) - 1
	name := s.open[last]
	s.open = s.open[:last]
	s.newLine()
	s.text("</" + name + ">")
}

// End closes what is open and returns the first error.
func (s *Writer) End() error {
	for len(s.open) > 0 {
		s.Close()
	}
	s.text("\n")
	s.flush()
	return s.err
}

func (s *Writer) tag(name string, attrs []Attr) {
	s.newLine()
	s.text("<" + name)
	for _, a := range attrs {
		s.text(" " + a.Name + `="`)
		s.escaped(a.Value)
		s.text(`"`)
	}
}

// newLine begins a line, but for the first.
func (s *Writer) newLine() {
	if s.line != nil {
		s.text("\n")
	}
}

// flushed is from how many bytes on they are written.
const flushed = 4096

func (s *Writer) text(t string) {
	s.line = append(s.line, t...)
	if len(s.line) >= flushed {
		s.flush()
	}
}

func (s *Writer) escaped(t string) {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(t)); err != nil && s.err == nil {
		s.err = err
	}
	s.text(b.String())
}

func (s *Writer) flush() {
	if s.err == nil {
		_, s.err = s.w.Write(s.line)
	}
	s.line = s.line[:0]
}
