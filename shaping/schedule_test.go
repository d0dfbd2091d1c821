package shaping_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

// anySchedule draws a valid schedule of at most 12 steps in few enough distances
// and sizes for runs to happen.
// anySchedule draws steps in short runs, so that some can be said in few phrases.
func anySchedule(t *rapid.T) shaping.Schedule {
	var s shaping.Schedule
	row := 0
	for range rapid.IntRange(0, 4).Draw(t, "runs") {
		stitches := rapid.SampledFrom([]int{-2, -1, 1, 4}).Draw(t, "stitches")
		method := rapid.SampledFrom([]shaping.Method{shaping.Hold, shaping.Fashioned}).Draw(t, "method")
		one, other := rapid.IntRange(1, 3).Draw(t, "distance"), rapid.IntRange(1, 4).Draw(t, "other distance")
		for n := range rapid.IntRange(1, 4).Draw(t, "steps") {
			if n%2 == 0 {
				row += one
			} else {
				row += other
			}
			s = append(s, shaping.Step{Row: row, Stitches: stitches, Method: method})
		}
	}
	return s
}

func TestScheduleTotals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySchedule(t)
		if err := s.Validate(); err != nil {
			t.Fatal(err)
		}
		last := 0
		if len(s) > 0 {
			last = s[len(s)-1].Row
		}
		// Row by row, step by step: the slow way.
		total := 0
		var collected shaping.Schedule
		for row := 0; row <= last+1; row++ {
			var here shaping.Step
			for _, step := range s {
				if step.Row == row {
					here = step
					total += step.Stitches
					collected = append(collected, step)
				}
			}
			if got, ok := s.At(row); got != here || ok != (here != shaping.Step{}) {
				t.Fatalf("At(%d) = %v, %v", row, got, ok)
			}
			if got := s.Through(row); got != total {
				t.Fatalf("Through(%d) = %d, want %d", row, got, total)
			}
			if got := s.Between(0, row); !cmp.Equal(got, collected) {
				t.Fatalf("Between(0, %d) = %v", row, got)
			}
		}
		if got := s.Total(); got != total {
			t.Fatalf("Total() = %d, want %d", got, total)
		}
		cut := rapid.IntRange(0, last+1).Draw(t, "cut")
		if got := s.Between(0, cut).Total() + s.Between(cut+1, last).Total(); got != total {
			t.Fatalf("cut at %d the parts make %d of %d", cut, got, total)
		}
		by := rapid.IntRange(0, 50).Draw(t, "by")
		moved := s.Shifted(by)
		if moved.Total() != total || moved.Through(cut+by) != s.Through(cut) {
			t.Fatalf("shifted by %d: %v", by, moved)
		}
		if !cmp.Equal(moved.Shifted(-by), s) {
			t.Fatalf("shifted there and back: %v", moved.Shifted(-by))
		}
		both := s.By(shaping.Hold, shaping.Fashioned)
		held, decreased := both.Of(shaping.Hold), both.Of(shaping.Fashioned)
		if held.Total()+decreased.Total() != total || len(held)+len(decreased) != len(s) || len(both.Of(shaping.BindOff)) != 0 {
			t.Fatalf("of %v held are %v, decreased %v", both, held, decreased)
		}
		for i, step := range both {
			want := shaping.Hold
			if step.Stitches == 1 || step.Stitches == -1 {
				want = shaping.Fashioned
			}
			if step.Method != want || step.Row != s[i].Row || step.Stitches != s[i].Stitches {
				t.Fatalf("By: step %v from %v", step, s[i])
			}
		}
	})
}

func TestScheduleCopiesAreCopies(t *testing.T) {
	original := shaping.Schedule{{Row: 2, Stitches: -3, Method: shaping.Hold}}
	for what, made := range map[string]shaping.Schedule{
		"Shifted": original.Shifted(0),
		"Between": original.Between(1, 9),
		"Of":      original.Of(shaping.Hold),
		"By":      original.By(shaping.Hold, shaping.Hold),
	} {
		made[0].Stitches = -99
		if original[0].Stitches != -3 {
			t.Errorf("%s shares its steps", what)
		}
	}
}

func TestScheduleRefusals(t *testing.T) {
	for name, s := range map[string]shaping.Schedule{
		"row 0":         {{Row: 0, Stitches: -1}},
		"row -4":        {{Row: -4, Stitches: -1}},
		"same row":      {{Row: 3, Stitches: -1}, {Row: 3, Stitches: -1}},
		"falling rows":  {{Row: 3, Stitches: -1}, {Row: 2, Stitches: -1}},
		"moves nothing": {{Row: 3, Stitches: 0}},
	} {
		t.Run(name, func(t *testing.T) { needError(t, s.Validate(), shaping.ErrRange) })
	}
}

func TestPhrasesExpandBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySchedule(t)
		phrases := s.Phrases()
		back := shaping.Expand(phrases...)
		at := 0
		for i, phrase := range phrases {
			if i > 0 && phrase.From-s[at-1].Row != phrase.Every {
				t.Fatalf("%+v does not stand at its own distance", phrase)
			}
			for range phrase.Times {
				back[at].Method = s[at].Method
				if at > 0 && s[at].Row > phrase.From && s[at].Method != s[at-1].Method {
					t.Fatalf("%+v has two methods", phrase)
				}
				at++
			}
		}
		if !cmp.Equal(back, s) {
			t.Fatalf("the phrases say another schedule (-want +got):\n%s", cmp.Diff(s, back))
		}
		if least := fewest(s, 0); len(phrases) != least {
			t.Fatalf("%v says %v in %d phrases, %d would do", phrases, s, len(phrases), least)
		}
	})
}

