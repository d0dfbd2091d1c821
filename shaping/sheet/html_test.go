package sheet_test

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// newborn returns the spec of a front so small that its page can be read as a whole; invented
// figures.
func newborn() garment.Spec {
	l := gauge.MustParseLength
	return garment.Spec{
		Title:    "A newborn's slipover",
		Swatch:   &gauge.Swatch{Stitches: 18, Width: l("10 cm"), Rows: 26, Height: l("10 cm")},
		Start:    garment.Start{Band: l("2 cm")},
		Seam:     garment.Seam{Stitches: 1},
		Body:     garment.Body{Width: l("22 cm"), Length: l("13 cm")},
		Armhole:  garment.Armhole{Depth: l("9 cm"), Inset: l("2 cm"), BindOff: garment.Exactly(l("1.2 cm"))},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: l("10 cm"), Depth: l("3 cm")},
		Shoulder: garment.Shoulder{Drop: l("1 cm")},
	}
}

func TestPageGolden(t *testing.T) {
	piece, err := garment.Front(newborn())
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := sheet.WritePage(&out, piece); err != nil {
		t.Fatal(err)
	}
	golden.Check(t, "testdata/page-newborn.golden", out.Bytes())
}

// garments draws a jumper or a cardigan that can be made, in the hand or on the bed, with bands
// and without.
func garments(rt *rapid.T) (garment.Set, bool) {
	step := gauge.MustParseLength("1 mm")
	s := rapid.OneOf(gen.JumperSpec(step), gen.CardiganSpec(step)).Draw(rt, "spec")
	if rapid.Bool().Draw(rt, "banded") {
		s.Band = gen.BandSpec(step).Draw(rt, "its band")
	}
	set, err := garment.Pieces(s)
	return set, err == nil
}

// The steps of a page suffice to knit every piece, and each stands where the work is; what
// has a box in print has one on the page; every seam is joined once, in its time; everything
// that is named is there.
func TestPageOfAnyGarment(t *testing.T) {
	made := 0
	rapid.Check(t, func(rt *rapid.T) {
		set, ok := garments(rt)
		if !ok {
			return
		}
		made++
		_, page := pageOf(rt, set)
		for i, shown := range page.ofClass("piece") {
			if err := compare(asPrinted(page, shown), set.Pieces[i]); err != nil {
				rt.Fatalf("%s: %v", set.Pieces[i].Name(), err)
			}
			checkRows(rt, shown, set.Pieces[i])
		}
		checkNumbers(rt, page)
		checkBoxes(rt, page, set)
		checkSeams(rt, page)
		checkNames(rt, page)
		checkContents(rt, page, set)
	})
	if made == 0 {
		t.Error("no garment was made")
	}
}

var (
	bedAfter  = regexp.MustCompile(`^counter (\d+); in work (\S+), (\d+)$`)
	handAfter = regexp.MustCompile(`^after row (\d+) \((?:RS|WS)\): (\d+) sts? in work$`)
	rowsLeft  = regexp.MustCompile(`^(?:(\d+) in the (\w+ half|body), )?(\d+) in the piece$`)
)

