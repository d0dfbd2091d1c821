// Package golden compares what a test made with a file that stands for the
// agreed result.
//
// With WALEWISE_UPDATE=1 in the environment the files are written anew, and
// compared all the same. It is a variable and not a flag because a flag exists
// only in the test binaries that define it: go test ./... with it would fail in
// every other package.
package golden

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// Update is the environment variable that has golden files written anew when
// it is "1".
const Update = "WALEWISE_UPDATE"

const (
	context = 3   // lines shown before the first difference
	most    = 8   // lines shown of either side
	wide    = 120 // bytes shown of a line
)

// Check fails the test when got differs from the file at path, which is taken
// from the folder of the test's package and written with slashes. Line ends of
// both are read as \n. A failure does not end the test, so that one run shows
// every file that differs.
//
// What was made is then also stored in the test's artifact folder, under the
// name of the file; go test -artifacts keeps it.
func Check(t testing.TB, path string, got []byte) {
	t.Helper()
	file := filepath.FromSlash(path)
	got = unixLines(got)
	// Read here and not when the package starts: only so does the variable
	// count for the cache of test results.
	update := os.Getenv(Update) == "1"
	want, err := os.ReadFile(file)
	if update && (err != nil || !bytes.Equal(unixLines(want), got)) {
		if err := write(file, got); err != nil {
			t.Errorf("golden: %v", err)
			return
		}
		want, err = os.ReadFile(file)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		t.Errorf("golden: there is no %s%s; %s=1 writes it", path, store(t, file, got), Update)
	case err != nil:
		t.Errorf("golden: %v", err)
	case !bytes.Equal(unixLines(want), got):
		t.Errorf("golden: %s differs%s; %s=1 writes it anew (-want +got):\n%s",
			path, store(t, file, got), Update, difference(unixLines(want), got))
	}
}

func unixLines(b []byte) []byte {
	return bytes.ReplaceAll(b, []byte("\r\n"), []byte("\n"))
}

func write(file string, b []byte) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
		return err
	}
	return os.WriteFile(file, b, 0o666)
}

// store keeps what was made among the test's artifacts and says where, if it
// could.
func store(t testing.TB, file string, got []byte) string {
	kept := filepath.Join(t.ArtifactDir(), filepath.Base(file))
	if err := write(kept, got); err != nil {
		return ""
	}
	return ", what was made is in " + kept
}

// difference lists the lines around the first difference: a few that agree,
// then those of want and those of got up to where the two agree again to their
// ends.
func difference(want, got []byte) string {
	w, g := lines(want), lines(got)
	shorter := min(len(w), len(g))
	same := 0
	for same < shorter && w[same] == g[same] {
		same++
	}
	after := 0
	for after < shorter-same && w[len(w)-1-after] == g[len(g)-1-after] {
		after++
	}
	w, g = w[:len(w)-after], g[:len(g)-after]

	// Both begin in the same column, so that the eye finds the difference.
	column := 0
	if same < len(w) && same < len(g) {
		for column < min(len(w[same]), len(g[same])) && w[same][column] == g[same][column] {
			column++
		}
	}
	var b strings.Builder
	fmt.Fprintf(&b, "line %d, byte %d\n", same+1, column+1)
	first := max(0, same-context)
	for i, l := range w[first:same] {
		fmt.Fprintf(&b, " %5d %s\n", first+i+1, show(l, 0))
	}
	side := func(mark string, ls []string) {
		for i, l := range ls[:min(most, len(ls))] {
			from := 0
			if i == 0 {
				from = column
			}
			fmt.Fprintf(&b, "%s%5d %s\n", mark, same+i+1, show(l, from))
		}
		if more := len(ls) - most; more > 0 {
			fmt.Fprintf(&b, "%s       and %d more\n", mark, more)
		}
	}
	side("-", w[same:])
	side("+", g[same:])
	return b.String()
}

// lines keeps the line ends, so that a missing last one is a difference too.
func lines(b []byte) []string {
	s := strings.SplitAfter(string(b), "\n")
	if s[len(s)-1] == "" {
		s = s[:len(s)-1]
	}
	return s
}

// show returns a line fit for a listing: cut to the part about the byte at
// column, and quoted where a reader could not see what stands in it.
func show(line string, column int) string {
	text, ended := strings.CutSuffix(line, "\n")
	before, after := "", ""
	if len(text) > wide {
		from := runeStart(text, max(0, min(column-wide/2, len(text)-wide)))
		to := runeStart(text, min(from+wide, len(text)))
		if from > 0 {
			before = "…"
		}
		if to < len(text) {
			after = "…"
		}
		text = text[from:to]
	}
	hidden := func(r rune) bool { return r == utf8.RuneError || !unicode.IsPrint(r) }
	if strings.ContainsFunc(text, hidden) || strings.HasSuffix(text, " ") {
		text = strconv.Quote(text)
	}
	if !ended {
		after += " (no line end)"
	}
	return before + text + after
}

// runeStart returns the start of the character that holds byte i.
func runeStart(s string, i int) int {
	for i > 0 && i < len(s) && !utf8.RuneStart(s[i]) {
		i--
	}
	return i
}
