package bodies

import (
	"bytes"
	_ "embed" // for the table

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/sizes"
)

//go:embed testdata/who-heads.csv
var heads []byte

// Percentiles returns those of men and then of women that package sizes has, "male min" to
// "female max".
func Percentiles() ([]Body, error) {
	var list []Body
	for sex, bodies := range [][]sizes.Body{sizes.Men(), sizes.Women()} {
		for _, b := range bodies {
			b.Name = []string{"male ", "female "}[sex] + b.Name
			list = append(list, Body{b})
		}
	}
	return list, nil
}

// Head is the girth of children's heads at one age.
type Head struct {
	Child     string // "boy" or "girl"
	Months    int
	Median    decimal.Decimal // cm
	Variation decimal.Decimal // coefficient of variation
	Girths    [3]gauge.Length // two standard deviations less, median, two more
}

// Heads returns the heads of children from birth to five years.
func Heads() ([]Head, error) {
	t, err := newTable(bytes.NewReader(heads), "sex")
	if err != nil {
		return nil, err
	}
	var list []Head
	for t.next() {
		h := Head{Child: t.text("sex"), Median: t.number("median"), Variation: t.number("variation")}
		if months := t.text("months"); months != "0" {
			h.Months = int(t.number("months").IntPart())
		}
		for i, name := range []string{"minus2", "middle", "plus2"} {
			h.Girths[i] = gauge.Centimetres(t.number(name))
		}
		list = append(list, h)
	}
	return list, t.err
}
