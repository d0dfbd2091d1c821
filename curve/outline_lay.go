package curve

import "math"

// laid is a piece of an outline over stitches and rows: f = slope x + shift stitches are
// gone after y rows/tall rows.
type laid struct {
	piece
	slope, shift   float64
	rows, tall     float64 // of the whole outline
	x0, y0, x1, y1 float64 // ends of the piece
	before         float64 // integral of f up to the piece, in stitch-rows
}

// lay lays the pieces of an outline, from its lower end up, over so many rows. The outline
// is so tall; shape returns slope and shift of a piece with these ends.
func lay(pieces []piece, rows, tall float64, shape func(x0, x1 float64) (slope, shift float64)) []laid {
	made := make([]laid, 0, len(pieces))
	before := 0.0
	for _, p := range pieces {
		l := laid{piece: p, rows: rows, tall: tall, before: before}
		l.x0, l.y0, l.x1, l.y1 = p.ends()
		l.slope, l.shift = shape(l.x0, l.x1)
		before = l.integral(l.y1)
		made = append(made, l)
	}
	return made
}

// inRows returns a height in rows. Heights that were read are whole numbers, so that the
// product is exact, and a place between two rows or in the middle of one is met exactly.
func (l *laid) inRows(y float64) float64 { return float64(y*l.rows) / l.tall }

// start and end return the rows up to the ends of the piece.
func (l *laid) start() float64 { return l.inRows(l.y0) }
func (l *laid) end() float64   { return l.inRows(l.y1) }

// gone returns f at a place across.
func (l *laid) gone(x float64) float64 { return float64(l.slope*x) + l.shift }

// at returns f at the height y.
func (l *laid) at(y float64) float64 { return l.gone(l.across(y)) }

// integral returns the integral of f from the lower end of the edge up to the height y
// within the piece.
func (l *laid) integral(y float64) float64 {
	return l.before + l.inRows(float64(l.slope*l.taken(y))+float64(l.shift*(y-l.y0)))
}

// height returns the height after so many rows, within the piece.
func (l *laid) height(rows float64) float64 { return min(max(float64(rows*l.tall)/l.rows, l.y0), l.y1) }

// reaches returns the height where f reaches the level, which lies between its ends.
func (l *laid) reaches(level float64) float64 {
	if l.slope == 0 {
		return l.y0
	}
	x := (level - l.shift) / l.slope
	return l.heightAt(min(max(x, min(l.x0, l.x1)), max(l.x0, l.x1)))
}

// direction returns 1 where f rises, -1 where it falls, and 0 where it does neither.
func (l *laid) direction() int {
	switch from, to := l.gone(l.x0), l.gone(l.x1); {
	case from < to:
		return 1
	case from > to:
		return -1
	}
	return 0
}

const fine = 1 << 30 // the unit of drawings that are not exact

func round(x float64) int64 { return int64(math.Round(x)) }

// drawing stretches an outline that does not turn to a box.
func (o *outline) drawing(stitches, rows int) *drawing {
	slope := 0.0
	if o.width != 0 {
		slope = float64(stitches) / o.width
	}
	pieces := lay(o.pieces, float64(rows), o.height, func(_, _ float64) (float64, float64) { return slope, 0 })
	return newTables(pieces, stitches, rows).drawing()
}

// turning lays an outline that turns. Across, unit stitches are one of the outline, and
// what the whole number of stitches lacks is shared out among all that goes and comes.
func (o *outline) turning(unit float64, stitches, rows int) *drawing {
	way := 0.0
	for _, p := range o.pieces {
		x0, _, x1, _ := p.ends()
		way += math.Abs(x1 - x0)
	}
	lacks := 0.0
	if whole := float64(way * unit); whole != 0 {
		lacks = (float64(stitches) - float64(o.width*unit)) / whole
	}
	passed := 0.0 // of the way
	pieces := lay(o.pieces, float64(rows), o.height, func(x0, x1 float64) (slope, shift float64) {
		// f = unit (x + lacks (passed + |x - x0|))
		slope, shift = unit*(1+lacks), float64(float64(unit*lacks)*(passed-x0))
		if x1 < x0 {
			slope, shift = unit*(1-lacks), float64(float64(unit*lacks)*(passed+x0))
		}
		passed += math.Abs(x1 - x0)
		return slope, shift
	})
	return newTables(pieces, stitches, rows).drawing()
}
