package bodies

import (
	"bytes"
	_ "embed" // for the two tables

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
)

//go:embed testdata/ansur2-percentiles.csv
var percentiles []byte

//go:embed testdata/who-heads.csv
var heads []byte

// Percentiles returns the least, 5th percentile, median, 95th percentile and greatest of
// each measurement, of men and then of women. None of them is one person: whoever has the
// median chest seldom has the median arm. They show the range that a jumper has to cover.
func Percentiles() ([]Body, error) { return Read(bytes.NewReader(percentiles)) }

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
