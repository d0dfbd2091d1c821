package draw_test

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/oneline"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// drawSet returns the pieces of a random spec, opened or not, on the bed or in the hand.
func drawSet(t *rapid.T) garment.Set {
	mm := gauge.MustParseLength("1 mm")
	spec := rapid.OneOf(gen.JumperSpec(mm), gen.CardiganSpec(mm)).Draw(t, "spec")
	set, err := garment.Pieces(spec)
	if err != nil {
		t.Skip(err)
	}
	return set
}

// drawPiece returns one of them.
func drawPiece(t *rapid.T) garment.Piece {
	pieces := drawSet(t).Pieces
	return pieces[rapid.IntRange(0, len(pieces)-1).Draw(t, "piece")]
}

func looks() *rapid.Generator[draw.Look] {
	return rapid.Custom(func(t *rapid.T) draw.Look {
		return draw.Look{
			Folded: rapid.Bool().Draw(t, "folded"),
			Facing: rapid.SampledFrom([]shaping.Facing{0, shaping.PurlSide, shaping.KnitSide}).Draw(t, "facing"),
			Inline: rapid.Bool().Draw(t, "inline"),
		}
	})
}

// A chart, read back, has as many cells in each wale as the judge has knitted rows there.
func TestChartHasTheCellsOfTheCloth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, look := drawPiece(t), looks().Draw(t, "look")
		want := []int{}
		for _, height := range p.Cloth.Wales() {
			want = append(want, height)
		}
		if look.Facing.IsValid() && look.Facing != p.Work.Facing {
			slices.Reverse(want)
		}
		got := cellsOf(t, charted(t, look, p))
		if diff := gocmp.Diff(want, got); diff != "" {
			t.Fatalf("%s (-cloth +chart):\n%s", p.Name(), diff)
		}
	})
}

// cellsOf counts the stitches of each wale of a chart from the left: the boxes of the wale
// are parted by the level lines, and folds say how many rows they hide.
func cellsOf(t tester, chart picture) []int {
	type line struct{ y, from, to int }
	var lines []line
	for _, class := range []string{"rows", "tens"} {
		for _, e := range chart.classed(class) {
			for _, ends := range e.subpaths(t) {
				if ends[0].y == ends[1].y {
					lines = append(lines, line{ends[0].y, min(ends[0].x, ends[1].x), max(ends[0].x, ends[1].x)})
				}
			}
		}
	}
	folds := map[int]int{} // rows by the place of the text
	for _, e := range chart.classed("fold") {
		rows, _, _ := strings.Cut(e.text, " ")
		n, err := strconv.Atoi(rows)
		if err != nil {
			t.Fatal(err)
		}
		if n < 12 {
			t.Fatalf("a fold hides %d rows", n)
		}
		folds[e.number(t, "y")] = n
	}
	type box struct{ left, top, bottom int }
	wales := map[int][]box{}
	for _, e := range chart.classed("wales") {
		for _, corners := range e.subpaths(t) {
			xs, ys := []int{}, []int{}
			for _, c := range corners {
				xs, ys = append(xs, c.x), append(ys, c.y)
			}
			b := box{slices.Min(xs), slices.Min(ys), slices.Max(ys)}
			wales[b.left] = append(wales[b.left], b)
		}
	}
	var counts []int
	lefts := []int{}
	for left := range wales {
		lefts = append(lefts, left)
	}
	slices.Sort(lefts)
	for _, left := range lefts {
		boxes := wales[left]
		slices.SortFunc(boxes, func(a, b box) int { return cmp.Compare(b.bottom, a.bottom) })
		count := 0
		for i, b := range boxes {
			count++
			for _, l := range lines {
				if l.from <= left && left < l.to && b.top < l.y && l.y < b.bottom {
					count++
				}
			}
			// A fold is a gap of a certain height; a wale that ends and begins again has a
			// higher one.
			const foldHeight = 5_000
			if i == 0 || boxes[i-1].top-b.bottom > foldHeight+20 {
				continue
			}
			for y, rows := range folds {
				if b.bottom < y && y < boxes[i-1].top {
					count += rows
				}
			}
		}
		counts = append(counts, count)
	}
	return counts
}

