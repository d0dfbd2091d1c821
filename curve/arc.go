package curve

import "math"

// ellipseArc is part of an ellipse by its centre and its half-axes: the points centre +
// cos major + sin minor, for the directions between two. After stretching, the two
// half-axes may be any conjugate ones. Nothing needs the angles themselves.
type ellipseArc struct {
	box           // of the ends; y1 < y0 if it falls
	cx, cy        float64
	major, minor  vector
	start, finish direction // finish lies anticlockwise of start, from major towards minor
	clockwise     bool      // the arc is drawn from finish to start
	grown         float64   // by what the radii given were too small
	large         bool      // as given
}

type vector struct{ x, y float64 }

func (v vector) size() float64 { return hypotenuse(v.x, v.y) }

func dot(a, b direction) float64   { return float64(a.cos*b.cos) + float64(a.sin*b.sin) }
func cross(a, b direction) float64 { return float64(a.cos*b.sin) - float64(a.sin*b.cos) }

func (d direction) opposite() direction { return direction{-d.cos, -d.sin} }

func (d direction) unit() direction {
	size := hypotenuse(d.cos, d.sin)
	return direction{d.cos / size, d.sin / size}
}

// ellipticalArc returns the arc between two ends that differ, y upwards, by the rules of
// SVG 2, section 9.5.1 and implementation notes B.2.4 and B.2.5: radii that do not reach are scaled up until
// they do. The rotation is in thousandths of a degree, and turns clockwise.
func ellipticalArc(ends box, rx, ry float64, rotation int, large, clockwise bool) segment {
	if rx == 0 || ry == 0 {
		return lineTo(ends.x0, ends.y0, ends.x1, ends.y1)
	}
	if rx == ry {
		rotation = 0
	}
	a := &ellipseArc{box: ends, large: large, clockwise: clockwise, grown: 1}
	axis := directionOf(-rotation)
	// The half chord in the frame where the ellipse is the unit circle.
	x, y := (ends.x0-ends.x1)/2, (ends.y0-ends.y1)/2
	half := direction{
		(float64(axis.cos*x) + float64(axis.sin*y)) / rx,
		(float64(axis.cos*y) - float64(axis.sin*x)) / ry,
	}
	// Radii that only just reach must not swing the centre about.
	const justReaches = 1e-14
	away := 0.0 // of the centre from the middle of the chord, in half chords
	if square := dot(half, half); square < 1-justReaches {
		away = math.Sqrt((1 - square) / square)
	} else if square > 1 {
		a.grown = math.Sqrt(square)
		rx, ry = rx*a.grown, ry*a.grown
		half = half.unit()
	}
	if large != clockwise {
		away = -away
	}
	// For the smaller arc drawn anticlockwise the centre lies left of the way.
	centre := direction{float64(away * half.sin), -float64(away * half.cos)}
	a.start = direction{half.cos - centre.cos, half.sin - centre.sin}.unit()
	a.finish = direction{-half.cos - centre.cos, -half.sin - centre.sin}.unit()
	if clockwise {
		a.start, a.finish = a.finish, a.start
	}
	a.major = vector{float64(rx * axis.cos), float64(rx * axis.sin)}
	a.minor = vector{-float64(ry * axis.sin), float64(ry * axis.cos)}
	offset := a.from(centre)
	a.cx, a.cy = (ends.x0+ends.x1)/2+offset.x, (ends.y0+ends.y1)/2+offset.y
	return a
}

// from returns the point of a direction as seen from the centre.
func (a *ellipseArc) from(d direction) vector {
	return vector{
		float64(d.cos*a.major.x) + float64(d.sin*a.minor.x),
		float64(d.cos*a.major.y) + float64(d.sin*a.minor.y),
	}
}

// stretched keeps start and finish: mirroring swaps the sense in which they are seen, and
// the half-axes with it.
func (a *ellipseArc) stretched(f frame) segment {
	s := *a
	s.box = box{f.x(a.x0), f.y(a.y0), f.x(a.x1), f.y(a.y1)}
	s.cx, s.cy = f.x(a.cx), f.y(a.cy)
	s.major = vector{float64(f.xScale * a.major.x), float64(f.yScale * a.major.y)}
	s.minor = vector{float64(f.xScale * a.minor.x), float64(f.yScale * a.minor.y)}
	return &s
}

// places returns where the arc turns in the coordinate whose greatest value is found in
// the direction top, in the order in which they are drawn.
func (a *ellipseArc) places(top direction) []direction {
	var inside []direction
	for _, d := range [...]direction{top, top.opposite()} {
		if along(a.start, d) > 0 && along(a.start, d) < along(a.start, a.finish) {
			inside = append(inside, d)
		}
	}
	if len(inside) == 2 && (along(a.start, inside[0]) > along(a.start, inside[1])) != a.clockwise {
		inside[0], inside[1] = inside[1], inside[0]
	}
	return inside
}

// along grows with the angle from one direction anticlockwise to the other, from 0 to 4.
func along(from, to direction) float64 {
	if cross(from, to) >= 0 {
		return 1 - dot(from, to)
	}
	return 3 + dot(from, to)
}

