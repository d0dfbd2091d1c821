package curve

import (
	"fmt"
	"math"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// QuarterEllipse returns a quarter of an ellipse whose half-axes are the width and
// the height. It starts horizontally at its lower end, where many stitches go at
// once, and ends upright: of N stitches, N sqrt(1 - (1 - t/R)²) are gone after t of
// R rows. It returns an error in the same cases as [Line].
func QuarterEllipse(width, height gauge.Length) (Edge, error) {
	return newEdge(width, height, quarterEllipse{})
}

type quarterEllipse struct{}

// drawing takes both integrals from the quarter of the unit disc. With h(x) the
// area of its part over [0, x], N stitches and R rows,
//
//	integral of f over [0, t]                     = N R (pi/4 - h(1 - t/R))
//	integral of c - f over [0, where f reaches c] = N R (c/N - h(c/N))
func (quarterEllipse) drawing(stitches, rows int) *drawing {
	d := newRising(stitches, rows, fine)
	p := &d.parts[0]
	box := float64(stitches * rows)
	for t := range rows + 1 {
		d.taken[t] = round(box * (math.Pi/4 - discPart(rows-t, rows)) * fine)
	}
	for t := range rows {
		up := 2*(rows-t) - 1 // 1 - (t + 1/2)/R = up/(2R)
		height := math.Sqrt(float64(4*rows*rows - up*up))
		d.middle[t] = round(float64(stitches) * height / float64(2*rows) * fine)
	}
	n, r := int64(stitches), int64(rows)
	t := 0
	for c := 1; c <= stitches; c++ {
		p.before[c] = round(box * (float64(c)/float64(stitches) - discPart(c, stitches)) * fine)
		// f(t) >= c in whole numbers.
		for up := r - int64(t); n*n*(r*r-up*up) < int64(c)*int64(c)*r*r; up = r - int64(t) {
			t++
		}
		p.reached[c] = t
	}
	return d
}

// length is the complete elliptic integral of the second kind by the
// arithmetic-geometric mean, DLMF 19.8.6, for the larger half-axis a:
// a E(k) = a K(k) (1 - sum of 2^(n-1) c_n²).
func (quarterEllipse) length(width, height float64) float64 {
	large, small := max(width, height), min(width, height)
	if small == 0 {
		return large
	}
	a, g := 1.0, small/large
	sum, power := float64((1-g)*(1+g))/2, 0.5
	for range 40 { // the steps converge quadratically; far fewer are taken
		c := (a - g) / 2
		if c < 1e-17*a {
			break
		}
		a, g = (a+g)/2, math.Sqrt(a*g)
		power *= 2
		sum += float64(power * float64(c*c))
	}
	return large * (math.Pi / 2) / a * (1 - sum)
}

func (quarterEllipse) area(width, height float64) float64 { return width * height * (math.Pi / 4) }

// path draws an arc about the origin that turns against the clock, from straight
// below the centre to straight right of it.
func (quarterEllipse) path(width, height decimal.Decimal) string {
	return fmt.Sprintf("A %s %s 0 0 0 %s 0", width, height, width)
}
