// Package sample is what the sample programs share that plan from a spec: a program says
// what it plans and how that is written, everything else is done here.
package sample

import (
	"bytes"
	"flag"
	"io"

	"example.com/walewise/internal/command"
	"example.com/walewise/internal/folder"
	"example.com/walewise/shaping/garment"
)

// Program plans a T, such as a piece of a garment, and prints how to knit it.
type Program[T any] struct {
	Name    string // of the command
	Plans   string // what it plans, such as "the front of a garment"
	Prints  string // what it prints of that; default "how to knit it"
	Demo    []byte // the spec that is planned when none is given
	Plan    func(garment.Spec) (T, error)
	Pieces  func(T) []garment.Piece // those that -from and -piece choose among
	Outputs []Output[T]             // two at least, in the order in which -out writes them; one has the form text

	// Inputs, of a program that plans from more than a spec, adds its own flags and returns
	// what plans with them, in the place of Plan; PlansFrom says in the usage which they are,
	// default "[-spec FILE]".
	Inputs    func(*flag.FlagSet) Inputs[T]
	PlansFrom string
	// Beside, of a program that has them, are files that -out writes beside the outputs, and
	// BesideNames says which in the help.
	Beside      func(T) []folder.File
	BesideNames string
}

// Inputs are what a program plans from beside a spec, as its own flags have it.
type Inputs[T any] interface {
	// Problem says in a line what is wrong with the command line, given the flags that it
	// has; nothing if all is well.
	Problem(given map[string]bool) string
	Plan(spec garment.Spec, stdin io.Reader) (T, error)
}

// fromSpec is a plan from a spec alone.
type fromSpec[T any] func(garment.Spec) (T, error)

func (f fromSpec[T]) Problem(map[string]bool) string                 { return "" }
func (f fromSpec[T]) Plan(spec garment.Spec, _ io.Reader) (T, error) { return f(spec) }

// inputs returns what the program plans from beside a spec.
func (p Program[T]) inputs(flags *flag.FlagSet) Inputs[T] {
	if p.Inputs == nil {
		return fromSpec[T](p.Plan)
	}
	return p.Inputs(flags)
}

// Output is one of the forms in which a T is printed or written.
type Output[T any] struct {
	Form  string // as -as calls it
	File  string // as -out calls it; empty if it does not write it
	Write func(io.Writer, T) error
}

// Main runs the program on the arguments of the process and exits.
func (p Program[T]) Main() { command.Main(p.Name, p.Run) }

// Run runs the program. Nothing is printed to stdout or written into a folder unless
// everything could be made.
func (p Program[T]) Run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	o, inputs, err := p.parse(args, stderr)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if o.given["check"] {
		err = check(&out, o.check, stdin)
	} else {
		err = p.write(&out, o, inputs, stdin)
	}
	if err != nil {
		return err
	}
	_, err = stdout.Write(out.Bytes())
	return err
}

// write plans, and writes what is planned in one form or into a folder.
func (p Program[T]) write(w io.Writer, o options, inputs Inputs[T], stdin io.Reader) error {
	spec, err := p.readSpec(o.spec, stdin)
	if err != nil {
		return err
	}
	planned, err := inputs.Plan(spec, stdin)
	if err != nil {
		return err
	}
	if o.given["out"] {
		return p.writeFolder(w, planned, o.out, o.force)
	}
	if o.given["from"] {
		return writeFrom(w, p.Pieces(planned), o)
	}
	output, _ := p.outputAs(o.form)
	return output.Write(w, planned)
}
