package garment_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// measured is a swatch for literals.
func measured(stitches int, width string, rows int, height string) gauge.Swatch {
	return gauge.Swatch{Stitches: stitches, Width: length(width), Rows: rows, Height: length(height)}
}

func TestGaugeRefusals(t *testing.T) {
	good, bad := measured(40, "20 cm", 60, "20 cm"), measured(40, "20 cm", 60, "0 cm")
	for _, c := range []struct {
		by   garment.GaugeSpec
		want string
	}{
		{garment.GaugeSpec{}, "gauge: missing: give a gauge, a swatch or swatches"},
		{garment.GaugeSpec{Swatch: &good, Swatches: []gauge.Swatch{good}}, "swatches: given together with a swatch: give one of the two"},
		{garment.GaugeSpec{Gauge: newGauge("22", "30", "10 cm"), Swatches: []gauge.Swatch{good}}, "swatches: given together with a gauge: give one of the two"},
		{garment.GaugeSpec{Swatches: []gauge.Swatch{}}, "swatches 0 of them: 1 to 16"},
		{garment.GaugeSpec{Swatches: make([]gauge.Swatch, 17)}, "swatches 17 of them: 1 to 16"},
		{garment.GaugeSpec{Swatches: []gauge.Swatch{good, bad}}, "swatches[1].height 0 cm: a length above 0 of at most 1000 m, such as 10 cm"},
		{garment.GaugeSpec{Swatch: &bad}, "swatch.height 0 cm: a length above 0 of at most 1000 m, such as 10 cm"},
	} {
		if _, err := garment.Front(adult().Regauged(c.by)); err == nil || err.Error() != c.want {
			t.Errorf("says %v, want %s", err, c.want)
		}
	}
}

// Several swatches give the pieces of a gauge that is their mean; what is uncertain of
// each length is how far they lie apart, and where that is too much each piece warns.
func TestSeveralSwatches(t *testing.T) {
	// 22 stitches to 10 cm in the mean, each a tenth of that off; 30 rows in both.
	far := garment.GaugeSpec{Swatches: []gauge.Swatch{measured(44, "18 cm", 60, "20 cm"), measured(44, "22 cm", 60, "20 cm")}}
	set, err := garment.Pieces(adultJumper().Regauged(far))
	if err != nil {
		t.Fatal(err)
	}
	same, err := garment.Pieces(adultJumper())
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range set.Pieces {
		if diff := cmp.Diff(same.Pieces[i].Work, p.Work); diff != "" {
			t.Errorf("%s (-by a gauge +by swatches):\n%s", p.Name(), diff)
		}
		const want = "The swatches differ by up to 10.0 % in stitches and 0.0 % in rows from their mean, which is more than counting explains: knit, wash and rest them again before you cast on."
		if len(p.Warnings) == 0 || p.Warnings[0] != want {
			t.Errorf("%s does not warn: %q", p.Name(), p.Warnings)
		}
	}
	width := size(t, set.Pieces[0], "width")
	if tenth := length("1 mm").Mul(50); !width.Knitted.Equal(length("50 cm")) || !width.PlusMinus.Equal(tenth) {
		t.Errorf("%v give or take %v", width.Knitted, width.PlusMinus)
	}
	near := garment.GaugeSpec{Swatches: []gauge.Swatch{measured(44, "20 cm", 60, "20 cm"), measured(45, "20 cm", 60, "20 cm")}}
	for _, p := range []garment.Piece{front(t, adult().Regauged(near)), front(t, adult())} {
		if strings.Contains(strings.Join(p.Warnings, " "), "swatches") {
			t.Errorf("warns: %q", p.Warnings)
		}
	}
}

// drawGauged draws the gauge of a spec a little changed, as a gauge, a swatch or swatches.
func drawGauged(t *rapid.T, s garment.Spec) garment.GaugeSpec {
	g, err := s.GaugeSpec().Measured()
	if err != nil {
		t.Fatal(err)
	}
	one := func(name string) gauge.Swatch {
		wide := length("1 mm").Mul(rapid.IntRange(90, 110).Draw(t, name+" width"))
		high := length("1 mm").Mul(rapid.IntRange(90, 110).Draw(t, name+" height"))
		over := length("10 cm")
		return gauge.Swatch{
			Stitches: max(g.Stitches(over).Round(gauge.Rounding{}), 2), Width: wide,
			Rows: max(g.Rows(over).Round(gauge.Rounding{}), 2), Height: high,
		}
	}
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		swatch := one("swatch")
		return garment.GaugeSpec{Swatch: &swatch}
	case 1:
		return garment.GaugeSpec{Swatches: []gauge.Swatch{one("first"), one("second"), one("third")}}
	}
	return garment.GaugeSpec{Gauge: newGauge("21", "29", "10 cm")}
}

