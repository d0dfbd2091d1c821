package sample_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/plan"
)

var tinyFile = filepath.Join("..", "..", "testdata", "plan-tiny.json")

// tiny returns a small plan that can be knitted.
func tiny(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(tinyFile)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestCheck(t *testing.T) {
	for _, c := range []struct{ name, stdin, file string }{
		{"tiny", "", tinyFile},
		{"two", twoPieces(t), "-"},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, _, err := run(c.stdin, "-check", c.file)
			if err != nil {
				t.Fatal(err)
			}
			golden.Check(t, "testdata/check-"+c.name+".golden", []byte(out))
		})
	}
}

// twoPieces returns the small plan with another piece, worked in the hand.
func twoPieces(t *testing.T) string {
	t.Helper()
	p, err := plan.Parse([]byte(tiny(t)))
	if err != nil {
		t.Fatal(err)
	}
	whole := shaping.Centred(3)
	p.Pieces = append(p.Pieces, plan.Piece{Work: shaping.Work{
		Name: "back", Place: shaping.Hand, Facing: shaping.KnitSide,
		Panels: shaping.Tree{{Name: shaping.Body, FirstRow: 1, LastRow: 1, Needles: whole}},
		Rows: []shaping.Row{{
			Row: 1, Panel: shaping.Body, From: shaping.Right, Knit: whole,
			Before: []shaping.Action{{Do: shaping.DoCastOn, Needles: whole}},
			After:  []shaping.Action{{Do: shaping.DoBindOff, Needles: whole}},
		}},
		Ledger: shaping.Ledger{CastOn: 3, BoundOff: 3},
	}})
	var text bytes.Buffer
	if err := plan.Write(&text, p); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

// A plan that cannot be knitted is refused with piece, panel, row, needle and reason.
func TestCheckRefuses(t *testing.T) {
	const firstWrap = `"after": [
      {
       "do": "wrap",
       "first": "R4"
      }
     ]`
	for _, c := range []struct {
		why, document string
		is            error
		says          string
	}{
		{
			"the first wrap left out", sampletest.Replaced(t, tiny(t), firstWrap, `"after": []`), bed.ErrImpossible,
			"front, right half, row 7, needle R4: the row turns beside this newly held needle: without a wrap a hole stays",
		},
		{
			"a stitch too many live", sampletest.Replaced(t, tiny(t), `"live": 20`, `"live": 21`), bed.ErrUntrue,
			"front: the ledger says 20 cast on = 21 live, counted are 20 cast on = 20 live",
		},
		{
			"a stitch too many bound off in the second piece", sampletest.Replaced(t, twoPieces(t), `"boundOff": 3`, `"boundOff": 4`), bed.ErrUntrue,
			"back: the ledger says 3 cast on = 4 bound off + 0 live, counted are 3 cast on = 3 bound off + 0 live",
		},
	} {
		t.Run(c.why, func(t *testing.T) {
			out, _, err := run(c.document, "-check", "-")
			if !errors.Is(err, c.is) || out != "" {
				t.Fatalf("error %v, printed %q", err, out)
			}
			if got := command.OneLine(err); got != c.says {
				t.Errorf("says\n%s, want\n%s", got, c.says)
			}
		})
	}
}

// What is no plan is refused before anything is knitted.
func TestCheckMalformed(t *testing.T) {
	for _, c := range []struct{ why, document, says string }{
		{"no document", "", "document: empty"},
		{"no JSON", "knit 1, purl 1", "document"},
		{"a spec", demo, `only "walewise-plan/1" can be read here`},
		{"unknown key", sampletest.Replaced(t, tiny(t), `"on": "bed"`, `"at": "bed"`), "pieces[0]"},
		{"a needle that is none", sampletest.Replaced(t, tiny(t), `"R10"`, `"R0"`), "pieces[0].panels[0].last"},
		{"too large", strings.Repeat(" ", 2<<20), "1 MiB"},
	} {
		t.Run(c.why, func(t *testing.T) {
			out, _, err := run(c.document, "-check", "-")
			if !errors.Is(err, plan.ErrPlan) || out != "" {
				t.Fatalf("error %v, printed %q", err, out)
			}
			if got := command.OneLine(err); !strings.Contains(got, c.says) {
				t.Errorf("says %q, want %q in it", got, c.says)
			}
		})
	}
	if _, _, err := run("", "-check", filepath.Join(t.TempDir(), "none.json")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file that does not exist: error %v", err)
	}
}
