package sizes_test

import (
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func length(s string) gauge.Length { return gauge.MustParseLength(s) }

// newGauge returns a gauge over 10 cm.
func newGauge(stitches, rows int64) gauge.Gauge {
	g, err := gauge.New(decimal.NewFromInt(stitches), decimal.NewFromInt(rows), length("10 cm"))
	if err != nil {
		panic(err)
	}
	return g
}

// jersey is a style with set-in sleeves that leaves open what can be left open.
func jersey() sizes.Style {
	return sizes.Style{Spec: garment.Spec{
		Title:   "A lighthouse keeper's jersey",
		Gauge:   newGauge(22, 30),
		Start:   garment.Start{Edge: garment.ClosedEdge, Band: length("5 cm")},
		Seam:    garment.Seam{Stitches: 1},
		Body:    garment.Body{Waist: &garment.Waist{}},
		Armhole: garment.Armhole{Inset: length("5 cm")},
		Neck:    garment.Neck{Shape: garment.RoundNeck},
		Sleeve:  &garment.SleeveSpec{Cap: garment.SetInCap, Plain: length("2 cm")},
		Setup:   garment.Setup{Needles: 400},
	}}
}

// plain is a body of which only what is needed was measured.
func plain() sizes.Body {
	return sizes.Body{
		Name: "M", Chest: length("94 cm"), Shoulders: length("37.5 cm"), BackWaist: length("42 cm"), Arm: length("56 cm"),
	}
}

func planned(t testing.TB, style sizes.Style, bodies []sizes.Body) sizes.Range {
	t.Helper()
	r, err := sizes.Plan(style, bodies)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// drawn returns bodies of men or women, each measurement at a place of its own among the
// percentiles, and some of those that may be missing left out.
func drawn(t *rapid.T) []sizes.Body {
	table := rapid.SampledFrom([][]sizes.Body{sizes.Men(), sizes.Women()}).Draw(t, "table")
	var bodies []sizes.Body
	for i := range rapid.IntRange(1, 5).Draw(t, "sizes") {
		bodies = append(bodies, between(t, table, string(rune('A'+i))))
	}
	return bodies
}

func between(t *rapid.T, table []sizes.Body, name string) sizes.Body {
	// Nobody is the shortest of all and the stoutest, or the tallest and the thinnest.
	tall := rapid.IntRange(0, 1000).Draw(t, "tall")
	stout := rapid.IntRange(max(tall-500, 0), min(tall+500, 1000)).Draw(t, "stout")
	at := func(key string, place int) gauge.Length {
		place = min(max(place+rapid.IntRange(-100, 100).Draw(t, key), 0), 1000)
		step := min(place/250, 3)
		low, _ := table[step].Measurement(key)
		high, _ := table[step+1].Measurement(key)
		part := decimal.New(int64(place-250*step), 0).Mul(high.Sub(low).Millimetres()).DivRound(decimal.New(250, 0), 0)
		return low.Add(gauge.Millimetres(part))
	}
	missing := func(key string, place int) gauge.Length {
		if rapid.IntRange(0, 3).Draw(t, key+" missing") == 0 {
			return gauge.Length{}
		}
		return at(key, place)
	}
	return sizes.Body{
		Name: name, Chest: at("chest", stout), Shoulders: at("shoulders", stout), BackWaist: at("backWaist", tall), Arm: at("arm", tall),
		Waist: missing("waist", stout), Hips: missing("hips", stout), Neck: missing("neck", stout), Head: missing("head", stout),
		UpperArm: missing("upperArm", stout), Wrist: missing("wrist", stout), Hand: missing("hand", stout),
		Fall: missing("fall", tall), Armpit: missing("armpit", tall),
	}
}

// drawnStyle returns a style on a bed that is wide enough or in the hand.
func drawnStyle(t *rapid.T) sizes.Style {
	style := jersey()
	one := func(name string) bool { return rapid.Bool().Draw(t, name) }
	style.Spec.Gauge = rapid.SampledFrom([]gauge.Gauge{newGauge(28, 40), newGauge(22, 30), newGauge(16, 22)}).Draw(t, "gauge")
	if one("hand") {
		style.Spec.Setup = garment.Setup{On: shaping.Hand}
	}
	if one("straight") {
		style.Spec.Armhole.Inset, style.Spec.Sleeve.Cap = gauge.Length{}, garment.StraightTop
	}
	if one("no sleeve") {
		style.Spec.Sleeve = nil
	}
	if one("no waist") {
		style.Spec.Body.Waist = nil
	}
	if one("bound off") {
		style.Spec.Methods = garment.Methods{Neck: garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}, Shoulder: garment.By(shaping.BindOff)}
	}
	style.Spec.Neck.Shape = rapid.SampledFrom([]garment.NeckShape{garment.RoundNeck, garment.VeeNeck, garment.SquareNeck}).Draw(t, "neck")
	style.Ease.Body = garment.Exactly(gauge.Millimetres(decimal.NewFromInt(int64(rapid.IntRange(0, 150).Draw(t, "ease")))))
	return style
}
