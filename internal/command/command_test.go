package command_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"example.com/walewise/internal/command"
)

// What is wrong with a command line is said in one line, and so is any error, whatever was
// given.
func TestParse(t *testing.T) {
	const lists = " (-h lists the flags)\n"
	for _, c := range []struct {
		args []string
		says string
		is   error
	}{
		{nil, "", nil},
		{[]string{"-rows", "60"}, "", nil},
		{[]string{"-rows", "60", "left"}, "p: unexpected left\n", command.ErrUsage},
		{[]string{"left\nright\x1b[31m"}, "p: unexpected left right [31m\n", command.ErrUsage},
		{[]string{"-columns"}, "p: flag provided but not defined: -columns" + lists, command.ErrUsage},
		{[]string{"-two\nlines"}, "p: flag provided but not defined: -two lines" + lists, command.ErrUsage},
		{[]string{"---"}, "p: bad flag syntax: ---" + lists, command.ErrUsage},
		{[]string{"-rows"}, "p: flag needs an argument: -rows" + lists, command.ErrUsage},
		{[]string{"-rows", "1e400"}, `p: invalid value "1e400" for flag -rows: parse error` + lists, command.ErrUsage},
		{[]string{"-h"}, "p knits.\n  -rows int\n    \tso many\n\nExit status 0; 1, with one line that says why, if it cannot be done; 2 for wrong usage.\n", command.ErrHelp},
	} {
		var said bytes.Buffer
		flags := command.Flags("p", "p knits.\n", &said)
		flags.Int("rows", 0, "so many")
		err := command.Parse(flags, c.args, func(rest []string) string {
			if len(rest) > 0 {
				return "unexpected " + rest[0]
			}
			return ""
		})
		if !errors.Is(err, c.is) || said.String() != c.says {
			t.Errorf("%q: error %v, said %q, want %v and %q", c.args, err, said.String(), c.is, c.says)
		}
	}
}

func TestOneLine(t *testing.T) {
	endless := strings.Repeat("a", 5000)
	for text, want := range map[string]string{
		"size: too small":                "size: too small",
		"two\n lines":                    "two lines",
		"open \x1b[31m\xff: none":        "open [31m\uFFFD: none",
		"open " + endless + ": too long": "open " + endless[:495] + " ... " + endless[:490] + ": too long",
	} {
		if got := command.OneLine(errors.New(text)); got != want {
			t.Errorf("%.40q gives %q, want %q", text, got, want)
		}
	}
}
