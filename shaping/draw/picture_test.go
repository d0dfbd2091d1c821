package draw_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"

	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
)

// tester is what *testing.T and *rapid.T have in common, as far as it is used here.
type tester interface {
	Helper()
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// element is one element of a picture as a reader finds it.
type element struct {
	name  string
	attrs map[string]string
	text  string
	group string // class of the g element around it, and its text anchor
	side  string
}

// picture is a picture read back.
type picture []element

// read parses a picture, which must be well-formed.
func read(t tester, svg []byte) picture {
	t.Helper()
	var p picture
	var open []int
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return p
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			if n := len(open); n > 0 && p[open[n-1]].name == "g" {
				e.group, e.side = p[open[n-1]].attrs["class"], p[open[n-1]].attrs["text-anchor"]
			}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(p))
			p = append(p, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if n := len(open); n > 0 {
				p[open[n-1]].text += string(token)
			}
		}
	}
}

// classed returns the elements of a class.
func (p picture) classed(class string) picture {
	var found picture
	for _, e := range p {
		if e.attrs["class"] == class {
			found = append(found, e)
		}
	}
	return found
}

// in returns the texts of a group.
func (p picture) in(group string) picture {
	var found picture
	for _, e := range p {
		if e.group == group && e.name == "text" {
			found = append(found, e)
		}
	}
	return found
}

func (p picture) named(name string) picture {
	var found picture
	for _, e := range p {
		if e.name == name {
			found = append(found, e)
		}
	}
	return found
}

// number returns an attribute in thousandths.
func (e element) number(t tester, attr string) int {
	t.Helper()
	n, err := strconv.ParseFloat(e.attrs[attr], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", attr, e, err)
	}
	return thousandths(n)
}

func thousandths(n float64) int { return int(math.Round(n * 1000)) }

// place is a point on paper in thousandths of a millimetre.
type place struct{ x, y int }

// subpaths returns the corners of each subpath of an element, that of a closed one without
// its first corner again.
func (e element) subpaths(t tester) [][]place {
	t.Helper()
	var paths [][]place
	var at place
	data := e.attrs["d"]
	for len(data) > 0 {
		letter := data[0]
		end := strings.IndexAny(data[1:], "MlhvzL") + 1
		if end == 0 {
			end = len(data)
		}
		numbers := numbersOf(t, data[1:end])
		data = data[end:]
		switch letter {
		case 'M':
			at = place{numbers[0], numbers[1]}
			paths = append(paths, nil)
		case 'l':
			at = place{at.x + numbers[0], at.y + numbers[1]}
		case 'h':
			at.x += numbers[0]
		case 'v':
			at.y += numbers[0]
		case 'z':
			continue
		default:
			t.Fatalf("path data %q", e.attrs["d"])
		}
		paths[len(paths)-1] = append(paths[len(paths)-1], at)
	}
	return paths
}

func numbersOf(t tester, text string) []int {
	t.Helper()
	var list []int
	for _, part := range strings.Fields(strings.ReplaceAll(text, "-", " -")) {
		n, err := strconv.ParseFloat(part, 64)
		if err != nil {
			t.Fatalf("path data %q: %v", text, err)
		}
		list = append(list, thousandths(n))
	}
	return list
}

// charted returns the chart of a piece, read back.
func charted(t tester, look draw.Look, p garment.Piece) picture {
	t.Helper()
	var svg bytes.Buffer
	if err := draw.Chart(&svg, look, p); err != nil {
		t.Fatal(err)
	}
	return read(t, svg.Bytes())
}
