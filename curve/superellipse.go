package curve

import (
	"math"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// Bounds of the exponent of a superellipse.
var (
	leastExponent = decimal.New(5, -1)
	mostExponent  = decimal.New(10, 0)
)

const mostExponentPlaces = 100

// Superellipse returns a quarter of the superellipse |x/a|^n + |y/b|^n = 1 whose
// half-axes a and b are the width and the height: of N stitches, N (1 - (1 - t/R)^n)^(1/n)
// are gone after t of R rows. With the exponent 2 it is the edge of [QuarterEllipse], with
// 1 that of [Line]. Above 1 it starts level and ends upright, the squarer the
// greater the exponent is; below 1 it starts upright, ends level and is hollow.
//
// It returns an [*Error] that wraps [ErrRange] in the same cases as [Line], and if the
// exponent is not from 0.5 to 10 or has more than 100 places.
func Superellipse(width, height gauge.Length, exponent decimal.Decimal) (Edge, error) {
	if e := exponent.Exponent(); e < -mostExponentPlaces || e > mostExponentPlaces { // before it is computed with
		return Edge{}, rangeError("exponent", "with too many digits", "0.5 to 10, such as 2.5")
	}
	if exponent.Cmp(leastExponent) < 0 || exponent.Cmp(mostExponent) > 0 {
		return Edge{}, rangeError("exponent", exponent, "0.5 to 10")
	}
	if width.Sign() < 0 {
		return Edge{}, widthError(width)
	}
	o := &outline{}
	o.add(&superellipse{box{x1: 1, y1: 1}, exponent.InexactFloat64()}, 1, 1)
	return newEdge(width, height, o)
}

// superellipse is a segment and its only piece.
type superellipse struct {
	box
	exponent float64
}

func (s *superellipse) pieces(to []piece) ([]piece, bool) { return append(to, s), true }

func (s *superellipse) stretched(f frame) segment {
	return &superellipse{box{f.x(s.x0), f.y(s.y0), f.x(s.x1), f.y(s.y1)}, s.exponent}
}

func (s *superellipse) across(y float64) float64 {
	if y >= s.y1 {
		return s.x1
	}
	part := shortfall((y-s.y0)/(s.y1-s.y0), s.exponent)
	return s.x0 + float64((s.x1-s.x0)*power(part, 1/s.exponent))
}

func (s *superellipse) heightAt(x float64) float64 {
	if s.x0 == s.x1 {
		return s.y0
	}
	part := power((x-s.x0)/(s.x1-s.x0), s.exponent)
	return s.y0 + float64((s.y1-s.y0)*shortfall(part, 1/s.exponent))
}

// taken is the area between the upright line through the lower end and the edge, which is what lies
// above 1 - v = y taken from the whole.
func (s *superellipse) taken(y float64) float64 {
	width, height := s.x1-s.x0, s.y1-s.y0
	up := (y - s.y0) / height
	n := s.exponent
	// In the quarter X^n + V^n = 1 with V = 1 - up: the areas beside V and beside X make
	// up the whole and the rectangle X V.
	diagonal := power(0.5, 1/n)
	whole := 2*s.beside(diagonal) - float64(diagonal*diagonal)
	var part float64
	if rest := shortfall(up, n); rest <= 0.5 {
		x := power(rest, 1/n)
		part = s.beside(x) - float64(x*(1-up))
	} else {
		part = whole - s.beside(1-up)
	}
	return float64(s.x0*(y-s.y0)) + float64(float64(width*height)*part)
}

// beside returns the integral of (1 - v^n)^(1/n) over [0, v] for v^n <= 1/2, by the
// binomial series.
func (s *superellipse) beside(v float64) float64 {
	n := s.exponent
	z := power(v, n)
	sum, term := 0.0, 1.0
	for k := 1; math.Abs(term) > 0x1p-60; k++ {
		term *= float64(z*(float64(k-1)-1/n)) / float64(k)
		sum += term / (float64(float64(k)*n) + 1)
	}
	return v + float64(v*sum)
}

// length integrates by X^n if the edge is hollow, and else in two halves, by X up to the
// diagonal and by V beyond, so that the speed is finite everywhere.
func (s *superellipse) length() float64 {
	width, height, n := s.x1-s.x0, s.y1-s.y0, s.exponent
	size := math.Abs(width) + height
	if n <= 1 {
		return integral(func(z float64) float64 {
			return hypotenuse(width*power(z, 1/n-1), height*power(1-z, 1/n-1)) / n
		}, 0, 1, size*lengthSlack)
	}
	half := func(along, rise float64) float64 {
		return integral(func(x float64) float64 {
			slope := power(x/power(1-power(x, n), 1/n), n-1)
			return hypotenuse(along, rise*slope)
		}, 0, power(0.5, 1/n), size*lengthSlack)
	}
	return half(width, height) + half(height, width)
}

// addTo draws the edge by parabolas no farther than 1/100 mm from it. They keep its
// tangents where they meet, so that they neither fall nor turn.
func (s *superellipse) addTo(p *pathText) {
	if s.exponent == 1 {
		p.command('L')
		p.point(s.x1, s.y1)
		return
	}
	const mostHalvings = 20
	s.draw(p, 0, 0.5, mostHalvings)
	s.draw(p, 0.5, 1, mostHalvings)
}

// draw draws the stretch between two values of X^n.
func (s *superellipse) draw(p *pathText, from, to float64, depth int) {
	a, b := s.tangentAt(from), s.tangentAt(to)
	// The control point is where the tangents meet.
	turn := float64(a.right*b.up) - float64(a.up*b.right)
	x, y := (a.x+b.x)/2, (a.y+b.y)/2
	if turn != 0 {
		way := (float64((b.x-a.x)*b.up) - float64((b.y-a.y)*b.right)) / turn
		x = min(max(a.x+float64(way*a.right), a.x), b.x)
		y = min(max(a.y+float64(way*a.up), a.y), b.y)
	}
	for t := 0.25; t < 1 && depth > 0; t += 0.25 {
		if s.distance(mixed(a.x, x, b.x, t), mixed(a.y, y, b.y, t)) > nearEnough {
			s.draw(p, from, (from+to)/2, depth-1)
			s.draw(p, (from+to)/2, to, depth-1)
			return
		}
	}
	f := frame{s.x1 - s.x0, s.y1 - s.y0, s.x0, s.y0}
	p.command('Q')
	p.point(f.x(x), f.y(y))
	p.point(f.x(b.x), f.y(b.y))
}

// nearEnough leaves room for what lies between the points tried, and for rounding.
const nearEnough = 0.005 * millimetre

// mixed returns the point of a parabola.
func mixed(a, b, c, t float64) float64 {
	left := float64(a*(1-t)) + float64(b*t)
	return float64(left*(1-t)) + float64((float64(b*(1-t))+float64(c*t))*t)
}

// distance returns no less than the distance of a point of the unit quarter from the
// edge: the lesser of those across and upwards.
func (s *superellipse) distance(x, y float64) float64 {
	n := s.exponent
	across := (power(shortfall(y, n), 1/n) - x) * (s.x1 - s.x0)
	upwards := (shortfall(power(x, n), 1/n) - y) * (s.y1 - s.y0)
	return min(math.Abs(across), math.Abs(upwards))
}

// tangent is a point of the unit quarter and the way in which the edge goes there.
type tangent struct{ x, y, right, up float64 }

// tangentAt returns the point and the way with a given X^n. The normal there is (X^(n-1), V^(n-1)).
func (s *superellipse) tangentAt(part float64) tangent {
	n := s.exponent
	x, v := power(part, 1/n), power(1-part, 1/n)
	if n < 1 {
		return tangent{x, 1 - v, power(x, 1-n), power(v, 1-n)}
	}
	return tangent{x, 1 - v, power(v, n-1), power(x, n-1)}
}
