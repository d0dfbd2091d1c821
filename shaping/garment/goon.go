package garment

import (
	"errors"
	"fmt"
	"slices"

	"example.com/walewise/shaping"
)

// GoOn plans the rest of a piece anew of which so many rows of the body are knitted, knits
// the whole of it and returns it. The rows up to there are those of p; from there on the
// piece follows s: the same measurements with the gauge that was found on the piece itself,
// or others. Rows that are knitted count with the new gauge, since what was wrong about the
// old one was wrong from the first row on.
//
// Up to the underarm everything above is planned as [Front], [Fronts], [Back] and [Sleeve]
// do, over the stitches that are there. Sides that move in s are shaped towards the asked widths
// over the rows left; without a hem or a waist in s the stitches stay as they are. Where the
// underarm lies lower than what is knitted it is put at the row that was knitted last, or as
// near above it as the armholes can begin. In a front or a back whose underarm is passed,
// or whose armholes are begun, underarm and armholes stay as they were planned, and the
// depth of the armhole, the shoulders and the neck are planned anew. A sleeve's cap is made
// for fronts and a back that are planned from s.
//
// One of two fronts is the half of a front in one piece here as well; see [Fronts]. Its own
// stitches are on the needles, and as many lie between the fronts as before, so that both
// together stay as wide as a back that is gone on with from the same row: s needs an opening,
// but its overlap changes nothing any more. On the bed row 1 starts where it did, whatever the
// spec's [Setup.Carriage]: where the rows from the neck on would then not start at the outer
// edge, the armhole has a row less than that of the back. The fronts are still each other's
// reflection if both are gone on with from the same row by the same spec. Their underarms and
// shoulders are a row off those of a back at most, but two where the back's neck begins among
// the steps of its armholes.
//
// From a piece that Front, Fronts, Back or Sleeve made of s itself, GoOn returns the same work again,
// whatever the number of rows: what still leads where it should goes on as it was planned.
// What cannot be as asked any more stands in the sizes and the warnings.
//
// Any row can be gone on from that lies below the neck and the shoulders of a front, one of
// two or in one piece, or of a back, or below the top of a sleeve's straight part; 0 means
// that the stitches are cast on. Halves, caps and fronts above the start of the neck cannot.
// It returns an [*Error]: of the kind [ErrBegun] for the field "rows" or "piece", or for a
// field of the spec that cannot be changed any more, and of the kinds that Front and Fronts
// return for what else in s cannot be planned from there.
func GoOn(p Piece, rows int, s Spec) (Piece, error) {
	j, err := newJob(s)
	if err != nil {
		return Piece{}, err
	}
	b := &begun{piece: p, rows: rows, least: rows}
	if err := b.check(j); err != nil {
		return Piece{}, err
	}
	made, err := b.goOn(j)
	if errors.Is(err, errTooSoon) {
		b.least++ // the armholes of one edge begin a row lower
		made, err = b.goOn(j)
	}
	if err == nil && !b.isPrefixOf(made) {
		err = &Error{Field: "rows", Given: fmt.Sprint(rows), Want: "the rows that are knitted would not be the same: go on from a lower row", Err: ErrBegun}
	}
	if err != nil {
		return Piece{}, err
	}
	return made, nil
}

// errTooSoon: an armhole would begin in a row that is knitted.
var errTooSoon = &Error{Field: "rows", Want: "the armholes would begin in the rows that are knitted", Err: ErrBegun}

// goOn plans the rest.
func (b *begun) goOn(j job) (Piece, error) {
	var trunks []Piece
	if b.piece.isSleeve() {
		var err error
		if trunks, err = j.trunks(); err != nil {
			return Piece{}, err
		}
	}
	j.begun = b
	switch b.piece.Name() {
	case shaping.Front:
		return j.alone(newFront(j))
	case shaping.Back:
		return j.alone(newBack(j))
	case shaping.RightFront, shaping.LeftFront:
		j.carriage = b.piece.Work.Rows[0].From // not the spec's
		return j.alone(newOneOfTwo(j, b.piece.Name()))
	case shaping.LeftSleeve:
		return j.alone(newSleeve(j, shaping.Left, trunks))
	}
	return j.alone(newSleeve(j, shaping.Right, trunks))
}

