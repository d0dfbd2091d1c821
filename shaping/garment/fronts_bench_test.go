package garment_test

import (
	"testing"

	"example.com/walewise/shaping/garment"
)

func BenchmarkFronts(b *testing.B) {
	s := adultCardigan()
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := garment.Fronts(s); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCardigan plans a cardigan of five pieces.
func BenchmarkCardigan(b *testing.B) {
	s := adultJumper()
	s.Opening = &garment.Opening{}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := garment.Pieces(s); err != nil {
			b.Fatal(err)
		}
	}
}
