package draw

import (
	"fmt"
	"slices"
	"strings"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// figure is the outline of one form with its lengths: at the left of it rows and stitches
// at its corners, at the right the lengths that go up, above, below and in it those that go
// across.
type figure struct {
	canvas
	group
	flipped       bool
	scale         svgw.Number
	at            point // its upper left corner
	width, height svgw.Number
	points        []point // of the outline, at full size
	least, most   point   // its corners
}

// Sizes of a figure's parts, in thousandths of a millimetre.
const (
	cornersWide svgw.Number = 24_500
	lengthsWide svgw.Number = 34_000
	figureHead  svgw.Number = 20_500
	figureFoot  svgw.Number = 14_000
	noteSize    svgw.Number = 2_700
	noteLine    svgw.Number = 3_300
)

func newFigure(g group, look Look, scale svgw.Number) *figure {
	f := &figure{group: g, scale: scale, points: slices.Clone(g.points), flipped: look.flips(g.piece)}
	if f.flipped {
		for i := range f.points {
			f.points[i].x = -f.points[i].x
		}
	}
	f.least, f.most = bounds(f.points)
	f.width = max(cornersWide+(f.most.x-f.least.x)/scale+lengthsWide, 60_000)
	_, notes := f.noteTops()
	turns := f.turns()
	f.height = max(figureHead+f.most.y/scale+figureFoot, notes+1_000, figureHead+cornerGap(turns)*svgw.Number(len(turns))+noteLine)
	return f
}

// place returns where a point of the piece lies on the page.
func (f *figure) place(p point) point {
	return point{f.at.x + cornersWide + (p.x-f.least.x)/f.scale, f.at.y + figureHead + (f.most.y-p.y)/f.scale}.rounded()
}

func (f *figure) write() {
	middle := f.place(point{(f.least.x + f.most.x) / 2, 0}).x
	f.Text("text", f.name, label(middle, f.at.y+4_600, textSize, "middle", svgw.A("font-weight", "bold"))...)
	f.line()
	f.corners()
	f.lengths()
	f.widths()
}

// line draws the outline, and where its band ends.
func (f *figure) line() {
	outline := through(f.points, f.place).Close()
	f.Leaf("path", svgw.A("class", "outline"), svgw.A("d", outline.String()), svgw.A("fill-opacity", ".07"),
		svgw.A("stroke", "currentColor"), svgw.N("stroke-width", 500), svgw.A("stroke-linejoin", "round"))
	if band := f.piece.Heights.Band; band > 0 {
		var line svgw.Path
		first, last := f.place(point{f.points[0].x, f.up(band)}), f.place(point{f.points[len(f.points)-1].x, f.up(band)})
		line.Move(first.x, first.y).Line(last.x, last.y)
		f.stroke("band", &line, 200, svgw.A("stroke-dasharray", bandDash))
	}
}

func (f *figure) up(rows int) svgw.Number { return f.drawn.up(rows) }

// corner is a height at which the outline turns.
type corner struct {
	rows     int
	stitches []string
}

// turns lists the corners from the top: rows from the cast on, and the stitches in work there.
func (f *figure) turns() []corner {
	h, w := heights(f.piece), f.piece.Widths
	list := []corner{{0, st(w.CastOn)}, {h.Underarm, f.inWork(h.Underarm)}}
	if w.Waist > 0 {
		list = append(list, corner{h.Waist, f.inWork(h.Waist)})
	}
	if h.Band > 0 {
		list = append(list, corner{h.Band, []string{"band"}})
	}
	switch {
	case !f.drawn.isSleeve():
		list = append(list, f.trunkTurns()...)
	case h.Cap > 0:
		list = append(list, corner{h.Top(), st(w.Flat)})
	}
	slices.SortStableFunc(list, func(a, b corner) int { return b.rows - a.rows })
	var kept []corner
	for _, c := range list {
		if k := len(kept) - 1; k >= 0 && kept[k].rows == c.rows {
			kept[k].stitches = append(kept[k].stitches, c.stitches...)
		} else {
			kept = append(kept, c)
		}
	}
	return kept
}

// inWork says how many stitches the row has that ends at a height, if it is one of the body.
func (f *figure) inWork(rows int) []string {
	for _, row := range f.piece.Work.Rows {
		if row.Row == rows && row.Panel == shaping.Body {
			return st(row.Knit.Len())
		}
	}
	return nil
}

func st(n int) []string { return []string{fmt.Sprintf("%d st", n)} }

// trunkTurns lists the corners of a front or a back above the underarm.
func (f *figure) trunkTurns() []corner {
	h, w := heights(f.piece), f.piece.Widths
	var list []corner
	for _, e := range f.piece.Edges {
		if steps := e.Schedule; e.Name == garment.ArmholeEdge && len(steps) > 0 {
			last := e.FirstRow - 1 + steps[len(steps)-1].Row // when it is knitted the armhole is shaped
			list = append(list, corner{last, f.inWork(last)})
			break
		}
	}
	neck := "neck"
	if w.Flat > 0 {
		neck = fmt.Sprintf("neck %d st", w.Flat)
	}
	return append(list, corner{h.NeckStart(), []string{neck}}, corner{h.Tip(), st(w.Shoulder)}, corner{h.Top(), nil})
}

// corners writes rows and stitches beside the corners, at the left.
func (f *figure) corners() {
	list := f.turns()
	var wanted []svgw.Number
	for _, c := range list {
		wanted = append(wanted, f.level(c.rows))
	}
	gap := cornerGap(list)
	placed := spread(wanted, gap, f.at.y+figureHead+300, f.at.y+f.height-gap+noteLine)
	x := f.at.x + cornersWide - 5_500
	var leaders svgw.Path
	f.Open("g", svgw.A("class", "corners"), svgw.N("font-size", noteSize), svgw.A("text-anchor", "end"))
	for i, c := range list {
		for k, text := range append([]string{fmt.Sprintf("%d rows", c.rows)}, c.stitches...) {
			f.Text("text", text, svgw.N("x", x), svgw.N("y", placed[i]+noteLine*svgw.Number(k)))
		}
		leaders.Move(x+500, placed[i]-800).Line(x+2_500, wanted[i]).Line(f.edge(c.rows)-500, wanted[i])
	}
	f.Close()
	f.stroke("leaders", &leaders, 120, svgw.A("stroke-opacity", ".6"))
}

// cornerGap returns how far the texts about corners stand apart, so that none touches the
// next.
func cornerGap(list []corner) svgw.Number {
	lines := 0
	for _, c := range list {
		lines = max(lines, 1+len(c.stitches))
	}
	return noteLine*svgw.Number(lines) + 800
}

// edge returns where the outermost point of the outline at the left lies at a height.
func (f *figure) edge(rows int) svgw.Number {
	y, least := f.up(rows), f.most.x
	for i, p := range f.points {
		q := f.points[(i+1)%len(f.points)]
		switch {
		case y < min(p.y, q.y) || y > max(p.y, q.y):
		case p.y == q.y:
			least = min(least, p.x, q.x)
		default:
			least = min(least, p.x+(q.x-p.x)*(y-p.y)/(q.y-p.y))
		}
	}
	return f.place(point{least, y}).x
}

// size returns a length of the piece by its name; ok is false if there is none.
func (f *figure) size(name string) (size garment.Size, ok bool) {
	for _, s := range f.piece.Sizes {
		if s.Name == name {
			return s, true
		}
	}
	return garment.Size{}, false
}

// text returns a length as it will be knitted, and as it was asked for where that reads
// otherwise.
func (f *figure) text(s garment.Size) (knitted, asked string) {
	knitted, asked = f.length(s.Knitted), f.length(s.Asked)
	if asked == knitted {
		return knitted, ""
	}
	return knitted, "asked " + asked
}

// length returns a length in the unit of the spec, to a millimetre or a hundredth of an inch.
func (f *figure) length(l gauge.Length) string {
	unit, places := f.piece.Spec.Units, 1
	if unit == gauge.Inch {
		places = 2
	}
	return l.Format(unit, places)
}

func (f *figure) says() string {
	var said []string
	for _, s := range f.piece.Sizes {
		text := f.called(s) + " " + f.length(s.Knitted)
		said = append(said, text)
	}
	return f.name + ": " + strings.Join(said, ", ") + "."
}

// called is how a size is called beside the outline: that of a body without a hem of its own
// is its width.
func (f *figure) called(s garment.Size) string {
	switch s.Name {
	case "width":
		if _, hem := f.size("hem"); !hem && !f.drawn.isSleeve() {
			return "width"
		}
		return "at the underarm"
	case "length":
		return "to underarm"
	case "waistHeight":
		return "to waist"
	case "inset":
		return "armhole inset"
	case "neckWidth":
		return "neck"
	case "neckDepth":
		return "neck depth"
	case "drop":
		return "shoulder drop"
	case "height":
		return "whole height"
	case "flat":
		return "top"
	case "capEdge":
		return "along the cap"
	}
	return s.Name // such as cuff, hem, armhole, shoulder
}
