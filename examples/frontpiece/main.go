// Command frontpiece plans the front of a garment and prints how to knit it.
//
//	go run ./examples/frontpiece
//	go run ./examples/frontpiece -spec my.json -as json
//
// Without -spec it plans an embedded demo. Exit status 0; 1 for a spec that cannot
// be used, with one line that says what would work; 2 for wrong usage.
package main

import (
	"bytes"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
	"example.com/walewise/shaping/sheet"
)

//go:embed demo.json
var demo []byte

// forms are what -as can ask for.
var forms = map[string]func(io.Writer, garment.Piece) error{
	"text": sheet.Write,
	"json": func(w io.Writer, piece garment.Piece) error { return plan.Write(w, plan.From(piece)) },
}

func main() {
	err := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	switch {
	case errors.Is(err, errUsage):
		os.Exit(2)
	case err != nil:
		fmt.Fprintln(os.Stderr, "frontpiece:", oneLine(err))
		os.Exit(1)
	}
}

// errUsage says that the command line was wrong and that this has been printed.
var errUsage = errors.New("usage")

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	flags := flag.NewFlagSet("frontpiece", flag.ContinueOnError)
	flags.SetOutput(stderr)
	specFile := flags.String("spec", "", "read the spec from `FILE`; - is standard input; without it an embedded demo")
	form := flags.String("as", "text", "print as `FORM`: text or json")
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return nil
	} else if err != nil {
		return errUsage
	}
	write, ok := forms[*form]
	if !ok || flags.NArg() > 0 {
		if !ok {
			fmt.Fprintf(stderr, "frontpiece: -as %q: text or json\n", *form)
		} else {
			fmt.Fprintf(stderr, "frontpiece: unexpected %q: give the spec with -spec\n", flags.Arg(0))
		}
		return errUsage
	}
	spec, err := readSpec(*specFile, stdin)
	if err != nil {
		return err
	}
	piece, err := garment.Front(spec)
	if err != nil {
		return err
	}
	// Nothing is printed unless everything could be made.
	var out bytes.Buffer
	if err := write(&out, piece); err != nil {
		return err
	}
	_, err = stdout.Write(out.Bytes())
	return err
}

func readSpec(file string, stdin io.Reader) (garment.Spec, error) {
	switch file {
	case "":
		return plan.ParseSpec(demo)
	case "-":
		return plan.ReadSpec(stdin)
	}
	f, err := os.Open(file)
	if err != nil {
		return garment.Spec{}, err
	}
	defer f.Close()
	return plan.ReadSpec(f)
}

func oneLine(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }
