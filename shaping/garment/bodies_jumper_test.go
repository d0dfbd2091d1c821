package garment_test

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/bodies"
	"example.com/walewise/shaping/garment"
)

// threeGauges are fine, middling and thick yarn.
func threeGauges() []gauge.Gauge {
	return []gauge.Gauge{newGauge("28", "40", "10 cm"), newGauge("22", "30", "10 cm"), newGauge("16", "22", "10 cm")}
}

func percentiles(t fataler) []bodies.Body {
	t.Helper()
	list, err := bodies.Percentiles()
	if err != nil {
		t.Fatalf("percentiles: %v", err)
	}
	return list
}

// Jumpers over the range of measurements of the 2012 Anthropometric Survey of U.S. Army
// Personnel (C. C. Gordon et al., Natick TR-15/007, 2014). The only one that cannot be made
// is wider than 200 needles.
func TestJumpersOfPercentiles(t *testing.T) {
	for _, c := range []struct {
		body     string
		stitches [3]int // of the body at the underarm at 28, 22 and 16 to 10 cm: the nearest, and two in seams
	}{
		{"male min", [3]int{122, 96, 70}},     // 42.7 cm
		{"male 5th", [3]int{142, 112, 82}},    // 50.1 cm
		{"male median", [3]int{161, 127, 93}}, // 56.8 cm
		{"male 95th", [3]int{182, 144, 105}},  // 64.35 cm
		{"male max", [3]int{0, 172, 126}},     // 77.45 cm; 219 at 28
		{"female min", [3]int{111, 87, 64}},   // 38.75 cm
		{"female 5th", [3]int{129, 101, 74}},  // 45.21 cm
		{"female median", [3]int{145, 114, 84}},
		{"female 95th", [3]int{166, 131, 96}},
		{"female max", [3]int{190, 150, 110}},
	} {
		list := percentiles(t)
		b := list[slices.IndexFunc(list, func(b bodies.Body) bool { return b.Name == c.body })]
		for i, g := range threeGauges() {
			t.Run(fmt.Sprintf("%s at %v", b.Name, g), func(t *testing.T) {
				s := b.Jumper(g)
				if c.stitches[i] == 0 {
					tooWide(t, s)
					return
				}
				set, err := garment.Pieces(s)
				if err != nil {
					t.Fatal(err)
				}
				if got := set.Pieces[0].Widths.Body; got != c.stitches[i] {
					t.Errorf("%d stitches at the underarm, want %d", got, c.stitches[i])
				}
				allChecked(t, set)
				for _, f := range set.Failed() {
					t.Errorf("%s failed: %s", f.Name, f.Says)
				}
			})
		}
	}
}

// tooWide expects that a jumper is refused for the bed, and that one of the width that the
// message names is not.
func tooWide(t *testing.T, s garment.Spec) {
	t.Helper()
	_, err := garment.Pieces(s)
	fault, ok := errors.AsType[*garment.Error](err)
	if !ok || !errors.Is(err, garment.ErrBed) || fault.Field != "body.width" {
		t.Fatalf("got %v, want a refusal of body.width for the bed", err)
	}
	const widest = "200 stitches, 70.7 cm"
	if !strings.HasSuffix(fault.Want, widest) {
		t.Fatalf("got %q, want the widest that fits, %s", fault.Want, widest)
	}
	s.Body.Width, s.Body.Waist = length("70.7 cm"), nil
	set, err := garment.Pieces(s)
	if err != nil {
		t.Fatalf("as wide as the message says: %v", err)
	}
	if got := set.Pieces[0].Widths.Body; got != 200 {
		t.Errorf("as wide as the message says: %d stitches", got)
	}
}

// allChecked tells what a set for a wearer on a bed was not checked for, and whether each
// check says what its numbers say.
func allChecked(t *testing.T, set garment.Set) {
	t.Helper()
	times := map[string]int{}
	for _, c := range set.Checks {
		times[c.Name]++
		if fault := untrue(c, set); fault != "" {
			t.Errorf("%s, %s: %s", c.Name, c.Says, fault)
		}
	}
	want := map[string]int{"shoulders": 4, "sides": 2, "armholes": 1, "neck": 1, "cuff": 1, "bed": 4}
	if !maps.Equal(times, want) {
		t.Errorf("checked %v times, want %v", times, want)
	}
}

