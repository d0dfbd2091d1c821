package plan_test

import (
	"os"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// same compares plans and specs by their values: lengths by length, decimals by
// number, and an empty list like none.
var same = cmp.Options{cmpopts.EquateEmpty()}

// least is a spec with the required keys only.
const least = `{"format": "walewise-spec/1",
 "gauge": {"stitches": "22", "rows": "30", "over": "10 cm"},
 "body": {"width": "50 cm", "length": "36 cm"},
 "armhole": {"depth": "21 cm"},
 "neck": {"shape": "round", "width": "18 cm", "depth": "8 cm"},
 "shoulder": {"drop": "3 cm"}}`

// full is a spec with all keys but the gauge.
const full = `{"format": "walewise-spec/1", "title": "A <plain> & simple \"pullover\"", "units": "in",
 "swatch": {"stitches": 40, "width": "18.1 cm", "rows": 56, "height": "18.7 cm", "grams": "14.2", "metres": 39, "tension": "7 and a bit"},
 "start": {"edge": "closed", "band": "5 cm"},
 "seam": {"stitches": 1},
 "body": {"width": "20 in", "length": "14 1/4 in", "hem": "52 cm", "waist": {"width": "46 cm", "height": "18 cm"}},
 "armhole": {"depth": "21 cm", "inset": "6 cm", "bindOff": "0 cm", "curve": "8 cm", "path": "m 0 0 c 30 0 40 -50 40 -80"},
 "neck": {"shape": "path", "width": "18 cm", "depth": "8 cm", "flat": "6 cm", "path": "M 0 0 L 60 80", "stretch": 30},
 "back": {"neck": {"depth": "2.5 cm", "flat": "12 cm"}},
 "shoulder": {"drop": "30 mm", "path": "M 0 3 Q 10 0 12 0"},
 "sleeve": {"length": "45 cm", "cuff": "20 cm", "top": "34 cm", "cap": "set-in", "ease": "1 cm", "flat": "8 cm", "plain": "3 cm", "band": "6 cm", "stretch": "40.5"},
 "band": {"height": "2.5 cm", "repeat": 4, "plus": 2, "gauge": {"stitches": 24, "rows": "32", "over": "10 cm"}},
 "head": "56 cm", "hand": "20 cm", "yarn": {"margin": "10", "ball": {"grams": "50", "metres": "137"}},
 "methods": {"neck": "hold", "shoulder": "bindOff", "armhole": ["bindOff", "fashioned"]},
 "checks": {"shoulders": "error", "sides": "warning", "armholes": "error", "neck": "warning", "cuff": "error", "bed": "warning"},
 "work": {"on": "bed", "needles": 200, "carriage": "right"}}`

// oneSwatch is one of several.
const oneSwatch = `{"stitches": 40, "width": "18 cm", "rows": 56, "height": "18.5 cm", "grams": "14.2"}`

// tiny returns the smallest plan that can be knitted.
func tiny(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../../testdata/plan-tiny.json")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// replaced returns a document with one place changed; there must be such a place.
func replaced(t testing.TB, text, old, by string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("no %q in the document", old)
	}
	return strings.Replace(text, old, by, 1)
}

// oneLine fails the test if a message cannot be printed as one line.
func oneLine(t testing.TB, err error) {
	t.Helper()
	if text := err.Error(); text == "" || strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }) || len(text) > 1000 {
		t.Errorf("message %q is not one line of text", text)
	}
}
