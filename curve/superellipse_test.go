package curve_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/walewise/curve"
	"github.com/shopspring/decimal"
)

// Areas of the whole superellipse with half-axes 1, 4 gamma(1 + 1/n)²/gamma(1 + 2/n),
// and lengths of a quarter by quadrature with 30 digits; of exponent 1/2 the quarter is an arc
// of a parabola of length 1 + asinh(1)/sqrt 2, by hand.
func TestSuperellipse(t *testing.T) {
	for _, c := range []struct {
		exponent              string
		area, length, length3 float64 // length3 of half-axes 3 and 2
	}{
		{"0.5", 2. / 3, 1 + math.Asinh(1)/math.Sqrt2, 0},
		{"1", 2, 1.414213562373, 3.605551275464},
		{"1.5", 2.737853623918903, 1.484840358644, 3.765129320926},
		{"2", math.Pi, 1.570796326795, 3.966359897323},
		{"2.5", 3.380935362537383, 1.636676180741, 4.12287083304},
		{"3", 3.5332775005709, 1.686248285032, 4.24143338369},
		{"4", 3.708149354602744, 1.754424485891, 4.40527874056},
	} {
		n := decimal.RequireFromString(c.exponent)
		edge := must(curve.Superellipse(tens("1"), tens("1"), n))
		if got := 4 * edge.Area() / 1e8; math.Abs(got-c.area) > 2e-15*c.area {
			t.Errorf("%s: area %.17g, want %.17g", n, got, c.area)
		}
		if got := millimetres(edge.Length()) / 1e4; math.Abs(got-c.length) > 6e-13*c.length {
			t.Errorf("%s: length %.15g, want %.15g", n, got, c.length)
		}
		oblong := must(curve.Superellipse(tens("3"), tens("2"), n))
		if got := millimetres(oblong.Length()) / 1e4; c.length3 > 0 && math.Abs(got-c.length3) > 6e-13*c.length3 {
			t.Errorf("%s: length %.15g of 3 by 2, want %.15g", n, got, c.length3)
		}
	}
}

func exponents() []string { return []string{"0.5", "0.66", "1", "1.3", "2", "2.5", "5", "10"} }

// The path is an edge again, close to the curve.
func TestSuperellipsePath(t *testing.T) {
	for _, n := range exponents() {
		for _, size := range [][2]string{{"90", "70"}, {"1", "400"}, {"60.5", "60.5"}, {"2000", "3000"}} {
			edge := must(curve.Superellipse(mm(size[0]), mm(size[1]), decimal.RequireFromString(n)))
			drawn, err := curve.ParsePath(edge.Path())
			if err != nil {
				t.Errorf("%s, %v: %v", n, size, err)
				continue
			}
			if curve.Turns(drawn) {
				t.Errorf("%s, %v turns", n, size)
			}
			w, h := millimetres(edge.Width()), millimetres(edge.Height())
			exponent, _ := decimal.RequireFromString(n).Float64()
			for _, p := range curve.Pieces(drawn) {
				_, y0, _, y1 := p.Ends()
				for i := range 9 {
					y := y0 + (y1-y0)*float64(i)/8
					x := p.Across(y) / 1000
					x, up := x/w, y/1000/h
					across := math.Abs(x-math.Pow(1-math.Pow(1-up, exponent), 1/exponent)) * w
					upwards := math.Abs(up-(1-math.Pow(1-math.Pow(min(x, 1), exponent), 1/exponent))) * h
					if min(across, upwards) > 0.01 {
						t.Errorf("%s, %v: off by %g mm at %g", n, size, min(across, upwards), up)
					}
				}
			}
		}
	}
}

func TestSuperellipseRefuses(t *testing.T) {
	for _, c := range []struct{ width, height, exponent string }{
		{"10", "10", "0.49"}, {"10", "10", "10.1"}, {"10", "10", "-2"}, {"-10", "10", "2"}, {"10", "0", "2"},
	} {
		_, err := curve.Superellipse(mm(c.width), mm(c.height), decimal.RequireFromString(c.exponent))
		if !errors.Is(err, curve.ErrRange) {
			t.Error(fmt.Sprint(c), err)
		}
	}
	for _, exponent := range []decimal.Decimal{
		decimal.New(1, 1<<30), decimal.New(1, -1<<30), decimal.NewFromInt(2).Add(decimal.New(3, -100_000)),
	} {
		if _, err := curve.Superellipse(mm("10"), mm("10"), exponent); !errors.Is(err, curve.ErrRange) || len(err.Error()) > 200 {
			t.Error(err)
		}
	}
}
