package gauge_test

import (
	"errors"
	"fmt"

	"example.com/walewise/gauge"
	"github.com/shopspring/decimal"
)

func Example() {
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), gauge.MustParseLength("10 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	exact := g.Stitches(gauge.MustParseLength("54 cm"))
	whole := exact.Round(gauge.Rounding{})
	fmt.Println(g)
	fmt.Println(exact, "stitches, so", whole)
	fmt.Println("which are", g.Width(whole).Format(gauge.Centimetre, 1))
	// Output:
	// 22 stitches and 30 rows to 10 cm
	// 118.8 stitches, so 119
	// which are 54.1 cm
}

func ExampleParseLength() {
	l, err := gauge.ParseLength("9 1/4 in")
	fmt.Println(l, err)
	_, err = gauge.ParseLength("23,5 cm")
	fmt.Println(err)
	_, err = gauge.ParseLength("23.5")
	fmt.Println(errors.Is(err, gauge.ErrUnit))
	// Output:
	// 23.495 cm <nil>
	// length "23,5 cm": write the decimal point as ".": 23.5 cm
	// true
}

func ExampleRoundTogether() {
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), gauge.MustParseLength("10 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	parts, err := gauge.RoundTogether(100, []gauge.Part{
		{Name: "shoulder", Want: g.Stitches(gauge.MustParseLength("13.5 cm")), Times: 2},
		{Name: "neck", Want: g.Stitches(gauge.MustParseLength("18.5 cm")), Grid: gauge.Even(gauge.Nearest)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range parts {
		fmt.Printf("%d x %s: %d, off by %v\n", p.Times, p.Name, p.Whole, p.Off)
	}
	// Output:
	// 2 x shoulder: 30, off by 0.3
	// 1 x neck: 40, off by -0.7
}

func ExampleGauge_Tolerance() {
	g, err := gauge.New(decimal.NewFromInt(40), decimal.NewFromInt(50), gauge.MustParseLength("18 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	// Half a stitch in 40 is 1.25 %.
	fmt.Println(g.Tolerance().Width(gauge.MustParseLength("52 cm")))
	// Output:
	// 0.65 cm
}

func ExampleMean() {
	cm := gauge.MustParseLength
	g, err := gauge.Mean(
		gauge.Swatch{Stitches: 44, Width: cm("19.8 cm"), Rows: 60, Height: cm("19.6 cm")},
		gauge.Swatch{Stitches: 48, Width: cm("22.6 cm"), Rows: 64, Height: cm("21.2 cm")},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(g)
	stitches, rows := g.Spread(1)
	fmt.Printf("up to %s %% and %s %% from the mean; they agree: %v\n", stitches, rows, g.Agree())
	fmt.Println("52 cm give or take", g.Tolerance().Width(cm("52 cm")).Format(gauge.Centimetre, 2))
	// Output:
	// 92 stitches to 42.4 cm, 124 rows to 40.8 cm in 2 swatches together
	// up to 2.4 % and 0.7 % from the mean; they agree: false
	// 52 cm give or take 1.23 cm
}

func ExampleGauge_StitchesFor() {
	in := gauge.MustParseLength
	pattern, err := gauge.New(decimal.NewFromInt(28), decimal.NewFromInt(40), in("4 in"))
	if err != nil {
		fmt.Println(err)
		return
	}
	own, err := gauge.New(decimal.RequireFromString("29.5"), decimal.NewFromInt(40), in("4 in"))
	if err != nil {
		fmt.Println(err)
		return
	}
	as := own.StitchesFor(pattern, 140)
	fmt.Println(as, "stitches, so", as.Round(gauge.Even(gauge.Up)))
	// Output: 147.5 stitches, so 148
}

// Half a stitch in 40 is as far as counting goes, so count over as many as there are.
func ExampleSwatch_Gauge() {
	swatch := gauge.Swatch{
		Stitches: 40, Width: gauge.MustParseLength("18.1 cm"),
		Rows: 56, Height: gauge.MustParseLength("18.7 cm"),
	}
	g, err := swatch.Gauge()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(g.Stitches(gauge.MustParseLength("10 cm")), "stitches to 10 cm")
	_, err = gauge.Swatch{Stitches: 40, Rows: 56}.Gauge()
	fmt.Println(err)
	// Output:
	// 22.099 stitches to 10 cm
	// width 0 cm: a length above 0 of at most 1000 m, such as 10 cm
}

func ExampleRounding() {
	stitches := gauge.Whole(133).Div(2)
	for _, rule := range []gauge.Rounding{{}, gauge.Even(gauge.Nearest), gauge.SameParity(45, gauge.Down), {Multiple: 4, Plus: 2}} {
		fmt.Printf("%v, %v: %d\n", stitches, rule, stitches.Round(rule))
	}
	// Output:
	// 66.5, nearest whole number: 67
	// 66.5, nearest even number: 66
	// 66.5, down odd number: 65
	// 66.5, nearest multiple of 4 plus 2: 66
}

func ExampleGauge_Width() {
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), gauge.MustParseLength("10 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(g.Width(119).Format(gauge.Centimetre, 1), "by", g.Height(107).Format(gauge.Inch, 2))
	// Output:
	// 54.1 cm by 14.04 in
}
