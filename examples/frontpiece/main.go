// Command frontpiece plans the front of a garment and prints how to knit it.
//
//	go run ./examples/frontpiece
//	go run ./examples/frontpiece -spec my.json -as csv
//	go run ./examples/frontpiece -spec my.json -out front
//	go run ./examples/frontpiece -check front/plan.json
//
// Without -spec it plans an embedded demo. With -out it writes everything that -as
// can print into a folder, and prints the paths of the files. With -check it plans
// nothing, but knits the pieces of a plan, whoever made it, and prints what becomes
// of them; that the sizes in the plan are true is not checked.
//
// Exit status 0; 1 for a spec, plan or folder that cannot be used, with one line
// that says why; 2 for wrong usage. Nothing is printed or written unless everything
// could be made.
package main

import (
	"bytes"
	"io"
	"os"

	"example.com/walewise/internal/command"
)

func main() { command.Main("frontpiece", run) }

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	o, err := parse(args, stderr)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	switch {
	case o.given["check"]:
		err = check(&out, o.check, stdin)
	case o.given["out"]:
		err = writeFolder(&out, o, stdin)
	default:
		err = writeForm(&out, o, stdin)
	}
	if err != nil {
		return err
	}
	_, err = stdout.Write(out.Bytes())
	return err
}

// open opens a file named on the command line; - is standard input.
func open(file string, stdin io.Reader) (io.ReadCloser, error) {
	if file == "-" {
		return io.NopCloser(stdin), nil
	}
	return os.Open(file)
}
