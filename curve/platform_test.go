package curve_test

import (
	"fmt"
	"hash/fnv"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// The same answers to the last bit on every platform and in every later version. If
// this fails, find out which answer has changed and why; do not change the sum to make
// it pass.
func TestSameAnswersEverywhere(t *testing.T) {
	const want = "c6bd514b52802918"
	sum := fnv.New64a()
	for _, f := range forms() {
		for rows := 1; rows <= 160; rows += 3 {
			for stitches := 1; stitches <= 90; stitches += 8 {
				for _, rules := range []shaping.Rules{
					{}, {Every: 2, Phase: 1, Apart: 2}, {Every: 1, Phase: 3, Apart: 2, Most: 3, Base: 9},
				} {
					r, err := curve.Trace(f.edge, stitches, rows, rules)
					fmt.Fprintln(sum, f.name, rows, stitches, r.Schedule, r.Measures, err != nil)
				}
			}
			scaled := must(f.edge.Scaled(mm("123.4"), mm(fmt.Sprint(rows))))
			fmt.Fprintln(sum, scaled.Length().Millimetres(), scaled.Area(), scaled.Path())
		}
		big := must(curve.Trace(f.edge, curve.MaxStitches, 1000, shaping.Rules{Every: 2, Most: 8}))
		fmt.Fprintln(sum, big)
	}
	if got := fmt.Sprintf("%x", sum.Sum64()); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}
