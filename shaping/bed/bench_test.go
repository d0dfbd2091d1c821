package bed_test

import (
	"testing"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

func BenchmarkKnit(b *testing.B) {
	w := plan(b, outline(worked.HandFront(), order.OnWaste, order.OnWaste))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bed.Knit(w); err != nil {
			b.Fatal(err)
		}
	}
}

// The number of allocations does not grow with the loops: 2,000 times as many
// loops stay under the same ceiling. (The runtime adds a few of its own under the
// race detector, so the counts need not be equal.)
func TestAllocations(t *testing.T) {
	count := func(stitches, rows int) float64 {
		w := plan(t, outline(shaping.Tree{{
			Name: shaping.Body, FirstRow: 1, LastRow: rows, Needles: shaping.Centred(stitches),
		}}, order.OnWaste, order.OnWaste))
		return testing.AllocsPerRun(10, func() {
			if _, err := bed.Knit(w); err != nil {
				t.Fatal(err)
			}
		})
	}
	few, many := count(10, 10), count(200, 1000)
	t.Logf("%v allocations for 100 loops, %v for 200000", few, many)
	const ceiling = 20
	if few > ceiling || many > ceiling {
		t.Errorf("%v allocations for 100 loops, %v for 200000; want at most %d", few, many, ceiling)
	}
}
