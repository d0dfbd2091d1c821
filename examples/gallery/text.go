package main

import (
	"fmt"
	"io"
	"text/tabwriter"
)

// writeText writes the examples without their charts.
func writeText(w io.Writer, groups []shownGroup) error {
	out := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, g := range groups {
		fmt.Fprintf(out, "%s\n%s\n\n", g.Title, g.Says)
		for _, s := range g.Examples {
			s.writeText(out)
		}
	}
	return out.Flush()
}

func (s shown) writeText(w *tabwriter.Writer) {
	fmt.Fprintf(w, "%s: %s\n  %s\n  %s\n\n", s.Name, s.Title, s.Asks, s.Look)
	fmt.Fprintf(w, "  From lengths to whole numbers: %s\n", s.Gauge)
	for _, sum := range s.Sums {
		fmt.Fprintf(w, "    %s\t%s\t= %s\t%s\t%s\t%s\n", sum.What, sum.By, sum.Exactly, sum.Chosen, sum.Is, sum.Why)
	}
	w.Flush() // each table has its own columns
	fmt.Fprintf(w, "\n  Ways to say the edge\n    %s\n", s.Ways.Begins)
	if s.Ways.Allowed != "" {
		fmt.Fprintf(w, "    %s\n", s.Ways.Allowed)
	}
	for _, way := range s.Ways.List {
		mark := " "
		if way.Followed {
			mark = "*"
		}
		fmt.Fprintf(w, "  %s %s\t%s\t%s\t%s\n", mark, inPhrases(way.Phrases), way.Area, way.Deviation, way.Words)
		fmt.Fprintf(w, "    \t\t\t%s\n", way.Shorthand)
	}
	w.Flush()
	fmt.Fprintf(w, "    * %s\n\n  Figures\n", s.Ways.Chosen)
	if s.Against != "" {
		fmt.Fprintf(w, "    \t\tbeside: %s\n", s.Against)
	}
	for _, f := range s.Figures {
		line := "    " + f.What + "\t" + f.Is
		if f.Beside != "" {
			line += "\t" + f.Beside
		}
		fmt.Fprintln(w, line)
	}
	w.Flush()
	fmt.Fprintln(w)
}