// Every stitch of every step has its mark, and no other stitch.
func TestChartMarksEveryStep(t *testing.T) {
	classes := map[shaping.Method][2]string{
		shaping.Hold: {"hold", ""}, shaping.BindOff: {"bound-off", ""}, shaping.Fashioned: {"decrease", "increase"}, shaping.CastOn: {"", "cast-on"},
	}
	rapid.Check(t, func(t *rapid.T) {
		p, look := drawPiece(t), looks().Draw(t, "look")
		want, got := map[string]int{}, map[string]int{}
		for _, panel := range p.Work.Panels {
			for _, step := range slices.Concat(panel.Left, panel.Right) {
				if step.Stitches < 0 {
					want[classes[step.Method][0]] -= step.Stitches
				} else {
					want[classes[step.Method][1]] += step.Stitches
				}
			}
		}
		chart := charted(t, look, p)
		for _, class := range []string{"hold", "bound-off", "decrease", "increase", "cast-on"} {
			// The first is the chart's, the second the sample in the key.
			if marks := chart.classed(class); len(marks) > 0 {
				got[class] = len(marks[0].subpaths(t))
			}
		}
		if diff := gocmp.Diff(want, got); diff != "" {
			t.Fatalf("%s (-panels +chart):\n%s", p.Name(), diff)
		}
	})
}

// The lines of the edges are as long as the judge's account has stitches of that sort.
func TestChartTellsEdgesApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, look := drawPiece(t), looks().Draw(t, "look")
		chart := charted(t, look, p)
		cell := cellWidth(t, chart, p)
		stitches := func(class string) float64 {
			length := 0
			if lines := chart.classed(class); len(lines) > 0 {
				for _, ends := range lines[0].subpaths(t) {
					length += max(ends[1].x-ends[0].x, ends[0].x-ends[1].x)
				}
			}
			return float64(length) / cell
		}
		l := p.Cloth.Ledger()
		live, closed := l.Live, l.BoundOff
		beside := 0 // cast on beside an edge, which is closed in any case
		for _, panel := range p.Work.Panels {
			for _, step := range slices.Concat(panel.Left, panel.Right) {
				if step.Method == shaping.CastOn {
					beside += step.Stitches
				}
			}
		}
		closed += beside
		if p.Spec.Start.Edge == garment.WasteEdge {
			live += l.CastOn - beside
		} else {
			closed += l.CastOn - beside
		}
		const off = 0.2
		loops := 0
		if marks := chart.classed("live"); len(marks) > 0 {
			loops = len(marks[0].subpaths(t))
		}
		if got := float64(loops) + stitches("waited"); got < float64(live)-off || got > float64(live)+off {
			t.Fatalf("%s: %.2f live stitches in the chart, %d in the account", p.Name(), got, live)
		}
		if got := stitches("closed"); got < float64(closed)-off || got > float64(closed)+off {
			t.Fatalf("%s: %.2f closed stitches in the chart, %d in the account", p.Name(), got, closed)
		}
	})
}

// Held stitches that are knitted again are live in the end; those that never are waited.
func TestHeldNeckWaits(t *testing.T) {
	front, err := garment.Front(demo(t, "frontpiece"))
	if err != nil {
		t.Fatal(err)
	}
	chart := charted(t, draw.Look{}, front)
	length := 0
	for _, ends := range chart.classed("waited")[0].subpaths(t) {
		length += ends[1].x - ends[0].x
	}
	if got, want := float64(length)/cellWidth(t, chart, front), float64(front.Widths.Neck); got < want-0.2 || got > want+0.2 {
		t.Errorf("%.2f stitches waited, the neck has %.0f", got, want)
	}
}

