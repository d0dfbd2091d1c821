package curve

import (
	"fmt"
	"math"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

// Point is a measured point of an edge. Only the differences between points matter.
type Point struct {
	Across gauge.Length // as far as stitches have gone; less where they have come
	Up     gauge.Length // the height
}

// String returns the point as "2.5 cm across, 10 cm up".
func (p Point) String() string { return p.Across.String() + " across, " + p.Up.String() + " up" }

// Polyline returns the edge of straight lines from point to point, from the lower end to
// the upper end. Two points at the same height make a level stretch, where stitches go
// at once. Points are rounded to 1/1000 mm.
//
// It returns an [*Error] that wraps [ErrRange] if there are fewer than 2 points or more
// than 20,001, if a point lies lower than the one before it, if one is more than 1000 m
// away from zero, or if all are at one height.
func Polyline(points ...Point) (Edge, error) {
	places, err := placesOf(points, 0)
	if err != nil {
		return Edge{}, err
	}
	o := &outline{}
	for i, p := range places[1:] {
		if before := places[i]; p != before {
			o.add(lineTo(before.x, before.y, p.x, p.y), p.x, p.y)
		}
	}
	return o.edge()
}

// Through returns a smooth edge through the points, from the lower end to the upper
// end: between two of them the distance across is a cubic function of the height. It
// never swings beyond the points, and turns only at points where the straight lines
// between them turn (M. Steffen, A simple method for monotonic interpolation in one
// dimension, Astronomy and Astrophysics 239, 1990, pages 443 to 450). Points and what is
// reckoned from them are rounded to 1/1000 mm.
//
// It returns an [*Error] that wraps [ErrRange] in the same cases as [Polyline], and if a
// point lies no higher than the one before it.
func Through(points ...Point) (Edge, error) {
	places, err := placesOf(points, 1)
	if err != nil {
		return Edge{}, err
	}
	slopes := steffen(places)
	o := &outline{}
	for i, p := range places[1:] {
		q := places[i]
		third := (p.y - q.y) / 3
		b := &bezier{
			degree: 3,
			x:      [4]float64{q.x, math.Round(q.x + float64(slopes[i]*third)), math.Round(p.x - float64(slopes[i+1]*third)), p.x},
			y:      [4]float64{q.y, math.Round(q.y + third), math.Round(p.y - third), p.y},
		}
		o.add(b, p.x, p.y)
	}
	return o.edge()
}

// steffen returns the slopes of x over y at the points: that of the parabola through the
// point and its neighbours, no more than twice the lesser of the straight slopes beside
// it, and none where these differ in direction.
func steffen(places []vector) []float64 {
	last := len(places) - 1
	slopes := make([]float64, len(places))
	straight := func(i int) (slope, height float64) {
		height = places[i+1].y - places[i].y
		return (places[i+1].x - places[i].x) / height, height
	}
	// At an end the parabola through it and the next two points.
	end := func(i, next int) float64 {
		s, h := straight(i)
		t, g := straight(next)
		p := s + float64((s-t)*h)/(h+g)
		if p*s <= 0 {
			return 0
		}
		return math.Copysign(min(math.Abs(p), 2*math.Abs(s)), s)
	}
	if last == 1 {
		slopes[0], _ = straight(0)
		slopes[1] = slopes[0]
		return slopes
	}
	slopes[0], slopes[last] = end(0, 1), end(last-1, last-2)
	for i := 1; i < last; i++ {
		s, h := straight(i - 1)
		t, g := straight(i)
		if s*t <= 0 {
			continue
		}
		p := (float64(s*g) + float64(t*h)) / (h + g)
		slopes[i] = math.Copysign(min(math.Abs(p), 2*math.Abs(s), 2*math.Abs(t)), s)
	}
	return slopes
}

// placesOf returns the points in thousandths of a millimetre from the first of them, each
// higher than the one before it by at least so many.
func placesOf(points []Point, least float64) ([]vector, error) {
	if len(points) < 2 || len(points) > mostSegments+1 {
		return nil, rangeError("points", len(points), fmt.Sprintf("2 to %d", mostSegments+1))
	}
	places := make([]vector, len(points))
	for i, p := range points {
		if !inReach(p.Across) || !inReach(p.Up) {
			return nil, rangeError(fmt.Sprintf("point %d", i+1), p, "at most 1000 m each way")
		}
		places[i] = vector{inThousandths(p.Across), inThousandths(p.Up)}
		if i > 0 && places[i].y < places[i-1].y+least {
			want := "no lower than the point before it"
			if least > 0 {
				want = "at least 1/1000 mm higher than the point before it"
			}
			return nil, rangeError(fmt.Sprintf("point %d", i+1), p, want)
		}
	}
	first := places[0]
	for i := range places {
		places[i] = vector{places[i].x - first.x, places[i].y - first.y}
	}
	return places, nil
}

func inReach(l gauge.Length) bool { return l.Millimetres().Abs().Cmp(largestSize) <= 0 }

// inThousandths returns a length rounded to whole thousandths of a millimetre.
func inThousandths(l gauge.Length) float64 {
	return l.Millimetres().Shift(3).Round(0).InexactFloat64()
}

// thousandths returns a length of whole thousandths of a millimetre.
func thousandths(n float64) gauge.Length { return gauge.Millimetres(decimal.New(int64(n), -3)) }
