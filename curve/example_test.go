package curve_test

import (
	"errors"
	"fmt"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// The right half of a round neck, 60 mm wide and 80 mm deep, at 2 stitches and 3 rows
// to the centimetre, held every 2nd row.
func Example() {
	edge, err := curve.QuarterEllipse(gauge.MustParseLength("60 mm"), gauge.MustParseLength("80 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := curve.Trace(edge, 12, 24, shaping.Rules{Every: 2, Apart: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range r.Schedule {
		fmt.Println("row", step.Row, "stitches", step.Stitches)
	}
	fmt.Printf("area %.3f, floor %.3f, deviation %.3f\n", r.Measures.Area, r.Measures.Floor, r.Measures.Deviation)
	// Output:
	// row 1 stitches -3
	// row 3 stitches -3
	// row 5 stitches -1
	// row 7 stitches -1
	// row 9 stitches -1
	// row 11 stitches -1
	// row 13 stitches -1
	// row 19 stitches -1
	// area 8.395, floor 6.288, deviation 1.176
}

func ExampleTrace_infeasible() {
	edge, err := curve.Line(gauge.MustParseLength("60 mm"), gauge.MustParseLength("30 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = curve.Trace(edge, 12, 10, shaping.Rules{Every: 2, Apart: 2, Most: 2})
	if e, ok := errors.AsType[*curve.Error](err); ok {
		fmt.Println("blocked by:", e.Rule)
		for _, q := range e.Nearest {
			fmt.Printf("%d stitches, %d rows, most %d\n", q.Stitches, q.Rows, q.Rules.Most)
		}
	}
	// Output:
	// blocked by: most
	// 12 stitches, 10 rows, most 3
	// 12 stitches, 11 rows, most 2
	// 10 stitches, 10 rows, most 2
}

// Steps chosen by eye, measured against the drawing they were meant to follow.
func ExampleMeasure() {
	edge, err := curve.QuarterEllipse(gauge.MustParseLength("60 mm"), gauge.MustParseLength("80 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	byEye := shaping.Schedule{
		{Row: 1, Stitches: -4}, {Row: 3, Stitches: -3}, {Row: 5, Stitches: -2},
		{Row: 7, Stitches: -1}, {Row: 9, Stitches: -1}, {Row: 11, Stitches: -1},
	}
	m, err := curve.Measure(edge, 12, 24, shaping.Rules{Every: 2}, byEye)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("area %.3f, floor %.3f, deviation %.3f\n", m.Area, m.Floor, m.Deviation)
	// Output:
	// area 24.322, floor 6.288, deviation 2.078
}

func ExampleEdge_Path() {
	edge, err := curve.QuarterEllipse(gauge.MustParseLength("60 mm"), gauge.MustParseLength("80 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(edge.Path())
	// Output: M 0 80 A 60 80 0 0 0 60 0
}

// An armhole drawn as path data, at 22 stitches and 30 rows to 10 cm, bound off every 2nd
// row: the trace, and the schedules that come nearest to it in few phrases.
func ExampleDrawing_Wordings() {
	edge, err := curve.ParsePath("M 0 90 C 25 90 40 60 40 0")
	if err != nil {
		fmt.Println(err)
		return
	}
	drawing, err := edge.At(exampleGauge())
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := drawing.Wordings(shaping.Rules{Every: 2, Apart: 2}, curve.Phrasing{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, wording := range w.All {
		fmt.Printf("%d: %.2f %s\n", len(wording.Phrases), wording.Measures.Area, wording.Schedule.Words())
	}
	fmt.Println("default:", len(w.Default().Phrases))
	// Output:
	// 1: 17.92 row 1: 3 stitches every 4th row, 3 times
	// 2: 9.39 row 1: 3 stitches every 2nd row, 2 times; 1 stitch every 4th row, 3 times
	// 3: 8.46 row 1: 3 stitches; 2 stitches 2 rows later; 1 stitch every 2nd and 4th row in turn, 4 times
	// 4: 7.72 row 1: 3 stitches; 2 stitches 2 rows later; 1 stitch every 2nd row, 2 times; 1 stitch every 4th row, 2 times
	// 5: 7.16 row 1: 3 stitches; 2 stitches 2 rows later; 1 stitch every 2nd row, 2 times; 1 stitch 4 rows later; 1 stitch 6 rows later
	// default: 5
}

// A side that goes in to a waist and out again: 1 stitch at a time.
func ExampleEdge_At() {
	edge, err := curve.Through(
		curve.Point{},
		curve.Point{Across: gauge.MustParseLength("2.5 cm"), Up: gauge.MustParseLength("14 cm")},
		curve.Point{Across: gauge.MustParseLength("-1 cm"), Up: gauge.MustParseLength("30 cm")},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	drawing, err := edge.At(exampleGauge())
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := drawing.Wordings(shaping.Rules{Every: 2, Apart: 2, Most: 1}, curve.Phrasing{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(drawing.Stitches(), "stitches,", drawing.Rows(), "rows")
	fmt.Println(w.Default().Schedule.Words())
	// Output:
	// -2 stitches, 90 rows
	// row 3: 1 stitch every 4th and 6th row in turn, 5 times; 1 stitch 14 rows later; +1 stitch every 10th and 12th row in turn, 3 times; +1 stitch every 4th row, 5 times
}

func exampleGauge() gauge.Gauge {
	return must(gauge.New(decimal.New(22, 0), decimal.New(30, 0), gauge.MustParseLength("10 cm")))
}

// Path data as a drawing program writes it, moved to its lower end.
func ExampleParsePath() {
	edge, err := curve.ParsePath("M 10 100 h 8 c 20 0 32 -40 32 -100")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(edge.Width(), "by", edge.Height())
	_, err = curve.ParsePath("M 0 0 L 40 90")
	fmt.Println(err)
	// Output:
	// 4 cm by 10 cm
	// path segment 1 (L) at byte 6: a path that descends; an edge leads from its lower end up to its upper end
}

// A shoulder measured at three points.
func ExamplePolyline() {
	edge, err := curve.Polyline(
		curve.Point{},
		curve.Point{Across: gauge.MustParseLength("7 cm"), Up: gauge.MustParseLength("1 cm")},
		curve.Point{Across: gauge.MustParseLength("12 cm"), Up: gauge.MustParseLength("3 cm")},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(edge.Path(), "is", edge.Length().Format(gauge.Centimetre, 2), "long")
	// Output:
	// M 0 30 L 70 20 L 120 0 is 12.46 cm long
}

// A neck whose curve goes on as a straight edge.
func ExampleJoin() {
	cm := gauge.MustParseLength
	edge, err := curve.Join(must(curve.QuarterEllipse(cm("6 cm"), cm("5 cm"))), must(curve.Line(cm("1 cm"), cm("4 cm"))))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(edge.Width(), "by", edge.Height(), "as", edge.Path())
	// Output:
	// 7 cm by 9 cm as M 0 90 A 60 50 0 0 0 60 40 L 70 0
}

// The greater the exponent, the squarer the neck, and the more is taken off.
func ExampleSuperellipse() {
	for _, exponent := range []string{"1", "2", "4"} {
		edge, err := curve.Superellipse(gauge.MustParseLength("6 cm"), gauge.MustParseLength("8 cm"), decimal.RequireFromString(exponent))
		if err != nil {
			fmt.Println(err)
			return
		}
		r, err := curve.Trace(edge, 12, 24, shaping.Rules{Every: 2, Apart: 2})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.1f cm2, %s\n", exponent, edge.Area()/100, r.Schedule.Words())
	}
	// Output:
	// 1: 24.0 cm2, row 3: 2 stitches every 4th row, 6 times
	// 2: 37.7 cm2, row 1: 3 stitches every 2nd row, 2 times; 1 stitch every 2nd row, 5 times; 1 stitch 6 rows later
	// 4: 44.5 cm2, row 1: 8 stitches; 2 stitches 2 rows later; 1 stitch 2 rows later; 1 stitch 4 rows later
}
