package curve

import (
	"fmt"
	"math"

	"example.com/walewise/shaping"
)

// ErrSyntax: a text does not read as the value it should be. It is the value of the same
// name in package shaping.
var ErrSyntax = shaping.ErrSyntax

// Bounds of a path.
const (
	longestPath  = 1 << 20
	mostSegments = 20_000
)

// ParsePath reads an edge from SVG path data in millimetres, y downwards: one subpath from
// the lower end to the upper end, x growing as stitches go. It may start anywhere; the
// edge is moved to its lower end. All commands of SVG 2 but closepath are read, absolute and
// relative ones. Coordinates, radii and the rotation of arcs are decimals, of which 12
// places count. They are added up exactly and then rounded to 1/1000 mm or degree.
//
// A path may go out and in, but must not fall: no stretch of it leads downwards by more
// than 1e-9 mm.
//
// It returns an [*Error] that says at which byte the fault stands and
//   - wraps [ErrSyntax] if the text is not path data by the grammar of SVG 2, section
//     9.3.9, is empty, closes the path or starts a second subpath;
//   - wraps [ErrRange] if the text is longer than 1 MiB, if it has more than 20,000
//     segments, if a coordinate is beyond 1000 m, if the path falls, or if the edge
//     has no height or more width than 1000 m.
//
// It takes time in proportion to the length of the text.
func ParsePath(data string) (Edge, error) {
	if len(data) > longestPath {
		return Edge{}, rangeError("path", fmt.Sprintf("of %d bytes", len(data)), "at most 1 MiB")
	}
	r := pathReader{pathScanner: pathScanner{data: data}}
	r.path()
	if r.err != nil {
		return Edge{}, r.err
	}
	return r.outline.edge()
}

// pathReader reads path data. After the first error it reads nothing more.
type pathReader struct {
	pathScanner
	start, here pathPoint // the first and the current point
	control     pathPoint // the last control point of the last curve
	curved      byte      // its kind, C or Q, or 0 if the last command drew none
	segments    int
	outline     *outline
}

// pathPoint is a point in whole numbers of 1e-12 mm, y downwards.
type pathPoint struct{ x, y int64 }

// mirrored returns the point opposite q as seen from p.
func (p pathPoint) mirrored(q pathPoint) pathPoint { return pathPoint{2*p.x - q.x, 2*p.y - q.y} }

func (r *pathReader) path() {
	r.space()
	if r.at == len(r.data) {
		r.fail(ErrSyntax, r.at, "a path is empty without commands")
		return
	}
	letter := r.data[r.at]
	if letter != 'M' && letter != 'm' {
		r.fail(ErrSyntax, r.at, "a path starts with M")
		return
	}
	r.at++
	r.space()
	r.here = r.pair(pathPoint{})
	r.start, r.outline = r.here, &outline{}
	letter -= 'M' - 'L' // lines follow without being said
	for r.err == nil {
		repeated, at := r.another(), r.at
		if !repeated {
			if at == len(r.data) {
				return
			}
			letter = r.data[at]
			r.at++
			r.space()
		}
		r.draw(letter, at)
	}
}

