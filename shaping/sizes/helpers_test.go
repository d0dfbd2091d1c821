package sizes_test

import (
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
	"github.com/shopspring/decimal"
)

func length(s string) gauge.Length { return gauge.MustParseLength(s) }

// newGauge returns a gauge over 10 cm.
func newGauge(stitches, rows int64) gauge.Gauge {
	g, err := gauge.New(decimal.NewFromInt(stitches), decimal.NewFromInt(rows), length("10 cm"))
	if err != nil {
		panic(err)
	}
	return g
}

// jersey is a style with set-in sleeves that leaves open what can be left open.
func jersey() sizes.Style {
	return sizes.Style{Spec: garment.Spec{
		Title:   "A lighthouse keeper's jersey",
		Gauge:   newGauge(22, 30),
		Start:   garment.Start{Edge: garment.ClosedEdge, Band: length("5 cm")},
		Seam:    garment.Seam{Stitches: 1},
		Body:    garment.Body{Waist: &garment.Waist{}},
		Armhole: garment.Armhole{Inset: length("5 cm")},
		Neck:    garment.Neck{Shape: garment.RoundNeck},
		Sleeve:  &garment.SleeveSpec{Cap: garment.SetInCap, Plain: length("2 cm")},
		Setup:   garment.Setup{Needles: 400},
	}}
}

// plain is a body of which only what is needed was measured.
func plain() sizes.Body {
	return sizes.Body{
		Name: "M", Chest: length("94 cm"), Shoulders: length("37.5 cm"), BackWaist: length("42 cm"), Arm: length("56 cm"),
	}
}

func planned(t testing.TB, style sizes.Style, bodies []sizes.Body) sizes.Range {
	t.Helper()
	r, err := sizes.Plan(style, bodies)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
