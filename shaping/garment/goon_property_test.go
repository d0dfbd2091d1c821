package garment_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
)

// begunPieces draws a jumper and returns its pieces, those that can be made.
func begunPieces(t *rapid.T) (garment.Spec, []garment.Piece) {
	if rapid.Bool().Draw(t, "opens") {
		return begunFronts(t)
	}
	s := gen.JumperSpec(metric).Draw(t, "spec")
	var made []garment.Piece
	for _, make := range []func(garment.Spec) (garment.Piece, error){
		garment.Front, garment.Back,
		func(s garment.Spec) (garment.Piece, error) { return garment.Sleeve(s, shaping.Right) },
	} {
		if p, err := make(s); err == nil {
			made = append(made, p)
		}
	}
	return s, made
}

// begunFronts draws a garment that opens and returns both fronts and the back, if they can be
// made.
func begunFronts(t *rapid.T) (garment.Spec, []garment.Piece) {
	s := gen.CardiganSpec(metric).Draw(t, "spec that opens")
	right, left, err := garment.Fronts(s)
	if err != nil {
		return s, nil
	}
	made := []garment.Piece{right, left}
	if back, err := garment.Back(s); err == nil {
		made = append(made, back)
	}
	return s, made
}

// lastBegun returns the last row that a piece can be gone on from.
func lastBegun(p garment.Piece) int {
	if isSleeve(p) {
		return p.Heights.Underarm
	}
	return min(p.Heights.NeckStart(), p.ShoulderRow-1)
}

func isSleeve(p garment.Piece) bool { return p.Widths.Neck == 0 }

// begunRow draws a row to go on from, often one about the underarm, where the most meets.
func begunRow(t *rapid.T, p garment.Piece) int {
	last, underarm := lastBegun(p), p.Heights.Underarm
	low, high := 0, last
	if rapid.Bool().Draw(t, "about the underarm") {
		low, high = min(max(underarm-4, 0), last), min(underarm+16, last)
	}
	return rapid.IntRange(low, high).Draw(t, "rows of the "+p.Name())
}

// If nothing changes, going on from any row gives the same piece again.
func TestGoingOnWithTheSameSpecChangesNothing(t *testing.T) {
	went := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := begunPieces(t)
		for _, p := range pieces {
			rows := begunRow(t, p)
			again, err := garment.GoOn(p, rows, s)
			if err != nil {
				t.Fatalf("%s from row %d: %v", p.Name(), rows, err)
			}
			went[p.Name()]++
			if diff := cmp.Diff(p, again, cmp.AllowUnexported(bed.Cloth{}), cmpopts.IgnoreFields(garment.Piece{}, "Warnings", "Cloth", "Spec"), cmpopts.IgnoreFields(garment.Size{}, "Why")); diff != "" {
				t.Fatalf("%s from row %d (-whole +gone on):\n%s", p.Name(), rows, diff)
			}
		}
	})
	for _, name := range []string{shaping.Front, shaping.RightFront, shaping.LeftFront, shaping.Back, shaping.RightSleeve} {
		if went[name] == 0 {
			t.Errorf("no %s was gone on with", name)
		}
	}
}

// regauged returns the spec with a gauge that is off by up to 12 %.
func regauged(t *rapid.T, s garment.Spec, old gauge.Gauge) garment.Spec {
	off := func(label string) decimal.Decimal {
		return decimal.New(int64(1000+rapid.IntRange(-120, 120).Draw(t, label)), -3)
	}
	over := length("10 cm")
	const places = 3
	g, err := gauge.New(
		old.Stitches(over).Decimal(places).Mul(off("stitches off")).Round(places),
		old.Rows(over).Decimal(places).Mul(off("rows off")).Round(places), over)
	if err != nil {
		t.Fatal(err)
	}
	s.Swatch, s.Swatches, s.Gauge = nil, nil, g
	return s
}

// With another gauge the rows that are knitted stay as they are, and what can still be as
// asked is.
func TestGoingOnWithAnotherGauge(t *testing.T) {
	went, kinds, refused := 0, map[string]int{}, map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := begunPieces(t)
		for _, p := range pieces {
			rows := begunRow(t, p)
			fresh := regauged(t, s, p.Gauge)
			made, err := garment.GoOn(p, rows, fresh)
			if err != nil {
				checkBegunRefusal(t, err)
				var fault *garment.Error
				errors.As(err, &fault)
				refused[fault.Field]++
				continue
			}
			went++
			switch {
			case isSleeve(p):
				kinds["sleeve"]++
			case p.Outer().IsValid():
				kinds["one of two fronts"]++
			case rows > p.Heights.Underarm:
				kinds["above the underarm"]++
			case p.Widths.CastOn != made.Widths.Body:
				kinds["sides that move"]++
			default:
				kinds["below the underarm"]++
			}
			checkBegun(t, p, rows, made)
		}
	})
	total := 0
	for _, n := range refused {
		total += n
	}
	t.Logf("%d pieces gone on with: %v; %d refused: %v", went, kinds, total, refused)
	if total*4 > went {
		t.Errorf("%d of %d pieces were refused: %v", total, total+went, refused)
	}
	if went >= enough && len(kinds) < 3 { // one may be missing
		t.Errorf("not all kinds were gone on with: %v", kinds)
	}
}

