package gauge_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.com/walewise/gauge"
	"pgregory.net/rapid"
)

// swatch returns a swatch for literals.
func swatch(stitches int, width string, rows int, height string) gauge.Swatch {
	return gauge.Swatch{Stitches: stitches, Width: length(width), Rows: rows, Height: length(height)}
}

func mean(t testing.TB, swatches ...gauge.Swatch) gauge.Gauge {
	t.Helper()
	g, err := gauge.Mean(swatches...)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// 40 stitches over 18 cm and 20 over 10 cm: 60 over 28 cm, which no decimal is. By the
// first a stitch is 4.5 mm wide, by the second 5 mm, in the mean 4 2/3 mm: the second is
// 1/14 wider, which is 7.14 %, the first 1/28 narrower. Worked by hand.
func TestMeanOfTwo(t *testing.T) {
	g := mean(t, swatch(40, "18 cm", 50, "20 cm"), swatch(20, "10 cm", 25, "10 cm"))
	if got, want := g.String(), "60 stitches to 28 cm, 75 rows to 30 cm in 2 swatches together"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := g.Format(gauge.Inch, 1), "60 stitches to 11.0 in, 75 rows to 11.8 in in 2 swatches together"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := g.Stitches(length("14 cm")); !got.Equal(gauge.Whole(30)) {
		t.Errorf("14 cm are exactly 30 stitches, not %v", got)
	}
	if got := g.Width(30); !got.Equal(length("14 cm")) {
		t.Errorf("30 stitches are 14 cm, not %v", got)
	}
	if got := g.Rows(length("1 mm")); !got.Equal(gauge.Whole(1).Div(4)) {
		t.Errorf("1 mm is exactly 1/4 row, not %v", got)
	}
	if stitches, rows := g.Spread(2); stitches.String() != "7.14" || !rows.IsZero() || g.Swatches() != 2 {
		t.Errorf("%v %% and %v %% apart in %d swatches", stitches, rows, g.Swatches())
	}
	// The spread is more than half a stitch in a swatch of 30, the rows are counted to half
	// a row in 37.5.
	if got := g.Tolerance().Width(length("14 cm")); !got.Equal(length("1 cm")) {
		t.Errorf("14 cm are off by up to 1 cm, not %v", got)
	}
	if got := g.Tolerance().Height(length("75 cm")); !got.Equal(length("1 cm")) {
		t.Errorf("75 cm are off by up to 1 cm, not %v", got)
	}
	if text, err := json.Marshal(g); err == nil {
		t.Errorf("got %s, want an error: a mean of swatches has no place in a gauge", text)
	}
}

// Even where all widths are as long as all heights.
func TestMeanIsNoGaugeInJSON(t *testing.T) {
	g := mean(t, swatch(22, "10 cm", 30, "10 cm"), swatch(23, "10 cm", 30, "10 cm"))
	if text, err := json.Marshal(g); err == nil {
		t.Errorf("got %s, want an error", text)
	}
	if got, want := g.String(), "45 stitches and 60 rows to 20 cm in 2 swatches together"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Counts that a gauge explains to half a stitch and half a row agree.
func TestAgree(t *testing.T) {
	for _, c := range []struct {
		why   string
		with  gauge.Swatch
		agree bool
	}{
		{"the same", swatch(40, "20 cm", 60, "20 cm"), true},
		{"one stitch more: 40.5 would do for both", swatch(41, "20 cm", 60, "20 cm"), true},
		{"two stitches more", swatch(42, "20 cm", 60, "20 cm"), false},
		{"one stitch more on half a millimetre less", swatch(41, "19.95 cm", 60, "20 cm"), false},
		{"one row less", swatch(40, "20 cm", 59, "20 cm"), true},
		{"two rows less", swatch(40, "20 cm", 58, "20 cm"), false},
		{"a tenth of the size, where one stitch is much", swatch(5, "2 cm", 6, "2 cm"), false},
		{"a tenth of the size, half a stitch", swatch(4, "1.8 cm", 6, "2 cm"), true},
	} {
		if got := mean(t, swatch(40, "20 cm", 60, "20 cm"), c.with).Agree(); got != c.agree {
			t.Errorf("%s: %v", c.why, got)
		}
	}
	if !newGauge("22", "30", "10 cm").Agree() || !(gauge.Gauge{}).Agree() {
		t.Error("what is no mean does not agree")
	}
}

func TestMeanRefuses(t *testing.T) {
	good, bad := swatch(40, "20 cm", 60, "20 cm"), swatch(40, "20 cm", 60, "20 cm")
	bad.Height = gauge.Length{}
	for name, swatches := range map[string][]gauge.Swatch{
		"swatches":           {},
		"swatches[1].height": {good, bad, bad},
		"swatches[0].height": {bad},
	} {
		_, err := gauge.Mean(swatches...)
		wantRange(t, err, name)
	}
	many := make([]gauge.Swatch, gauge.MaxSwatches+1)
	for i := range many {
		many[i] = good
	}
	_, err := gauge.Mean(many...)
	wantRange(t, err, "swatches")
	if got, want := fmt.Sprint(err), "swatches 17 of them: 1 to 16"; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	mean(t, many[1:]...)
}

// drawSwatch draws a swatch whose gauge is near 22 stitches and 30 rows to 10 cm.
func drawSwatch(t *rapid.T) gauge.Swatch {
	stitches, rows := rapid.IntRange(5, 120).Draw(t, "stitches"), rapid.IntRange(5, 120).Draw(t, "rows")
	mm := func(count, perMetre, off int) gauge.Length {
		return length("1 mm").Mul(max(count*1000/perMetre+off, 1))
	}
	return gauge.Swatch{
		Stitches: stitches, Width: mm(stitches, 220, rapid.IntRange(-8, 8).Draw(t, "wider")),
		Rows: rows, Height: mm(rows, 300, rapid.IntRange(-8, 8).Draw(t, "higher")),
	}
}

func drawSwatches(t *rapid.T) []gauge.Swatch {
	return rapid.SliceOfN(rapid.Custom(drawSwatch), 1, gauge.MaxSwatches).Draw(t, "swatches")
}

func TestMeanProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		swatches := drawSwatches(t)
		g, err := gauge.Mean(swatches...)
		if err != nil {
			t.Fatal(err)
		}
		if g.Swatches() != len(swatches) {
			t.Fatalf("%d swatches of %d", g.Swatches(), len(swatches))
		}
		// The order does not matter.
		order := rapid.Permutation(swatches).Draw(t, "order")
		if other, err := gauge.Mean(order...); err != nil || !other.Equal(g) {
			t.Fatalf("%v, in another order %v (%v)", g, other, err)
		}
		// All the widths together hold all the stitches, exactly.
		var width, height gauge.Length
		stitches, rows := 0, 0
		for _, s := range swatches {
			width, height = width.Add(s.Width), height.Add(s.Height)
			stitches, rows = stitches+s.Stitches, rows+s.Rows
		}
		if !g.Stitches(width).Equal(gauge.Whole(stitches)) || !g.Rows(height).Equal(gauge.Whole(rows)) {
			t.Fatalf("%v: %v and %v are not %d and %d", g, g.Stitches(width), g.Rows(height), stitches, rows)
		}
		// What each of the swatches would make of so many stitches and rows lies within the
		// tolerance, and that is met by a count or a swatch: it is no larger than need be.
		n := rapid.IntRange(1, 500).Draw(t, "n")
		across, up := g.Width(n), g.Height(n)
		byWidth, byHeight := g.Tolerance().Width(across), g.Tolerance().Height(up)
		slack := length("0.00001 mm") // what is rounded to millionths
		met := [2]bool{len(swatches) == 1, len(swatches) == 1}
		for _, s := range swatches {
			one, err := s.Gauge()
			if err != nil {
				t.Fatal(err)
			}
			for i, off := range []gauge.Length{one.Width(n).Sub(across).Abs().Sub(byWidth), one.Height(n).Sub(up).Abs().Sub(byHeight)} {
				if off.Cmp(slack) > 0 {
					t.Fatalf("%v: by %v alone %d stitches or rows are %v off", g, one, n, off)
				}
				met[i] = met[i] || off.Abs().Cmp(slack) <= 0
			}
		}
		counted := func(finished gauge.Length, count int, by gauge.Length) bool {
			// finished × swatches / (2 × count) = by
			return finished.Mul(len(swatches)).Sub(by.Mul(2*count)).Abs().Cmp(slack.Mul(2*count)) <= 0
		}
		if !met[0] && !counted(across, stitches, byWidth) || !met[1] && !counted(up, rows, byHeight) {
			t.Fatalf("%v: %v and %v are neither counting nor spread", g, byWidth, byHeight)
		}
	})
}

