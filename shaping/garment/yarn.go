package garment

import (
	"math"
	"math/big"

	"github.com/shopspring/decimal"
)

// Yarn is how much yarn a garment, or one piece of it, takes by the loops of its cloth
// and by what the loops of the swatches took.
type Yarn struct {
	Uses       []YarnUse
	Total      YarnUse         // of all parts
	Margin     decimal.Decimal // in percent: what covers the cast on, seams, tails and trials, which are no loops
	WithMargin YarnUse         // grams and metres; the loops are those of Total
	Ball       Ball            // as the spec has it
	Balls      int             // that are enough for all, the margin included; 0 if the ball is not known, or is said in grams and the swatches in metres, or the other way round
}

// YarnUse is what one knitted part takes. Grams and metres are rounded to a millionth,
// ties away from zero; they are 0 where no swatch says what it weighs or how long its
// yarn is.
type YarnUse struct {
	Of            string // name of the piece; empty for a total
	Loops         int    // stitches knitted, row by row
	Grams, Metres decimal.Decimal
}

// Yarn returns how much yarn the pieces and their bands take; ok is false if no swatch says
// what it weighs or how much yarn is in it. A loop of a band is taken for one of the pieces.
//
// A loop takes what a loop of the swatches took: of those that state their grams all
// grams over all stitches times rows, and in the same way the metres. Sums are of exact
// amounts, rounded once. The margin is that of the spec, or 10 % (common practice, no
// source). Balls are counted by grams where both ball and swatches state them, else by
// metres.
func (s Set) Yarn() (y Yarn, ok bool) {
	if len(s.Pieces) == 0 {
		return Yarn{}, false
	}
	var parts []part
	for _, p := range s.Pieces {
		parts = append(parts, p.part())
	}
	for _, b := range s.Bands {
		parts = append(parts, part{b.Name, b.Loops()})
	}
	return s.Pieces[0].Spec.yarnFor(parts)
}

// Yarn returns how much yarn the piece takes, as [Set.Yarn] does.
func (p Piece) Yarn() (y Yarn, ok bool) { return p.Spec.yarnFor([]part{p.part()}) }

// part is something that is knitted, and of how many loops.
type part struct {
	name  string
	loops int
}

func (p Piece) part() part { return part{p.Name(), p.Cloth.Loops()} }

// yarnFor returns what parts take that are knitted in the fabric of the swatches.
func (s Spec) yarnFor(parts []part) (y Yarn, ok bool) {
	per := s.perLoop()
	if per.grams == nil && per.metres == nil {
		return Yarn{}, false
	}
	all := part{}
	for _, p := range parts {
		y.Uses = append(y.Uses, per.times(p).use())
		all.loops += p.loops
	}
	y.Margin = s.margin()
	total := per.times(all)
	most := total.more(y.Margin)
	y.Total, y.WithMargin = total.use(), most.use()
	if s.Yarn != nil && s.Yarn.Ball != nil {
		y.Ball = *s.Yarn.Ball
		y.Balls = most.balls(y.Ball)
	}
	return y, true
}

// amount is what a part takes, exactly; nil is not known.
type amount struct {
	part
	grams, metres *big.Rat
}

// perLoop returns what one loop of the swatches took.
func (s Spec) perLoop() amount {
	var grams, metres mean
	for _, swatch := range s.GaugeSpec().List() {
		loops := int64(swatch.Stitches) * int64(swatch.Rows)
		grams.add(swatch.Grams, loops)
		metres.add(swatch.Metres, loops)
	}
	return amount{part{loops: 1}, grams.perLoop(), metres.perLoop()}
}

// mean is what swatches take and have that state it.
type mean struct{ taken, loops big.Rat }

func (m *mean) add(taken decimal.Decimal, loops int64) {
	if taken.IsZero() {
		return
	}
	m.taken.Add(&m.taken, taken.Rat())
	m.loops.Add(&m.loops, new(big.Rat).SetInt64(loops))
}

func (m *mean) perLoop() *big.Rat {
	if m.taken.Sign() == 0 {
		return nil
	}
	return new(big.Rat).Quo(&m.taken, &m.loops)
}

// times returns what a part takes by what one loop takes.
func (a amount) times(p part) amount {
	loops := big.NewRat(int64(p.loops), 1)
	return amount{p, product(a.grams, loops), product(a.metres, loops)}
}

// more returns the amount and so many percent of it.
func (a amount) more(percent decimal.Decimal) amount {
	factor := new(big.Rat).Add(big.NewRat(100, 1), percent.Rat())
	factor.Quo(factor, big.NewRat(100, 1))
	return amount{a.part, product(a.grams, factor), product(a.metres, factor)}
}

func (a amount) use() YarnUse {
	return YarnUse{Of: a.name, Loops: a.loops, Grams: millionths(a.grams), Metres: millionths(a.metres)}
}

// balls returns how many balls hold the amount.
func (a amount) balls(ball Ball) int {
	switch {
	case a.grams != nil && ball.Grams.Sign() > 0:
		return holding(a.grams, ball.Grams)
	case a.metres != nil && ball.Metres.Sign() > 0:
		return holding(a.metres, ball.Metres)
	}
	return 0
}

// holding returns how often one must be taken to have all.
func holding(all *big.Rat, one decimal.Decimal) int {
	n := new(big.Rat).Quo(all, one.Rat())
	whole, rest := new(big.Int).QuoRem(n.Num(), n.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		whole.Add(whole, big.NewInt(1))
	}
	if !whole.IsInt64() {
		return math.MaxInt32
	}
	return int(min(whole.Int64(), math.MaxInt32))
}

// product returns r × by, nil for nil.
func product(r, by *big.Rat) *big.Rat {
	if r == nil {
		return nil
	}
	return new(big.Rat).Mul(r, by)
}

func millionths(r *big.Rat) decimal.Decimal {
	if r == nil {
		return decimal.Decimal{}
	}
	const places = 6
	return decimal.NewFromBigRat(r, places)
}
