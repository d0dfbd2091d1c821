package sizes_test

import (
	"fmt"
	"strings"

	"example.com/walewise/shaping/sizes"
)

func Example() {
	bodies, err := sizes.ReadCSV(strings.NewReader(`name,chest cm,shoulders cm,backWaist cm,arm cm
S,88,36,41,55
M,96,37.5,42,56
L,104,39,43,57
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := sizes.Plan(jersey(), bodies)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, piece := range r.Counts()[:1] {
		for _, count := range piece.Counts[:3] {
			fmt.Println(piece.Name, count.Name, count.Values, count.Counted)
		}
	}
	for _, f := range r.Sizes[0].Filled[:1] {
		fmt.Println(f.Key, "not measured:", f.Gives, f.Length, "is", f.Rule)
	}
	// Output:
	// front cast on [108 116 125] stitches
	// front band [15 15 15] rows
	// front to the underarm [106 106 106] rows
	// upperArm not measured: width at the upper arm 31.68 cm is 33 % of what the garment is round the body
}
