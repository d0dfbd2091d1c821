package plan_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func TestParseSpec(t *testing.T) {
	for _, c := range []struct{ name, text string }{
		{"least", least},
		{"full", full},
		{"swatches", replaced(t, least, `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": [`+oneSwatch+`, `+oneSwatch+`]`)},
		{"one of several swatches", replaced(t, least, `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": [`+oneSwatch+`]`)},
		{"byte order mark", "\ufeff" + least},
		{"line ends of another system", strings.ReplaceAll(least, "\n", "\r\n") + "\r\n"},
		{"longest title", replaced(t, least, `"gauge"`, `"title": "`+strings.Repeat("é", plan.MaxTitle)+`", "gauge"`)},
		{"just not too long", least + strings.Repeat(" ", plan.MaxBytes-len(least))},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := plan.ParseSpec([]byte(c.text))
			if err != nil {
				t.Fatal(err)
			}
			rewrite(t, s)
		})
	}
}

func TestParseSpecValues(t *testing.T) {
	s, err := plan.ParseSpec([]byte(full))
	if err != nil {
		t.Fatal(err)
	}
	l := gauge.MustParseLength
	want := garment.Spec{
		Title: `A <plain> & simple "pullover"`, Units: gauge.Inch,
		Swatch: &gauge.Swatch{
			Stitches: 40, Width: l("18.1 cm"), Rows: 56, Height: l("18.7 cm"),
			Grams: decimal.New(142, -1), Metres: decimal.New(39, 0), Tension: "7 and a bit",
		},
		Start:    garment.Start{Edge: garment.ClosedEdge, Band: l("5 cm")},
		Seam:     garment.Seam{Stitches: 1},
		Body:     garment.Body{Width: l("50.8 cm"), Length: l("361.95 mm"), Hem: l("52 cm"), Waist: &garment.Waist{Width: l("46 cm"), Height: l("18 cm")}},
		Armhole:  garment.Armhole{Depth: l("21 cm"), Inset: l("6 cm"), BindOff: garment.Exactly(l("0 cm")), Curve: garment.Exactly(l("8 cm")), Path: "m 0 0 c 30 0 40 -50 40 -80"},
		Neck:     garment.Neck{Shape: garment.PathNeck, Width: l("18 cm"), Depth: l("8 cm"), Flat: garment.Exactly(l("6 cm")), Path: "M 0 0 L 60 80", Stretch: new(decimal.New(30, 0))},
		Back:     &garment.BackSpec{Neck: garment.BackNeck{Depth: l("2.5 cm"), Flat: garment.Exactly(l("12 cm"))}},
		Shoulder: garment.Shoulder{Drop: l("3 cm"), Path: "M 0 3 Q 10 0 12 0"},
		Sleeve: &garment.SleeveSpec{
			Length: l("45 cm"), Cuff: l("20 cm"), Top: l("34 cm"), Cap: garment.SetInCap,
			Ease: l("1 cm"), Flat: garment.Exactly(l("8 cm")), Plain: l("3 cm"),
			Band: garment.Exactly(l("6 cm")), Stretch: new(decimal.New(405, -1)),
		},
		Band: &garment.BandSpec{Height: l("2.5 cm"), Repeat: 4, Plus: 2},
		Head: l("56 cm"), Hand: l("20 cm"),
		Yarn: &garment.YarnSpec{Margin: new(decimal.New(10, 0)), Ball: &garment.Ball{Grams: decimal.New(50, 0), Metres: decimal.New(137, 0)}},
		Methods: garment.Methods{
			Neck: garment.By(shaping.Hold), Shoulder: garment.By(shaping.BindOff),
			Armhole: garment.Pair{Several: shaping.BindOff, Single: shaping.Fashioned},
		},
		Checks: garment.Checks{
			Shoulders: garment.AsError, Sides: garment.AsWarning, Armholes: garment.AsError,
			Neck: garment.AsWarning, Cuff: garment.AsError, Bed: garment.AsWarning,
		},
		Setup: garment.Setup{On: shaping.Bed, Needles: 200, Carriage: shaping.Right},
	}
	if want.Band.Gauge, err = gauge.New(decimal.New(24, 0), decimal.New(32, 0), l("10 cm")); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, s, same); diff != "" {
		t.Errorf("spec (-want +got):\n%s", diff)
	}
}

