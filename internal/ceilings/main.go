// Command ceilings reads what benchmarks print and holds their allocations below ceilings.
//
//	go test -run '^$' -bench . -benchmem -benchtime=5x ./... | go run ./internal/ceilings testdata/allocations.txt
//	go test -run '^$' -bench . -benchmem ./... | go run ./internal/ceilings -table
//
// Every line of the file names a package, a benchmark and the most allocations that it may
// make each time; what follows # is a note. A benchmark that allocates more, or did not run,
// is named, and the exit status is 1. With -table it prints a table of all that ran instead,
// as DEVELOPERS.md has it.
package main

import (
	"fmt"
	"io"
	"os"
)

func main() {
	if err := run(os.Args[1:], os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "ceilings:", err)
		os.Exit(1)
	}
}

func run(args []string, stdin io.Reader, stdout io.Writer) error {
	if len(args) != 1 {
		return fmt.Errorf("name the file of ceilings, or -table")
	}
	ran, err := readBenchmarks(stdin)
	if err != nil {
		return err
	}
	if args[0] == "-table" {
		_, err := io.WriteString(stdout, table(ran))
		return err
	}
	file, err := os.Open(args[0])
	if err != nil {
		return err
	}
	defer file.Close()
	ceilings, err := readCeilings(file)
	if err != nil {
		return err
	}
	return hold(ran, ceilings, stdout)
}
