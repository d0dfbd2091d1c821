package gen

import (
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// BandSpec generates bands to be picked up: up to 8 cm high, without a repeat and with one of
// up to 50 stitches, mostly a rib's; with the gauge of the pieces and with one of its own,
// finer or coarser; folded and not. The height is a multiple of step.
func BandSpec(step gauge.Length) *rapid.Generator[*garment.BandSpec] {
	return rapid.Custom(func(t *rapid.T) *garment.BandSpec {
		const highest = 80
		most := max(int(highest/mm(step)), 1)
		b := &garment.BandSpec{
			Height: step.Mul(rapid.IntRange(1, most).Draw(t, "band height")),
			Repeat: rapid.OneOf(rapid.IntRange(0, 6), rapid.IntRange(0, 50)).Draw(t, "repeat"),
			Folded: rapid.Bool().Draw(t, "folded"),
		}
		b.Plus = rapid.IntRange(0, max(b.Repeat, 1)-1).Draw(t, "plus")
		if rapid.Bool().Draw(t, "band gauge given") {
			tenths := func(label string, least, most int) decimal.Decimal {
				return decimal.New(int64(rapid.IntRange(least, most).Draw(t, label)), -1)
			}
			g, err := gauge.New(tenths("band stitches", 60, 600), tenths("band rows", 80, 900), gauge.MustParseLength("10 cm"))
			if err != nil {
				t.Fatalf("gauge: %v", err)
			}
			b.Gauge = g
		}
		return b
	})
}
