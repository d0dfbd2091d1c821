package garment_test

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// counted is a check as it is counted here, on cloth and spec alone.
type counted struct {
	name          string
	what          string
	first, second int     // what is counted, 0 for a length only
	long, than    float64 // in mm, 0 where stitches or rows do not make a length
	within        float64 // how far apart the two may be, in mm
	passed        bool
	severity      garment.Severity
	said          []string // what its sentence must have in it
}

// countChecks counts everything that is checked in a set.
func countChecks(s garment.Set) []counted {
	front, back := s.Pieces[0], s.Pieces[1]
	sleeve, sleeves := s.Piece("right sleeve")
	spec, g := front.Spec, front.Gauge
	var list []counted
	both := []shaping.Side{shaping.Right, shaping.Left}
	for _, side := range both {
		list = append(list, countShoulder(front, back, side), countTips(front, back, side))
	}
	for _, side := range both {
		list = append(list, countSide(front, back, side))
	}
	if sleeves {
		list = append(list, countArmholes(s))
	}
	if spec.Head.Sign() > 0 {
		opening := (neckOf(front) + neckOf(back)) * stretched(spec.Neck.Stretch)
		list = append(list, counted{
			name: "neck", what: "neck over the head", long: opening, than: mm(spec.Head), passed: opening >= mm(spec.Head),
			severity: spec.Checks.Neck.Or(garment.AsWarning),
		})
	}
	if sleeves && spec.Hand.Sign() > 0 {
		row := rowsAt(sleeve, shaping.Left)[0].outer + rowsAt(sleeve, shaping.Right)[0].outer - 2*spec.Seam.Stitches
		cuff := mm(g.Width(row)) * stretched(spec.Sleeve.Stretch)
		list = append(list, counted{
			name: "cuff", what: "cuff over the hand", first: row, long: cuff, than: mm(spec.Hand), passed: cuff >= mm(spec.Hand),
			severity: spec.Checks.Cuff.Or(garment.AsWarning),
		})
	}
	if spec.Setup.On != shaping.Hand {
		for _, p := range s.Pieces {
			list = append(list, countNeedles(p))
		}
	}
	return list
}

func stretched(percent *decimal.Decimal) float64 {
	if percent == nil {
		return 1.25
	}
	return 1 + percent.InexactFloat64()/100
}

func countShoulder(front, back garment.Piece, side shaping.Side) counted {
	first, second := shoulderOf(front, side), shoulderOf(back, side.Opposite())
	c := counted{
		name: "shoulders", what: fmt.Sprintf("wearer's %v shoulder", worn(front, side)), first: first, second: second,
		long: mm(front.Gauge.Width(first)), than: mm(front.Gauge.Width(second)),
		passed:   slices.Equal(groupsKnitted(front, side), groupsKnitted(back, side.Opposite())),
		severity: front.Spec.Checks.Shoulders.Or(garment.AsError),
	}
	c.said = []string{fmt.Sprint(first, " stitch"), fmt.Sprint(second, " in the back's "), "Both are bound off: sew them"}
	if by := front.Spec.Methods.Shoulder; by.IsZero() || by.Several == shaping.Hold {
		c.said[2] = "Both are live: graft them"
	}
	return c
}

// groupsKnitted returns what goes at each step of a shoulder, and what is left.
func groupsKnitted(p garment.Piece, side shaping.Side) []int {
	var groups []int
	last := reached{}
	rows := rowsAt(p, side)
	for i, at := range rows {
		// In a closing row what was held is knitted again.
		if at.row >= p.ShoulderRow && i > 0 && at.outer < last.outer {
			groups = append(groups, last.outer-at.outer)
		}
		if at.outer < last.outer || at.row < p.ShoulderRow || i == 0 {
			last.outer = at.outer
		}
		last.inner = at.inner
	}
	return append(groups, last.outer-last.inner)
}

func countTips(front, back garment.Piece, side shaping.Side) counted {
	first, second := half(front, side).LastRow, half(back, side.Opposite()).LastRow
	tip, other := tipOf(front, side), tipOf(back, side.Opposite())
	return counted{
		name: "shoulders", what: fmt.Sprintf("height of the wearer's %v shoulder", worn(front, side)), first: first, second: second,
		long: mm(front.Gauge.Height(first)), than: mm(front.Gauge.Height(second)),
		within: mm(front.Gauge.Height(1)), passed: oneApart(first, second) && oneApart(tip, other), severity: front.Spec.Checks.Shoulders.Or(garment.AsError),
		said: []string{fmt.Sprintf("from row %d to row %d", tip, first), fmt.Sprintf("from row %d to row %d", other, second)},
	}
}

// worn is the side of the wearer on which a side of a front lies: a front in the hand is seen
// from before.
func worn(front garment.Piece, side shaping.Side) shaping.Side {
	if front.Work.Place == shaping.Hand {
		return side.Opposite()
	}
	return side
}

// oneApart reports whether two counts of rows are as near as what is worked at the two ends
// of a row can be.
func oneApart(a, b int) bool { return max(a-b, b-a) <= 1 }

func countSide(front, back garment.Piece, side shaping.Side) counted {
	_, _, first, _ := armholeOf(front, side)
	_, _, second, _ := armholeOf(back, side.Opposite())
	return counted{
		name: "sides", what: fmt.Sprintf("wearer's %v side", worn(front, side)), first: first, second: second,
		long: mm(front.Gauge.Height(first)), than: mm(front.Gauge.Height(second)),
		within: mm(front.Gauge.Height(1)), passed: oneApart(first, second), severity: front.Spec.Checks.Sides.Or(garment.AsError),
		said: []string{rows(first) + " up to the underarm", fmt.Sprint(second, " at the back's ")},
	}
}

func rows(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprint(n, " rows")
}

func countArmholes(s garment.Set) counted {
	sum := 0.0
	for _, p := range s.Pieces[:2] {
		for _, side := range []shaping.Side{shaping.Left, shaping.Right} {
			length, _, _, _ := armholeOf(p, side)
			sum += length
		}
	}
	sleeve := s.Pieces[2]
	c := counted{
		name: "armholes", what: "sleeve into armhole", than: sum/2 + mm(sleeve.Spec.Sleeve.Ease),
		severity: sleeve.Spec.Checks.Armholes.Or(garment.AsWarning),
	}
	left, right := rowsAt(sleeve, shaping.Left), rowsAt(sleeve, shaping.Right)
	c.within = 10
	if sleeve.Spec.Sleeve.Cap == garment.SetInCap {
		c.first = len(left) - sleeve.Heights.Underarm
		c.long, _ = capOf(sleeve)
		c.within = max(3, mm(sleeve.Gauge.Height(2)))
		c.said = []string{"Cap of " + rows(c.first)}
	} else {
		c.first = left[len(left)-1].outer + right[len(right)-1].outer - 2*sleeve.Spec.Seam.Stitches
		c.long = mm(sleeve.Gauge.Width(c.first))
		c.said = []string{fmt.Sprint("Top of the sleeve: ", c.first, " stitch")}
	}
	c.passed = math.Abs(c.long-c.than) <= c.within
	return c
}

func countNeedles(p garment.Piece) counted {
	left, right := 0, 0
	for _, at := range rowsAt(p, shaping.Left) {
		left = max(left, at.outer)
	}
	for _, at := range rowsAt(p, shaping.Right) {
		right = max(right, at.outer)
	}
	half := p.Spec.Setup.BedNeedles() / 2
	return counted{
		name: "bed", what: p.Name() + " on the bed", first: max(left, right), second: half,
		passed: left <= half && right <= half, severity: p.Spec.Checks.Bed.Or(garment.AsError),
		said: []string{fmt.Sprintf("%d needles left and %d right", left, right), fmt.Sprintf("the bed has %d on each side", half)},
	}
}

