package order_test

import (
	"fmt"
	"log"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

func ExampleArrange() {
	work, err := order.Arrange(order.Outline{
		Name: "front", Place: shaping.Bed, Carriage: shaping.Right, Panels: worked.TinyFront(),
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range work.Rows {
		if row.Panel == shaping.RightHalf {
			fmt.Println(row.Row, row.From, row.Before, row.Knit, row.After)
		}
	}
	fmt.Println(work.Ledger)
	// Output:
	// 7 right [hold L2-R2 hold L10-L3 hold R3-R4] R5-R10 [wrap R4]
	// 8 left [] R5-R10 []
	// 9 right [hold R5] R6-R10 [wrap R5]
	// 10 left [hold R9-R10] R6-R8 [wrap R9]
	// 11 right [] R6-R8 []
	// 12 left [return R9-R10] R6-R10 [waste R6-R10]
	// 20 cast on = 20 live
}

func ExampleArrange_wrongRow() {
	panels := worked.TinyFront()
	panels[1].Left = shaping.Schedule{{Row: 8, Stitches: -2, Method: shaping.Hold}}
	_, err := order.Arrange(order.Outline{
		Name: "front", Place: shaping.Bed, Carriage: shaping.Right, Panels: panels,
	})
	fmt.Println(err)
	// Output:
	// order: front, right half, row 8, left edge: the row starts here: stitches are held where a row ends, at row 7 or 9
}

// A strip of 20 stitches with a slope of 6 on its right: the planner says what is done at
// each row, and the judge knits it.
func Example() {
	work, err := order.Arrange(order.Outline{
		Name: shaping.Front, Place: shaping.Bed, Carriage: shaping.Right, Top: order.BoundOff,
		Panels: shaping.Tree{{
			Name: shaping.Body, FirstRow: 1, LastRow: 8, Needles: shaping.Centred(20),
			Right: shaping.Schedule{
				{Row: 3, Stitches: -4, Method: shaping.BindOff},
				{Row: 5, Stitches: -2, Method: shaping.BindOff},
			},
		}},
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range work.Rows {
		if len(row.Before)+len(row.After) > 0 {
			fmt.Println(row.Row, row.From, row.Before, row.Knit, row.After)
		}
	}
	cloth, err := bed.Knit(work)
	fmt.Println(cloth.Ledger(), err)
	// Output:
	// 1 right [castOn L10-R10] L10-R10 []
	// 3 right [bindOff R7-R10] L10-R6 []
	// 5 right [bindOff R5-R6] L10-R4 []
	// 8 left [] L10-R4 [bindOff L10-R4]
	// 20 cast on = 20 bound off + 0 live <nil>
}
