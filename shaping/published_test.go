package shaping_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/shaping"
)

// A published edge comes back from its steps in the words that were printed.
func TestPublishedPhrases(t *testing.T) {
	for _, c := range []struct {
		name    string
		phrases []shaping.Phrase
		last    int
		total   int
		source  string
	}{
		{
			// 6, 12 and 12 rows, so that the phrases end at rows 6, 18 and 30.
			"neck", []shaping.Phrase{
				{From: 1, Every: 1, Stitches: -1, Times: 6},
				{From: 8, Every: 2, Stitches: -1, Times: 6},
				{From: 22, Every: 4, Stitches: -1, Times: 3},
			},
			30, -15, "natalieinstitches.com, 10 November 2021",
		},
		{
			// Every other row, then every row.
			"cap", []shaping.Phrase{
				{From: 2, Every: 2, Stitches: -1, Times: 4},
				{From: 9, Every: 1, Stitches: -1, Times: 14},
			},
			22, -18, "kniftyred.blogspot.com",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			needSource(t, c.source)
			steps := shaping.Expand(c.phrases...)
			if last := steps[len(steps)-1].Row; last != c.last || steps.Total() != c.total {
				t.Errorf("%d stitches through row %d, printed %d through row %d", steps.Total(), last, c.total, c.last)
			}
			if diff := cmp.Diff(c.phrases, steps.Phrases()); diff != "" {
				t.Errorf("(-printed +said):\n%s", diff)
			}
		})
	}
}
