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
	for _, f := range plainForms() {
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

// The same for drawn edges, their traces and their wordings.
func TestSameDrawnAnswersEverywhere(t *testing.T) {
	const want = "6837c5fc21aa236e"
	sum := fnv.New64a()
	for _, f := range drawnForms() {
		for rows := 1; rows <= 90; rows += 8 {
			for stitches := 1; stitches <= 70; stitches += 11 {
				d := must(f.edge.In(stitches, rows))
				for _, rules := range []shaping.Rules{
					{Every: 2, Phase: 1, Apart: 2}, {Every: 2, Apart: 2, Most: 4, Base: 9},
				} {
					w, err := d.Wordings(rules, curve.Phrasing{})
					fmt.Fprintln(sum, f.name, rows, stitches, w.Trace.Schedule, w.Trace.Measures, err != nil)
					for _, one := range w.All {
						fmt.Fprintln(sum, len(one.Phrases), one.Base, one.Schedule, one.Measures)
					}
				}
				r, err := d.Trace(shaping.Rules{Every: 1, Phase: 3, Apart: 2, Most: 3}, curve.Phrasing{Steady: true})
				fmt.Fprintln(sum, r.Schedule, r.Measures, err != nil)
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