// fewest tries every way to part the steps from one on into phrases.
func fewest(s shaping.Schedule, from int) int {
	least := len(s)
	for to := from + 1; to <= len(s); to++ {
		var distances []int
		equal := true
		for i := from; i < to; i++ {
			equal = equal && s[i].Stitches == s[from].Stitches && s[i].Method == s[from].Method
			if i > 0 {
				distances = append(distances, s[i].Row-s[i-1].Row)
			}
		}
		same, turns := true, len(distances) >= 3
		for i, d := range distances {
			same = same && d == distances[0]
			turns = turns && (i < 2 || d == distances[i-2])
		}
		if turns {
			by := max(distances[0]-distances[1], distances[1]-distances[0])
			turns = by == 1 || by == 2
		}
		if equal && (same || turns) {
			least = min(least, 1+fewest(s, to))
		}
	}
	if from == len(s) {
		return 0
	}
	return least
}

func TestPhrases(t *testing.T) {
	at := func(stitches int, rows ...int) shaping.Schedule {
		var s shaping.Schedule
		for _, row := range rows {
			s = append(s, shaping.Step{Row: row, Stitches: stitches, Method: shaping.Fashioned})
		}
		return s
	}
	for _, c := range []struct {
		name   string
		s      shaping.Schedule
		want   []shaping.Phrase
		source string
	}{
		{"no steps", nil, nil, byHand},
		{"one step", at(-1, 7), []shaping.Phrase{{From: 7, Stitches: -1, Times: 1}}, byHand},
		{"equal", at(-1, 4, 8, 12), []shaping.Phrase{{From: 4, Every: 4, Stitches: -1, Times: 3}}, byHand},
		{"a new distance belongs to the later run", at(-1, 4, 8, 14, 20), []shaping.Phrase{
			{From: 4, Every: 4, Stitches: -1, Times: 2}, {From: 14, Every: 6, Stitches: -1, Times: 2},
		}, byHand},
		{"a round neck", append(at(-2, 1, 3), at(-1, 5, 7, 9)...), []shaping.Phrase{
			{From: 1, Every: 2, Stitches: -2, Times: 2}, {From: 5, Every: 2, Stitches: -1, Times: 3},
		}, commonPractice},
		{"two distances in turn", at(-1, 4, 10, 18, 24, 32), []shaping.Phrase{
			{From: 4, Every: 6, Then: 8, Stitches: -1, Times: 5},
		}, byHand},
		{"in turn with the distance before", append(at(-2, 2), at(-1, 6, 12, 16)...), []shaping.Phrase{
			{From: 2, Stitches: -2, Times: 1}, {From: 6, Every: 4, Then: 6, Stitches: -1, Times: 3},
		}, byHand},
		{"two distances are not in turn", at(-1, 4, 10, 18), []shaping.Phrase{
			{From: 4, Every: 6, Stitches: -1, Times: 2}, {From: 18, Every: 8, Stitches: -1, Times: 1},
		}, byHand},
		{"another method", append(at(-1, 2, 4), shaping.Step{Row: 6, Stitches: -1, Method: shaping.Hold}), []shaping.Phrase{
			{From: 2, Every: 2, Stitches: -1, Times: 2}, {From: 6, Every: 2, Stitches: -1, Times: 1},
		}, byHand},
	} {
		t.Run(c.name, func(t *testing.T) {
			needSource(t, c.source)
			if diff := cmp.Diff(c.want, c.s.Phrases()); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestPhraseOfTwoDistancesInTurn(t *testing.T) {
	var rows []int
	for _, step := range shaping.Expand(shaping.Phrase{From: 3, Every: 6, Then: 8, Stitches: -1, Times: 5}) {
		rows = append(rows, step.Row)
	}
	// Worked by hand: every 6th and 8th row in turn.
	if diff := cmp.Diff([]int{3, 9, 17, 23, 31}, rows); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// What could not be held in memory is not made: no piece has so many steps.
func TestExpansionsAreBounded(t *testing.T) {
	const many = 1 << 30
	steps := shaping.Expand(shaping.Phrase{From: 1, Stitches: -1, Times: 3, Every: 2}, shaping.Phrase{From: 6, Every: 1, Stitches: -1, Times: many})
	if len(steps) != shaping.MaxRows || steps[3].Row != 6 {
		t.Errorf("%d steps", len(steps))
	}
	spacing := shaping.Spacing{From: 1, Distances: []shaping.Distance{{Every: 2, Times: 2}, {Every: 1, Times: many}}}
	if rows := spacing.Rows(); len(rows) != shaping.MaxRows || rows[3] != 6 {
		t.Errorf("%d rows", len(rows))
	}
}

// Of several ways to say a schedule in as few phrases, that with the longest first phrase is
// taken: here 2 and 4 rows in turn could also end a step sooner.
func TestFirstPhraseIsLongest(t *testing.T) {
	var steps shaping.Schedule
	for _, row := range []int{1, 3, 7, 9, 13, 17, 21} {
		steps = append(steps, shaping.Step{Row: row, Stitches: -1})
	}
	want := []shaping.Phrase{{From: 1, Every: 2, Then: 4, Stitches: -1, Times: 5}, {From: 17, Every: 4, Stitches: -1, Times: 2}}
	if diff := cmp.Diff(want, steps.Phrases()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
