package plan_test

import (
	"fmt"
	"log"
	"os"
	"strings"

	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
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

// From a spec to a plan that any program can read.
func Example() {
	spec, err := plan.ReadSpec(strings.NewReader(slipover))
	if err != nil {
		log.Fatal(err)
	}
	front, err := garment.Front(spec)
	if err != nil {
		log.Fatal(err)
	}
	var document strings.Builder
	if err := plan.Write(&document, plan.From(front)); err != nil {
		log.Fatal(err)
	}
	back, err := plan.Read(strings.NewReader(document.String()))
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(strings.TrimSpace(strings.Split(document.String(), "\n")[1]))
	fmt.Println(back.Pieces[0].Work.Name, len(back.Pieces[0].Work.Rows), "rows:", back.Pieces[0].Work.Ledger)
	// Output:
	// "format": "walewise-plan/1",
	// front 204 rows: 110 cast on = 110 live
}

func ExampleParseGauge() {
	g, err := plan.ParseGauge([]byte(`{"format": "walewise-gauge/1", "swatches": [
		{"stitches": 40, "width": "17.6 cm", "rows": 58, "height": "18.2 cm"},
		{"stitches": 60, "width": "26.2 cm", "rows": 80, "height": "25.3 cm"}]}`))
	if err != nil {
		log.Fatal(err)
	}
	measured, err := g.Measured()
	fmt.Println(measured, err)
	// Output:
	// 100 stitches to 43.8 cm, 138 rows to 43.5 cm in 2 swatches together <nil>
}

func ExampleWriteSpec() {
	spec, err := plan.ParseSpec([]byte(slipover))
	if err != nil {
		log.Fatal(err)
	}
	spec.Title = "A slipover"
	var document strings.Builder
	if err := plan.WriteSpec(&document, spec); err != nil {
		log.Fatal(err)
	}
	for _, line := range strings.Split(document.String(), "\n")[:9] {
		fmt.Println(line)
	}
	// Output:
	// {
	//  "format": "walewise-spec/1",
	//  "title": "A slipover",
	//  "gauge": {
	//   "stitches": "22",
	//   "rows": "30",
	//   "over": "10 cm"
	//  },
	//  "body": {
}

func ExampleParseBodies() {
	bodies, err := plan.ParseBodies([]byte(`{"format": "walewise-sizes/1", "bodies": [
		{"name": "S", "chest": "88 cm", "shoulders": "36 cm", "backWaist": "41 cm", "arm": "55 cm"},
		{"name": "M", "chest": "38 in", "shoulders": "37.5 cm", "backWaist": "42 cm", "arm": "56 cm"}]}`))
	if err != nil {
		log.Fatal(err)
	}
	for _, body := range bodies {
		fmt.Println(body.Name, body.Chest)
	}
	// Output:
	// S 88 cm
	// M 96.52 cm
}

const slipover = `{
	"format":   "walewise-spec/1",
	"gauge":    {"stitches": "22", "rows": "30", "over": "10 cm"},
	"body":     {"width": "50 cm", "length": "36 cm"},
	"armhole":  {"depth": "21 cm"},
	"neck":     {"shape": "round", "width": "7 1/4 in", "depth": "8 cm"},
	"shoulder": {"drop": "3 cm"}
}`
