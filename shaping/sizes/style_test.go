package sizes_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/bodies"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
	"github.com/shopspring/decimal"
)

// filled returns what stands for a measurement; ok is false if it was not missing.
func filled(list []sizes.Filled, key, gives string) (f sizes.Filled, ok bool) {
	i := slices.IndexFunc(list, func(f sizes.Filled) bool { return f.Key == key && f.Gives == gives })
	if i < 0 {
		return f, false
	}
	return list[i], true
}

func specOf(t *testing.T, style sizes.Style, b sizes.Body) (garment.Spec, []sizes.Filled) {
	t.Helper()
	spec, list, err := style.For(b)
	if err != nil {
		t.Fatal(err)
	}
	return spec, list
}

// Rules with a published figure each.
func TestPublishedRules(t *testing.T) {
	t.Run("neck a third of the back", func(t *testing.T) {
		// A third of the back's width (zanotowane.pl/713/7786); an example that takes the
		// body's: 18 in and 4 stitches to the inch, 6 in and 24 stitches (chezlizzie.blogspot.com,
		// 25 March 2021). Without the 2 cm at each side that a band fills.
		b := plain()
		b.Shoulders, b.Head = length("18 in"), length("30 cm") // a head that asks for nothing
		spec, list := specOf(t, jersey(), b)
		if got := spec.Neck.Width.Sub(length("4 cm")); !got.Equal(length("152.4 mm")) {
			t.Errorf("neck %v, want 6 in", got)
		}
		if f, ok := filled(list, "neck", "neck width without the band"); !ok || !f.Length.Equal(length("6 in")) || f.Source == "" {
			t.Errorf("filled %+v", list)
		}
		if got := gaugeOf(4, 5, "1 in").Stitches(length("6 in")).Round(gauge.Rounding{}); got != 24 {
			t.Errorf("%d stitches, want 24", got)
		}
	})
	t.Run("depth of the front's neck", func(t *testing.T) {
		// 2 to 3 in (a handbook), 7 to 8 cm at least for adults (stylishknitting.com).
		for _, b := range slices.Concat(sizes.Men(), sizes.Women(), sizes.Children()) {
			spec, _ := specOf(t, jersey(), b)
			if d := spec.Neck.Depth; d.Cmp(length("2 in")) < 0 || d.Cmp(length("8 cm")) > 0 {
				t.Errorf("%s: %v deep", b.Name, d)
			}
		}
		for _, b := range []sizes.Body{sizes.Men()[2], sizes.Women()[2]} {
			if spec, _ := specOf(t, jersey(), b); spec.Neck.Depth.Cmp(length("7 cm")) < 0 {
				t.Errorf("%s: %v deep, want 7 to 8 cm", b.Name, spec.Neck.Depth)
			}
		}
	})
	t.Run("depth of the back's neck", func(t *testing.T) {
		// 1 in on most patterns for two needles (knittingrobin.blogspot.com, 3 March 2014).
		if spec, _ := specOf(t, jersey(), plain()); !spec.Back.Neck.Depth.Equal(length("1 in")) {
			t.Errorf("%v deep", spec.Back.Neck.Depth)
		}
	})
	t.Run("least girth of the neck", func(t *testing.T) {
		// (56 + 34) / 2 = 45 cm (stylishknitting.com, How to knit neckline).
		b := plain()
		b.Head, b.Neck = length("56 cm"), length("34 cm")
		style, third := jersey(), decimal.NewFromInt(33) // so much that the head asks for less
		style.Spec.Neck.Stretch = &third
		spec, _ := specOf(t, style, b)
		edge := spec.Neck.Width.Mul(2).Add(eightSevenths(spec.Neck.Depth.Add(spec.Back.Neck.Depth)))
		if off := edge.Sub(length("45 cm")).Abs(); off.Cmp(length("0.1 mm")) > 0 {
			t.Errorf("the edge is taken as %v, want 45 cm", edge)
		}
		// That is what the pieces have, to 2 cm.
		set, err := garment.Pieces(spec)
		if err != nil {
			t.Fatal(err)
		}
		if got := set.Pieces[0].NeckLength().Add(set.Pieces[1].NeckLength()); got.Sub(length("45 cm")).Abs().Cmp(length("2 cm")) > 0 {
			t.Errorf("the edge is %v long, want 45 cm", got)
		}
	})
	t.Run("percentages of the body", func(t *testing.T) {
		// E. Zimmermann: wrist 20, upper arm 33 % of the body's count; of 250 stitches, 50 in at 5
		// to the inch, 50 and 82.5 (lindysknitslaces.com, 19 March 2010; heleninhobart.blogspot.com).
		style, b := jersey(), plain()
		style.Spec.Gauge = gaugeOf(5, 7, "1 in")
		b.Chest, style.Ease.Body = length("46 in"), garment.Exactly(length("4 in"))
		spec, list := specOf(t, style, b)
		for _, c := range []struct {
			l    gauge.Length
			want string
		}{{spec.Body.Width.Mul(2), "250"}, {spec.Sleeve.Cuff, "50"}, {spec.Sleeve.Top, "82.5"}} {
			if got := style.Spec.Gauge.Stitches(c.l).String(); got != c.want {
				t.Errorf("%s stitches, want %s", got, c.want)
			}
		}
		for key, gives := range map[string]string{"wrist": "width at the cuff", "upperArm": "width at the upper arm"} {
			if f, ok := filled(list, key, gives); !ok || f.Source == "" || f.Rule == "" {
				t.Errorf("%s is not filled: %+v", key, list)
			}
		}
	})
	t.Run("upper arm beside the survey", func(t *testing.T) {
		// Biceps by chest of the median man and woman: 0.337 and 0.322 (computed from the raw data
		// of the 2012 Anthropometric Survey of U.S. Army Personnel, Natick TR-15/007, 2014); the
		// rule is within 3 cm of their own arms with ease.
		for _, b := range []sizes.Body{sizes.Men()[2], sizes.Women()[2]} {
			own, _ := specOf(t, jersey(), b)
			b.UpperArm = gauge.Length{}
			rule, _ := specOf(t, jersey(), b)
			if off := rule.Sleeve.Top.Sub(own.Sleeve.Top).Abs(); off.Cmp(length("3 cm")) > 0 {
				t.Errorf("%v off", off)
			}
		}
	})
	t.Run("armhole beside the children's", func(t *testing.T) {
		// The depths of Measurements for Designers: Children (crochetkitten.com), with ease.
		for _, b := range sizes.Children() {
			own, _ := specOf(t, jersey(), b)
			b.Armhole = gauge.Length{}
			rule, _ := specOf(t, jersey(), b)
			if off := rule.Armhole.Depth.Sub(own.Armhole.Depth).Abs(); off.Cmp(length("2.5 cm")) > 0 {
				t.Errorf("%s: %v off", b.Name, off)
			}
		}
	})
	t.Run("ease", func(t *testing.T) {
		// A chest of 40 in and a standard fit: 42 to 44 in (Factoring in ease, knittingmagic.biz).
		b := plain()
		b.Chest = length("40 in")
		spec, _ := specOf(t, jersey(), b)
		if round := spec.Body.Width.Mul(2); round.Cmp(length("42 in")) < 0 || round.Cmp(length("44 in")) > 0 {
			t.Errorf("%v round", round)
		}
	})
	t.Run("height of the cap", func(t *testing.T) {
		// The armhole's depth less 2 in for a chest up to 30 in, 3 in for 31 to 48 in, 4 in above
		// (slippedstitches.wordpress.com, March 2014): 8.5 in less 3 in are 5.5 in.
		for chest, cap := range map[string]string{"30 in": "6.5 in", "31 in": "5.5 in", "48 in": "5.5 in", "49 in": "4.5 in"} {
			b := plain()
			b.Chest, b.UpperArm = length(chest), length("30 cm")
			b.Armhole = length("8.5 in").Sub(length("2.5 cm"))
			spec, _ := specOf(t, jersey(), b)
			if got := b.Arm.Sub(spec.Sleeve.Length); !spec.Armhole.Depth.Equal(length("8.5 in")) || !got.Equal(length(cap)) {
				t.Errorf("chest of %s: armhole %v, cap %v, want %s", chest, spec.Armhole.Depth, got, cap)
			}
		}
	})
	t.Run("sleeve of a dropped shoulder", func(t *testing.T) {
		// From the middle of the back to the wrist 80 cm, a body of 62 cm: a sleeve of 49 cm
		// (designyourownsweater, "Sleeve").
		style, b := jersey(), plain()
		style.Spec.Armhole.Inset, style.Spec.Sleeve.Cap = gauge.Length{}, garment.StraightTop
		b.Chest, style.Ease.Body = length("116 cm"), garment.Exactly(length("8 cm"))
		b.Shoulders, b.Arm = length("42 cm"), length("59 cm")
		spec, _ := specOf(t, style, b)
		if !spec.Body.Width.Equal(length("62 cm")) || !spec.Sleeve.Length.Equal(length("49 cm")) {
			t.Errorf("body %v, sleeve %v", spec.Body.Width, spec.Sleeve.Length)
		}
	})
}

