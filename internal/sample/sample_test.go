package sample_test

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/sample"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

const demo = `{
 "format": "walewise-spec/1",
 "title": "a shawl collar",
 "gauge": {"stitches": "20", "rows": "28", "over": "10 cm"},
 "body": {"width": "50 cm", "length": "40 cm"},
 "armhole": {"depth": "20 cm"},
 "neck": {"shape": "round", "width": "18 cm", "depth": "8 cm"},
 "shoulder": {"drop": "3 cm"}
}`

// titles plans no more than the title of a garment.
var titles = sample.Program[string]{
	Name:   "titles",
	Plans:  "the title of a garment",
	Demo:   []byte(demo),
	Plan:   title,
	Pieces: func(string) []garment.Piece { return []garment.Piece{front()} },
	Outputs: []sample.Output[string]{
		{Form: "loud", File: "loud.txt", Write: func(w io.Writer, title string) error { return writeLine(w, strings.ToUpper(title)) }},
		{Form: "text", File: "title.txt", Write: writeLine},
		{Form: "words", File: "words.csv", Write: func(w io.Writer, title string) error { return writeLine(w, strings.ReplaceAll(title, " ", ",")) }},
	},
}

// front returns the front of the demo.
func front() garment.Piece {
	spec, err := plan.ParseSpec([]byte(demo))
	if err != nil {
		panic(err)
	}
	piece, err := garment.Front(spec)
	if err != nil {
		panic(err)
	}
	return piece
}

var errUntitled = errors.New("title: missing")

func title(spec garment.Spec) (string, error) {
	if spec.Title == "" {
		return "", errUntitled
	}
	return spec.Title, nil
}

func writeLine(w io.Writer, text string) error {
	_, err := fmt.Fprintln(w, text)
	return err
}

// run is titles as the tests run it.
var run = sampletest.Command(titles.Run).Run

func TestForms(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"", "a shawl collar\n"},
		{"-as text", "a shawl collar\n"},
		{"-as loud", "A SHAWL COLLAR\n"},
		{"-as words", "a,shawl,collar\n"},
	} {
		if out, messages, err := run("", strings.Fields(c.args)...); err != nil || out != c.want || messages != "" {
			t.Errorf("%q: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
}

// The rest of a piece is that of its sheet; a piece or a reading that there is not is an
// error that names those that there are.
func TestFrom(t *testing.T) {
	for _, c := range []struct {
		args []string
		at   sheet.Reading
	}{
		{[]string{"-from", "100"}, sheet.Reading{Counter: 100}},
		{[]string{"-from", "160", "-panel", "left half", "-piece", "front"}, sheet.Reading{Panel: "left half", Counter: 160}},
	} {
		var want strings.Builder
		if err := sheet.WriteFrom(&want, front(), c.at); err != nil {
			t.Fatal(err)
		}
		if out, messages, err := run("", c.args...); err != nil || out != want.String() || messages != "" {
			t.Errorf("%q: error %v, printed %d bytes of %d, said %q", c.args, err, len(out), want.Len(), messages)
		}
	}
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"-from", "7", "-piece", "collar"}, `-piece "collar": there is front`},
		{[]string{"-from", "7", "-piece", ""}, `-piece "": there is front`},
		{[]string{"-from", "160"}, "name the panel"},
		{[]string{"-from", "7", "-panel", "left half"}, "of the left half"},
		{[]string{"-from", "-1"}, "there are 000 to"},
	} {
		out, _, err := run("", c.args...)
		if err == nil || errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(command.OneLine(err), c.says) {
			t.Errorf("%q: error %v, printed %d bytes", c.args, err, len(out))
		}
	}
}

func TestSpecFromFileAndStandardInput(t *testing.T) {
	mine := sampletest.Replaced(t, demo, "a shawl collar", "a vest")
	file := filepath.Join(t.TempDir(), "vest.json")
	put(t, file, mine)
	for _, c := range []struct{ spec, stdin string }{{file, ""}, {"-", mine}} {
		if out, _, err := run(c.stdin, "-spec", c.spec); err != nil || out != "a vest\n" {
			t.Errorf("-spec %s: error %v, printed %q", c.spec, err, out)
		}
	}
	if _, _, err := run("", "-spec", filepath.Join(t.TempDir(), "none.json")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file that does not exist: error %v", err)
	}
}

func TestUsage(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, c := range []struct{ args, says string }{
		{"-as poem", `-as "poem": loud, text or words`},
		{"-nonsense", "-nonsense"},
		{"demo.json", `unexpected "demo.json"`},
		{"-spec", "-spec"},
		{"-check", "-check"},
		{"-out", "-out"},
		{"-check - -spec -", "-check with -spec"},
		{"-check - -as text", "-check with -as"},
		{"-check - -out front", "-check with -out"},
		{"-check - -force", "-check with -force"},
		{"-check - plan.json", `unexpected "plan.json"`},
		{"-out front -as text", "-out with -as"},
		{"-force", "-force without -out"},
		{"-from", "-from"},
		{"-from neck", "-from"},
		{"-from 7 -as text", "-from with -as"},
		{"-from 7 -out front", "-from with -out"},
		{"-panel body", "-panel without -from"},
		{"-piece front", "-piece without -from"},
		{"-check - -from 7", "-check with -from"},
	} {
		out, messages, err := run(demo, strings.Fields(c.args)...)
		if !errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(messages, c.says) {
			t.Errorf("%s: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
	if made := listing(t, "."); len(made) != 0 {
		t.Errorf("wrong usage made %q", made)
	}
}

// What cannot be planned or written is an error as it is, and nothing is printed.
func TestNothingByHalves(t *testing.T) {
	errTorn := errors.New("torn")
	torn := titles
	torn.Outputs = append(torn.Outputs[:2:2], sample.Output[string]{
		Form: "torn", File: "torn.txt", Write: func(w io.Writer, title string) error { return errors.Join(writeLine(w, title), errTorn) },
	})
	untitled := sampletest.Replaced(t, demo, "a shawl collar", "")
	for _, c := range []struct {
		spec, args string
		is         error
	}{
		{untitled, "-spec -", errUntitled},
		{untitled, "-spec - -out titles", errUntitled},
		{"", "-as torn", errTorn},
		{"", "-out titles", errTorn},
		{"[]", "-spec -", garment.ErrSpec},
	} {
		t.Chdir(t.TempDir())
		out, messages, err := sampletest.Command(torn.Run).Run(c.spec, strings.Fields(c.args)...)
		if !errors.Is(err, c.is) || out != "" || messages != "" {
			t.Errorf("%s: error %v, printed %q, said %q", c.args, err, out, messages)
		}
		if made := listing(t, "."); len(made) != 0 {
			t.Errorf("%s: made %q", c.args, made)
		}
	}
}
