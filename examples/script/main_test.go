package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/sample/sampletest"
)

func Example() {
	main()
	// Output:
	// 13 stitches go over 24 rows.
	// From the middle up, row 1: 4 stitches; 2 stitches every 2nd row, 2 times; 1 stitch every 2nd row, 4 times; 1 stitch 6 rows later.
}

// Whoever copies the program can read it in a minute.
func TestStaysShort(t *testing.T) {
	text, err := os.ReadFile("main.go")
	if err != nil {
		t.Fatal(err)
	}
	code := 0
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "//") {
			code++
		}
	}
	if code > 25 {
		t.Errorf("%d lines of code, want at most 25", code)
	}
}

// The scripts that call sample programs say what their golden files hold, from whatever folder.
func TestScripts(t *testing.T) {
	top := filepath.Join("..", "..")
	for _, c := range []struct{ name, golden, folder, interpreter, args string }{
		{"edges", "edges.golden", top, "sh", "examples/script/edges.sh"},
		{"edges of a gauge", "edges-18x25.golden", ".", "sh", "edges.sh 18x25"},
		{"plan", "plan.golden", top, "python3", "examples/script/plan.py"},
		{"plan of a spec", "plan-vee-in-hand.golden", "..", "python3", "script/plan.py frontpiece/vee-in-hand.json"},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, messages, err := sampletest.Script(t, c.folder, c.interpreter, strings.Fields(c.args)...)
			if err != nil {
				t.Fatalf("%v: %s", err, messages)
			}
			golden.Check(t, "testdata/"+c.golden, []byte(out))
		})
	}
	for _, c := range []struct{ name, interpreter, args, says string }{
		{"a gauge without rows", "sh", "edges.sh 20x28 22", "edges.sh: 22: write stitches x rows over 10 cm, such as 22x30"},
		{"a gauge that is none", "sh", "edges.sh -h", "edges.sh: -h: write stitches x rows over 10 cm, such as 22x30"},
		{"help", "python3", "plan.py -h", "Account for the stitches of each panel"},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, messages, err := sampletest.Script(t, ".", c.interpreter, strings.Fields(c.args)...)
			if _, ended := errors.AsType[*exec.ExitError](err); !ended || out != "" || !strings.HasPrefix(messages, c.says) {
				t.Errorf("error %v, printed %q, said %q", err, out, messages)
			}
		})
	}
	// What the sample program refuses is said by it, and the script ends.
	t.Run("no such spec", func(t *testing.T) {
		out, messages, err := sampletest.Script(t, ".", "python3", "plan.py", "nosuch.json")
		_, ended := errors.AsType[*exec.ExitError](err)
		if !ended || out != "" || !strings.HasPrefix(messages, "frontpiece: open ") || strings.Contains(messages, "Traceback") {
			t.Errorf("error %v, printed %q, said %q", err, out, messages)
		}
	})
}
