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

	"github.com/google/go-cmp/cmp"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
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
	bindOff.Start.Edge = garment.ClosedEdge
	bindOff.Methods = garment.Methods{Neck: garment.By(shaping.BindOff), Shoulder: garment.By(shaping.BindOff)}
	bindOff.Setup.Carriage = shaping.Left
	inches := spec()
	inches.Units = gauge.Inch
	inches.Armhole = garment.Armhole{Depth: inches.Armhole.Depth}
	shallow := spec()
	shallow.Neck.Depth, shallow.Neck.Flat = gauge.MustParseLength("1.5 cm"), garment.Exactly(gauge.MustParseLength("9 cm"))
	vee := spec()
	vee.Neck = garment.Neck{Shape: garment.VeeNeck, Width: vee.Neck.Width, Depth: gauge.MustParseLength("11 cm")}
	vee.Methods = garment.Methods{
		Neck: garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned}, Shoulder: garment.By(shaping.BindOff),
		Armhole: garment.Pair{Several: shaping.Hold, Single: shaping.Fashioned},
	}
	hand := spec()
	hand.Setup.On = shaping.Hand
	handVee := vee
	handVee.Setup.On = shaping.Hand
	handBindOff := bindOff
	handBindOff.Setup = hand.Setup
	handBindOff.Methods.Neck.Single = shaping.Fashioned
	for name, s := range map[string]garment.Spec{
		"holding": spec(), "binding-off": bindOff, "inches": inches, "shallow": shallow, "vee": vee,
		"hand-holding": hand, "hand-vee": handVee, "hand-binding-off": handBindOff,
	} {
		t.Run(name, func(t *testing.T) {
			text, _ := write(t, s)
			golden.Check(t, filepath.Join("testdata", name+".golden"), []byte(text))
		})
	}
}

var (
	bedResult  = regexp.MustCompile(`-> counter (\d+); in work (\S+), (\d+)`)
	handResult = regexp.MustCompile(`-> after row (\d+) \((RS|WS)\): (\d+) sts? in work`)
)

// Read back, the sheet leads through the work: readings rise from entry to entry to
// the end of each panel, and every one names the stitches that were knitted in that
// row. Everything that is done is said.
func TestSheetTellsTheWork(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := gen.FrontSpec(gauge.MustParseLength("1 mm")).Draw(rt, "spec")
		piece, err := garment.Front(s)
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := sheet.Write(&out, piece); err != nil {
			rt.Fatal(err)
		}
		text := out.String()
		rows := piece.Work.Rows
		at := -1
		pattern := bedResult
		if piece.Work.Place == shaping.Hand {
			pattern = handResult
		}
		for _, found := range pattern.FindAllStringSubmatch(text, -1) {
			counter, _ := strconv.Atoi(found[1])
			for at++; at < len(rows) && rows[at].CounterAfter() != counter; {
				at++
			}
			if at == len(rows) {
				rt.Fatalf("no row left that ends at counter %d", counter)
			}
			want := []string{rows[at].Knit.String(), strconv.Itoa(rows[at].Knit.Len())}
			if piece.Work.Place == shaping.Hand {
				want[0] = [2]string{"WS", "RS"}[rows[at].Row%2]
			}
			if diff := cmp.Diff(want, found[2:]); diff != "" {
				rt.Fatalf("at counter %d (-in work +said):\n%s", counter, diff)
			}
		}
		if at != len(rows)-1 {
			rt.Fatalf("the sheet ends with row %d of %d", at+1, len(rows))
		}
		if piece.Work.Place == shaping.Hand {
			if needle := regexp.MustCompile(`\b[LR]\d`).FindString(text); needle != "" {
				rt.Fatalf("the sheet for the hand names a needle: %s", needle)
			}
			return
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

// A piece that nobody made has no sheet, and neither has one whose rows were changed.
func TestNoPiece(t *testing.T) {
	piece, err := garment.Front(spec())
	if err != nil {
		t.Fatal(err)
	}
	piece.Work.Rows = piece.Work.Rows[1:]
	for _, p := range []garment.Piece{{}, piece} {
		var out bytes.Buffer
		if err := sheet.Write(&out, p); !errors.Is(err, sheet.ErrPiece) || out.Len() > 0 {
			t.Errorf("error %v, %d bytes", err, out.Len())
		}
	}
}