// TestChecksAreTrue counts and measures anew what every check compares.
func TestChecksAreTrue(t *testing.T) {
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		want := countChecks(s)
		if len(s.Checks) != len(want) {
			t.Fatalf("%d checks, want %d", len(s.Checks), len(want))
		}
		for i, w := range want {
			checkCounted(t, s.Checks[i], w)
		}
	})
}

func checkCounted(t *rapid.T, c garment.Check, want counted) {
	t.Helper()
	got := counted{
		name: c.Name, what: c.What, first: c.First.Count, second: c.Second.Count, long: mm(c.First.Length), than: mm(c.Second.Length), within: mm(c.Within),
		passed: c.Passed, severity: c.Severity, said: want.said,
	}
	// Measured here to less than a hundredth of a millimetre.
	if near := 0.04; math.Abs(got.long-want.long) <= near && math.Abs(got.than-want.than) <= near {
		got.long, got.than = want.long, want.than
		if off := math.Abs(want.long-want.than) - mm(c.Within); want.long != want.than && math.Abs(off) <= near {
			got.passed = want.passed
		}
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(counted{})); diff != "" {
		t.Fatalf("%s\n(-counted +checked):\n%s", c.Says, diff)
	}
	for _, text := range want.said {
		if !strings.Contains(c.Says, text) {
			t.Fatalf("%q does not say %q", c.Says, text)
		}
	}
	if !c.Off().Equal(c.First.Length.Sub(c.Second.Length)) || c.CountOff() != c.First.Count-c.Second.Count {
		t.Fatalf("%+v: off by %v and %d", c, c.Off(), c.CountOff())
	}
	if c.Field == "" || len(c.Pieces) == 0 || strings.Contains(c.Says, "\n") || !strings.HasSuffix(c.Says, ".") {
		t.Fatalf("check without a field, a piece or a sentence: %+v", c)
	}
}

// What failed and is no error is among the warnings of the pieces it names, and of no other;
// what passed is not.
func TestFailedChecksAreWarnings(t *testing.T) {
	checkJumpers(t, func(t *rapid.T, s garment.Set) {
		var failed []string
		for _, c := range s.Checks {
			if !c.Passed {
				failed = append(failed, c.Says)
				if c.Severity != garment.AsWarning {
					t.Fatalf("%s: %v, but there is a set", c.Says, c.Severity)
				}
			}
			for _, name := range c.Pieces {
				if _, ok := s.Piece(name); !ok {
					t.Fatalf("%s: no piece %q", c.Says, name)
				}
			}
			for _, p := range s.Pieces {
				if want := !c.Passed && slices.Contains(c.Pieces, p.Name()); slices.Contains(p.Warnings, c.Says) != want {
					t.Fatalf("%s: concerns %q, passed %v, warnings of %s: %q", c.Says, c.Pieces, c.Passed, p.Name(), p.Warnings)
				}
			}
		}
		var said []string
		for _, c := range s.Failed() {
			said = append(said, c.Says)
		}
		if !slices.Equal(said, failed) {
			t.Fatalf("failed %q, want %q", said, failed)
		}
	})
}

