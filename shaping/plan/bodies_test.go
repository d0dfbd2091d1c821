package plan_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sizes"
	"github.com/google/go-cmp/cmp"
)

const twoBodies = `{"format": "walewise-sizes/1", "bodies": [
 {"name": "S", "chest": "88 cm", "backWaist": "16 1/2 in", "innerArm": "430 mm"},
 {"name": "6 years", "chest": "25 in"}
]}`

func TestParseBodies(t *testing.T) {
	length := gauge.MustParseLength
	want := []sizes.Body{
		{Name: "S", Chest: length("88 cm"), BackWaist: length("41.91 cm"), InnerArm: length("43 cm")},
		{Name: "6 years", Chest: length("63.5 cm")},
	}
	got, err := plan.ReadBodies(strings.NewReader(twoBodies))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	for name, bodies := range map[string][]sizes.Body{"two": want, "men": sizes.Men(), "children": sizes.Children()} {
		t.Run(name, func(t *testing.T) { rewriteBodies(t, bodies) })
	}
}

// rewriteBodies writes bodies and reads them back.
func rewriteBodies(t testing.TB, bodies []sizes.Body) {
	t.Helper()
	var b bytes.Buffer
	if err := plan.WriteBodies(&b, bodies); err != nil {
		t.Fatal(err)
	}
	again, err := plan.ParseBodies(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(bodies, again); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
}

func TestParseBodiesRefuses(t *testing.T) {
	with := func(old, by string) string { return replaced(t, twoBodies, old, by) }
	for _, c := range []struct{ why, text, says string }{
		{"nothing", "", "document: empty"},
		{"a spec", least, `only "walewise-sizes/1" can be read here`},
		{"no bodies", `{"format": "walewise-sizes/1"}`, "bodies: the key is missing"},
		{"none", `{"format": "walewise-sizes/1", "bodies": []}`, "bodies: no bodies: give one at least"},
		{"unknown key", with(`"innerArm"`, `"inerArm"`), `bodies[0].inerArm: unknown key, did you mean "innerArm"?`},
		{"a key twice", with(`"innerArm"`, `"chest"`), "bodies[0].chest: the key stands twice"},
		{"no name", with(`"name": "S", `, ""), "bodies[0].name: the key is missing"},
		{"a number", with(`"88 cm"`, "88"), `bodies[0].chest 88: write a text with a unit: "88 cm"`},
		{"no unit", with(`"25 in"`, `"25"`), `bodies[1].chest "25": the unit is missing`},
		{"null", with(`"25 in"`, "null"), "bodies[1].chest null: null is no value"},
		{"a giant", with(`"25 in"`, `"25 cm", "arm": "4000 mm"`), "bodies[1].arm 400 cm: a length from 0, which means not measured, to 300 cm"},
		{"two of a name", with(`"6 years"`, `"s"`), "name: stands twice"},
		{"a path for a name", with(`"6 years"`, `"a/b"`), `bodies[1].name "a/b": letters, digits`},
	} {
		got, err := plan.ParseBodies([]byte(c.text))
		if !errors.Is(err, sizes.ErrBodies) || got != nil {
			t.Errorf("%s: got %v, error %v", c.why, got, err)
			continue
		}
		oneLine(t, err)
		if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: says\n%v, want\n%s", c.why, err, c.says)
		}
	}
	var b bytes.Buffer
	if err := plan.WriteBodies(&b, nil); !errors.Is(err, sizes.ErrBodies) || b.Len() > 0 {
		t.Errorf("no bodies written: error %v, %d bytes", err, b.Len())
	}
}

func FuzzParseBodies(f *testing.F) {
	for _, text := range []string{twoBodies, "", "{}", `{"format":"walewise-sizes/1","bodies":[{"name":"M","head":"0 cm"}]}`} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		bodies, err := plan.ParseBodies(text)
		if err != nil {
			oneLine(t, err)
			return
		}
		rewriteBodies(t, bodies)
	})
}
