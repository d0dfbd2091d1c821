package plan_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// gaugeDocument returns a document with one key beside the format.
func gaugeDocument(rest string) string { return `{"format": "walewise-gauge/1", ` + rest + `}` }

func TestParseGauge(t *testing.T) {
	l := gauge.MustParseLength
	swatch := gauge.Swatch{Stitches: 40, Width: l("18 cm"), Rows: 56, Height: l("18.5 cm"), Grams: decimal.New(142, -1)}
	g, err := gauge.New(decimal.NewFromInt(22), decimal.NewFromInt(30), l("10 cm"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		rest string
		want garment.GaugeSpec
	}{
		{`"swatch": ` + oneSwatch, garment.GaugeSpec{Swatch: &swatch}},
		{`"swatches": [` + oneSwatch + `]`, garment.GaugeSpec{Swatches: []gauge.Swatch{swatch}}},
		{`"swatches": [` + oneSwatch + `, ` + oneSwatch + `]`, garment.GaugeSpec{Swatches: []gauge.Swatch{swatch, swatch}}},
		{`"gauge": {"stitches": 22, "rows": "30", "over": "10 cm"}`, garment.GaugeSpec{Gauge: g}},
	} {
		got, err := plan.ParseGauge([]byte(gaugeDocument(c.rest)))
		if diff := cmp.Diff(c.want, got); diff != "" || err != nil {
			t.Errorf("%s: %v (-want +got):\n%s", c.rest, err, diff)
		}
		rewriteGauge(t, got)
	}
}

// rewriteGauge fails the test if a gauge is not the same when it was written and read.
func rewriteGauge(t testing.TB, g garment.GaugeSpec) {
	t.Helper()
	var first, second bytes.Buffer
	if err := plan.WriteGauge(&first, g); err != nil {
		t.Fatal(err)
	}
	back, err := plan.ReadGauge(bytes.NewReader(first.Bytes()))
	if diff := cmp.Diff(g, back, same); diff != "" || err != nil {
		t.Fatalf("%s came back with %v (-written +read):\n%s", first.Bytes(), err, diff)
	}
	if err := plan.WriteGauge(&second, back); err != nil || first.String() != second.String() {
		t.Fatalf("%s, then %s (%v)", first.Bytes(), second.Bytes(), err)
	}
}

func TestParseGaugeRefuses(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{gaugeDocument(`"swatches": []`), `swatches 0 of them: 1 to 16`},
		{gaugeDocument(`"swatch": ` + oneSwatch + `, "gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`), `gauge and swatch: write only one of them`},
		{`{"format": "walewise-gauge/1"}`, `gauge: the key is missing: write either a gauge or a swatch, or several swatches`},
		{gaugeDocument(`"swatchs": []`), `swatchs: unknown key, did you mean "swatch"?`},
		{gaugeDocument(`"swatch": ` + oneSwatch + `, "swatch": ` + oneSwatch), `swatch: the key stands twice`},
		{gaugeDocument(`"swatch": null`), `swatch null: null is no value: leave the key out`},
		{least, `format "walewise-spec/1": only "walewise-gauge/1" can be read here`},
		{``, `document: empty`},
		{`[` + oneSwatch + `]`, `document [...]: write an object in { } whose format is "walewise-gauge/1"`},
		{gaugeDocument(`"swatch": `+oneSwatch) + strings.Repeat(" ", plan.MaxBytes), `document of 1048702 bytes: at most 1 MiB, 1048576 bytes`},
	} {
		_, err := plan.ParseGauge([]byte(c.text))
		if err == nil {
			t.Errorf("%.60s was read", c.text)
			continue
		}
		oneLine(t, err)
		if err.Error() != c.want || !errors.Is(err, garment.ErrSpec) {
			t.Errorf("says\n%s, want\n%s", err, c.want)
		}
	}
	broken := errors.New("the disk is gone")
	if _, err := plan.ReadGauge(iotest.ErrReader(broken)); !errors.Is(err, broken) {
		t.Errorf("%v does not wrap the error of the reader", err)
	}
	var b bytes.Buffer
	if err := plan.WriteGauge(&b, garment.GaugeSpec{}); err == nil || b.Len() > 0 {
		t.Errorf("nothing was written as %q", b.String())
	}
}

// The plan says the swatches as they were given.
func TestPlanOfSwatches(t *testing.T) {
	s, err := plan.ParseSpec([]byte(least))
	if err != nil {
		t.Fatal(err)
	}
	by, err := plan.ParseGauge([]byte(gaugeDocument(`"swatches": [` + oneSwatch + `, ` + oneSwatch + `]`)))
	if err != nil {
		t.Fatal(err)
	}
	front, err := garment.Front(s.Regauged(by))
	if err != nil {
		t.Fatal(err)
	}
	p := plan.From(front)
	if diff := cmp.Diff(by.Swatches, p.Swatches); diff != "" || p.Swatch != nil || !p.Gauge.IsZero() {
		t.Errorf("swatches (-given +planned):\n%s", diff)
	}
	rewritePlan(t, p)
	p.Gauge = s.Gauge
	if err := plan.Write(&bytes.Buffer{}, p); err == nil || err.Error() != "gauge and swatches: write only one of them" {
		t.Errorf("both were written: %v", err)
	}
}

func FuzzParseGauge(f *testing.F) {
	for _, text := range []string{
		gaugeDocument(`"swatches": [` + oneSwatch + `]`), gaugeDocument(`"swatch": ` + oneSwatch), gaugeDocument(`"gauge": {"stitches": 22, "rows": "30", "over": "4 in"}`),
		gaugeDocument(`"swatches": [{}]`), least, "", "null", "[[",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		g, err := plan.ParseGauge(text)
		if err != nil {
			oneLine(t, err)
			return
		}
		rewriteGauge(t, g)
	})
}
