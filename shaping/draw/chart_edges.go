package draw

import (
	"slices"

	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Where a wale begins or ends, the line says what its stitches are: a thick one is closed,
// cast on or bound off; dashes are open stitches, live on waste yarn; dots are stitches that
// waited on hold till the end. Nothing of that is told by colour.

// finish is what the stitches of an edge are.
type finish struct {
	name string // class of its path
	says string // in the key
	dash string // of its line; empty for a line without gaps
	of   func(begins bool, r run) bool
}

// finishes are the sorts of edges in the order of the key.
var finishes = [...]finish{
	{"closed", "closed edge: cast on or bound off", "", func(begins bool, r run) bool {
		return begins && (r.begins == shaping.DoCastOn || r.begins == shaping.DoCastOnEdge) || !begins && r.ends == shaping.DoBindOff
	}},
	{"live", "live stitches, on waste yarn", "1.5 1.1", func(begins bool, r run) bool {
		return !begins && r.ends == shaping.DoWaste && !r.waitedLong
	}},
	{"waited", "live stitches that waited on hold", "0 1.3", func(begins bool, r run) bool {
		return !begins && r.ends == shaping.DoWaste && r.waitedLong
	}},
}

const (
	finishWidth  svgw.Number = 700
	outlineWidth svgw.Number = 260
)

// edges draws the edges of the cloth: its outline thin, and where wales begin and end what
// they are.
func (c *chart) edges() {
	var sides svgw.Path
	c.upright(&sides)
	c.stroke("sides", &sides, outlineWidth)
	for _, f := range finishes {
		var p svgw.Path
		for _, begins := range []bool{true, false} {
			c.level(&p, f, begins)
		}
		c.finish(f, &p)
	}
}

// level draws the ends of wales that are of a sort, neighbours of one height in one line.
func (c *chart) level(p *svgw.Path, f finish, begins bool) {
	var lines [][2]int // of each open line the first wale and its height
	for i := range len(c.fabric.wales) + 1 {
		var heights []int
		if i < len(c.fabric.wales) {
			for _, r := range c.fabric.wales[i] {
				if r.to > r.from && c.finishOf(f, begins, r) {
					heights = append(heights, r.end(begins))
				}
			}
		}
		lines = slices.DeleteFunc(lines, func(line [2]int) bool {
			if slices.Contains(heights, line[1]) {
				return false
			}
			p.Move(c.grid.xs[line[0]], c.grid.ys[line[1]]).Right(c.grid.xs[i] - c.grid.xs[line[0]])
			return true
		})
		for _, height := range heights {
			if !slices.ContainsFunc(lines, func(line [2]int) bool { return line[1] == height }) {
				lines = append(lines, [2]int{i, height})
			}
		}
	}
}

// end returns the height at which a run begins or ends.
func (r run) end(begins bool) int {
	if begins {
		return r.from
	}
	return r.to
}

// finishOf reports whether an end of a run is of a sort: a cast on in waste yarn leaves
// live stitches.
func (c *chart) finishOf(f finish, begins bool, r run) bool {
	if begins && r.begins == shaping.DoCastOn && c.piece.Spec.Start.Edge == garment.WasteEdge {
		return f.name == "live"
	}
	return f.of(begins, r)
}

func (c *chart) finish(f finish, p *svgw.Path) {
	if f.dash == "" {
		c.stroke(f.name, p, finishWidth)
		return
	}
	attrs := []svgw.Attr{svgw.A("stroke-dasharray", f.dash)}
	if f.name == "waited" {
		attrs = append(attrs, svgw.A("stroke-linecap", "round"))
	}
	c.stroke(f.name, p, finishWidth, attrs...)
}

// upright draws the sides of wales that have no neighbour there.
func (c *chart) upright(p *svgw.Path) {
	n := len(c.fabric.wales)
	covered := func(i, level int) bool {
		if i < 0 || i >= n {
			return false
		}
		for _, r := range c.fabric.wales[i] {
			if r.from < level && level <= r.to {
				return true
			}
		}
		return false
	}
	for i := range n + 1 {
		begun := -1
		for level := 1; level <= c.fabric.height+1; level++ {
			edge := level <= c.fabric.height && covered(i-1, level) != covered(i, level)
			switch {
			case edge && begun < 0:
				begun = level - 1
			case !edge && begun >= 0:
				p.Move(c.grid.xs[i], c.grid.ys[begun]).Down(c.grid.ys[level-1] - c.grid.ys[begun])
				begun = -1
			}
		}
	}
}

// drawnLine draws the outline that the steps follow.
func (c *chart) drawnLine() {
	var p svgw.Path
	for i, at := range c.outline.points() {
		to := c.grid.place(at).rounded()
		if i == 0 {
			p.Move(to.x, to.y)
		} else {
			p.Line(to.x, to.y)
		}
	}
	c.stroke("drawn", &p, 400, svgw.A("stroke", accent), svgw.A("stroke-linejoin", "round"))
}
