package sheet_test

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// A tail that joins is four times as long as what it joins and 10 cm or 4 in, in whole
// steps, and never shorter than a plain one.
func TestTailsAreLongEnough(t *testing.T) {
	tail := regexp.MustCompile(`a tail of (\d+) (cm|in) if the shoulders are joined with it, else (\d+) (?:cm|in)\. .*?\((\d+) stitches\)`)
	l := gauge.MustParseLength
	for unit, want := range map[gauge.Unit]struct {
		step  int
		plain string
		ends  gauge.Length
	}{gauge.Centimetre: {5, "20", l("10 cm")}, gauge.Inch: {2, "8", l("4 in")}} {
		for width := 34; width < 64; width += 3 {
			s := spec()
			s.Units, s.Body.Width = unit, l("1 cm").Mul(width)
			text, piece := write(t, s)
			found := tail.FindAllStringSubmatch(strings.Join(strings.Fields(text), " "), -1)
			if len(found) != 2 {
				t.Fatalf("%v: %d shoulders are taken off live", unit, len(found))
			}
			for _, f := range found {
				given, _ := strconv.Atoi(f[1])
				stitches, _ := strconv.Atoi(f[4])
				least := piece.Gauge.Width(4 * stitches).Add(want.ends)
				long, short := l(fmt.Sprintf("%d %s", given, f[2])), l(fmt.Sprintf("%d %s", given-want.step, f[2]))
				if f[3] != want.plain || given%want.step != 0 || long.Cmp(least) < 0 || short.Cmp(least) >= 0 {
					t.Errorf("%v: %s for %d stitches, which need %v", unit, f[0], stitches, least)
				}
			}
		}
	}
}

// A sheet in inches has no other lengths.
func TestOneUnit(t *testing.T) {
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		for _, methods := range []garment.Methods{{}, {Neck: garment.By(shaping.BindOff), Shoulder: garment.By(shaping.BindOff)}} {
			s := jumper()
			s.Units, s.Setup.On, s.Methods = gauge.Inch, place, methods
			text, _ := writeSet(t, s)
			if other := regexp.MustCompile(`.*\d c?m\b.*`).FindString(text); other != "" {
				t.Errorf("%v: %s", place, other)
			}
		}
	}
}

// An open edge is closed before the wash, which would make it run.
func TestOpenEdgeBeforeTheWash(t *testing.T) {
	text, _ := write(t, spec())
	_, finish, _ := strings.Cut(text, "\nFINISH\n")
	open, wash := strings.Index(finish, "with new yarn"), strings.Index(finish, "Wash")
	if open < 0 || wash < open {
		t.Errorf("the edge is bound off at %d, washed at %d:\n%s", open, wash, finish)
	}
}

// As many stitches are grafted at the underarms of front, back and sleeve.
func TestUnderarmsAgree(t *testing.T) {
	for _, place := range []shaping.Place{shaping.Bed, shaping.Hand} {
		s := jumper()
		s.Setup.On, s.Methods.Armhole = place, garment.Pair{Several: shaping.Hold, Single: shaping.Fashioned}
		_, set := writeSet(t, s)
		graft := regexp.MustCompile(`[Ff]irst graft the (\d+) outermost stitches of each side`)
		for _, piece := range set.Pieces {
			found := graft.FindStringSubmatch(strings.Join(strings.Fields(sheetOfPiece(t, piece)), " "))
			if found == nil || found[1] != strconv.Itoa(piece.Widths.BindOff) {
				t.Errorf("%v, %s: %v are grafted, held at once are %d", place, piece.Name(), found, piece.Widths.BindOff)
			}
		}
	}
}

// The head and the hand are spoken of once: by the check, or where there is none in general.
func TestStretchIsSaidOnce(t *testing.T) {
	s := jumper()
	for name, general := range map[string]string{"neck": "must stretch over the head", "cuff": "must stretch over the hand"} {
		for _, checks := range [][]garment.Check{nil, {{Name: name, Says: "It does.", Passed: true}}} {
			_, set := writeSet(t, s)
			set.Checks = checks
			var out bytes.Buffer
			if err := sheet.WriteSet(&out, set); err != nil {
				t.Fatal(err)
			}
			if said := strings.Contains(strings.Join(strings.Fields(out.String()), " "), general); said == (len(checks) > 0) {
				t.Errorf("with %d checks of the %s: %q is said: %v", len(checks), name, general, said)
			}
		}
	}
}

