package sheet_test

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
	"pgregory.net/rapid"
)

// spec returns a small front in which everything happens; invented figures.
func spec() garment.Spec {
	l := gauge.MustParseLength
	return garment.Spec{
		Title:    "A child's yoke front",
		Swatch:   &gauge.Swatch{Stitches: 40, Width: l("18 cm"), Rows: 54, Height: l("18 cm"), Tension: "6"},
		Start:    garment.Start{Band: l("3 cm")},
		Seam:     garment.Seam{Stitches: 1},
		Body:     garment.Body{Width: l("34 cm"), Length: l("21 cm")},
		Armhole:  garment.Armhole{Depth: l("14 cm"), Inset: l("3.5 cm"), BindOff: garment.Exactly(l("1.5 cm"))},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: l("14 cm"), Depth: l("5 cm")},
		Shoulder: garment.Shoulder{Drop: l("2 cm")},
	}
}

func write(t testing.TB, s garment.Spec) (string, garment.Piece) {
	t.Helper()
	piece, err := garment.Front(s)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := sheet.Write(&out, piece); err != nil {
		t.Fatal(err)
	}
	return out.String(), piece
}

func TestGolden(t *testing.T) {
	bindOff := spec()
	bindOff.Start.Edge = garment.Closed
	bindOff.Methods = garment.Methods{Neck: garment.By(shaping.BindOff), Shoulder: garment.By(shaping.BindOff)}
	bindOff.Setup.Carriage = shaping.Left
	inches := spec()
	inches.Units = gauge.Inch
	inches.Armhole = garment.Armhole{Depth: inches.Armhole.Depth}
	for name, s := range map[string]garment.Spec{"holding": spec(), "binding-off": bindOff, "inches": inches} {
		t.Run(name, func(t *testing.T) {
			text, _ := write(t, s)
			golden.Check(t, filepath.Join("testdata", name+".golden"), []byte(text))
		})
	}
}

var result = regexp.MustCompile(`-> counter (\d+); in work (\S+), (\d+)`)

// Read back, the sheet leads through the work: counter readings rise from entry to
// entry to the end of each panel, and every reading names the needles that knitted
// that row.
func TestSheetTellsTheWork(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := spec()
		s.Body.Width = gauge.Centimetres(decimalOf(rapid.IntRange(28, 60).Draw(rt, "width")))
		s.Seam.Stitches = rapid.IntRange(0, 2).Draw(rt, "seam")
		if rapid.Bool().Draw(rt, "no armhole") {
			s.Armhole = garment.Armhole{Depth: s.Armhole.Depth}
		}
		for _, m := range []*garment.Pair{&s.Methods.Neck, &s.Methods.Shoulder} {
			*m = garment.By(rapid.SampledFrom([]shaping.Method{shaping.Hold, shaping.BindOff}).Draw(rt, "method"))
		}
		s.Setup.Carriage = rapid.SampledFrom([]shaping.Side{shaping.Left, shaping.Right}).Draw(rt, "carriage")
		text, piece := write(t, s)
		rows := piece.Work.Rows
		at := 0
		for _, found := range result.FindAllStringSubmatch(text, -1) {
			counter, _ := strconv.Atoi(found[1])
			for at < len(rows) && rows[at].CounterAfter() != counter {
				at++
			}
			if at == len(rows) {
				rt.Fatalf("no row left that ends at counter %d", counter)
			}
			if got, want := found[2]+" "+found[3], fmt.Sprintf("%v %d", rows[at].Knit, rows[at].Knit.Len()); got != want {
				rt.Fatalf("at counter %d in work are %s, the sheet says %s", counter, want, got)
			}
		}
		if at != len(rows)-1 {
			rt.Fatalf("the sheet ends with row %d of %d", at+1, len(rows))
		}
		for _, row := range rows {
			for _, a := range append(append([]shaping.Action(nil), row.Before...), row.After...) {
				if !named(text, a) {
					rt.Fatalf("row %d: %v is not said", row.Row, a)
				}
			}
		}
	})
}

var (
	panelHead = regexp.MustCompile(`^FRONT, (.+)$`)
	entryHead = regexp.MustCompile(`^ +[][ x0-9]*? (\d{3}) (left|right) `)
)

// Every entry names the side where the carriage really stands at that reading.
func TestSheetTellsTheSide(t *testing.T) {
	for _, methods := range []garment.Methods{{}, {Neck: garment.By(shaping.BindOff), Shoulder: garment.By(shaping.BindOff)}} {
		s := spec()
		s.Methods = methods
		text, piece := write(t, s)
		type reading struct {
			panel   string
			counter int
		}
		stands := map[reading]shaping.Side{}
		for _, row := range piece.Work.Rows {
			stands[reading{row.Panel, row.CounterBefore()}] = row.From
			stands[reading{row.Panel, row.CounterAfter()}] = row.From.Opposite()
		}
		panel, entries := "", 0
		for _, line := range strings.Split(text, "\n") {
			if found := panelHead.FindStringSubmatch(line); found != nil {
				panel = strings.ToLower(found[1])
			}
			found := entryHead.FindStringSubmatch(line)
			if found == nil || panel == "" {
				continue
			}
			entries++
			counter, _ := strconv.Atoi(found[1])
			if got := stands[reading{panel, counter}].String(); got != found[2] {
				t.Errorf("%s, counter %d: the carriage stands at the %s, the sheet says %s", panel, counter, got, found[2])
			}
		}
		if entries < 20 {
			t.Errorf("only %d entries were found", entries)
		}
	}
}

// named reports whether the sheet names what an action works on: its outermost
// needle at least.
func named(text string, a shaping.Action) bool {
	switch a.Do {
	case shaping.DoCarriage, shaping.DoWrap, shaping.DoFill:
		return true // said by side, or as the needle just put on hold
	case shaping.DoCounter:
		return strings.Contains(text, fmt.Sprintf("set back to %03d", a.Counter))
	case shaping.DoShift:
		return strings.Contains(text, a.Needles.End(a.Toward.Opposite()).String())
	}
	return strings.Contains(text, a.Needles.First.String()) && strings.Contains(text, a.Needles.Last.String())
}

// Hostile titles stay on one line and lines stay narrow enough to print.
func TestPage(t *testing.T) {
	s := spec()
	s.Title = "one\ntwo\x00\u202e three"
	text, _ := write(t, s)
	if first, _, _ := strings.Cut(text, "\n"); first != "one two three" {
		t.Errorf("title printed as %q", first)
	}
	for _, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > 100 || strings.HasSuffix(line, " ") {
			t.Errorf("line of %d characters: %q", n, line)
		}
	}
}

type full struct{ room int }

var errFull = errors.New("no room left")

func (f *full) Write(b []byte) (int, error) {
	if f.room -= len(b); f.room < 0 {
		return 0, errFull
	}
	return len(b), nil
}

func TestWriteError(t *testing.T) {
	piece, err := garment.Front(spec())
	if err != nil {
		t.Fatal(err)
	}
	for _, room := range []int{0, 500, 3000} {
		if err := sheet.Write(&full{room}, piece); !errors.Is(err, errFull) {
			t.Errorf("room for %d bytes: error %v", room, err)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	piece, err := garment.Front(spec())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if err := sheet.Write(&bytes.Buffer{}, piece); err != nil {
			b.Fatal(err)
		}
	}
}
