package draw_test

import (
	"io"
	"testing"

	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
)

func BenchmarkChartAndSchematic(b *testing.B) {
	front, err := garment.Front(demo(b, "frontpiece"))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if err := draw.Chart(io.Discard, draw.Look{}, front); err != nil {
			b.Fatal(err)
		}
		if err := draw.Schematic(io.Discard, draw.Look{}, front); err != nil {
			b.Fatal(err)
		}
	}
}