// draw reads the arguments of a command once and adds the segment, which is written from
// a byte on.
func (r *pathReader) draw(letter byte, at int) {
	if r.err != nil {
		return
	}
	if r.segments++; r.segments > mostSegments {
		r.fail(ErrRange, at, fmt.Sprintf("a path has at most %d segments", mostSegments))
		return
	}
	var base pathPoint
	if 'a' <= letter && letter <= 'z' {
		base = r.here
	}
	var s segment
	var end pathPoint
	curved := byte(0)
	switch letter &^ ('a' ^ 'A') {
	case 'L':
		end = r.pair(base)
	case 'H':
		end = pathPoint{r.coordinate(base.x), r.here.y}
	case 'V':
		end = pathPoint{r.here.x, r.coordinate(base.y)}
	case 'C':
		curved = 'C'
		first := r.pair(base)
		r.separator()
		s, end = r.cubic(first, base)
	case 'S':
		curved = 'C'
		s, end = r.cubic(r.smooth(curved), base)
	case 'Q':
		curved = 'Q'
		middle := r.pair(base)
		r.separator()
		s, end = r.quadratic(middle, base)
	case 'T':
		curved = 'Q'
		s, end = r.quadratic(r.smooth(curved), base)
	case 'A':
		s, end = r.arc(base)
	case 'M':
		r.fail(ErrSyntax, at, "an edge has no second subpath")
	case 'Z':
		r.fail(ErrSyntax, at, "an edge is not closed")
	default:
		r.fail(ErrSyntax, at, "no command of path data")
	}
	if r.err != nil {
		return
	}
	x0, y0 := r.inOutline(r.here)
	x1, y1 := r.inOutline(end)
	if s == nil && (x0 != x1 || y0 != y1) {
		s = lineTo(x0, y0, x1, y1)
	}
	if s != nil && !r.outline.add(s, x1, y1) {
		r.err = rangeError("path", fmt.Sprintf("segment %d (%c) at byte %d", r.segments, letter, at),
			"a path that descends; an edge leads from its lower end up to its upper end")
	}
	r.here, r.curved = end, curved
}

// smooth returns the control point that continues a curve of the same kind.
func (r *pathReader) smooth(kind byte) pathPoint {
	if r.curved != kind {
		return r.here
	}
	p := r.here.mirrored(r.control)
	r.inReach(r.at, p.x)
	r.inReach(r.at, p.y)
	return p
}

// cubic reads a cubic curve from its second control point on.
func (r *pathReader) cubic(first, base pathPoint) (segment, pathPoint) {
	r.control = r.pair(base)
	r.separator()
	end := r.pair(base)
	return r.bezier(r.here, first, r.control, end), end
}

// quadratic reads a quadratic curve from its end on.
func (r *pathReader) quadratic(middle, base pathPoint) (segment, pathPoint) {
	r.control = middle
	end := r.pair(base)
	return r.bezier(r.here, middle, end), end
}

// bezier returns no segment if all points are the same.
func (r *pathReader) bezier(points ...pathPoint) segment {
	b := &bezier{degree: len(points) - 1}
	same := true
	for i, p := range points {
		b.x[i], b.y[i] = r.inOutline(p)
		same = same && b.x[i] == b.x[0] && b.y[i] == b.y[0]
	}
	if same {
		return nil
	}
	return b
}

// arc returns no segment if both ends are the same.
func (r *pathReader) arc(base pathPoint) (segment, pathPoint) {
	rx := r.coordinate(0)
	r.separator()
	ry := r.coordinate(0)
	r.separator()
	rotation := r.number()
	if !r.separator() {
		r.fail(ErrSyntax, r.at, "a space or a comma stands before the flags of an arc")
	}
	large := r.flag()
	r.separator()
	clockwise := r.flag()
	r.separator()
	end := r.pair(base)
	var b box
	b.x0, b.y0 = r.inOutline(r.here)
	b.x1, b.y1 = r.inOutline(end)
	if r.err != nil || b.x0 == b.x1 && b.y0 == b.y1 {
		return nil, end
	}
	// Half a turn leaves an ellipse as it is.
	turn := int(thousandth(rotation) % 180_000)
	return ellipticalArc(b, math.Abs(float64(thousandth(rx))), math.Abs(float64(thousandth(ry))),
		turn, large, clockwise), end
}

// pair reads a point.
func (r *pathReader) pair(base pathPoint) pathPoint {
	x := r.coordinate(base.x)
	r.separator()
	return pathPoint{x, r.coordinate(base.y)}
}

// inOutline returns a point as it stands in the outline, rounded.
func (r *pathReader) inOutline(p pathPoint) (x, y float64) {
	return float64(thousandth(p.x) - thousandth(r.start.x)), float64(thousandth(r.start.y) - thousandth(p.y))
}

// thousandth rounds a whole number of 1e-12 to thousandths, halves away from zero.
func thousandth(n int64) int64 {
	const part = 1_000_000_000
	if n < 0 {
		return -((part/2 - n) / part)
	}
	return (n + part/2) / part
}
