package sheet_test

import (
	"bytes"
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sheet"
)

// banded returns the jumper without sleeves and with a band; invented figures.
func banded(changes ...func(*garment.Spec)) garment.Spec {
	s := jumper()
	s.Sleeve = nil
	s.Band = &garment.BandSpec{Height: gauge.MustParseLength("2.2 cm"), Repeat: 4, Plus: 2}
	for _, change := range changes {
		change(&s)
	}
	return s
}

func inTheHand(s *garment.Spec) { s.Setup.On = shaping.Hand }

func folded(s *garment.Spec) { s.Band.Folded = true }

func boundOffNeck(s *garment.Spec) { s.Methods.Neck = garment.By(shaping.BindOff) }

func decreasedVee(s *garment.Spec) {
	s.Neck = garment.Neck{Shape: garment.VeeNeck, Width: s.Neck.Width, Depth: gauge.MustParseLength("11 cm")}
	s.Methods.Neck = garment.By(shaping.Fashioned)
	s.Band.Repeat, s.Band.Plus = 2, 1
}

func onNeedles(n int) func(*garment.Spec) {
	return func(s *garment.Spec) { s.Setup.Needles, s.Checks.Bed = n, garment.AsWarning }
}

// What is said of bands: beside the pieces, at their ends, and after them.
func TestGoldenBands(t *testing.T) {
	fine, err := gauge.New(gauge.Whole(25).Decimal(0), gauge.Whole(33).Decimal(0), gauge.MustParseLength("4 in"))
	if err != nil {
		t.Fatal(err)
	}
	for name, s := range map[string]garment.Spec{
		"held":          banded(),
		"hand":          banded(inTheHand, boundOffNeck),
		"vee":           banded(decreasedVee),
		"vee-in-hand":   banded(decreasedVee, inTheHand, folded),
		"apart":         banded(onNeedles(76)),
		"too-wide":      banded(boundOffNeck, onNeedles(40)),
		"folded":        banded(folded, func(s *garment.Spec) { s.Units, s.Band.Gauge = gauge.Inch, fine }),
		"odd-in-a-seam": banded(func(s *garment.Spec) { s.Band.Repeat, s.Band.Plus = 2, 1 }),
	} {
		text, _ := writeSet(t, s)
		golden.Check(t, filepath.Join("testdata", "band-"+name+".golden"), []byte(ofBands(text)))
	}
}

// ofBands returns what a page says of joining and bands.
func ofBands(text string) string {
	var said []string
	before, rest, _ := strings.Cut(text, "\nPIECE ")
	said = append(said, before[strings.Index(before, "\nJOINING"):])
	pieces, band, _ := strings.Cut(rest, "\nNECKBAND\n")
	for _, piece := range strings.Split(pieces, "\nPIECE ") {
		_, neck, _ := strings.Cut(piece, "\n  The neck of this piece")
		neck, _, _ = strings.Cut(neck, "\n  Worn, this piece")
		said = append(said, "\n  The neck of this piece"+neck+"\n")
	}
	band, _, _ = strings.Cut(band, "\n\n====")
	return strings.Join(said, "") + "\nNECKBAND\n" + band + "\n"
}

var (
	stripHead = regexp.MustCompile(`(?m)^NECKBAND, .*$`)
	hangOn    = regexp.MustCompile(`Hang [a-z ]+ on ([LR]\d+)-([LR]\d+),`)
	partLine  = regexp.MustCompile(`(?m)^      \[ \] (?:([LR]\d+)(?:-([LR]\d+))? +)? *(\d+)  (.*(?:\n {17,}.*)*)$`)
	loopCount = regexp.MustCompile(`Count: every needle of ([LR]\d+)-([LR]\d+) has a loop, (\d+) in all|(?:Join into the round and mark its beginning|Count): (\d+) sts`)
	leading   = regexp.MustCompile(`: (\d+) (?:live|bound off|over)|: (1)(?:,| more,) `)
	andMore   = regexp.MustCompile(`live and (\d+) from`)
	someRows  = regexp.MustCompile(`, (\d+) rows(?: straight| up| down|: | through)`)
	inTurn    = regexp.MustCompile(`(\d+) times in turn: `)
	ratioSaid = regexp.MustCompile(`(\d+) in (?:each row|(?:every )?(\d+) rows)(?:, (\d+) times)?`)
)

// Somebody who reads only the printed list of a strip hangs its stitches side by side, on as
// many needles as it says, and finds as many as the pieces' sentences promise.
func TestBandCanBeHung(t *testing.T) {
	strips := 0
	rapid.Check(t, func(rt *rapid.T) {
		step := gauge.MustParseLength("1 mm")
		s := gen.JumperSpec(step).Draw(rt, "spec")
		s.Sleeve, s.Band = nil, gen.BandSpec(step).Draw(rt, "band")
		set, err := garment.Pieces(s)
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := sheet.WriteSet(&out, set); err != nil {
			rt.Fatal(err)
		}
		_, band, found := strings.Cut(out.String(), "\nNECKBAND\n")
		if !found {
			rt.Fatal("no band is written")
		}
		sum := 0
		for _, text := range stripHead.Split(band, -1)[1:] {
			strips++
			n, err := hung(text, s.Setup.On == shaping.Hand)
			if err != nil {
				rt.Fatalf("%v\n%s", err, text)
			}
			sum += n
		}
		b, _ := set.Band(garment.Neckband)
		if all := strings.ReplaceAll(out.String(), "\n", " "); sum != b.Stitches() || !strings.Contains(strings.Join(strings.Fields(all), " "), fmt.Sprintf("The neckband, %d stitches: see NECKBAND", sum)) {
			rt.Fatalf("%d stitches hung, the band has %d", sum, b.Stitches())
		}
	})
	t.Logf("%d strips hung", strips)
}

