package browsercheck

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// pagesFolder is the environment variable that names the folder of the pages.
const pagesFolder = "WALEWISE_PAGES"

// check tries one thing of a page and notes what is wrong.
type check struct {
	name string
	try  func(*page)
}

var general = []check{
	{"quiet", checkQuiet},
	{"width", checkWidth},
	{"drawings", checkDrawings},
	{"axe", checkAxe},
	{"still", checkStill},
}

var plain = []check{
	{"print", checkPrint},
}

var workSheet = []check{
	{"policy", checkPolicy},
	{"moves", checkMoves},
	{"keyboard", checkKeyboard},
	{"boxes", checkBoxes},
	{"links", checkLinks},
	{"walk", checkWalk},
	{"left over", checkLeftOver},
	{"place", checkPlace},
	{"no place", checkNoPlace},
	{"broken place", checkBrokenPlace},
	{"no script", checkNoScript},
	{"thumb", checkThumb},
	{"room", checkRoom},
	{"cut", checkCut}, // prints as well
	{"paper boxes", checkPaperBoxes},
}

func TestPages(t *testing.T) {
	folder := os.Getenv(pagesFolder)
	if folder == "" {
		skip(t, errors.New(pagesFolder+" names no folder of pages"))
	}
	files, err := filepath.Glob(filepath.Join(folder, "*.html"))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 {
		t.Fatalf("%s: no pages", folder)
	}
	for _, f := range files {
		t.Run(strings.TrimSuffix(filepath.Base(f), ".html"), func(t *testing.T) {
			t.Parallel()
			passes(t, f)
		})
	}
}

// aSheet is found in the text of a work sheet, also of one that lost its panel.
var aSheet = regexp.MustCompile(`id="hand"|class="step"`)

// passes runs all checks that the page in a file should pass.
func passes(t *testing.T, file string) {
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	checks := slices.Concat(general, plain)
	if aSheet.Match(text) {
		checks = slices.Concat(general, workSheet)
	}
	for _, c := range checks {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			for _, problem := range c.problems(t, file) {
				t.Error(problem)
			}
		})
	}
}

func (c check) problems(t *testing.T, file string) []string {
	t.Helper()
	p := newPage(t, file)
	c.try(p)
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.problems
}
