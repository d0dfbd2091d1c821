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

func TestGaugeJSONAccepts(t *testing.T) {
	for _, c := range []struct{ text, want, why string }{
		{`{"stitches":"22","rows":"30","over":"10 cm"}`, `{"stitches":"22","rows":"30","over":"10 cm"}`, "strings"},
		{`{"stitches":22,"rows":30.5,"over":"4 in"}`, `{"stitches":"22","rows":"30.5","over":"10.16 cm"}`, "numbers"},
		{` { "over" : "100 mm", "rows" : "30.50", "stitches" : 22.0 } `, `{"stitches":"22","rows":"30.5","over":"10 cm"}`, "order and zeros"},
		{`{"stitches":"22 1/2","rows":"3/4","over":"1 in"}`, `{"stitches":"22.5","rows":"0.75","over":"2.54 cm"}`, "fractions"},
		{`null`, `null`, "no gauge"},
	} {
		g := newGauge("11", "12", "10 cm")
		if err := json.Unmarshal([]byte(c.text), &g); err != nil {
			t.Errorf("%s (%s): %v", c.text, c.why, err)
			continue
		}
		text, err := json.Marshal(g)
		if err != nil || string(text) != c.want {
			t.Errorf("%s (%s): got %s, %v; want %s", c.text, c.why, text, err, c.want)
		}
		var back gauge.Gauge
		if err := json.Unmarshal(text, &back); err != nil || !back.Equal(g) {
			t.Errorf("%s (%s): came back as %v, %v", c.text, c.why, back, err)
		}
	}
}

