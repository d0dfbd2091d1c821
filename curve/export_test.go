package curve

import (
	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// DiscPart is the area of a part of the unit disc, for its own test.
var DiscPart = discPart

// StairEdge returns an edge that takes so many units of stitches in each row, from the
// lower end; it does not stretch to a box. Edges of halves of stitches have very
// many schedules of equal area, which no edge of the package has.
func StairEdge(units []int64, unit int64) Edge {
	one := gauge.MustParseLength("1 mm")
	return Edge{one, one, stair{units, unit}}
}

type stair struct {
	units []int64
	unit  int64
}

func (s stair) drawing(stitches, rows int) *drawing {
	d := newRising(stitches, rows, s.unit)
	p := &d.parts[0]
	for t, f := range s.units {
		d.taken[t+1] = d.taken[t] + f
		d.middle[t] = f
	}
	for c := range p.reached {
		// Where f stays below c to the end, it is taken to reach it there.
		for t := 0; t < rows && s.units[t] < int64(c)*s.unit; t++ {
			p.reached[c]++
			p.before[c] += int64(c)*s.unit - s.units[t]
		}
	}
	return d
}

func (stair) length(width, height float64) float64 { return width + height }
func (stair) area(width, height float64) float64   { return 0 }
func (stair) path(width, _ decimal.Decimal) string { return "H " + width.String() + " V 0" }