// A wedge points into the piece, an arrowhead out of it, on either side of the fabric.
func TestMarksPointTheirWay(t *testing.T) {
	set, err := garment.Pieces(demo(t, "pullover"))
	if err != nil {
		t.Fatal(err)
	}
	for _, facing := range []shaping.Facing{shaping.PurlSide, shaping.KnitSide} {
		chart := charted(t, draw.Look{Facing: facing}, set.Pieces[0])
		const middle = 90_000 // of the page
		away := func(p place) int { return max(p.x-middle, middle-p.x) }
		for _, corners := range chart.classed("decrease")[0].subpaths(t) {
			if tip := corners[1]; away(tip) >= away(corners[0]) {
				t.Errorf("%v side: a decrease at %v points outwards", facing, corners)
			}
		}
		for _, corners := range chart.classed("increase")[0].subpaths(t) {
			if tip := corners[1]; away(tip) <= away(corners[0]) {
				t.Errorf("%v side: an increase at %v points inwards", facing, corners)
			}
		}
	}
}

// Charts of several pieces stand one below the other.
func TestChartsStandBelowEachOther(t *testing.T) {
	set, err := garment.Pieces(demo(t, "cardigan"))
	if err != nil {
		t.Fatal(err)
	}
	var svg bytes.Buffer
	if err := draw.Chart(&svg, draw.Look{}, set.Pieces...); err != nil {
		t.Fatal(err)
	}
	picture := read(t, svg.Bytes())
	bottom := 0
	charts := picture.classed("wales")
	for i, e := range charts {
		top, low := 1<<30, 0
		for _, corners := range e.subpaths(t) {
			for _, c := range corners {
				top, low = min(top, c.y), max(low, c.y)
			}
		}
		if top <= bottom {
			t.Errorf("chart %d begins at %d, the one above ends at %d", i, top, bottom)
		}
		bottom = low
	}
	if box := numbersOf(t, picture[0].attrs["viewBox"]); len(charts) != len(set.Pieces) || bottom > box[3] {
		t.Errorf("%d charts, the last ends at %d of %v", len(charts), bottom, box)
	}
}

// On the bed a leader points at the height that the counter shows before the step: so many
// rows lie below it.
func TestLeadersPointAtTheirRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		if p.Work.Place == shaping.Hand {
			t.Skip("rows, not readings")
		}
		chart := charted(t, draw.Look{}, p)
		bottom, top := 0, 1<<30
		for _, corners := range chart.classed("wales")[0].subpaths(t) {
			for _, c := range corners {
				bottom, top = max(bottom, c.y), min(top, c.y)
			}
		}
		height := 0
		for _, row := range p.Work.Rows {
			height = max(height, row.Row)
		}
		row := float64(bottom-top) / float64(height)
		texts := chart.in("readings")
		var leaders [][]place
		for _, e := range chart.classed("leaders") {
			leaders = append(leaders, e.subpaths(t)...)
		}
		if len(leaders) != len(texts) {
			t.Fatalf("%d leaders for %d readings", len(leaders), len(texts))
		}
		for i, e := range texts {
			n := readingOf(t, e)
			end := leaders[i][len(leaders[i])-1]
			if at := float64(bottom-end.y) / row; at < float64(n)-0.1 || at > float64(n)+0.1 {
				t.Fatalf("%s: the leader of %s points at row %.2f", p.Name(), e.text, at)
			}
		}
	})
}

// cellWidth returns how wide a cell of the chart is on paper.
func cellWidth(t tester, chart picture, p garment.Piece) float64 {
	least, most := 0, 0
	for i, corners := range chart.classed("wales")[0].subpaths(t) {
		for _, c := range corners {
			if i == 0 && least == 0 {
				least, most = c.x, c.x
			}
			least, most = min(least, c.x), max(most, c.x)
		}
	}
	return float64(most-least) / float64(p.Cloth.Needles().Len())
}