// checkBegunRefusal fails the test if a refusal does not name a field and a remedy.
func checkBegunRefusal(t *rapid.T, err error) {
	t.Helper()
	var fault *garment.Error
	if !errors.As(err, &fault) || fault.Field == "" || fault.Want == "" {
		t.Fatalf("refused without a field and a remedy: %v", err)
	}
}

// checkBegun checks what must hold of every piece that is gone on with.
func checkBegun(t *rapid.T, p garment.Piece, rows int, made garment.Piece) {
	t.Helper()
	at := fmt.Sprintf("%s from row %d", p.Name(), rows)
	knitted := func(w shaping.Work) []shaping.Row {
		rows := w.Clone().Rows[:rows]
		if n := len(rows); n > 0 && isSleeve(p) {
			rows[n-1].After = nil // the top of a sleeve is not taken off yet
		}
		return rows
	}
	if diff := cmp.Diff(knitted(p.Work), knitted(made.Work), cmpopts.EquateEmpty()); diff != "" {
		t.Fatalf("%s: the rows that are knitted (-before +after):\n%s", at, diff)
	}
	before, err := bed.KnitTo(p.Work, shaping.Body, rows)
	if err != nil {
		t.Fatal(err)
	}
	after, err := bed.KnitTo(made.Work, shaping.Body, rows)
	if err != nil || !before.Equal(after) {
		t.Fatalf("%s: it stands otherwise than before: %v", at, err)
	}
	if _, err := bed.Knit(made.Work); err != nil {
		t.Fatalf("%s: %v", at, err)
	}
	for _, edge := range []shaping.Side{shaping.Left, shaping.Right} {
		sides := panel(t, made, shaping.Body).Steps(edge).Between(1, made.Heights.Underarm).Of(shaping.Fashioned)
		for i := 1; i < len(sides); i++ {
			if sides[i].Row-sides[i-1].Row < 2 {
				t.Fatalf("%s: the %v side is shaped in rows %d and %d", at, edge, sides[i-1].Row, sides[i].Row)
			}
		}
	}
	g := made.Gauge
	offRows := func(name string) int {
		s := size(t, made, name)
		return gauge.Whole(s.Count).Sub(g.Rows(s.Asked)).Abs().Round(gauge.Rounding{Direction: gauge.Down})
	}
	most := 1
	if made.Work.Place == shaping.Hand {
		most = 2 // the neck point is even
	}
	if isSleeve(p) {
		if size(t, made, "length").Count > rows && offRows("length") > 0 {
			t.Fatalf("%s: %v rows off", at, offRows("length"))
		}
		return
	}
	asked := g.Rows(size(t, made, "length").Asked)
	if passed := asked.Cmp(gauge.Whole(rows)) < 0 || rows > p.Heights.Underarm || made.Heights.Underarm <= rows+1; !passed && offRows("height") > most {
		t.Fatalf("%s: the whole is %d rows off", at, offRows("height"))
	}
	if p.Outer().IsValid() && p.Work.Place == shaping.Bed {
		most++ // for where row 1 started
	}
	if offRows("armhole") > most+1 {
		t.Fatalf("%s: the armhole is %d rows off", at, offRows("armhole"))
	}
	if slices.ContainsFunc(made.Sizes, func(s garment.Size) bool { return s.Knitted.Sign() < 0 }) {
		t.Fatalf("%s: %v", at, made.Sizes)
	}
}

// Front and back that are gone on with from the same row below the underarm still belong
// together.
func TestFrontAndBackGoOnAlike(t *testing.T) {
	went := 0
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := begunPieces(t)
		if len(pieces) < 2 || pieces[0].Name() != shaping.Front || pieces[1].Name() != shaping.Back {
			return
		}
		below := min(lastBegun(pieces[0]), lastBegun(pieces[1]), pieces[0].Heights.Underarm-1, pieces[1].Heights.Underarm-1)
		if below < 0 {
			return
		}
		rows := rapid.IntRange(0, below).Draw(t, "rows")
		fresh := regauged(t, s, pieces[0].Gauge)
		front, err := garment.GoOn(pieces[0], rows, fresh)
		if err != nil {
			return
		}
		back, err := garment.GoOn(pieces[1], rows, fresh)
		if err != nil {
			return
		}
		went++
		checks, err := garment.ChecksOf(fresh, front, back)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range checks {
			if !c.Passed && (c.Name == "shoulders" || c.Name == "sides") {
				t.Fatalf("from row %d: %s", rows, c.Says)
			}
		}
	})
	if went == 0 {
		t.Error("nothing was gone on with")
	}
}

