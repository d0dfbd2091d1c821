package gauge_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"github.com/google/go-cmp/cmp"
)

// swatchDocument returns a swatch as JSON with a piece of it replaced.
func swatchDocument(t testing.TB, old, by string) string {
	t.Helper()
	const whole = `{"stitches": 40, "width": "18.1 cm", "rows": 56, "height": "18.7 cm", "grams": "14.2", "metres": 39, "tension": "7"}`
	if !strings.Contains(whole, old) {
		t.Fatalf("%s is not in %s", old, whole)
	}
	return strings.Replace(whole, old, by, 1)
}

func TestSwatchJSON(t *testing.T) {
	full := gauge.Swatch{
		Stitches: 40, Width: length("18.1 cm"), Rows: 56, Height: length("18.7 cm"),
		Grams: number("14.2"), Metres: number("39"), Tension: "7",
	}
	for _, c := range []struct {
		why, old, by string
		change       func(*gauge.Swatch)
	}{
		{"full", "", "", func(*gauge.Swatch) {}},
		{"grams as a number, nought metres", `"14.2", "metres": 39`, `14.20, "metres": 0`, func(s *gauge.Swatch) { s.Metres = number("0") }},
		{"least", `, "grams": "14.2", "metres": 39, "tension": "7"`, "", func(s *gauge.Swatch) {
			*s = gauge.Swatch{Stitches: s.Stitches, Width: s.Width, Rows: s.Rows, Height: s.Height}
		}},
		{"line ends, inches", `"18.1 cm"`, "\n\"4 in\"\n", func(s *gauge.Swatch) { s.Width = length("4 in") }},
	} {
		want := full
		c.change(&want)
		// What it held before is not mixed in.
		got := gauge.Swatch{Stitches: 1, Grams: number("99"), Tension: "old"}
		if err := json.Unmarshal([]byte(swatchDocument(t, c.old, c.by)), &got); err != nil {
			t.Errorf("%s: %v", c.why, err)
			continue
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.why, diff)
		}
		text, err := json.Marshal(got)
		var back gauge.Swatch
		if err == nil {
			err = json.Unmarshal(text, &back)
		}
		if diff := cmp.Diff(want, back); diff != "" || err != nil {
			t.Errorf("%s: %s came back with %v (-want +got):\n%s", c.why, text, err, diff)
		}
	}
}

func TestSwatchJSONRefuses(t *testing.T) {
	const keys = "stitches, width, rows, height"
	for _, c := range []struct {
		old, by, want string
		kind          error
	}{
		{`"tension"`, `"needle"`, `needle "7": unknown key: the keys here are ` + keys + `, grams, metres, tension`, gauge.ErrSyntax},
		{`"rows"`, `"Rows"`, `Rows 56: unknown key: the keys here are ` + keys + `, grams, metres, tension`, gauge.ErrSyntax},
		{`"rows": 56`, `"rows": 56, "rows": 57`, `rows 57: the key stands twice: write it once`, gauge.ErrSyntax},
		{`"rows": 56, `, ``, `rows missing: the keys needed are ` + keys, gauge.ErrRange},
		{`"width": "18.1 cm", `, ``, `width missing: the keys needed are ` + keys, gauge.ErrRange},
		{`40`, `0`, `stitches 0: a number above 0, such as 22 or 22.5, and at most 1000000`, gauge.ErrRange},
		{`56`, `-56`, `rows -56: a number above 0, such as 22 or 22.5, and at most 1000000`, gauge.ErrRange},
		{`40`, `"40"`, `stitches "40": a whole number without quotes, such as 40`, gauge.ErrRange},
		{`40`, `40.0`, `stitches 40.0: a whole number without quotes, such as 40`, gauge.ErrRange},
		{`40`, `null`, `stitches null: a whole number without quotes, such as 40`, gauge.ErrRange},
		{`40`, `99999999999999999999`, `stitches 99999999999999999999: a whole number without quotes, such as 40`, gauge.ErrRange},
		{`40`, `4000`, `stitches 4000 over 18.1 cm: 1 to 200 to 10 cm are allowed`, gauge.ErrRange},
		{`"18.1 cm"`, `"0 cm"`, `width 0 cm: a length above 0 of at most 1000 m, such as 10 cm`, gauge.ErrRange},
		{`"18.7 cm"`, `18.7`, `height 18.7: the unit is missing: 18.7 cm, 18.7 mm or 18.7 in`, gauge.ErrUnit},
		{`"14.2"`, `"-14.2"`, `grams "-14.2": zero or more, such as "14.2"`, gauge.ErrRange},
		{`39`, `-39`, `metres -39: zero or more, such as "14.2"`, gauge.ErrRange},
		{`39`, `1e2`, `metres 1e2: zero or more, such as "14.2"`, gauge.ErrRange},
		{`39`, `null`, `metres null: zero or more, such as "14.2"`, gauge.ErrRange},
		{`"7"`, `7`, `tension 7: write a text in quotes`, gauge.ErrSyntax},
		{`"7"`, `null`, `tension null: write a text in quotes`, gauge.ErrSyntax},
	} {
		text := swatchDocument(t, c.old, c.by)
		before := gauge.Swatch{Stitches: 1, Tension: "old"}
		got := before
		err := json.Unmarshal([]byte(text), &got)
		if diff := cmp.Diff(c.want, fmt.Sprint(err)); diff != "" || !errors.Is(err, c.kind) {
			t.Errorf("%s: want %v, got %v (-want +got):\n%s", text, c.kind, err, diff)
		}
		if diff := cmp.Diff(before, got); diff != "" {
			t.Errorf("%s: changed (-before +after):\n%s", text, diff)
		}
	}
	for _, text := range []string{`null`, `[]`, `40`} {
		var s gauge.Swatch
		err := json.Unmarshal([]byte(text), &s)
		if field(err) != "swatch" || !errors.Is(err, gauge.ErrSyntax) {
			t.Errorf("%s: got %v, want ErrSyntax for %q", text, err, "swatch")
		}
	}
	// A pointer is how a swatch may be left out.
	var doc struct{ Swatch *gauge.Swatch }
	if err := json.Unmarshal([]byte(`{"Swatch":null}`), &doc); err != nil || doc.Swatch != nil {
		t.Errorf("got %v, %v", doc.Swatch, err)
	}
}
