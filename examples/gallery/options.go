package main

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/walewise/internal/command"
)

const usage = `gallery prints worked examples of necks, shoulders, armholes and caps to study.

  gallery [-only NAME] [-as FORM]  print them
  gallery -out DIR [-force]        write the page and each chart into a folder

The names: %s.

`

// form is one of the ways to print examples.
type form struct {
	name  string // as -as calls it
	write func(io.Writer, []shownGroup) error
}

func forms() []form {
	return []form{{"html", writePage}, {"text", writeText}, {"svg", writeChartOf}}
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
type options struct {
	form, only, out string
	force           bool
	toFolder        bool // -out is given
}

// parse reads the command line. What is wrong with it is printed to stderr.
func parse(args []string, stderr io.Writer) (options, error) {
	var o options
	flags := command.Flags("gallery", fmt.Sprintf(usage, names()), stderr)
	flags.StringVar(&o.form, "as", "html", "print as `FORM`: html, text, or svg, which is the chart of the one that -only names")
	flags.StringVar(&o.only, "only", "", "print the example of this `NAME` alone")
	flags.StringVar(&o.out, "out", "", "write gallery.html and the chart of each example into the folder `DIR`, which is made if there is none; not with -as or -only")
	flags.BoolVar(&o.force, "force", false, "with -out: replace these files where they are there already")
	err := command.Parse(flags, args, func(rest []string) string {
		given := map[string]bool{}
		flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
		o.toFolder = given["out"]
		return o.problem(given, rest)
	})
	return o, err
}

// problem says in a line what is wrong with the options; it is empty if nothing is.
func (o options) problem(given map[string]bool, rest []string) string {
	if len(rest) > 0 {
		return fmt.Sprintf("unexpected %q: name an example with -only", rest[0])
	}
	if _, ok := formOf(o.form); !ok {
		return fmt.Sprintf("-as %q: html, text or svg", o.form)
	}
	switch {
	case given["only"] && !isName(o.only):
		return fmt.Sprintf("-only %q: there is %s", o.only, names())
	case o.form == "svg" && !given["only"]:
		return "-as svg without -only: name the example with -only, or write all with -out"
	case given["out"] && (given["as"] || given["only"]):
		return "-out with -as or -only: it writes everything, leave them out"
	case given["force"] && !given["out"]:
		return "-force without -out: name the folder with -out"
	}
	return ""
}

// groups returns the examples that are asked for.
func (o options) groups() []group {
	if o.only == "" {
		return gallery()
	}
	for _, g := range gallery() {
		for _, e := range g.examples {
			if e.name == o.only {
				g.examples = []example{e}
				return []group{g}
			}
		}
	}
	return nil
}

// isName reports whether an example has that name.
func isName(name string) bool { return slices.Contains(strings.Split(names(), ", "), name) }

// names lists the examples for a message.
func names() string {
	var list []string
	for _, g := range gallery() {
		for _, e := range g.examples {
			list = append(list, e.name)
		}
	}
	return strings.Join(list, ", ")
}
