package sheet_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
	"example.com/walewise/shaping/sizes"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// tunic is a style of set-in sleeves, in so many sizes as there are bodies.
func tunic(place shaping.Place) sizes.Style {
	s := jumper()
	s.Title = "A beachcomber's tunic in wet sand"
	s.Body.Waist = &garment.Waist{}
	s.Setup = garment.Setup{On: place}
	s.Neck.Depth, s.Back = gauge.Length{}, nil
	if place == shaping.Bed {
		s.Setup.Needles = 400
	}
	return sizes.Style{Spec: s}
}

func plannedSizes(t testing.TB, style sizes.Style, bodies []sizes.Body) sizes.Range {
	t.Helper()
	r, err := sizes.Plan(style, bodies)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func sizesText(t testing.TB, r sizes.Range) string {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.WriteSizes(&out, r); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestGoldenSizes(t *testing.T) {
	inches := tunic(shaping.Hand)
	inches.Spec.Units = gauge.Inch
	for name, r := range map[string]sizes.Range{
		"men":      plannedSizes(t, tunic(shaping.Bed), sizes.Men()),
		"women":    plannedSizes(t, tunic(shaping.Bed), sizes.Women()),
		"children": plannedSizes(t, tunic(shaping.Bed), sizes.Children()),
		"hand":     plannedSizes(t, inches, sizes.Women()),
		"one":      plannedSizes(t, tunic(shaping.Bed), sizes.Women()[2:3]),
		"many":     plannedSizes(t, tunic(shaping.Bed), twenty(t)[:8]),
	} {
		text := sizesText(t, r)
		golden.Check(t, filepath.Join("testdata", "sizes-"+name+".golden"), []byte(text))
		for line := range strings.Lines(text) {
			if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > 88 {
				t.Errorf("%s: a line of %d characters: %s", name, n, line)
			}
		}
	}
}

// twenty returns twenty sizes between the women's percentiles, as a maker's table has them.
func twenty(t testing.TB) []sizes.Body {
	t.Helper()
	const step = 2 // in
	table := sizes.Women()
	var bodies []sizes.Body
	for i := range 20 {
		b := table[1+i/7]
		b.Name = strconv.Itoa(2 * (i + 1))
		b.Chest = gauge.MustParseLength(fmt.Sprintf("%d mm", 760+i*254*step/20))
		bodies = append(bodies, b)
	}
	return bodies
}

// A reader who takes the k-th number out of every list reads the steps of size k: those of
// the work, at the edge and the half that go first.
func TestReadSizes(t *testing.T) {
	hips := tunic(shaping.Bed)
	hips.Ease.Body = garment.Exactly(gauge.MustParseLength("2 cm")) // less than the hips need: some sides are without a waist
	for name, r := range map[string]sizes.Range{
		"men":      plannedSizes(t, tunic(shaping.Bed), sizes.Men()),
		"children": plannedSizes(t, tunic(shaping.Bed), sizes.Children()),
		"women":    plannedSizes(t, hips, sizes.Women()),
		"hand":     plannedSizes(t, tunic(shaping.Hand), sizes.Women()),
	} {
		readBack(t, name, r)
	}
}

// So it is of any table and any style.
func TestReadAnySizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		style, bodies := gen.Style().Draw(t, "style"), gen.Bodies().Draw(t, "bodies")
		style.Spec.Body.Waist = nil // some would be too steep
		r, err := sizes.Plan(style, bodies)
		if err != nil {
			t.Fatal(err)
		}
		readBack(t, "drawn", r)
	})
}

// failer is a test of either kind.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
	Errorf(format string, args ...any)
}

