package shaping_test

import (
	"errors"
	"fmt"
	"log"

	"example.com/walewise/shaping"
)

func Example() {
	// Holding at the neck of the half on the right, whose first row starts at the
	// right: at rows 1, 3, 5 ...
	rules := shaping.RulesFor(shaping.Hold, shaping.Left, shaping.Right, shaping.Bed)
	fmt.Println("first step at row", rules.FirstRow(), "then every", rules.Every)

	groups, err := shaping.ShoulderGroups(35, 6)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("shoulder from the tip", groups)
	// Output:
	// first step at row 1 then every 2
	// shoulder from the tip [8 9 9 9]
}

func ExampleCentred() {
	for _, stitches := range []int{20, 21} {
		s := shaping.Centred(stitches)
		fmt.Println(s, "has", s.Len())
	}
	// Output:
	// L10-R10 has 20
	// L10-R11 has 21
}

func ExampleSpan_Moved() {
	half := shaping.Span{First: shaping.R(8), Last: shaping.R(55)}
	fmt.Println(half.Moved(shaping.Left, -4)) // 4 go at the neck
	fmt.Println(half.Moved(shaping.Right, 2)) // 2 come at the side
	fmt.Println(half.Moved(shaping.Left, -48))
	// Output:
	// R12-R55
	// R8-R57
	// no needles
}

func ExampleShoulderGroups() {
	groups, err := shaping.ShoulderGroups(16, 4)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(groups)

	_, err = shaping.ShoulderGroups(16, 5)
	fmt.Println(err)
	// Output:
	// [5 5 6]
	// shoulder drop in rows 5: 16 stitches slope over an even number of rows from 0 to 28, the nearest are 4 and 6
}

func ExampleSchedule_Phrases() {
	neck := shaping.Schedule{
		{Row: 127, Stitches: -4, Method: shaping.Hold},
		{Row: 129, Stitches: -1, Method: shaping.Hold},
		{Row: 131, Stitches: -1, Method: shaping.Hold},
		{Row: 135, Stitches: -1, Method: shaping.Hold},
	}
	for _, run := range neck.Phrases() {
		fmt.Printf("from row %d: %d stitches every %d rows, %d times\n", run.From, -run.Stitches, run.Every, run.Times)
	}
	// Output:
	// from row 127: 4 stitches every 0 rows, 1 times
	// from row 129: 1 stitches every 2 rows, 2 times
	// from row 135: 1 stitches every 4 rows, 1 times
}

func ExampleEvenSpacing() {
	for _, ends := range []shaping.Ends{shaping.PlainAfter, shaping.LastShaped, shaping.FirstAndLastShaped} {
		spacing, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: 20, Times: 4, Ends: ends})
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%v: rows %v, then %d plain\n", ends, spacing.Rows(), spacing.Plain)
	}
	// Output:
	// plain rows after the last shaping: rows [4 8 12 16], then 4 plain
	// last row shaped: rows [5 10 15 20], then 0 plain
	// first and last row shaped: rows [1 7 13 20], then 0 plain
}

func ExampleEvenSpacing_secondRows() {
	spacing, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: 62, Times: 14, Ends: shaping.LastShaped, EverySecondRow: true})
	if err != nil {
		log.Fatal(err)
	}
	for _, d := range spacing.Distances {
		fmt.Printf("every %d rows, %d times\n", d.Every, d.Times)
	}
	// Output:
	// every 4 rows, 11 times
	// every 6 rows, 3 times
}

func ExampleEvenSpacing_impossible() {
	_, err := shaping.EvenSpacing(shaping.SpacingRequest{Rows: 21, Times: 12, Ends: shaping.LastShaped, EverySecondRow: true})
	fmt.Println(err)
	_, err = shaping.EvenSpacing(shaping.SpacingRequest{Rows: 10, Times: 12})
	fmt.Println(err)
	// Output:
	// even spacing, last row shaped, 12 times in 21 rows on every 2nd row: nearest that can be worked: 12 times in 24 rows on every 2nd row
	// even spacing, plain rows after the last shaping, 12 times in 10 rows: nearest that can be worked: 9 times in 10 rows, or 12 times in 13 rows
}

