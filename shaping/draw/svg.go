package draw

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping/garment"
)

// accent is the colour of the drawn line. It stands out from white and from black; what
// it says is said by the form of the line as well.
const accent = "#c4472b"

// begin opens a picture of a size on paper, with its title and description.
func (l Look) begin(w io.Writer, kind string, width, height svgw.Number, pieces []garment.Piece, title string, describe func() string) canvas {
	s := svgw.New(w)
	names := namesOf(pieces)
	id := l.ID
	if id == "" {
		id = kind + "-" + strings.ReplaceAll(names[0], " ", "-")
	}
	attrs := []svgw.Attr{
		svgw.A("xmlns", "http://www.w3.org/2000/svg"),
		svgw.A("viewBox", fmt.Sprintf("0 0 %v %v", width, height)),
	}
	if !l.Inline || l.sized {
		attrs = append(attrs, svgw.A("width", width.String()+"mm"), svgw.A("height", height.String()+"mm"))
	}
	attrs = append(attrs, svgw.A("role", "img"), svgw.A("aria-labelledby", id+"-title "+id+"-desc"),
		svgw.A("font-family", "sans-serif"), svgw.A("fill", "currentColor"))
	s.Open("svg", attrs...)
	text := title + ": " + strings.Join(names, ", ")
	if named := oneline.Of(pieces[0].Spec.Title); named != "" {
		text = named + ". " + text
	}
	s.Text("title", text, svgw.A("id", id+"-title"))
	s.Text("desc", describe(), svgw.A("id", id+"-desc"))
	if !l.Inline {
		s.Leaf("rect", svgw.N("width", width), svgw.N("height", height), svgw.A("fill", "#fff"))
	}
	return canvas{s}
}

func namesOf(pieces []garment.Piece) []string {
	var names []string
	for _, p := range pieces {
		names = append(names, p.Name())
	}
	return names
}

// canvas is what parts of a picture are drawn on.
type canvas struct{ *svgw.Writer }

// stroke draws a path as lines, if it has any.
func (c canvas) stroke(class string, p *svgw.Path, width svgw.Number, attrs ...svgw.Attr) {
	if p.IsEmpty() {
		return
	}
	all := []svgw.Attr{svgw.A("class", class), svgw.A("d", p.String()), svgw.A("fill", "none")}
	if !has(attrs, "stroke") {
		all = append(all, svgw.A("stroke", "currentColor"))
	}
	all = append(all, svgw.N("stroke-width", width))
	c.Leaf("path", append(all, attrs...)...)
}

// through returns a line through points as they lie on paper.
func through(points []point, place func(point) point) *svgw.Path {
	p := &svgw.Path{}
	for i, at := range points {
		if to := place(at); i == 0 {
			p.Move(to.x, to.y)
		} else {
			p.Line(to.x, to.y)
		}
	}
	return p
}

func has(attrs []svgw.Attr, name string) bool {
	for _, a := range attrs {
		if a.Name == name {
			return true
		}
	}
	return false
}

// label returns the attributes of a text: its place, its size, and which part of it stands
// there.
func label(x, y, size svgw.Number, anchor string, attrs ...svgw.Attr) []svgw.Attr {
	all := []svgw.Attr{svgw.N("x", x), svgw.N("y", y), svgw.N("font-size", size)}
	if anchor != "" {
		all = append(all, svgw.A("text-anchor", anchor))
	}
	return append(all, attrs...)
}
