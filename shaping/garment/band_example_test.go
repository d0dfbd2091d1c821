package garment_test

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
)

func ExampleBand() {
	spec := adult() // 22 stitches and 30 rows to 10 cm, a round neck 18 cm wide and 8 cm deep
	spec.Band = &garment.BandSpec{Height: gauge.MustParseLength("2.5 cm"), Repeat: 4, Plus: 2}
	set, err := garment.Pieces(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, band := range set.Bands {
		fmt.Println(band.Name, band.Rows, "rows")
		for _, strip := range band.Strips {
			fmt.Printf("%s: %d stitches on %v, %v wanted\n", strip.Name, strip.Stitches, strip.Needles, strip.Wanted)
			for _, p := range strip.Parts {
				fmt.Printf("%-7v %-5s %-8v %s\n", p.Needles, p.Piece, p.Kind, p.Phrase)
			}
		}
	}
	// Output:
	// neckband 8 rows
	// front and back: 110 stitches on L55-R55, 108.265 wanted
	// L55-L51 front straight 5 in 6 rows
	// L50-L31 front slope    13 live and 7 from the turns between them, evenly
	// L30-L17 front live     14 live, one for one
	// L16-R4  front slope    13 live and 7 from the turns between them, evenly
	// R5-R9   front straight 5 in 6 rows
	// no needles front seam     0
	// R10-R19 back  slope    7 live and 3 from the turns between them, evenly
	// R20-R45 back  live     26 live, one for one
	// R46-R55 back  slope    7 live and 3 from the turns between them, evenly
}
