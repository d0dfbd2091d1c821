package examples_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// scriptNeck is the neck of the program: its counts, its lengths and its steps.
func scriptNeck(t *testing.T) (counts, lengths []string, drawing curve.Drawing, steps shaping.Schedule) {
	t.Helper()
	source := read(t, "script", "main.go")
	for _, n := range regexp.MustCompile(`(?:Stitches|Rows): (\d+)`).FindAllStringSubmatch(source, -1) {
		counts = append(counts, n[1])
	}
	for _, l := range regexp.MustCompile(`cm\("(.+?)"\)`).FindAllStringSubmatch(source, -1) {
		lengths = append(lengths, l[1])
	}
	var swatch gauge.Swatch
	if _, err := fmt.Sscan(strings.Join(counts, " "), &swatch.Stitches, &swatch.Rows); err != nil {
		t.Fatal(err)
	}
	swatch.Width, swatch.Height = gauge.MustParseLength(lengths[0]), gauge.MustParseLength(lengths[1])
	g, err := swatch.Gauge()
	if err != nil {
		t.Fatal(err)
	}
	drawing, steps = neckOf(t, lengths[2], lengths[3], g)
	shown(t, read(t, "script", "main_test.go"), steps.Words())
	return counts, lengths, drawing, steps
}

// neckOf returns one side of a round neck and its steps when it is held.
func neckOf(t *testing.T, width, height string, g gauge.Gauge) (curve.Drawing, shaping.Schedule) {
	t.Helper()
	neck, err := curve.QuarterEllipse(gauge.MustParseLength(width), gauge.MustParseLength(height))
	if err != nil {
		t.Fatal(err)
	}
	drawing, err := neck.At(g)
	if err != nil {
		t.Fatal(err)
	}
	w, err := drawing.Wordings(shaping.RulesFor(shaping.Hold, shaping.Left, shaping.Right, shaping.Bed), curve.Phrasing{})
	if err != nil {
		t.Fatal(err)
	}
	return drawing, w.Default().Schedule
}

func scriptSums(t *testing.T) string {
	counts, lengths, drawing, _ := scriptNeck(t)
	return table(t,
		sum{"one side of the neck", lengths[2] + " × " + counts[0] + " ÷ " + lengths[0], nearest, stitches(drawing.Stitches())},
		sum{"its depth", lengths[3] + " × " + counts[1] + " ÷ " + lengths[1], nearest, rows(drawing.Rows())},
	)
}

// Steps stand every second row, so each stair is two rows high; by hand the drawing is read
// off in the middle of it.
func scriptSteps(t *testing.T) string {
	_, _, drawing, steps := scriptNeck(t)
	n, r := drawing.Stitches(), drawing.Rows()
	text := readOffHead + "\n"
	for row := r - 1; row > 0; row -= 2 {
		gives := -steps.Through(row)
		text += readOff(t, fmt.Sprintf("rows %d, %d", row, row+1), n, row, r, gives) + "   " + stair(n, gives) + "\n"
	}
	return text
}

const readOffHead = "             gone in the drawing        by hand   walewise"

// readOff returns a line about a row of a quarter ellipse: the stitches that are gone there by
// hand, which must be those that the library gives.
func readOff(t *testing.T, name string, stitches, row, rows, gives int) string {
	t.Helper()
	gone := float64(stitches) * math.Sqrt(1-math.Pow(1-float64(row)/float64(rows), 2))
	if int(math.Round(gone)) != gives {
		t.Errorf("%s: %.2f are gone by hand, %d by the library", name, gone, gives)
	}
	return fmt.Sprintf("%-13s%d × √(1 − (%2d ÷ %d)²) = %5.2f   %4.0f   %8d", name, stitches, rows-row, rows, gone, math.Round(gone), gives)
}

// edgesNeck is the neck of edges.sh: its lengths, the length that gauges are counted over,
// and the gauges.
func edgesNeck(t *testing.T) (width, height, over string, gauges []string) {
	t.Helper()
	script := read(t, "script", "edges.sh")
	return found(t, script, `"width": "(.+?)"`), found(t, script, `"height": "(.+?)"`), found(t, script, `"over": "(.+?)"`),
		strings.Fields(found(t, script, `\|\| set -- (.+)`))
}

// stair draws what is gone of some stitches, and the wale beside them.
func stair(stitches, gone int) string {
	return strings.Repeat(".", gone) + strings.Repeat("#", stitches-gone+1)
}

func edgesSums(t *testing.T) string {
	width, height, over, gauges := edgesNeck(t)
	answers := read(t, "script", "testdata", "edges.golden")
	var sums []sum
	for _, g := range gauges {
		s, r, _ := strings.Cut(g, "x")
		sums = append(sums,
			sum{g, width + " × " + s + " ÷ " + over, nearest, found(t, answers, `(?m)^`+g+`: (\d+ stitches)`)},
			sum{"", height + " × " + r + " ÷ " + over, nearest, found(t, answers, `(?m)^`+g+`: .+\n +(\d+ rows)`)})
	}
	return table(t, sums...)
}

// edgesStairs shows the neck by the first and by the last gauge, a character for a stitch and a
// line for two rows.
func edgesStairs(t *testing.T) string {
	width, height, over, gauges := edgesNeck(t)
	answers := read(t, "script", "testdata", "edges.golden")
	var text strings.Builder
	for _, name := range []string{gauges[0], gauges[len(gauges)-1]} {
		s, r, _ := strings.Cut(name, "x")
		g, err := gauge.New(decimal.RequireFromString(s), decimal.RequireFromString(r), gauge.MustParseLength(over))
		if err != nil {
			t.Fatal(err)
		}
		drawing, steps := neckOf(t, width, height, g)
		shown(t, answers, steps.Words())
		fmt.Fprintln(&text, name)
		for row := drawing.Rows() - 1; row > 0; row -= 2 {
			fmt.Fprintln(&text, stair(drawing.Stitches(), -steps.Through(row)))
		}
	}
	return text.String()
}
