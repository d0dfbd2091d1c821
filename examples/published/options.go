package main

import (
	"fmt"
	"io"

	"example.com/walewise/internal/command"
)

const usage = `published puts published worked examples beside what the library gives for them.

  published [-as FORM]       print all of them
  published -only ID         print one, with its inputs

`

const text = "text"

// form is one of the ways to print examples.
type form struct {
	name  string // as -as calls it
	write func(io.Writer, []compared) error
}

func forms() []form {
	return []form{{text, writeText}, {"csv", writeCSV}, {"json", writeJSON}}
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

// options are what the command line says.
type options struct{ form, only, table string }

// parse reads the command line. What is wrong with it is printed to stderr.
func parse(args []string, stderr io.Writer) (options, error) {
	var o options
	flags := command.Flags("published", usage, stderr)
	flags.StringVar(&o.form, "as", text, "print as `FORM`: text, csv or json")
	flags.StringVar(&o.only, "only", "", "print the example with this `ID` alone, with its inputs; all of them are printed without it")
	flags.StringVar(&o.table, "table", "", "read the examples from `FILE`, - for standard input; without it from testdata/published.json in this folder or one above it")
	err := command.Parse(flags, args, func(rest []string) string { return o.problem(rest) })
	return o, err
}

// problem says in a line what is wrong with the options; it is empty if nothing is.
func (o options) problem(rest []string) string {
	if len(rest) > 0 {
		return fmt.Sprintf("unexpected %q: name an example with -only, a file with -table", rest[0])
	}
	if _, ok := formOf(o.form); !ok {
		return fmt.Sprintf("-as %q: text, csv or json", o.form)
	}
	return ""
}

// examples returns the examples that are asked for.
func (o options) examples(stdin io.Reader) ([]example, error) {
	list, err := readTable(o.table, stdin)
	if err != nil || o.only == "" {
		return list, err
	}
	for _, e := range list {
		if e.ID == o.only {
			return []example{e}, nil
		}
	}
	return nil, fmt.Errorf("-only %q: the table has no example with this id, such as %s", o.only, list[0].ID)
}
