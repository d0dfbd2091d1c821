package draw

import (
	"slices"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// point is a place on a piece that lies flat, in thousandths of a millimetre at full size:
// x from the middle of the bed to the right, y from the cast-on edge up.
type point struct{ x, y svgw.Number }

// rounded returns the point to a hundredth of a millimetre.
func (p point) rounded() point { return point{(p.x + 5) / 10 * 10, (p.y + 5) / 10 * 10} }

// outline is a piece as it was drawn.
type outline struct {
	piece  garment.Piece
	stitch size      // of one
	paths  [][]point // of the edges of the piece, each from its lower end
	seam   int       // stitches left out at each outer edge
	level  bool      // both sides lie at one height, though one may be worked a row later
}

// drawn returns the outline of the whole cloth, where the steps follow it.
func drawn(p garment.Piece) outline {
	o := outline{piece: p, stitch: sizeOf(p.Gauge)}
	for _, e := range p.Edges {
		o.paths = append(o.paths, path(e))
	}
	return o
}

// blocked returns the outline of the whole cloth as it should lie when it is blocked.
func (o outline) blocked() outline {
	o.level = true
	return o
}

// finished returns the outline as it lies, without what the seams take.
func (o outline) finished() outline {
	o.level, o.seam = true, o.piece.Widths.Seam
	return o
}

// size is how wide and how high a stitch is, in millionths of a millimetre.
type size struct{ wide, high int64 }

func sizeOf(g gauge.Gauge) size {
	return size{g.Width(1).Millimetres().Shift(6).IntPart(), g.Height(1).Millimetres().Shift(6).IntPart()}
}

// full returns a length in thousandths of a millimetre.
func full(l gauge.Length) svgw.Number {
	return svgw.Number(l.Millimetres().Shift(3).Round(0).IntPart())
}

// across returns the width of so many stitches, less than 0 for fewer than none.
func (o outline) across(stitches int) svgw.Number {
	return thousandths(o.stitch.wide * int64(stitches))
}

// up returns the height of so many rows.
func (o outline) up(rows int) svgw.Number { return thousandths(o.stitch.high * int64(rows)) }

// thousandths rounds millionths.
func thousandths(millionths int64) svgw.Number {
	if millionths < 0 {
		return -thousandths(-millionths)
	}
	return svgw.Number((millionths + 500) / 1000)
}

// boundary returns how far the end of a span on one side lies from the middle.
func (o outline) boundary(s shaping.Span, side shaping.Side) svgw.Number {
	if side == shaping.Left {
		return o.across(s.First.Index())
	}
	return o.across(s.Last.Index() + 1)
}

// inward returns a distance from an edge into the piece.
func inward(edge shaping.Side, by svgw.Number) svgw.Number {
	if edge == shaping.Left {
		return by
	}
	return -by
}

// heights returns the heights of a piece as its sizes have them: of one of two fronts some may
// be a row more than those of a front in one piece.
func heights(p garment.Piece) garment.Heights {
	h := p.Heights
	for _, s := range p.Sizes {
		switch s.Name {
		case "length":
			h.Underarm = s.Count
		case "armhole":
			h.Armhole = s.Count
		case "drop":
			h.Drop = s.Count
		case "neckDepth":
			h.Neck = s.Count
		}
	}
	return h
}

// bounds returns the lower left and the upper right corner of what lies about points.
func bounds(points []point) (least, most point) {
	least, most = points[0], points[0]
	for _, p := range points {
		least = point{min(least.x, p.x), min(least.y, p.y)}
		most = point{max(most.x, p.x), max(most.y, p.y)}
	}
	return least, most
}

// points returns the outline from the lower left corner once round, clockwise.
func (o outline) points() []point {
	if o.piece.Outer().IsValid() {
		return o.frontPoints()
	}
	left, right := o.outer(shaping.Left), o.outer(shaping.Right)
	slices.Reverse(right)
	if o.isSleeve() {
		return slices.Concat(left, right)
	}
	down, up := o.neck(shaping.Left), o.neck(shaping.Right)
	slices.Reverse(down)
	return slices.Concat(left, down, up, right)
}

// frontPoints returns the outline of one of two fronts.
func (o outline) frontPoints() []point {
	outer := o.piece.Outer()
	edge, inner := o.outer(outer), o.neck(outer)
	first, back := edge, inner
	if outer == shaping.Right {
		first, back = inner, edge
	}
	slices.Reverse(back)
	return slices.Concat(first, back)
}

func (o outline) isSleeve() bool { return o.piece.Widths.Neck == 0 }

// outer returns the edge with side, armhole and shoulder, or cap, from the cast on to the
// neck point, or the top.
func (o outline) outer(side shaping.Side) []point {
	h := heights(o.piece)
	x := o.boundary(o.piece.Work.Panels[0].Needles, side)
	points := []point{{x, 0}}
	add := func(by, y svgw.Number) {
		x += inward(side, by)
		points = append(points, point{x, y})
	}
	base := o.across(o.piece.Widths.BindOff)
	tip := -1 // which of the points is that of a shoulder
	for _, i := range o.edges(side) {
		e := o.piece.Edges[i]
		from := o.up(e.FirstRow - 1)
		switch e.Name {
		case garment.ArmholeEdge, garment.CapEdge:
			from = o.up(h.Underarm) // at both edges, though one is shaped a row later
			add(0, from)
			add(base, from)
			base = 0
		case garment.ShoulderEdge:
			from = o.up(o.drawnTip(e))
			o.leaveUnderarm(&base, add)
			tip = len(points)
		}
		add(0, from)
		foot := x
		for _, p := range o.paths[i] {
			points = append(points, point{foot + inward(side, p.x), min(from+p.y, o.up(o.top(side)))})
		}
		x = foot + inward(side, o.across(e.Stitches))
	}
	o.leaveUnderarm(&base, add)
	switch {
	case o.isSleeve():
		add(0, o.up(h.Top()))
		tip = len(points)
	case tip < 0:
		tip = len(points)
		add(0, o.up(o.tip(side)))
		add(o.across(o.piece.Widths.Shoulder), o.up(o.top(side)))
	}
	return o.sewn(side, points, tip)
}

// sewn takes off an edge what the seam does, up to the tip of the shoulder, and of the
// shoulder what lies beyond that.
func (o outline) sewn(side shaping.Side, points []point, tip int) []point {
	if o.seam == 0 {
		return points
	}
	by := inward(side, o.across(o.seam))
	edge := slices.Clone(points[:tip])
	for i := range edge {
		edge[i].x += by
	}
	if tip == len(points) {
		return edge
	}
	seam := points[tip].x + by
	for i, to := range points[tip+1:] {
		from := points[tip+i]
		if beyond := inward(side, to.x-seam); beyond >= 0 && to.x != from.x {
			cut := point{seam, from.y + (to.y-from.y)*(seam-from.x)/(to.x-from.x)}
			return append(append(edge, cut), points[tip+1+i:]...)
		}
	}
	return append(edge, points[tip+1:]...)
}

// tip returns the rows of the outer end of a shoulder. As it is knitted, one may lie a row
// off the other.
func (o outline) tip(side shaping.Side) int {
	panels := o.piece.Work.Panels
	for _, name := range []string{shaping.Body, shaping.HalfAt(side)} {
		panel, _ := panels.Panel(name)
		steps := panel.Steps(side).Between(o.piece.ShoulderRow, panel.LastRow)
		switch {
		case o.level || len(steps) == 0:
		case steps[0].Method == shaping.Hold:
			return steps[0].Row // the closing row lies on top
		default:
			return steps[0].Row - 1
		}
	}
	return heights(o.piece).Tip()
}

// drawnTip returns the rows of the outer end of a shoulder that the spec draws. Its first
// steps may lie higher, where it is steep.
func (o outline) drawnTip(e garment.Edge) int {
	switch {
	case o.level:
		return heights(o.piece).Tip()
	case len(e.Schedule) > 0 && e.Schedule[0].Method == shaping.Hold:
		return e.FirstRow // the closing row lies on top
	}
	return e.FirstRow - 1
}

// top returns the rows at the neck point, or at the top of a sleeve.
func (o outline) top(side shaping.Side) int {
	if half, ok := o.piece.Work.Panels.Panel(shaping.HalfAt(side)); ok && !o.level {
		return half.LastRow
	}
	if o.piece.Outer().IsValid() && !o.level {
		return o.piece.Work.Panels[0].LastRow
	}
	return heights(o.piece).Top()
}

// leaveUnderarm takes what goes at once at the underarm, where nothing is drawn above it.
func (o outline) leaveUnderarm(base *svgw.Number, add func(by, y svgw.Number)) {
	if *base != 0 {
		y := o.up(heights(o.piece).Underarm)
		add(0, y)
		add(*base, y)
		*base = 0
	}
}

// neck returns the edge of the neck at one side of the wearer's middle, from the lower end
// up to the neck point: of one of two fronts its inner edge from the cast on.
func (o outline) neck(half shaping.Side) []point {
	whole := o
	whole.seam = 0
	outer := whole.outer(half)
	top := outer[len(outer)-1]
	panel, opened := o.half(half)
	foot := o.boundary(panel.Needles, half.Opposite())
	var points []point
	if opened {
		points = append(points, point{foot, 0})
	}
	for i, e := range o.piece.Edges {
		if e.Name != garment.NeckEdge || e.Panel != panel.Name {
			continue
		}
		from := o.up(e.FirstRow - 1)
		if o.level {
			from = o.up(heights(o.piece).NeckStart())
		}
		points = append(points, point{foot, from})
		start := top.x - inward(half.Opposite(), o.across(e.Stitches))
		for _, p := range o.paths[i] {
			points = append(points, point{start + inward(half.Opposite(), p.x), min(from+p.y, top.y)})
		}
	}
	return append(points, top)
}

// half returns the panel with the neck at one side: a half, or the body of one of two
// fronts.
func (o outline) half(side shaping.Side) (panel shaping.Panel, opened bool) {
	if o.piece.Outer().IsValid() {
		return o.piece.Work.Panels[0], true
	}
	panel, _ = o.piece.Work.Panels.Panel(shaping.HalfAt(side))
	return panel, false
}

// edges returns which of the piece's edges lie at one outer edge, from below.
func (o outline) edges(side shaping.Side) []int {
	var edges []int
	for i, e := range o.piece.Edges {
		if e.Name != garment.NeckEdge && e.Side == side {
			edges = append(edges, i)
		}
	}
	slices.SortStableFunc(edges, func(a, b int) int { return o.piece.Edges[a].FirstRow - o.piece.Edges[b].FirstRow })
	return edges
}

// path returns points on a drawn edge, from its lower end.
func path(e garment.Edge) []point {
	edge, err := curve.ParsePath(e.Path)
	if err != nil {
		return nil // no edge of package garment has such a path
	}
	var points []point
	for _, p := range edge.Points() {
		points = append(points, point{full(p.Across), full(p.Up)})
	}
	return points
}