// rewrite writes a spec, reads it back and writes it again.
func rewrite(t interface {
	Helper()
	Fatal(...any)
}, s garment.Spec) {
	t.Helper()
	var first, second bytes.Buffer
	if err := plan.WriteSpec(&first, s); err != nil {
		t.Fatal(err)
	}
	again, err := plan.ReadSpec(bytes.NewReader(first.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(s, again, same); diff != "" {
		t.Fatal(fmt.Sprintf("read back (-want +got):\n%s", diff))
	}
	if err := plan.WriteSpec(&second, again); err != nil {
		t.Fatal(err)
	}
	if first.String() != second.String() {
		t.Fatal("the bytes differ when it is written again")
	}
}

func TestParseSpecRefuses(t *testing.T) {
	for _, c := range []struct{ name, old, by, want string }{
		{"unknown key", `"width": "18 cm"`, `"widht": "18 cm"`, `neck.widht: unknown key, did you mean "width"?`},
		{"other capitals", `"width": "18 cm"`, `"Width": "18 cm"`, `neck.Width: unknown key, did you mean "width"?`},
		{"nothing near", `"shoulder"`, `"zebra": 1, "shoulder"`, `zebra: unknown key, the keys here are format, title, units, swatch, swatches, gauge, start, seam, body, armhole, neck, back, opening, shoulder, sleeve, band, head, hand, yarn, methods, checks, work`},
		{"key that cannot be printed", `"shoulder"`, `"a\nb": 1, "shoulder"`, `"a\nb": unknown key, the keys here are format, title, units, swatch, swatches, gauge, start, seam, body, armhole, neck, back, opening, shoulder, sleeve, band, head, hand, yarn, methods, checks, work`},
		{"repeated key", `"depth": "8 cm"`, `"depth": "8 cm", "depth": "9 cm"`, `neck.depth: the key stands twice`},
		{"repeated key in the gauge", `"rows": "30"`, `"rows": "30", "rows": "30"`, `gauge.rows: the key stands twice`},
		{"repeated key, spelt with an escape", `"depth": "8 cm"`, `"depth": "8 cm", "dept\u0068": "9 cm"`, `neck.depth: the key stands twice`},
		{"null", `"18 cm"`, `null`, `neck.width null: null is no value: leave the key out`},
		{"null for what may be left out", `"shoulder"`, `"title": null, "shoulder"`, `title null: null is no value: leave the key out`},
		{"bare number", `"18 cm"`, `18`, `neck.width 18: write a text with a unit: "18 cm"`},
		{"no unit", `"18 cm"`, `"18"`, `neck.width "18": the unit is missing: 18 cm, 18 mm or 18 in`},
		{"decimal comma", `"18 cm"`, `"23,5 cm"`, `neck.width "23,5 cm": write the decimal point as ".": 23.5 cm`},
		{"decimal comma and a line end", `"18 cm"`, `"23,5\n cm"`, `neck.width "23,5\n cm": not a number with a unit: 23.5 cm, 235 mm or 9 1/4 in`},
		{"very long text", `"18 cm"`, `"` + strings.Repeat("8", 500) + ` cm"`, `neck.width "8888888888888888888888888888888888888888...": longer than 40 characters: 23.5 cm, 235 mm or 9 1/4 in`},
		{"length that is a list", `"18 cm"`, `["18 cm"]`, `neck.width [...]: write a length with its unit, such as "23.5 cm"`},
		{"object that is a text", `{"drop": "3 cm"}`, `"3 cm"`, `shoulder "3 cm": write an object in { } with drop, path`},
		{"text that is a number", `"shoulder"`, `"title": 5, "shoulder"`, `title 5: write a text in quotes`},
		{"number in quotes", `"shoulder"`, `"seam": {"stitches": "1"}, "shoulder"`, `seam.stitches "1": write the number without quotes`},
		{"fraction of a stitch", `"shoulder"`, `"seam": {"stitches": 1.5}, "shoulder"`, `seam.stitches 1.5: write a whole number`},
		{"number with an exponent", `"shoulder"`, `"seam": {"stitches": 1e3}, "shoulder"`, `seam.stitches 1e3: write a whole number`},
		{"decimal with an exponent", `"shoulder"`, `"yarn": {"margin": "1e999999999"}, "shoulder"`, `yarn.margin "1e999999999": write a decimal such as "14.2", without a sign or an exponent`},
		{"decimal with a comma", `"shoulder"`, `"yarn": {"margin": "1,5"}, "shoulder"`, `yarn.margin "1,5": write the decimal point as "."`},
		{"true", `"18 cm"`, `true`, `neck.width true: write a length with its unit, such as "23.5 cm"`},
		{"unknown shape", `"round"`, `"rund"`, `neck.shape "rund": round, vee, square or path`},
		{"shape that is a number", `"round"`, `1`, `neck.shape 1: write round, vee, square or path`},
		{"unknown unit", `"shoulder"`, `"units": "feet", "shoulder"`, `units "feet": cm, mm or in`},
		{"unknown method", `"shoulder"`, `"methods": {"neck": "glue"}, "shoulder"`, `methods.neck "glue": one of hold, bindOff, fashioned, castOn`},
		{"unknown method of a pair", `"shoulder"`, `"methods": {"neck": ["hold", "glue"]}, "shoulder"`, `methods.neck[1] "glue": one of hold, bindOff, fashioned, castOn`},
		{"three methods", `"shoulder"`, `"methods": {"neck": ["hold", "hold", "hold"]}, "shoulder"`, `methods.neck [...]: write a method, or a list of two: for several stitches and for single ones`},
		{"required object", `"neck": {"shape": "round", "width": "18 cm", "depth": "8 cm"},`, ``, `neck: the key is missing: an object in { } with shape, width, depth, flat, path, stretch`},
		{"required length", `, "depth": "8 cm"`, ``, `neck.depth: the key is missing: a length with its unit, such as "23.5 cm"`},
		{"required word", `"shape": "round", `, ``, `neck.shape: the key is missing: round, vee, square or path`},
		{"neither gauge nor swatch", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"},`, ``, `gauge: the key is missing: write either a gauge or a swatch, or several swatches`},
		{"both", `"gauge"`, `"swatch": {"stitches": 40, "width": "18 cm", "rows": 56, "height": "18 cm"}, "gauge"`, `gauge and swatch: write only one of them`},
		{"unknown key in the gauge", `"rows": "30"`, `"row": "30"`, `gauge.row: unknown key, did you mean "rows"?`},
		{"missing key in the gauge", `, "over": "10 cm"`, ``, `gauge.over: the key is missing: a length with its unit, such as "23.5 cm"`},
		{"gauge without rows", `"rows": "30"`, `"rows": "0"`, `gauge.rows 0: a number above 0, such as 22 or 22.5, and at most 1000000`},
		{"gauge with a word", `"rows": "30"`, `"rows": "thirty"`, `gauge.rows "thirty": a number such as "22" or "22.5"`},
		{"gauge over a number", `"over": "10 cm"`, `"over": 10`, `gauge.over 10: write a text with a unit: "10 cm"`},
		{"gauge that is a text", `{"stitches": "22", "rows": "30", "over": "10 cm"}`, `"22 30"`, `gauge "22 30": write an object in { } with stitches, rows, over`},
		{"swatch and swatches", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatch": {"stitches": 40, "width": "18 cm", "rows": 56, "height": "18 cm"}, "swatches": [{"stitches": 40, "width": "18 cm", "rows": 56, "height": "18 cm"}]`, `swatch and swatches: write only one of them`},
		{"all three", `"gauge"`, `"swatch": {"stitches": 40, "width": "18 cm", "rows": 56, "height": "18 cm"}, "swatches": [], "gauge"`, `gauge and swatch and swatches: write only one of them`},
		{"no swatches", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": []`, `swatches 0 of them: 1 to 16`},
		{"too many swatches", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": [` + strings.Repeat(oneSwatch+", ", 16) + oneSwatch + `]`, `swatches 17 of them: 1 to 16`},
		{"swatches that are one", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": ` + oneSwatch, `swatches {...}: write a list in [ ]`},
		{"second of the swatches without a width", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": [` + oneSwatch + `, {"stitches": 40, "rows": 56, "height": "18 cm"}]`, `swatches[1].width: the key is missing: a length with its unit, such as "23.5 cm"`},
		{"second of the swatches over nothing", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": [` + oneSwatch + `, ` + strings.Replace(oneSwatch, "18 cm", "0 cm", 1) + `]`, `swatches[1].width 0 cm: a length above 0 of at most 1000 m, such as 10 cm`},
		{"swatch without stitches", `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatch": {"stitches": 0, "width": "18 cm", "rows": 56, "height": "18 cm"}`, `swatch.stitches 0: a number above 0, such as 22 or 22.5, and at most 1000000`},
		{"long title", `"shoulder"`, `"title": "` + strings.Repeat("é", 201) + `", "shoulder"`, `title of 201 characters: at most 200`},
		{"a version that is no number", `walewise-spec/1`, `walewise-spec/new`, `format "walewise-spec/new": only "walewise-spec/1" can be read here`},
		{"very long key", `"shoulder"`, `"` + strings.Repeat("k", 500) + `": 1, "shoulder"`, `"kkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkk...": unknown key, the keys here are format, title, units, swatch, swatches, gauge, start, seam, body, armhole, neck, back, opening, shoulder, sleeve, band, head, hand, yarn, methods, checks, work`},
		{"deep below long keys", `"shoulder"`, strings.Repeat(`"`+strings.Repeat("k", 30)+`": {`, 13) + strings.Repeat("}", 13) + `, "shoulder"`, `kkkkkkkkkkkkkkkkkkkkkkkkkkkkkk.kkkkkkkkkkkkkkkkkkkkkkkkkkkkkk.kkkkkkkkkkkkkkkkkkkkkkkkkkkkkk.kkkkkkkkkkkkkkkkkkkkkkkkkkk...: nested deeper than 12 levels`},
		{"word for yes or no", `"shoulder"`, `"band": {"height": "2 cm", "folded": "yes"}, "shoulder"`, `band.folded "yes": write true or false`},
		{"list for a number of stitches", `"22"`, `["22"]`, `gauge.stitches [...]: write a number such as "22" or "22.5"`},
		{"a plan", `walewise-spec/1`, `walewise-plan/1`, `format "walewise-plan/1": only "walewise-spec/1" can be read here`},
		{"no format", `"format": "walewise-spec/1",`, ``, `format: the key is missing: write "walewise-spec/1"`},
		{"format that is a number", `"walewise-spec/1"`, `1`, `format 1: only "walewise-spec/1" can be read here`},
		{"comma too many", `"3 cm"}}`, `"3 cm",}}`, `document line 6, column 30: not JSON from here on: a comma, quote or bracket too many or too few`},
		{"end too early", `"3 cm"}}`, `"3 cm"}`, `document: not JSON: it ends too early`},
		{"text after the end", `"3 cm"}}`, `"3 cm"}} {}`, `document line 6, column 32: text after the end of the document`},
		{"deep", `"shoulder"`, `"title": ` + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + `, "shoulder"`, `title[0][0][0][0][0][0][0][0][0][0][0]: nested deeper than 12 levels`},
		{"not UTF-8", `"shoulder"`, "\"title\": \"\xff\", \"shoulder\"", `document: not UTF-8: save it as UTF-8`},
	} {
		t.Run(c.name, func(t *testing.T) { refuses(t, replaced(t, least, c.old, c.by), c.want) })
	}
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", `document: empty`},
		{"a list", "[]", `document [...]: write an object in { } whose format is "walewise-spec/1"`},
		{"null", "null", `document null: null is no value: leave the key out`},
		{"a word", "pullover", `document line 1, column 1: not JSON from here on: a comma, quote or bracket too many or too few`},
		{"2 MB", least + strings.Repeat(" ", 2_000_000-len(least)), `document of 2000000 bytes: at most 1 MiB, 1048576 bytes`},
	} {
		t.Run(c.name, func(t *testing.T) { refuses(t, c.text, c.want) })
	}
}

func refuses(t *testing.T, text, want string) {
	t.Helper()
	_, err := plan.ParseSpec([]byte(text))
	if err == nil {
		t.Fatal("it was read")
	}
	oneLine(t, err)
	if err.Error() != want {
		t.Errorf("says\n%s, want\n%s", err, want)
	}
	if _, ok := errors.AsType[*garment.Error](err); !ok || !errors.Is(err, garment.ErrSpec) {
		t.Errorf("%T is not a *garment.Error that wraps ErrSpec", err)
	}
}

func TestErrorsWrapTheirCause(t *testing.T) {
	_, err := plan.ParseSpec([]byte(replaced(t, least, "18 cm", "18 ells")))
	if !errors.Is(err, gauge.ErrUnit) || !errors.Is(err, garment.ErrSpec) {
		t.Errorf("%v does not wrap both", err)
	}
	_, err = plan.Parse([]byte(replaced(t, string(tiny(t)), `"L10"`, `"L0"`)))
	if !errors.Is(err, shaping.ErrRange) || !errors.Is(err, plan.ErrPlan) || errors.Is(err, garment.ErrSpec) {
		t.Errorf("%v does not wrap both", err)
	}
}

func TestWriteSpecRefuses(t *testing.T) {
	s, err := plan.ParseSpec([]byte(least))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		set  func(*garment.Spec)
		want string
	}{
		{"nothing in it", func(s *garment.Spec) { *s = garment.Spec{} }, `neck.shape "no shape": round, vee, square or path`},
		{"no gauge", func(s *garment.Spec) { s.Gauge = gauge.Gauge{} }, `gauge: the key is missing: write either a gauge or a swatch, or several swatches`},
		{"long title", func(s *garment.Spec) { s.Title = strings.Repeat("a", 201) }, `title of 201 characters: at most 200`},
		{"no method", func(s *garment.Spec) { s.Methods.Neck.Several = shaping.Hold }, `document: method 0: one of hold, bindOff, fashioned, castOn`},
	} {
		t.Run(c.name, func(t *testing.T) {
			changed := s
			c.set(&changed)
			var b bytes.Buffer
			err := plan.WriteSpec(&b, changed)
			if err == nil || err.Error() != c.want || !errors.Is(err, garment.ErrSpec) {
				t.Errorf("says\n%v, want\n%s", err, c.want)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes were written", b.Len())
			}
		})
	}
}

func TestSpecRoundTrip(t *testing.T) {
	length := rapid.Custom(func(t *rapid.T) gauge.Length {
		return gauge.Millimetres(decimal.New(rapid.Int64Range(0, 3_000_000).Draw(t, "length"), -3))
	})
	optional := rapid.Custom(func(t *rapid.T) garment.Optional {
		if rapid.Bool().Draw(t, "open") {
			return garment.Optional{}
		}
		return garment.Exactly(length.Draw(t, "given"))
	})
	method := rapid.SampledFrom([]shaping.Method{shaping.Hold, shaping.BindOff, shaping.Fashioned, shaping.CastOn})
	g, err := gauge.New(decimal.New(225, -1), decimal.New(30, 0), gauge.MustParseLength("4 in"))
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		s := garment.Spec{
			Title:    rapid.StringN(0, 50, 200).Draw(t, "title"),
			Units:    rapid.SampledFrom([]gauge.Unit{gauge.Centimetre, gauge.Inch}).Draw(t, "units"),
			Gauge:    g,
			Start:    garment.Start{Edge: rapid.SampledFrom([]garment.StartEdge{garment.WasteEdge, garment.ClosedEdge}).Draw(t, "edge"), Band: length.Draw(t, "band")},
			Seam:     garment.Seam{Stitches: rapid.IntRange(0, 3).Draw(t, "seam")},
			Body:     garment.Body{Width: length.Draw(t, "width"), Length: length.Draw(t, "body"), Hem: length.Draw(t, "hem")},
			Armhole:  garment.Armhole{Depth: length.Draw(t, "armhole"), Inset: length.Draw(t, "inset"), BindOff: optional.Draw(t, "bindOff")},
			Neck:     garment.Neck{Shape: garment.VeeNeck, Width: length.Draw(t, "neck"), Depth: length.Draw(t, "depth"), Flat: optional.Draw(t, "flat")},
			Shoulder: garment.Shoulder{Drop: length.Draw(t, "drop")},
			Methods:  garment.Methods{Neck: garment.Pair{Several: method.Draw(t, "several"), Single: method.Draw(t, "single")}},
		}
		rewrite(t, s)
	})
}

func FuzzParseSpec(f *testing.F) {
	for _, text := range []string{least, full, strings.Replace(least, `"gauge": {"stitches": "22", "rows": "30", "over": "10 cm"}`, `"swatches": [`+oneSwatch+`]`, 1), `{"format":"walewise-spec/1","swatches":[{}]}`, "", "null", "[[[[", `{"format":"walewise-spec/1","gauge":{"over":1}}`} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := plan.ParseSpec(text)
		if err != nil {
			oneLine(t, err)
			return
		}
		rewrite(t, s)
	})
}
