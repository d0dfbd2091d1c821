package api_test

import (
	"fmt"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/curve"
	"example.com/walewise/gauge"
	"example.com/walewise/internal/api"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/draw"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/order"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
	"example.com/walewise/shaping/sizes"
)

// zeros has the zero value of every exported type.
var zeros = []any{
	new(curve.Drawing), new(curve.Edge), new(curve.Error), new(curve.Measures), new(curve.Phrasing), new(curve.Point), new(curve.Request), new(curve.Result), new(curve.Wording), new(curve.Wordings),
	new(gauge.Count), new(gauge.Direction), new(gauge.Error), new(gauge.Gauge), new(gauge.Length), new(gauge.ParseError), new(gauge.Part), new(gauge.Rounded), new(gauge.Rounding), new(gauge.Swatch), new(gauge.Tolerance), new(gauge.Unit),
	new(mirror.Axis),
	new(shaping.Action), new(shaping.Beat), new(shaping.Distance), new(shaping.Do), new(shaping.Ends), new(shaping.Error), new(shaping.Facing), new(shaping.Ledger), new(shaping.Method), new(shaping.Needle), new(shaping.Panel), new(shaping.Phrase), new(shaping.Place), new(shaping.Row), new(shaping.Rules), new(shaping.Schedule), new(shaping.Side), new(shaping.Spacing), new(shaping.SpacingRequest), new(shaping.Span), new(shaping.Step), new(shaping.Tree), new(shaping.Work),
	new(bed.Cloth), new(bed.Course), new(bed.Refusal), new(bed.State), new(bed.Wrap),
	new(draw.Look), new(draw.Paper), new(draw.Tiling),
	new(garment.Armhole), new(garment.BackNeck), new(garment.BackSpec), new(garment.Ball), new(garment.Band), new(garment.BandSpec), new(garment.Body), new(garment.Cap), new(garment.Change), new(garment.Check), new(garment.Checks), new(garment.Edge), new(garment.Error), new(garment.Figure), new(garment.GaugeSpec), new(garment.Heights), new(garment.Measured), new(garment.Methods), new(garment.Neck), new(garment.NeckShape), new(garment.Opening), new(garment.Optional), new(garment.Pair), new(garment.Part), new(garment.PartKind), new(garment.Piece), new(garment.Seam), new(garment.Set), new(garment.Setup), new(garment.Severity), new(garment.Shoulder), new(garment.Size), new(garment.SleeveSpec), new(garment.Spec), new(garment.Start), new(garment.StartEdge), new(garment.Strip), new(garment.Waist), new(garment.Widths), new(garment.Yarn), new(garment.YarnSpec), new(garment.YarnUse),
	new(order.Ending), new(order.Error), new(order.Outline),
	new(plan.Edge), new(plan.Piece), new(plan.Plan), new(plan.Size),
	new(sheet.Reading), new(sheet.ReadingError),
	new(sizes.Body), new(sizes.Count), new(sizes.Ease), new(sizes.Edge), new(sizes.Error), new(sizes.Filled), new(sizes.Line), new(sizes.PieceCounts), new(sizes.Range), new(sizes.Size), new(sizes.Style), new(sizes.Words),
}

// A zero value may mean nothing, and its methods may return errors, but none of them panics,
// whatever zero values it is given.
func TestZeroValuesDoNotPanic(t *testing.T) {
	for _, zero := range zeros {
		pointer := reflect.ValueOf(zero)
		for i := range pointer.NumMethod() {
			name := pointer.Elem().Type().String() + "." + pointer.Type().Method(i).Name
			t.Run(name, func(t *testing.T) { call(t, pointer.Method(i)) })
		}
	}
}

// call calls a method with zero values for its parameters, and goes through the sequence if it
// returns one.
func call(t *testing.T, method reflect.Value) {
	defer func() {
		if problem := recover(); problem != nil {
			t.Errorf("panics: %v", problem)
		}
	}()
	var args []reflect.Value
	for i := range method.Type().NumIn() {
		if in := method.Type().In(i); !method.Type().IsVariadic() || i < method.Type().NumIn()-1 {
			args = append(args, reflect.Zero(in))
		}
	}
	for _, result := range method.Call(args) {
		switch {
		case result.Type().CanSeq():
			for range result.Seq() {
			}
		case result.Type().CanSeq2():
			for range result.Seq2() {
			}
		default:
			_ = fmt.Sprint(result)
		}
	}
}

var aType = regexp.MustCompile(`^pkg (\S+), type (\w+)`)

func TestZerosAreComplete(t *testing.T) {
	lines, err := api.Lines(os.DirFS("../.."))
	if err != nil {
		t.Fatal(err)
	}
	var want, got []string
	for _, line := range lines {
		if m := aType.FindStringSubmatch(line); m != nil {
			want = append(want, m[1]+"."+m[2])
		}
	}
	for _, zero := range zeros {
		typ := reflect.TypeOf(zero).Elem()
		got = append(got, strings.TrimPrefix(typ.PkgPath(), "example.com/walewise/")+"."+typ.Name())
	}
	gone, missing := api.Compare(slices.Compact(want), got)
	if len(gone)+len(missing) > 0 {
		t.Errorf("without a zero value: %v; no types: %v", gone, missing)
	}
}

// A package variable that others could set would change what the library answers.
func TestVariablesAreErrors(t *testing.T) {
	lines, err := api.Lines(os.DirFS("../.."))
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range lines {
		if strings.Contains(line, ", var ") && !strings.Contains(line, ", var Err") {
			t.Errorf("an exported variable that is no error: %s", line)
		}
	}
}
