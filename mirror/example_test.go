package mirror_test

import (
	"fmt"

	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
)

func Example() {
	right := shaping.Panel{
		Name: shaping.RightHalf, Parent: shaping.Body, FirstRow: 127, LastRow: 150,
		Needles: shaping.Span{First: shaping.R(8), Last: shaping.R(55)},
		Left:    shaping.Schedule{{Row: 127, Stitches: -4, Method: shaping.Hold}},
		Right:   shaping.Schedule{{Row: 144, Stitches: -8, Method: shaping.Hold}},
	}
	left := mirror.AxisFor(110).Panel(right)
	fmt.Println(left.Name, left.Needles)
	fmt.Println("neck", left.Right)
	fmt.Println("shoulder", left.Left)
	// Output:
	// left half L55-L8
	// neck [{127 -4 hold}]
	// shoulder [{144 -8 hold}]
}

func ExampleAxis_Needle() {
	for _, axis := range []mirror.Axis{mirror.Even, mirror.Odd} {
		fmt.Println(axis, axis.Needle(shaping.L(3)), axis.Needle(shaping.R(1)))
	}
	// Output:
	// even R3 L1
	// odd R4 R1
}

func ExampleAxis_Row() {
	row := shaping.Row{
		Row: 144, Panel: shaping.RightHalf, From: shaping.Left,
		Before: []shaping.Action{{Do: shaping.DoHold, Needles: shaping.Span{First: shaping.R(48), Last: shaping.R(55)}}},
		Knit:   shaping.Span{First: shaping.R(21), Last: shaping.R(47)},
	}
	row = mirror.Even.Row(row)
	fmt.Println(row.Row, row.Panel, "from the", row.From, row.Before, row.Knit)
	// Output: 144 left half from the right [hold L55-L48] L47-L21
}

func ExampleWork() {
	w := shaping.Work{Name: "left front", Facing: shaping.PurlSide}
	other := mirror.Work(w)
	fmt.Println(other.Name, "on the", other.Facing, "side")
	// Output: right front on the purl side
}

func ExampleView() {
	w := shaping.Work{
		Name: "left front", Facing: shaping.PurlSide,
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: 9, Needles: shaping.Span{First: shaping.L(20), Last: shaping.R(30)}}},
	}
	seen := mirror.View(w, shaping.KnitSide)
	fmt.Println(seen.Name, "on the", seen.Facing, "side:", seen.Panels[0].Needles)
	// Output: left front on the knit side: L30-R20
}
