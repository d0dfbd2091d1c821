package sample

import (
	"fmt"
	"io"
	"strings"
)

// Flag is a flag that one program has beside those of all.
type Flag struct {
	Name  string
	Value string // what it takes, such as FILE
	Usage string
	// File means that it names a file, - for standard input.
	File bool
	// WithSpec means that it is given where -spec is, and only there.
	WithSpec bool
}

// Values are what the command line says to the flags of one program alone.
type Values struct {
	texts map[string]*string
	stdin io.Reader
}

// Text returns what was given to a flag, nothing if it was not given.
func (v Values) Text(name string) string {
	if text := v.texts[name]; text != nil {
		return *text
	}
	return ""
}

// Open opens the file that was given to a flag; ok is false if none was.
func (v Values) Open(name string) (f io.ReadCloser, ok bool, err error) {
	file := v.Text(name)
	if file == "" {
		return nil, false, nil
	}
	f, err = open(file, v.stdin)
	return f, true, err
}

// together says in a line which of a program's own flags do not go with the others.
func (p Program[T]) together(o options) string {
	var fromStdin []string
	if o.spec == "-" {
		fromStdin = append(fromStdin, "-spec")
	}
	for _, f := range p.Flags {
		switch given := o.given[f.Name]; {
		case given && o.given["check"]:
			return fmt.Sprintf("-check with -%s: it reads a plan and takes no other flag", f.Name)
		case given && f.WithSpec && !o.given["spec"]:
			return fmt.Sprintf("-%s without -spec: give both, or neither for the demo", f.Name)
		case !given && f.WithSpec && o.given["spec"]:
			return fmt.Sprintf("-spec without -%s: give both, or neither for the demo", f.Name)
		case f.File && *o.values[f.Name] == "-":
			fromStdin = append(fromStdin, "-"+f.Name)
		}
	}
	if len(fromStdin) > 1 {
		return strings.Join(fromStdin, " and ") + ": only one of them can be read from standard input"
	}
	return ""
}

// input says in the usage what is planned from.
func (p Program[T]) input() string {
	with, beside := "-spec FILE", ""
	for _, f := range p.Flags {
		text := fmt.Sprintf("-%s %s", f.Name, f.Value)
		if f.WithSpec {
			with += " " + text
		} else {
			beside += " [" + text + "]"
		}
	}
	return "[" + with + "]" + beside
}
