package garment_test

import (
	"errors"
	"math/big"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
)

func number(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// weighed returns a swatch of about the usual size, which took so much yarn.
func weighed(stitches, rows int, grams, metres string) gauge.Swatch {
	mm := length("1 mm")
	return gauge.Swatch{
		Stitches: stitches, Width: mm.Mul(max(stitches*9/2, 1)), Rows: rows, Height: mm.Mul(max(rows*10/3, 1)),
		Grams: number(grams), Metres: number(metres),
	}
}

// knittedSwatch knits a swatch on the bed and returns it as a piece of the spec.
func knittedSwatch(t fataler, s garment.Spec, name string, swatch gauge.Swatch) garment.Piece {
	t.Helper()
	work, err := order.Arrange(order.Outline{
		Name: name, Place: shaping.Bed, Carriage: shaping.Right, Top: order.BoundOff,
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: swatch.Rows, Needles: shaping.Centred(swatch.Stitches)}},
	})
	if err != nil {
		t.Fatalf("%v", err)
	}
	cloth, err := bed.Knit(work)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return garment.Piece{Work: work, Cloth: cloth, Spec: s}
}

// drawWeight draws a number with up to two decimals.
func drawWeight(t *rapid.T, name string) string {
	return decimal.New(rapid.Int64Range(1, 20_000).Draw(t, name), -2).String()
}

func drawWeighed(t *rapid.T) gauge.Swatch {
	return weighed(rapid.IntRange(2, 60).Draw(t, "stitches"), rapid.IntRange(2, 80).Draw(t, "rows"), drawWeight(t, "grams"), drawWeight(t, "metres"))
}

// The swatch knitted again takes what it took, exactly; all of several swatches what they
// took together.
func TestSwatchTakesItsOwnYarn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		swatches := rapid.SliceOfN(rapid.Custom(drawWeighed), 1, 4).Draw(t, "swatches")
		s := garment.Spec{Swatches: swatches}
		if len(swatches) == 1 {
			s = garment.Spec{Swatch: &swatches[0]}
		}
		var set garment.Set
		var grams, metres decimal.Decimal
		for i, swatch := range swatches {
			set.Pieces = append(set.Pieces, knittedSwatch(t, s, string(rune('a'+i)), swatch))
			grams, metres = grams.Add(swatch.Grams), metres.Add(swatch.Metres)
		}
		y, ok := set.Yarn()
		if !ok || !y.Total.Grams.Equal(grams) || !y.Total.Metres.Equal(metres) {
			t.Fatalf("%v g and %v m were taken; %+v", grams, metres, y)
		}
		if len(swatches) == 1 && !y.Uses[0].Grams.Equal(grams) {
			t.Fatalf("the piece takes %v g of %v", y.Uses[0].Grams, grams)
		}
	})
}

// exactly returns loops × taken / (stitches × rows), rounded to a millionth.
func exactly(loops int, taken decimal.Decimal, s gauge.Swatch) decimal.Decimal {
	r := new(big.Rat).Mul(big.NewRat(int64(loops), int64(s.Stitches*s.Rows)), taken.Rat())
	return decimal.NewFromBigRat(r, 6)
}