// check refuses a piece that is none, rows that cannot be gone on from, and fields of the
// spec that differ where the piece is knitted already. It finds out how far the piece is.
func (b *begun) check(j job) error {
	p := b.piece
	refuse := func(field, given, want string) error {
		return &Error{Field: field, Given: given, Want: want, Err: ErrBegun}
	}
	known := []string{shaping.Front, shaping.RightFront, shaping.LeftFront, shaping.Back, shaping.LeftSleeve, shaping.RightSleeve}
	switch {
	case len(p.Work.Rows) == 0 || len(p.Work.Panels) == 0 || p.Cloth.Rows() != len(p.Work.Rows):
		return refuse("piece", "", "it was not planned and knitted: make it with Front, Fronts, Back or Sleeve")
	case !slices.Contains(known, p.Name()):
		return refuse("piece", quoted(p.Name()), "a front, one of two fronts, a back or a sleeve can be gone on with")
	}
	last, what := p.Heights.Underarm, "the top is begun"
	if p.Heights.Cap > 0 {
		what = "the cap is begun"
	}
	if !p.isSleeve() {
		last, what = p.Heights.NeckStart(), "the neck is begun"
		if p.ShoulderRow <= last {
			last, what = p.ShoulderRow-1, "the shoulders are begun"
		}
		b.above = b.rows > p.Heights.Underarm || b.rows >= b.firstArmhole()
	}
	if b.rows < 0 || b.rows > last {
		return refuse("rows", fmt.Sprint(b.rows), fmt.Sprintf("row 0, the cast on, to row %d of the body can be gone on from; above it %s", last, what))
	}
	old, s := p.Spec, j.spec
	switch {
	case p.Work.Place != j.place:
		return refuse("work.on", j.place.String(), "it is knitted "+p.Work.Place.String()+" so far: leave it as it was")
	case p.Work.Rows[0].From != j.carriage && !p.Outer().IsValid():
		return refuse("work.carriage", j.carriage.String(), fmt.Sprintf("row 1 started at the %v: leave it as it was", p.Work.Rows[0].From))
	case p.Name() == shaping.Front && s.Opening != nil:
		return refuse("opening", "", "the front is begun in one piece: leave it out")
	case p.Outer().IsValid() && s.Opening == nil:
		return refuse("opening", "", "missing: the front is begun as one of two: leave it as it was")
	case old.Start.Edge != s.Start.Edge:
		return refuse("start.edge", s.Start.Edge.String(), "the cast on is "+old.Start.Edge.String()+": leave it as it was")
	case p.isSleeve() && s.Sleeve == nil:
		return checkSleeve(s)
	case p.isSleeve():
		return checkSleeve(s)
	case b.above && old.Methods.Armhole.Or(defaultArmhole()) != s.Methods.Armhole.Or(defaultArmhole()):
		return refuse("methods.armhole", s.Methods.Armhole.Or(defaultArmhole()).String(), "the armholes are begun "+old.Methods.Armhole.Or(defaultArmhole()).words()+": leave it as it was")
	}
	return nil
}

// isPrefixOf reports whether the rows that are knitted are the first ones of a piece. What
// is taken off after the last row of a sleeve is not taken off yet.
func (b *begun) isPrefixOf(made Piece) bool {
	return slices.EqualFunc(b.piece.Work.Rows[:b.rows], made.Work.Rows[:b.rows], func(x, y shaping.Row) bool {
		return x.Row == y.Row && x.Panel == y.Panel && x.From == y.From && x.Knit == y.Knit &&
			slices.Equal(x.Before, y.Before) && slices.Equal(wraps(x.After), wraps(y.After))
	})
}

// wraps returns those of the actions after a row that take nothing off.
func wraps(after []shaping.Action) []shaping.Action {
	return slices.DeleteFunc(slices.Clone(after), func(a shaping.Action) bool {
		return a.Do == shaping.DoWaste || a.Do == shaping.DoBindOff
	})
}
