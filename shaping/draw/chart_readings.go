package draw

import (
	"fmt"
	"iter"
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

// column is readings that stand below each other, led to the edge that they are of.
type column struct {
	all         []reading
	x           svgw.Number // where they stand
	anchor      string      // which end of them
	toward      svgw.Number // the edge: 1 to the right of them, -1 to the left
	least, most svgw.Number // between which heights on paper they stand
	edge        func(height int) svgw.Number
}

// columns returns the readings of the outer edges, beside the cells, and those of the neck,
// in its opening if it is wide enough.
func (c *chart) columns() []column {
	var list []column
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		outer := c.outerColumn(side)
		neck, ok := c.neckColumn(side)
		if ok {
			list = append(list, neck)
		} else {
			outer.all = merged(outer.all, neck.all)
		}
		list = append(list, outer)
	}
	return list
}

func (c *chart) outerColumn(side shaping.Side) column {
	d := c.grid
	col := column{x: d.left() - 7_000, anchor: "end", toward: 1, least: d.ys[len(d.ys)-1] - 6_000, most: d.ys[0]}
	if shown(side, d.flipped) == shaping.Right {
		col.x, col.anchor, col.toward = d.right()+7_000, "start", -1
	}
	col.all = merged(c.readingsOf(side), c.landmarks(side))
	col.edge = func(height int) svgw.Number { return c.edgeAt(d.needles.All(), side, height) }
	return col
}

// neckColumn returns the readings of the neck's edge of one half. They stand beside the
// middle of the opening; ok is false if that is too narrow.
func (c *chart) neckColumn(side shaping.Side) (col column, ok bool) {
	half, split := c.piece.Work.Panels.Panel(shaping.HalfAt(side))
	if !split {
		return column{}, false
	}
	d := c.grid
	middle := c.middleLine()
	const beside, wide, free svgw.Number = 1_500, 5_500, 2_000
	col = column{all: c.neckReadings(side), x: middle - beside, anchor: "end", toward: -1, least: c.top + 18_000}
	if shown(side, d.flipped) == shaping.Right {
		col.x, col.anchor, col.toward = middle+beside, "start", 1
	}
	inner := side.Opposite()
	col.edge = func(height int) svgw.Number { return c.edgeAt(half.Needles.All(), inner, height) }
	for height := c.outline.top(side); height >= half.FirstRow-1; height-- {
		if away := (col.edge(height) - col.x) * col.toward; away < wide+free {
			break
		}
		col.most, ok = d.ys[height]-readingGap, true
	}
	if !ok || len(col.all) == 0 {
		return col, false
	}
	_, _, placed := c.placed(col)
	return col, placed[len(placed)-1] <= col.most
}

// writeReadings writes what the row counter shows at each step beside it, in the hand the row.
func (c *chart) writeReadings() {
	for _, col := range c.readings {
		list, wanted, placed := c.placed(col)
		if col.most == c.grid.ys[0] { // beside the cells
			c.Text("text", c.counted(), label(col.x, placed[0]-2*readingGap, labelSize, col.anchor, svgw.A("font-style", "italic"))...)
		}
		var leaders svgw.Path
		c.Open("g", svgw.A("class", "readings"), svgw.N("font-size", labelSize), svgw.A("text-anchor", col.anchor))
		for i, r := range list {
			c.Text("text", r.text, svgw.N("x", col.x), svgw.N("y", placed[i]+labelSize/3))
			edge := col.edge(r.height) - col.toward*400
			if col.most == c.grid.ys[0] {
				leaders.Move(col.x+col.toward*700, placed[i]).Line(col.x+col.toward*4_500, wanted[i]).Line(edge, wanted[i])
			} else {
				leaders.Move(col.x+col.toward*5_200, placed[i]).Line(edge, wanted[i])
			}
		}
		c.Close()
		c.stroke("leaders", &leaders, 100, svgw.A("stroke-opacity", ".6"))
	}
}

// farthest is how far a reading may stand from its row before those in the middle of a run
// are left out.
const farthest svgw.Number = 12_000

