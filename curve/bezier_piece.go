package curve

import "math"

// bend is a piece of a Bezier curve. Its upper half is reckoned from the upper end, so
// that a level end is as exact as a level start.
type bend struct {
	box
	up, down struct{ x, y powers } // from the lower and from the upper end
}

func newBend(b box, x, y powers) *bend {
	p := &bend{box: b}
	p.up.x, p.up.y = x, y
	p.down.x, p.down.y = x.backwards(), y.backwards()
	return p
}

func (b *bend) across(y float64) float64 {
	if up := y - b.y0; up <= b.y1-y {
		return b.within(b.x0 + b.up.x.at(b.up.y.reach(up)))
	}
	return b.within(b.x1 - b.down.x.at(b.down.y.reach(b.y1-y)))
}

func (b *bend) heightAt(x float64) float64 {
	if b.x0 == b.x1 {
		return b.y0
	}
	up, down := b.up, b.down
	gone, left := x-b.x0, b.x1-x
	if b.x1 < b.x0 {
		gone, left = -gone, -left
		up.x, down.x = up.x.negative(), down.x.negative()
	}
	y := 0.0
	if gone <= left {
		y = b.y0 + up.y.at(up.x.reach(gone))
	} else {
		y = b.y1 - down.y.at(down.x.reach(left))
	}
	return min(max(y, b.y0), b.y1)
}

func (b *bend) taken(y float64) float64 {
	up := y - b.y0
	if up <= b.y1-y {
		return float64(b.x0*up) + sweep(b.up.x, b.up.y, b.up.y.reach(up))
	}
	whole := float64(b.x0*(b.y1-b.y0)) + sweep(b.up.x, b.up.y, 1)
	down := b.y1 - y
	return whole - (float64(b.x1*down) - sweep(b.down.x, b.down.y, b.down.y.reach(down)))
}

// sweep returns the integral of x over y while the parameter goes from 0 to t. The rule
// of three points is exact, since x times the slope of y has degree five.
func sweep(x, y powers, t float64) float64 {
	half := t / 2
	away := float64(half * math.Sqrt(0.6))
	low, high := half-away, half+away
	ends := float64(x.at(low)*y.slope(low)) + float64(x.at(high)*y.slope(high))
	return float64(half*(float64(5*ends)+float64(8*float64(x.at(half)*y.slope(half))))) / 9
}