// What a jumper takes, counted here row by row; its parts add up; balls are enough and one
// less is not; twice the weight is twice the yarn.
func TestYarnOfJumpers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := gen.JumperSpec(metric).Draw(t, "spec")
		g, err := spec.GaugeSpec().Measured()
		if err != nil {
			t.Fatal(err)
		}
		// The same gauge nearly, by a swatch that was weighed.
		wide, high := g.Stitches(length("15 cm")).Round(gauge.Rounding{}), g.Rows(length("15 cm")).Round(gauge.Rounding{})
		swatch := gauge.Swatch{
			Stitches: wide, Width: length("15 cm"), Rows: high, Height: length("15 cm"),
			Grams: number(drawWeight(t, "grams")), Metres: number(drawWeight(t, "metres")),
		}
		spec = spec.Regauged(garment.GaugeSpec{Swatch: &swatch})
		ball := garment.Ball{Grams: number(rapid.SampledFrom([]string{"0", "25", "50", "100"}).Draw(t, "ball")), Metres: number("125")}
		margin := decimal.New(rapid.Int64Range(0, 1000).Draw(t, "margin"), -1)
		spec.Yarn = &garment.YarnSpec{Margin: &margin, Ball: &ball}
		set, err := garment.Pieces(spec)
		if err != nil {
			checkRefusal(t, err)
			return
		}
		y, ok := set.Yarn()
		if !ok || len(y.Uses) != len(set.Pieces) || !y.Margin.Equal(margin) {
			t.Fatalf("%+v", y)
		}
		loops := 0
		var grams, metres decimal.Decimal
		for i, p := range set.Pieces {
			n := 0
			for _, row := range p.Work.Rows {
				n += row.Knit.Len()
			}
			loops += n
			want := garment.YarnUse{Of: p.Name(), Loops: n, Grams: exactly(n, swatch.Grams, swatch), Metres: exactly(n, swatch.Metres, swatch)}
			if diff := cmp.Diff(want, y.Uses[i]); diff != "" {
				t.Fatalf("%s (-want +got):\n%s", p.Name(), diff)
			}
			alone, ok := p.Yarn()
			if !ok || len(alone.Uses) != 1 || !cmp.Equal(alone.Uses[0], want) || !alone.Total.Grams.Equal(want.Grams) {
				t.Fatalf("%s alone takes %+v", p.Name(), alone)
			}
			grams, metres = grams.Add(want.Grams), metres.Add(want.Metres)
		}
		apart := number("0.000003") // of four parts and the sum, each rounded to a millionth
		if y.Total.Loops != loops || y.Total.Grams.Sub(grams).Abs().Cmp(apart) > 0 || y.Total.Metres.Sub(metres).Abs().Cmp(apart) > 0 {
			t.Fatalf("the parts have %d loops, %v g, %v m; %+v", loops, grams, metres, y.Total)
		}

		// (100 + margin) / 100 of it, and as many balls.
		factor := number("100").Add(margin)
		all, one := exactly(loops, swatch.Grams.Mul(factor).Shift(-2), swatch), ball.Grams
		if !y.WithMargin.Grams.Equal(all) {
			t.Fatalf("with %v %%: %v g, want %v", margin, y.WithMargin.Grams, all)
		}
		if one.IsZero() {
			all, one = exactly(loops, swatch.Metres.Mul(factor).Shift(-2), swatch), ball.Metres
		}
		held := func(balls int) decimal.Decimal { return one.Mul(decimal.NewFromInt(int64(balls))) }
		if slack := number("0.000001"); y.Balls < 1 || held(y.Balls).Add(slack).Cmp(all) < 0 || held(y.Balls-1).Sub(slack).Cmp(all) >= 0 {
			t.Fatalf("%d balls of %v for %v", y.Balls, one, all)
		}

		// Twice the weight and three times the length.
		heavier := swatch
		heavier.Grams, heavier.Metres = swatch.Grams.Mul(number("2")), swatch.Metres.Mul(number("3"))
		again := set
		again.Pieces = append([]garment.Piece(nil), set.Pieces...)
		again.Pieces[0].Spec.Swatch = &heavier
		more, _ := again.Yarn()
		if more.Total.Grams.Sub(y.Total.Grams.Mul(number("2"))).Abs().Cmp(apart) > 0 || more.Total.Metres.Sub(y.Total.Metres.Mul(number("3"))).Abs().Cmp(apart) > 0 {
			t.Fatalf("%+v by twice the weight, %+v by once", more.Total, y.Total)
		}
	})
}

