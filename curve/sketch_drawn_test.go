package curve_test

import (
	"math"
	"testing"

	"example.com/walewise/curve"
	"github.com/shopspring/decimal"
)

// Drawn edges for the slow way. Each is a formula derived by hand for the unit box,
// found without the package, and right within few units of the last place.

// drawnForms returns edges from path data, from points and with an exponent.
func drawnForms() []form {
	return []form{
		{"drawn neck", must(curve.ParsePath("M 0 80 C 30 80 60 50 60 0")), drawnNeck.sketch},
		{"drawn cap", must(curve.ParsePath("M 0 100 A 60 50 0 0 0 60 50 A 60 50 0 0 1 120 0")), drawnCap.sketch},
		{"superellipse", must(curve.Superellipse(mm("60"), mm("80"), decimal.RequireFromString("2.5"))), drawnSuperellipse.sketch},
		{"jump", must(curve.Polyline(
			curve.Point{Across: mm("0"), Up: mm("0")}, curve.Point{Across: mm("15"), Up: mm("24")},
			curve.Point{Across: mm("45"), Up: mm("24")}, curve.Point{Across: mm("60"), Up: mm("80")},
		)), drawnJump.sketch},
	}
}

// unitSketch is a drawing in a box of one stitch and one row.
type unitSketch struct {
	f, integral, inverse func(float64) float64 // as in sketch
	corners              []float64             // as in sketch
}

func (u unitSketch) sketch(stitches, rows int) sketch {
	n, r := float64(stitches), float64(rows)
	s := sketch{
		rows: rows, stitches: stitches,
		f:        func(t float64) float64 { return n * u.f(t/r) },
		integral: func(t float64) float64 { return n * r * u.integral(t/r) },
		inverse:  func(c float64) float64 { return r * u.inverse(c/n) },
	}
	for _, corner := range u.corners {
		s.corners = append(s.corners, r*corner)
	}
	return s
}

// The control points (0, 0), (1/2, 0), (1, 3/8), (1, 1), y upwards, make
//
//	x(s) = 3/2 s - 1/2 s³,  y(s) = 9/8 s² - 1/8 s³.
//
// With s = 2 sin a is x = sin 3a. With s = 3 + 6 cos b is 1 - 4/27 y = cos 3b, where b is
// a third of a turn less c/3, and y = 27/2 sin²(c/2).
var drawnNeck = unitSketch{
	f: func(t float64) float64 {
		s := drawnNeckAt(t)
		return s * (3 - s*s) / 2
	},
	integral: func(t float64) float64 { // of x dy
		s := drawnNeckAt(t)
		return s * s * s * (9./8 + s*(-9./64+s*(-9./40+s/32)))
	},
	inverse: func(c float64) float64 {
		s := 2 * math.Sin(math.Asin(c)/3)
		return s * s * (9 - s) / 8
	},
}

// drawnNeckAt returns the parameter where the neck is at that height.
func drawnNeckAt(y float64) float64 {
	third := 2 * math.Asin(math.Sqrt(2*y/27)) / 3
	half := math.Sin(third / 2)
	return 6*half*half + 3*math.Sqrt(3)*math.Sin(third)
}

// The first arc starts level and ends upright, halfway up and halfway across; the
// second is the first turned by half a turn.
var drawnCap = unitSketch{
	f: func(t float64) float64 {
		if t < 0.5 {
			return quarterAt(2*t) / 2
		}
		return 1 - quarterAt(2*(1-t))/2
	},
	integral: func(t float64) float64 {
		if t < 0.5 {
			return quarterBelow(2*t) / 4
		}
		return t - 0.5 + quarterBelow(2*(1-t))/4
	},
	inverse: func(c float64) float64 {
		if c < 0.5 {
			return quarterReaches(2*c) / 2
		}
		return 1 - quarterReaches(2*(1-c))/2
	},
	corners: []float64{0.5},
}

