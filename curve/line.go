package curve

import (
	"math"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// Line returns the straight edge: the same number of stitches goes in every row.
// It returns an [*Error] that wraps [ErrRange] if the width is negative, if the
// height is less than 1/1000 mm, or if one of them is more than 1000 m.
func Line(width, height gauge.Length) (Edge, error) { return newEdge(width, height, line{}) }

type line struct{}

// drawing uses the unit 1/(2 rows stitches): all its entries are whole numbers, so
// that straight edges are exact.
func (line) drawing(stitches, rows int) *drawing {
	n, r := int64(stitches), int64(rows)
	d := newRising(stitches, rows, 2*max(n, 1)*r)
	p := &d.parts[0]
	for t := range r + 1 {
		d.taken[t] = n * n * t * t
	}
	for t := range r {
		d.middle[t] = n * n * (2*t + 1)
	}
	for c := range n + 1 {
		p.before[c] = r * r * c * c
		if n > 0 {
			p.reached[c] = int((c*r + n - 1) / n)
		}
	}
	return d
}

func (line) length(width, height float64) float64 {
	return math.Sqrt(float64(width*width) + float64(height*height))
}

func (line) area(width, height float64) float64 { return width * height * 0.5 }

func (line) path(width, _ decimal.Decimal) string { return "L " + width.String() + " 0" }
