package gauge

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// Gauge is how many stitches go into a width and how many rows into a height: the
// counts and the lengths as they were measured. That of several swatches, see [Mean],
// knows how far they lie apart. It is immutable and safe for concurrent use. The zero
// value is no gauge.
type Gauge struct {
	_             [0]func()
	stitches      decimal.Decimal
	width         Length
	rows          decimal.Decimal
	height        Length
	perMM, perRow *big.Rat // stitches and rows to the millimetre, exact
	tolerance     Tolerance
	spread        *spread // of several swatches, else nil
}

// What is taken for a gauge, per 10 cm: from rope on arms to the finest machines.
var (
	mostStitches = decimal.NewFromInt(200)
	mostRows     = decimal.NewFromInt(300)
	tenCentis    = decimal.NewFromInt(100)
	countBound   = decimal.NewFromInt(1_000_000)
)

// New returns the gauge of so many stitches and rows over the same length, which
// is 10 cm, 1 in, 4 in or any other. Counts may have a fraction, such as 22.5. It returns an
// [*Error] that wraps [ErrRange] and names "stitches", "rows" or "over"
//
//   - if one is zero or negative;
//   - if a count is more than 1000000 or has an exponent beyond 1000, or the length is more
//     than 1000 m;
//   - if there are fewer than 1 or more than 200 stitches to 10 cm, or fewer than 1 or more
//     than 300 rows.
func New(stitches, rows decimal.Decimal, over Length) (Gauge, error) {
	return newGauge(stitches, over, "over", rows, over, "over")
}

func newGauge(stitches decimal.Decimal, width Length, widthName string, rows decimal.Decimal, height Length, heightName string) (Gauge, error) {
	perMM, err := perMillimetre("stitches", stitches, widthName, width, mostStitches)
	if err != nil {
		return Gauge{}, err
	}
	perRow, err := perMillimetre("rows", rows, heightName, height, mostRows)
	if err != nil {
		return Gauge{}, err
	}
	return Gauge{
		stitches: stitches, width: width, rows: rows, height: height, perMM: perMM, perRow: perRow,
		tolerance: Tolerance{across: counting(stitches, 1), up: counting(rows, 1)},
	}, nil
}

// perMillimetre checks a count over a length and returns their quotient.
func perMillimetre(name string, count decimal.Decimal, overName string, over Length, most decimal.Decimal) (*big.Rat, error) {
	if !moderate(count) || count.Sign() <= 0 || count.Cmp(countBound) > 0 {
		return nil, &Error{Field: name, Given: short(count), Want: "a number above 0, such as 22 or 22.5, and at most 1000000", Err: ErrRange}
	}
	if over.Sign() <= 0 || over.mm.Cmp(longest) > 0 {
		return nil, &Error{Field: overName, Given: shortLength(over), Want: "a length above 0 of at most 1000 m, such as 10 cm", Err: ErrRange}
	}
	// count / over, compared with 1 and most per 10 cm without dividing.
	perTen := count.Mul(tenCentis)
	if perTen.Cmp(over.mm) < 0 || perTen.Cmp(over.mm.Mul(most)) > 0 {
		return nil, &Error{
			Field: name, Given: fmt.Sprintf("%s over %s", short(count), shortLength(over)),
			Want: fmt.Sprintf("1 to %v to 10 cm are allowed", most), Err: ErrRange,
		}
	}
	return new(big.Rat).Quo(count.Rat(), over.mm.Rat()), nil
}

const tooManyDigits = "with too many digits"

// moderate reports whether d can be computed with at once: see [held].
func moderate(d decimal.Decimal) bool {
	return d.Exponent() >= -mostExponent && d.Exponent() <= mostExponent
}

// short returns a number of bounded length for a message.
func short(d decimal.Decimal) string {
	if d.Exponent() < -20 || d.Exponent() > 20 || d.NumDigits() > 20 {
		return tooManyDigits
	}
	return plainDecimal(d)
}

// shortLength returns a length of bounded length for a message.
func shortLength(l Length) string {
	if text := short(l.Centimetres()); text != tooManyDigits {
		return text + " cm"
	}
	return tooManyDigits
}

// IsZero reports whether g is no gauge.
func (g Gauge) IsZero() bool { return g.perMM == nil }

// Equal reports whether both gauges were counted over the same lengths with the
// same counts, in as many swatches that lie as far apart.
func (g Gauge) Equal(h Gauge) bool {
	return g.stitches.Equal(h.stitches) && g.width.Equal(h.width) && g.rows.Equal(h.rows) && g.height.Equal(h.height) &&
		g.spread.equal(h.spread)
}

// Stitches returns how many stitches go into a width, exactly.
func (g Gauge) Stitches(width Length) Count { return times(g.perMM, width) }

// Rows returns how many rows go into a height, exactly.
func (g Gauge) Rows(height Length) Count { return times(g.perRow, height) }

func times(per *big.Rat, l Length) Count {
	if per == nil {
		return Count{}
	}
	return Count{r: new(big.Rat).Mul(per, l.mm.Rat())}
}

// Width returns the width of so many stitches, rounded to a millionth of a
// millimetre, ties away from zero.
func (g Gauge) Width(stitches int) Length { return over(g.stitches, g.width, stitches) }

// Height returns the height of so many rows, rounded to a millionth of a
// millimetre, ties away from zero.
func (g Gauge) Height(rows int) Length { return over(g.rows, g.height, rows) }

// places are the decimals of a millimetre that lengths made from counts have.
const places = 6

func over(count decimal.Decimal, length Length, n int) Length {
	if count.IsZero() {
		return Length{}
	}
	return Length{mm: length.mm.Mul(decimal.NewFromInt(int64(n))).DivRound(count, places)}
}

// String says the gauge as it was counted, with lengths in centimetres; of several
// swatches all stitches, all rows and the lengths they were counted over, and in how
// many swatches.
func (g Gauge) String() string { return g.text(Length.String) }

// Format says the gauge for people, with lengths in the unit, rounded to that many
// places.
func (g Gauge) Format(u Unit, places int) string {
	return g.text(func(l Length) string { return l.Format(u, places) })
}

func (g Gauge) text(length func(Length) string) string {
	stitches, rows, in := plainDecimal(g.stitches), plainDecimal(g.rows), ""
	if n := g.Swatches(); n > 1 {
		in = fmt.Sprintf(" in %d swatches together", n)
	}
	if g.width.Equal(g.height) {
		return fmt.Sprintf("%s stitches and %s rows to %s%s", stitches, rows, length(g.width), in)
	}
	return fmt.Sprintf("%s stitches to %s, %s rows to %s%s", stitches, length(g.width), rows, length(g.height), in)
}
