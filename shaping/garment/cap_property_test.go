package garment_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

// lowestCap is the least height of a cap, in rows.
const lowestCap = 6

// capped generates specs of jumpers with small set-in sleeves.
func capped() *rapid.Generator[garment.Spec] {
	return rapid.Custom(func(t *rapid.T) garment.Spec {
		cm := func(label string, least, most int) gauge.Length {
			return length("1 mm").Mul(10 * rapid.IntRange(least, most).Draw(t, label)).Add(length("1 mm").Mul(rapid.IntRange(0, 9).Draw(t, label+", mm")))
		}
		s := adultJumper()
		s.Setup.Needles = 400
		s.Checks = garment.Checks{Armholes: garment.AsWarning}
		s.Gauge = newGauge(rapid.SampledFrom([]string{"12", "17.5", "22", "30"}).Draw(t, "stitches"), rapid.SampledFrom([]string{"16", "24", "30", "42"}).Draw(t, "rows"), "10 cm")
		s.Armhole = garment.Armhole{Depth: cm("armhole", 9, 22), Inset: cm("inset", 2, 7)}
		s.Methods.Armhole = rapid.SampledFrom(everyPair()).Draw(t, "methods")
		s.Neck.Depth = cm("neck", 4, 9)
		s.Sleeve.Top = cm("top", 10, 40)
		s.Sleeve.Cuff = s.Sleeve.Top
		if rapid.Bool().Draw(t, "ease given") {
			s.Sleeve.Ease = cm("ease", 0, 3)
		}
		if rapid.Bool().Draw(t, "flat given") {
			s.Sleeve.Flat = garment.Exactly(cm("flat", 0, 12))
		}
		s.Seam.Stitches = rapid.IntRange(0, 2).Draw(t, "seam")
		return s
	})
}

// checkCaps checks caps of random sleeves.
func checkCaps(t *testing.T, check func(*rapid.T, garment.Set)) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		s, err := garment.Pieces(capped().Draw(t, "spec"))
		if err != nil {
			checkRefusal(t, err)
			return
		}
		check(t, s)
	})
}

// TestCapsAreNearest: an edge is within 3 mm of the armhole and the ease, or none of any
// other height is nearer.
func TestCapsAreNearest(t *testing.T) {
	all, within := 0, 0
	checkCaps(t, func(t *rapid.T, s garment.Set) {
		sleeve := s.Pieces[2]
		all++
		off := math.Abs(mm(checkOf(t, s, "armholes").Off()))
		if off <= 3 {
			within++
			return
		}
		offs, err := garment.CapsOf(sleeve.Spec)
		if err != nil {
			t.Fatal(err)
		}
		for rows := lowestCap; rows <= 2*sleeve.Heights.Cap; rows++ {
			others, err := offs(rows)
			if err != nil {
				t.Fatalf("%d rows: %v", rows, err)
			}
			for _, other := range others {
				if other < off-0.01 {
					t.Fatalf("the cap of %d rows is off by %.3f mm, of %d rows one is off by %.3f", sleeve.Heights.Cap, off, rows, other)
				}
			}
		}
	})
	t.Logf("%d of %d caps within 3 mm", within, all)
}

