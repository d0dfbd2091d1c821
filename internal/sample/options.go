package sample

import (
	"flag"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"example.com/walewise/internal/command"
)

// usage returns what is printed before the flags.
func (p Program[T]) usage() string {
	prints, input := p.Prints, p.PlansFrom
	if prints == "" {
		prints = "how to knit it"
	}
	if input == "" {
		input = "[-spec FILE]"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s plans %s and prints %s.\n\n", p.Name, p.Plans, prints)
	ways := [][2]string{
		{input + " [-as FORM]", "print it"},
		{input + " -out DIR [-force]", "write it into a folder in every form"},
	}
	if p.Pieces != nil {
		ways = append(ways, [2]string{input + " -from READING", "print how things stand there and the rest"})
	}
	ways = append(ways, [2]string{"-check FILE", "knit a plan and say whether it can be"})
	for _, way := range ways {
		fmt.Fprintf(&b, "  %s %-*s %s\n", p.Name, len(input+" -out DIR [-force]"), way[0], way[1])
	}
	return b.String() + "\n"
}

// options are what the command line says.
type options struct {
	spec, form, out, check string
	force                  bool
	from                   int
	panel, piece           string
	given                  map[string]bool // the flags that it has
	canBegin               bool            // -from is one of the program's flags
}

// parse reads the command line. What is wrong with it is printed to stderr.
func (p Program[T]) parse(args []string, stderr io.Writer) (options, Inputs[T], error) {
	o := options{given: map[string]bool{}, canBegin: p.Pieces != nil}
	flags := command.Flags(p.Name, p.usage(), stderr)
	flags.StringVar(&o.spec, "spec", "", "read the spec from `FILE`; - is standard input; without it an embedded demo")
	flags.StringVar(&o.form, "as", "text", fmt.Sprintf("print as `FORM`: %s", p.formNames()))
	flags.StringVar(&o.out, "out", "", fmt.Sprintf("write %s into the folder `DIR`, which is made if there is none; not with -as", p.fileNames()))
	flags.BoolVar(&o.force, "force", false, "with -out: replace these files where they are there already")
	if p.Pieces != nil {
		flags.IntVar(&o.from, "from", 0, "print how things stand at the counter `READING`, in the hand after that row, and the rest from there")
		flags.StringVar(&o.panel, "panel", "", "with -from: the `PANEL`, such as \"right half\"; needed where more than one has the reading")
		flags.StringVar(&o.piece, "piece", "", "with -from: the `PIECE`, such as \"back\"; without it the first one")
	}
	flags.StringVar(&o.check, "check", "", "knit every piece of the plan in `FILE`; - is standard input; with no other flag")
	inputs := p.inputs(flags)
	err := command.Parse(flags, args, func(rest []string) string {
		flags.Visit(func(f *flag.Flag) { o.given[f.Name] = true })
		if problem := o.problem(rest); problem != "" {
			return problem
		}
		if _, ok := p.outputAs(o.form); !ok {
			return fmt.Sprintf("-as %q: %s", o.form, p.formNames())
		}
		return inputs.Problem(o.given)
	})
	return o, inputs, err
}

// problem says in a line which of the options do not go together; it is empty if all do.
func (o options) problem(rest []string) string {
	if len(rest) > 0 {
		return fmt.Sprintf("unexpected %q: give a spec with -spec, a plan with -check", rest[0])
	}
	for _, other := range slices.Sorted(maps.Keys(o.given)) {
		if o.given["check"] && other != "check" {
			return fmt.Sprintf("-check with -%s: it reads a plan and takes no other flag", other)
		}
	}
	for _, other := range []string{"as", "out", "force"} {
		if o.given["from"] && o.given[other] {
			return fmt.Sprintf("-from with -%s: it prints text, leave -%s out", other, other)
		}
	}
	for _, with := range []string{"panel", "piece"} {
		if o.canBegin && o.given[with] && !o.given["from"] {
			return fmt.Sprintf("-%s without -from: name the counter reading with -from", with)
		}
	}
	switch {
	case o.given["out"] && o.given["as"]:
		return "-out with -as: it writes every form, leave -as out"
	case o.given["force"] && !o.given["out"]:
		return "-force without -out: name the folder with -out"
	}
	return ""
}