// quarterAt is how far across a quarter of the unit circle is at a height,
// quarterBelow the integral of that, and quarterReaches where it is that far across.
func quarterAt(t float64) float64      { return math.Sqrt(t * (2 - t)) }
func quarterBelow(t float64) float64   { return (math.Acos(1-t) - (1-t)*quarterAt(t)) / 2 }
func quarterReaches(c float64) float64 { return c * c / (1 + math.Sqrt((1-c)*(1+c))) }

// x^n + (1-t)^n = 1 is its own mirror image in x and 1 - t, so that one integral serves
// below the diagonal and above it.
var drawnSuperellipse = unitSketch{
	f: superellipseAcross,
	integral: func(t float64) float64 {
		diagonal := math.Pow(0.5, 1/drawnExponent)
		below := func(t float64) float64 { // from 0 to t
			x := superellipseAcross(t)
			return t*x - superellipseBeside(x)
		}
		above := func(y float64) float64 { return y - superellipseBeside(y) } // from 1 - y to 1
		if t <= 1-diagonal {
			return below(t)
		}
		return below(1-diagonal) + above(diagonal) - above(1-t)
	},
	inverse: superellipseHeight,
}

const drawnExponent = 2.5

// superellipseAcross is (1 - (1 - t)^n)^(1/n).
func superellipseAcross(t float64) float64 {
	return math.Pow(-math.Expm1(drawnExponent*math.Log1p(-t)), 1/drawnExponent)
}

// superellipseHeight is 1 - (1 - x^n)^(1/n).
func superellipseHeight(x float64) float64 {
	return -math.Expm1(math.Log1p(-math.Pow(x, drawnExponent)) / drawnExponent)
}

// superellipseBeside is the integral of superellipseHeight over [0, x], by the binomial
// series of the power. Up to the diagonal, where x^n = 1/2, each term is less than half
// of the one before.
func superellipseBeside(x float64) float64 {
	sum, power, coefficient := 0.0, x, 1/drawnExponent
	for k := 1.0; k <= 60; k++ {
		power *= math.Pow(x, drawnExponent)
		sum += coefficient * power / (drawnExponent*k + 1)
		coefficient *= (k - 1/drawnExponent) / (k + 1)
	}
	return sum
}

// Corners (0, 0), (1/4, 3/10), (3/4, 3/10), (1, 1).
var drawnJump = unitSketch{
	f: func(t float64) float64 {
		if t < 0.3 {
			return 0.25 * t / 0.3
		}
		return 0.75 + 0.25*(t-0.3)/0.7
	},
	integral: func(t float64) float64 {
		if t < 0.3 {
			return 0.125 * t * t / 0.3
		}
		return 0.125*0.3 + (t-0.3)*(0.75+0.125*(t-0.3)/0.7)
	},
	inverse: func(c float64) float64 {
		switch {
		case c < 0.25:
			return 0.3 * c / 0.25
		case c <= 0.75:
			return 0.3
		}
		return 0.3 + 0.7*(c-0.75)/0.25
	},
	corners: []float64{0.3},
}

// What a sketch says of one drawing three times agrees: the integral with quadrature of f,
// and the inverse with f.
func TestSketchesAgreeWithThemselves(t *testing.T) {
	for _, f := range forms() {
		for _, box := range [][2]int{{1, 1}, {7, 5}, {40, 30}, {160, 90}, {90, 160}} {
			stitches, rows := box[0], box[1]
			s := f.sketch(stitches, rows)
			for r := 1; r <= rows; r++ {
				got, want := s.integral(float64(r))-s.integral(float64(r-1)), quadrature(s, r, 0)
				if math.Abs(got-want) > 1e-10 {
					t.Errorf("%s, %v: integral over row %d is %.15g, want %.15g", f.name, box, r, got, want)
				}
			}
			for c := range stitches + 1 {
				at, beside := s.inverse(float64(c)), 1e-9*float64(rows)
				if below := s.f(max(at-beside, 0)); at > beside && below > float64(c) {
					t.Errorf("%s, %v: %v before %d stitches are reached", f.name, box, below, c)
				}
				if above := s.f(min(at+beside, float64(rows))); above < float64(c)-1e-12*float64(stitches) {
					t.Errorf("%s, %v: %v after %d stitches are reached", f.name, box, above, c)
				}
			}
		}
	}
}
