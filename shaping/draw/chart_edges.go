package draw

import (
	"slices"

	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
)

// Where a wale begins or ends, the line says what its stitches are: a thick one is closed,
// cast on or bound off; an open loop over each stitch is live on waste yarn; dots are stitches
// that waited on hold till the end. Nothing of that is told by colour.

// finish is what the stitches of an edge are.
type finish struct {
	name string // class of its path
	says string // in the key
	of   func(begins bool, r run) bool
	// line draws so many stitches from a place to the right; high is the height of a loop,
	// less than 0 below the line.
	line  func(p *svgw.Path, x, y, width svgw.Number, stitches int, high svgw.Number)
	width svgw.Number
	attrs []svgw.Attr
}

// finishes returns the sorts of edges in the order of the key.
func finishes() []finish {
	return []finish{
		{"closed", "closed edge: cast on or bound off", func(begins bool, r run) bool {
			return begins && (r.begins == shaping.DoCastOn || r.begins == shaping.DoCastOnEdge) || !begins && r.ends == shaping.DoBindOff
		}, level, finishWidth, nil},
		{"live", "live stitches, on waste yarn", func(begins bool, r run) bool {
			return begins && r.begins == shaping.DoWaste || !begins && r.ends == shaping.DoWaste && !r.waitedLong
		}, loops, loopWidth, nil},
		{"waited", "live stitches that waited on hold", func(begins bool, r run) bool {
			return !begins && r.ends == shaping.DoWaste && r.waitedLong
		}, level, finishWidth, []svgw.Attr{svgw.A("stroke-dasharray", "0 1.3"), svgw.A("stroke-linecap", "round")}},
	}
}

// level draws a line.
func level(p *svgw.Path, x, y, width svgw.Number, _ int, _ svgw.Number) { p.Move(x, y).Right(width) }

// loops draws an open loop for each stitch.
func loops(p *svgw.Path, x, y, width svgw.Number, stitches int, high svgw.Number) {
	for i := range svgw.Number(stitches) {
		left, right := x+width*i/svgw.Number(stitches), x+width*(i+1)/svgw.Number(stitches)
		in := (right - left) / 5
		p.Move(left+in, y).Down(-high).Right(right - left - 2*in).Down(high)
	}
}

const (
	finishWidth  svgw.Number = 700
	outlineWidth svgw.Number = 260
	loopWidth    svgw.Number = 250
	bandDash                 = "1.4 1"
)

// edges draws the edges of the cloth: its outline thin, and where wales begin and end what
// they are.
func (c *chart) edges() {
	var sides svgw.Path
	c.upright(&sides)
	c.stroke("sides", &sides, outlineWidth)
	for _, f := range finishes() {
		var p svgw.Path
		for _, begins := range []bool{true, false} {
			c.ends(&p, f, begins)
		}
		c.stroke(f.name, &p, f.width, f.attrs...)
	}
}

// ends draws the ends of wales that are of a sort, neighbours of one height in one line.
func (c *chart) ends(p *svgw.Path, f finish, begins bool) {
	var lines [][2]int // of each open line the first wale and its height
	for i := range len(c.fabric.wales) + 1 {
		var heights []int
		if i < len(c.fabric.wales) {
			for _, r := range c.fabric.wales[i] {
				if r.to > r.from && f.of(begins, r) {
					heights = append(heights, r.end(begins))
				}
			}
		}
		lines = slices.DeleteFunc(lines, func(line [2]int) bool {
			if slices.Contains(heights, line[1]) {
				return false
			}
			x, end := c.grid.xs[line[0]], c.grid.xs[i]
			high := min(c.grid.rowHigh(), 900)
			if begins {
				high = -high
			}
			f.line(p, min(x, end), c.grid.ys[line[1]], max(x, end)-min(x, end), i-line[0], high)
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

// drawnLine draws the outline that the steps follow, and where the band ends.
func (c *chart) drawnLine() {
	p := through(c.outline.points(), func(at point) point { return c.grid.place(at).rounded() })
	c.stroke("drawn", p, 350, svgw.A("stroke", accent), svgw.A("stroke-linejoin", "round"))
	if band := c.piece.Heights.Band; band > 0 && band < len(c.grid.ys) {
		var line svgw.Path
		left, right := c.edgeAt(c.grid.needles.All(), shaping.Left, band), c.edgeAt(c.grid.needles.All(), shaping.Right, band)
		line.Move(min(left, right), c.grid.ys[band]).Right(max(left, right) - min(left, right))
		c.stroke("band", &line, 250, svgw.A("stroke-dasharray", bandDash))
	}
}
