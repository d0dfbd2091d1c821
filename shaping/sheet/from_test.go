package sheet_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// rest returns what is printed from a reading on.
func rest(t rapid.TB, piece garment.Piece, at sheet.Reading) string {
	t.Helper()
	var out strings.Builder
	if err := sheet.WriteFrom(&out, piece, at); err != nil {
		t.Fatalf("%v: %v", at, err)
	}
	return out.String()
}

// judgedFrom returns what the judge knitted after a reading.
func judgedFrom(t rapid.TB, piece garment.Piece, at sheet.Reading) knitted {
	t.Helper()
	state, err := bed.KnitTo(piece.Work, at.Panel, at.Counter)
	if err != nil {
		t.Fatal(err)
	}
	k := judged(piece)
	k.Passes = append([]pass(nil), k.Passes[state.Rows():]...)
	wraps := 0
	for range state.Wraps() {
		wraps++
	}
	k.Wraps = append([]pass(nil), k.Wraps[wraps:]...)
	for n := range k.Wales {
		k.Wales[n] -= state.Height(n)
	}
	k.Threads = nil
	if front := piece.Outer().IsValid(); (front || len(piece.Work.Panels) > 1) && piece.Widths.BindOff == 0 {
		underarm := piece.Heights.Underarm
		for i, p := range piece.Work.Panels {
			ties := 1
			if p.Parent == "" && !front {
				ties = 2
			}
			passed := false
			for _, other := range piece.Work.Panels[:i+1] {
				passed = passed || other.Name == at.Panel
			}
			begins := p.Name == at.Panel && at.Counter <= underarm
			later := passed && p.Name != at.Panel
			if (begins || later) && p.FirstRow-1 <= underarm && underarm < p.LastRow {
				for range ties {
					k.Threads = append(k.Threads, underarm)
				}
			}
		}
	}
	return k
}

// compareFrom knits the rest and returns an error if it is not what the judge knitted.
func compareFrom(t rapid.TB, piece garment.Piece, at sheet.Reading) error {
	t.Helper()
	text := rest(t, piece, at)
	got, err := follow(text)
	if err != nil {
		return fmt.Errorf("%v: %w\n%s", at, err, text)
	}
	want := judgedFrom(t, piece, at)
	for _, wales := range []map[shaping.Needle]int{want.Wales, got.Wales} {
		for n, height := range wales {
			if height == 0 {
				delete(wales, n)
			}
		}
	}
	if diff := gocmp.Diff(want, got); diff != "" {
		return fmt.Errorf("%v: not what was judged (-judged +knitted):\n%s\n%s", at, diff, text)
	}
	return nil
}

// readings returns every reading of a piece.
func readings(w shaping.Work) []sheet.Reading {
	var list []sheet.Reading
	for _, p := range w.Panels {
		for row := p.FirstRow - 1; row <= p.LastRow; row++ {
			list = append(list, sheet.Reading{Panel: p.Name, Counter: row})
		}
	}
	return list
}

// The rest that is printed from any reading suffices to finish the piece.
func TestRestIsEnough(t *testing.T) {
	made := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		s := jumperSpec(rt)
		for _, name := range []string{"front", "back", "sleeve"} {
			piece, err := pieces(s)[name]()
			if err != nil {
				continue // not every drawn jumper can be made
			}
			made[name]++
			all := readings(piece.Work)
			for range 3 {
				at := rapid.SampledFrom(all).Draw(rt, "reading")
				if err := compareFrom(rt, piece, at); err != nil {
					rt.Fatalf("%s: %v", name, err)
				}
			}
		}
	})
	for name := range pieces(garment.Spec{}) {
		if made[name] == 0 {
			t.Errorf("no %s was made", name)
		}
	}
}

// It does all over pieces in which everything meets.
func TestRestIsEnoughAllOver(t *testing.T) {
	hold := garment.Pair{Several: shaping.Hold, Single: shaping.Fashioned}
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, pair := range []garment.Pair{{}, hold, garment.By(shaping.Hold)} {
			s := jumper()
			s.Setup.On, s.Methods.Armhole, s.Methods.Neck = place, pair, pair
			for name, make := range pieces(s) {
				piece, err := make()
				if err != nil {
					t.Fatal(err)
				}
				for i, at := range readings(piece.Work) {
					every := 4
					if testing.Short() {
						every = 7
					}
					if i%every > 0 {
						continue
					}
					if err := compareFrom(t, piece, at); err != nil {
						t.Fatalf("%v, %v, %s: %v", place, pair, name, err)
					}
				}
			}
		}
	}
}

