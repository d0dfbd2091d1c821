package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// ceiling is the most allocations that a benchmark may make each time.
type ceiling struct {
	name
	most int
}

// readCeilings reads a line for each: package, benchmark, allocations.
func readCeilings(r io.Reader) ([]ceiling, error) {
	var all []ceiling
	lines := bufio.NewScanner(r)
	for number := 1; lines.Scan(); number++ {
		text, _, _ := strings.Cut(lines.Text(), "#")
		if strings.TrimSpace(text) == "" {
			continue
		}
		var c ceiling
		if _, err := fmt.Sscan(text, &c.pkg, &c.benchmark, &c.most); err != nil {
			return nil, fmt.Errorf("line %d: %q is not a package, a benchmark and a number", number, text)
		}
		all = append(all, c)
	}
	return all, lines.Err()
}

// errAbove says that a ceiling does not hold; which ones has been printed.
var errAbove = errors.New("not all ceilings hold")

// hold prints every ceiling beside what was measured.
func hold(ran []benchmark, ceilings []ceiling, w io.Writer) error {
	var above error
	for _, c := range ceilings {
		i := slices.IndexFunc(ran, func(b benchmark) bool { return b.name == c.name })
		if i < 0 {
			fmt.Fprintf(w, "%s %s did not run\n", c.pkg, c.benchmark)
			above = errAbove
			continue
		}
		verdict := "at most"
		if ran[i].allocations > c.most {
			verdict, above = "MORE THAN", errAbove
		}
		fmt.Fprintf(w, "%s %s: %d allocations, %s %d\n", c.pkg, c.benchmark, ran[i].allocations, verdict, c.most)
	}
	return above
}