// readBack reads the page of sizes for each of them.
func readBack(t failer, name string, r sizes.Range) {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.WriteSizes(&out, r); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	hand := r.Style.Spec.Setup.On == shaping.Hand
	for k, size := range r.Sizes {
		read := readSizes(t, out.String(), k, size.Body.Name, hand)
		for _, p := range r.Counts() {
			if p.Name == shaping.LeftSleeve {
				continue // said with the right one
			}
			for _, e := range p.Edges {
				var want shaping.Schedule
				if e.Once[k].Stitches != 0 {
					want = append(want, e.Once[k])
				}
				for _, w := range e.Words {
					want = append(want, w.Steps(k)...)
				}
				got := read[p.Name+" "+e.Name]
				if diff := cmp.Diff(want, got, cmpopts.EquateEmpty()); diff != "" {
					t.Errorf("%s, size %s, %s of the %s (-want +read):\n%s", name, size.Body.Name, e.Name, p.Name, diff)
				}
			}
		}
	}
}

var (
	lists = regexp.MustCompile(`(\S+) \(([^()]*)\)`)
	step  = regexp.MustCompile(`^(?:(counter|row) (\S+):|then) (hold|bind off|decrease|increase) (\S+) stitch(?:es)?(?: (at once|once)|, (\d+) times| (\S+) rows later| every (\S+?)(?:st|nd|rd|th)?(?: and (\S+?)(?:st|nd|rd|th)?)? row(?: in turn)?, (\d+) times)$`)
)

// readSizes reads the steps of the k-th size, by piece and edge.
func readSizes(t failer, text string, k int, name string, hand bool) map[string]shaping.Schedule {
	t.Helper()
	methods := map[string]shaping.Method{"hold": shaping.Hold, "bind off": shaping.BindOff, "decrease": shaping.Fashioned, "increase": shaping.Fashioned}
	read := map[string]shaping.Schedule{}
	number := func(s string) int {
		v, err := strconv.Atoi(s)
		if err != nil {
			t.Fatalf("%q is no number", s)
		}
		return v
	}
	_, text, _ = strings.Cut(text, "\nFRONT\n")
	text = "FRONT\n" + text
	piece, edge := "", ""
	mine, at := true, k // whether the lines are said for the size, and where in their lists
	begun := 0          // how many steps there were when the last line with a reading began
	for _, line := range entriesOf(text) {
		switch line {
		case "FRONT", "BACK":
			piece, mine, at = strings.ToLower(line), true, k
			continue
		case "SLEEVES, BOTH ALIKE":
			piece, mine, at = shaping.RightSleeve, true, k
			continue
		}
		if strings.HasPrefix(line, "Size") {
			_, names, _ := strings.Cut(strings.TrimSuffix(line, ":"), " ")
			list := strings.Split(strings.NewReplacer(" (", ", ", ")", "").Replace(names), ", ")
			at = slices.Index(list, name)
			mine = at >= 0
			continue
		}
		if rest, ok := strings.CutPrefix(line, "[ ] "); ok {
			mine, at, edge = true, k, ""
			for begin, e := range map[string]string{
				"Armholes": garment.ArmholeEdge, "Cap": garment.CapEdge, "Neck": garment.NeckEdge, "Shoulders": garment.ShoulderEdge,
				"Sides, hem to waist": garment.HemToWaist, "Sides, waist to": garment.WaistToUnderarm, "Sides, hem to underarm": garment.HemToUnderarm, "Sides, cuff": garment.CuffToUnderarm,
			} {
				if strings.HasPrefix(rest, begin) {
					edge = e
				}
			}
			continue
		}
		line, begins := strings.CutPrefix(line, "- ")
		if !begins || !mine {
			continue
		}
		line = lists.ReplaceAllStringFunc(line, func(list string) string {
			m := lists.FindStringSubmatch(list)
			return append([]string{m[1]}, strings.Split(m[2], ", ")...)[at]
		})
		m := step.FindStringSubmatch(line)
		if m == nil {
			continue // no step
		}
		key := piece + " " + edge
		steps := read[key]
		times := 1
		for _, i := range []int{6, 10} {
			if m[i] != "" {
				times = number(m[i])
			}
		}
		row := 0
		if m[1] != "" {
			begun = len(steps)
			if m[2] != "-" {
				row = number(m[2])
				if !hand {
					row++
				}
			}
			read[key+" begins"] = shaping.Schedule{{Row: row}}
		}
		if times == 0 {
			continue
		}
		turns := [2]int{}
		for i, j := range map[int]int{7: 0, 8: 0, 9: 1} {
			if m[i] != "" && m[i] != "-" {
				turns[j] = number(m[i])
			}
		}
		if turns[1] == 0 {
			turns[1] = turns[0]
		}
		stitches := -number(m[4])
		if m[3] == "increase" {
			stitches = -stitches
		}
		first := 0
		if len(steps) == begun {
			first = 1
		}
		for i := range times {
			at := read[key+" begins"][0].Row
			if len(steps) > begun {
				at = steps[len(steps)-1].Row + turns[(i+first)%2]
			}
			steps = append(steps, shaping.Step{Row: at, Stitches: stitches, Method: methods[m[3]]})
		}
		read[key] = steps
	}
	return read
}

