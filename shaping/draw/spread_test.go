package draw

import (
	"slices"
	"testing"

	"example.com/walewise/internal/svgw"
	"pgregory.net/rapid"
)

// Labels keep their order and their distance, stay within the limits where there is room,
// and move less in all, by the sum of squares, than those of any neighbouring arrangement.
func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const gap, least, most = 10, 0, 400
		wanted := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) svgw.Number {
			return svgw.Number(rapid.IntRange(0, 400).Draw(t, "y"))
		}), 0, 30).Draw(t, "wanted")
		slices.Sort(wanted)
		placed := spread(wanted, gap, least, most)
		if len(placed) != len(wanted) {
			t.Fatalf("%d labels of %d", len(placed), len(wanted))
		}
		for i, y := range placed {
			if y < least || y > most || i > 0 && y-placed[i-1] < gap {
				t.Fatalf("%v is placed at %v", wanted, placed)
			}
		}
		off := func(at []svgw.Number) (sum svgw.Number) {
			for i := range at {
				sum += (at[i] - wanted[i]) * (at[i] - wanted[i])
			}
			return sum
		}
		for from := range placed {
			for to := from + 1; to <= len(placed); to++ {
				for _, by := range []svgw.Number{-2, 2} {
					other := slices.Clone(placed)
					for i := from; i < to; i++ {
						other[i] += by
					}
					fits := !slices.ContainsFunc(other, func(y svgw.Number) bool { return y < least || y > most })
					for i := 1; i < len(other); i++ {
						fits = fits && other[i]-other[i-1] >= gap
					}
					if fits && off(other) < off(placed) {
						t.Fatalf("%v is placed at %v; %v is nearer", wanted, placed, other)
					}
				}
			}
		}
	})
}
