package examples_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

// blocks has the arithmetic that README shows of each sample program, made anew from the
// program's own numbers.
var blocks = map[string]func(t *testing.T) string{
	"script":       scriptSums,
	"script steps": scriptSteps,
	"edges":        edgesSums,
	"edges stairs": edgesStairs,
	"frontpiece":   frontpieceSums,
	"gallery":      gallerySums,
	"pullover":     pulloverSums,
	"cardigan":     cardiganSums,
	"regauge":      regaugeSums,
	"sizes":        sizesSums,
	"embed":        embedSums,
	"embed cosy":   embedCosy,
}

func read(t *testing.T, name ...string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(name...))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// shown tests that a program prints a part of a text.
func shown(t *testing.T, text, part string) {
	t.Helper()
	if !strings.Contains(text, part) {
		t.Errorf("nothing prints %q", part)
	}
}

// found returns what the first group of a pattern finds in a text.
func found(t *testing.T, text, pattern string) string {
	t.Helper()
	m := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("no %s", pattern)
	}
	return m[1]
}

func specOf(t *testing.T, program string) garment.Spec {
	t.Helper()
	spec, err := plan.ParseSpec([]byte(read(t, program, "demo.json")))
	if err != nil {
		t.Fatal(err)
	}
	return spec
}

func piecesOf(t *testing.T, spec garment.Spec) garment.Set {
	t.Helper()
	set, err := garment.Pieces(spec)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func stitches(n int) string { return fmt.Sprintf("%d stitches", n) }

func rows(n int) string { return fmt.Sprintf("%d rows", n) }

// cm prints a length to a tenth of a millimetre.
func cm(l gauge.Length) string { return l.Format(gauge.Centimetre, 2) }