// There and back the spec and the whole set are what they were; nothing is shared with
// what the gauge was taken from.
func TestRegaugedAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := gen.JumperSpec(metric).Draw(t, "spec")
		by := drawGauged(t, spec)
		there := spec.Regauged(by)
		if diff := cmp.Diff(by, there.GaugeSpec()); diff != "" {
			t.Fatalf("the gauge (-given +got):\n%s", diff)
		}
		if len(by.Swatches) > 0 {
			by.Swatches[0].Stitches = 1
		}
		if by.Swatch != nil {
			by.Swatch.Stitches = 1
		}
		if g := there.GaugeSpec().List(); len(g) > 0 && g[0].Stitches == 1 {
			t.Fatal("the spec shares its swatch")
		}
		back := there.Regauged(spec.GaugeSpec())
		if diff := cmp.Diff(spec, back); diff != "" {
			t.Fatalf("there and back (-want +got):\n%s", diff)
		}
		without := there.Regauged(garment.GaugeSpec{})
		if diff := cmp.Diff(spec.Regauged(garment.GaugeSpec{}), without); diff != "" {
			t.Fatalf("beside the gauge (-before +now):\n%s", diff)
		}
		first, err := garment.Pieces(spec)
		second, errBack := garment.Pieces(back)
		if err != nil {
			checkRefusal(t, err)
			if errBack == nil || errBack.Error() != err.Error() {
				t.Fatalf("refused with %v, then with %v", err, errBack)
			}
			return
		}
		if diff := cmp.Diff(first.Checks, second.Checks); diff != "" || errBack != nil {
			t.Fatalf("checks there and back, %v (-want +got):\n%s", errBack, diff)
		}
		for i, p := range first.Pieces {
			checkEqual(t, p, second.Pieces[i])
		}
		after, err := garment.Pieces(there)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		checkChanges(t, first, after)
	})
}

// checkChanges checks what is compared against both sets, counted here.
func checkChanges(t *rapid.T, before, after garment.Set) {
	t.Helper()
	list, other := garment.Compare(before, after), garment.Compare(after, before)
	if len(list) != len(other) {
		t.Fatalf("%d changes, backwards %d", len(list), len(other))
	}
	reversed := map[string]garment.Change{}
	for _, c := range other {
		reversed[c.Piece+c.What] = c
	}
	seen := map[string]bool{}
	for _, c := range list {
		if seen[c.Piece+c.What] {
			t.Fatalf("%s of the %s twice", c.What, c.Piece)
		}
		seen[c.Piece+c.What] = true
		if grown := c.Before.Length.Add(c.Moves()); c.Before.Given && c.After.Given && !grown.Equal(c.After.Length) {
			t.Fatalf("%+v moves by %v", c, c.Moves())
		}
		back := reversed[c.Piece+c.What]
		if !cmp.Equal(c.Before, back.After) || !cmp.Equal(c.After, back.Before) || !c.Moves().Equal(back.Moves().Neg()) || c.Same() != back.Same() {
			t.Fatalf("%+v, backwards %+v", c, back)
		}
		checkReading(t, before, c.Piece, c.What, c.Before)
		checkReading(t, after, c.Piece, c.What, c.After)
	}
	for _, set := range []garment.Set{before, after} {
		for _, p := range set.Pieces {
			for _, size := range p.Sizes {
				if !seen[p.Name()+size.Name] {
					t.Fatalf("%s of the %s is not compared", size.Name, p.Name())
				}
			}
		}
		for _, c := range garment.Compare(set, set) {
			if !c.Same() || !c.Moves().IsZero() || !c.Before.Given {
				t.Fatalf("a set differs from itself: %+v", c)
			}
		}
	}
}

