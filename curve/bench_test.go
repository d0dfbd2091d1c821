package curve_test

import (
	"fmt"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

func BenchmarkTrace(b *testing.B) {
	every2 := shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 40}
	every1 := shaping.Rules{Every: 1, Apart: 2, Most: 3}
	for _, c := range []struct {
		name           string
		edge           func(width, height gauge.Length) (curve.Edge, error)
		rows, stitches int
		rules          shaping.Rules
	}{
		{"ellipse/every=2", curve.QuarterEllipse, 24, 12, every2},
		{"ellipse/every=2", curve.QuarterEllipse, 60, 30, every2},
		{"ellipse/every=2", curve.QuarterEllipse, 160, 90, every2},
		{"ellipse/every=1", curve.QuarterEllipse, 160, 90, every1},
		{"ellipse/every=2", curve.QuarterEllipse, 1000, 400, every2},
		{"line/every=2", curve.Line, 160, 90, every2},
		{"line/every=1", curve.Line, 160, 40, every1},
	} {
		edge := must(c.edge(mm("100"), mm("100")))
		b.Run(fmt.Sprintf("edge=%s/rows=%d/stitches=%d", c.name, c.rows, c.stitches), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := curve.Trace(edge, c.stitches, c.rows, c.rules); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