// checkRows fails if the steps of a piece do not cover every row of the work once, in its
// order, do not say where they end, or do not count down the rows that are left.
func checkRows(t rapid.TB, shown *element, piece garment.Piece) {
	rows := piece.Work.Rows
	left := map[string]int{}
	for _, row := range rows {
		left[row.Panel]++
	}
	for _, step := range orderOf(shown) {
		said := rowsLeft.FindStringSubmatch(step.attrs["data-left"])
		if said == nil || said[3] != strconv.Itoa(len(rows)) || said[2] != "" && said[1] != strconv.Itoa(left[said[2]]) {
			t.Fatalf("%s: %q with %d rows to go, by panels %v", step.attrs["id"], step.attrs["data-left"], len(rows), left)
		}
		after := step.words("after")
		if after == "" {
			checkEnd(t, step, "", "")
			continue
		}
		before, _ := strconv.Atoi(step.words("b"))
		found := bedAfter.FindStringSubmatch(after)
		if piece.Work.Place == shaping.Hand {
			found = handAfter.FindStringSubmatch(after)
			before--
		}
		if found == nil {
			t.Fatalf("%s ends with %q", step.attrs["id"], after)
		}
		to, _ := strconv.Atoi(found[1])
		n := to - before
		if n <= 0 || n > len(rows) {
			t.Fatalf("%s goes from %d to %d with %d rows to go", step.attrs["id"], before, to, len(rows))
		}
		for i, row := range rows[:n] {
			if row.Row != before+i+1 || said[2] != "" && row.Panel != said[2] {
				t.Fatalf("%s knits row %d, the work has row %d of the %s next", step.attrs["id"], before+i+1, row.Row, row.Panel)
			}
			left[row.Panel]--
		}
		last := rows[n-1]
		switch {
		case piece.Work.Place == shaping.Bed:
			checkEnd(t, step, fmt.Sprintf("%03d", last.CounterAfter()), last.From.Opposite().String())
		case n > 1:
			checkEnd(t, step, strconv.Itoa(last.Row), "")
		default:
			checkEnd(t, step, "", "")
		}
		if in := strconv.Itoa(last.Knit.Len()); in != found[len(found)-1] {
			t.Fatalf("%s: %q, but the row has %s", step.attrs["id"], after, in)
		}
		rows = rows[n:]
	}
	if len(rows) > 0 {
		t.Fatalf("%d rows are knitted in no step", len(rows))
	}
}

// checkEnd fails if a step does not end at that reading and side.
func checkEnd(t rapid.TB, step *element, reading, side string) {
	if to, end := step.attrs["data-to"], step.attrs["data-end"]; to != reading || end != side {
		t.Fatalf("%s ends at %q, %q, should be at %q, %q", step.attrs["id"], to, end, reading, side)
	}
}

// orderOf returns the steps of a piece up to its finish.
func orderOf(piece *element) []*element {
	var steps []*element
	for _, part := range piece.children {
		if part.name == "ol" {
			steps = append(steps, part.ofClass("step")...)
		}
	}
	return steps
}

// checkNumbers fails if a step has not one box of its number.
func checkNumbers(t rapid.TB, page *element) {
	for i, step := range page.ofClass("step") {
		box := step.named("input")
		if step.attrs["id"] != fmt.Sprintf("step-%d", i+1) || len(box) != 1 ||
			box[0].attrs["type"] != "checkbox" || box[0].attrs["id"] != fmt.Sprintf("tick-%d", i+1) || step.named("label")[0].attrs["for"] != box[0].attrs["id"] {
			t.Fatalf("step %d: %v", i+1, step.attrs)
		}
	}
}

// checkNames fails if two elements have one name, or if one is named that is not there.
func checkNames(t rapid.TB, page *element) {
	ids, regions := map[string]bool{}, map[string]bool{}
	all := page.all(func(*element) bool { return true })
	for _, e := range all {
		if id, ok := e.attrs["id"]; ok {
			if ids[id] {
				t.Errorf("two elements are %s", id)
			}
			ids[id] = true
		}
		if name := e.attrs["aria-label"]; e.attrs["role"] == "region" {
			if name == "" || regions[name] {
				t.Errorf("two regions are called %q", name)
			}
			regions[name] = true
		}
	}
	for _, e := range all {
		named := strings.Join([]string{e.attrs["for"], e.attrs["aria-labelledby"], e.attrs["aria-describedby"], strings.TrimPrefix(e.attrs["href"], "#")}, " ")
		for _, name := range strings.Fields(named) {
			if !ids[name] {
				t.Errorf("%s names %s, which is not there", e.name, name)
			}
		}
	}
}

