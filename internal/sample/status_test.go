package sample_test

import (
	"strings"
	"testing"

	"example.com/walewise/internal/sample/sampletest"
)

func TestMain(m *testing.M) { sampletest.Main(m, titles.Main) }

// The exit status says what went wrong, and one line why.
func TestExitStatus(t *testing.T) {
	document := tiny(t)
	in := strings.NewReader
	sampletest.Exits(t, []sampletest.Exit{
		{Args: "-as words", Stdin: in(""), Status: 0, Says: ""},
		{Args: "-check -", Stdin: in(document), Status: 0, Says: ""},
		{Args: "-h", Stdin: in(""), Status: 0, Says: "titles plans the title of a garment and prints how to knit it.\n"},
		{Args: "-check -", Stdin: in(sampletest.Replaced(t, document, `"live": 20`, `"live": 21`)), Status: 1, Says: "titles: front: "},
		{Args: "-check -", Stdin: in("\x00\xff"), Status: 1, Says: "titles: document"},
		{Args: "-check none.json", Stdin: in(""), Status: 1, Says: "titles: open none.json"},
		{Args: "-spec -", Stdin: in("[]"), Status: 1, Says: "titles: document"},
		{Args: "-out sample.go", Stdin: in(""), Status: 1, Says: "titles: sample.go: is no folder"},
		{Args: "-from 7", Stdin: in(""), Status: 0, Says: ""},
		{Args: "-from 1000", Stdin: in(""), Status: 1, Says: "titles: front, counter 1000: there are"},
		{Args: "-as poem", Stdin: in(""), Status: 2, Says: "titles: -as"},
		{Args: "-check - -force", Stdin: in(document), Status: 2, Says: "titles: -check with -force"},
		{Args: "-out testdata -as words", Stdin: in(""), Status: 2, Says: "titles: -out with -as"},
	})
}
