package garment

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// The bounds of what is said of yarn.
const (
	mostMargin     = 100 // percent
	mostBallGrams  = 10_000
	mostBallMetres = 100_000
	mostOfSwatch   = 100_000 // grams or metres
)

// margin returns the margin in percent.
func (s Spec) margin() decimal.Decimal {
	if s.Yarn == nil || s.Yarn.Margin == nil {
		return defaultMargin()
	}
	return *s.Yarn.Margin
}

// defaultMargin is the margin on yarn in percent. Common practice, no source.
func defaultMargin() decimal.Decimal { return decimal.NewFromInt(10) }

// checkYarn refuses what the yarn cannot be.
func (s Spec) checkYarn() error {
	g := s.GaugeSpec()
	for i, swatch := range g.List() {
		field := "swatch"
		if g.Swatch == nil {
			field = fmt.Sprintf("swatches[%d]", i)
		}
		if err := checkAmount(field+".grams", swatch.Grams, 0, mostOfSwatch); err != nil {
			return err
		}
		if err := checkAmount(field+".metres", swatch.Metres, 0, mostOfSwatch); err != nil {
			return err
		}
	}
	if s.Yarn == nil {
		return nil
	}
	if err := checkAmount("yarn.margin", s.margin(), 0, mostMargin); err != nil || s.Yarn.Ball == nil {
		return err
	}
	if err := checkAmount("yarn.ball.grams", s.Yarn.Ball.Grams, 1, mostBallGrams); err != nil {
		return err
	}
	return checkAmount("yarn.ball.metres", s.Yarn.Ball.Metres, 1, mostBallMetres)
}

// checkAmount refuses a number that is neither 0, which leaves it open, nor between two.
func checkAmount(field string, d decimal.Decimal, least, most int64) error {
	// Comparing would write out the zeros that a far exponent stands for.
	const farthest = 100
	given, want := fmt.Sprintf("%ve%d", d.Coefficient(), d.Exponent()), fmt.Sprintf("%d to %d", least, most)
	if e := d.Exponent(); e >= -farthest && e <= farthest {
		if d.IsZero() || d.Cmp(decimal.NewFromInt(least)) >= 0 && d.Cmp(decimal.NewFromInt(most)) <= 0 {
			return nil
		}
		given = d.String()
	}
	if least > 0 {
		want += ", or left out"
	}
	return &Error{Field: field, Given: short(given), Want: want, Err: ErrSpec}
}
