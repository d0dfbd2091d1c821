package curve

// Power and Shortfall are the functions of the superellipse, for their own test.
var (
	Power     = power
	Shortfall = shortfall
)

// Direction returns the cosine and the sine of an angle in thousandths of a degree, and
// the angle of the one of the two opposite directions that points upwards.
func Direction(angle int) (cos, sin, back float64) {
	d := directionOf(angle)
	if d.sin < 0 {
		return d.cos, d.sin, d.opposite().angle()
	}
	return d.cos, d.sin, d.angle()
}

// BezierLength returns the length of the Bezier curve with these control points, which
// may fall.
func BezierLength(points ...[2]float64) float64 {
	b := &bezier{degree: len(points) - 1}
	for i, p := range points {
		b.x[i], b.y[i] = p[0], p[1]
	}
	return b.length()
}

// Piece is a piece of an edge.
type Piece struct{ piece }

func (p Piece) Ends() (x0, y0, x1, y1 float64) { return p.ends() }
func (p Piece) Across(y float64) float64       { return p.across(y) }
func (p Piece) HeightAt(x float64) float64     { return p.heightAt(x) }
func (p Piece) Taken(y float64) float64        { return p.taken(y) }

// Pieces returns the pieces of an edge that was drawn.
func Pieces(e Edge) []Piece {
	var all []Piece
	for _, p := range e.shape.(*outline).pieces {
		all = append(all, Piece{p})
	}
	return all
}

// Turns reports whether an edge that was drawn goes out and in.
func Turns(e Edge) bool { return e.shape.(*outline).turns() }

// drawn leaves stairs out of joined edges.
func (stair) drawn(_, _ float64) []segment { return nil }
