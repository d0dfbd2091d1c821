package curve_test

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"pgregory.net/rapid"
)

// Lengths of quarter ellipses with half-axes a and b: a E(m), m = 1 - b²/a², a being
// the larger. E(m) is tabulated to nine decimals in M. Abramowitz and I. Stegun, Handbook
// of Mathematical Functions (1964), table 17.1, by the parameter m; the arc is DLMF
// section 19.30(i). Values computed with 30-digit arithmetic. They are tried in tens of metres, so that
// rounding to 1e-9 mm does not show.
func TestQuarterEllipseLength(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"1", "1", 1.5707963267949},
		{"1", "0.5", 1.21105602756846}, // E(0.75)
		{"3", "1", 3.34122330513881},
		{"3", "2", 3.96635989732265},
		{"4", "3", 5.52587304017738},
		{"5", "3", 6.38174971584953}, // 5 E(0.64)
		{"5", "4", 7.09041697224362}, // 5 E(0.36)
		{"9", "7", 12.6155061248764},
		{"7.5", "9", 12.9858584921432},
		{"8.5", "7", 12.2021906077875},
		{"10", "7", 13.4559224536798},
		{"8", "2", 8.57842177515683},
		{"10", "1", 10.1599354502522}, // 10 E(0.99)
	} {
		for _, edge := range []curve.Edge{
			must(curve.QuarterEllipse(tens(c.a), tens(c.b))), must(curve.QuarterEllipse(tens(c.b), tens(c.a))),
		} {
			if got := millimetres(edge.Length()) / 10_000; math.Abs(got-c.want) > 5e-13*c.want {
				t.Errorf("%s by %s: got %.15g, want %.15g", c.a, c.b, got, c.want)
			}
		}
	}
}

// E(m) as a table prints it, by a quarter ellipse with half-axes 1 and sqrt(1 - m).
func TestQuarterEllipseLengthByTable(t *testing.T) {
	for _, c := range []struct{ b, want string }{
		{"0.948683298050514", "1.530757637"}, // E(0.1)
		{"0.894427190999916", "1.489035058"}, // E(0.2)
		{"0.836660026534076", "1.445363064"}, // E(0.3)
		{"0.774596669241483", "1.399392139"}, // E(0.4)
		{"0.707106781186548", "1.350643881"}, // E(0.5)
		{"0.632455532033676", "1.298428035"}, // E(0.6)
		{"0.547722557505166", "1.241670568"}, // E(0.7)
		{"0.447213595499958", "1.178489924"}, // E(0.8)
		{"0.316227766016838", "1.104774733"}, // E(0.9)
	} {
		edge := must(curve.QuarterEllipse(tens("1"), tens(c.b)))
		if got := edge.Length().Millimetres().Shift(-4).StringFixed(9); got != c.want {
			t.Errorf("half-axis %s: got %s, want %s", c.b, got, c.want)
		}
	}
}

// For half-axes a and b: sqrt(a² + b²) < arc < a + b and pi (a + b)/4 <= arc <=
// pi sqrt((a² + b²)/2)/2.
func TestQuarterEllipseBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := drawLength(t, "width"), drawLength(t, "height")
		edge := must(curve.QuarterEllipse(w, h))
		a, b, arc := millimetres(w), millimetres(h), millimetres(edge.Length())
		const off = 1e-8
		if chord := math.Hypot(a, b); arc <= chord-off || arc >= a+b+off ||
			arc < math.Pi*(a+b)/4-off || arc > math.Pi*chord/math.Sqrt2/2+off {
			t.Fatalf("%v by %v: %v", a, b, arc)
		}
		line := must(curve.Line(w, h))
		if got := millimetres(line.Length()); math.Abs(got-math.Hypot(a, b)) > 1e-8 {
			t.Fatalf("line of %v by %v: %v", a, b, got)
		}
		if edge.Area() <= line.Area() || line.Area() != a*b/2 {
			t.Fatalf("areas %v and %v", edge.Area(), line.Area())
		}
	})
}

