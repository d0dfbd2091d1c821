package bed_test

import (
	"fmt"
	"testing"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// scaledFront returns a held front of 10 * size stitches and 12 * size rows: the neck
// goes by single stitches, the shoulders by pairs. Its loops grow with the square of
// the size.
func scaledFront(size int) shaping.Tree {
	const neckRows = 4
	middle, half := shaping.Centred(2*size), 4*size
	neck := everyOther(shaping.Hold, 6*size+1, -1, size)
	shoulder := everyOther(shaping.Hold, (6+neckRows)*size, -2, size-1)
	return shaping.Tree{
		{Name: shaping.Body, FirstRow: 1, LastRow: 6 * size, Needles: shaping.Centred(10 * size)},
		{
			Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 6*size + 1, LastRow: 12 * size,
			Needles: middle.Beyond(shaping.Right, half), Left: neck, Right: shoulder,
		},
		{
			Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 6*size + 1, LastRow: 12 * size,
			Needles: middle.Beyond(shaping.Left, half), Left: shoulder, Right: neck,
		},
	}
}

func BenchmarkKnit(b *testing.B) {
	for _, size := range []int{4, 8, 18, 36, 72} {
		w := plan(b, outline(scaledFront(size), order.OnWaste, order.OnWaste))
		loops := knit(b, w).Loops()
		b.Run(fmt.Sprintf("loops=%d", loops), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := bed.Knit(w); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(loops), "ns/loop")
		})
	}
}

// The number of allocations does not grow with the loops: a plain piece and a whole
// front keep theirs when they are knitted many times as large in the same steps. (The
// runtime adds a few of its own under the race detector, so the counts need not be
// equal.)
func TestAllocations(t *testing.T) {
	for _, c := range []struct {
		name    string
		few     shaping.Tree
		many    shaping.Tree
		ceiling float64
	}{
		{"plain", plainPiece(10, 10), plainPiece(200, 1000), 20},
		// Both have rows above 255, below which the runtime keeps numbers ready that are
		// put into a text.
		{"front", longer(worked.HandFront(), 200), longer(worked.HandFront(), 4000), 200},
	} {
		t.Run(c.name, func(t *testing.T) {
			few, fewLoops := allocations(t, c.few)
			many, manyLoops := allocations(t, c.many)
			t.Logf("%v allocations for %d loops, %v for %d", few, fewLoops, many, manyLoops)
			if few > c.ceiling || many > c.ceiling {
				t.Errorf("%v allocations for %d loops, %v for %d; want at most %v", few, fewLoops, many, manyLoops, c.ceiling)
			}
		})
	}
}

func allocations(t *testing.T, panels shaping.Tree) (count float64, loops int) {
	t.Helper()
	w := plan(t, outline(panels, order.OnWaste, order.OnWaste))
	loops = knit(t, w).Loops()
	return testing.AllocsPerRun(10, func() {
		if _, err := bed.Knit(w); err != nil {
			t.Fatal(err)
		}
	}), loops
}

func plainPiece(stitches, rows int) shaping.Tree {
	return shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: rows, Needles: shaping.Centred(stitches)}}
}

// longer returns the front with that many more rows in its body.
func longer(front shaping.Tree, rows int) shaping.Tree {
	front[0].LastRow += rows
	for i := range front[1:] {
		half := &front[1+i]
		half.FirstRow += rows
		half.LastRow += rows
		half.Left, half.Right = half.Left.Shifted(rows), half.Right.Shifted(rows)
	}
	return front
}
