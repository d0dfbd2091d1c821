package curve_test

import (
	"fmt"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
)

// traceCases are the edges that speed is measured on.
func traceCases() []struct {
	name           string
	edge           func(width, height gauge.Length) (curve.Edge, error)
	rows, stitches int
	rules          shaping.Rules
} {
	every2 := shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: 1000}
	every1 := shaping.Rules{Every: 1, Apart: 2, Most: 3}
	return []struct {
		name           string
		edge           func(width, height gauge.Length) (curve.Edge, error)
		rows, stitches int
		rules          shaping.Rules
	}{
		{"neck", curve.QuarterEllipse, 23, 12, every2},
		{"neck", curve.QuarterEllipse, 60, 30, every2},
		{"neck", curve.QuarterEllipse, 160, 90, every2},
		{"neck", curve.QuarterEllipse, 400, 200, every2},
		{"neck", curve.QuarterEllipse, 1000, 400, every2},
		{"apart", curve.QuarterEllipse, 60, 30, every1},
		{"apart", curve.QuarterEllipse, 160, 90, every1},
		{"apart", curve.QuarterEllipse, 1000, 400, every1},
		{"line", curve.Line, 160, 90, shaping.Rules{Every: 2, Apart: 2}},
		{"line", curve.Line, 160, 40, shaping.Rules{Apart: 2}},
	}
}

func BenchmarkTrace(b *testing.B) {
	for _, c := range traceCases() {
		edge := must(c.edge(mm("100"), mm("100")))
		d := must(edge.In(c.stitches, c.rows))
		b.Run(fmt.Sprintf("edge=%s/rows=%d/stitches=%d", c.name, c.rows, c.stitches), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := d.Trace(c.rules, curve.Phrasing{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Laying an edge over stitches and rows is what comes before a trace.
func BenchmarkIn(b *testing.B) {
	for _, c := range traceCases()[:5] {
		edge := must(c.edge(mm("100"), mm("100")))
		b.Run(fmt.Sprintf("edge=%s/rows=%d/stitches=%d", c.name, c.rows, c.stitches), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := edge.In(c.stitches, c.rows); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkWordings(b *testing.B) {
	for _, how := range []curve.Phrasing{{Steady: true}, {}} {
		for _, c := range traceCases() {
			d := must(must(c.edge(mm("100"), mm("100"))).In(c.stitches, c.rows))
			b.Run(fmt.Sprintf("steady=%v/edge=%s/rows=%d/stitches=%d", how.Steady, c.name, c.rows, c.stitches), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := d.Wordings(c.rules, how); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