func gaugeOf(stitches, rows int64, over string) gauge.Gauge {
	g, err := gauge.New(decimal.NewFromInt(stitches), decimal.NewFromInt(rows), length(over))
	if err != nil {
		panic(err)
	}
	return g
}

func eightSevenths(l gauge.Length) gauge.Length {
	return gauge.Millimetres(l.Millimetres().Mul(decimal.NewFromInt(8)).DivRound(decimal.NewFromInt(7), 1))
}

// A chest alone gives no garment: what cannot follow from it is asked for by its name.
func TestRequired(t *testing.T) {
	straight := jersey()
	straight.Spec.Armhole.Inset = gauge.Length{}
	slipover := jersey()
	slipover.Spec.Sleeve = nil
	for _, c := range []struct {
		why, key string
		style    sizes.Style
		change   func(*sizes.Body)
	}{
		{"all that is needed", "", jersey(), func(*sizes.Body) {}},
		{"no chest", "chest", jersey(), func(b *sizes.Body) { b.Chest = gauge.Length{} }},
		{"no shoulders", "shoulders", jersey(), func(b *sizes.Body) { b.Shoulders = gauge.Length{} }},
		{"no length", "backWaist", jersey(), func(b *sizes.Body) { b.BackWaist = gauge.Length{} }},
		{"no arm", "arm", jersey(), func(b *sizes.Body) { b.Arm = gauge.Length{} }},
		{"inner arm for the arm", "", jersey(), func(b *sizes.Body) { b.Arm, b.InnerArm = gauge.Length{}, length("43 cm") }},
		{"inner arm and a straight armhole", "arm", straight, func(b *sizes.Body) { b.Arm, b.InnerArm = gauge.Length{}, length("43 cm") }},
		{"no arm and no sleeve", "", slipover, func(b *sizes.Body) { b.Arm = gauge.Length{} }},
		{"an infant without a head", "head", jersey(), func(b *sizes.Body) { b.Chest = length("46 cm") }},
		{"an infant with one", "", jersey(), func(b *sizes.Body) { b.Chest, b.Head = length("46 cm"), length("46.1 cm") }},
	} {
		b := plain()
		c.change(&b)
		_, _, err := c.style.For(b)
		e, ok := errors.AsType[*sizes.Error](err)
		switch {
		case c.key == "" && err != nil:
			t.Errorf("%s: %v", c.why, err)
		case c.key != "" && (!ok || e.Key != c.key || e.Size != "M" || !errors.Is(err, sizes.ErrBodies)):
			t.Errorf("%s: %v, want one that names %s and the size", c.why, err, c.key)
		}
	}
}

