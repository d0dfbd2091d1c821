package curve_test

import (
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
	"pgregory.net/rapid"
)

// On a straight edge single stitches that may go at any row go as evenly as can be: no
// two of the distances between them differ by more than a row.
func TestStraightEdgesAreEven(t *testing.T) {
	line := forms()[0].edge
	rapid.Check(t, func(t *rapid.T) {
		stitches := rapid.IntRange(2, 60).Draw(t, "stitches")
		rows := stitches + rapid.IntRange(0, 300).Draw(t, "more rows")
		every := rapid.IntRange(1, 3).Draw(t, "every")
		if rows < stitches*every {
			rows = stitches * every
		}
		r := must(curve.Trace(line, stitches, rows, shaping.Rules{Every: every, Most: 1}))
		least, most := rows, 0
		for i := 1; i < len(r.Schedule); i++ {
			d := r.Schedule[i].Row - r.Schedule[i-1].Row
			least, most = min(least, d), max(most, d)
		}
		if most-least > every {
			t.Fatalf("%d stitches in %d rows, every %d: distances from %d to %d in %v", stitches, rows, every, least, most, r.Schedule)
		}
	})
}

// The trace of a straight edge is never further from it than even spacing by the trade's
// division rule, whatever stands at its ends.
func TestStraightEdgesAgainstEvenSpacing(t *testing.T) {
	line := forms()[0].edge
	rapid.Check(t, func(t *rapid.T) {
		ask := shaping.SpacingRequest{
			Rows: rapid.IntRange(1, 200).Draw(t, "rows"), Times: rapid.IntRange(1, 60).Draw(t, "times"),
			Ends:           shaping.Ends(rapid.IntRange(0, 2).Draw(t, "ends")),
			EverySecondRow: rapid.Bool().Draw(t, "every second row"),
		}
		spaced, err := shaping.EvenSpacing(ask)
		if err != nil {
			return
		}
		even := spaced.Schedule(-1, 0)
		m := must(curve.Measure(line, ask.Times, ask.Rows, shaping.Rules{}, even))
		r := must(curve.Trace(line, ask.Times, ask.Rows, shaping.Rules{Most: 1}))
		if r.Measures.Area > m.Area+1e-9 {
			t.Fatalf("%+v: even spacing has area %v, the trace %v", ask, m.Area, r.Measures.Area)
		}
	})
}

// Published even spacings beside what the trace makes of the same straight edge: the
// distances are the same two, in turn instead of one after the other.
func TestPublishedSpacings(t *testing.T) {
	for _, c := range []struct {
		source         string
		stitches, rows int
		want           [2]int // the two distances
	}{
		{"armhole of 26 stitches over 64 rows, Set-in sleeves, designyourownsweater.blogspot.com, 2007", 26, 64, [2]int{2, 3}},
		{"18 decrease rows in 50, Berroco blog, 22 Jan 2015, after S. Paden, Knitwear Design Workshop", 18, 50, [2]int{2, 3}},
		{"14 stitches over 62 rows, worked out by the division rule, no print found", 14, 62, [2]int{4, 5}},
	} {
		r := must(curve.Trace(forms()[0].edge, c.stitches, c.rows, shaping.Rules{Most: 1}))
		for i := 1; i < len(r.Schedule); i++ {
			if d := r.Schedule[i].Row - r.Schedule[i-1].Row; d != c.want[0] && d != c.want[1] {
				t.Errorf("%s: distance %d, want %v", c.source, d, c.want)
			}
		}
	}
}
