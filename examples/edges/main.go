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
	"io"

	"example.com/walewise/internal/command"
)

func main() { command.Main("edges", run) }

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	o, err := parse(args, stderr)
	if err != nil {
		return err
	}
	form, _ := formOf(o.form)
	return filter(stdin, stdout, form.write)
}