// From the first reading the order of work is the whole one, and from any other its lines
// are those of the whole sheet but for one that is begun anew.
func TestRestIsWordedAsTheWhole(t *testing.T) {
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		s := jumper()
		s.Setup.On = place
		for name, make := range pieces(s) {
			piece, err := make()
			if err != nil {
				t.Fatal(err)
			}
			whole := lines(sheetOfPiece(t, piece))
			for i, line := range whole {
				if heading.MatchString(line) {
					whole = whole[i:]
					break
				}
			}
			if diff := gocmp.Diff(whole, lines(rest(t, piece, sheet.Reading{Panel: shaping.Body}))); diff != "" {
				t.Errorf("%v, %s (-whole +from the beginning):\n%s", place, name, diff)
			}
			known := map[string]bool{}
			for _, line := range whole {
				known[line] = true
			}
			for _, at := range readings(piece.Work) {
				unknown := 0
				for _, line := range lines(rest(t, piece, at)) {
					if !known[line] && !strings.HasPrefix(line, "From here") {
						unknown++
					}
				}
				if most := 2 * 2; unknown > most { // the line that is cut, what is left of its times, and their results
					t.Errorf("%v, %s, %v: %d lines that the whole sheet does not have", place, name, at, unknown)
				}
			}
		}
	}
}

func TestReadingsThatThereAreNot(t *testing.T) {
	piece, err := garment.Front(jumper())
	if err != nil {
		t.Fatal(err)
	}
	split, top := piece.Heights.NeckStart(), piece.Heights.Top()
	halves := fmt.Sprintf("%03d to %03d of the left half", split, top)
	for _, c := range []struct {
		at   sheet.Reading
		says string
	}{
		{sheet.Reading{Counter: -1}, fmt.Sprintf("there are 000 to %03d of the body", split)},
		{sheet.Reading{Counter: top + 1}, halves},
		{sheet.Reading{Panel: shaping.LeftHalf, Counter: split - 1}, "there are " + halves},
		{sheet.Reading{Panel: shaping.Body, Counter: split + 1}, fmt.Sprintf("there are 000 to %03d of the body", split)},
		{sheet.Reading{Counter: split + 1}, "name the panel: left half and right half have it"},
		{sheet.Reading{Counter: split}, "name the panel: body and right half have it"},
		{sheet.Reading{Panel: "collar", Counter: 1}, "there is no such panel: body, left half, right half"},
	} {
		var out strings.Builder
		err := sheet.WriteFrom(&out, piece, c.at)
		fault, ok := errors.AsType[*sheet.ReadingError](err)
		if !ok || !errors.Is(err, sheet.ErrReading) || !strings.Contains(fault.Want, c.says) || out.Len() > 0 {
			t.Errorf("%v: %v, want %q", c.at, err, c.says)
		}
	}
	if err := sheet.WriteFrom(&strings.Builder{}, garment.Piece{}, sheet.Reading{}); !errors.Is(err, sheet.ErrPiece) {
		t.Errorf("of no piece: %v", err)
	}
	if err := sheet.WriteFrom(&strings.Builder{}, piece, sheet.Reading{Counter: split - 1}); err != nil {
		t.Errorf("in one panel alone: %v", err)
	}
}

