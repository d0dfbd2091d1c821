package gauge_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/walewise/gauge"
	"github.com/google/go-cmp/cmp"
)

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"23.5 cm", "235mm", "9 1/4 in", "-3/4 in", "23,5 cm", "23.5", "1/3 in", "1e9 cm", "NaN in", "\u2212" + "5 cm", "", "100000 cm", "0.00000000000000000000000000000000001 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := gauge.ParseLength(s)
		if err != nil {
			if !l.IsZero() || !errors.Is(err, gauge.ErrSyntax) && !errors.Is(err, gauge.ErrUnit) && !errors.Is(err, gauge.ErrRange) {
				t.Fatalf("%q: got %v, %v", s, l, err)
			}
			return
		}
		text := l.String()
		back, err := gauge.ParseLength(text)
		if err != nil || !back.Equal(l) || back.String() != text {
			t.Fatalf("%q: %s came back as %v, %v", s, text, back, err)
		}
	})
}

func FuzzGaugeJSON(f *testing.F) {
	for _, s := range []string{
		`{"stitches":"22","rows":"30","over":"10 cm"}`, `{"stitches":22.5,"rows":30,"over":"4 in"}`, `null`,
		`{"stitches":1e9999,"rows":30,"over":"10 cm"}`, `{"stitches":"1/2","rows":"3","over":"1 in"}`, `{`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		before := newGauge("11", "12", "10 cm")
		g := before
		if err := json.Unmarshal(text, &g); err != nil {
			if !g.Equal(before) {
				t.Fatalf("%q: %v, but changed to %v", text, err, g)
			}
			return
		}
		made, err := json.Marshal(g)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		var back gauge.Gauge
		if err := json.Unmarshal(made, &back); err != nil || !back.Equal(g) {
			t.Fatalf("%q: %s came back as %v, %v", text, made, back, err)
		}
	})
}

func FuzzSwatchJSON(f *testing.F) {
	for _, s := range []string{
		`{"stitches":40,"width":"18 cm","rows":56,"height":"7 1/2 in"}`,
		`{"stitches":40,"width":"18 cm","rows":56,"height":"18 cm","grams":14.2,"metres":"39","tension":"7"}`,
		`{"stitches":40,"stitches":41}`, `{"grams":-1}`, `null`, `[]`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		before := gauge.Swatch{Stitches: 1, Tension: "before"}
		s := before
		if err := json.Unmarshal(text, &s); err != nil {
			if diff := cmp.Diff(before, s); diff != "" {
				t.Fatalf("%q: %v, but changed:\n%s", text, err, diff)
			}
			return
		}
		made, err := json.Marshal(s)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		var back gauge.Swatch
		err = json.Unmarshal(made, &back)
		if diff := cmp.Diff(s, back); diff != "" || err != nil {
			t.Fatalf("%q: %s came back with %v:\n%s", text, made, err, diff)
		}
	})
}
