package bed_test

import (
	"errors"
	"fmt"
	"log"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
)

func ExampleKnit() {
	cloth, err := bed.Knit(worked.TinyWork())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(cloth.Rows(), "rows,", cloth.Loops(), "loops:", cloth.Ledger())
	for n, height := range cloth.Wales() {
		if n > 0 {
			fmt.Print(n, " ", height, "  ")
		}
	}
	// Output:
	// 18 rows, 176 loops: 20 cast on = 20 live
	// R1 6  R2 6  R3 6  R4 6  R5 8  R6 12  R7 12  R8 12  R9 10  R10 10
}

func ExampleKnit_refused() {
	work := worked.TinyWork()
	work.Rows[6].After = nil // the wrap after row 7
	_, err := bed.Knit(work)
	fmt.Println(err)

	work = worked.TinyWork()
	work.Rows[8].Knit.First = shaping.R(5)
	_, err = bed.Knit(work)
	var refusal *bed.Refusal
	if errors.As(err, &refusal) {
		fmt.Println(refusal.Row, refusal.Needle, errors.Is(err, bed.ErrUntrue))
	}
	// Output:
	// front, right half, row 7, needle R4: the row turns beside this newly held needle: without a wrap a hole stays
	// 9 R6 true
}

func ExampleKnitTo() {
	s, err := bed.KnitTo(worked.TinyWork(), shaping.RightHalf, 10)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("counter", s.Counter(), "carriage", s.Carriage())
	fmt.Println("in work", s.InWork(), "on hold", s.OnHold())
	// Output:
	// counter 10 carriage right
	// in work [R6-R8] on hold [L10-R5 R9-R10]
}

// Two rows on four needles, written by hand and knitted.
func Example() {
	all := shaping.Centred(4)
	work := shaping.Work{
		Name: shaping.Front, Place: shaping.Bed, Facing: shaping.PurlSide,
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: 2, Needles: all}},
		Rows: []shaping.Row{
			{Row: 1, Panel: shaping.Body, From: shaping.Right, Knit: all, Before: []shaping.Action{{Do: shaping.DoCastOn, Needles: all}}},
			{Row: 2, Panel: shaping.Body, From: shaping.Left, Knit: all, After: []shaping.Action{{Do: shaping.DoBindOff, Needles: all}}},
		},
		Ledger: shaping.Ledger{CastOn: 4, BoundOff: 4},
	}
	cloth, err := bed.Knit(work)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(cloth.Loops(), "loops:", cloth.Ledger())

	work.Rows[1].From = shaping.Right // where the yarn is not
	_, err = bed.Knit(work)
	fmt.Println(err)
	// Output:
	// 8 loops: 4 cast on = 4 bound off + 0 live
	// front, body, row 2: the row is said to start at the right, the carriage stands at the left
}
