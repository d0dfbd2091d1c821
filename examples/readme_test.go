// Package examples holds the path through the sample programs, README.md beside it, to
// what they do: its sums, its pictures and its commands.
package examples_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"example.com/walewise/internal/golden"
)

func readme(t *testing.T) string {
	t.Helper()
	return strings.ReplaceAll(read(t, "README.md"), "\r\n", "\n")
}

var block = regexp.MustCompile("(?s)<!-- ([^>]+) -->\n```text\n(.*?)```\n")

// README's blocks are those that are made of the programs' numbers today.
func TestBlocks(t *testing.T) {
	text, found := readme(t), map[string]bool{}
	made := block.ReplaceAllStringFunc(text, func(old string) string {
		name := block.FindStringSubmatch(old)[1]
		if blocks[name] == nil || found[name] {
			t.Errorf("block %q is unknown, or there twice", name)
			return old
		}
		found[name] = true
		return "<!-- " + name + " -->\n```text\n" + blocks[name](t) + "```\n"
	})
	for name := range blocks {
		if !found[name] {
			t.Errorf("no block %q", name)
		}
	}
	if n := strings.Count(text, "```text"); n != len(found) {
		t.Errorf("%d blocks of text, %d of them with a name", n, len(found))
	}
	golden.Check(t, "README.md", []byte(made))
}

// Elsewhere README has no number, which no test would look at.
func TestNumbersStandInBlocks(t *testing.T) {
	prose := regexp.MustCompile("(?s)```.*?```|\\]\\([^)]*\\)").ReplaceAllString(readme(t), "")
	for line := range strings.Lines(prose) {
		if strings.ContainsFunc(line, unicode.IsNumber) {
			t.Errorf("a number outside of the blocks: %s", line)
		}
	}
}

// README has every sample program, and every one that it names is there.
func TestPrograms(t *testing.T) {
	text := readme(t)
	programs, err := filepath.Glob("*/main.go")
	if err != nil || len(programs) == 0 {
		t.Fatal(programs, err)
	}
	for _, main := range programs {
		if name := filepath.Base(filepath.Dir(main)); !strings.Contains(text, "\n## "+name+": ") || !strings.Contains(text, "go run ./examples/"+name) {
			t.Errorf("README says nothing of %s", name)
		}
	}
	for _, named := range regexp.MustCompile(`\./?examples/([\w./-]+)|\]\(([^)#]+)\)`).FindAllStringSubmatch(text, -1) {
		if _, err := os.Stat(filepath.FromSlash(named[1] + named[2])); err != nil {
			t.Errorf("README names what is not there: %v", err)
		}
	}
}
