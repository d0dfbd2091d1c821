package main

import (
	"fmt"
	"strings"
)

// table returns what ran as a table in Markdown.
func table(ran []benchmark) string {
	var b strings.Builder
	b.WriteString("| package | benchmark | time | memory | allocations |\n|---|---|---|---|---|\n")
	for _, r := range ran {
		fmt.Fprintf(&b, "| `%s` | `%s` | %s | %s | %d |\n", r.pkg, r.benchmark,
			scaled(r.nanoseconds, "ns", "µs", "ms", "s"), scaled(float64(r.bytes), "B", "kB", "MB", "GB"), r.allocations)
	}
	return b.String()
}

// scaled returns a value in the unit that leaves it below 1000, in about two digits: machines
// are noisy.
func scaled(value float64, units ...string) string {
	for value >= 999.5 && len(units) > 1 {
		value, units = value/1000, units[1:]
	}
	places := 0
	if value != float64(int(value)) && value < 9.95 {
		places = 1
	}
	return fmt.Sprintf("%.*f %s", places, value, units[0])
}
