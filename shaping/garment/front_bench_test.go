package garment_test

import (
	"testing"

	"example.com/walewise/shaping/garment"
)

func BenchmarkFront(b *testing.B) {
	s := adult()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := garment.Front(s); err != nil {
			b.Fatal(err)
		}
	}
}
