package draw

import (
	"slices"

	"example.com/walewise/internal/svgw"
	"example.com/walewise/shaping"
)

// grid is where the cells of a chart stand on paper: one a stitch, as wide and as high as
// the gauge makes it.
type grid struct {
	needles shaping.Span
	flipped bool          // the side of the fabric that does not face the knitter is shown
	xs      []svgw.Number // the boundaries of the wales, by needle from the left of the bed
	ys      []svgw.Number // the boundaries of the rows, from the cast-on edge up
	folds   []fold
	stitch  size
	scale   int64 // thousandths of a millimetre on paper for a millimetre of fabric
}

// fold is a run of rows without shaping that is drawn as a gap.
type fold struct{ from, to int }

// Sizes on paper, in thousandths of a millimetre.
const (
	pageWidth   svgw.Number = 180_000
	chartWidth  svgw.Number = 138_000 // between the readings
	chartHeight svgw.Number = 225_000
	largestCell svgw.Number = 4_000
	foldHeight  svgw.Number = 5_000
	shownAtFold             = 2  // rows on either side of a fold that are drawn
	leastToFold             = 12 // rows that must lie in a fold
)

// gridFor returns the grid of a fabric whose upper end lies at a height on paper.
func gridFor(f fabric, stitch size, flipped, folded bool, top svgw.Number) grid {
	d := grid{needles: f.needles, flipped: flipped, stitch: stitch}
	shown := f.height
	if folded {
		d.folds = f.folds()
	}
	for _, fold := range d.folds {
		shown -= fold.to - fold.from
	}
	wales := len(f.wales)
	d.scale = min(
		per(chartWidth, stitch.wide*int64(wales)),
		per(chartHeight-foldHeight*svgw.Number(len(d.folds)), stitch.high*int64(max(shown, 1))),
		per(largestCell, stitch.wide), per(largestCell, stitch.high),
	)
	width := d.scaled(stitch.wide, wales)
	for i := range wales + 1 {
		x := d.scaled(stitch.wide, i)
		if flipped {
			x = width - x
		}
		d.xs = append(d.xs, (pageWidth-width)/20*10+x)
	}
	bottom := top + d.up(f.height)
	for level := range f.height + 1 {
		d.ys = append(d.ys, bottom-d.up(level))
	}
	return d
}

// up returns how high on paper a level lies above the cast-on edge.
func (d grid) up(level int) svgw.Number {
	folded, gaps := 0, svgw.Number(0)
	for _, f := range d.folds {
		in, all := max(min(level, f.to)-f.from, 0), f.to-f.from
		folded += in
		gaps += foldHeight * svgw.Number(in) / svgw.Number(all)
	}
	return gaps + d.scaled(d.stitch.high, level-folded)
}

// per returns how many thousandths on paper a millimetre of fabric may take so that so many
// millionths of it fit.
func per(paper svgw.Number, fabric int64) int64 { return int64(paper) * 1_000_000 / max(fabric, 1) }

// scaled returns so many stitches, or rows, on paper, to a hundredth of a millimetre.
func (d grid) scaled(millionths int64, count int) svgw.Number {
	const tens = 10_000_000
	return svgw.Number((millionths*int64(count)*d.scale + tens/2) / tens * 10)
}

// wale returns the left and the right boundary of a needle's wale on paper.
func (d grid) wale(n shaping.Needle) (left, right svgw.Number) {
	i := n.Index() - d.needles.First.Index()
	return min(d.xs[i], d.xs[i+1]), max(d.xs[i], d.xs[i+1])
}

// left and right return the outermost boundaries on paper.
func (d grid) left() svgw.Number  { return min(d.xs[0], d.xs[len(d.xs)-1]) }
func (d grid) right() svgw.Number { return max(d.xs[0], d.xs[len(d.xs)-1]) }

// cell returns how wide one is, rowHigh how high.
func (d grid) cell() svgw.Number    { return d.scaled(d.stitch.wide, 1) }
func (d grid) rowHigh() svgw.Number { return d.scaled(d.stitch.high, 1) }

// place returns where a point of the piece lies on paper: the middle of the bed is the
// boundary between L1 and R1.
func (d grid) place(p point) point {
	wale, along := part(p.x, d.stitch.wide)
	left := d.boundary(wale - d.needles.First.Index())
	right := d.boundary(wale + 1 - d.needles.First.Index())
	level, above := part(p.y, d.stitch.high)
	if top := len(d.ys) - 2; level > top {
		level, above = top, above+d.stitch.high*int64(level-top)
	}
	low, high := d.ys[level], d.ys[level+1]
	return point{
		left + svgw.Number(int64(right-left)*along/d.stitch.wide),
		low - svgw.Number(int64(low-high)*above/d.stitch.high),
	}
}

// part returns in which stitch or row a distance ends and how far in it, in millionths of a
// millimetre.
func part(distance svgw.Number, size int64) (whole int, rest int64) {
	millionths := int64(distance) * 1000
	n := millionths / size
	if millionths < n*size {
		n--
	}
	return int(n), millionths - n*size
}

// boundary returns the boundary left of the i-th wale from the left of the bed, also where
// the piece has none.
func (d grid) boundary(i int) svgw.Number {
	switch last := len(d.xs) - 1; {
	case i < 0:
		return d.xs[0] + (d.xs[1]-d.xs[0])*svgw.Number(i)
	case i > last:
		return d.xs[last] + (d.xs[1]-d.xs[0])*svgw.Number(i-last)
	}
	return d.xs[i]
}

// folds returns the runs of rows in which nothing begins, ends or is shaped.
func (f fabric) folds() []fold {
	events := []int{0, f.height}
	for _, wale := range f.wales {
		for _, run := range wale {
			events = append(events, run.from, run.to)
		}
	}
	for _, m := range f.marks {
		events = append(events, m.height)
	}
	slices.Sort(events)
	var folds []fold
	for i, to := range events[1:] {
		from := events[i] + shownAtFold
		if to -= shownAtFold; to-from >= leastToFold {
			folds = append(folds, fold{from, to})
		}
	}
	return folds
}