// Cells have the proportion of the gauge.
func TestCellsHaveTheProportionOfTheGauge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		chart := charted(t, draw.Look{}, p)
		tall := 0
		for _, corners := range chart.classed("wales")[0].subpaths(t) {
			for _, c := range corners {
				tall = max(tall, corners[0].y-c.y, c.y-corners[0].y)
			}
		}
		rows := slices.Max(cellsOf(t, chart))
		paper := float64(tall) / float64(rows) / cellWidth(t, chart, p)
		cloth := p.Gauge.Height(1).Millimetres().InexactFloat64() / p.Gauge.Width(1).Millimetres().InexactFloat64()
		if one := 1 / float64(rows); paper < cloth*(1-one) || paper > cloth*(1+one) {
			t.Fatalf("%s: a cell is %.4f as high as wide, a stitch %.4f", p.Name(), paper, cloth)
		}
	})
}

// The names below the cells stand under the needles that they name, also where the other
// side of the fabric is shown.
func TestNeedlesAreNamedWhereTheyStand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		look := looks().Draw(t, "look")
		p := drawPiece(t)
		if p.Work.Place == shaping.Hand {
			t.Skip("numbers only")
		}
		chart := charted(t, look, p)
		cell := cellWidth(t, chart, p)
		list := chart.in("needles")
		at := func(name string) int { return shaping.MustParseNeedle(name).Index() }
		first, last := list[0], list[1]
		if first.text != p.Cloth.Needles().First.String() || last.text != p.Cloth.Needles().Last.String() {
			t.Fatalf("the outermost are named %s and %s", first.text, last.text)
		}
		for _, e := range list {
			want := float64(first.number(t, "x")) + float64(at(e.text)-at(first.text))*cell
			if look.Facing == shaping.KnitSide {
				want = float64(first.number(t, "x")) - float64(at(e.text)-at(first.text))*cell
			}
			if got := float64(e.number(t, "x")); got < want-20 || got > want+20 {
				t.Fatalf("%s stands at %.0f, not at %.0f", e.text, got, want)
			}
		}
	})
}

// Readings at the sides are those of the steps of that side, each at the height where the
// leader points, and those of one half at its own side.
func TestReadingsAreThoseOfTheSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		chart := charted(t, draw.Look{}, p)
		off := 1
		if p.Work.Place == shaping.Hand {
			off = 0
		}
		readings := map[string]map[int]bool{"end": {}, "start": {}} // by the text anchor: left and right
		for _, e := range chart.in("readings") {
			readings[e.side][readingOf(t, e)+off] = true
		}
		for _, panel := range p.Work.Panels {
			for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
				side := edge
				switch panel.Name {
				case shaping.LeftHalf:
					side = shaping.Left
				case shaping.RightHalf:
					side = shaping.Right
				}
				anchor := map[shaping.Side]string{shaping.Left: "end", shaping.Right: "start"}[side]
				steps := panel.Steps(edge)
				for i, step := range steps {
					// Of a run of equal steps those between the first and the last may have no
					// room, which the key then says.
					run := i > 0 && i+1 < len(steps) && steps[i-1].Stitches == step.Stitches && steps[i+1].Stitches == step.Stitches
					if run && step.Row-steps[i-1].Row != steps[i+1].Row-step.Row { // two distances in turn
						run = i > 1 && i+2 < len(steps) && steps[i-1].Row-steps[i-2].Row == steps[i+1].Row-step.Row &&
							step.Row-steps[i-1].Row == steps[i+2].Row-steps[i+1].Row
					}
					told := slices.ContainsFunc(chart, func(e element) bool { return strings.HasPrefix(e.text, "readings: of equal steps") })
					if !readings[anchor][step.Row] && !(run && told) {
						t.Fatalf("%s, %s: the step at row %d of the %v edge has no reading at the %v", p.Name(), panel.Name, step.Row, edge, side)
					}
				}
			}
		}
	})
}

