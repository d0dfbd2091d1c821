package draw

import (
	"fmt"
	"io"
	"slices"

	"example.com/walewise/internal/oneline"
	"example.com/walewise/internal/plural"
	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// Chart writes the stitch charts of pieces, one below the other, as SVG: a cell for each
// stitch of the cloth in the proportion of the gauge, wale by wale, with the drawn line over
// it, a mark at every stitch of every step, what the row counter shows there (in the hand
// the row), and the names of the needles. It returns the first error of w, and [ErrPiece]
// for a piece that was not planned and knitted, or if there is none.
func Chart(w io.Writer, look Look, pieces ...garment.Piece) error {
	if err := look.check(pieces); err != nil {
		return err
	}
	var charts []*chart
	height := svgw.Number(0)
	for _, p := range pieces {
		c := newChart(p, look, height)
		height = c.bottom
		charts = append(charts, c)
	}
	s := look.begin(w, "chart", pageWidth, height, pieces, "Stitch chart", charts[0].says)
	for _, c := range charts {
		c.canvas = s
		c.write()
	}
	return s.End()
}

// chart is the chart of one piece.
type chart struct {
	canvas
	piece    garment.Piece
	fabric   fabric
	grid     grid
	facing   shaping.Facing
	top      svgw.Number // of its title
	keyTop   svgw.Number
	bottom   svgw.Number
	keyed    []keyEntry
	readings []column
	outline  outline
}

// Sizes of what stands about the cells.
const (
	titleSize   svgw.Number = 4_600
	textSize    svgw.Number = 3_000
	labelSize   svgw.Number = 2_500
	readingGap  svgw.Number = 2_700
	keyLine     svgw.Number = 4_800
	chartHead   svgw.Number = 27_000 // title, view and the headings of the readings
	needlesFoot svgw.Number = 7_000
)

func newChart(p garment.Piece, look Look, top svgw.Number) *chart {
	c := &chart{piece: p, fabric: lay(p), facing: look.facing(p), top: top, outline: drawn(p)}
	c.grid = gridFor(c.fabric, c.outline.stitch, look.flips(p), look.Folded, top+chartHead)
	c.readings = c.columns()
	c.keyed = c.key()
	c.keyTop = c.grid.ys[0] + needlesFoot + 3_000
	c.bottom = c.keyTop + keyLine*svgw.Number((len(c.keyed)+1)/2) + 4_000
	return c
}

func (c *chart) write() {
	c.Text("text", oneline.Capital(c.piece.Name())+": stitch chart", label(pageWidth/2, c.top+7_000, titleSize, "middle", svgw.A("font-weight", "bold"))...)
	c.Text("text", c.view(), label(pageWidth/2, c.top+12_500, textSize, "middle")...)
	c.cells()
	c.drawnLine()
	c.edges()
	c.middle()
	c.marks()
	c.foldNotes()
	c.writeReadings()
	c.needles()
	c.writeKey()
}

func (c *chart) view() string {
	side, means := view(c.piece, c.facing)
	return side + ", " + means
}

func (c *chart) says() string {
	widest := 0
	for _, row := range c.piece.Work.Rows {
		widest = max(widest, row.Knit.Len())
	}
	return fmt.Sprintf("Chart of %s: %s at the widest, %d rows high; %d stitches are shaped one by one, as the written steps say. %s.",
		c.piece.Name(), plural.Stitches(widest), c.fabric.height, len(c.fabric.marks), c.view())
}

// cells draws the wales, each a box of its own between folds, and the lines between their
// stitches.
func (c *chart) cells() {
	var wales, rows, tens svgw.Path
	for i, runs := range c.fabric.wales {
		left, right := c.grid.xs[i], c.grid.xs[i+1]
		for _, r := range c.unfolded(runs) {
			if r.to > r.from {
				wales.Box(left, c.grid.ys[r.to], right-left, c.grid.ys[r.from]-c.grid.ys[r.to])
			}
		}
	}
	c.rows(&rows, &tens)
	c.tenths(&tens)
	c.Leaf("path", svgw.A("class", "wales"), svgw.A("d", wales.String()), svgw.A("fill-opacity", ".07"),
		svgw.A("stroke", "currentColor"), svgw.N("stroke-width", 60), svgw.A("stroke-opacity", ".45"))
	c.stroke("rows", &rows, 60, svgw.A("stroke-opacity", ".45"))
	c.stroke("tens", &tens, 180, svgw.A("stroke-opacity", ".6"))
}

// tenths draws every tenth upright line from the middle.
func (c *chart) tenths(tens *svgw.Path) {
	for i, wale := range c.fabric.wales {
		if (c.fabric.needles.First.Index()+i)%10 != 0 {
			continue
		}
		spans := slices.Clone(wale)
		if i > 0 {
			spans = append(spans, c.fabric.wales[i-1]...)
		}
		for _, span := range c.unfolded(joined(spans)) {
			tens.Move(c.grid.xs[i], c.grid.ys[span.from]).Down(c.grid.ys[span.to] - c.grid.ys[span.from])
		}
	}
}

// joined returns the stretches that runs cover together, from below.
func joined(runs []run) []run {
	slices.SortFunc(runs, func(a, b run) int { return a.from - b.from })
	var all []run
	for _, r := range runs {
		if k := len(all) - 1; k >= 0 && r.from <= all[k].to {
			all[k].to = max(all[k].to, r.to)
		} else {
			all = append(all, run{from: r.from, to: r.to})
		}
	}
	return all
}

// unfolded returns the parts of the stretches that lie outside of folds.
func (c *chart) unfolded(spans []run) []run {
	for _, f := range c.grid.folds {
		var rest []run
		for _, s := range spans {
			if s.from < f.from && s.to > f.to {
				rest = append(rest, run{from: s.from, to: f.from}, run{from: f.to, to: s.to})
			} else {
				rest = append(rest, s)
			}
		}
		spans = rest
	}
	return spans
}

// rows draws the level lines: below and above every stitch, outside of folds.
func (c *chart) rows(lines, tens *svgw.Path) {
	for level := range c.fabric.height + 1 {
		if slices.ContainsFunc(c.grid.folds, func(f fold) bool { return f.from < level && level < f.to }) {
			continue
		}
		to := lines
		if level%10 == 0 {
			to = tens
		}
		begun := -1
		for i := range len(c.fabric.wales) + 1 {
			has := i < len(c.fabric.wales) && slices.ContainsFunc(c.fabric.wales[i], func(r run) bool {
				return r.from <= level && level <= r.to && r.to > r.from
			})
			switch {
			case has && begun < 0:
				begun = i
			case !has && begun >= 0:
				to.Move(c.grid.xs[begun], c.grid.ys[level]).Right(c.grid.xs[i] - c.grid.xs[begun])
				begun = -1
			}
		}
	}
}

// middleLine returns where the middle of the piece lies: of an odd number of stitches in one.
func (c *chart) middleLine() svgw.Number {
	if c.piece.Work.Panels[0].Needles.Len()%2 == 1 {
		left, right := c.grid.wale(shaping.R(1))
		return (left + right) / 2
	}
	return c.grid.boundary(-c.grid.needles.First.Index())
}

// middle draws the centre line of the piece.
func (c *chart) middle() {
	d, x := c.grid, c.middleLine()
	var line svgw.Path
	for _, span := range c.unfolded([]run{{from: 0, to: c.fabric.height}}) {
		line.Move(x, d.ys[span.to]).Down(d.ys[span.from] - d.ys[span.to])
	}
	c.stroke("middle", &line, 200, svgw.A("stroke-dasharray", "3 .8 .6 .8"))
}

// marks draws the marks of the steps.
func (c *chart) marks() {
	for _, k := range kinds() {
		var p svgw.Path
		for _, m := range c.fabric.marks {
			if !k.of(m.step) {
				continue
			}
			left, right := c.grid.wale(m.needle)
			below, above := c.grid.ys[max(m.height-1, 0)], c.grid.ys[m.height]
			a, b := (right-left)*2/5, (below-above)*2/5
			if shown(m.edge, c.grid.flipped) == shaping.Right {
				a = -a
			}
			k.draw(&p, (left+right)/2, (below+above)/2, a, b)
		}
		c.mark(k, &p)
	}
}

func (c *chart) mark(k kind, p *svgw.Path) {
	switch {
	case p.IsEmpty():
	case k.fill:
		c.Leaf("path", svgw.A("class", k.name), svgw.A("d", p.String()))
	default:
		c.stroke(k.name, p, 250)
	}
}

// foldNotes says in every fold how many rows it hides.
func (c *chart) foldNotes() {
	for _, f := range c.grid.folds {
		y := (c.grid.ys[f.from] + c.grid.ys[f.to]) / 2
		c.Text("text", fmt.Sprintf("%d plain rows", f.to-f.from), label((c.grid.left()+c.grid.right())/2, y+labelSize/3, labelSize, "middle", svgw.A("class", "fold"))...)
	}
}
