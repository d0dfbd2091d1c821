package curve

import "math"

// bezier is a line, a quadratic or a cubic Bezier curve by its control points, of which
// there are degree + 1.
type bezier struct {
	degree int
	x, y   [4]float64
}

func lineTo(x0, y0, x1, y1 float64) *bezier {
	return &bezier{degree: 1, x: [4]float64{x0, x1}, y: [4]float64{y0, y1}}
}

func (b *bezier) stretched(f frame) segment {
	s := &bezier{degree: b.degree}
	for i := range b.degree + 1 {
		s.x[i], s.y[i] = f.x(b.x[i]), f.y(b.y[i])
	}
	return s
}

func (b *bezier) addTo(p *pathText) {
	p.command("LQC"[b.degree-1])
	for i := 1; i <= b.degree; i++ {
		p.point(b.x[i], b.y[i])
	}
}

// pieces splits the curve where x turns. The curve turns nowhere if its control points
// do not.
func (b *bezier) pieces(to []piece) ([]piece, bool) {
	d := b.degree
	if d == 1 {
		if b.y[1] < b.y[0] {
			return to, false
		}
		return append(to, straight{box{b.x[0], b.y[0], b.x[1], b.y[1]}}), true
	}
	y := powersOf(b.y[0], b.y[1:d+1])
	if !ordered(b.y[:d+1]) {
		from := b.y[0]
		for _, t := range y.turns() {
			until := b.y[0] + y.at(t)
			if until < from-turnSlack {
				return to, false
			}
			from = until
		}
		if b.y[d] < from-turnSlack {
			return to, false
		}
	}
	if b.y[0] == b.y[d] || !ordered(b.x[:d+1]) && !falling(b.x[:d+1]) {
		return b.split(to, powersOf(b.x[0], b.x[1:d+1]), y), true
	}
	return append(to, newBend(box{b.x[0], b.y[0], b.x[d], b.y[d]}, powersOf(b.x[0], b.x[1:d+1]), y)), true
}

// split cuts the curve where x turns by more than rounding.
func (b *bezier) split(to []piece, x, y powers) []piece {
	level := b.y[0] == b.y[b.degree]
	at, from := 0.0, box{x1: b.x[0], y1: b.y[0]}
	end := func(t float64) {
		next := box{from.x1, from.y1, b.x[0] + x.at(t), min(max(b.y[0]+y.at(t), from.y1), b.y[b.degree])}
		if t == 1 {
			next.x1, next.y1 = b.x[b.degree], b.y[b.degree]
		}
		if level {
			to = append(to, straight{next})
		} else {
			to = append(to, newBend(next, x.between(at, t), y.between(at, t)))
		}
		at, from = t, next
	}
	turns := x.turns()
	switch {
	case len(turns) == 2 && math.Abs(x.at(turns[1])-x.at(turns[0])) <= turnSlack:
		turns = nil
	case len(turns) > 0 && math.Abs(x.at(turns[0])) <= turnSlack:
		turns = turns[1:]
	}
	if n := len(turns); n > 0 && math.Abs(x.at(1)-x.at(turns[n-1])) <= turnSlack {
		turns = turns[:n-1]
	}
	for _, t := range turns {
		end(t)
	}
	end(1)
	return to
}

func ordered(c []float64) bool {
	for i := range c[1:] {
		if c[i+1] < c[i] {
			return false
		}
	}
	return true
}

func falling(c []float64) bool {
	for i := range c[1:] {
		if c[i+1] > c[i] {
			return false
		}
	}
	return true
}

func (b *bezier) length() float64 {
	hull := 0.0
	for i := range b.degree {
		hull += hypotenuse(b.x[i+1]-b.x[i], b.y[i+1]-b.y[i])
	}
	if b.degree == 1 {
		return hull
	}
	x, y := powersOf(b.x[0], b.x[1:b.degree+1]), powersOf(b.y[0], b.y[1:b.degree+1])
	speed := func(t float64) float64 { return hypotenuse(x.slope(t), y.slope(t)) }
	return integral(speed, 0, 1, hull*lengthSlack)
}

// lengthSlack is the part of its size at which the length of a curve is not refined.
const lengthSlack = 1e-14

func hypotenuse(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

// powers is the polynomial p[0] t + p[1] t² + p[2] t³ over [0, 1].
type powers [3]float64

// powersOf returns the polynomial with these Bezier coefficients, less the first.
func powersOf(first float64, c []float64) powers {
	if len(c) == 2 {
		return powers{2 * (c[0] - first), (c[1] - first) - 2*(c[0]-first)}
	}
	a, b, d := c[0]-first, c[1]-first, c[2]-first
	return powers{3 * a, 3*b - 6*a, d - 3*b + 3*a}
}

func (p powers) at(t float64) float64 {
	return float64(t * (p[0] + float64(t*(p[1]+float64(t*p[2])))))
}

func (p powers) slope(t float64) float64 {
	return p[0] + float64(t*(2*p[1]+float64(t*(3*p[2]))))
}

// between returns the polynomial over [a, b] alone, from its value at a.
func (p powers) between(a, b float64) powers {
	w := b - a
	return powers{
		float64(w * p.slope(a)),
		float64(float64(w*w) * (p[1] + float64(3*float64(p[2]*a)))),
		float64(float64(float64(w*w)*w) * p[2]),
	}
}

// backwards returns how far the polynomial lies below its value at 1, by 1 - t.
func (p powers) backwards() powers {
	return powers{p[0] + 2*p[1] + 3*p[2], -p[1] - 3*p[2], p[2]}
}

func (p powers) negative() powers { return powers{-p[0], -p[1], -p[2]} }

// turns returns the places inside (0, 1) where the slope changes its sign, in order.
func (p powers) turns() []float64 {
	// 3 p[2] t² + 2 p[1] t + p[0] = 0
	a, b, c := 3*p[2], p[1], p[0]
	square := float64(b*b) - float64(a*c)
	if square <= 0 {
		return nil
	}
	// The sum without cancellation; the other root follows from the product c/a.
	sum := -(b + math.Copysign(math.Sqrt(square), b))
	roots := make([]float64, 0, 2)
	for _, t := range [...]float64{c / sum, sum / a} {
		if t > 0 && t < 1 {
			roots = append(roots, t)
		}
	}
	if len(roots) == 2 && roots[0] > roots[1] {
		roots[0], roots[1] = roots[1], roots[0]
	}
	return roots
}

// reach returns the place in [0, 1] where a polynomial that does not fall has a value
// between those at 0 and 1. It takes Newton's steps as long as they stay in the bracket,
// which shrinks with every step, and ends where the place no longer moves.
func (p powers) reach(value float64) float64 {
	low, high := 0.0, 1.0
	if value <= 0 {
		return low
	}
	t := value / p.at(1)
	if !(t > 0 && t < 1) {
		return high
	}
	const mostSteps = 200
	for range mostSteps {
		over := p.at(t) - value
		switch {
		case over == 0:
			return t
		case over < 0:
			low = t
		default:
			high = t
		}
		next := t - over/p.slope(t)
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-t) <= 0x1p-53*t {
			return next
		}
		t = next
	}
	return t
}
