package main

import (
	"fmt"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"github.com/google/go-cmp/cmp"
)

func all() []example {
	var list []example
	for _, g := range gallery() {
		list = append(list, g.examples...)
	}
	return list
}

func shownAll(t testing.TB) []shown {
	t.Helper()
	groups, err := show(gallery())
	if err != nil {
		t.Fatal(err)
	}
	var list []shown
	for _, g := range groups {
		list = append(list, g.Examples...)
	}
	return list
}

var number = regexp.MustCompile(`\d+(\.\d+)?`)

// worth works a sum out that is written as by hand.
func worth(t *testing.T, by string) float64 {
	t.Helper()
	text := strings.NewReplacer("×", "*", "÷", "/", "−", "-", " cm", "", " in", "").Replace(by)
	text = number.ReplaceAllStringFunc(text, func(n string) string {
		if strings.Contains(n, ".") {
			return n
		}
		return n + ".0" // so that it is no division of whole numbers
	})
	v, err := types.Eval(token.NewFileSet(), nil, token.NoPos, text)
	if err != nil {
		t.Fatalf("%s: %v", by, err)
	}
	f, _ := constant.Float64Val(v.Value)
	return f
}

// first reads the number that a text begins with.
func first(t *testing.T, text string) float64 {
	t.Helper()
	word, _, _ := strings.Cut(text, " ")
	f, err := strconv.ParseFloat(word, 64)
	if err != nil {
		t.Fatalf("%q begins with no number", text)
	}
	return f
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// Every sum is worked out again from its own text, and its whole number is where the reason
// says.
func TestSumsByHand(t *testing.T) {
	for _, s := range shownAll(t) {
		for _, sum := range s.Sums {
			exactly := first(t, sum.Exactly)
			if sum.By != "" && !near(worth(t, sum.By), exactly, 0.0006) {
				t.Errorf("%s, %s: %s is %v, not %s", s.Name, sum.What, sum.By, worth(t, sum.By), sum.Exactly)
			}
			if !strings.HasSuffix(sum.Chosen, " stitches") && !strings.HasSuffix(sum.Chosen, " rows") || strings.Contains(sum.Chosen, " or ") || strings.Contains(sum.Chosen, "times") {
				continue
			}
			chosen, off := first(t, sum.Chosen), 2.0
			for reason, most := range map[string]float64{"nearest whole": 0.5, "nearest even": 1, "nearest odd": 1} {
				if strings.Contains(sum.Why, reason) {
					off = most
				}
			}
			if !near(chosen, exactly, off) {
				t.Errorf("%s, %s: %s of %s, %s", s.Name, sum.What, sum.Chosen, sum.Exactly, sum.Why)
			}
			for word, rest := range map[string]float64{"even": 0, "odd": 1} {
				if asked := regexp.MustCompile(`(nearest|and) ` + word + `\b`).MatchString(sum.Why); asked && math.Mod(chosen, 2) != rest {
					t.Errorf("%s, %s: %s, %s", s.Name, sum.What, sum.Chosen, sum.Why)
				}
			}
			if equal := regexp.MustCompile(`: ([^:]*) = (\d+)$`).FindStringSubmatch(sum.Why); equal != nil && worth(t, equal[1]) != first(t, equal[2]) {
				t.Errorf("%s, %s: %s", s.Name, sum.What, sum.Why)
			}
			swatch := s.piece.Spec.Swatch
			per := swatch.Width.Millimetres().InexactFloat64() / float64(swatch.Stitches)
			if strings.HasSuffix(sum.Chosen, " rows") {
				per = swatch.Height.Millimetres().InexactFloat64() / float64(swatch.Rows)
			}
			if !near(chosen*per, millimetres(t, sum.Is), halfPlace(sum.Is)) {
				t.Errorf("%s, %s: %s are %v mm, not %s", s.Name, sum.What, sum.Chosen, chosen*per, sum.Is)
			}
		}
	}
}

// millimetres reads a length.
func millimetres(t *testing.T, text string) float64 {
	t.Helper()
	l, err := gauge.ParseLength(text)
	if err != nil {
		t.Fatal(err)
	}
	return l.Millimetres().InexactFloat64()
}

// halfPlace returns half of the last place that a length is printed with, in millimetres.
func halfPlace(text string) float64 {
	if strings.HasSuffix(text, " in") {
		return 0.005*25.4 + 0.01
	}
	return 0.5 + 0.01
}

var (
	onePhrase = regexp.MustCompile(`^(?:row (\d+): )?(\+?)(\d+) stitch(?:es)?(?: (\d+) rows later| in the next row| every (?:(\d+)\w\w )?(?:and (\d+)\w\w )?row(?: in turn)?, (\d+) times)?$`)
	begins    = regexp.MustCompile(`^Row 1 of the edge is row (\d+) of the piece`)
	ofBox     = regexp.MustCompile(`^(\d+) stitch(?:es)? by (\d+) rows?$`)
)

// steps reads words back into steps, without the library.
func steps(t *testing.T, words string) shaping.Schedule {
	t.Helper()
	if strings.HasPrefix(words, "no stitches go") {
		return nil
	}
	var list shaping.Schedule
	row := 0
	for said := range strings.SplitSeq(words, "; ") {
		m := onePhrase.FindStringSubmatch(said)
		if m == nil {
			t.Fatalf("cannot read %q", said)
		}
		num := func(i, otherwise int) int {
			n, err := strconv.Atoi(m[i])
			if err != nil {
				return otherwise
			}
			return n
		}
		stitches := -num(3, 0)
		if m[2] == "+" {
			stitches = -stitches
		}
		turns := [2]int{num(4, num(5, 1)), num(6, num(4, num(5, 1)))}
		at := 0
		for range num(7, 1) {
			if len(list) == 0 {
				row = num(1, 0)
			} else {
				row += turns[at%2]
				at++
			}
			list = append(list, shaping.Step{Row: row, Stitches: stitches})
		}
	}
	return list
}

// box reads the whole stitches and rows of an edge.
func box(t *testing.T, s shown) (stitches, rows int) {
	t.Helper()
	m := ofBox.FindStringSubmatch(s.Figures[0].Is)
	if m == nil {
		t.Fatalf("%s: no box in %q", s.Name, s.Figures[0].Is)
	}
	stitches, _ = strconv.Atoi(m[1])
	rows, _ = strconv.Atoi(m[2])
	return stitches, rows
}

// followed returns the way that the piece follows.
func followed(t *testing.T, s shown) way {
	t.Helper()
	var found []way
	for _, w := range s.Ways.List {
		if w.Followed {
			found = append(found, w)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%s: %d ways are followed", s.Name, len(found))
	}
	return found[0]
}

// knitted returns what goes and comes at an edge of the cloth, loop by loop: at the neck of
// one half, or at one outer edge of the whole piece.
func knitted(p garment.Piece, edge string, side shaping.Side) shaping.Schedule {
	half, at := shaping.RightHalf, side
	if side == shaping.Left {
		half = shaping.LeftHalf
	}
	last := p.Work.Panels[0].Needles.End(side).Index()
	if edge == garment.NeckEdge {
		panel, _ := p.Work.Panels.Panel(half)
		at = side.Opposite()
		last = panel.Needles.End(at).Index()
	}
	var list shaping.Schedule
	for c := range p.Cloth.Courses() {
		if c.Panel != half && (c.Panel != shaping.Body || edge == garment.NeckEdge) {
			continue
		}
		now := c.Needles.End(at).Index()
		came := now - last
		if at == shaping.Left {
			came = -came
		}
		if came != 0 {
			list = append(list, shaping.Step{Row: c.Row, Stitches: came})
		}
		last = now
	}
	return list
}

// The words of the way that is followed are what was knitted, at one of the two edges.
func TestWordsAreKnitted(t *testing.T) {
	for i, s := range shownAll(t) {
		edge := all()[i].edge
		stitches, rows := box(t, s)
		said := steps(t, followed(t, s).Words)
		total := 0
		for _, step := range said {
			total += step.Stitches
		}
		m := begins.FindStringSubmatch(s.Ways.Begins)
		row, err := strconv.Atoi(m[1])
		if err != nil {
			t.Fatal(err)
		}
		if edge == garment.ShoulderEdge {
			if s.piece.Spec.Shoulder.Path != "" {
				said = said[:len(said)-1] // of the group at the neck
			} else {
				total -= lastNumber(t, s.Sums[len(s.Sums)-1].Chosen)
			}
		}
		if max(total, -total) != stitches {
			t.Errorf("%s: the words say %d stitches, the box has %d", s.Name, total, stitches)
		}
		var atOnce shaping.Schedule
		if n := s.piece.Widths.BindOff; n > 0 && edge != garment.NeckEdge {
			atOnce = shaping.Schedule{{Row: row, Stitches: -n}}
		}
		want := append(atOnce, said.Shifted(row-1)...)
		last := row + rows - 1
		if edge == garment.ArmholeEdge {
			last = min(last, s.piece.ShoulderRow-1)
		}
		var got [2]shaping.Schedule
		for k, side := range []shaping.Side{shaping.Left, shaping.Right} {
			got[k] = knitted(s.piece, edge, side).Between(row, last)
		}
		if fmt.Sprint(want) != fmt.Sprint(got[0]) && fmt.Sprint(want) != fmt.Sprint(got[1]) {
			t.Errorf("%s: said but not knitted (-said +knitted at the right):\n%s", s.Name, cmp.Diff(want, got[1]))
		}
	}
}

// lastNumber reads the last number of a text.
func lastNumber(t *testing.T, text string) int {
	t.Helper()
	found := number.FindAllString(text, -1)
	n, err := strconv.Atoi(found[len(found)-1])
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// The shorthand says what the words say.
func TestShorthandIsTheWords(t *testing.T) {
	for _, s := range shownAll(t) {
		for _, w := range s.Ways.List {
			said := steps(t, w.Words)
			if len(said) == 0 {
				continue
			}
			total := 0
			for _, step := range said {
				total += max(step.Stitches, -step.Stitches)
			}
			list := strings.Split(w.Shorthand, ", ")
			head, one, ok := strings.Cut(list[0], ": ")
			if !ok || lastNumber(t, head) != said[0].Row {
				t.Fatalf("%s: %q does not begin at row %d", s.Name, w.Shorthand, said[0].Row)
			}
			list[0] = one
			for _, run := range list {
				parts := strings.Split(strings.ReplaceAll(run, "+", ""), "-")
				if len(parts) == 1 {
					parts = []string{"", run, "1"}
				}
				total -= lastNumber(t, parts[1]) * lastNumber(t, parts[2])
			}
			if total != 0 || len(list) != w.Phrases {
				t.Errorf("%s: %q is not %q", s.Name, w.Shorthand, w.Words)
			}
		}
	}
}

// Areas and deviations are measured again along the points of the drawn line.
func TestAreasBySampling(t *testing.T) {
	for i, s := range shownAll(t) {
		p, err := plan(all()[i])
		if err != nil {
			t.Fatal(err)
		}
		stitches, rows := box(t, s)
		line, skipped := p.straight(stitches, rows), 0
		if p.edge != nil {
			line, skipped = p.edge.line.Points(), p.edge.rules.FirstRow()-1
			if p.spec.Shoulder.Path != "" {
				rows++ // of the last group
			}
		}
		cell := p.piece.Gauge.Width(1).Millimetres().InexactFloat64() * p.piece.Gauge.Height(1).Millimetres().InexactFloat64()
		unit := 100.0
		if p.spec.Units == gauge.Inch {
			unit = 25.4 * 25.4
		}
		// The points lie within a thousandth of the edge's size.
		within := 0.006 + 0.0005*float64(stitches*rows)*cell/unit
		for _, w := range s.Ways.List {
			area, farthest := sampled(line, steps(t, w.Words), stitches, rows, skipped)
			if !near(area*cell/unit, first(t, w.Area), within) {
				t.Errorf("%s, %q: %s, sampled %.3f", s.Name, w.Words, w.Area, area*cell/unit)
			}
			if !near(farthest, first(t, w.Deviation), 0.06) {
				t.Errorf("%s, %q: %s, sampled %.3f", s.Name, w.Words, w.Deviation, farthest)
			}
		}
	}
}

// straight returns the straight line of an edge that follows none of its own.
func (p planned) straight(stitches, rows int) []curve.Point {
	return []curve.Point{{}, {Across: p.piece.Gauge.Width(stitches), Up: p.piece.Gauge.Height(rows)}}
}

// sampled measures stairs against a line by looking at many heights in every row: the area
// in stitches times rows and the farthest distance in the middle of a row. Rows that are
// skipped count in the distance only.
func sampled(line []curve.Point, s shaping.Schedule, stitches, rows, skipped int) (area, farthest float64) {
	const each = 400
	xs, ys := make([]float64, len(line)), make([]float64, len(line))
	end := line[len(line)-1]
	for i, p := range line {
		if width := end.Across.Millimetres().InexactFloat64(); width != 0 {
			xs[i] = p.Across.Millimetres().InexactFloat64() / width * float64(stitches)
		}
		ys[i] = p.Up.Millimetres().InexactFloat64() / end.Up.Millimetres().InexactFloat64() * float64(rows)
	}
	at := 0
	gone := func(height float64) float64 {
		for at+2 < len(ys) && ys[at+1] <= height {
			at++
		}
		part := (height - ys[at]) / (ys[at+1] - ys[at])
		return xs[at] + part*(xs[at+1]-xs[at])
	}
	for row := 1; row <= rows; row++ {
		stair := float64(s.Through(row))
		for k := range each {
			off := math.Abs(gone(float64(row-1)+(float64(k)+0.5)/each) - math.Abs(stair))
			if row > skipped {
				area += off / each
			}
			if k == each/2 {
				farthest = max(farthest, off)
			}
		}
	}
	return area, farthest
}

// The length along a neck is that of the line through the middles of the steps that are
// said; a cap is as long as is wanted; a straight armhole as it is deep.
func TestLengthsAlongEdges(t *testing.T) {
	for i, s := range shownAll(t) {
		wale, row := s.piece.Gauge.Width(1).Millimetres().InexactFloat64(), s.piece.Gauge.Height(1).Millimetres().InexactFloat64()
		along := s.Figures[5].Is
		switch edge := all()[i].edge; {
		case edge == garment.NeckEdge:
			stitches, rows := box(t, s)
			half := func(rows int) float64 {
				sum, x, y, gone := 0.0, 0.0, 0.0, 0.0
				to := func(across, up float64) {
					sum += math.Hypot((across-x)*wale, (up-y)*row)
					x, y = across, up
				}
				for _, step := range steps(t, followed(t, s).Words) {
					n := float64(-step.Stitches)
					to(gone+n/2, float64(step.Row-1))
					gone += n
				}
				to(float64(stitches), float64(rows))
				return sum
			}
			later := 0 // the second half, in the hand
			if s.piece.Work.Place == shaping.Hand {
				later = 1
			}
			if want := half(rows) + half(rows+later) + float64(s.piece.Widths.Flat)*wale; !near(want, millimetres(t, along), halfPlace(along)) {
				t.Errorf("%s: %s along the neck, want %.2f mm", s.Name, along, want)
			}
		case edge == garment.CapEdge:
			if wanted := s.Figures[6].Is; !near(millimetres(t, along), millimetres(t, wanted), 3+2*halfPlace(along)) {
				t.Errorf("%s: %s along the cap, %s wanted", s.Name, along, wanted)
			}
		case s.Name == "armhole-straight":
			if depth := s.Sums[len(s.Sums)-1].Is; along != depth {
				t.Errorf("%s: %s along the armhole, %s deep", s.Name, along, depth)
			}
		}
	}
}

// The way that is followed is the one that the page says it is.
func TestFollowsWhatItSays(t *testing.T) {
	const asClose = 0.05 // as package garment has it
	for i, e := range all() {
		p, err := plan(e)
		if err != nil {
			t.Fatal(err)
		}
		if p.edge == nil || e.edge == garment.CapEdge {
			continue
		}
		most := p.edge.wordings.Trace.Measures.Area * (1 + asClose)
		for k, w := range p.edge.wordings.All {
			if (k == p.edge.followed) != (w.Measures.Area <= most && (k == 0 || p.edge.wordings.All[k-1].Measures.Area > most)) {
				t.Errorf("%s: follows %d, area %v of %d phrases, most %v", all()[i].name, p.edge.followed, w.Measures.Area, len(w.Phrases), most)
			}
		}
		if err := p.edge.rules.Check(p.edge.wordings.All[p.edge.followed].Schedule, 10_000); err != nil {
			t.Errorf("%s: %v", e.name, err)
		}
	}
}
