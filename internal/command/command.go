// Package command is what the sample programs have in common: their exit status and how
// they answer a wrong command line.
package command

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"example.com/walewise/internal/oneline"
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

// OneLine returns the text of an error in one line of characters that can be printed. Where
// it repeats something endless that was given, its middle is left out.
func OneLine(err error) string {
	const most = 1000
	text := []rune(oneline.Of(err.Error()))
	if n := len(text); n > most {
		return string(text[:most/2]) + " ... " + string(text[n-most/2:])
	}
	return string(text)
}

// Flags returns a set of flags that answers -h with the usage and the flags, on stderr.
func Flags(name, usage string, stderr io.Writer) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() {
		fmt.Fprint(flags.Output(), usage)
		flags.PrintDefaults()
		fmt.Fprint(flags.Output(), "\nExit status 0; 1, with one line that says why, if it cannot be done; 2 for wrong usage.\n")
	}
	return flags
}

// Parse reads the arguments. Problem says in a line what is wrong with what was read and
// with the arguments that are no flags, nothing if all is well. It returns ErrHelp or
// ErrUsage, after the usage or what is wrong was printed.
func Parse(flags *flag.FlagSet, args []string, problem func(rest []string) string) error {
	stderr := flags.Output()
	flags.SetOutput(io.Discard) // the whole usage would hide what is wrong
	err := flags.Parse(args)
	flags.SetOutput(stderr)
	if errors.Is(err, flag.ErrHelp) {
		flags.Usage()
		return ErrHelp
	}
	if err != nil {
		err = fmt.Errorf("%w (-h lists the flags)", err)
	} else if wrong := problem(flags.Args()); wrong != "" {
		err = errors.New(wrong)
	}
	if err != nil {
		fmt.Fprintf(stderr, "%s: %s\n", flags.Name(), OneLine(err))
		return ErrUsage
	}
	return nil
}
