package api_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"example.com/walewise/internal/api"
	"example.com/walewise/internal/golden"
	"github.com/google/go-cmp/cmp"
)

// baseline holds what was promised last, one file a release; later files add to earlier ones.
const baseline = "../../testdata/api"

// What stands in the baseline stays: a symbol that is gone or has another type fails. What is
// new is listed, and stands in next.txt until a release takes it in.
func TestNothingPromisedIsGone(t *testing.T) {
	now, err := api.Lines(os.DirFS("../.."))
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(baseline, "v*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no baseline in %s: %v", baseline, err)
	}
	var promised []string
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		promised = append(promised, strings.Split(strings.TrimSpace(strings.ReplaceAll(string(text), "\r\n", "\n")), "\n")...)
	}
	gone, added := api.Compare(promised, now)
	for _, line := range gone {
		t.Errorf("promised and gone: %s", line)
	}
	text := ""
	for _, line := range added {
		text += line + "\n"
	}
	golden.Check(t, filepath.Join(baseline, "next.txt"), []byte(text))
}

func TestLines(t *testing.T) {
	tree := fstest.MapFS{
		"a/a.go": {Data: []byte(`package a

type T struct {
	A, B int
	c    string
}

func (t *T) M(x, y int) (s string, err error) { return "", nil }
func (t T) m()                                {}
func F[E any](list ...E) []E                  { return list }

const (
	One uint8 = iota
	Two
	three
)

var Err error

type I interface{ Do(n int) }
type A = T
type hidden struct{ X int }

func (h hidden) Exported() {}
`)},
		"a/a_test.go":       {Data: []byte("package a\nfunc Test() {}")},
		"internal/b/b.go":   {Data: []byte("package b\nfunc B() {}")},
		"examples/c/c.go":   {Data: []byte("package main\nfunc C() {}")},
		"a/testdata/d/d.go": {Data: []byte("package d\nfunc D() {}")},
	}
	got, err := api.Lines(tree)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"pkg a, const One uint8",
		"pkg a, const Two uint8",
		"pkg a, func F[E any](...E) []E",
		"pkg a, method (*T) M(int, int) (string, error)",
		"pkg a, type A = T",
		"pkg a, type I interface",
		"pkg a, type I interface, Do(int)",
		"pkg a, type T struct",
		"pkg a, type T struct, A int",
		"pkg a, type T struct, B int",
		"pkg a, var Err error",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestCompare(t *testing.T) {
	gone, added := api.Compare([]string{"a", "b"}, []string{"b", "c"})
	if diff := cmp.Diff([][]string{{"a"}, {"c"}}, [][]string{gone, added}); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