func TestGaugeJSONRefuses(t *testing.T) {
	for _, c := range []struct {
		text, field string
		kind        error // nil for JSON that is broken
		why         string
	}{
		{`{"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "missing"},
		{`{"stitches":22,"over":"10 cm"}`, "rows", gauge.ErrRange, "missing"},
		{`{"stitches":22,"rows":30}`, "over", gauge.ErrRange, "missing"},
		{`{}`, "stitches", gauge.ErrRange, "missing"},
		{`{"stitches":"","rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "empty"},
		{`{"stitches":null,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "null"},
		{`{"stitches":22,"rows":30,"over":null}`, "over", gauge.ErrSyntax, "null"},
		{`{"stitches":0,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "zero"},
		{`{"stitches":22,"rows":"0.0","over":"10 cm"}`, "rows", gauge.ErrRange, "zero"},
		{`{"stitches":22,"rows":30,"over":"0 cm"}`, "over", gauge.ErrRange, "zero"},
		{`{"stitches":-22,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "negative"},
		{`{"stitches":22,"rows":"-30","over":"10 cm"}`, "rows", gauge.ErrRange, "negative"},
		{`{"stitches":22,"rows":30,"over":"-10 cm"}`, "over", gauge.ErrRange, "negative"},
		{`{"stitches":1e9999,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "exponent"},
		{`{"stitches":1e999999999999,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "exponent"},
		{`{"stitches":22,"rows":1e-999999999,"over":"10 cm"}`, "rows", gauge.ErrRange, "exponent"},
		{`{"stitches":2.2e1,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "exponent"},
		{`{"stitches":"1e999999999","rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "exponent in a string"},
		{`{"stitches":` + strings.Repeat("9", 100_000) + `,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "long"},
		{`{"stitches":"NaN","rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "no number"},
		{`{"stitches":"1/3","rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "no exact decimal"},
		{`{"stitches":"22,5","rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "decimal comma"},
		{`{"stitches":[22],"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "a list"},
		{`{"stitches":true,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "a truth value"},
		{`{"stitches":201,"rows":30,"over":"10 cm"}`, "stitches", gauge.ErrRange, "beyond the limit"},
		{`{"stitches":22,"rows":30,"over":"10 cm","needle":"4 mm"}`, "needle", gauge.ErrSyntax, "unknown key"},
		{`{"stitches":22,"rows":30,"over":10}`, "over", gauge.ErrUnit, "a length without a unit"},
		{`{"stitches":22,"rows":30,"over":"1e9 cm"}`, "over", gauge.ErrSyntax, "exponent"},
		{`{"stitches":22,"rows":30,"over":"10"}`, "over", gauge.ErrUnit, "a length without a unit"},
		{`{"stitches":22,"rows":30,"over":["10 cm"]}`, "over", gauge.ErrSyntax, "a list"},
		{`{"stitches":22,"rows":30,"over":"100001 cm"}`, "over", gauge.ErrRange, "more than 1000 m"},
		{`{"stitches":22,"rows":30,"over":"10 cm","rows":30}`, "rows", gauge.ErrSyntax, "repeated key"},
		{`{"stitches":22,"rows":30,"over":"10 cm","row\u0073":30}`, "rows", gauge.ErrSyntax, "repeated key, spelt with an escape"},
		{`{"stitches":22,"Rows":30,"over":"10 cm"}`, "Rows", gauge.ErrSyntax, "other capitals"},
		{`{"stitches":22,"rows":30,"over":"10 cm","":1}`, `""`, gauge.ErrSyntax, "empty key"},
		{`{"stitches":22,"rows":30,"over":"10 cm","a\nb":1}`, `"a\nb"`, gauge.ErrSyntax, "a key that cannot be printed"},
		{`[]`, "gauge", gauge.ErrSyntax, "a list"},
		{`"22"`, "gauge", gauge.ErrSyntax, "a string"},
		{`22`, "gauge", gauge.ErrSyntax, "a number"},
		{``, "", nil, "empty"},
		{`{"stitches":22`, "", nil, "cut off"},
	} {
		before := newGauge("11", "12", "10 cm")
		g := before
		err := json.Unmarshal([]byte(c.text), &g)
		if err == nil || field(err) != c.field || !g.Equal(before) {
			t.Errorf("%.80s (%s): got %v, %v (field %q); want an error for %q", c.text, c.why, g, err, field(err), c.field)
			continue
		}
		if !errors.Is(err, c.kind) && c.kind != nil || len(err.Error()) > 200 || strings.Contains(err.Error(), "\n") {
			t.Errorf("%.80s (%s): got %.300v, want a short %v", c.text, c.why, err, c.kind)
		}
		if g := before; g.UnmarshalJSON([]byte(c.text)) == nil || !g.Equal(before) {
			t.Errorf("%.80s (%s): UnmarshalJSON itself accepts it", c.text, c.why)
		}
	}
}

func TestGaugeJSONMessages(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{`{"rows":30,"over":"10 cm"}`, `stitches missing: the keys needed are stitches, rows, over`},
		{`{"stitches":22,"rows":"thirty","over":"10 cm"}`, `rows "thirty": a number such as "22" or "22.5"`},
		{`{"stitches":22,"rows":3e1,"over":"10 cm"}`, `rows 3e1: a number such as "22" or "22.5"`},
		{`{"stitches":22,"rows":{},"over":"10 cm"}`, `rows {...}: a number such as "22" or "22.5"`},
		{`{"stitches":22,"rows":30,"over":10}`, `over 10: the unit is missing: 10 cm, 10 mm or 10 in`},
		{`{"stitches":22,"rows":30,"over":"23,5 cm"}`, `over "23,5 cm": write the decimal point as ".": 23.5 cm`},
		{`{"stitches":22,"rows":30,"over":"10 cm","rows":"31"}`, `rows "31": the key stands twice: write it once`},
		{`{"stitches":22,"rows":30,"over":"10 cm","needle":"4 mm"}`, `needle "4 mm": unknown key: the keys here are stitches, rows, over`},
		{`["10 cm"]`, `gauge [...]: write one object in { } with stitches, rows, over`},
	} {
		var g gauge.Gauge
		if diff := cmp.Diff(c.want, fmt.Sprint(json.Unmarshal([]byte(c.text), &g))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.text, diff)
		}
	}
}

func TestGaugeUnmarshalJSONRefusesWhatFollows(t *testing.T) {
	var g gauge.Gauge
	if err := g.UnmarshalJSON([]byte(`{"stitches":22,"rows":30,"over":"10 cm"} {}`)); err == nil || !g.IsZero() {
		t.Errorf("got %v, %v", g, err)
	}
}

func TestGaugeUnmarshalJSONRefusesWhatIsNoJSON(t *testing.T) {
	for _, text := range []string{"", "\x1b[2J\n", "{", `{"stitches"`, `{"stitches":`, `{"stitches":22`, `{"stitches":22,}`, `{"stitches":22]`} {
		var g gauge.Gauge
		err := g.UnmarshalJSON([]byte(text))
		if field(err) != "gauge" || !errors.Is(err, gauge.ErrSyntax) || strings.ContainsAny(err.Error(), "\n\x1b") {
			t.Errorf("%q: got %q", text, err)
		}
	}
}
