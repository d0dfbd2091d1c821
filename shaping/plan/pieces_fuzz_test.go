package plan_test

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"regexp"
	"testing"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

// aValue is a text or a number in a spec, after its key.
var aValue = regexp.MustCompile(`("\s*:\s*)("[^"]*"|[0-9.]+)`)

// Whatever stands in two places of a spec, it is refused in one line, or the pieces are knitted
// and their plan is written.
func FuzzPieces(f *testing.F) {
	var specs [][]byte
	for _, name := range []string{"frontpiece/demo", "frontpiece/vee-in-hand", "frontpiece/drawn-neck", "pullover/demo", "cardigan/demo", "cardigan/round-in-hand"} {
		text, err := os.ReadFile("../../examples/" + name + ".json")
		if err != nil {
			f.Fatal(err)
		}
		specs = append(specs, text)
	}
	for i, value := range []string{"0 cm", "1 mm", "99 cm", "23 1/4 in", "1", "1000000", "vee", "path", "fashioned", "bindOff", "hand", "set-in", "M 0 0 L 60 80"} {
		f.Add(uint8(i), uint8(3*i), value, uint8(7*i), "12 cm")
	}
	f.Fuzz(func(t *testing.T, base, first uint8, one string, second uint8, other string) {
		text := specs[int(base)%len(specs)]
		for at, value := range map[uint8]string{first: one, second: other} {
			written, err := json.Marshal(value)
			if err != nil {
				t.Fatal(err)
			}
			places := aValue.FindAllSubmatchIndex(text, -1)
			place := places[int(at)%len(places)]
			if text[place[4]] != '"' { // a number stays one
				written = []byte(value)
			}
			text = append(append(append([]byte{}, text[:place[4]]...), written...), text[place[5]:]...)
		}
		spec, err := plan.ParseSpec(text)
		if err != nil {
			oneLine(t, err)
			return
		}
		set, err := garment.Pieces(spec)
		if err != nil {
			oneLine(t, err)
			if _, ok := errors.AsType[*garment.Error](err); !ok {
				t.Errorf("%T is not a *garment.Error: %v", err, err)
			}
			return
		}
		if err := plan.Write(io.Discard, plan.From(set.Pieces...)); err != nil {
			t.Errorf("its plan is not written: %v", err)
		}
	})
}
