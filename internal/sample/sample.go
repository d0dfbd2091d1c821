// Package sample is what the sample programs share that plan from a spec: a program says
// what it plans and how that is written, everything else is done here.
package sample

import (
	"bytes"
	"io"

	"example.com/walewise/internal/command"
	"example.com/walewise/shaping/garment"
)

// Program plans a T, such as a piece of a garment, and prints how to knit it.
type Program[T any] struct {
	Name    string // of the command
	Plans   string // what it plans, such as "the front of a garment"
	Demo    []byte // the spec that is planned when none is given
	Plan    func(garment.Spec) (T, error)
	Pieces  func(T) []garment.Piece
	Outputs []Output[T] // two at least, in the order in which -out writes them; one has the form text
}

// Output is one of the forms in which a T is printed or written.
type Output[T any] struct {
	Form  string // as -as calls it
	File  string // as -out calls it
	Write func(io.Writer, T) error
}

// Main runs the program on the arguments of the process and exits.
func (p Program[T]) Main() { command.Main(p.Name, p.Run) }

// Run runs the program. Nothing is printed to stdout or written into a folder unless
// everything could be made.
func (p Program[T]) Run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	o, err := p.parse(args, stderr)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if o.given["check"] {
		err = check(&out, o.check, stdin)
	} else {
		err = p.write(&out, o, stdin)
	}
	if err != nil {
		return err
	}
	_, err = stdout.Write(out.Bytes())
	return err
}

// write plans, and writes what is planned in one form or into a folder.
func (p Program[T]) write(w io.Writer, o options, stdin io.Reader) error {
	spec, err := p.readSpec(o.spec, stdin)
	if err != nil {
		return err
	}
	planned, err := p.Plan(spec)
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
