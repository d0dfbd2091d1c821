package curve

import "math"

// bow is a piece of an arc. It is found by height or by distance across from the same
// ellipse seen from two sides.
type bow struct {
	box
	upwards, sideways view
}

// view is the ellipse seen along one coordinate, the sought one a function of the other,
// the known one: known = least + radius (1 - cos), sought = centre + p cos + q sin,
// with an angle from 0 to pi.
type view struct {
	least, most, radius float64
	centre, p, q        float64
}

func newBow(b box, a *ellipseArc, wide, tall float64, right, top, middle direction) *bow {
	return &bow{b,
		newView(a.cy, tall, top, b.y0, b.y1, a.cx, wide, right, middle),
		newView(a.cx, wide, right, b.x0, b.x1, a.cy, tall, top, middle),
	}
}

// newView takes the centre and the extent of the known coordinate and the direction
// where it is greatest, the ends of the piece in it, and the same of the sought one.
func newView(known, radius float64, top direction, from, to, centre, extent float64, far, middle direction) view {
	v := view{least: known - radius, most: known + radius, radius: radius, centre: centre}
	// Where the piece ends at a turning point, that is the exact place.
	for _, end := range [...]float64{from, to} {
		if math.Abs(v.least-end) <= turnSlack {
			v.least = end
		}
		if math.Abs(v.most-end) <= turnSlack {
			v.most = end
		}
	}
	side := direction{-top.sin, top.cos}
	if dot(side, middle) < 0 {
		side = side.opposite()
	}
	v.p, v.q = -float64(extent*dot(top, far)), float64(extent*dot(side, far))
	return v
}

// toward returns the angle where the known coordinate has a value.
func (v view) toward(known float64) direction {
	gone, left := (known-v.least)/v.radius, (v.most-known)/v.radius
	if gone <= left {
		gone = max(gone, 0)
		return direction{1 - gone, math.Sqrt(max(float64(gone*(2-gone)), 0))}
	}
	left = max(left, 0)
	return direction{left - 1, math.Sqrt(max(float64(left*(2-left)), 0))}
}

func (v view) sought(known float64) float64 {
	d := v.toward(known)
	return v.centre + (float64(v.p*d.cos) + float64(v.q*d.sin))
}

// swept returns the integral of the sought coordinate less the centre over the known one
// from its least value.
func (v view) swept(known float64) float64 {
	d := v.toward(known)
	square := float64(d.sin * d.sin)
	sector := d.angle() - float64(d.sin*d.cos)
	return float64(v.radius*(float64(v.p*square)+float64(v.q*sector))) / 2
}

func (b *bow) across(y float64) float64 {
	switch {
	case y >= b.y1:
		return b.x1
	case y <= b.y0:
		return b.x0
	}
	return b.within(b.upwards.sought(y))
}

func (b *bow) heightAt(x float64) float64 {
	switch x {
	case b.x0:
		return b.y0
	case b.x1:
		return b.y1
	}
	return min(max(b.sideways.sought(x), b.y0), b.y1)
}

func (b *bow) taken(y float64) float64 {
	v := b.upwards
	return float64(v.centre*(y-b.y0)) + (v.swept(y) - v.swept(b.y0))
}