// placed returns the readings of a column that have room, where they belong and where they
// stand.
func (c *chart) placed(col column) (shown []reading, wanted, placed []svgw.Number) {
	list := col.all
	for {
		wanted = nil
		for _, r := range list {
			wanted = append(wanted, c.grid.ys[r.height])
		}
		placed = spread(wanted, readingGap, col.least, col.most)
		off := svgw.Number(0)
		for i := range placed {
			off = max(off, placed[i]-wanted[i], wanted[i]-placed[i])
		}
		if n := len(placed); n > 0 && placed[n-1] > col.most {
			off = farthest + 1
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
	return slices.ContainsFunc(c.readings, func(col column) bool {
		shown, _, _ := c.placed(col)
		return len(shown) < len(col.all)
	})
}

// landmarks returns the readings of the cast on, of the end of the band, and of the end.
func (c *chart) landmarks(side shaping.Side) []reading {
	top, band := c.outline.top(side), c.piece.Heights.Band
	list := []reading{{text: "000"}, {text: c.number(top + 1), height: top}}
	if c.piece.Work.Place == shaping.Hand {
		list = []reading{{text: "1"}, {text: "after " + c.number(top), height: top}}
	}
	if band > 0 {
		list = append(list, reading{text: c.number(band + 1), height: band})
	}
	return list
}

// readingsOf returns the readings of the steps at one outer edge.
func (c *chart) readingsOf(side shaping.Side) []reading {
	return c.stepReadings(func(m mark) bool { return m.edge == side && m.panel != shaping.HalfAt(side.Opposite()) })
}

// neckReadings returns the readings of the steps at the neck's edge of one half.
func (c *chart) neckReadings(side shaping.Side) []reading {
	return c.stepReadings(func(m mark) bool { return m.edge != side && m.panel == shaping.HalfAt(side) })
}

func (c *chart) stepReadings(of func(mark) bool) []reading {
	var list []reading
	for _, m := range c.fabric.marks {
		height := m.height
		if m.step.Stitches > 0 {
			height--
		}
		if of(m) {
			list = append(list, reading{c.number(m.step.Row), height, c.withinRun(m)})
		}
	}
	return merged(list, nil)
}

// merged returns two lists of readings as one, from the top; of steps at one height the one
// that stays is named.
func merged(a, b []reading) []reading {
	list := slices.Concat(a, b)
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

// withinRun reports whether a mark's step is neither the first nor the last of a run of
// equal steps at equal distances, or at two distances in turn.
func (c *chart) withinRun(m mark) bool {
	panel, _ := c.piece.Work.Panels.Panel(m.panel)
	steps := panel.Steps(m.edge)
	i := slices.Index(steps, m.step)
	// apart returns the distance from the k-th step to the next, 0 if they are not equal.
	apart := func(k int) int {
		if k < 0 || k+1 >= len(steps) || steps[k].Stitches != steps[k+1].Stitches {
			return 0
		}
		return steps[k+1].Row - steps[k].Row
	}
	before, after := apart(i-1), apart(i)
	if before == 0 || after == 0 {
		return false
	}
	return before == after || apart(i-2) == after && apart(i+1) == before
}

// number says where a row is found: what the counter shows before it, in the hand its own
// number.
func (c *chart) number(row int) string {
	if c.piece.Work.Place == shaping.Hand {
		return strconv.Itoa(row)
	}
	return fmt.Sprintf("%03d", row-1)
}

// edgeAt returns where on paper the outermost stitch on one side lies at a height, among those
// of some needles.
func (c *chart) edgeAt(needles iter.Seq[shaping.Needle], side shaping.Side, height int) svgw.Number {
	at := c.grid.boundary(0)
	for n := range needles {
		i := n.Index() - c.grid.needles.First.Index()
		if i < 0 || i >= len(c.fabric.wales) || !slices.ContainsFunc(c.fabric.wales[i], func(r run) bool { return r.from <= height && height <= r.to }) {
			continue
		}
		if side == shaping.Left {
			return c.grid.xs[i]
		}
		at = c.grid.xs[i+1]
	}
	return at
}

// needles writes the names of needles below the cells: the outermost ones, those of the cast
// on, and every tenth, or fewer where these would touch.
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
	var said []svgw.Number
	sayIfFree := func(n shaping.Needle) {
		left, right := d.wale(n)
		x := (left + right) / 2
		if !slices.ContainsFunc(said, func(other svgw.Number) bool { return max(x-other, other-x) < room }) {
			said = append(said, x)
			say(n)
		}
	}
	castOn := c.piece.Work.Panels[0].Needles
	for _, n := range []shaping.Needle{d.needles.First, d.needles.Last, castOn.First, castOn.Last} {
		sayIfFree(n)
	}
	for n := range d.needles.All() {
		if max(int(n), -int(n))%every == 0 {
			sayIfFree(n)
		}
	}
	c.Close()
	c.stroke("ticks", &ticks, 120)
}
