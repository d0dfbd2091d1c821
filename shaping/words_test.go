package shaping_test

import (
	"testing"

	"example.com/walewise/shaping"
	"github.com/google/go-cmp/cmp"
)

func TestPhrasesInWords(t *testing.T) {
	for _, c := range []struct {
		phrase           shaping.Phrase
		words, shorthand string
	}{
		{shaping.Phrase{Stitches: -4, Times: 1}, "4 stitches", "0-4-1"},
		{shaping.Phrase{Every: 1, Stitches: -1, Times: 1}, "1 stitch in the next row", "1-1-1"},
		{shaping.Phrase{Every: 2, Stitches: -3, Times: 1}, "3 stitches 2 rows later", "2-3-1"},
		{shaping.Phrase{Every: 1, Stitches: -1, Times: 5}, "1 stitch every row, 5 times", "1-1-5"},
		{shaping.Phrase{Every: 2, Stitches: -1, Times: 2}, "1 stitch every 2nd row, 2 times", "2-1-2"},
		{shaping.Phrase{Every: 6, Then: 8, Stitches: -1, Times: 4}, "1 stitch every 6th and 8th row in turn, 4 times", "6/8-1-4"},
		{shaping.Phrase{Every: 4, Stitches: 2, Times: 3}, "+2 stitches every 4th row, 3 times", "4-+2-3"},
		{shaping.Phrase{Every: 4, Stitches: 1, Times: 3}, "+1 stitch every 4th row, 3 times", "4-+1-3"},
	} {
		if words, shorthand := c.phrase.String(), c.phrase.Shorthand(); words != c.words || shorthand != c.shorthand {
			t.Errorf("%#v: %q and %q, want %q and %q", c.phrase, words, shorthand, c.words, c.shorthand)
		}
	}
}

// Two distances come in turn where they differ by that of the rows which the rules allow, and
// never where the phrases are to be steady.
func TestRulesSayInTurn(t *testing.T) {
	var steps shaping.Schedule
	for _, row := range []int{1, 5, 7, 11, 13} {
		steps = append(steps, shaping.Step{Row: row, Stitches: -1})
	}
	rules := shaping.Rules{Every: 2, Apart: 2}
	inTurn := []shaping.Phrase{{From: 1, Every: 4, Then: 2, Stitches: -1, Times: 5}}
	if diff := cmp.Diff(inTurn, rules.Phrases(steps, false)); diff != "" {
		t.Errorf("in turn (-want +got):\n%s", diff)
	}
	if got := rules.Phrases(steps, true); len(got) < 3 || got[0].Then != 0 {
		t.Errorf("steady: %v", got)
	}
	rules.Every = 1
	if got := rules.Phrases(steps, false); len(got) < 3 {
		t.Errorf("every row: %v", got)
	}
}

func TestRunsOfNeedles(t *testing.T) {
	wanted := map[shaping.Needle]bool{shaping.L(3): true, shaping.L(2): true, shaping.R(1): true, shaping.R(3): true, shaping.R(4): true, shaping.R(5): true}
	want := []shaping.Span{span("L3", "L2"), span("R1", "R1"), span("R3", "R5")}
	if diff := cmp.Diff(want, shaping.Centred(12).Runs(func(n shaping.Needle) bool { return wanted[n] })); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