// One swatch, once or as often as one likes, has its own gauge; so often it is counted no
// better.
func TestMeanOfTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSwatch(t)
		one, err := s.Gauge()
		if err != nil {
			t.Fatal(err)
		}
		if g, err := gauge.Mean(s); err != nil || !g.Equal(one) || g.String() != one.String() {
			t.Fatalf("%v is %v (%v)", one, g, err)
		}
		many := make([]gauge.Swatch, rapid.IntRange(2, gauge.MaxSwatches).Draw(t, "times"))
		for i := range many {
			many[i] = s
		}
		g, err := gauge.Mean(many...)
		if err != nil {
			t.Fatal(err)
		}
		l := length("54.3 cm")
		if !g.Stitches(l).Equal(one.Stitches(l)) || !g.Rows(l).Equal(one.Rows(l)) || !g.Agree() || g.Equal(one) {
			t.Fatalf("%v is not like %v", g, one)
		}
		if a, b := g.Tolerance(), one.Tolerance(); !a.Width(l).Equal(b.Width(l)) || !a.Height(l).Equal(b.Height(l)) {
			t.Fatalf("%v is counted otherwise than %v", g, one)
		}
	})
}

// Swatches that lie as counting one true gauge leaves them agree.
func TestWhatIsCountedAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		perTen := rapid.IntRange(10, 40).Draw(t, "stitches to 10 cm")
		swatches := make([]gauge.Swatch, rapid.IntRange(2, gauge.MaxSwatches).Draw(t, "swatches"))
		for i := range swatches {
			width := length("1 mm").Mul(rapid.IntRange(60, 300).Draw(t, "mm"))
			g := newGauge(fmt.Sprint(perTen), fmt.Sprint(perTen), "10 cm")
			whole := g.Stitches(width).Round(gauge.Rounding{})
			swatches[i] = gauge.Swatch{Stitches: whole, Width: width, Rows: whole, Height: width}
		}
		if g, err := gauge.Mean(swatches...); err != nil || !g.Agree() {
			t.Fatalf("%v (%v) do not agree", swatches, err)
		}
	})
}

// So many of another gauge, and back, are as many again.
func TestConversionIsInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, h, n := drawGauge(t), drawGauge(t), rapid.IntRange(-1000, 1000).Draw(t, "n")
		// n of h in g; h's count of the width of that, in n-ths
		there, back := g.StitchesFor(h, n), h.StitchesFor(g, 1)
		if want := g.StitchesFor(h, 1); n != 0 && !there.Div(max(n, -n)).Abs().Equal(want) {
			t.Fatalf("%d stitches are not %d times as many as one", n, n)
		}
		if product := g.StitchesFor(h, 1).Decimal(20).Mul(back.Decimal(20)); !product.Round(12).Equal(number("1")) {
			t.Fatalf("%v to %v and back is %v", g, h, product)
		}
		if same := g.RowsFor(g, n); !same.Equal(gauge.Whole(n)) {
			t.Fatalf("%d rows are %v of the same gauge", n, same)
		}
		if got, want := g.RowsFor(h, n), g.Rows(h.Height(n)); got.Sub(want).Abs().Cmp(gauge.Whole(1).Div(1000)) > 0 {
			t.Fatalf("%d rows of %v are %v of %v, by their height %v", n, h, got, g, want)
		}
	})
}