// untrue tells where a check does not follow from its numbers, or these not from the
// pieces; empty if they do.
func untrue(c garment.Check, set garment.Set) string {
	front, _ := set.Piece("front")
	back, _ := set.Piece("back")
	sleeve, _ := set.Piece("right sleeve")
	first, second, passed := c.First.Length, c.Second.Length, false
	switch c.Name {
	case "shoulders", "sides":
		passed = c.CountOff() == 0 || c.First.Counted == "rows" && max(c.CountOff(), -c.CountOff()) <= 1
	case "armholes":
		passed = c.Off().Abs().Cmp(c.Within) <= 0
		first, second = sleeve.CapLength(), c.Second.Length
	case "neck":
		passed = first.Cmp(second) >= 0
		first, second = byQuarter(front.NeckLength().Add(back.NeckLength())), front.Spec.Head
	case "cuff":
		passed = first.Cmp(second) >= 0
		first, second = byQuarter(sleeve.Gauge.Width(sleeve.Widths.CastOn-2*sleeve.Widths.Seam)), front.Spec.Hand
	case "bed":
		p, _ := set.Piece(c.Pieces[0])
		passed = p.Widths.Widest() <= front.Spec.Setup.BedNeedles()
	default:
		return "a check of that name is not known"
	}
	switch {
	case passed != c.Passed:
		return fmt.Sprintf("passed is %v, by the numbers %v", c.Passed, passed)
	case !first.Equal(c.First.Length) || !second.Equal(c.Second.Length):
		return fmt.Sprintf("compared %v with %v, the pieces say %v and %v", c.First.Length, c.Second.Length, first, second)
	}
	return ""
}

// byQuarter is a length that gives as a knitted edge does if the spec says nothing.
func byQuarter(l gauge.Length) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.RequireFromString("1.25")))
}

// surveyed reads the bodies of the survey's raw data; without the file the test is skipped.
func surveyed(t *testing.T) []bodies.Body {
	t.Helper()
	const where = "WALEWISE_ANSUR2"
	name := os.Getenv(where)
	if name == "" {
		t.Skip(where + " does not name the survey's file")
	}
	file, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	list, err := bodies.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// tally counts what became of jumpers, with one example of each.
type tally struct {
	sync.Mutex
	times   map[string]int
	example map[string]string
}

func (l *tally) add(what, example string) {
	l.Lock()
	defer l.Unlock()
	l.times[what]++
	// The first by name, whoever comes first.
	if old, ok := l.example[what]; !ok || example < old {
		l.example[what] = example
	}
}

// become plans a jumper and adds what became of it.
func (l *tally) become(t *testing.T, name string, s garment.Spec) {
	set, err := garment.Pieces(s)
	if err != nil {
		fault, ok := errors.AsType[*garment.Error](err)
		if !ok || fault.Field == "" || fault.Want == "" {
			t.Errorf("%s: %v: no field or nothing that would do", name, err)
			return
		}
		l.add("refused: "+fault.Field, name+": "+err.Error())
		return
	}
	for _, c := range set.Checks {
		if fault := untrue(c, set); fault != "" {
			t.Errorf("%s: %s, %s: %s", name, c.Name, c.Says, fault)
		}
	}
	failed := set.Failed()
	for _, c := range failed {
		l.add("failed: "+c.Name, name+": "+c.Says)
	}
	if len(failed) == 0 {
		l.add(everything, name)
	}
}

const everything = "passed everything"

// Jumpers of all bodies of the survey's raw data, each from its own measurements.
func TestJumpersOfSurvey(t *testing.T) {
	list := surveyed(t)
	for _, g := range threeGauges() {
		t.Run(g.String(), func(t *testing.T) {
			l := tally{times: map[string]int{}, example: map[string]string{}}
			var workers sync.WaitGroup
			next := make(chan bodies.Body)
			for range runtime.GOMAXPROCS(0) {
				workers.Go(func() {
					for b := range next {
						l.become(t, b.Name, b.Jumper(g))
					}
				})
			}
			for _, b := range list {
				next <- b
			}
			close(next)
			workers.Wait()
			t.Logf("%d bodies", len(list))
			for _, what := range slices.SortedFunc(maps.Keys(l.times), func(a, b string) int { return cmp.Compare(l.times[b], l.times[a]) }) {
				t.Logf("%5d %s, such as %s", l.times[what], what, l.example[what])
			}
			if passed := l.times[everything]; passed*100 < 95*len(list) {
				t.Errorf("%d of %d bodies passed everything", passed, len(list))
			}
		})
	}
}
