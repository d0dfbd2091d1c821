package curve

import (
	"math"
	"slices"
)

// sampledParts is into how many parts a curved piece is cut, by height and again by the
// distance across.
const sampledParts = 24

// Points returns points on the edge from its lower end to its upper end, to draw it by:
// the ends of straight stretches, and of curves so many points between that a line through
// them lies within a thousandth of the edge's size. They are rounded to 1/1000 mm. The zero
// Edge has none.
func (e Edge) Points() []Point {
	if e.shape == nil {
		return nil
	}
	width, height := e.size()
	var pieces []piece
	for _, s := range e.shape.drawn(width*millimetre, height*millimetre) {
		pieces, _ = s.pieces(pieces)
	}
	points := []Point{{}}
	for _, p := range pieces {
		x0, y0, x1, y1 := p.ends()
		heights := []float64{y1}
		if _, ok := p.(straight); !ok {
			for k := 1; k < sampledParts; k++ {
				part := float64(k) / sampledParts
				heights = append(heights, y0+float64((y1-y0)*part), p.heightAt(x0+float64((x1-x0)*part)))
			}
			slices.Sort(heights)
		}
		for _, y := range heights {
			point := Point{Across: thousandths(math.Round(p.across(y))), Up: thousandths(math.Round(y))}
			if last := points[len(points)-1]; !point.Across.Equal(last.Across) || !point.Up.Equal(last.Up) {
				points = append(points, point)
			}
		}
	}
	return points
}
