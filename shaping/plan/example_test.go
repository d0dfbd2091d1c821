package plan_test

import (
	"fmt"
	"log"
	"os"
	"strings"

	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/plan"
)

// A spec needs few keys.
func ExampleReadSpec() {
	spec, err := plan.ReadSpec(strings.NewReader(`{
		"format":   "walewise-spec/1",
		"gauge":    {"stitches": "22", "rows": "30", "over": "10 cm"},
		"body":     {"width": "50 cm", "length": "36 cm"},
		"armhole":  {"depth": "21 cm"},
		"neck":     {"shape": "round", "width": "7 1/4 in", "depth": "8 cm"},
		"shoulder": {"drop": "3 cm"}
	}`))
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(spec.Neck.Shape, spec.Neck.Width, spec.Gauge)
	// Output: round 18.415 cm 22 stitches and 30 rows to 10 cm
}

// An error names the key, what was written, and what to write instead.
func ExampleParseSpec_error() {
	_, err := plan.ParseSpec([]byte(`{
		"format":   "walewise-spec/1",
		"gauge":    {"stitches": "22", "rows": "30", "over": "10 cm"},
		"body":     {"width": "50 cm", "length": "36 cm"},
		"armhole":  {"depth": "21 cm"},
		"neck":     {"shape": "round", "width": "23,5 cm", "depth": "8 cm"},
		"shoulder": {"drop": "3 cm"}
	}`))
	fmt.Println(err)
	// Output: neck.width "23,5 cm": write the decimal point as ".": 23.5 cm
}

// A plan from anywhere is read, then knitted by the judge.
func ExampleRead() {
	file, err := os.Open("../../testdata/plan-tiny.json")
	if err != nil {
		log.Fatal(err)
	}
	defer file.Close()
	p, err := plan.Read(file)
	if err != nil {
		fmt.Println(err)
		return
	}
	cloth, err := bed.Knit(p.Pieces[0].Work)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Title)
	fmt.Println(cloth.Ledger())
	// Output:
	// A very small front, to show the form
	// 20 cast on = 20 live
}
