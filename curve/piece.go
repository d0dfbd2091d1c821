package curve

// piece is a stretch of an edge on which neither coordinate turns back: y does not fall,
// and x only grows or only shrinks. Both are measured from the lower end of the edge, x
// as stitches go and y upwards.
type piece interface {
	// ends returns the two ends, y0 <= y1. If they are equal, the piece is level and
	// the edge jumps.
	ends() (x0, y0, x1, y1 float64)
	// across returns x at the height y, y0 <= y <= y1; of a level piece x1.
	across(y float64) float64
	// heightAt returns the least height where x is reached, for x between x0 and x1.
	heightAt(x float64) float64
	// taken returns the integral of x over the heights from y0 up to y.
	taken(y float64) float64
}

// turnSlack is the length in thousandths of a millimetre below which turning back is
// rounding.
const turnSlack = 1e-6

type box struct{ x0, y0, x1, y1 float64 }

func (b box) ends() (x0, y0, x1, y1 float64) { return b.x0, b.y0, b.x1, b.y1 }

// within returns x, or the end of the box beyond which it lies.
func (b box) within(x float64) float64 {
	return min(max(x, min(b.x0, b.x1)), max(b.x0, b.x1))
}

// straight is a straight piece, which may be level or upright.
type straight struct{ box }

func (s straight) across(y float64) float64 {
	if y >= s.y1 {
		return s.x1
	}
	return s.within(s.x0 + float64((s.x1-s.x0)*(y-s.y0))/(s.y1-s.y0))
}

func (s straight) heightAt(x float64) float64 {
	if s.x0 == s.x1 {
		return s.y0
	}
	return min(max(s.y0+float64((s.y1-s.y0)*(x-s.x0))/(s.x1-s.x0), s.y0), s.y1)
}

func (s straight) taken(y float64) float64 {
	if s.y0 == s.y1 {
		return 0
	}
	return float64((s.x0+s.across(y))/2) * (y - s.y0)
}
