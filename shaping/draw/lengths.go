package draw

import (
	"slices"

	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// upright is a length that goes up, between two heights in rows.
type upright struct {
	size     garment.Size
	from, to int
	lane     svgw.Number // from the outline to its line
}

// uprights lists the lengths beside the outline: those with a line from the top, and then
// the others.
func (f *figure) uprights() []upright {
	h := heights(f.piece)
	const near, middle, far svgw.Number = 2_500, 5_000, 7_500
	var lined, others []upright
	for _, u := range []struct {
		name     string
		from, to int
		lane     svgw.Number
	}{
		{"drop", h.Tip(), h.Top(), near},
		{"armhole", h.Underarm, h.Tip(), near},
		{"cap", h.Underarm, h.Top(), near},
		{"height", 0, h.Top(), far},
		{"length", 0, h.Underarm, near},
		{"waistHeight", 0, h.Waist, middle},
		{"neckDepth", 0, 0, 0},
		{"capEdge", 0, 0, 0},
		{"inset", 0, 0, 0},
	} {
		size, ok := f.size(u.name)
		switch {
		case !ok:
		case u.lane > 0:
			lined = append(lined, upright{size, u.from, u.to, u.lane})
		default:
			others = append(others, upright{size, u.from, u.to, u.lane})
		}
	}
	slices.SortStableFunc(lined, func(a, b upright) int { return (b.from + b.to) - (a.from + a.to) })
	return append(lined, others...)
}

// lengths writes the lengths that go up, at the right, each led to its line.
func (f *figure) lengths() {
	right := f.right()
	text := right + 10_500
	var lines, leaders svgw.Path
	list := f.uprights()
	tops, _ := f.noteTops()
	for i, u := range list {
		if u.lane == 0 {
			continue
		}
		high, low := f.level(u.to), f.level(u.from)
		measure(&lines, point{right + u.lane, high}, point{right + u.lane, low})
		y := tops[i] + noteSize*2/3
		on := point{right + u.lane, min(max(y, high), low)}
		leaders.Box(on.x-300, on.y-300, 600, 600).Move(on.x, on.y).Line(text-700, y)
	}
	f.stroke("lengths", &lines, 180)
	f.stroke("leaders", &leaders, 120, svgw.A("stroke-opacity", ".6"))
	f.Open("g", svgw.A("class", "notes"), svgw.N("font-size", noteSize))
	for i, u := range list {
		f.note(text, tops[i], u.size)
	}
	f.Close()
}

// noteTops returns where the notes about the lengths that go up begin: beside the middle of
// its line, or below the one before it; and where the last of them ends.
func (f *figure) noteTops() (tops []svgw.Number, bottom svgw.Number) {
	bottom = f.at.y + figureHead - 1_200
	for _, u := range f.uprights() {
		height, top := f.noteHeight(u.size), bottom
		if u.lane > 0 {
			top = max(top, (f.level(u.from)+f.level(u.to)-height)/2)
		}
		tops = append(tops, top)
		bottom = top + height + 900
	}
	return tops, bottom
}

// right returns where the outline ends at the right.
func (f *figure) right() svgw.Number {
	return f.place(point{f.most.x, 0}).x
}

// level returns where so many rows lie on the page.
func (f *figure) level(rows int) svgw.Number { return f.place(point{0, f.up(rows)}).y }

// noteHeight returns how high the lines about a length are.
func (f *figure) noteHeight(s garment.Size) svgw.Number {
	if _, asked := f.text(s); asked != "" {
		return 3 * noteLine
	}
	return 2 * noteLine
}

// note writes the name of a length and what it is, from a height down.
func (f *figure) note(x, top svgw.Number, s garment.Size) {
	knitted, asked := f.text(s)
	for i, text := range []string{f.called(s), knitted, asked} {
		if text != "" {
			f.Text("text", text, svgw.N("x", x), svgw.N("y", top+noteLine*svgw.Number(i)+noteSize))
		}
	}
}

// measure draws a line with a stroke across each end.
func measure(p *svgw.Path, from, to point) {
	const half svgw.Number = 900
	p.Move(from.x, from.y).Line(to.x, to.y)
	for _, end := range []point{from, to} {
		if from.x == to.x {
			p.Move(end.x-half, end.y).Right(2 * half)
		} else {
			p.Move(end.x, end.y-half).Down(2 * half)
		}
	}
}

// widths writes the lengths that go across: those of the body in it, those of the top above
// it, that of the lower edge below it.
func (f *figure) widths() {
	w, h, o := f.piece.Widths, heights(f.piece), f.drawn
	f.Open("g", svgw.A("class", "notes"), svgw.N("font-size", noteSize), svgw.A("text-anchor", "middle"))
	for _, name := range []string{"hem", "cuff"} {
		if size, ok := f.size(name); ok {
			f.below(size)
		}
	}
	if size, ok := f.size("width"); ok {
		if _, apart := f.size("hem"); apart || f.drawn.isSleeve() {
			f.inside(size, h.Underarm)
		} else {
			f.below(size)
		}
	}
	if size, ok := f.size("waist"); ok {
		f.inside(size, h.Waist)
	}
	if size, ok := f.size("flat"); ok {
		f.above(size, f.span(h.Top(), o.across(w.Flat-2*w.Seam)))
	}
	f.Close()
	if !o.isSleeve() {
		f.overTop()
	}
}

// span returns the ends of a width at a height: about the middle of the piece, and of one of
// two fronts from its inner edge.
func (f *figure) span(rows int, width svgw.Number) [2]point {
	from := (f.least.x + f.most.x - width) / 2
	if outer := f.piece.Outer(); outer.IsValid() {
		from = f.most.x - width
		if shown(outer, f.flipped) == shaping.Right {
			from = f.least.x
		}
	}
	return [2]point{f.place(point{from, f.up(rows)}), f.place(point{from + width, f.up(rows)})}
}

// below writes the width of the lower edge.
func (f *figure) below(s garment.Size) {
	from, to := f.place(f.points[0]), f.place(f.points[len(f.points)-1])
	from.y, to.y = from.y+3_000, to.y+3_000
	f.across(s, from, to, from.y+300)
}

// inside writes a width at a height within the outline, below its line.
func (f *figure) inside(s garment.Size, rows int) {
	ends := f.span(rows, full(s.Knitted))
	f.across(s, ends[0], ends[1], ends[0].y+300)
}

// above writes a width over the outline.
func (f *figure) above(s garment.Size, ends [2]point) {
	y := ends[0].y - 2_500
	f.across(s, point{ends[0].x, y}, point{ends[1].x, y}, y-f.noteHeight(s)-1_300)
}

func (f *figure) across(s garment.Size, from, to point, top svgw.Number) {
	var line svgw.Path
	measure(&line, from, to)
	f.stroke("widths", &line, 180)
	f.note((from.x+to.x)/2, top, s)
}

// overTop writes the widths of neck and shoulder over the outline: that of the neck over its
// middle, that of a shoulder beside its outer end.
func (f *figure) overTop() {
	outer := shaping.Right
	if o := f.piece.Outer(); o.IsValid() {
		outer = o
	}
	o := f.drawn
	edge := o.outer(outer)
	neck := edge[len(edge)-1].x
	tip := neck - inward(outer, o.across(f.piece.Widths.Shoulder-o.seam))
	inner := o.boundary(f.piece.Work.Panels[0].Needles, outer.Opposite()) // of one of two fronts
	if !f.piece.Outer().IsValid() {
		other := o.outer(outer.Opposite())
		inner = other[len(other)-1].x
	}
	at := func(x svgw.Number) svgw.Number {
		if f.flipped {
			x = -x
		}
		return f.place(point{x, 0}).x
	}
	if size, ok := f.size("neckWidth"); ok {
		f.over(size, at(inner), at(neck), (at(inner)+at(neck))/2, "middle")
	}
	if size, ok := f.size("shoulder"); ok {
		beside := max(at(neck), at(tip)) + 1_200
		if shown(outer, f.flipped) == shaping.Left {
			beside = f.at.x + 500
		}
		f.over(size, at(neck), at(tip), beside, "start")
	}
}

// over writes a width over the outline, and what it is at a place beside or over its line.
func (f *figure) over(s garment.Size, from, to, x svgw.Number, anchor string) {
	y := f.at.y + figureHead - 2_500
	var line svgw.Path
	measure(&line, point{from, y}, point{to, y})
	f.stroke("widths", &line, 180)
	f.Open("g", svgw.A("class", "notes"), svgw.N("font-size", noteSize), svgw.A("text-anchor", anchor))
	f.note(x, y-f.noteHeight(s)-1_000, s)
	f.Close()
}