// entriesOf joins the lines that go on with those that they go on from.
func entriesOf(text string) []string {
	var list []string
	begins := regexp.MustCompile(`^(  \[ \] |      - | +Size|\S)`)
	for line := range strings.SplitSeq(text, "\n") {
		if begins.MatchString(line) || len(list) == 0 {
			list = append(list, strings.TrimSpace(line))
		} else {
			list[len(list)-1] += " " + strings.TrimSpace(line)
		}
	}
	return list
}

// The table has a cell for each size in every record.
func TestSizesTable(t *testing.T) {
	r := plannedSizes(t, tunic(shaping.Bed), sizes.Children())
	var out bytes.Buffer
	if err := sheet.WriteSizesTable(&out, r); err != nil {
		t.Fatal(err)
	}
	golden.Check(t, "testdata/sizes-table.golden", out.Bytes())
	records, err := csv.NewReader(&out).ReadAll() // as many cells in each
	if err != nil {
		t.Fatal(err)
	}
	if want := 3 + len(r.Sizes); len(records[0]) != want {
		t.Errorf("%d columns, want %d", len(records[0]), want)
	}
	for _, record := range records {
		if record[0] == shaping.Front && record[1] == sizes.CastOn {
			for k, size := range r.Sizes {
				if got, want := record[3+k], strconv.Itoa(size.Set.Pieces[0].Widths.CastOn); got != want {
					t.Errorf("size %s casts on %s, want %s", size.Body.Name, got, want)
				}
			}
		}
	}
}

func TestSizesRefuses(t *testing.T) {
	bare := sizes.Range{Sizes: []sizes.Size{{}}}
	for _, r := range []sizes.Range{{}, bare, {Sizes: []sizes.Size{{Set: garment.Set{Pieces: []garment.Piece{{}}}}}}} {
		if err := sheet.WriteSizes(io.Discard, r); !errors.Is(err, sheet.ErrSizes) {
			t.Errorf("page: %v", err)
		}
		if err := sheet.WriteSizesTable(io.Discard, r); !errors.Is(err, sheet.ErrSizes) {
			t.Errorf("table: %v", err)
		}
	}
}

// BenchmarkTwentySizes plans a jumper in twenty sizes and writes the instructions of each and
// the page on which they stand side by side.
func BenchmarkTwentySizes(b *testing.B) {
	style, bodies := tunic(shaping.Bed), twenty(b)
	b.ReportAllocs()
	for b.Loop() {
		r, err := sizes.Plan(style, bodies)
		if err != nil {
			b.Fatal(err)
		}
		for _, size := range r.Sizes {
			if err := sheet.WriteSet(io.Discard, size.Set); err != nil {
				b.Fatal(err)
			}
		}
		if err := sheet.WriteSizes(io.Discard, r); err != nil {
			b.Fatal(err)
		}
	}
}