// What is wrong in what is said of how things stand shows when it is gone on with.
func TestReaderNoticesFaultsInStates(t *testing.T) {
	atBed, err := garment.Front(jumper())
	if err != nil {
		t.Fatal(err)
	}
	s := jumper()
	s.Setup.On = shaping.Hand
	inHand, err := garment.Front(s)
	if err != nil {
		t.Fatal(err)
	}
	first := sheet.Reading{Panel: shaping.LeftHalf, Counter: 106}
	second := sheet.Reading{Panel: shaping.LeftHalf, Counter: 106} // in the hand the left half is the second
	for _, fault := range []struct {
		name           string
		piece          garment.Piece
		at             sheet.Reading
		wrong, instead string
	}{
		{"another reading", atBed, first, "Counter 105", "Counter 106"},
		{"the carriage at the other end", atBed, first, "carriage at the left", "carriage at the right"},
		{"a needle too few in work", atBed, first, "In work: L27-L17, 11", "In work: L28-L17, 12"},
		{"the needles in work as many elsewhere", atBed, first, "In work: L29-L18, 12", "In work: L28-L17, 12"},
		{"a needle too few on hold", atBed, first, "the right half R6-R30 (25)", "the right half R6-R31 (26)"},
		{"a carriage that knits what is on hold", atBed, first, "", "  The carriage is set to hold.\n"},
		{"the other half", atBed, first, "This is the right half", "This is the left half"},
		{"an account that does not add up", atBed, first, "11 decreased", "12 decreased"},
		{"a stitch too few in the hand", inHand, second, "15 sts in work", "16 sts in work"},
		{"another row", inHand, second, "worked row 104", "worked row 106"},
		{"the middle on no holder", inHand, second, "9 sts of the middle", "10 sts of the middle"},
		{"a shoulder that is not off", inHand, second, "the shoulder of the right half, 14 sts", "the shoulder of the right half, 15 sts"},
	} {
		text := rest(t, fault.piece, fault.at)
		if !strings.Contains(text, fault.instead) {
			t.Errorf("%s: %q is not in the sheet:\n%s", fault.name, fault.instead, text[:min(len(text), 1200)])
			continue
		}
		got, err := follow(strings.Replace(text, fault.instead, fault.wrong, 1))
		if want := judgedFrom(t, fault.piece, fault.at); err == nil && gocmp.Equal(want, got) {
			t.Errorf("%s is not noticed", fault.name)
		}
	}
}

// The sheet of a piece whose rest was planned anew suffices to knit the whole of it, and the
// rest of it to go on.
func TestRestOfABegunPieceIsEnough(t *testing.T) {
	made := 0
	rapid.Check(t, func(rt *rapid.T) {
		s := jumperSpec(rt)
		for _, name := range []string{"front", "back", "sleeve"} {
			piece, err := pieces(s)[name]()
			if err != nil {
				continue // not every drawn jumper can be made
			}
			last := piece.Heights.Underarm
			if len(piece.Work.Panels) > 1 {
				last = min(piece.Heights.NeckStart(), piece.ShoulderRow-1)
			}
			rows := rapid.IntRange(0, last).Draw(rt, "rows")
			fresh := s
			fresh.Body.Length = fresh.Body.Length.Add(gauge.MustParseLength("1 cm").Mul(rapid.IntRange(0, 6).Draw(rt, "longer")))
			fresh.Body.Width = fresh.Body.Width.Add(gauge.MustParseLength("1 cm").Mul(rapid.IntRange(0, 4).Draw(rt, "wider")))
			again, err := garment.GoOn(piece, rows, fresh)
			if err != nil {
				continue // nor can every rest
			}
			made++
			if err := compare(sheetOfPiece(t, again), again); err != nil {
				rt.Fatalf("%s from row %d: %v", name, rows, err)
			}
			checkShapes(t, rt, again, map[string]int{})
			if err := compareFrom(rt, again, sheet.Reading{Panel: shaping.Body, Counter: rows}); err != nil {
				rt.Fatalf("%s from row %d: %v", name, rows, err)
			}
		}
	})
	if made == 0 {
		t.Error("nothing was gone on with")
	}
}

// It is of fronts that open, whose neck is at one edge.
func TestRestOfFrontsIsEnough(t *testing.T) {
	made := 0
	rapid.Check(t, func(rt *rapid.T) {
		both, ok := fronts(gen.CardiganSpec(gauge.MustParseLength("1 mm")).Draw(rt, "spec"))
		if !ok {
			return
		}
		made++
		for _, piece := range both {
			at := rapid.SampledFrom(readings(piece.Work)).Draw(rt, "reading")
			if err := compareFrom(rt, piece, at); err != nil {
				rt.Fatalf("%s: %v", piece.Name(), err)
			}
		}
	})
	if made == 0 {
		t.Error("no fronts were made")
	}
}
