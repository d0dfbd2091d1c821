package plan_test

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"example.com/walewise/shaping/plan"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// leaves returns the numbers and texts of a value that can be set, those of lists included.
func leaves(v reflect.Value) []reflect.Value {
	var list []reflect.Value
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				list = append(list, leaves(v.Field(i))...)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			list = append(list, leaves(v.Index(i))...)
		}
	case reflect.Int, reflect.Uint8, reflect.String, reflect.Bool:
		list = append(list, v)
	}
	return list
}

// Wherever a plan is spoilt, it is refused and nothing is written, or it is read back as it is.
func TestWhatIsWrittenIsRead(t *testing.T) {
	sound := tiny(t)
	rapid.Check(t, func(t *rapid.T) {
		p, err := plan.Parse(sound)
		if err != nil {
			t.Fatal(err)
		}
		phrases := `{"from": 1, "every": [2, 4], "stitches": -1, "times": 5}`
		edged, err := plan.Parse([]byte(strings.Replace(string(sound), `"edges": []`, `"edges": [`+edge(phrases)+`]`, 1)))
		if err != nil {
			t.Fatal(err)
		}
		p.Pieces[0].Edges = edged.Pieces[0].Edges
		p.Pieces[0].Sizes = []plan.Size{{Name: "width"}}
		places := leaves(reflect.ValueOf(&p).Elem())
		switch v := places[rapid.IntRange(0, len(places)-1).Draw(t, "place")]; v.Kind() {
		case reflect.Int:
			v.SetInt(rapid.SampledFrom([]int64{-5001, -11, -1, 0, 1, 2, 3, 11, 1001, 5000, 5001, 1 << 30}).Draw(t, "number"))
		case reflect.Uint8:
			v.SetUint(rapid.Uint64Range(0, 20).Draw(t, "word"))
		case reflect.String:
			v.SetString(rapid.SampledFrom([]string{"", "body", "left half", "yoke", "front", "\x00", "\xff", "a b", "ä"}).Draw(t, "text"))
		case reflect.Bool:
			v.SetBool(!v.Bool())
		}
		var text bytes.Buffer
		if err := plan.Write(&text, p); err != nil {
			if text.Len() > 0 {
				t.Fatalf("%d bytes beside the error %v", text.Len(), err)
			}
			return
		}
		again, err := plan.Parse(text.Bytes())
		if err != nil {
			t.Fatalf("written, and not read back: %v", err)
		}
		if diff := cmp.Diff(p, again, same); diff != "" {
			t.Fatalf("read back (-want +got):\n%s", diff)
		}
	})
}
