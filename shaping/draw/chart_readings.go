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
	within bool // a run of equal steps at equal distances, of which it is neither the first nor the last
}

// readings writes at both sides what the row counter shows at each step there.
func (c *chart) readings() {
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		c.readingsAt(side)
	}
}

func (c *chart) readingsAt(side shaping.Side) {
	d := c.grid
	x, anchor, toward := d.left()-7_000, "end", svgw.Number(1)
	if d.side(side) == shaping.Right {
		x, anchor, toward = d.right()+7_000, "start", -1
	}
	list, wanted, placed := c.placed(c.readingsOf(side))
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

// farthest is how far a reading may stand from its row before those in the middle of a run
// are left out.
const farthest svgw.Number = 12_000

// placed returns the readings that have room, where they belong and where they stand.
func (c *chart) placed(list []reading) (shown []reading, wanted, placed []svgw.Number) {
	d := c.grid
	for {
		wanted = nil
		for _, r := range list {
			wanted = append(wanted, d.ys[r.height])
		}
		placed = spread(wanted, readingGap, d.ys[len(d.ys)-1]-6_000, d.ys[0])
		off := svgw.Number(0)
		for i := range placed {
			off = max(off, placed[i]-wanted[i], wanted[i]-placed[i])
		}
		fewer := slices.DeleteFunc(slices.Clone(list), func(r reading) bool { return r.within })
		if off <= farthest || len(fewer) == len(list) {
			return list, wanted, placed
		}
		list = fewer
	}
}

// counted says what the readings are.
func (c *chart) counted() string {
	if c.piece.Work.Place == shaping.Hand {
		return "row"
	}
	return "counter"
}

// leavesOut reports whether readings have no room.
func (c *chart) leavesOut() bool {
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		all := c.readingsOf(side)
		if shown, _, _ := c.placed(all); len(shown) < len(all) {
			return true
		}
	}
	return false
}

// readingsOf returns the readings at one side, from the top: those of the steps of this
// edge or of this half, and those of the cast on and of the end.
func (c *chart) readingsOf(side shaping.Side) []reading {
	top := c.outline.top(side)
	list := []reading{{text: "000"}, {text: c.number(top + 1), height: top}}
	if c.piece.Work.Place == shaping.Hand {
		list = []reading{{text: "1"}, {text: c.number(top), height: top}}
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
		if of == side {
			list = append(list, reading{c.number(m.step.Row), height, c.withinRun(m)})
		}
	}
	// Of steps at one height the one that stays is named.
	slices.SortStableFunc(list, func(a, b reading) int {
		switch {
		case a.height != b.height:
			return b.height - a.height
		case a.within == b.within:
			return 0
		case a.within:
			return 1
		}
		return -1
	})
	return slices.CompactFunc(list, func(a, b reading) bool { return a.height == b.height })
}

// withinRun reports whether the steps before and after a mark's are like it and as far away.
func (c *chart) withinRun(m mark) bool {
	panel, _ := c.piece.Work.Panels.Panel(m.panel)
	steps := panel.Steps(m.edge)
	i := slices.Index(steps, m.step)
	if i < 1 || i+1 >= len(steps) {
		return false
	}
	before, after := steps[i-1], steps[i+1]
	return before.Stitches == m.step.Stitches && after.Stitches == m.step.Stitches && m.step.Row-before.Row == after.Row-m.step.Row
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
