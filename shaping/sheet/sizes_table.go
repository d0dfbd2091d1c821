package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/walewise/shaping/garment"
	"example.com/walewise/shaping/sizes"
)

// WriteSizesTable writes the counts of a garment in several sizes as one table for
// spreadsheets: values separated by commas, a line with the names of the columns, then a
// record for each number. The columns are piece, what, counted in, and one for each size. Of
// a measurement the piece is empty; lengths are in the unit of the style. Steps of an edge
// are said by records for each line: stitches (less than 0 if they go), the distance in
// rows, a second one in turn where there is one, and times, which may be 0; where a line is
// not said for a size its cells are empty. It returns the first error of w, and [ErrSizes].
func WriteSizesTable(w io.Writer, r sizes.Range) error {
	if !planned(r) {
		return ErrSizes
	}
	t := sizesTable{csv.NewWriter(w), r}
	// Errors are kept by the table until the end.
	head := []string{"piece", "what", "counted in"}
	for _, name := range r.Names() {
		head = append(head, harmless(name))
	}
	t.Write(head)
	t.measures()
	for _, p := range r.Counts() {
		for _, c := range p.Counts {
			t.record(p.Name, c.Name, c.Counted, c.Values)
		}
		for _, e := range p.Edges {
			t.edge(p.Name, e)
		}
	}
	t.Flush()
	return t.Error()
}

// sizesTable is such a table.
type sizesTable struct {
	*csv.Writer
	of sizes.Range
}

func (t sizesTable) measures() {
	unit := t.of.Style.Spec.Units
	one := &writer{piece: garment.Piece{Spec: t.of.Style.Spec}}
	for _, m := range sizeMeasures() {
		var cells []string
		for _, size := range t.of.Sizes {
			cell := ""
			if l := m.of(size); !l.IsZero() {
				cell = strings.TrimSuffix(one.length(l), " "+unit.String())
			}
			cells = append(cells, cell)
		}
		if strings.Join(cells, "") != "" {
			t.Write(append([]string{"", m.name, unit.String()}, cells...))
		}
	}
}

// record writes the values of each size.
func (t sizesTable) record(piece, what, counted string, values []int) {
	record := []string{harmless(piece), what, counted}
	for _, n := range values {
		cell := ""
		if n != sizes.None {
			cell = strconv.Itoa(n)
		}
		record = append(record, cell)
	}
	t.Write(record)
}

// edge writes the steps of one edge.
func (t sizesTable) edge(piece string, e sizes.Edge) {
	const none = 0 // as no row, distance or step is
	for _, step := range e.Once {
		if step.Stitches != 0 {
			t.each(piece, e.Name+", at once: row", "row", func(k int) int { return e.Once[k].Row })
			t.each(piece, e.Name+", at once: "+step.Method.String(), "stitches", func(k int) int { return e.Once[k].Stitches })
			break
		}
	}
	t.each(piece, e.Name+": first row", "row", func(k int) int {
		for _, w := range e.Words {
			if w.Has(k) {
				return max(w.Rows[k-w.From], none)
			}
		}
		return none
	})
	for _, w := range e.Words {
		for i, l := range w.Lines {
			what := fmt.Sprintf("%s, line %d: %s", e.Name, i+1, l.Method)
			of := func(values []int) func(int) int {
				return func(k int) int {
					if !w.Has(k) || l.Times[k-w.From] == 0 {
						return none
					}
					return values[k-w.From]
				}
			}
			t.each(piece, what, "stitches", of(l.Stitches))
			t.each(piece, what+", every", "rows", of(l.Every))
			for _, then := range l.Then {
				if then > 0 {
					t.each(piece, what+", and in turn every", "rows", of(l.Then))
					break
				}
			}
			times := make([]int, len(t.of.Sizes))
			for k := range times {
				times[k] = sizes.None
				if w.Has(k) {
					times[k] = l.Times[k-w.From]
				}
			}
			t.record(piece, what, "times", times)
		}
	}
	if e.Last != nil {
		t.record(piece, e.Name+": last", "stitches", e.Last)
	}
}

// each writes a number of each size, of which 0 is none.
func (t sizesTable) each(piece, what, counted string, of func(size int) int) {
	record := []string{harmless(piece), what, counted}
	for k := range t.of.Sizes {
		cell := ""
		if n := of(k); n != 0 {
			cell = strconv.Itoa(n)
		}
		record = append(record, cell)
	}
	t.Write(record)
}
