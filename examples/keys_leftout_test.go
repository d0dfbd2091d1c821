package examples_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

// plainSpec has the keys that are needed, and those of which others are a part.
const plainSpec = `{
 "format": "walewise-spec/1",
 "swatch": {"stitches": 44, "width": "20 cm", "rows": 60, "height": "20 cm", "grams": "13", "metres": "36"},
 "body": {"width": "50 cm", "length": "36 cm"},
 "armhole": {"depth": "21 cm", "inset": "6 cm"},
 "neck": {"shape": "round", "width": "18 cm", "depth": "8 cm"},
 "shoulder": {"drop": "3 cm"},
 "sleeve": {"length": "44 cm", "cuff": "22 cm", "top": "34 cm", "cap": "set-in"},
 "band": {"height": "2.4 cm"},
 "head": "58 cm", "hand": "22 cm",
 "yarn": {"ball": {"grams": "50", "metres": "140"}}
}`

// change is a key of a spec by its path, and a value as JSON.
type change struct{ path, value string }

// specWith returns the plain spec with some keys changed; one without a value is left out.
func specWith(t *testing.T, changes ...change) []byte {
	t.Helper()
	var spec map[string]any
	if err := json.Unmarshal([]byte(plainSpec), &spec); err != nil {
		t.Fatal(err)
	}
	for _, c := range changes {
		keys, in := strings.Split(c.path, "."), spec
		for _, key := range keys[:len(keys)-1] {
			if in[key] == nil {
				in[key] = map[string]any{}
			}
			in = in[key].(map[string]any)
		}
		last := keys[len(keys)-1]
		delete(in, last)
		if c.value != "" {
			var value any
			if err := json.Unmarshal([]byte(c.value), &value); err != nil {
				t.Fatal(c.path, err)
			}
			in[last] = value
		}
	}
	text, err := json.Marshal(spec)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// told returns the plan and the instructions of a spec, or the line that refuses it.
func told(t *testing.T, spec []byte) string {
	t.Helper()
	set, err := setOf(t, spec)
	if err != nil {
		return err.Error()
	}
	var text bytes.Buffer
	if err := errors.Join(plan.Write(&text, plan.From(set.Pieces...)), sheet.WriteSet(&text, set)); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

// knitted returns the rows of a spec's pieces and the stitches of its bands.
func knitted(t *testing.T, spec []byte) string {
	t.Helper()
	set, err := setOf(t, spec)
	if err != nil {
		return err.Error()
	}
	text := ""
	for _, p := range set.Pieces {
		text += fmt.Sprintln(p.Work)
	}
	for _, b := range set.Bands {
		text += fmt.Sprintln(b.Rows, b.Strips)
	}
	return text
}

// setOf plans a spec, or returns the error that refuses it.
func setOf(t *testing.T, spec []byte) (garment.Set, error) {
	t.Helper()
	s, err := plan.ParseSpec(spec)
	if err != nil {
		t.Fatal(err)
	}
	return garment.Pieces(s)
}

// leaving is a key of the plain spec with some changes, what is said to stand for it when it
// is left out, and another value.
type leaving struct {
	key, says, other string
	with             []change
}

// check holds what comes of the key with what stands for it against what comes of none, and
// of another value.
func (l leaving) check(t *testing.T, comes func(*testing.T, []byte) string) {
	t.Helper()
	and := func(value string) string {
		return comes(t, specWith(t, append(slices.Clone(l.with), change{l.key, value})...))
	}
	without := comes(t, specWith(t, l.with...))
	if and(l.says) != without {
		t.Errorf("%s (with %q): %s is not what stands for it", l.key, l.with, l.says)
	}
	if and(l.other) == without {
		t.Errorf("%s (with %q): %s changes nothing", l.key, l.with, l.other)
	}
}

func with(path, value string) []change { return []change{{path, value}} }

// What is said to stand for a key that is left out gives the same garment, in the same words,
// and another value another one.
func TestLeftOut(t *testing.T) {
	const (
		slant = `"M 0 60 L 40 0"`
		wide  = `"95 cm"` // for the bed
	)
	for _, l := range []leaving{
		{"title", `""`, `"Blue"`, nil},
		{"units", `"cm"`, `"in"`, nil},
		{"swatch.grams", `"0"`, `"14"`, with("swatch.grams", "")},
		{"swatch.metres", `"0"`, `"30"`, with("swatch.metres", "")},
		{"swatch.tension", `""`, `"7"`, nil},
		{"start", `{"edge": "waste", "band": "0 cm"}`, `{"band": "5 cm"}`, nil},
		{"start.edge", `"waste"`, `"closed"`, nil},
		{"start.band", `"0 cm"`, `"5 cm"`, nil},
		{"seam", `{"stitches": 0}`, `{"stitches": 1}`, nil},
		{"armhole.inset", `"0 cm"`, `"6 cm"`, append(with("armhole.inset", ""), change{"sleeve.cap", `"straight"`})},
		{"armhole.bindOff", `"2.5 cm"`, `"3 cm"`, nil},
		{"armhole.bindOff", `"2 cm"`, `"1 cm"`, with("armhole.inset", `"2 cm"`)},
		{"armhole.bindOff", `"0 cm"`, `"1 cm"`, append(with("armhole.inset", `"3 cm"`), change{"methods.armhole", `"fashioned"`}, change{"armhole.curve", `"18 cm"`})},
		{"armhole.curve", `"8.4 cm"`, `"12 cm"`, nil},
		{"armhole.path", `"M 0 84 A 35 84 0 0 0 35 0"`, slant, nil},
		{"neck.flat", `"6 cm"`, `"9 cm"`, nil},
		{"neck.flat", `"18 cm"`, `"9 cm"`, with("neck.shape", `"square"`)},
		{"neck.flat", `"0 cm"`, `"3 cm"`, with("neck.shape", `"vee"`)},
		{"neck.flat", `"0 cm"`, `"3 cm"`, append(with("neck.shape", `"path"`), change{"neck.path", slant})},
		{"neck.stretch", `"25"`, `"30"`, nil},
		{"back", `{"neck": {"depth": "2.5 cm", "flat": "12 cm"}}`, `{"neck": {"depth": "2.5 cm", "flat": "9 cm"}}`, nil},
		{"back", `{"neck": {"depth": "2.5 cm", "flat": "12 cm"}}`, `{"neck": {"depth": "4 cm"}}`, with("neck.shape", `"square"`)},
		{"back.neck.flat", `"12 cm"`, `"9 cm"`, with("back.neck.depth", `"3 cm"`)},
		{"sleeve.band", `"5 cm"`, `"7 cm"`, with("start.band", `"5 cm"`)},
		{"sleeve.cap", `"straight"`, `"set-in"`, with("sleeve.cap", "")},
		{"sleeve.ease", `"0 cm"`, `"1.5 cm"`, nil},
		{"sleeve.flat", `"8.5 cm"`, `"5 cm"`, nil},
		{"sleeve.plain", `"0 cm"`, `"3 cm"`, nil},
		{"sleeve.stretch", `"25"`, `"30"`, nil},
		{"band.repeat", `1`, `8`, nil},
		{"band.plus", `0`, `2`, with("band.repeat", `4`)},
		{"band.folded", `false`, `true`, nil},
		{"opening.overlap", `"2.4 cm"`, `"3 cm"`, with("opening", `{}`)},
		{"opening.overlap", `"0 cm"`, `"3 cm"`, append(with("opening", `{}`), change{"band", ""})},
		{"opening.buttons", `0`, `5`, with("opening", `{}`)},
		{"head", `"0 cm"`, `"58 cm"`, with("head", "")},
		{"hand", `"0 cm"`, `"22 cm"`, with("hand", "")},
		{"yarn.margin", `"10"`, `"15"`, nil},
		{"yarn.ball.grams", `"0"`, `"50"`, with("yarn.ball.grams", "")},
		{"yarn.ball.metres", `"0"`, `"100"`, append(with("yarn.ball.metres", ""), change{"swatch.grams", ""})},
		{"methods", `{"neck": "hold", "shoulder": "hold", "armhole": ["bindOff", "fashioned"]}`, `{"neck": "bindOff"}`, nil},
		{"methods.neck", `"hold"`, `"bindOff"`, nil},
		{"methods.shoulder", `"hold"`, `"bindOff"`, nil},
		{"methods.armhole", `["bindOff", "fashioned"]`, `"bindOff"`, nil},
		{"checks.armholes", `"warning"`, `"error"`, append(with("armhole.inset", ""), change{"sleeve.cap", ""}, change{"sleeve.top", `"30 cm"`})},
		{"checks.neck", `"warning"`, `"error"`, with("head", `"90 cm"`)},
		{"checks.cuff", `"warning"`, `"error"`, with("hand", `"40 cm"`)},
		{"checks.bed", `"error"`, `"warning"`, with("body.width", wide)},
		{"work", `{"on": "bed", "needles": 200, "carriage": "right"}`, `{"on": "hand"}`, nil},
		{"work.on", `"bed"`, `"hand"`, nil},
		{"work.needles", `200`, `120`, nil},
		{"work.needles", `200`, `220`, with("body.width", wide)},
		{"work.carriage", `"right"`, `"left"`, nil},
		{"work.carriage", `"right"`, `"left"`, with("work.on", `"hand"`)},
	} {
		l.check(t, told)
	}
}

// Where the words say that a key was given, the garment is the same.
func TestLeftOutByOtherWords(t *testing.T) {
	for _, l := range []leaving{
		{"body.hem", `"50 cm"`, `"46 cm"`, nil},
		{"body.hem", `"50 cm"`, `"46 cm"`, with("body.waist", `{"width": "46 cm", "height": "17 cm"}`)},
		{"band.gauge", `{"stitches": "22", "rows": "30", "over": "10 cm"}`, `{"stitches": "26", "rows": "30", "over": "10 cm"}`, nil},
	} {
		l.check(t, knitted)
	}
}
