package bodies

import (
	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
)

// Style is a jumper with set-in sleeves and sides that follow the waist, on a bed of the
// usual width, with standard ease. What has no source is common practice.
func Style(g gauge.Gauge) sizes.Style {
	return sizes.Style{
		Spec: garment.Spec{
			Title: "Jumper",
			Gauge: g,
			Start: garment.Start{Edge: garment.ClosedEdge, Band: length("5 cm")},
			Seam:  garment.Seam{Stitches: 1},
			Body:  garment.Body{Waist: &garment.Waist{}},
			// In as far as the shoulders are.
			Armhole: garment.Armhole{Inset: length("1 cm")},
			Neck:    garment.Neck{Shape: garment.RoundNeck},
			// Plain at each end (papermoonknits.com, Sleeve magic).
			Sleeve: &garment.SleeveSpec{Cap: garment.SetInCap, Plain: length("1 in")},
		},
		Below: garment.Exactly(length("18 cm")),
	}
}

// Jumper returns the spec of a jumper for the body. It panics for a body without what
// everybody has.
func (b Body) Jumper(g gauge.Gauge) garment.Spec {
	spec, _, err := Style(g).For(b.Body)
	if err != nil {
		panic(err)
	}
	return spec
}

func length(text string) gauge.Length { return gauge.MustParseLength(text) }
