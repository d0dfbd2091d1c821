// Command edges turns drawn edges into steps, for scripts in any language.
//
//	go run ./examples/edges < requests.jsonl > answers.jsonl
//	go run ./examples/edges -as text < requests.jsonl
//
// It reads a JSON object from every line of standard input and writes a line for each,
// in the same order; blank lines are skipped. Every answer is written at once, so that a
// script can wait for it before it asks again. What is wrong with a request is its answer.
// Both forms are in testdata/schema: walewise-edge-request-1.json and
// walewise-edge-answer-1.json.
//
// Exit status 0; 1 if standard input or output fails; 2 for wrong usage.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

func main() {
	err := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	switch {
	case errors.Is(err, errUsage):
		os.Exit(2)
	case err != nil:
		fmt.Fprintln(os.Stderr, "edges:", oneLine(err))
		os.Exit(1)
	}
}

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	o, err := parse(args, stderr)
	if errors.Is(err, errHelp) {
		return nil
	} else if err != nil {
		return err
	}
	form, _ := formOf(o.form)
	return filter(stdin, stdout, form.write)
}

func oneLine(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }
