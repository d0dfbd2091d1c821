package shaping_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

func TestEvenSpacing(t *testing.T) {
	const (
		mailingList = "machine knitters' mailing list, 15 September 1997, kept at stephthornton.co.uk, Shaping"
		berroco     = "Berroco blog, 22 January 2015, after S. Paden: 50/18 is a mix of every 2 and every 3 rows; the counts by its method"
		paperMoon   = "papermoonknits.com, Increasing, part I: 10 pairs, 88 rounds, the first on round 1; read as 88 rounds between first and last"
		setIn       = "designyourownsweater.blogspot.com, January 2007, Set-in sleeves: 26 stitches over 64 rows; the counts by its method"
		byTheRule   = "computed by the division rule, no print found"
	)
	for _, c := range []struct {
		name   string
		ask    shaping.SpacingRequest
		want   shaping.Spacing
		source string
	}{
		{
			"plain rows after", shaping.SpacingRequest{Rows: 20, Times: 4},
			shaping.Spacing{Distances: []shaping.Distance{{4, 4}}, Plain: 4}, mailingList,
		},
		{
			"none after", shaping.SpacingRequest{Rows: 20, Times: 4, Ends: shaping.LastShaped},
			shaping.Spacing{Distances: []shaping.Distance{{5, 4}}}, mailingList,
		},
		{
			"raglan", shaping.SpacingRequest{Rows: 50, Times: 18, Ends: shaping.LastShaped},
			shaping.Spacing{Distances: []shaping.Distance{{2, 4}, {3, 14}}}, berroco,
		},
		{
			"armhole", shaping.SpacingRequest{Rows: 64, Times: 26, Ends: shaping.LastShaped},
			shaping.Spacing{Distances: []shaping.Distance{{2, 14}, {3, 12}}}, setIn,
		},
		{
			"14 over 62", shaping.SpacingRequest{Rows: 62, Times: 14, Ends: shaping.LastShaped},
			shaping.Spacing{Distances: []shaping.Distance{{4, 8}, {5, 6}}}, byTheRule,
		},
		{
			"sleeve in the round", shaping.SpacingRequest{Rows: 89, Times: 10, Ends: shaping.FirstAndLastShaped},
			shaping.Spacing{From: 1, Distances: []shaping.Distance{{9, 2}, {10, 7}}}, paperMoon,
		},
		{
			"every 2nd row, plain after", shaping.SpacingRequest{Rows: 45, Times: 8, EverySecondRow: true},
			// 22 pairs of rows in 9 distances: 5 of 2 pairs, 4 of 3 pairs, of which the last is plain.
			shaping.Spacing{Distances: []shaping.Distance{{4, 5}, {6, 3}}, Plain: 7}, byHand,
		},
		{
			"every 2nd row, last shaped", shaping.SpacingRequest{Rows: 62, Times: 14, Ends: shaping.LastShaped, EverySecondRow: true},
			// 31 pairs in 14 distances: 11 of 2 pairs, 3 of 3 pairs.
			shaping.Spacing{Distances: []shaping.Distance{{4, 11}, {6, 3}}}, byHand,
		},
		{
			"every 2nd row, first and last", shaping.SpacingRequest{Rows: 15, Times: 4, Ends: shaping.FirstAndLastShaped, EverySecondRow: true},
			shaping.Spacing{From: 1, Distances: []shaping.Distance{{4, 2}, {6, 1}}}, byHand,
		},
		{
			"the larger distance is all plain", shaping.SpacingRequest{Rows: 11, Times: 4},
			shaping.Spacing{Distances: []shaping.Distance{{2, 4}}, Plain: 3}, byHand,
		},
		{
			"one row, first and last", shaping.SpacingRequest{Rows: 1, Times: 1, Ends: shaping.FirstAndLastShaped},
			shaping.Spacing{From: 1}, byHand,
		},
		{
			"no shaping", shaping.SpacingRequest{Rows: 9, Ends: shaping.LastShaped},
			shaping.Spacing{Plain: 9}, byHand,
		},
		{
			// 40 to 6 stitches, 4 of them bound off: 15 pairs in 15 right-side rows.
			"raglan", shaping.SpacingRequest{Rows: 30, Times: 15, Ends: shaping.LastShaped, EverySecondRow: true},
			shaping.Spacing{Distances: []shaping.Distance{{2, 15}}}, "slippedstitches.wordpress.com, baby sweater",
		},
		{
			// 34 to 40 stitches: 3 pairs in 24 right-side rows.
			"sleeve", shaping.SpacingRequest{Rows: 48, Times: 3, Ends: shaping.LastShaped, EverySecondRow: true},
			shaping.Spacing{Distances: []shaping.Distance{{16, 3}}}, "slippedstitches.wordpress.com, baby sweater: every 8th right-side row computed",
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
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestSpacingAsPhrases(t *testing.T) {
	spacing, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: 62, Times: 14, Ends: shaping.LastShaped})
	if err != nil {
		t.Fatal(err)
	}
	want := []shaping.Phrase{
		{From: 4, Every: 4, Stitches: -1, Times: 8},
		{From: 37, Every: 5, Stitches: -1, Times: 6},
	}
	if diff := cmp.Diff(want, spacing.Phrases(-1)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// anyRequest draws requests of which many work and many do not.
func anyRequest(t *rapid.T) shaping.SpacingRequest {
	return shaping.SpacingRequest{
		Rows:           rapid.IntRange(0, 60).Draw(t, "rows"),
		Times:          rapid.IntRange(0, 25).Draw(t, "times"),
		Ends:           rapid.SampledFrom([]shaping.Ends{shaping.PlainAfter, shaping.LastShaped, shaping.FirstAndLastShaped}).Draw(t, "ends"),
		EverySecondRow: rapid.Bool().Draw(t, "every 2nd row"),
	}
}

// distances returns the distances between the shaped rows, the first of them
// counted from row 0 unless row 1 has to be shaped.
func distances(ends shaping.Ends, rows []int) []int {
	var list []int
	before := 0
	for i, row := range rows {
		if i > 0 || ends != shaping.FirstAndLastShaped {
			list = append(list, row-before)
		}
		before = row
	}
	return list
}

func TestEvenSpacingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ask := anyRequest(t)
		s, err := shaping.EvenSpacing(ask)
		if err != nil {
			needError(t, err, shaping.ErrInfeasible)
			return
		}
		rows := s.Rows()
		steps := s.Schedule(-1, shaping.Fashioned)
		if len(rows) != ask.Times || steps.Total() != -ask.Times {
			t.Fatalf("%d shaped rows, want %d", len(rows), ask.Times)
		}
		if err := steps.Validate(); err != nil {
			t.Fatal(err)
		}
		if ask.Times == 0 {
			if s.Plain != ask.Rows {
				t.Fatalf("%d plain rows of %d", s.Plain, ask.Rows)
			}
			return
		}
		last := rows[len(rows)-1]
		if last+s.Plain != ask.Rows {
			t.Fatalf("the last shaping at row %d and %d plain rows make %d", last, s.Plain, ask.Rows)
		}
		parts := distances(ask.Ends, rows)
		spread := 1
		if ask.EverySecondRow {
			spread = 2
			for _, d := range parts {
				if d%2 != 0 {
					t.Fatalf("distances %v on every 2nd row", parts)
				}
			}
		}
		if !slices.IsSorted(parts) || (len(parts) > 0 && parts[len(parts)-1]-parts[0] > spread) {
			t.Fatalf("distances %v", parts)
		}
		switch ask.Ends {
		case shaping.PlainAfter:
			// As many as between two shapings, with the odd row where there is one.
			if least, most := parts[len(parts)-1], parts[0]+spread+ask.Rows%spread; s.Plain < least || s.Plain > most {
				t.Fatalf("%d plain rows after distances %v", s.Plain, parts)
			}
		case shaping.LastShaped:
			if s.Plain != 0 {
				t.Fatalf("%d plain rows", s.Plain)
			}
		case shaping.FirstAndLastShaped:
			if rows[0] != 1 || s.Plain != 0 {
				t.Fatalf("shaped rows %v of %d", rows, ask.Rows)
			}
		}
		said := shaping.Expand(s.Phrases(-1)...)
		if want := s.Schedule(-1, 0); !cmp.Equal(said, want) {
			t.Fatalf("the phrases say %v, want %v", said, want)
		}
	})
}

// possible decides by the definition of the three conventions whether shapings
// can be spread over rows at all.
func possible(ask shaping.SpacingRequest) bool {
	least := 1
	if ask.EverySecondRow {
		least = 2
	}
	switch {
	case ask.Times == 0:
		return true
	case ask.Ends == shaping.PlainAfter:
		return ask.Rows >= least*ask.Times+least
	case ask.Ends == shaping.LastShaped:
		return ask.Rows >= least*ask.Times && ask.Rows%least == 0
	case ask.Times == 1:
		return ask.Rows == 1
	}
	return ask.Rows >= least*(ask.Times-1)+1 && (ask.Rows-1)%least == 0
}

func TestEvenSpacingNamesTheNearestThatWorks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ask := anyRequest(t)
		_, err := shaping.EvenSpacing(ask)
		if (err == nil) != possible(ask) {
			t.Fatalf("%+v: %v", ask, err)
		}
		if err == nil {
			return
		}
		e := needError(t, err, shaping.ErrInfeasible)
		nearTimes, nearRows := 0, 1<<30
		found := numbers(e.Want)
		step := 2 // times, rows
		if ask.EverySecondRow {
			step = 3 // and the 2 of "2nd"
		}
		if len(found) == 0 {
			t.Fatalf("no way out in %q", e)
		}
		for i := 0; i < len(found); i += step {
			other := ask
			other.Times, other.Rows = found[i], found[i+1]
			if !possible(other) {
				t.Fatalf("%q: %+v does not work", e, other)
			}
			if _, err := shaping.EvenSpacing(other); err != nil {
				t.Fatalf("%q: %v", e, err)
			}
			switch {
			case other.Rows == ask.Rows:
				nearTimes = other.Times
			case other.Times == ask.Times:
				nearRows = min(nearRows, max(other.Rows-ask.Rows, ask.Rows-other.Rows))
			default:
				t.Fatalf("%q changes both numbers", e)
			}
		}
		// Nothing nearer works.
		for by := 1; by < nearRows && by <= 100; by++ {
			for _, rows := range []int{ask.Rows - by, ask.Rows + by} {
				other := ask
				other.Rows = rows
				if rows > 0 && possible(other) {
					t.Fatalf("%q: %d rows are nearer", e, rows)
				}
			}
		}
		for times := nearTimes + 1; times < ask.Times; times++ {
			other := ask
			other.Times = times
			if possible(other) {
				t.Fatalf("%q: %d times is nearer", e, times)
			}
		}
	})
}

func TestEvenSpacingRefusals(t *testing.T) {
	for _, ask := range []shaping.SpacingRequest{
		{Rows: -1},
		{Rows: 5, Times: -1},
		{Rows: shaping.MaxRows + 1, Times: 1},
		{Rows: 5, Times: math.MaxInt},
		{Rows: 5, Times: 1, Ends: 7},
	} {
		t.Run(fmt.Sprint(ask), func(t *testing.T) {
			_, err := shaping.EvenSpacing(ask)
			needError(t, err, shaping.ErrRange)
		})
	}
	// At the limit itself nothing near works with more rows.
	_, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: shaping.MaxRows, Times: shaping.MaxRows})
	if got, want := needError(t, err, shaping.ErrInfeasible).Want, "nearest that can be worked: 4999 times in 5000 rows"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	_, err = shaping.EvenSpacing(shaping.SpacingRequest{Rows: shaping.MaxRows, Times: shaping.MaxRows, Ends: shaping.FirstAndLastShaped, EverySecondRow: true})
	if got, want := needError(t, err, shaping.ErrInfeasible).Want, "nothing near it can be worked"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAlongRow(t *testing.T) {
	const (
		budd     = "Ann Budd, handout on placing increases or decreases evenly, 2010, crediting C. Brunette, Sweater 101 (1991) and S. Paden, Knitwear Design Workshop (2010)"
		knit1all = "studio-miranda.com, text at knit1knitall.blogspot.com, 28 November 2015: 56 to 78 stitches in 11 repeats of 5; the split of a repeat and the stitch left over by its method"
	)
	for _, c := range []struct {
		stitches, times int
		want            []shaping.Distance
		source          string
	}{
		{124, 14, []shaping.Distance{{8, 2}, {9, 12}}, budd},
		{56, 11, []shaping.Distance{{5, 10}, {6, 1}}, knit1all}, // repeats of 5; the one left over joins the last
		{5, 2, []shaping.Distance{{2, 1}, {3, 1}}, knit1all},    // two increases a repeat
		{55, 22, []shaping.Distance{{2, 11}, {3, 11}}, knit1all},
		{12, 12, []shaping.Distance{{1, 12}}, byHand},
		{12, 1, []shaping.Distance{{12, 1}}, byHand},
		{12, 0, nil, byHand},
		{0, 0, nil, byHand},
		{
			// Narrow, knit 4: 19 whole groups of 6 and one of 5, which stands last there.
			119, 20, []shaping.Distance{{5, 1}, {6, 19}},
			"Handbook of Wool Knitting and Crochet, 1918, Ladies' sweater",
		},
		{
			// 1.125 stitches between two turns, so that 1 and 2 must alternate.
			135, 120, []shaping.Distance{{1, 105}, {2, 15}},
			"knitting.today, Short row calculations; how often by the division rule",
		},
	} {
		t.Run(fmt.Sprintf("%d times in %d", c.times, c.stitches), func(t *testing.T) {
			needSource(t, c.source)
			got, err := shaping.AlongRow(c.stitches, c.times)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestAlongRowProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stitches := rapid.IntRange(0, 300).Draw(t, "stitches")
		times := rapid.IntRange(0, 300).Draw(t, "times")
		groups, err := shaping.AlongRow(stitches, times)
		if times > stitches {
			near := numbers(needError(t, err, shaping.ErrInfeasible).Want)
			for i := 0; i < len(near); i += 2 {
				if _, err := shaping.AlongRow(near[i+1], near[i]); err != nil {
					t.Fatal(err)
				}
			}
			if len(near) != 4 {
				t.Fatalf("ways out: %v", near)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		sumStitches, sumTimes := 0, 0
		for i, g := range groups {
			sumStitches += g.Every * g.Times
			sumTimes += g.Times
			if g.Times < 1 || g.Every < 1 || (i > 0 && g.Every != groups[i-1].Every+1) {
				t.Fatalf("groups %v", groups)
			}
		}
		if sumTimes != times || (times > 0 && sumStitches != stitches) {
			t.Fatalf("%d times over %d: %v", times, stitches, groups)
		}
	})
	for _, bad := range [][2]int{{-1, 0}, {5, -1}} {
		_, err := shaping.AlongRow(bad[0], bad[1])
		needError(t, err, shaping.ErrRange)
	}
}
