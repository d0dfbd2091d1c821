package sizes_test

import (
	"testing"

	"example.com/walewise/shaping"
	"example.com/walewise/shaping/sizes"
)

// Words that were put together by hand say nothing for a size of which a value is missing, and
// no more steps than a piece has.
func TestWordsPutTogether(t *testing.T) {
	line := sizes.Line{Method: shaping.Fashioned, Stitches: []int{-1, -1}, Every: []int{2, 4}, Then: []int{0, 0}, Times: []int{3, 1 << 30}}
	words := sizes.Words{From: 1, To: 3, Rows: []int{5, 7}, Lines: []sizes.Line{line}}
	for size, want := range []int{0, 3, shaping.MaxRows, 0} {
		if got := words.Steps(size); len(got) != want || words.Has(size) != (want > 0) {
			t.Errorf("size %d: %d steps, want %d", size, len(got), want)
		}
	}
	for _, short := range []sizes.Words{
		{From: 0, To: 5, Lines: []sizes.Line{{}}},
		{From: 0, To: 5, Rows: []int{1, 1, 1, 1, 1}, Lines: []sizes.Line{line}},
	} {
		if got := short.Steps(3); got != nil {
			t.Errorf("a size without values has the steps %v", got)
		}
	}
}

func TestSliceStaysWithin(t *testing.T) {
	r := sizes.Range{Sizes: make([]sizes.Size, 4)}
	for _, c := range []struct{ from, to, want int }{{1, 3, 2}, {0, 4, 4}, {-2, 2, 2}, {3, 9, 1}, {3, 1, 0}, {9, 12, 0}, {-3, -1, 0}} {
		if got := len(r.Slice(c.from, c.to).Sizes); got != c.want {
			t.Errorf("from %d to %d: %d sizes, want %d", c.from, c.to, got, c.want)
		}
	}
}