// 40 stitches by 60 rows are 2400 loops. Worked by hand.
func TestYarnByHand(t *testing.T) {
	swatch := weighed(40, 60, "12", "0")
	s := garment.Spec{Swatch: &swatch}
	square := weighed(100, 100, "0", "0")
	use := func(s garment.Spec) garment.Yarn {
		y, ok := garment.Set{Pieces: []garment.Piece{knittedSwatch(t, s, "front", square)}}.Yarn()
		if !ok {
			t.Error("not known")
		}
		return y
	}
	for _, c := range []struct {
		why                           string
		set                           func(*garment.Spec)
		grams, metres, withMarginGram string
		balls                         int
	}{
		{"10000 / 2400 of 12 g, and a tenth: common practice, no source", func(*garment.Spec) {}, "50", "0", "55", 0},
		{"two balls", func(s *garment.Spec) { s.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Grams: number("50")}} }, "50", "0", "55", 2},
		{"one ball exactly", func(s *garment.Spec) {
			s.Yarn = &garment.YarnSpec{Margin: new(number("0")), Ball: &garment.Ball{Grams: number("50")}}
		}, "50", "0", "50", 1},
		{"a ball of known length only, a swatch of known weight only", func(s *garment.Spec) {
			s.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Metres: number("100")}}
		}, "50", "0", "55", 0},
		{"by the swatches that were weighed or measured: 20 g and 60 m to 3200 loops each", func(s *garment.Spec) {
			s.Swatch, s.Swatches = nil, []gauge.Swatch{weighed(40, 60, "12", "0"), weighed(40, 80, "0", "60"), weighed(20, 40, "8", "0")}
			s.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Metres: number("100")}}
		}, "62.5", "187.5", "68.75", 3},
	} {
		changed := s
		c.set(&changed)
		y := use(changed)
		if !y.Total.Grams.Equal(number(c.grams)) || !y.Total.Metres.Equal(number(c.metres)) || !y.WithMargin.Grams.Equal(number(c.withMarginGram)) || y.Balls != c.balls {
			t.Errorf("%s: %+v", c.why, y)
		}
	}
	for _, s := range []garment.Spec{adult(), {}} {
		if y, ok := (garment.Set{Pieces: []garment.Piece{{Spec: s}}}).Yarn(); ok {
			t.Errorf("known without a swatch that was weighed: %+v", y)
		}
	}
	if y, ok := (garment.Set{}).Yarn(); ok {
		t.Errorf("known of nothing: %+v", y)
	}
}

func TestYarnRefusals(t *testing.T) {
	ball := func(grams, metres string) change {
		return func(s *garment.Spec) {
			s.Yarn = &garment.YarnSpec{Ball: &garment.Ball{Grams: number(grams), Metres: number(metres)}}
		}
	}
	margin := func(percent decimal.Decimal) change {
		return func(s *garment.Spec) { s.Yarn = &garment.YarnSpec{Margin: &percent} }
	}
	weights := func(several bool, swatches ...gauge.Swatch) change {
		return func(s *garment.Spec) {
			s.Gauge = gauge.Gauge{}
			if several {
				s.Swatches = swatches
			} else {
				s.Swatch = &swatches[0]
			}
		}
	}
	good, light, heavy := weighed(40, 60, "12", "30"), weighed(40, 60, "-1", "30"), weighed(40, 60, "12", "100001")
	for _, c := range []struct {
		spoil change
		want  string // "" for none
	}{
		{margin(number("-1")), "yarn.margin -1: 0 to 100"},
		{margin(number("100.5")), "yarn.margin 100.5: 0 to 100"},
		{margin(decimal.New(1, 2_000_000_000)), "yarn.margin 1e2000000000: 0 to 100"},
		{margin(decimal.New(0, -2_000_000_000)), "yarn.margin 0e-2000000000: 0 to 100"},
		{margin(number("0")), ""},
		{margin(number("100")), ""},
		{ball("0.9", "0"), "yarn.ball.grams 0.9: 1 to 10000, or left out"},
		{ball("50", "-100"), "yarn.ball.metres -100: 1 to 100000, or left out"},
		{ball("10001", "0"), "yarn.ball.grams 10001: 1 to 10000, or left out"},
		{ball("50", "100001"), "yarn.ball.metres 100001: 1 to 100000, or left out"},
		{ball("1", "100000"), ""},
		{ball("0", "0"), ""},
		{weights(false, light), "swatch.grams -1: 0 to 100000"},
		{weights(false, heavy), "swatch.metres 100001: 0 to 100000"},
		{weights(true, good, light), "swatches[1].grams -1: 0 to 100000"},
		{weights(true, good, good), ""},
	} {
		s := adult()
		c.spoil(&s)
		_, err := garment.Front(s)
		if err == nil && c.want != "" || err != nil && (err.Error() != c.want || !errors.Is(err, garment.ErrSpec)) {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
}