// As an error a check refuses exactly what as a warning it tells.
func TestErrorsAreFailedChecks(t *testing.T) {
	const warn = garment.AsWarning
	severities := map[string]func(*garment.Checks) *garment.Severity{
		"shoulders": func(c *garment.Checks) *garment.Severity { return &c.Shoulders },
		"sides":     func(c *garment.Checks) *garment.Severity { return &c.Sides },
		"armholes":  func(c *garment.Checks) *garment.Severity { return &c.Armholes },
		"neck":      func(c *garment.Checks) *garment.Severity { return &c.Neck },
		"cuff":      func(c *garment.Checks) *garment.Severity { return &c.Cuff },
		"bed":       func(c *garment.Checks) *garment.Severity { return &c.Bed },
	}
	refused := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		spec := gen.JumperSpec(metric).Draw(t, "spec")
		spec.Checks = garment.Checks{Shoulders: warn, Sides: warn, Armholes: warn, Neck: warn, Cuff: warn, Bed: warn}
		told, err := garment.Pieces(spec)
		if err != nil {
			if errors.Is(err, garment.ErrCheck) || errors.Is(err, garment.ErrBed) {
				t.Fatalf("a warning refuses: %v", err)
			}
			return
		}
		// One that fails, if there is any.
		name := rapid.SampledFrom(slices.Sorted(maps.Keys(severities))).Draw(t, "check")
		if failed := told.Failed(); len(failed) > 0 && rapid.Bool().Draw(t, "failed") {
			name = rapid.SampledFrom(failed).Draw(t, "failed check").Name
		}
		*severities[name](&spec.Checks) = garment.AsError
		again, err := garment.Pieces(spec)
		i := slices.IndexFunc(told.Failed(), func(c garment.Check) bool { return c.Name == name })
		if i < 0 {
			if err != nil {
				t.Fatalf("%s as an error: %v", name, err)
			}
			return
		}
		refused[name]++
		failed := told.Failed()[i]
		var refusal *garment.Error
		if !errors.As(err, &refusal) || len(again.Pieces) > 0 {
			t.Fatalf("%s is not refused: %v", failed.Says, err)
		}
		// What the bed is too narrow for is refused before it is planned.
		if name == "bed" {
			if !errors.Is(err, garment.ErrBed) {
				t.Fatalf("refused as %v: %v", refusal.Err, err)
			}
			return
		}
		var says []string
		for _, c := range told.Failed() {
			if c.Name == name {
				says = append(says, c.Says+" To plan it all the same, set checks."+name+" to warning.")
			}
		}
		if !errors.Is(err, garment.ErrCheck) || refusal.Want != strings.Join(says, " ") || refusal.Field != failed.Field {
			t.Fatalf("told %q of %s, refused %v", failed.Says, failed.Field, err)
		}
	})
	t.Logf("failed checks: %v", refused)
}

// A piece as wide as the bed passes, one a stitch wider does not.
func TestBedJustPasses(t *testing.T) {
	for _, needles := range []int{40, 42} {
		for width := 36; width <= 46; width++ {
			s := unitGauge(width, 60, 20, 0, 8, 4)
			s.Setup.Needles, s.Checks.Bed = needles, garment.AsWarning
			if c := checkOf(t, jumper(t, s), "bed"); c.Passed != (width <= needles) {
				t.Errorf("%d stitches on %d needles: passed %v", width, needles, c.Passed)
			}
		}
	}
}

// A head or a hand as large as the opening, stretched, passes; one a hundredth of a
// millimetre larger does not.
func TestOpeningsJustPass(t *testing.T) {
	larger := func(l gauge.Length) gauge.Length { return l.Add(gauge.Millimetres(decimal.New(1, -2))) }
	for _, stretch := range []string{"", "0", "40"} {
		s := adultJumper()
		if stretch != "" {
			percent := decimal.RequireFromString(stretch)
			s.Neck.Stretch, s.Sleeve.Stretch = &percent, &percent
		}
		s.Head, s.Hand = length("1 mm"), length("1 mm")
		wide := jumper(t, s)
		s.Head, s.Hand = checkOf(t, wide, "neck").First.Length, checkOf(t, wide, "cuff").First.Length
		if set := jumper(t, s); !checkOf(t, set, "neck").Passed || !checkOf(t, set, "cuff").Passed {
			t.Errorf("stretched by %q %%: not passed: %+v", stretch, set.Failed())
		}
		s.Head, s.Hand = larger(s.Head), larger(s.Hand)
		if set := jumper(t, s); checkOf(t, set, "neck").Passed || checkOf(t, set, "cuff").Passed {
			t.Errorf("stretched by %q %%: passed with a larger head and hand", stretch)
		}
	}
}
