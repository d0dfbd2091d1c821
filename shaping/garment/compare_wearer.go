package garment

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// head compares the opening of the neck, stretched, with the girth of the head. A neckband
// that is shorter at its own gauge than the edge along which it is picked up draws the edge
// in: then its length counts.
func (j job) head(front, back Piece, s Set) Check {
	opening := front.NeckLength().Add(back.NeckLength())
	first := Measured{Of: "neck opening"}
	if band, ok := s.Band(Neckband); ok {
		first.Count, first.Counted = band.Stitches(), "stitches"
		first.Of += fmt.Sprintf(" with its band of %s", plural.Stitches(first.Count))
		if length := band.Length(); length.Cmp(opening) < 0 {
			opening = length
		}
	}
	return j.opening(Check{
		Name: "neck", Pieces: []string{shaping.Front, shaping.Back}, Field: "neck.width", What: "neck over the head",
		First: first, Second: Measured{Of: "head", Length: j.spec.Head},
		Severity: j.spec.Checks.Neck.Or(AsWarning),
	}, opening, j.spec.Neck.Stretch, func(l gauge.Length) gauge.Length { return l })
}

// hand compares the cuff, stretched, with the girth of the hand.
func (j job) hand(sleeve Piece) Check {
	stitches := sleeve.Widths.CastOn - 2*sleeve.Widths.Seam
	return j.opening(Check{
		Name: "cuff", Pieces: []string{shaping.RightSleeve, shaping.LeftSleeve}, Field: "sleeve.cuff", What: "cuff over the hand",
		First: Measured{Of: "cuff", Count: stitches, Counted: "stitches"}, Second: Measured{Of: "hand", Length: j.spec.Hand},
		Severity: j.spec.Checks.Cuff.Or(AsWarning),
	}, j.gauge.Width(stitches), j.spec.Sleeve.Stretch, func(l gauge.Length) gauge.Length {
		return j.gauge.Width(j.gauge.Stitches(l).Round(gauge.SameParity(stitches, gauge.Up)))
	})
}

// defaultStretch is how much a knitted edge with its band gives at least. Common practice,
// no source.
func defaultStretch() decimal.Decimal { return decimal.NewFromInt(25) }

// opening fills in a check of an opening that is stretched over a part of the body. Planned
// returns the length that becomes of one that is asked for, not less than it.
func (j job) opening(c Check, length gauge.Length, stretch *decimal.Decimal, planned func(gauge.Length) gauge.Length) Check {
	percent := defaultStretch()
	if stretch != nil {
		percent = *stretch
	}
	hundred := decimal.NewFromInt(100)
	c.First.Length = gauge.Millimetres(length.Millimetres().Mul(hundred.Add(percent)).Div(hundred))
	c.Passed = c.Off().Sign() >= 0
	c.Says = fmt.Sprintf("%s: %s round, stretched by %s %% %s, the %s %s: %s.", upper(c.First.Of),
		j.spec.fine(length), percent, j.spec.fine(c.First.Length), c.Second.Of, j.spec.fine(c.Second.Length), j.differs(c.Off()))
	if !c.Passed {
		const places = 0
		needed := c.Second.Length.Millimetres().Mul(hundred).Div(length.Millimetres()).Sub(hundred).RoundCeil(places)
		round := gauge.Millimetres(c.Second.Length.Millimetres().Mul(hundred).Div(hundred.Add(percent)))
		c.Says += fmt.Sprintf(" It does not pass: it must be %s round or stretch by %s %%, or have an opening that closes.", j.spec.atLeast(planned(round)), needed)
	}
	return c
}
