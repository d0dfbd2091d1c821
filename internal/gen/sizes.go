package gen

import (
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
)

// Bodies generates tables of one to five bodies, named A, B and so on: men or women, each
// measurement at a place of its own among the percentiles of package sizes, and some of
// those that may be missing left out.
func Bodies() *rapid.Generator[[]sizes.Body] {
	return rapid.Custom(func(t *rapid.T) []sizes.Body {
		table := rapid.SampledFrom([][]sizes.Body{sizes.Men(), sizes.Women()}).Draw(t, "table")
		var bodies []sizes.Body
		for i := range rapid.IntRange(1, 5).Draw(t, "sizes") {
			bodies = append(bodies, bodyAmong(t, table, string(rune('A'+i))))
		}
		return bodies
	})
}

// bodyAmong draws a body between the least and the greatest of a table of five.
func bodyAmong(t *rapid.T, table []sizes.Body, name string) sizes.Body {
	const (
		top   = 1000 // the place of the greatest
		step  = top / 4
		apart = 100 // of two measurements of one body
		odd   = 500 // nobody is the shortest of all and the stoutest, or the tallest and the thinnest
	)
	tall := rapid.IntRange(0, top).Draw(t, "tall")
	stout := rapid.IntRange(max(tall-odd, 0), min(tall+odd, top)).Draw(t, "stout")
	at := func(key string, about int) gauge.Length {
		place := min(max(about+rapid.IntRange(-apart, apart).Draw(t, key), 0), top)
		below := min(place/step, 3)
		low, _ := table[below].Measurement(key)
		high, _ := table[below+1].Measurement(key)
		part := decimal.NewFromInt(int64(place-step*below)).Mul(high.Sub(low).Millimetres()).DivRound(decimal.NewFromInt(step), 0)
		return low.Add(gauge.Millimetres(part))
	}
	missing := func(key string, about int) gauge.Length {
		if rapid.IntRange(0, 3).Draw(t, key+" missing") == 0 {
			return gauge.Length{}
		}
		return at(key, about)
	}
	return sizes.Body{
		Name: name, Chest: at("chest", stout), Shoulders: at("shoulders", stout), BackWaist: at("backWaist", tall), Arm: at("arm", tall),
		Waist: missing("waist", stout), Hips: missing("hips", stout), Neck: missing("neck", stout), Head: missing("head", stout),
		UpperArm: missing("upperArm", stout), Wrist: missing("wrist", stout), Hand: missing("hand", stout),
		Fall: missing("fall", tall), Armpit: missing("armpit", tall),
	}
}

// Style generates styles of jumpers at three gauges, on a bed that is wide enough for every
// body or in the hand: with set-in or straight armholes or without sleeves, with and without
// a waist, necks of three shapes, held or bound off, and any ease.
func Style() *rapid.Generator[sizes.Style] {
	return rapid.Custom(func(t *rapid.T) sizes.Style {
		s := garment.Spec{
			Title:   "A style",
			Gauge:   rapid.SampledFrom(threeGauges()).Draw(t, "gauge"),
			Start:   garment.Start{Edge: garment.ClosedEdge, Band: cm(5)},
			Seam:    garment.Seam{Stitches: 1},
			Body:    garment.Body{Waist: &garment.Waist{}},
			Armhole: garment.Armhole{Inset: cm(5)},
			Neck:    garment.Neck{Shape: rapid.SampledFrom([]garment.NeckShape{garment.RoundNeck, garment.VeeNeck, garment.SquareNeck}).Draw(t, "neck")},
			Sleeve:  &garment.SleeveSpec{Cap: garment.SetInCap, Plain: cm(2)},
			Setup:   garment.Setup{Needles: 400},
		}
		has := func(what string) bool { return rapid.Bool().Draw(t, what) }
		if has("hand") {
			s.Setup = garment.Setup{On: shaping.Hand}
		}
		if has("straight") {
			s.Armhole.Inset, s.Sleeve.Cap = gauge.Length{}, garment.StraightTop
		}
		if has("no sleeve") {
			s.Sleeve = nil
		}
		if has("no waist") {
			s.Body.Waist = nil
		}
		if has("bound off") {
			s.Methods = garment.Methods{Neck: garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned}, Shoulder: garment.By(shaping.BindOff)}
		}
		const loosest = 15
		return sizes.Style{Spec: s, Ease: sizes.Ease{Body: garment.Exactly(cm(int64(rapid.IntRange(0, loosest).Draw(t, "ease"))))}}
	})
}

func cm(n int64) gauge.Length { return gauge.Centimetres(decimal.NewFromInt(n)) }

// threeGauges are fine, middling and thick yarn.
func threeGauges() []gauge.Gauge {
	var gauges []gauge.Gauge
	for _, g := range [][2]int64{{28, 40}, {22, 30}, {16, 22}} {
		made, err := gauge.New(decimal.NewFromInt(g[0]), decimal.NewFromInt(g[1]), cm(10))
		if err != nil {
			panic(err)
		}
		gauges = append(gauges, made)
	}
	return gauges
}