func ExampleAlongRow() {
	// Source: Ann Budd, handout on placing increases or decreases evenly, 2010.
	groups, err := shaping.AlongRow(124, 14)
	if err != nil {
		log.Fatal(err)
	}
	for _, g := range groups {
		fmt.Printf("after %d stitches, %d times\n", g.Every, g.Times)
	}
	// Output:
	// after 8 stitches, 2 times
	// after 9 stitches, 12 times
}

func ExampleLedger_String() {
	fmt.Println(shaping.Ledger{CastOn: 110, Decreased: 12, Live: 98})
	fmt.Println(shaping.Ledger{CastOn: 110, Increased: 2, BoundOff: 12, Live: 100})
	// Output:
	// 110 cast on = 12 decreased + 98 live
	// 110 cast on + 2 increased = 12 bound off + 100 live
}

func ExampleTree_Ledger() {
	body := shaping.Centred(20)
	neck := shaping.Schedule{{Row: 8, Stitches: -2, Method: shaping.BindOff}}
	tree := shaping.Tree{
		{Name: shaping.Body, FirstRow: 1, LastRow: 6, Needles: body},
		{Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 7, LastRow: 12, Needles: body.Edge(shaping.Right, 8), Left: neck},
		{Name: shaping.LeftHalf, Parent: shaping.Body, FirstRow: 7, LastRow: 12, Needles: body.Edge(shaping.Left, 8), Right: neck},
	}
	ledger, err := tree.Ledger()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(ledger)
	// Output: 20 cast on = 4 bound off + 16 live
}

// The right half of a front, whose first row starts at the right: its neck is its left edge.
func ExampleRulesFor() {
	for _, m := range []shaping.Method{shaping.Hold, shaping.BindOff, shaping.Fashioned} {
		rules := shaping.RulesFor(m, shaping.Left, shaping.Right, shaping.Bed)
		fmt.Printf("%v: from row %d, every %d, %d apart; most at once %d\n", m, rules.FirstRow(), rules.Every, rules.Apart, rules.Most)
	}
	// Output:
	// hold: from row 1, every 2, 2 apart; most at once 0
	// bindOff: from row 2, every 2, 2 apart; most at once 0
	// fashioned: from row 1, every 1, 2 apart; most at once 1
}

func ExampleExpand() {
	neck := shaping.Expand(
		shaping.Phrase{From: 127, Every: 2, Stitches: -3, Times: 2},
		shaping.Phrase{From: 133, Every: 4, Stitches: -1, Times: 3},
	)
	fmt.Println(neck.Words())
	fmt.Println(-neck.Total(), "stitches, the last at row", neck[len(neck)-1].Row)
	// Output:
	// row 127: 3 stitches every 2nd row, 2 times; 1 stitch every 4th row, 3 times
	// 9 stitches, the last at row 141
}

func ExampleParseNeedle() {
	n, err := shaping.ParseNeedle("L2")
	fmt.Println(n, n.Toward(shaping.Right, 2), err) // there is no needle 0
	_, err = shaping.ParseNeedle("L0")
	fmt.Println(errors.Is(err, shaping.ErrRange))
	// Output:
	// L2 R1 <nil>
	// true
}

// Each panel accounts for its own stitches.
func ExamplePanel() {
	half := shaping.Panel{
		Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 127, LastRow: 150,
		Needles: shaping.Span{First: shaping.R(8), Last: shaping.R(55)},
		Left:    shaping.Schedule{{Row: 127, Stitches: -4, Method: shaping.Hold}, {Row: 129, Stitches: -3, Method: shaping.Hold}},
	}
	fmt.Println(half.Rows(), "rows, in row 130 on", half.InWork(130), half.Validate())
	half.Left[1].Row = 151
	fmt.Println(half.Validate())
	// Output:
	// 24 rows, in row 130 on R15-R55 <nil>
	// panel right half, left edge step at row 151: the panel has rows 127 to 150
}