// readingOf returns the number of a reading.
func readingOf(t tester, e element) int {
	t.Helper()
	n, err := strconv.Atoi(strings.TrimPrefix(e.text, "after "))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// A title, which the spec has, stays text whatever it holds.
func TestHostileTitles(t *testing.T) {
	for _, title := range []string{
		`</title><script>alert("1")</script>`, `" onload="alert(1)`, "a \x00 b \x1b[31m", "\u202egnihtemos", "]]>&lt;&amp;", "<!--", "\xff\xfe",
	} {
		spec := demo(t, "frontpiece")
		front, err := garment.Front(spec)
		if err != nil {
			t.Fatal(err)
		}
		front.Spec.Title = title
		for name, write := range map[string]func(*bytes.Buffer) error{
			"chart":     func(b *bytes.Buffer) error { return draw.Chart(b, draw.Look{}, front) },
			"schematic": func(b *bytes.Buffer) error { return draw.Schematic(b, draw.Look{}, front) },
		} {
			var svg bytes.Buffer
			if err := write(&svg); err != nil {
				t.Fatal(err)
			}
			p := read(t, svg.Bytes())
			if n := len(p.named("script")); n > 0 {
				t.Errorf("%s, %q: a script", name, title)
			}
			for _, e := range p {
				if e.attrs["onload"] != "" {
					t.Errorf("%s, %q: an event", name, title)
				}
			}
			if got := p.named("title")[0].text; !strings.HasPrefix(got, oneline.Of(title)+". ") {
				t.Errorf("%s: the title is %q", name, got)
			}
		}
	}
}

func TestChartRefuses(t *testing.T) {
	for name, pieces := range map[string][]garment.Piece{"none": nil, "zero": {{}}} {
		for what, write := range map[string]func() error{
			"chart":     func() error { return draw.Chart(&bytes.Buffer{}, draw.Look{}, pieces...) },
			"schematic": func() error { return draw.Schematic(&bytes.Buffer{}, draw.Look{}, pieces...) },
		} {
			if err := write(); err != draw.ErrPiece {
				t.Errorf("%s of %s: error %v", what, name, err)
			}
		}
	}
}

// The first error of the writer comes back.
func TestWriterFails(t *testing.T) {
	front, err := garment.Front(demo(t, "frontpiece"))
	if err != nil {
		t.Fatal(err)
	}
	for _, after := range []int{0, 5000} {
		w := &failing{left: after}
		if err := draw.Chart(w, draw.Look{}, front); err != errFull {
			t.Errorf("chart, after %d bytes: error %v", after, err)
		}
	}
	if err := draw.Schematic(&failing{}, draw.Look{}, front); err != errFull {
		t.Errorf("schematic: error %v", err)
	}
}

var errFull = fmt.Errorf("no room")

type failing struct{ left int }

func (f *failing) Write(b []byte) (int, error) {
	if f.left -= len(b); f.left < 0 {
		return 0, errFull
	}
	return len(b), nil
}

// A look that cannot be is refused by name, and so is a piece that was changed since it was
// knitted.
func TestPicturesRefuse(t *testing.T) {
	front, err := garment.Front(demo(t, "frontpiece"))
	if err != nil {
		t.Fatal(err)
	}
	longer, ungauged := front, front
	longer.Work = front.Work.Clone()
	longer.Work.Rows[3].Knit = shaping.Span{First: -1_000_000, Last: 1_000_000}
	ungauged.Gauge = gauge.Gauge{}
	for _, c := range []struct {
		why   string
		look  draw.Look
		piece garment.Piece
		want  error
	}{
		{"no such facing", draw.Look{Facing: 9}, front, draw.ErrLook},
		{"an ID with a quote", draw.Look{ID: `"><script>`}, front, draw.ErrLook},
		{"an ID with a blank", draw.Look{ID: "front 1"}, front, draw.ErrLook},
		{"an ID", draw.Look{ID: "front-1"}, front, nil},
		{"other rows", draw.Look{}, longer, draw.ErrPiece},
		{"no gauge", draw.Look{}, ungauged, draw.ErrPiece},
	} {
		for what, write := range map[string]func(io.Writer, draw.Look, ...garment.Piece) error{"chart": draw.Chart, "schematic": draw.Schematic} {
			var svg bytes.Buffer
			if err := write(&svg, c.look, c.piece); err != c.want || (svg.Len() > 0) != (c.want == nil) {
				t.Errorf("%s, %s: error %v, %d bytes", what, c.why, err, svg.Len())
			}
		}
	}
}
