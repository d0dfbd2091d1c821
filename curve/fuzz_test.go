package curve_test

import (
	"errors"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// Whatever is asked, there is an error of the package, or a schedule that takes all
// stitches, obeys the rules and measures as was said.
func FuzzTrace(f *testing.F) {
	f.Add(uint8(1), 12, 24, 2, 0, 2, 4, 12, 2, 1, 0)
	f.Add(uint8(0), 40, 90, 1, 3, 2, 1, 0, 0, 0, 0)
	f.Add(uint8(0), -9, 27, 1, 0, 1, 0, 0, 0, 0, 0)
	f.Add(uint8(1), 1000, 3, -1, 1<<31-1, -1<<31, 1<<30, 1, 1, 1, 1)
	f.Add(uint8(0), 7, 9, 3, 1, 4, 2, 5, 1, 2, 4)
	f.Add(uint8(3), 30, 60, 2, 0, 2, 4, 0, 0, 0, 0)
	f.Add(uint8(5), 9, 40, 1, 0, 2, 0, 0, 4, 2, 1)
	edges := forms()
	f.Fuzz(func(t *testing.T, form uint8, stitches, rows, every, phase, apart, most, base, plain, singleEvery, singlePhase int) {
		edge := edges[int(form)%len(edges)].edge
		if rows > 300 { // the largest boxes are slow, and are tried elsewhere
			rows %= 300
		}
		rules := shaping.Rules{
			Every: every, Phase: phase, Apart: apart, Most: most, Base: base, Plain: plain,
			Single: shaping.Beat{Every: singleEvery, Phase: singlePhase},
		}
		r, err := curve.Trace(edge, stitches, rows, rules)
		var e *curve.Error
		if err != nil {
			if !errors.As(err, &e) || errors.Is(err, curve.ErrInfeasible) == (len(e.Nearest) == 0) {
				t.Fatalf("%#v", err)
			}
			return
		}
		if r.Schedule.Total() != -stitches {
			t.Errorf("%d stitches, want %d", r.Schedule.Total(), -stitches)
		}
		if err := rules.Check(r.Schedule, rows); err != nil {
			t.Error(err)
		}
		m, err := curve.Measure(edge, stitches, rows, rules, r.Schedule)
		if err != nil || m != r.Measures || m.Area < m.Floor {
			t.Errorf("measured %+v, %v, want %+v", m, err, r.Measures)
		}
		if rows*max(stitches, -stitches) > 1000 { // wordings of larger ones are slow
			return
		}
		d := must(edge.In(stitches, rows))
		checkSaid(t, "fuzzed", d, must(d.Wordings(rules, curve.Phrasing{})), rules, curve.Phrasing{})
	})
}
