package garment_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// The lengths here are measured on the knitted rows alone, by no code of the library: along
// the line that leads from the foot of an edge through the middles of its steps to its head.

// point is a place on the cloth: stitches from the middle outwards, or along an edge, and
// rows from the cast-on edge.
type point struct{ across, up float64 }

// way returns the length of a line through points, in mm.
func way(g gauge.Gauge, points []point) float64 {
	wale, row := mm(g.Width(1000))/1000, mm(g.Height(1000))/1000
	sum := 0.0
	for i := 1; i < len(points); i++ {
		sum += math.Hypot((points[i].across-points[i-1].across)*wale, (points[i].up-points[i-1].up)*row)
	}
	return sum
}

func mm(l gauge.Length) float64 { return l.Millimetres().InexactFloat64() }

// reached is how many stitches a row has on one side of the middle, up to its outer end and
// up to its inner one.
type reached struct{ row, outer, inner int }

// rowsAt returns the rows of the body and of the half at one side.
func rowsAt(p garment.Piece, side shaping.Side) []reached {
	name := shaping.RightHalf
	if side == shaping.Left {
		name = shaping.LeftHalf
	}
	var rows []reached
	for course := range p.Cloth.Courses() {
		if course.Panel != shaping.Body && course.Panel != name {
			continue
		}
		// Gaps between needles are counted from the middle, R1 is between 0 and 1.
		left, right := course.Needles.First.Index(), course.Needles.Last.Index()+1
		if side == shaping.Left {
			left, right = -right, -left
		}
		rows = append(rows, reached{course.Row, right, left})
	}
	return rows
}

// edgePoints returns the line along an outer edge from the first row above low to the last
// one below high, and what went at the first of its steps, which is left out of the line if
// that is what was bound off at once.
func edgePoints(p garment.Piece, side shaping.Side, low, high int, head float64) (line []point, base int) {
	type step struct{ gone, height int }
	var steps []step
	last := reached{}
	for _, at := range rowsAt(p, side) {
		if at.row > low && at.row < high && last.row > 0 && last.outer > at.outer {
			steps = append(steps, step{last.outer - at.outer, at.row - 1})
		}
		last = at
	}
	foot := p.Heights.Underarm
	if p.Widths.BindOff > 0 && len(steps) > 0 {
		base, foot, steps = steps[0].gone, steps[0].height, steps[1:]
	} else if len(steps) > 0 {
		foot = min(foot, steps[0].height)
	}
	line = []point{{0, float64(foot)}}
	gone := 0
	for _, s := range steps {
		line = append(line, point{float64(gone) + float64(s.gone)/2, float64(s.height)})
		gone += s.gone
	}
	return append(line, point{float64(gone), head}), base
}

// armholeOf returns the length of an armhole, the stitches bound off at once below it, and
// the rows up to the underarm and to the tip.
func armholeOf(p garment.Piece, side shaping.Side) (length float64, base, foot, tip int) {
	tip = tipOf(p, side)
	low := p.Heights.Underarm - 1 // one edge may go a row before
	line, base := edgePoints(p, side, low, p.ShoulderRow, float64(tip))
	return way(p.Gauge, line), base, int(line[0].up), tip
}

// tipOf returns the rows of the outermost stitch of a shoulder, counted above the underarm.
func tipOf(p garment.Piece, side shaping.Side) int {
	outermost := 0
	rows := rowsAt(p, side)
	for _, at := range rows {
		if at.row < p.ShoulderRow {
			outermost = at.outer
		}
	}
	tip := p.Heights.Underarm
	for _, at := range rows {
		if at.row > p.Heights.Underarm && at.inner < outermost && outermost <= at.outer {
			tip++
		}
	}
	return tip
}

func capOf(p garment.Piece) (length float64, bases []int) {
	first := true
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		rows := rowsAt(p, side)
		top := rows[len(rows)-1]
		line, base := edgePoints(p, side, p.Heights.Underarm, top.row+1, float64(top.row))
		length, bases = length+way(p.Gauge, line), append(bases, base)
		if first {
			length += mm(p.Gauge.Width(top.outer - top.inner - 2*p.Spec.Seam.Stitches))
		}
		first = false
	}
	return length, bases
}

func neckOf(p garment.Piece) float64 {
	split := p.Work.Panels[0].LastRow
	length := mm(p.Gauge.Width(p.Widths.Flat))
	for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
		inner := p.Widths.Flat / 2
		if side == shaping.Right {
			inner = p.Widths.Flat - inner
		}
		line := []point{{float64(inner), float64(split)}}
		for _, at := range rowsAt(p, side) {
			if at.row <= split {
				continue
			}
			if at.inner > inner {
				line = append(line, point{float64(inner+at.inner) / 2, float64(at.row - 1)})
			}
			inner = at.inner
		}
		length += way(p.Gauge, append(line, point{float64(inner), float64(half(p, side).LastRow)}))
	}
	return length
}

// agree reports whether two lengths in mm are the same but for their rounding.
func agree(a, b float64) bool { return math.Abs(a-b) <= 0.01 }

func TestLengthsAlongEdges(t *testing.T) {
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		for _, p := range s.Pieces[:2] {
			for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
				want, base, _, _ := armholeOf(p, side)
				if got := mm(p.ArmholeLength(side)); !agree(got, want) {
					t.Fatalf("%s: %v armhole %.3f mm, measured %.3f", p.Name(), side, got, want)
				}
				if base != p.Widths.BindOff {
					t.Fatalf("%s: %d stitches go at the %v underarm, want %d", p.Name(), base, side, p.Widths.BindOff)
				}
			}
			if got, want := mm(p.NeckLength()), neckOf(p); !agree(got, want) {
				t.Fatalf("%s: neck %.3f mm, measured %.3f", p.Name(), got, want)
			}
		}
		if sleeve, ok := s.Piece("right sleeve"); ok && sleeve.Spec.Sleeve.Cap == garment.SetInCap {
			want, _ := capOf(sleeve)
			if got := mm(sleeve.CapLength()); !agree(got, want) {
				t.Fatalf("cap %.3f mm, measured %.3f", got, want)
			}
		}
	})
}
