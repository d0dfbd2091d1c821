package sheet_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// element is an element of a page.
type element struct {
	name     string
	attrs    map[string]string
	text     string // what stands in it, that of its children included
	children []*element
}

// is reports whether the element is of that class.
func (e *element) is(class string) bool {
	return slices.Contains(strings.Fields(e.attrs["class"]), class)
}

// all returns the elements in an element that are as asked, in the order of the page.
func (e *element) all(asked func(*element) bool) []*element {
	var found []*element
	for _, child := range e.children {
		if asked(child) {
			found = append(found, child)
		}
		found = append(found, child.all(asked)...)
	}
	return found
}

func (e *element) named(name string) []*element {
	return e.all(func(e *element) bool { return e.name == name })
}

func (e *element) ofClass(class string) []*element {
	return e.all(func(e *element) bool { return e.is(class) })
}

// words returns the text of the first element of a class or a name, empty if there is none.
func (e *element) words(name string) string {
	found := e.all(func(e *element) bool { return e.is(name) || e.name == name })
	if len(found) == 0 {
		return ""
	}
	return strings.TrimSpace(found[0].text)
}

// read reads a page: every element is closed by its own end and none within another's.
func read(page string) (*element, error) {
	page = raw.ReplaceAllString(page, "<$1></$1>")
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.Entity = false, xml.HTMLEntity // attributes without value
	root := &element{}
	open, begins := []*element{root}, []int{0}
	var text strings.Builder // of all elements; that of one is a part of it
	for {
		token, err := d.RawToken()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
		last := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			e := &element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				if _, twice := e.attrs[a.Name.Local]; twice {
					return nil, fmt.Errorf("%s has two %s", e.name, a.Name.Local)
				}
				e.attrs[a.Name.Local] = a.Value
			}
			last.children = append(last.children, e)
			if e.name != "meta" && e.name != "input" {
				open, begins = append(open, e), append(begins, text.Len())
			}
		case xml.EndElement:
			if token.Name.Local != last.name {
				return nil, fmt.Errorf("%s ends within %s", token.Name.Local, last.name)
			}
			n := len(open) - 1
			last.text = text.String()[begins[n]:]
			open, begins = open[:n], begins[:n]
		case xml.CharData:
			text.Write(token)
		}
	}
	if len(open) > 1 {
		return nil, fmt.Errorf("%s has no end", open[len(open)-1].name)
	}
	root.text = text.String()
	return root, nil
}

// raw are the elements in which everything is text.
var raw = regexp.MustCompile(`(?s)<(style|script)>.*?</(?:style|script)>`)

// pageOf returns the page of a set, as it is and read.
func pageOf(t rapid.TB, set garment.Set) (string, *element) {
	t.Helper()
	var out strings.Builder
	if err := sheet.WriteSetPage(&out, set); err != nil {
		t.Fatal(err)
	}
	page, err := read(out.String())
	if err != nil {
		t.Fatal(err)
	}
	return out.String(), page
}

// setOf makes the pieces of a spec.
func setOf(t testing.TB, s garment.Spec) garment.Set {
	t.Helper()
	set, err := garment.Pieces(s)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

// asPrinted returns what a page says of the order of work of a piece, in the form of the
// printed sheet, so that the reader can follow it.
func asPrinted(page, piece *element) string {
	var b strings.Builder
	fmt.Fprintln(&b, strings.ToLower(page.words("p")))
	for _, part := range piece.children {
		switch {
		case part.name == "h3":
			fmt.Fprintf(&b, "\n%s\n", strings.ToUpper(part.text))
		case part.name == "ol":
			for i, line := range part.children {
				printLine(&b, line, i == 0)
			}
		case part.name == "details":
			dds := part.named("dd")
			fmt.Fprintf(&b, "\nEVERY STITCH\n  %s\n\nFINISH\n", dds[len(dds)-1].text)
		}
	}
	return b.String()
}

func printLine(b *strings.Builder, line *element, first bool) {
	switch {
	case line.is("step"):
		at := strings.Replace(line.words("at"), "after row", "after", 1)
		fmt.Fprintf(b, "  [ ] %s %s\n", at, line.words("do"))
		if after := line.words("after"); after != "" {
			fmt.Fprintf(b, "   -> %s\n", after)
		}
	case first: // how things stand where a half begins
		fmt.Fprintf(b, "  %s\n\n", line.text)
	default:
		fmt.Fprintf(b, "  %s\n", line.text)
	}
}