// otherLengths returns the spec with some of the lengths changed that may change in a garment
// that is begun.
func otherLengths(t *rapid.T, s garment.Spec) garment.Spec {
	s = s.Clone()
	scaled := func(label string, l gauge.Length) gauge.Length {
		if !rapid.Bool().Draw(t, "other "+label) {
			return l
		}
		const places = 1 // mm
		percent := decimal.New(int64(rapid.IntRange(60, 140).Draw(t, label+" in hundredths")), -2)
		return gauge.Millimetres(l.Millimetres().Mul(percent).Round(places))
	}
	s.Body.Width, s.Body.Hem, s.Body.Length = scaled("width", s.Body.Width), scaled("hem", s.Body.Hem), scaled("length", s.Body.Length)
	if s.Body.Waist != nil {
		s.Body.Waist.Width, s.Body.Waist.Height = scaled("waist", s.Body.Waist.Width), scaled("waist height", s.Body.Waist.Height)
	}
	s.Neck.Width, s.Neck.Depth = scaled("neck", s.Neck.Width), scaled("neck depth", s.Neck.Depth)
	s.Armhole.Depth, s.Shoulder.Drop = scaled("armhole", s.Armhole.Depth), scaled("drop", s.Shoulder.Drop)
	if !s.Opening.Overlap.IsZero() {
		s.Opening.Overlap = garment.Exactly(scaled("overlap", s.Opening.Overlap.Or(gauge.Length{})))
	}
	return s
}

// isTurned says that a front's armhole has a row more or less for where its row 1 started.
func isTurned(warning string) bool {
	return strings.Contains(warning, "than that of the back: row 1 started")
}

// beginsEarly reports whether an armhole of a back begins a row below the other, as it does
// where the neck begins among its steps.
func beginsEarly(t fataler, back garment.Piece) bool {
	body := panel(t, back, shaping.Body)
	tied := func(step shaping.Step) bool {
		return step.Row == back.Heights.Underarm && step.Method != shaping.Fashioned
	}
	return slices.ContainsFunc(body.Left, tied) || slices.ContainsFunc(body.Right, tied)
}

// Two fronts that are gone on with from the same row are each other's reflection, and belong
// to a back that is gone on with from there.
func TestTwoFrontsAndBackGoOnAlike(t *testing.T) {
	went, backs, refused := 0, 0, map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		s, pieces := begunFronts(t)
		if len(pieces) == 0 {
			return
		}
		rows := begunRow(t, pieces[0])
		fresh := otherLengths(t, regauged(t, s, pieces[0].Gauge))
		right, err := garment.GoOn(pieces[0], rows, fresh)
		left, errLeft := garment.GoOn(pieces[1], rows, fresh)
		if (err == nil) != (errLeft == nil) && s.Setup.On != shaping.Hand { // where the right one's shoulder may be a row later
			t.Fatalf("from row %d: right %v, left %v", rows, err, errLeft)
		}
		if err == nil {
			err = errLeft
		}
		if err != nil {
			checkBegunRefusal(t, err)
			var fault *garment.Error
			errors.As(err, &fault)
			refused[fault.Field]++
			return
		}
		went++
		if diff := cmp.Diff(right.Widths, left.Widths); diff != "" {
			t.Fatalf("from row %d: widths (-right +left):\n%s", rows, diff)
		}
		if right.Widths.Overlap != pieces[0].Widths.Overlap {
			t.Fatalf("from row %d: an overlap of %d, it was %d", rows, right.Widths.Overlap, pieces[0].Widths.Overlap)
		}
		if s.Setup.On != shaping.Hand {
			if diff := cmp.Diff(mirror.Work(right.Work), left.Work, cmpopts.EquateEmpty()); diff != "" {
				t.Fatalf("from row %d: left front (-reflection of the right one +got):\n%s", rows, diff)
			}
		}
		for _, made := range []garment.Piece{right, left} {
			if made.Heights.Underarm > rows+1 { // else the row that was knitted last may have a step
				checkSteps(t, made)
			}
			checkRowsOfFront(t, made)
		}
		all := []garment.Piece{right, left}
		if len(pieces) > 2 && rows <= lastBegun(pieces[2]) && rows < min(pieces[0].Heights.Underarm, pieces[2].Heights.Underarm) {
			if back, err := garment.GoOn(pieces[2], rows, fresh); err == nil {
				backs++
				all = append(all, back)
			}
		}
		if len(all) < 3 {
			return
		}
		checks, err := garment.ChecksOf(fresh, all...)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range checks {
			off := c.CountOff()
			early := c.First.Counted == "rows" && -2 <= off && off <= 2 && beginsEarly(t, all[2]) && slices.ContainsFunc(right.Warnings, isTurned)
			if !c.Passed && !early && slices.Contains([]string{"shoulders", "sides", "fronts"}, c.Name) {
				t.Fatalf("from row %d: %s", rows, c.Says)
			}
		}
	})
	t.Logf("%d pairs of fronts and %d backs gone on with; refused: %v", went, backs, refused)
	if went == 0 || backs == 0 {
		t.Errorf("%d pairs of fronts and %d backs were gone on with", went, backs)
	}
}
