package gauge_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/walewise/gauge"
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
	for _, c := range []struct{ text, field, why string }{
		{`{"rows":30,"over":"10 cm"}`, "stitches", "missing"},
		{`{"stitches":22,"over":"10 cm"}`, "rows", "missing"},
		{`{"stitches":22,"rows":30}`, "over", "missing"},
		{`{}`, "stitches", "missing"},
		{`{"stitches":"","rows":30,"over":"10 cm"}`, "stitches", "empty"},
		{`{"stitches":null,"rows":30,"over":"10 cm"}`, "stitches", "null"},
		{`{"stitches":22,"rows":30,"over":null}`, "over", "null"},
		{`{"stitches":0,"rows":30,"over":"10 cm"}`, "stitches", "zero"},
		{`{"stitches":22,"rows":"0.0","over":"10 cm"}`, "rows", "zero"},
		{`{"stitches":22,"rows":30,"over":"0 cm"}`, "over", "zero"},
		{`{"stitches":-22,"rows":30,"over":"10 cm"}`, "stitches", "negative"},
		{`{"stitches":22,"rows":"-30","over":"10 cm"}`, "rows", "negative"},
		{`{"stitches":22,"rows":30,"over":"-10 cm"}`, "over", "negative"},
		{`{"stitches":1e9999,"rows":30,"over":"10 cm"}`, "stitches", "exponent"},
		{`{"stitches":1e999999999999,"rows":30,"over":"10 cm"}`, "stitches", "exponent"},
		{`{"stitches":22,"rows":1e-999999999,"over":"10 cm"}`, "rows", "exponent"},
		{`{"stitches":2.2e1,"rows":30,"over":"10 cm"}`, "stitches", "exponent"},
		{`{"stitches":"1e999999999","rows":30,"over":"10 cm"}`, "stitches", "exponent in a string"},
		{`{"stitches":` + strings.Repeat("9", 100_000) + `,"rows":30,"over":"10 cm"}`, "stitches", "long"},
		{`{"stitches":"NaN","rows":30,"over":"10 cm"}`, "stitches", "no number"},
		{`{"stitches":"1/3","rows":30,"over":"10 cm"}`, "stitches", "no exact decimal"},
		{`{"stitches":"22,5","rows":30,"over":"10 cm"}`, "stitches", "decimal comma"},
		{`{"stitches":[22],"rows":30,"over":"10 cm"}`, "stitches", "a list"},
		{`{"stitches":true,"rows":30,"over":"10 cm"}`, "stitches", "a truth value"},
		{`{"stitches":201,"rows":30,"over":"10 cm"}`, "stitches", "beyond the limit"},
		{`{"stitches":22,"rows":30,"over":"10 cm","needle":"4 mm"}`, "", "unknown key"},
		{`{"stitches":22,"rows":30,"over":10}`, "", "a length without a unit"},
		{`{"stitches":22,"rows":30,"over":"1e9 cm"}`, "", "exponent"},
		{`{"stitches":22,"rows":30,"over":"10"}`, "", "a length without a unit"},
		{`[]`, "", "a list"},
		{`"22"`, "", "a string"},
		{`22`, "", "a number"},
		{``, "", "empty"},
		{`{"stitches":22`, "", "cut off"},
	} {
		before := newGauge("11", "12", "10 cm")
		g := before
		err := json.Unmarshal([]byte(c.text), &g)
		if err == nil || field(err) != c.field || !g.Equal(before) {
			t.Errorf("%.80s (%s): got %v, %v (field %q); want an error for %q", c.text, c.why, g, err, field(err), c.field)
			continue
		}
		if c.field != "" && (!errors.Is(err, gauge.ErrRange) || len(err.Error()) > 200) {
			t.Errorf("%.80s (%s): got %.300v, want a short ErrRange", c.text, c.why, err)
		}
		if g := before; g.UnmarshalJSON([]byte(c.text)) == nil || !g.Equal(before) {
			t.Errorf("%.80s (%s): UnmarshalJSON itself accepts it", c.text, c.why)
		}
	}
}

func TestGaugeUnmarshalJSONRefusesWhatFollows(t *testing.T) {
	var g gauge.Gauge
	if err := g.UnmarshalJSON([]byte(`{"stitches":22,"rows":30,"over":"10 cm"} {}`)); err == nil || !g.IsZero() {
		t.Errorf("got %v, %v", g, err)
	}
}