func TestEdge(t *testing.T) {
	for _, c := range []struct {
		name         string
		edge         curve.Edge
		area, length float64
		path         string
		toPath       string
	}{
		{"line", must(curve.Line(mm("60"), mm("80"))), 2400, 100, "M 0 80 L 60 0", "M 0 10 L 20 0"},
		{"ellipse", must(curve.QuarterEllipse(mm("60"), mm("80"))), 1200 * math.Pi, 110.517460803547,
			"M 0 80 A 60 80 0 0 0 60 0", "M 0 10 A 20 10 0 0 0 20 0"},
		{"rounded", must(curve.Line(mm("0.0005"), mm("2.50"))), 0.000625, 2.50000005, "M 0 2.5 L 0.001 0", "M 0 10 L 20 0"},
		{"upright line", must(curve.Line(mm("0"), mm("80"))), 0, 80, "M 0 80 L 0 0", "M 0 10 L 20 0"},
		{"upright ellipse", must(curve.QuarterEllipse(mm("0"), mm("80"))), 0, 80, "M 0 80 A 0 80 0 0 0 0 0", "M 0 10 A 20 10 0 0 0 20 0"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.edge.Area(); math.Abs(got-c.area) > 1e-12*c.area {
				t.Errorf("area %v, want %v", got, c.area)
			}
			if got := millimetres(c.edge.Length()); math.Abs(got-c.length) > 1e-8 {
				t.Errorf("length %v, want %v", got, c.length)
			}
			if got := c.edge.Path(); got != c.path {
				t.Errorf("path %q, want %q", got, c.path)
			}
			scaled := must(c.edge.Scaled(mm("20"), mm("10")))
			if got := scaled.Path(); got != c.toPath || millimetres(scaled.Width()) != 20 || millimetres(scaled.Height()) != 10 {
				t.Errorf("scaled: %q, %v by %v", got, scaled.Width(), scaled.Height())
			}
		})
	}
}

func TestEdgeErrors(t *testing.T) {
	for _, c := range []struct{ name, width, height string }{
		{"no height", "10", "0"},
		{"negative height", "10", "-1"},
		{"tiny height", "10", "0.0009"},
		{"negative width", "-1", "10"},
		{"absurd width", "1e10", "10"},
		{"absurd height", "10", "1e400"},
	} {
		for _, make := range []func(w, h gauge.Length) (curve.Edge, error){
			curve.Line, curve.QuarterEllipse, forms()[0].edge.Scaled,
		} {
			if _, err := make(mm(c.width), mm(c.height)); !errors.Is(err, curve.ErrRange) {
				t.Errorf("%s: got %v", c.name, err)
			}
		}
	}
}

func TestZeroEdge(t *testing.T) {
	var zero curve.Edge
	if _, err := zero.Scaled(mm("1"), mm("1")); !errors.Is(err, curve.ErrRange) {
		t.Errorf("scaled: %v", err)
	}
	if zero.Area() != 0 || zero.Path() != "" || zero.Length().Millimetres().Sign() != 0 ||
		zero.Width().Millimetres().Sign() != 0 || zero.Height().Millimetres().Sign() != 0 {
		t.Error("the zero Edge has a size")
	}
}

// The part of the disc agrees within 2^-52 with a series in 200 bits.
func TestDiscPart(t *testing.T) {
	worst := 0.0
	for _, n := range []int{1, 2, 3, 7, 12, 90, 360, 997, 2000} {
		for i := range n + 1 {
			got := curve.DiscPart(i, n)
			diff := new(big.Float).SetPrec(200).SetFloat64(got)
			off, _ := diff.Sub(diff, discSeries(i, n)).Float64()
			worst = max(worst, math.Abs(off))
		}
	}
	if worst > 0x1p-52 {
		t.Errorf("off by %g, want at most %g", worst, 0x1p-52)
	}
	if curve.DiscPart(0, 5) != 0 || curve.DiscPart(5, 5) != math.Pi/4 {
		t.Error("the ends are not exact")
	}
}

// discSeries returns (asin x + x sqrt(1 - x²))/2 at x = i/n by the series of the arc
// sine, above 1/2 by asin x = pi/2 - 2 asin sqrt((1 - x)/2).
func discSeries(i, n int) *big.Float {
	number := func(x int) *big.Float { return new(big.Float).SetPrec(200).SetInt64(int64(x)) }
	series := func(x *big.Float) *big.Float {
		square, sum, power := number(0).Mul(x, x), number(0), number(0).Set(x)
		for k := 1; k < 150; k++ {
			sum.Add(sum, number(0).Quo(power, number(2*k-1)))
			power.Mul(power, square)
			power.Quo(power.Mul(power, number(2*k-1)), number(2*k))
		}
		return sum
	}
	half := number(0).Quo(number(1), number(2))
	x := number(0).Quo(number(i), number(n))
	angle := number(0)
	if x.Cmp(half) <= 0 {
		angle = series(x)
	} else {
		y := number(0).Sqrt(number(0).Mul(half, number(0).Sub(number(1), x)))
		pi := number(0).Mul(number(6), series(half)) // asin 1/2 = pi/6
		angle.Sub(number(0).Mul(half, pi), number(0).Mul(number(2), series(y)))
	}
	chord := number(0).Sqrt(number(0).Sub(number(1), number(0).Mul(x, x)))
	return angle.Mul(half, angle.Add(angle, chord.Mul(chord, x)))
}
