package curve

import "math"

// The functions of this file use no operations but those that IEEE 754 rounds
// correctly, math.FMA among them, so that they have the same bits on every platform,
// which those of the standard library do not promise.

// ln 2 as a sum. The first part has so many zeros at its end that its products with
// exponents are exact.
const (
	ln2High = 6.93147180369123816490e-01
	ln2Low  = 1.90821492927058770002e-10
)

// logarithm returns the natural logarithm of x > 0 as a sum whose second part is small.
func logarithm(x float64) (high, low float64) {
	m, exponent := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m *= 2
		exponent--
	}
	// log m = 2 artanh s = 2s + 2s³/3 + ..., s = (m - 1)/(m + 1).
	below := m + 1
	s := (m - 1) / below
	rest := (math.FMA(-s, below, m-1) - float64(s*(m-(below-1)))) / below
	square := float64(s * s)
	tail := 0.0
	for k := 25; k >= 3; k -= 2 {
		tail = float64(tail*square) + 2/float64(k)
	}
	tail = float64(float64(s*square) * tail)
	high, low = exactSum(float64(exponent)*ln2High, 2*s)
	low += float64(float64(exponent)*ln2Low) + (2*rest + tail)
	return exactSum(high, low)
}

// exactSum returns a + b rounded, and what the rounding left out.
func exactSum(a, b float64) (sum, rest float64) {
	sum = a + b
	second := sum - a
	return sum, (a - (sum - second)) + (b - second)
}

// growth returns scale and less with e to the power high + low = scale (1 + less), the
// scale being a power of two. The sum is not positive, or tiny.
func growth(high, low float64) (scale, less float64) {
	powers := math.Round(high / math.Ln2)
	if powers < -1000 {
		return 0, 0
	}
	x, low := exactSum(high-float64(powers*ln2High), low-float64(powers*ln2Low))
	// e^x - 1 = x + x² (1/2 + x/6 + ...)
	tail := 0.0
	for k := 16; k >= 2; k-- {
		tail = (float64(tail*x) + 1) / float64(k)
	}
	return math.Ldexp(1, int(powers)), x + (low + float64(low*x) + float64(float64(x*x)*tail))
}

// power returns x to the power a, 0 <= x <= 1 and a > 0.
func power(x, a float64) float64 {
	if x <= 0 || x >= 1 {
		return min(max(x, 0), 1)
	}
	high, low := logarithm(x)
	scale, less := growth(times(a, high, low))
	return scale + float64(scale*less)
}

// shortfall returns 1 - (1 - y)^a, 0 <= y <= 1 and a > 0, also for tiny y.
func shortfall(y, a float64) float64 {
	if y <= 0 || y >= 1 {
		return min(max(y, 0), 1)
	}
	left := 1 - y
	high, low := logarithm(left)
	high, low = exactSum(high, low+((1-left)-y)/left)
	scale, less := growth(times(a, high, low))
	return (1 - scale) - float64(scale*less)
}

// times returns a (high + low) as such a sum.
func times(a, high, low float64) (float64, float64) {
	product := float64(a * high)
	return product, math.FMA(a, high, -product) + float64(a*low)
}

// direction is a unit vector.
type direction struct{ cos, sin float64 }

// directionOf returns the direction of an angle in thousandths of a degree.
func directionOf(angle int) direction {
	const quarter = 90_000
	angle = ((angle % (4 * quarter)) + 4*quarter) % (4 * quarter)
	d := direction{1, 0}
	switch rest := angle % quarter; {
	case 2*rest <= quarter:
		d.cos, d.sin = small(rest)
	default:
		d.sin, d.cos = small(quarter - rest)
	}
	for range angle / quarter {
		d = direction{-d.sin, d.cos}
	}
	return d
}

// small returns the cosine and the sine of an angle of 0 to 45000 thousandths of a degree.
func small(angle int) (cos, sin float64) {
	x := float64(angle) * (math.Pi / 180_000)
	square := float64(x * x)
	for k := 20; k >= 2; k -= 2 {
		cos = float64(square*(1-cos)) / float64(k*(k-1))
		sin = float64(square*(1-sin)) / float64(k*(k+1))
	}
	return 1 - cos, x - float64(x*sin)
}

// angle returns the angle of a direction with sin >= 0, from 0 to pi.
func (d direction) angle() float64 {
	cos := math.Abs(d.cos)
	var angle float64
	switch {
	case d.sin <= 0.5:
		angle = arcsine(d.sin, float64(d.sin*d.sin))
	case cos <= 0.5:
		angle = math.Pi/2 - arcsine(cos, float64(cos*cos))
	default:
		// asin x = pi/2 - 2 asin sqrt((1 - x)/2)
		z := (1 - d.sin) / 2
		angle = math.Pi/2 - 2*arcsine(math.Sqrt(z), z)
	}
	if d.cos < 0 {
		return math.Pi - angle
	}
	return angle
}

// gaussNodes and gaussWeights are the Gauss-Legendre rule of ten points over [-1, 1],
// those right of zero.
var (
	gaussNodes = [...]float64{
		0.14887433898163121088, 0.43339539412924719080, 0.67940956829902440623,
		0.86506336668898451073, 0.97390652851717172008,
	}
	gaussWeights = [...]float64{
		0.29552422471475287017, 0.26926671930999635509, 0.21908636251598204400,
		0.14945134915058059315, 0.06667134430868813759,
	}
)

// integral returns the integral of f over [a, b] by the Gauss-Legendre rule of ten
// points. Intervals are halved until their halves together differ by no more than slack.
func integral(f func(float64) float64, a, b, slack float64) float64 {
	var refined func(a, b, whole float64, depth int) float64
	refined = func(a, b, whole float64, depth int) float64 {
		middle := (a + b) / 2
		left, right := gauss(f, a, middle), gauss(f, middle, b)
		if depth == 0 || math.Abs(left+right-whole) <= slack {
			return left + right
		}
		return refined(a, middle, left, depth-1) + refined(middle, b, right, depth-1)
	}
	const mostHalvings = 48
	return refined(a, b, gauss(f, a, b), mostHalvings)
}

func gauss(f func(float64) float64, a, b float64) float64 {
	middle, half := (a+b)/2, (b-a)/2
	sum := 0.0
	for i, node := range gaussNodes {
		away := float64(half * node)
		sum += float64(gaussWeights[i] * (f(middle-away) + f(middle+away)))
	}
	return float64(half * sum)
}
