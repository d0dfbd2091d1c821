package sample

import (
	"io"
	"os"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/plan"
)

// readSpec reads a spec, that of the demo if no file is named.
func (p Program[T]) readSpec(file string, stdin io.Reader) (garment.Spec, error) {
	if file == "" {
		return plan.ParseSpec(p.Demo)
	}
	f, err := Open(file, stdin)
	if err != nil {
		return garment.Spec{}, err
	}
	defer f.Close()
	return plan.ReadSpec(f)
}

// Open opens a file named on the command line; - is standard input.
func Open(file string, stdin io.Reader) (io.ReadCloser, error) {
	if file == "-" {
		return io.NopCloser(stdin), nil
	}
	return os.Open(file)
}
