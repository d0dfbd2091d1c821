package gauge_test

import (
	"testing"

	"example.com/walewise/gauge"
)

func BenchmarkStitches(b *testing.B) {
	g, width := newGauge("22", "30", "10 cm"), length("54 cm")
	b.ReportAllocs()
	for b.Loop() {
		g.Stitches(width).Round(gauge.Rounding{})
	}
}

func BenchmarkRound(b *testing.B) {
	count := newGauge("22", "30", "10 cm").Stitches(length("54 cm"))
	b.ReportAllocs()
	for b.Loop() {
		count.Round(gauge.Rounding{})
	}
}

func BenchmarkWidth(b *testing.B) {
	g := newGauge("22", "30", "10 cm")
	b.ReportAllocs()
	for b.Loop() {
		g.Width(119)
	}
}

func BenchmarkRoundTogether(b *testing.B) {
	g := newGauge("22", "30", "10 cm")
	parts := []gauge.Part{
		{Name: "left", Want: g.Stitches(length("13.5 cm"))},
		{Name: "neck", Want: g.Stitches(length("18.5 cm")), Grid: gauge.Even(gauge.Nearest)},
		{Name: "right", Want: g.Stitches(length("13.5 cm"))},
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := gauge.RoundTogether(100, parts); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTolerance(b *testing.B) {
	g, width := newGauge("22", "30", "10 cm"), length("54 cm")
	b.ReportAllocs()
	for b.Loop() {
		g.Tolerance().Width(width)
	}
}

func BenchmarkMean(b *testing.B) {
	swatches := []gauge.Swatch{swatch(40, "17.6 cm", 58, "18.2 cm"), swatch(60, "26.2 cm", 80, "25.3 cm"), swatch(44, "19.4 cm", 60, "19 cm")}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := gauge.Mean(swatches...); err != nil {
			b.Fatal(err)
		}
	}
}
