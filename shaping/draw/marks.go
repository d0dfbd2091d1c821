package draw

import (
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
)

// What happens to a stitch is told by the shape of its mark, so that it is seen without
// colour: a diamond is put on hold, a block bound off, a wedge that points into the piece
// decreased, an arrowhead that points out of it increased, a cross cast on at the edge.

// kind is one sort of mark.
type kind struct {
	name string // class of its path
	says string // in the key
	of   func(shaping.Step) bool
	draw func(p *svgw.Path, x, y, a, b svgw.Number) // about (x, y), a to the piece's inside, b up and down
	fill bool
}

// kinds returns the marks in the order of the key.
func kinds() []kind {
	return []kind{
		{"hold", "put on hold", stepBy(shaping.Hold, false), diamond, true},
		{"bound-off", "bound off", stepBy(shaping.BindOff, false), block, true},
		{"decrease", "decreased: the point is turned inwards", stepBy(shaping.Fashioned, false), wedge, true},
		{"increase", "increased: the point is turned outwards", stepBy(shaping.Fashioned, true), arrowhead, false},
		{"cast-on", "cast on at the edge", stepBy(shaping.CastOn, true), cross, false},
	}
}

func stepBy(m shaping.Method, comes bool) func(shaping.Step) bool {
	return func(s shaping.Step) bool { return s.Method == m && (s.Stitches > 0) == comes }
}

func diamond(p *svgw.Path, x, y, a, b svgw.Number) {
	p.Move(x-a, y).Line(x, y-b).Line(x+a, y).Line(x, y+b).Close()
}

func block(p *svgw.Path, x, y, a, b svgw.Number) {
	half := min(max(a, -a), b) * 4 / 5
	p.Box(x-half, y-half, 2*half, 2*half)
}

func wedge(p *svgw.Path, x, y, a, b svgw.Number) {
	p.Move(x-a, y-b).Line(x+a, y).Line(x-a, y+b).Close()
}

func arrowhead(p *svgw.Path, x, y, a, b svgw.Number) {
	p.Move(x+a, y-b).Line(x-a, y).Line(x+a, y+b)
}

func cross(p *svgw.Path, x, y, a, b svgw.Number) {
	p.Move(x-a, y).Line(x+a, y).Move(x, y-b).Line(x, y+b)
}