// Whatever is missing of a whole body: it is planned all the same, and what stands for it
// is named, and nothing else is.
func TestFilledIsNamed(t *testing.T) {
	style := jersey()
	style.Spec.Neck.Depth, style.Spec.Back = length("7 cm"), nil
	whole := sizes.Men()[2]
	if _, list := specOf(t, style, whole); len(list) != 0 {
		t.Fatalf("a whole body has filled %+v", list)
	}
	for key, without := range map[string]func(*sizes.Body){
		"waist":    func(b *sizes.Body) { b.Waist = gauge.Length{} },
		"hips":     func(b *sizes.Body) { b.Hips = gauge.Length{} },
		"neck":     func(b *sizes.Body) { b.Neck = gauge.Length{} },
		"head":     func(b *sizes.Body) { b.Head = gauge.Length{} },
		"upperArm": func(b *sizes.Body) { b.UpperArm = gauge.Length{} },
		"wrist":    func(b *sizes.Body) { b.Wrist = gauge.Length{} },
		"hand":     func(b *sizes.Body) { b.Hand = gauge.Length{} },
		"fall":     func(b *sizes.Body) { b.Fall = gauge.Length{} },
		"armhole":  func(b *sizes.Body) { b.Armpit = gauge.Length{} },
	} {
		b := whole
		without(&b)
		r := planned(t, style, []sizes.Body{b})
		list := r.Sizes[0].Filled
		if len(list) != 1 || list[0].Key != key || list[0].Rule == "" {
			t.Errorf("without %s: filled %+v", key, list)
		}
		for _, f := range list {
			if (f.Gives == "") != f.Length.IsZero() {
				t.Errorf("%s gives %q of %v", key, f.Gives, f.Length)
			}
		}
		for _, c := range r.Sizes[0].Set.Failed() {
			t.Errorf("without %s: %s", key, c.Says)
		}
	}
}

