// Command published puts published worked examples beside what the library gives for them.
//
//	go run ./examples/published
//	go run ./examples/published -only row-14-in-124
//	go run ./examples/published -as csv > published.csv
//	go run ./examples/published -table mine.json
//
// The examples stand in testdata/published.json, with their sources; another table of the
// same form can be named with -table. Each calls a function of the library with its inputs,
// and says whether the answer is the published one or differs, and why. That is checked: a
// table that says otherwise than the library gives is refused. The form of tables is in
// testdata/schema/walewise-published-1.json.
//
// Exit status 0; 1 for a table that cannot be used or does not hold, with one line that says
// why; 2 for wrong usage. Nothing is printed unless every example holds.
package main

import (
	"bytes"
	"io"

	"example.com/walewise/internal/command"
)

func main() { command.Main("published", run) }

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	o, err := parse(args, stderr)
	if err != nil {
		return err
	}
	list, err := o.examples(stdin)
	if err != nil {
		return err
	}
	compared, err := compareAll(list)
	if err != nil {
		return err
	}
	form, _ := formOf(o.form)
	if o.form == text && o.only != "" {
		form.write = writeOne
	}
	var out bytes.Buffer
	if err := form.write(&out, compared); err != nil {
		return err
	}
	_, err = stdout.Write(out.Bytes())
	return err
}
