package main

import (
	"fmt"
	"io"
	"strings"

	"example.com/walewise/internal/command"
)

const usage = `edges reads a request from every line of standard input and writes a line for each:
the steps of a drawn edge, and how they are said.

  edges [-as FORM] < REQUESTS

A request:

  ` + sample + `

Keys of its rules, and what stands for one that is left out:

  every   steps stand at every so manieth row; 1
  phase   rows below the first of these rows, less than every; 0
  apart   rows from one step to the next at least; 1
  most    stitches in one step at most, 0 for any number; 0
  base    stitches at most in the first of these rows, if more than most, or any
          number if most is 0; 0, which is no base
  plain   rows at the upper end without steps; 0
  single  every and phase of steps of one stitch, if not the same
  coming  rules for stitches that come, if not the same

Beside the rules, most is how many phrases a wording has at most (12), and alternate
whether a phrase may have two distances in turn (true).

A request that cannot be used does not change the exit status: look for "error" in the
answer.

`

const sample = `{"id": "n1", "path": "M 0 240 C 60 240 120 180 120 0", "gauge": {"stitches": "10", "rows": "10", "over": "100 mm"}, "rules": {"every": 2, "apart": 2}}`

// form is one of the ways to print an answer.
type form struct {
	name  string // as -as calls it
	write func(to []byte, a answer) []byte
}

func forms() []form {
	return []form{{"json", appendJSON}, {"text", appendText}}
}

// formOf returns the form of a name.
func formOf(name string) (form, bool) {
	for _, f := range forms() {
		if f.name == name {
			return f, true
		}
	}
	return form{}, false
}

// formNames lists the forms for a message.
func formNames() string {
	var names []string
	for _, f := range forms() {
		names = append(names, f.name)
	}
	return strings.Join(names, " or ")
}

// options are what the command line says.
type options struct{ form string }

// parse reads the command line. What is wrong with it is printed to stderr.
func parse(args []string, stderr io.Writer) (options, error) {
	var o options
	flags := command.Flags("edges", usage, stderr)
	flags.StringVar(&o.form, "as", "json", fmt.Sprintf("print as `FORM`: %s", formNames()))
	err := command.Parse(flags, args, func(rest []string) string { return o.problem(rest) })
	return o, err
}

// problem says in a line what is wrong with the options; it is empty if nothing is.
func (o options) problem(rest []string) string {
	if len(rest) > 0 {
		return fmt.Sprintf("unexpected %q: requests are read from standard input", rest[0])
	}
	if _, ok := formOf(o.form); !ok {
		return fmt.Sprintf("-as %q: %s", o.form, formNames())
	}
	return ""
}
