package sheet_test

import (
	"fmt"
	"log"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// How things stand in the middle of the first half.
func ExampleWriteFrom() {
	cm := gauge.MustParseLength
	g, err := gauge.New(decimal.NewFromInt(20), decimal.NewFromInt(28), cm("10 cm"))
	if err != nil {
		log.Fatal(err)
	}
	front, err := garment.Front(garment.Spec{
		Gauge:    g,
		Body:     garment.Body{Width: cm("50 cm"), Length: cm("36 cm")},
		Armhole:  garment.Armhole{Depth: cm("20 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm("18 cm"), Depth: cm("8 cm")},
		Shoulder: garment.Shoulder{Drop: cm("3 cm")},
	})
	if err != nil {
		log.Fatal(err)
	}
	var text strings.Builder
	if err := sheet.WriteFrom(&text, front, sheet.Reading{Panel: shaping.LeftHalf, Counter: 150}); err != nil {
		log.Fatal(err)
	}
	_, here, _ := strings.Cut(text.String(), "WHERE YOU ARE\n")
	here, _, _ = strings.Cut(here, "\n\n")
	fmt.Println(here)
	// Output:
	// Counter 150, carriage at the right. You have just knitted row 150, from left to right,
	//   and wrapped L15.
	//   This is the left half: the neck is at its right end, the outer edge at its left end;
	//   it becomes the wearer's left shoulder.
	//   In work: L50-L16, 35 stitches.
	//   On hold: the neck of the left half L15-L7 (9); the middle L6-R6 (12); the right half
	//   R7-R50 (44).
	//   The carriage is set to hold.
	//   Check: 35 in work + 65 on hold (L15-R50) = 100 cast on.
}

// From a spec to instructions: the beginning of those of a slipover.
func Example() {
	spec, err := plan.ReadSpec(strings.NewReader(slipoverSpec))
	if err != nil {
		log.Fatal(err)
	}
	slipover, err := garment.Pieces(spec)
	if err != nil {
		log.Fatal(err)
	}
	var text strings.Builder
	if err := sheet.WriteSet(&text, slipover); err != nil {
		log.Fatal(err)
	}
	begins, _, _ := strings.Cut(text.String(), "\n\nCHECKS")
	fmt.Println(begins)
	// Output:
	// A slipover
	//
	// PIECES
	//   In this order. Rows high are counted up to the top; rows knitted count both halves.
	//   Needles are those in work where the piece is widest. Sizes are finished, where it is
	//   widest and up to its top.
	//
	//                           rows    rows
	//                  cast on  high knitted   needles                  width x height
	//   front              110   180     204   55 left, 55 right: 110   49.8 cm x 60.1 cm
	//   back               110   180     188   55 left, 55 right: 110   49.8 cm x 60.1 cm
	//
	//   Front and back together, finished: round the underarms 99.6 cm.
	//   Gauge: 40 stitches to 18.1 cm, 56 rows to 18.7 cm; over 10 cm 22.1 stitches and 29.9
	//   rows.
}

// The rows for a spreadsheet: the first and the last.
func ExampleWriteTable() {
	var table strings.Builder
	if err := sheet.WriteTable(&table, worked.TinyWork()); err != nil {
		log.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(table.String()), "\n")
	fmt.Println(lines[0])
	fmt.Println(lines[len(lines)-1])
	// Output:
	// piece,row,counter before,counter after,panel,starts at,fabric side,actions before,needles knitted,stitches in work,actions after
	// front,12,11,12,left half,right,,return L10-L9,L10-L6,5,waste L10-L6; waste L5-R5
}

// The swatch was counted before it was washed.
func ExampleWriteChanges() {
	spec, err := plan.ParseSpec([]byte(slipoverSpec))
	if err != nil {
		log.Fatal(err)
	}
	before, err := garment.Pieces(spec)
	if err != nil {
		log.Fatal(err)
	}
	washed := gauge.Swatch{Stitches: 40, Width: gauge.MustParseLength("19 cm"), Rows: 56, Height: gauge.MustParseLength("18 cm")}
	after, err := garment.Pieces(spec.Regauged(garment.GaugeSpec{Swatch: &washed}))
	if err != nil {
		log.Fatal(err)
	}
	var text strings.Builder
	if err := sheet.WriteChanges(&text, before, after); err != nil {
		log.Fatal(err)
	}
	_, front, _ := strings.Cut(text.String(), "FRONT\n")
	front, _, _ = strings.Cut(front, "\n\n")
	fmt.Println("FRONT\n" + front)
	// Output:
	// FRONT
	//                          before     now          size before    size now   moves by
	//   cast on                   110     105 stitches
	//   at its widest             110     105 stitches
	//   knitted, both halves      204     211 rows
	//   width                     110     105 stitches    49.78 cm    49.88 cm   +0.10 cm
	//   cast on to underarm       109     112 rows        36.40 cm    36.00 cm   -0.40 cm
	//   armhole depth              63      65 rows        21.04 cm    20.89 cm   -0.15 cm
	//   neck width                 40      37 stitches    18.10 cm    17.58 cm   -0.52 cm
	//   neck depth                 24      24 rows         8.01 cm     7.71 cm   -0.30 cm
	//   each shoulder              22      21 stitches     9.96 cm     9.98 cm   +0.02 cm
	//   shoulder drop               8      10 rows         2.67 cm     3.21 cm   +0.54 cm
	//   whole height              180     187 rows        60.11 cm    60.11 cm    0.00 cm
	//   armhole inset, each        13      13 stitches     5.88 cm     6.18 cm   +0.30 cm
	//   yarn                    17046   16838 loops
}

const slipoverSpec = `{
	"format":   "walewise-spec/1",
	"title":    "A slipover",
	"swatch":   {"stitches": 40, "width": "18.1 cm", "rows": 56, "height": "18.7 cm"},
	"body":     {"width": "50 cm", "length": "36 cm"},
	"armhole":  {"depth": "21 cm", "inset": "6 cm"},
	"neck":     {"shape": "round", "width": "18 cm", "depth": "8 cm"},
	"shoulder": {"drop": "3 cm"}
}`
