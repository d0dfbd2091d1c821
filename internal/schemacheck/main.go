// Schemacheck says whether JSON documents keep to a JSON Schema (2020-12).
//
//	go run . [-not] SCHEMA DOCUMENT...
//
// Each failure is one line on standard output: the document, the place in it
// and what is wrong there. With -not every document must break the schema, and
// a document that keeps to it is the failure. The exit code is 0 when there was
// no failure, 1 when there was one, 2 when the schema or the command is bad.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("schemacheck", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() {
		fmt.Fprintln(stderr, "usage: schemacheck [-not] SCHEMA DOCUMENT...")
		flags.PrintDefaults()
	}
	not := flags.Bool("not", false, "every document must break the schema")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() < 2 {
		flags.Usage()
		return 2
	}
	compiler := jsonschema.NewCompiler()
	compiler.DefaultDraft(jsonschema.Draft2020)
	schema, err := compiler.Compile(flags.Arg(0))
	if err != nil {
		fmt.Fprintln(stderr, "schemacheck:", err)
		return 2
	}
	failed := 0
	for _, name := range flags.Args()[1:] {
		failures := check(schema, name, *not)
		for _, f := range failures {
			fmt.Fprintf(stdout, "%s: %s\n", name, f)
		}
		failed += len(failures)
	}
	if failed > 0 {
		return 1
	}
	return 0
}

// check returns what is wrong with the document in a file, a line each. A file
// that holds no single JSON document is wrong either way.
func check(schema *jsonschema.Schema, name string, not bool) []string {
	doc, err := read(name)
	if err != nil {
		return []string{oneLine(err.Error())}
	}
	err = schema.Validate(doc)
	if not {
		if err == nil {
			return []string{"keeps to the schema, and must not"}
		}
		return nil
	}
	if err == nil {
		return nil
	}
	var invalid *jsonschema.ValidationError
	if !errors.As(err, &invalid) {
		return []string{oneLine(err.Error())}
	}
	failures := leaves(invalid, message.NewPrinter(language.English))
	// The validator goes through objects in no order.
	slices.Sort(failures)
	return slices.Compact(failures)
}

func read(name string) (any, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return jsonschema.UnmarshalJSON(f)
}

// leaves returns the failures that have no other failure as their cause.
func leaves(e *jsonschema.ValidationError, p *message.Printer) []string {
	if len(e.Causes) == 0 {
		place := "/" + strings.Join(e.InstanceLocation, "/")
		return []string{oneLine(place + ": " + e.ErrorKind.LocalizedString(p))}
	}
	var all []string
	for _, c := range e.Causes {
		all = append(all, leaves(c, p)...)
	}
	return all
}

func oneLine(s string) string {
	return strings.Join(strings.Fields(s), " ")
}
