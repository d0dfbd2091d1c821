// Package command is what the sample programs have in common: their exit status and how
// they answer a wrong command line.
package command

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
)

// ErrUsage says that the command line was wrong and that this has been printed.
var ErrUsage = errors.New("usage")

// ErrHelp says that the usage was asked for and has been printed.
var ErrHelp = flag.ErrHelp

// Main runs a program on its arguments and exits: with 0, with 2 after ErrUsage, and with 1
// after any other error, which it prints in one line. ErrHelp is no error.
func Main(name string, run func(args []string, stdin io.Reader, stdout, stderr io.Writer) error) {
	err := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	switch {
	case err == nil || errors.Is(err, ErrHelp):
	case errors.Is(err, ErrUsage):
		os.Exit(2)
	default:
		fmt.Fprintf(os.Stderr, "%s: %s\n", name, OneLine(err))
		os.Exit(1)
	}
}

// OneLine returns the text of an error without line ends.
func OneLine(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }

// Flags returns a set of flags that prints the usage and the flags to stderr.
func Flags(name, usage string, stderr io.Writer) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() {
		fmt.Fprint(stderr, usage)
		flags.PrintDefaults()
	}
	return flags
}

// Parse reads the arguments. Problem says in a line what is wrong with what was read and
// with the arguments that are no flags, nothing if all is well. It returns ErrHelp or
// ErrUsage, after what is wrong was printed.
func Parse(flags *flag.FlagSet, args []string, problem func(rest []string) string) error {
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return ErrHelp
	} else if err != nil {
		return ErrUsage
	}
	if wrong := problem(flags.Args()); wrong != "" {
		fmt.Fprintf(flags.Output(), "%s: %s\n", flags.Name(), wrong)
		return ErrUsage
	}
	return nil
}