// A wider sleeve needs no higher cap, if its flat top and what goes at the underarms are the
// same; a longer edge to fit, by more ease or a deeper armhole, needs no lower one.
func TestCapsGrowTheRightWay(t *testing.T) {
	changes := map[string]func(*garment.Spec, gauge.Length){
		"sleeve.top":  func(s *garment.Spec, by gauge.Length) { s.Sleeve.Top = s.Sleeve.Top.Add(by) },
		"sleeve.ease": func(s *garment.Spec, by gauge.Length) { s.Sleeve.Ease = s.Sleeve.Ease.Add(by) },
		// By more than the steps of the armholes may lie otherwise.
		"armhole.depth": func(s *garment.Spec, by gauge.Length) { s.Armhole.Depth = s.Armhole.Depth.Add(by).Add(length("2 cm")) },
	}
	compared := map[string]int{}
	checkCaps(t, func(t *rapid.T, s garment.Set) {
		sleeve := s.Pieces[2]
		spec := sleeve.Spec
		top := *spec.Sleeve
		spec.Sleeve = &top
		field := rapid.SampledFrom([]string{"sleeve.top", "sleeve.ease", "armhole.depth"}).Draw(t, "field")
		by := length("1 mm").Mul(rapid.IntRange(1, 60).Draw(t, "more"))
		changes[field](&spec, by)
		set, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		changed := set.Pieces[2]
		w, v := sleeve.Widths, changed.Widths
		if w.Flat != v.Flat || w.BindOff != v.BindOff {
			return
		}
		compared[field]++
		before, after := size(t, sleeve, "cap").Asked, size(t, changed, "cap").Asked
		if lower := after.Cmp(before) < 0; !after.Equal(before) && lower != (field == "sleeve.top") {
			t.Fatalf("%s %v more: the cap was %v over %d stitches, is %v over %d", field, by, before, w.Body, after, v.Body)
		}
	})
	t.Logf("compared: %v", compared)
}

// The height that is asked for is the drawing's: it lies between the whole rows of which the
// drawing is too short and long enough.
func TestCapHeightIsThatOfTheDrawing(t *testing.T) {
	checkCaps(t, func(t *rapid.T, s garment.Set) {
		sleeve := s.Pieces[2]
		h := size(t, sleeve, "cap")
		wanted := mm(checkOf(t, s, "armholes").Second.Length)
		row := mm(sleeve.Gauge.Height(1))
		e := edge(t, sleeve, garment.CapEdge)
		shape, err := curve.ParsePath(e.Path)
		if err != nil {
			t.Fatal(err)
		}
		flat := sleeve.Gauge.Width(sleeve.Widths.Flat - 2*sleeve.Widths.Seam)
		drawn := func(rows float64) float64 {
			scaled, err := shape.Scaled(sleeve.Gauge.Width(e.Stitches), sleeve.Gauge.Height(int(rows)))
			if err != nil {
				t.Fatal(err)
			}
			return mm(flat.Add(scaled.Length().Mul(2)))
		}
		low := math.Floor(mm(h.Asked)/row - 1e-6)
		high := math.Ceil(mm(h.Asked)/row + 1e-6)
		if drawn(max(low, lowestCap)) > wanted+0.05 || drawn(high) < wanted-0.05 {
			t.Fatalf("a drawing of %v rows is %.2f mm long, of %v rows %.2f; wanted are %.2f", low, drawn(low), high, drawn(high), wanted)
		}
	})
}

// Sleeves of which no cap is low enough are refused, and the width that is named does.
func TestTooWideForTheArmhole(t *testing.T) {
	refused := 0
	rapid.Check(t, func(t *rapid.T) {
		s := capped().Draw(t, "spec")
		s.Sleeve.Top = s.Armhole.Depth.Mul(2).Add(length("1 mm").Mul(rapid.IntRange(-20, 200).Draw(t, "wider by")))
		s.Sleeve.Cuff = s.Sleeve.Top
		_, err := garment.Pieces(s)
		var refusal *garment.Error
		if !errors.As(err, &refusal) || refusal.Field != "sleeve.top" {
			return
		}
		value := named.FindStringSubmatch(refusal.Want)
		if value == nil {
			return
		}
		refused++
		s.Sleeve.Top = length(value[1])
		if o := s.Sleeve.Flat; o.Or(gauge.Length{}).Cmp(s.Sleeve.Top) > 0 {
			s.Sleeve.Flat = garment.Exactly(s.Sleeve.Top)
		}
		s.Sleeve.Cuff = s.Sleeve.Top
		_, again := garment.Pieces(s)
		if second := (*garment.Error)(nil); errors.As(again, &second) && second.Field == "sleeve.top" {
			t.Fatalf("%v\nwith what it names: %v", err, again)
		}
	})
	t.Logf("%d refused with a width", refused)
}