// The shapes of the style keep their proportion.
func TestProportions(t *testing.T) {
	style := jersey()
	style.Spec.Neck.Width, style.Spec.Neck.Flat = length("16 cm"), garment.Exactly(length("6 cm"))
	style.Spec.Armhole = garment.Armhole{Depth: length("20 cm"), Curve: garment.Exactly(length("8 cm")), Inset: length("6 cm"), BindOff: garment.Exactly(length("2 cm"))}
	style.Spec.Sleeve.Top, style.Spec.Sleeve.Flat = length("32 cm"), garment.Exactly(length("8 cm"))
	for _, b := range slices.Concat(sizes.Men(), sizes.Women(), sizes.Children()) {
		s, _ := specOf(t, style, b)
		for _, c := range []struct {
			part     garment.Optional
			of       gauge.Length
			num, den int
		}{
			{s.Neck.Flat, s.Neck.Width, 3, 8}, {s.Armhole.Curve, s.Armhole.Depth, 2, 5},
			{s.Armhole.BindOff, s.Armhole.Inset, 1, 3}, {s.Sleeve.Flat, s.Sleeve.Top, 1, 4},
		} {
			if off := c.part.Or(gauge.Length{}).Mul(c.den).Sub(c.of.Mul(c.num)).Abs(); off.Cmp(length("0.5 mm")) > 0 {
				t.Errorf("%s: %v of %v, want %d in %d", b.Name, c.part.Or(gauge.Length{}), c.of, c.num, c.den)
			}
		}
	}
}

// Other sources of the same figures.
func TestBuiltInBodies(t *testing.T) {
	heads, err := bodies.Heads()
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range sizes.Children() {
		for _, h := range heads {
			if h.Child == "boy" && strings.HasPrefix(b.Name, map[int]string{24: "2 ", 48: "4 "}[h.Months]) && h.Months%24 == 0 && h.Months > 0 && h.Months < 60 {
				if !b.Head.Equal(h.Girths[1]) {
					t.Errorf("%s: head %v, the WHO has %v", b.Name, b.Head, h.Girths[1])
				}
			}
		}
	}
	if got := heads[9]; got.Child != "boy" || got.Months != 60 || !got.Girths[2].Equal(length("53.73 cm")) {
		t.Errorf("a large head of five years is %v", got)
	}
	if !sizes.Men()[3].Head.Equal(length("60.1 cm")) {
		t.Errorf("a large head of men is %v", sizes.Men()[3].Head)
	}
	// Chest of the Caron leaflet in its own centimetres, which are rounded.
	for i, want := range []string{"53.5 cm", "58.5 cm", "63.5 cm", "67.5 cm", "71 cm"} {
		if b := sizes.Children()[i]; b.Chest.Sub(length(want)).Abs().Cmp(length("3 mm")) > 0 {
			t.Errorf("%s: chest %v, printed %s", b.Name, b.Chest, want)
		}
	}
	for _, list := range [][]sizes.Body{sizes.Men(), sizes.Women(), sizes.Children()} {
		for i, b := range list[1:] {
			for _, key := range sizes.Keys() {
				before, _ := list[i].Measurement(key)
				now, _ := b.Measurement(key)
				if now.IsZero() != before.IsZero() && key != "head" || !now.IsZero() && before.Cmp(now) >= 0 {
					t.Errorf("%s: %s %v after %v", b.Name, key, now, before)
				}
			}
		}
	}
}

// A size that cannot be made is named, with the field and the measurement.
func TestPlanRefuses(t *testing.T) {
	style := jersey()
	style.Spec.Setup.Needles = 130
	_, err := sizes.Plan(style, sizes.Men())
	e, ok := errors.AsType[*sizes.Error](err)
	if !ok || !errors.Is(err, garment.ErrBed) || e.Size != "95th" || e.Key != "body.width" || !strings.Contains(err.Error(), "chest") || strings.Contains(err.Error(), "\n") {
		t.Errorf("got %v", err)
	}
	style.Spec.Gauge = gauge.Gauge{}
	if _, err := sizes.Plan(style, sizes.Men()); !errors.Is(err, garment.ErrSpec) || !strings.Contains(err.Error(), "size min") {
		t.Errorf("without a gauge: %v", err)
	}
	for why, bodies := range map[string][]sizes.Body{
		"none":           nil,
		"too many":       make([]sizes.Body, sizes.MaxBodies+1),
		"two of a name":  {plain(), plain()},
		"no name":        {{}},
		"path":           {{Name: "../M"}},
		"dots":           {{Name: "M."}},
		"long name":      {{Name: strings.Repeat("M", sizes.MaxName+1)}},
		"less than none": {{Name: "M", Chest: length("-1 cm")}},
		"giant":          {{Name: "M", Arm: length("301 cm")}},
	} {
		if _, err := sizes.Plan(jersey(), bodies); !errors.Is(err, sizes.ErrBodies) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v", why, err)
		}
	}
}
