package main

import (
	"bufio"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// name is a benchmark of a package, without the number of processors.
type name struct{ pkg, benchmark string }

// benchmark is what one benchmark took each time.
type benchmark struct {
	name
	nanoseconds float64
	bytes       int
	allocations int
}

const module = "example.com/walewise/"

var line = regexp.MustCompile(`^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+([0-9.]+) ns/op.*?\s(\d+) B/op\s+(\d+) allocs/op$`)

// readBenchmarks reads what go test prints, with -benchmem, of any number of packages.
func readBenchmarks(r io.Reader) ([]benchmark, error) {
	var all []benchmark
	pkg := ""
	lines := bufio.NewScanner(r)
	for lines.Scan() {
		text := lines.Text()
		if of, ok := strings.CutPrefix(text, "pkg: "); ok {
			pkg = strings.TrimPrefix(of, module)
		}
		if strings.HasPrefix(text, "FAIL") || strings.HasPrefix(text, "--- FAIL") {
			return nil, fmt.Errorf("a benchmark failed: %s", text)
		}
		m := line.FindStringSubmatch(text)
		if m == nil {
			continue
		}
		b := benchmark{name: name{pkg, m[1]}}
		b.nanoseconds, _ = strconv.ParseFloat(m[2], 64) // digits, as the expression says
		b.bytes, _ = strconv.Atoi(m[3])
		b.allocations, _ = strconv.Atoi(m[4])
		all = append(all, b)
	}
	if len(all) == 0 && lines.Err() == nil {
		return nil, fmt.Errorf("no benchmark ran with -benchmem")
	}
	return all, lines.Err()
}
