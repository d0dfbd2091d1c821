package shaping_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/shaping"
)

// Published shapings spread over the rows of an edge.
func TestPublishedSpacing(t *testing.T) {
	const babySweater = "slippedstitches.wordpress.com, baby sweater"
	for _, c := range []struct {
		name   string
		ask    shaping.SpacingRequest
		want   shaping.Spacing
		source string
	}{
		{
			// 40 to 6 stitches, 4 of them bound off: 15 pairs in 15 right-side rows.
			"raglan", shaping.SpacingRequest{Rows: 30, Times: 15, Ends: shaping.LastShaped, EverySecondRow: true},
			shaping.Spacing{Distances: []shaping.Distance{{2, 15}}}, babySweater,
		},
		{
			// 34 to 40 stitches: 3 pairs in 24 right-side rows.
			"sleeve", shaping.SpacingRequest{Rows: 48, Times: 3, Ends: shaping.LastShaped, EverySecondRow: true},
			shaping.Spacing{Distances: []shaping.Distance{{16, 3}}}, babySweater + ": every 8th right-side row computed",
		},
		{
			// 75 rounds, 17 of them worked already. How many shapings is chosen here.
			"waist", shaping.SpacingRequest{Rows: 75 - 17, Times: 8, Ends: shaping.LastShaped},
			shaping.Spacing{Distances: []shaping.Distance{{7, 6}, {8, 2}}},
			"Interweave, Making it fit: waist shaping: 58 rounds for the shaping; the distances by the division rule",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			needSource(t, c.source)
			got, err := shaping.EvenSpacing(c.ask)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-printed +got):\n%s", diff)
			}
		})
	}
}

// Published shapings spread over the stitches of a row.
func TestPublishedAlongRow(t *testing.T) {
	for _, c := range []struct {
		name            string
		stitches, times int
		want            []shaping.Distance
		source          string
	}{
		{
			// Narrow, knit 4: 19 whole groups of 6 and one of 5, which stands last there.
			"ribs to body", 119, 20, []shaping.Distance{{5, 1}, {6, 19}},
			"Handbook of Wool Knitting and Crochet, 1918, Ladies' sweater",
		},
		{
			// 1.125 stitches between two turns, so that 1 and 2 must alternate.
			"turns of a triangle", 135, 120, []shaping.Distance{{1, 105}, {2, 15}},
			"knitting.today, Short row calculations; how often by the division rule",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			needSource(t, c.source)
			got, err := shaping.AlongRow(c.stitches, c.times)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-printed +got):\n%s", diff)
			}
		})
	}
}

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