// Held strips that lie close together share their waste yarn, others do not.
func TestStripsFarApart(t *testing.T) {
	for between, strips := range map[int]int{3: 1, 4: 1, 5: 2, 8: 2} {
		steps := by(shaping.Hold, fashioned(-3, 6))
		steps = append(steps, fashioned(-1, 8, slices.Repeat([]int{2}, between-1)...)...)
		steps = append(steps, by(shaping.Hold, fashioned(-2, 10+2*between))...)
		piece := panelOf(t, shaping.Bed, 40, 14+2*between, nil, steps)
		text := sheetOfPiece(t, piece)
		if err := compare(text, piece); err != nil {
			t.Errorf("%d needles between: %v", between, err)
		}
		if n := strings.Count(strings.Join(strings.Fields(text), " "), "of waste yarn over them"); n != strips {
			t.Errorf("%d needles between: taken off %d times, want %d:\n%s", between, n, strips, text)
		}
	}
}

// What is wrong in what a knitter asked for shows when the sheet is followed.
func TestReaderNoticesFaultsOfTheHands(t *testing.T) {
	vee := spec()
	vee.Neck = garment.Neck{Shape: garment.VeeNeck, Width: vee.Neck.Width, Depth: gauge.MustParseLength("11 cm")}
	vee.Methods.Neck = garment.Pair{Several: shaping.Fashioned, Single: shaping.Fashioned}
	straight := spec()
	straight.Armhole = garment.Armhole{Depth: straight.Armhole.Depth}
	hand := spec()
	hand.Setup.On = shaping.Hand
	for _, fault := range []struct {
		name           string
		spec           garment.Spec
		wrong, instead string
	}{
		{"needles left forward", vee, "out of work. Knit 2 rows.", "out of work. Push the needles you moved back\n                          to working position. Knit 2 rows."},
		{"no underarm marked", straight, "", "Tie a contrasting thread to the edge stitch at both edges, on\n                          L39 and R39: the underarms. "},
		{"another needle marked", straight, "L38 and R39: the underarms", "L39 and R39: the underarms"},
		{"an odd number of rows of waste yarn", straight, "Knit 7 rows of waste", "Knit 8 rows of waste"},
		{"stitches that stay on the bed", straight, "", "; break it and push the stitches off by hand"},
		{"the other half slipped back", hand, "Slip the 26 sts of the left", "Slip the 26 sts of the right"},
	} {
		text, piece := write(t, fault.spec)
		checkNoticed(t, text, piece, fault.name, fault.wrong, fault.instead)
	}
}

// Both shoulders come first in the hand, where the band is knitted in the round.
func TestJoiningInTheHand(t *testing.T) {
	s := jumper()
	s.Setup.On = shaping.Hand
	text, _ := writeSet(t, s)
	both, round := strings.Index(text, "[ ] Both shoulders"), strings.Index(text, "[ ] The neckband, in the round")
	if both < 0 || round < both || strings.Contains(text, "One shoulder:") {
		t.Errorf("both shoulders at %d, the band at %d", both, round)
	}
}

// The widths round the body are those of front and back together.
func TestRoundTheBody(t *testing.T) {
	text, set := writeSet(t, jumper())
	text = strings.Join(strings.Fields(text), " ")
	for name, where := range map[string]string{"width": "round the underarms", "waist": "at the waist"} {
		var sum gauge.Length
		for _, piece := range set.Pieces[:2] {
			for _, size := range piece.Sizes {
				if size.Name == name {
					sum = sum.Add(size.Knitted)
				}
			}
		}
		if said := where + " " + sum.Format(gauge.Centimetre, 1); sum.IsZero() || !strings.Contains(text, said) {
			t.Errorf("%q is not said", said)
		}
	}
}
