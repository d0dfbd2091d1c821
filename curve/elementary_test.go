package curve_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/walewise/curve"
	"pgregory.net/rapid"
)

// Against 200 bits, by roots of whole powers.
func TestPower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-30, 1).Draw(t, "x")
		eighths := rapid.IntRange(1, 80).Draw(t, "eighths")
		a := float64(eighths) / 8
		near(t, "power", curve.Power(x, a), bigPower(number(x), eighths))
		left := number(0).Sub(number(1), number(x))
		near(t, "shortfall", curve.Shortfall(x, a), number(0).Sub(number(1), bigPower(left, eighths)))
	})
	if curve.Power(0, 2) != 0 || curve.Power(1, 2) != 1 || curve.Shortfall(0, 2) != 0 || curve.Shortfall(1, 2) != 1 {
		t.Error("the ends are not exact")
	}
}

func number(x float64) *big.Float { return new(big.Float).SetPrec(400).SetFloat64(x) }

func bigPower(x *big.Float, eighths int) *big.Float {
	p := number(1)
	for range eighths {
		p.Mul(p, x)
	}
	for range 3 {
		p.Sqrt(p)
	}
	return p
}

// near allows three halves of a unit in the last place of one.
func near(t *rapid.T, name string, got float64, want *big.Float) {
	off, _ := number(0).Quo(number(0).Sub(number(got), want), want).Float64()
	if math.Abs(off) > 3*0x1p-53 {
		w, _ := want.Float64()
		t.Errorf("%s: got %g, want %g, off by %g", name, got, w, off)
	}
}

func TestDirection(t *testing.T) {
	for angle := -400_000; angle <= 400_000; angle += 125 {
		cos, sin, back := curve.Direction(angle)
		wantSin, wantCos := math.Sincos(float64(angle) * math.Pi / 180_000)
		if math.Abs(cos-wantCos) > 2e-15 || math.Abs(sin-wantSin) > 2e-15 {
			t.Fatalf("%d: got %g and %g, want %g and %g", angle, cos, sin, wantCos, wantSin)
		}
		want := float64((angle+720_000)%180_000) * math.Pi / 180_000
		if off := math.Abs(back - want); off > 1e-15 && math.Abs(off-math.Pi) > 1e-15 {
			t.Fatalf("%d: got the angle %g, want %g", angle, back, want)
		}
	}
	for quarter, want := range [][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		if cos, sin, _ := curve.Direction(90_000 * quarter); cos != want[0] || sin != want[1] {
			t.Errorf("quarter %d: got %g and %g", quarter, cos, sin)
		}
	}
}
