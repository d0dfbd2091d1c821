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

func ExampleReadCSV() {
	bodies, err := sizes.ReadCSV(strings.NewReader("name,chest in,shoulders in,backWaist in,arm in\nM,38,14 3/4,16 1/2,22\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(bodies[0].Name, bodies[0].Chest, bodies[0].Shoulders)

	_, err = sizes.ReadCSV(strings.NewReader("name,chest cm\nM,ninety\n"))
	fmt.Println(err)
	// Output:
	// M 96.52 cm 37.465 cm
	// line 2, size M, chest "ninety": not a number with a unit: 23.5 cm, 235 mm or 9 1/4 in
}

// Bodies that are built in, from published figures.
func ExampleWomen() {
	for _, body := range sizes.Women() {
		chest, ok := body.Measurement("chest")
		fmt.Println(body.Name, chest, ok)
	}
	// Output:
	// min 69.5 cm true
	// 5th 82.42 cm true
	// median 94 cm true
	// 95th 109.4 cm true
	// max 126.6 cm true
}

// What a body and a style make together, before it is planned.
func ExampleStyle_For() {
	spec, filled, err := jersey().For(sizes.Women()[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("body", spec.Body.Width, "wide; filled in:", len(filled))
	// Output:
	// body 38.75 cm wide; filled in: 1
}
