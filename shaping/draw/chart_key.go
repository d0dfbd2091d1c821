package draw

import (
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
)

// keyEntry is a sample and what it means.
type keyEntry struct {
	says   string
	sample func(x, y svgw.Number) // drawn about (x, y)
}

// key returns what the chart uses.
func (c *chart) key() []keyEntry {
	var list []keyEntry
	for _, k := range kinds() {
		if c.uses(k) {
			list = append(list, keyEntry{k.says, func(x, y svgw.Number) {
				var p svgw.Path
				k.draw(&p, x, y, 1_100, 900)
				c.mark(k, &p)
			}})
		}
	}
	for _, f := range finishes() {
		if c.hasEnd(f) {
			list = append(list, keyEntry{f.says, func(x, y svgw.Number) {
				var p svgw.Path
				f.line(&p, x-2_500, y, 5_000, 5, 800)
				c.stroke(f.name, &p, f.width, f.attrs...)
			}})
		}
	}
	last := "marks: in the last row before the reading"
	if c.piece.Work.Place == shaping.Hand {
		last = "marks: in the last row before the one named"
	}
	if len(c.fabric.marks) > 0 {
		list = append(list, keyEntry{last, func(svgw.Number, svgw.Number) {}})
	}
	list = append(list,
		keyEntry{"the drawn line", func(x, y svgw.Number) {
			var p svgw.Path
			p.Move(x-2_500, y+1_000).Line(x-1_200, y+700).Line(x+300, y).Line(x+1_600, y-700).Line(x+2_500, y-1_000)
			c.stroke("drawn-sample", &p, 400, svgw.A("stroke", accent))
		}},
		keyEntry{"a heavier line: every 10th row and stitch", func(x, y svgw.Number) {
			var p svgw.Path
			p.Move(x-2_500, y).Right(5_000)
			c.stroke("tens-sample", &p, 180, svgw.A("stroke-opacity", "0.6"))
		}},
		keyEntry{"the middle of the piece", func(x, y svgw.Number) {
			var p svgw.Path
			p.Move(x-2_500, y).Right(5_000)
			c.stroke("middle-sample", &p, 200, svgw.A("stroke-dasharray", "3 .8 .6 .8"))
		}},
	)
	if c.piece.Heights.Band > 0 {
		list = append(list, keyEntry{"the end of the band", func(x, y svgw.Number) {
			var p svgw.Path
			p.Move(x-2_500, y).Right(5_000)
			c.stroke("band-sample", &p, 250, svgw.A("stroke-dasharray", bandDash))
		}})
	}
	if c.leavesOut() {
		list = append(list, keyEntry{"readings: of equal steps the first and last", func(svgw.Number, svgw.Number) {}})
	}
	if c.piece.Work.Place == shaping.Hand {
		list = append(list, keyEntry{"numbers below: stitches from the middle", func(svgw.Number, svgw.Number) {}})
	}
	return list
}

func (c *chart) uses(k kind) bool {
	for _, m := range c.fabric.marks {
		if k.of(m.step) {
			return true
		}
	}
	return false
}

func (c *chart) hasEnd(f finish) bool {
	for _, runs := range c.fabric.wales {
		for _, r := range runs {
			if f.of(true, r) || f.of(false, r) {
				return true
			}
		}
	}
	return false
}

// writeKey writes the key in two columns.
func (c *chart) writeKey() {
	const firstColumn, secondColumn svgw.Number = 12_000, 98_000
	half := (len(c.keyed) + 1) / 2
	for i, entry := range c.keyed {
		x := firstColumn
		if i >= half {
			x = secondColumn
		}
		y := c.keyTop + keyLine*svgw.Number(i%half) + keyLine/2
		entry.sample(x+3_000, y)
		c.Text("text", entry.says, label(x+8_000, y+textSize/3, textSize, "")...)
	}
}
