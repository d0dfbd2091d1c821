package garment_test

import (
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"github.com/shopspring/decimal"
)

func TestSmoke(t *testing.T) {
	l := gauge.MustParseLength
	g, _ := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), l("10 cm"))
	p, err := garment.Front(garment.Spec{Gauge: g,
		Body:     garment.Body{Width: l("50 cm"), Length: l("36 cm")},
		Armhole:  garment.Armhole{Depth: l("21 cm"), Inset: l("6 cm")},
		Neck:     garment.Neck{Shape: garment.Round, Width: l("18 cm"), Depth: l("8 cm")},
		Shoulder: garment.Shoulder{Drop: l("3 cm")}, Seam: garment.Seam{Stitches: 1},
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%+v\n%+v\n%+v\n%v", p.Heights, p.Widths, p.Cloth.Ledger(), p.Warnings)
	for _, e := range p.Edges {
		t.Logf("%+v", e)
	}
	for _, s := range p.Sizes {
		t.Logf("%v %v %v %v %s", s.Name, s.Asked, s.Knitted, s.PlusMinus, s.Why)
	}
}