// checkContents fails if the contents do not lead to the first step of every piece.
func checkContents(t rapid.TB, page *element, set garment.Set) {
	links := page.ofClass("go")
	for i, shown := range page.ofClass("piece") {
		if first := "#" + shown.ofClass("step")[0].attrs["id"]; links[i].attrs["href"] != first || links[i].text != set.Pieces[i].Name() {
			t.Errorf("%s leads to %s, the %s begins at %s", links[i].text, links[i].attrs["href"], set.Pieces[i].Name(), first)
		}
	}
}

// What people wrote into a spec is text on the page, whatever it looks like.
func TestPageEscapes(t *testing.T) {
	for _, title := range []string{
		`</title></style></script><script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `' onmouseover='alert(1)`,
		"{{.}} {{script}}", "<!-- -->", "]]>", "&lt;b&gt; & &amp;", "a\x00b\x1b[31mc\nd\te\x7f\u0085\u2028", "abc\u202Edef\u2066ghi", "\xff\xfe",
		"\u05e1\u05d5\u05d5\u05d3\u05e8 7", "\x1f",
	} {
		set := setOf(t, newborn())
		set.Checks = []garment.Check{{Says: title}, {Says: title, Passed: true}}
		for i := range set.Pieces {
			p := &set.Pieces[i]
			p.Spec.Title, p.Spec.Swatch, p.Warnings = title, &gauge.Swatch{Tension: title}, []string{title}
		}
		text, page := pageOf(t, set)
		clean := strings.Join(strings.Fields(strings.Map(func(r rune) rune {
			if !unicode.IsPrint(r) {
				return ' '
			}
			return r
		}, title)), " ")
		want := cmp.Or(clean, "A garment")
		if got := []string{page.words("title"), page.words("bdi")}; !slices.Equal(got, []string{want, want}) {
			t.Errorf("%q: titles %q", title, got)
		}
		said := 0
		for _, li := range page.named("li") {
			if strings.HasSuffix(strings.Join(strings.Fields(li.text), " "), clean) {
				said++
			}
		}
		if said < 3 {
			t.Errorf("%q: said %d times of checks and warnings", title, said)
		}
		if len(page.named("script")) != 1 || len(page.named("style")) != 1 || len(page.named("img")) != 0 {
			t.Errorf("%q: made elements", title)
		}
		for _, e := range page.all(func(*element) bool { return true }) {
			for name := range e.attrs {
				if strings.HasPrefix(name, "on") {
					t.Errorf("%q: made an attribute %s", title, name)
				}
			}
		}
		if i := strings.IndexFunc(text, func(r rune) bool { return r != '\n' && r != '\u00a0' && !unicode.IsPrint(r) }); i >= 0 {
			t.Errorf("%q: %q on the page", title, text[max(0, i-80):i+8])
		}
	}
}

// A page needs nothing but itself.
func TestPageStandsAlone(t *testing.T) {
	text, page := pageOf(t, setOf(t, jumper()))
	policy := page.all(func(e *element) bool { return e.attrs["http-equiv"] == "Content-Security-Policy" })
	if len(policy) != 1 || !strings.HasPrefix(policy[0].attrs["content"], "default-src 'none';") {
		t.Errorf("policy %v", policy)
	}
	for _, e := range page.all(func(*element) bool { return true }) {
		for _, name := range []string{"src", "href", "action", "style"} {
			if value, ok := e.attrs[name]; ok && !strings.HasPrefix(value, "#") {
				t.Errorf("%s %s=%q", e.name, name, value)
			}
		}
	}
	if most := 300_000; len(text) > most {
		t.Errorf("%d bytes, at most %d", len(text), most)
	}
	for _, loads := range []string{"@import", "url(", "fetch(", "XMLHttpRequest", "innerHTML"} {
		if strings.Contains(text, loads) {
			t.Errorf("the page has %s", loads)
		}
	}
}

// Checks that fail come first, and a word says that they do.
func TestPageChecks(t *testing.T) {
	set := setOf(t, jumper())
	set.Checks = invented()
	_, page := pageOf(t, set)
	var said []string
	for _, list := range page.ofClass("checks") {
		for _, li := range list.named("li") {
			said = append(said, li.text)
		}
	}
	for _, e := range page.named("details")[0].children {
		said = append(said, strings.TrimSpace(e.text))
	}
	want := []string{
		"look at this: The second two are 3 rows apart.", "error: The third two are 4 stitches apart.",
		"1 passed", "The first two agree.",
	}
	if diff := gocmp.Diff(want, said); diff != "" {
		t.Errorf("checks (-want +got):\n%s", diff)
	}
}

func fingerprint(t testing.TB, set garment.Set) string {
	_, page := pageOf(t, set)
	return page.named("main")[0].attrs["data-sheet"]
}

// The fingerprint is that of the steps.
func TestPageFingerprint(t *testing.T) {
	s, titled, wider := jumper(), jumper(), jumper()
	titled.Title = "Another title"
	wider.Body.Width = gauge.MustParseLength("36 cm")
	if fingerprint(t, setOf(t, s)) != fingerprint(t, setOf(t, titled)) {
		t.Error("a title makes other steps")
	}
	if fingerprint(t, setOf(t, s)) == fingerprint(t, setOf(t, wider)) {
		t.Error("other steps have the same fingerprint")
	}
}

func TestPagesAreEqual(t *testing.T) {
	set := setOf(t, banded())
	first, _ := pageOf(t, set)
	second, _ := pageOf(t, setOf(t, banded()))
	if diff := gocmp.Diff(first, second); diff != "" {
		t.Error(diff)
	}
}

func TestPageErrors(t *testing.T) {
	piece, err := garment.Front(spec())
	if err != nil {
		t.Fatal(err)
	}
	for name, err := range map[string]error{
		"no piece":      sheet.WriteSetPage(&bytes.Buffer{}, garment.Set{}),
		"a zero piece":  sheet.WritePage(&bytes.Buffer{}, garment.Piece{}),
		"one of two":    sheet.WriteSetPage(&bytes.Buffer{}, garment.Set{Pieces: []garment.Piece{piece, {}}}),
		"never knitted": sheet.WritePage(&bytes.Buffer{}, garment.Piece{Work: piece.Work}),
	} {
		if !errors.Is(err, sheet.ErrPiece) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := sheet.WritePage(&full{}, piece); !errors.Is(err, errFull) {
		t.Errorf("a full disk: %v", err)
	}
}

func BenchmarkPage(b *testing.B) {
	s := jumper()
	s.Band = banded().Band
	set := setOf(b, s)
	var out bytes.Buffer
	for b.Loop() {
		out.Reset()
		if err := sheet.WriteSetPage(&out, set); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(out.Len()), "bytes/page")
}

// The panel says first what is to be done, and last what comes next.
func TestPanelOrder(t *testing.T) {
	_, page := pageOf(t, setOf(t, jumper()))
	var ids []string
	for _, part := range page.all(func(e *element) bool { return e.attrs["id"] == "hand-text" })[0].children {
		ids = append(ids, part.attrs["id"])
	}
	want := []string{"hand-do", "hand-after", "hand-check", "hand-note", "hand-next", "hand-more"}
	if !slices.Equal(ids, want) {
		t.Errorf("%v, should be %v", ids, want)
	}
}

// What is to be known stands before the steps: the words, what is needed, and how the page is
// used. Below each chart stands that it can be slid.
func TestPageOrder(t *testing.T) {
	_, page := pageOf(t, setOf(t, jumper()))
	var before []string
	for _, part := range page.named("header")[0].named("summary") {
		before = append(before, part.text)
	}
	if !slices.Contains(before, "Words") || !slices.Contains(before, "Needed") || before[len(before)-1] != "How this page works" {
		t.Errorf("before the steps stand %q", before)
	}
	charts := 0
	for _, pictures := range page.ofClass("pictures") {
		for i, part := range pictures.children {
			if part.is("chart") && pictures.children[i+1].is("slide") {
				charts++
			}
		}
	}
	if charts != len(page.ofClass("chart")) || charts == 0 {
		t.Errorf("%d of %d charts can be slid", charts, len(page.ofClass("chart")))
	}
}