// checkReading checks one number against the piece.
func checkReading(t *rapid.T, s garment.Set, name, what string, r garment.Figure) {
	t.Helper()
	p, ok := s.Piece(name)
	want := 0
	first := p.Cloth.Needles()
	switch what {
	case "castOn":
		want = p.Work.Panels[0].Needles.Len()
	case "widest", "needles":
		want = first.Len()
	case "rows":
		want = len(p.Work.Rows)
	case "yarn":
		for _, row := range p.Work.Rows {
			want += row.Knit.Len()
		}
	default:
		for _, size := range p.Sizes {
			if size.Name == what && (size.Count != r.Count || !size.Knitted.Equal(r.Length)) {
				t.Fatalf("%s of the %s: %+v, the piece has %+v", what, name, r, size)
			}
		}
		return
	}
	if !ok || r.Count != want || !r.Length.IsZero() || r.Given != (what != "needles" || p.Work.Place == shaping.Bed) {
		t.Fatalf("%s of the %s: %+v, want %d", what, name, r, want)
	}
}

// Pieces that only one of two garments has.
func TestCompareOtherPieces(t *testing.T) {
	with, err := garment.Pieces(adultJumper())
	if err != nil {
		t.Fatal(err)
	}
	without, err := garment.Pieces(adult())
	if err != nil {
		t.Fatal(err)
	}
	pieces := func(list []garment.Change) (names []string) {
		for _, c := range list {
			if len(names) == 0 || names[len(names)-1] != c.Piece {
				names = append(names, c.Piece)
			}
			sleeve := strings.HasSuffix(c.Piece, "sleeve")
			if sleeve && (c.Same() || c.Before.Given == c.After.Given || !c.Moves().IsZero()) {
				t.Errorf("%+v", c)
			}
			if !sleeve && !c.Same() {
				t.Errorf("changed: %+v", c)
			}
		}
		return names
	}
	want := []string{"front", "back", "right sleeve", "left sleeve"}
	for _, list := range [][]garment.Change{garment.Compare(with, without), garment.Compare(without, with)} {
		if diff := cmp.Diff(want, pieces(list)); diff != "" {
			t.Errorf("pieces (-want +got):\n%s", diff)
		}
	}
	if list := garment.Compare(garment.Set{}, garment.Set{}); len(list) > 0 {
		t.Errorf("nothing changes in nothing: %+v", list)
	}
}

// From 22 stitches and 30 rows to 20 and 25, worked by hand: 50 cm are 110 and 100
// stitches, a hem of 56 cm 123.2 and 112, even as the body is; 21 cm are 63 and 52.5 rows.
func TestCompareByHand(t *testing.T) {
	wide := adult()
	wide.Body.Hem = length("56 cm")
	spec := wide.Regauged(garment.GaugeSpec{Gauge: newGauge("20", "25", "10 cm")})
	made := map[string]garment.Change{}
	for _, c := range garment.Compare(garment.Set{Pieces: []garment.Piece{front(t, wide)}}, garment.Set{Pieces: []garment.Piece{front(t, spec)}}) {
		made[c.What] = c
	}
	for what, want := range map[string]struct {
		before, after int
		counted       string
		from, to      string
		moves         string
	}{
		"castOn":  {126, 114, "stitches", "0 cm", "0 cm", "0 cm"},
		"widest":  {126, 114, "stitches", "0 cm", "0 cm", "0 cm"},
		"needles": {126, 114, "needles", "0 cm", "0 cm", "0 cm"},
		"width":   {110, 100, "stitches", "50 cm", "50 cm", "0 cm"},
		"hem":     {124, 112, "stitches", "56.363636 cm", "56 cm", "-0.363636 cm"},
		"drop":    {10, 8, "rows", "3.333333 cm", "3.2 cm", "-0.133333 cm"},
	} {
		c := made[what]
		near := func(l gauge.Length, want string) bool {
			return l.Sub(length(want)).Abs().Cmp(length("0.00001 mm")) <= 0
		}
		if c.Before.Count != want.before || c.After.Count != want.after || c.After.Counted != want.counted ||
			!near(c.Before.Length, want.from) || !near(c.After.Length, want.to) || !near(c.Moves(), want.moves) {
			t.Errorf("%s: %+v, moves by %v", what, c, c.Moves())
		}
	}
}

// A swatch that counts the same and weighs more changes the yarn alone.
func TestCompareWeight(t *testing.T) {
	set := func(grams, metres string) garment.Set {
		swatch := weighed(44, 60, grams, metres)
		made, err := garment.Pieces(adult().Regauged(garment.GaugeSpec{Swatch: &swatch}))
		if err != nil {
			t.Fatal(err)
		}
		return made
	}
	for _, other := range []garment.Set{set("12", "30"), set("11", "31"), set("0", "30")} {
		for _, c := range garment.Compare(set("11", "30"), other) {
			if c.Same() != (c.What != "yarn") {
				t.Errorf("%+v", c)
			}
		}
	}
}
