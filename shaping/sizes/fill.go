package sizes

import (
	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

// Filled is what stands for a measurement that is missing.
type Filled struct {
	Key    string       // of the measurement; empty where the style leaves a length open
	Gives  string       // what of the garment was filled in, such as "width at the cuff"; empty if nothing was
	Length gauge.Length // of that; 0 if nothing was
	Rule   string       // by which, or what follows from it that nothing was
	Source string       // where the rule stands; empty if it is common practice without a source
}

func (t *tape) fill(key, gives string, l gauge.Length, rule, source string) {
	t.filled = append(t.filled, Filled{key, gives, l, rule, source})
}

// left notes that nothing was filled in.
func (t *tape) left(key, rule string) { t.filled = append(t.filled, Filled{Key: key, Rule: rule}) }

// places is to how many decimals of a millimetre lengths are divided.
const places = 1

// part returns so many parts of a length, to a tenth of a millimetre.
func part(l gauge.Length, of, in int64) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.NewFromInt(of)).DivRound(decimal.NewFromInt(in), places))
}

// percent returns so many hundredths of a length, exactly.
func percent(l gauge.Length, n int64) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.New(n, -2)))
}

// half returns half a length, exactly.
func half(l gauge.Length) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.New(5, -1)))
}

func millimetres(n int64) gauge.Length { return gauge.Millimetres(decimal.NewFromInt(n)) }

func longer(a, b gauge.Length) gauge.Length {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}

func shorter(a, b gauge.Length) gauge.Length {
	if a.Cmp(b) > 0 {
		return b
	}
	return a
}

// inProportion returns a length of the style that is a part of another as the same part of
// what the other has become; it is as it was where the other is 0.
func inProportion(l garment.Optional, of, become gauge.Length) garment.Optional {
	if l.IsZero() || of.IsZero() {
		return l
	}
	given := l.Or(gauge.Length{}).Millimetres()
	return garment.Exactly(gauge.Millimetres(given.Mul(become.Millimetres()).DivRound(of.Millimetres(), places)))
}
