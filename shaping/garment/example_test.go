package garment_test

import (
	"fmt"
	"log"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

func ExampleFront() {
	cm := gauge.MustParseLength
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), cm("10 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	spec := garment.Spec{
		Gauge:    g,
		Seam:     garment.Seam{Stitches: 1},
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("21 cm"), Inset: cm("6 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
	}
	piece, err := garment.Front(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range piece.Sizes {
		fmt.Printf("%-9s %3d %-8s %s\n", s.Name, s.Count, s.Counted, s.Knitted.Format(gauge.Centimetre, 1))
	}
	fmt.Println(piece.Cloth.Ledger())

	spec.Neck.Width = cm("45 cm")
	_, err = garment.Front(spec)
	fmt.Println(err)
	// Output:
	// width     110 stitches 50.0 cm
	// length    107 rows     35.7 cm
	// armhole    63 rows     21.0 cm
	// neckWidth  40 stitches 18.2 cm
	// neckDepth  24 rows     8.0 cm
	// shoulder   22 stitches 10.0 cm
	// drop       10 rows     3.3 cm
	// height    180 rows     60.0 cm
	// inset      13 stitches 5.9 cm
	// 112 cast on = 6 decreased + 20 bound off + 86 live
	// neck.width 45 cm: wider than the body leaves: at most 32.0 cm
}

func ExampleSpec_Regauged() {
	cm := gauge.MustParseLength
	spec := garment.Spec{
		Swatch:   &gauge.Swatch{Stitches: 40, Width: cm("16.5 cm"), Rows: 58, Height: cm("19.3 cm")},
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("21 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
	}
	before, err := garment.Pieces(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	// Washed, it is wider and lower.
	washed := gauge.Swatch{Stitches: 40, Width: cm("17.6 cm"), Rows: 58, Height: cm("18.2 cm"), Grams: decimal.RequireFromString("10.4")}
	after, err := garment.Pieces(spec.Regauged(garment.GaugeSpec{Swatch: &washed}))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range garment.Compare(before, after) {
		if c.Piece == "front" && (c.What == "castOn" || c.What == "width" || c.What == "length") {
			fmt.Printf("%s: %d, now %d %s; moves by %s\n", c.What, c.Before.Count, c.After.Count, c.After.Counted, c.Moves().Format(gauge.Centimetre, 2))
		}
	}
	if yarn, ok := after.Yarn(); ok {
		fmt.Printf("%s g of yarn, with %v %% more %s g\n", yarn.Total.Grams.StringFixed(1), yarn.Margin, yarn.WithMargin.Grams.StringFixed(1))
	}
	// Output:
	// castOn: 121, now 114 stitches; moves by 0.00 cm
	// width: 121, now 114 stitches; moves by 0.25 cm
	// length: 107, now 114 rows; moves by 0.17 cm
	// 186.5 g of yarn, with 10 % more 205.2 g
}

func ExampleFronts() {
	cm := gauge.MustParseLength
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), cm("10 cm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	right, left, err := garment.Fronts(garment.Spec{
		Gauge:    g,
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("21 cm"), Inset: cm("6 cm")},
		Neck:     garment.Neck{Shape: garment.VeeNeck, Width: cm("18 cm"), Depth: cm("24 cm")},
		Opening:  &garment.Opening{Overlap: garment.Exactly(cm("3 cm"))},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
		Methods:  garment.Methods{Neck: garment.By(shaping.Fashioned)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, front := range []garment.Piece{right, left} {
		w := front.Widths
		fmt.Printf("%s: %d stitches, neck %d, shoulder %d; outer edge at the %v, row 1 from the %v\n",
			front.Name(), w.Body, w.Neck, w.Shoulder, front.Outer(), front.Work.Rows[0].From)
	}
	fmt.Println("overlap:", right.Widths.Overlap)
	// Output:
	// right front: 52 stitches, neck 17, shoulder 22; outer edge at the right, row 1 from the right
	// left front: 52 stitches, neck 17, shoulder 22; outer edge at the left, row 1 from the left
	// overlap: 6
}

// After 60 rows the piece is measured, and its rows are higher than those of the swatch.
func ExampleGoOn() {
	cm := gauge.MustParseLength
	counted := func(rows int64) gauge.Gauge {
		g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(rows), cm("10 cm"))
		if err != nil {
			log.Fatal(err)
		}
		return g
	}
	spec := garment.Spec{
		Gauge:    counted(30),
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("21 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
	}
	front, err := garment.Front(spec)
	if err != nil {
		log.Fatal(err)
	}
	spec.Gauge = counted(28)
	rest, err := garment.GoOn(front, 60, spec)
	if err != nil {
		log.Fatal(err)
	}
	was, is := front.Heights, rest.Heights
	fmt.Printf("underarm at row %d instead of %d, neck from row %d instead of %d\n", is.Underarm, was.Underarm, is.NeckStart()+1, was.NeckStart()+1)
	fmt.Println(rest.Warnings[0])
	// Output:
	// underarm at row 101 instead of 107, neck from row 147 instead of 157
	// Rows 1 to 60 are knitted as they were planned before; the rest is planned anew.
}

// All pieces of a slipover, and the checks between them.
func Example() {
	cm := gauge.MustParseLength
	set, err := garment.Pieces(garment.Spec{
		Swatch:   &gauge.Swatch{Stitches: 40, Width: cm("18.1 cm"), Rows: 56, Height: cm("18.7 cm")},
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("21 cm"), Inset: cm("6 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
		Head:     cm("58 cm"),
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, piece := range set.Pieces {
		fmt.Println(piece.Name(), piece.Cloth.Ledger())
	}
	for _, check := range set.Checks {
		if check.Name == "neck" {
			fmt.Println(check.Says, check.Passed)
		}
	}
	// Output:
	// front 110 cast on = 6 decreased + 20 bound off + 84 live
	// back 110 cast on = 6 decreased + 20 bound off + 84 live
	// Neck opening: 49.13 cm round, stretched by 25 % 61.41 cm, the head 58.00 cm: 3.41 cm more. true
}

func ExampleBack() {
	back, err := garment.Back(adult()) // 22 stitches and 30 rows to 10 cm
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("neck of", back.Heights.Neck, "rows, the middle of", back.Widths.Flat, "stitches from row", back.Heights.NeckStart()+1)
	// Output:
	// neck of 8 rows, the middle of 26 stitches from row 173
}

// The height of a set-in cap follows from the armhole.
func ExampleSleeve() {
	spec := adult()
	cm := gauge.MustParseLength
	spec.Armhole.Inset = cm("6 cm")
	spec.Sleeve = &garment.SleeveSpec{Length: cm("45 cm"), Cuff: cm("22 cm"), Top: cm("36 cm"), Cap: garment.SetInCap, Ease: cm("1 cm")}
	sleeve, err := garment.Sleeve(spec, shaping.Right)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s: %d stitches at the cuff, %d at the underarm, a cap of %d rows, %s along its edge\n", sleeve.Name(),
		sleeve.Widths.CastOn, sleeve.Widths.Body, sleeve.Heights.Cap, sleeve.CapLength().Format(gauge.Centimetre, 1))
	// Output:
	// right sleeve: 51 stitches at the cuff, 81 at the underarm, a cap of 42 rows, 44.8 cm along its edge
}
