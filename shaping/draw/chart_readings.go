package draw

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
)

// reading is what the counter shows at a step, in the hand the row.
type reading struct {
	text   string
	height int
}

// readings writes at both sides what the row counter shows at each step there.
func (c *chart) readings() {
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		c.readingsAt(side)
	}
}

func (c *chart) readingsAt(side shaping.Side) {
	list := c.readingsOf(side)
	d := c.grid
	x, anchor, toward := d.left()-7_000, "end", svgw.Number(1)
	if d.side(side) == shaping.Right {
		x, anchor, toward = d.right()+7_000, "start", -1
	}
	var wanted []svgw.Number
	for _, r := range list {
		wanted = append(wanted, d.ys[r.height])
	}
	top := d.ys[len(d.ys)-1]
	placed := spread(wanted, readingGap, top-6_000, d.ys[0])
	c.Text("text", c.counted(), label(x, placed[0]-2*readingGap, labelSize, anchor, svgw.A("font-style", "italic"))...)
	var leaders svgw.Path
	c.Open("g", svgw.A("class", "readings"), svgw.N("font-size", labelSize), svgw.A("text-anchor", anchor))
	for i, r := range list {
		c.Text("text", r.text, svgw.N("x", x), svgw.N("y", placed[i]+labelSize/3))
		leaders.Move(x+toward*700, placed[i]).Line(x+toward*4_500, wanted[i]).Line(c.edgeAt(side, r.height)-toward*400, wanted[i])
	}
	c.Close()
	c.stroke("leaders", &leaders, 100, svgw.A("stroke-opacity", ".6"))
}

// counted says what the readings are.
func (c *chart) counted() string {
	if c.piece.Work.Place == shaping.Hand {
		return "row"
	}
	return "counter"
}

// readingsOf returns the readings at one side, from the top: those of the steps of this
// edge or of this half, and those of the cast on and of the end.
func (c *chart) readingsOf(side shaping.Side) []reading {
	top := c.outline.top(side)
	list := []reading{{"000", 0}, {c.number(top + 1), top}}
	if c.piece.Work.Place == shaping.Hand {
		list = []reading{{"1", 0}, {c.number(top), top}}
	}
	for _, m := range c.fabric.marks {
		of := m.edge // where both halves have it, each has its own
		switch m.panel {
		case shaping.LeftHalf:
			of = shaping.Left
		case shaping.RightHalf:
			of = shaping.Right
		}
		height := m.height
		if m.step.Stitches > 0 {
			height--
		}
		r := reading{c.number(m.step.Row), height}
		if of == side && !slices.Contains(list, r) {
			list = append(list, r)
		}
	}
	slices.SortStableFunc(list, func(a, b reading) int { return b.height - a.height })
	return slices.CompactFunc(list, func(a, b reading) bool { return a.height == b.height })
}

// number says where a row is found: what the counter shows before it, in the hand its own
// number.
func (c *chart) number(row int) string {
	if c.piece.Work.Place == shaping.Hand {
		return strconv.Itoa(row)
	}
	return fmt.Sprintf("%03d", row-1)
}

// edgeAt returns where on paper the outermost stitch on one side lies at a height.
func (c *chart) edgeAt(side shaping.Side, height int) svgw.Number {
	n := len(c.fabric.wales)
	for k := range n {
		i := k
		if side == shaping.Right {
			i = n - 1 - k
		}
		if slices.ContainsFunc(c.fabric.wales[i], func(r run) bool { return r.from <= height && height <= r.to }) {
			if side == shaping.Right {
				return c.grid.xs[i+1]
			}
			return c.grid.xs[i]
		}
	}
	return c.grid.xs[0]
}

// needles writes the names of needles below the cells: the outermost ones and every tenth,
// or fewer where these would touch.
func (c *chart) needles() {
	d := c.grid
	const room svgw.Number = 7_500
	every := 10
	for _, wider := range []int{20, 50, 100} {
		if d.cell()*svgw.Number(every) < room {
			every = wider
		}
	}
	y := d.ys[0] + 5_200
	var ticks svgw.Path
	c.Open("g", svgw.A("class", "needles"), svgw.N("font-size", labelSize), svgw.A("text-anchor", "middle"))
	say := func(n shaping.Needle) {
		left, right := d.wale(n)
		ticks.Move((left+right)/2, d.ys[0]+900).Down(1_200)
		text := n.String()
		if c.piece.Work.Place == shaping.Hand {
			text = text[1:]
		}
		c.Text("text", text, svgw.N("x", (left+right)/2), svgw.N("y", y))
	}
	first, last := d.needles.First, d.needles.Last
	say(first)
	say(last)
	for n := range d.needles.All() {
		number := max(int(n), -int(n))
		near := min(n.Index()-first.Index(), last.Index()-n.Index())
		if number%every == 0 && d.cell()*svgw.Number(near) >= room {
			say(n)
		}
	}
	c.Close()
	c.stroke("ticks", &ticks, 120)
}
