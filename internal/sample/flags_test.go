package sample_test

import (
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/sample"
	"example.com/walewise/internal/sample/sampletest"
	"example.com/walewise/shaping/garment"
)

// dyed plans the title of a garment and what two flags of its own say.
var dyed = sample.Program[string]{
	Name: "dyed", Plans: "the title of a garment in a colour", Prints: "it", Demo: []byte(demo), Outputs: titles.Outputs,
	Flags: []sample.Flag{
		{Name: "colour", Value: "FILE", Usage: "read the colour from `FILE`", File: true, WithSpec: true},
		{Name: "shade", Value: "WORD", Usage: "a `WORD` before it"},
	},
	PlanWith: func(spec garment.Spec, flags sample.Values) (string, error) {
		colour := "undyed"
		f, ok, err := flags.Open("colour")
		if err != nil {
			return "", err
		}
		if ok {
			defer f.Close()
			text, err := io.ReadAll(f)
			if err != nil {
				return "", err
			}
			colour = strings.TrimSpace(string(text))
		}
		return strings.TrimSpace(flags.Text("shade") + " " + colour + " " + spec.Title), nil
	},
}

func TestFlagsOfOneProgram(t *testing.T) {
	t.Chdir(t.TempDir())
	put(t, "red", "red\n")
	put(t, "spec.json", demo)
	command := sampletest.Command(dyed.Run)
	for _, c := range []struct{ args, stdin, want string }{
		{"", "", "undyed a shawl collar\n"},
		{"-shade dark", "", "dark undyed a shawl collar\n"},
		{"-spec spec.json -colour red", "", "red a shawl collar\n"},
		{"-spec - -colour red -shade light", demo, "light red a shawl collar\n"},
		{"-spec spec.json -colour -", "blue", "blue a shawl collar\n"},
		{"-as loud -spec spec.json -colour -", "blue", "BLUE A SHAWL COLLAR\n"},
	} {
		if out, messages, err := command.Run(c.stdin, strings.Fields(c.args)...); err != nil || out != c.want || messages != "" {
			t.Errorf("%q: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
	if _, _, err := command.Run("", "-spec", "spec.json", "-colour", filepath.Join("none", "red")); err == nil {
		t.Error("a file that does not exist was read")
	}
}

func TestUsageOfOneProgram(t *testing.T) {
	for _, c := range []struct{ args, says string }{
		{"-spec -", "-spec without -colour: give both, or neither for the demo"},
		{"-colour red", "-colour without -spec: give both, or neither for the demo"},
		{"-spec - -colour -", "-spec and -colour: only one of them can be read from standard input"},
		{"-check - -shade dark", "-check with -shade: it reads a plan and takes no other flag"},
		{"-check - -colour red", "-check with -colour: it reads a plan and takes no other flag"},
		{"-shade", "-shade"},
	} {
		out, messages, err := sampletest.Command(dyed.Run).Run(demo, strings.Fields(c.args)...)
		if !errors.Is(err, command.ErrUsage) || out != "" || !strings.Contains(messages, c.says) {
			t.Errorf("%s: error %v, printed %q, said %q", c.args, err, out, messages)
		}
	}
	_, messages, err := sampletest.Command(dyed.Run).Run("", "-h")
	const ways = "dyed plans the title of a garment in a colour and prints it.\n\n" +
		"  dyed [-spec FILE -colour FILE] [-shade WORD] [-as FORM]        print it\n" +
		"  dyed [-spec FILE -colour FILE] [-shade WORD] -out DIR [-force] write it into a folder in every form\n" +
		"  dyed -check FILE                                               knit a plan and say whether it can be\n\n"
	if !errors.Is(err, command.ErrHelp) || !strings.HasPrefix(messages, ways) {
		t.Errorf("error %v, said\n%s", err, messages)
	}
}
