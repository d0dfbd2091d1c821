package plan_test

import (
	"io"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/bodies"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

// BenchmarkJumperPlan goes from the spec of a jumper to the text of its plan.
func BenchmarkJumperPlan(b *testing.B) {
	list, err := bodies.Percentiles()
	if err != nil {
		b.Fatal(err)
	}
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), gauge.MustParseLength("10 cm"))
	if err != nil {
		b.Fatal(err)
	}
	s := list[2].Jumper(g)
	b.ReportAllocs()
	for b.Loop() {
		set, err := garment.Pieces(s)
		if err != nil {
			b.Fatal(err)
		}
		if err := plan.Write(io.Discard, plan.From(set.Pieces...)); err != nil {
			b.Fatal(err)
		}
	}
}