func (a *ellipseArc) pieces(to []piece) ([]piece, bool) {
	wide := vector{a.major.x, a.minor.x}.size()
	tall := vector{a.major.y, a.minor.y}.size()
	if wide <= turnSlack || tall <= turnSlack {
		return append(to, straight{a.box}), a.y1 >= a.y0
	}
	right := direction{a.major.x / wide, a.minor.x / wide}
	top := direction{a.major.y / tall, a.minor.y / tall}
	y := a.y0
	for _, d := range a.places(top) {
		next := a.cy + a.from(d).y
		if next < y-turnSlack {
			return to, false
		}
		y = next
	}
	if a.y1 < y-turnSlack || a.y1 < a.y0 {
		return to, false
	}
	from, at := box{x1: a.x0, y1: a.y0}, a.start
	if a.clockwise {
		at = a.finish
	}
	end := func(x, y float64, d direction) {
		from = box{from.x1, from.y1, x, min(max(y, from.y1), a.y1)}
		middle := direction{at.cos + d.cos, at.sin + d.sin}
		to = append(to, newBow(from, a, wide, tall, right, top, middle))
		at = d
	}
	for _, d := range a.places(right) {
		p := a.from(d)
		x, y := a.cx+p.x, a.cy+p.y
		if math.Abs(x-from.x1) > turnSlack && math.Abs(x-a.x1) > turnSlack {
			end(x, y, d)
		}
	}
	last := a.finish
	if a.clockwise {
		last = a.start
	}
	end(a.x1, a.y1, last)
	return to, true
}

// length goes along the arc in two halves.
func (a *ellipseArc) length() float64 {
	middle := between(a.start, a.finish)
	return a.lengthBetween(a.start, middle) + a.lengthBetween(middle, a.finish)
}

// between returns the direction halfway from one anticlockwise to the other.
func between(from, to direction) direction {
	middle := direction{from.cos + to.cos, from.sin + to.sin}
	if dot(from, to) < 0 { // the sum may vanish
		middle = direction{to.sin - from.sin, from.cos - to.cos}
	}
	middle = middle.unit()
	if along(from, middle) > along(from, to) {
		middle = middle.opposite()
	}
	return middle
}

// lengthBetween returns the length between two directions at most half a turn apart, by
// the tangent u of half the angle from the middle, which makes the points rational.
func (a *ellipseArc) lengthBetween(from, to direction) float64 {
	middle := between(from, to)
	end := cross(middle, to) / (1 + dot(middle, to))
	speed := func(u float64) float64 {
		below := 1 + float64(u*u)
		cos, sin := (1-float64(u*u))/below, 2*u/below
		ahead := direction{
			-(float64(middle.sin*cos) + float64(middle.cos*sin)),
			float64(middle.cos*cos) - float64(middle.sin*sin),
		}
		return 2 * a.from(ahead).size() / below
	}
	size := float64(end * (a.major.size() + a.minor.size()))
	return integral(speed, -end, end, size*lengthSlack)
}

func (a *ellipseArc) addTo(p *pathText) {
	p.command('A')
	rx, ry, axis := a.axes()
	rotation := direction{axis.cos, -axis.sin} // y downwards
	if rotation.sin < 0 {
		rotation = rotation.opposite()
	}
	p.number(round(rx / a.grown))
	p.number(round(ry / a.grown))
	p.number(round(rotation.angle()*(180_000/math.Pi)) % 180_000)
	p.flag(a.large)
	mirrored := float64(a.major.x*a.minor.y) < float64(a.major.y*a.minor.x)
	p.flag(a.clockwise != mirrored)
	p.point(a.x1, a.y1)
}

// axes returns the lengths of the two axes and the direction of the first. The
// half-axes of an arc that was not stretched are upright on each other.
func (a *ellipseArc) axes() (rx, ry float64, first direction) {
	rx, ry = a.major.size(), a.minor.size()
	product := float64(a.major.x*a.minor.x) + float64(a.major.y*a.minor.y)
	if math.Abs(product) <= 1e-12*rx*ry {
		return rx, ry, direction{a.major.x, a.major.y}.unit()
	}
	// The squares of the axes are the eigenvalues of the matrix of the half-axes times its
	// transpose; the direction is half that of ((xx - yy)/2, xy).
	xx := float64(a.major.x*a.major.x) + float64(a.minor.x*a.minor.x)
	yy := float64(a.major.y*a.major.y) + float64(a.minor.y*a.minor.y)
	xy := float64(a.major.x*a.major.y) + float64(a.minor.x*a.minor.y)
	away := hypotenuse((xx-yy)/2, xy)
	rx = math.Sqrt((xx+yy)/2 + away)
	ry = math.Abs(float64(a.major.x*a.minor.y)-float64(a.major.y*a.minor.x)) / rx
	cos := (xx - yy) / 2 / away
	first = direction{math.Sqrt(max(1+cos, 0) / 2), math.Sqrt(max(1-cos, 0) / 2)}
	if xy < 0 {
		first.sin = -first.sin
	}
	return rx, ry, first
}
