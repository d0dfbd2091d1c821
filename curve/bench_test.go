package curve_test

import (
	"fmt"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/shaping"
)

// traceCase is an edge that speed is measured on.
type traceCase struct {
	name           string
	edge           curve.Edge
	sketch         func(stitches, rows int) sketch // nil for edges that the slow ways do not know
	rows, stitches int
	rules          shaping.Rules
}

func (c traceCase) drawing() curve.Drawing { return must(c.edge.In(c.stitches, c.rows)) }

func (c traceCase) String() string {
	return fmt.Sprintf("edge=%s/rows=%d/stitches=%d", c.name, c.rows, c.stitches)
}

func traceCases() []traceCase {
	line, ellipse := forms()[0], forms()[1]
	sleeveCap := must(curve.ParsePath("M 0 100 A 60 50 0 0 0 60 50 A 60 50 0 0 1 120 0"))
	neck := shaping.Rules{Every: 2, Apart: 2, Most: 4, Base: curve.MaxStitches}
	apart := shaping.Rules{Every: 1, Apart: 2, Most: 3}
	every2 := shaping.Rules{Every: 2, Most: 4}
	return []traceCase{
		{"neck", ellipse.edge, ellipse.sketch, 23, 12, neck},
		{"neck", ellipse.edge, ellipse.sketch, 60, 30, neck},
		{"neck", ellipse.edge, ellipse.sketch, 160, 90, neck},
		{"neck", ellipse.edge, ellipse.sketch, 400, 200, neck},
		{"neck", ellipse.edge, ellipse.sketch, 1000, 400, neck},
		{"apart", ellipse.edge, ellipse.sketch, 60, 30, apart},
		{"apart", ellipse.edge, ellipse.sketch, 160, 90, apart},
		{"apart", ellipse.edge, ellipse.sketch, 1000, 400, apart},
		{"cap", sleeveCap, nil, 60, 30, every2},
		{"cap", sleeveCap, nil, 160, 90, every2},
		{"line", line.edge, line.sketch, 160, 90, shaping.Rules{Every: 2, Apart: 2}},
		{"line", line.edge, line.sketch, 160, 40, shaping.Rules{Apart: 2}},
	}
}

func BenchmarkTrace(b *testing.B) {
	for _, c := range traceCases() {
		d := c.drawing()
		b.Run(c.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := d.Trace(c.rules, curve.Phrasing{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// The plain table of plainTrace, on the same edges.
func BenchmarkPlain(b *testing.B) {
	for _, c := range traceCases() {
		if c.sketch == nil || c.rows > 400 {
			continue
		}
		s := c.sketch(c.stitches, c.rows).table()
		b.Run(c.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				plainTrace(s, c.rules)
			}
		})
	}
}

func BenchmarkWordings(b *testing.B) {
	for _, how := range []curve.Phrasing{{Steady: true}, {}} {
		for _, c := range traceCases() {
			if testing.Short() && c.rows > 100 {
				continue
			}
			d := c.drawing()
			b.Run(fmt.Sprintf("steady=%v/%v", how.Steady, c), func(b *testing.B) {
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

// Laying an edge over stitches and rows is what comes before a trace.
func BenchmarkIn(b *testing.B) {
	for _, c := range traceCases()[:5] {
		b.Run(c.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				c.drawing()
			}
		})
	}
}