var bandHead = regexp.MustCompile(`(?m)^(?:NECKBAND|RIGHT FRONT BAND|LEFT FRONT BAND|BAND ALONG FRONTS AND NECK)(?:, .*)?\n`)

// The bands of two fronts are hung and counted in the same way.
func TestOpenedBandsCanBeHung(t *testing.T) {
	strips := 0
	rapid.Check(t, func(rt *rapid.T) {
		step := gauge.MustParseLength("1 mm")
		s := gen.CardiganSpec(step).Draw(rt, "spec")
		s.Sleeve, s.Band = nil, gen.BandSpec(step).Draw(rt, "its band")
		set, err := garment.Pieces(s)
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := sheet.WriteSet(&out, set); err != nil {
			rt.Fatal(err)
		}
		want := map[int]int{}
		for _, b := range set.Bands {
			for _, strip := range b.Strips {
				if strip.Stitches > 1 { // one hangs on a needle, not on several
					want[strip.Stitches]++
				}
			}
		}
		_, pages, _ := strings.Cut(out.String(), "EVERY STITCH")
		for _, text := range bandHead.Split(pages, -1)[1:] {
			if !loopCount.MatchString(strings.Join(strings.Fields(text), " ")) {
				continue // the page's head
			}
			if strings.Contains(text, " has a loop, 1 in all") || strings.Contains(text, "Count: 1 st.") {
				continue
			}
			n, err := hung(text, s.Setup.On == shaping.Hand)
			if err != nil {
				rt.Fatalf("%v\n%s", err, text)
			}
			strips++
			if want[n]--; want[n] == 0 {
				delete(want, n)
			}
		}
		if len(want) > 0 {
			rt.Fatalf("strips that are not on the page: %v", want)
		}
	})
	t.Logf("%d strips hung", strips)
}

// hung follows the list of one strip and returns its stitches.
func hung(text string, hand bool) (int, error) {
	number := func(s string) int { n, _ := strconv.Atoi(s); return n }
	count := loopCount.FindStringSubmatch(strings.Join(strings.Fields(text), " "))
	if count == nil {
		return 0, fmt.Errorf("nothing is counted")
	}
	total := number(count[3]) + number(count[4])
	var next shaping.Needle
	if !hand {
		on := hangOn.FindStringSubmatch(text)
		if on == nil || on[1] != count[1] || on[2] != count[2] {
			return 0, fmt.Errorf("hung on %q, counted on %q", on, count)
		}
		next = shaping.MustParseNeedle(on[1])
	}
	sum := 0
	for _, m := range partLine.FindAllStringSubmatch(text, -1) {
		stitches, said := number(m[3]), strings.Join(strings.Fields(m[4]), " ")
		sum += stitches
		if !hand {
			first, last := shaping.MustParseNeedle(m[1]), shaping.MustParseNeedle(m[1])
			if m[2] != "" {
				last = shaping.MustParseNeedle(m[2])
			}
			if first != next || last.Index()-first.Index()+1 != stitches {
				return 0, fmt.Errorf("%d stitches on %v to %v, the next needle is %v", stitches, first, last, next)
			}
			next = last.Toward(shaping.Right, 1)
		}
		got := 0
		if one := leading.FindStringSubmatch(said); one != nil {
			got = number(one[1]) + number(one[2])
			if more := andMore.FindStringSubmatch(said); more != nil {
				got += number(more[1])
			}
		} else if ratios := ratioSaid.FindAllStringSubmatch(said[strings.LastIndex(said, ": "):], -1); len(ratios) == 1 && ratios[0][3] == "" {
			got = stitches // a ratio for all rows
			if rows := someRows.FindStringSubmatch(said); rows != nil {
				got = number(rows[1]) * number(ratios[0][1]) / max(number(ratios[0][2]), 1)
			}
		} else {
			rows := 0
			for _, group := range strings.Split(said[strings.LastIndex(said, "s: ")+1:], ", then ") {
				turns := 1
				if turn := inTurn.FindStringSubmatch(group); turn != nil {
					turns = number(turn[1])
				}
				for _, r := range ratioSaid.FindAllStringSubmatch(group, -1) {
					times := turns * max(number(r[3]), 1)
					got, rows = got+times*number(r[1]), rows+times*number(r[2])
				}
			}
			if of := someRows.FindStringSubmatch(said); of != nil && number(of[1]) != rows {
				return 0, fmt.Errorf("%d rows in %q", rows, said)
			}
		}
		if got != stitches {
			return 0, fmt.Errorf("%q says %d, the column %d", said, got, stitches)
		}
	}
	if sum != total || !hand && next != shaping.MustParseNeedle(count[2]).Toward(shaping.Right, 1) {
		return 0, fmt.Errorf("%d hung, %d counted", sum, total)
	}
	return sum, nil
}
