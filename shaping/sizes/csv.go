package sizes

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/walewise/gauge"
)

// ReadCSV reads a table of bodies: a line with the names of the columns, which are the keys
// of [Body] in any order, then a line for each size. Values are separated by commas, or by
// semicolons where the first line has semicolons and no comma. Lines that begin with # and
// empty ones are left out, and an empty cell is a measurement that was not taken.
//
// A length has its unit, "92 cm", unless the name of its column is followed by a space and
// one, "chest cm": then a cell may be a bare number.
//
// It returns an [*Error] that wraps [ErrBodies] and names line and column if a column is
// unknown, stands twice or is missing, if a cell cannot be read, and in the cases of
// [Check]; for a table of more than [MaxBytes] bytes; and the error of the reader.
func ReadCSV(r io.Reader) ([]Body, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("sizes: reading the table: %w", err)
	}
	if len(text) > MaxBytes {
		return nil, &Error{Given: fmt.Sprintf("table of more than %d bytes", MaxBytes), Want: "at most 1 MiB", Err: ErrBodies}
	}
	if !utf8.Valid(text) {
		return nil, &Error{Want: "the table is not UTF-8: save it as UTF-8", Err: ErrBodies}
	}
	t := newTable(bytes.TrimPrefix(text, []byte("\ufeff")))
	if err := t.head(); err != nil {
		return nil, err
	}
	var bodies []Body
	for {
		cells, err := t.reader.Read()
		if errors.Is(err, io.EOF) {
			if err := Check(bodies); err != nil {
				return nil, err
			}
			return bodies, nil
		}
		if err != nil {
			return nil, malformed(err)
		}
		if len(bodies) == MaxBodies {
			return nil, &Error{Line: t.line(0), Want: fmt.Sprintf("at most %d bodies", MaxBodies), Err: ErrBodies}
		}
		b, err := t.body(cells)
		if err != nil {
			return nil, err
		}
		bodies = append(bodies, b)
	}
}

// table is a table that is being read.
type table struct {
	reader *csv.Reader
	heads  []head
}

// head is the name of one column.
type head struct {
	key  string
	unit string // of its bare numbers; empty without one
	of   func(*Body) *gauge.Length
}

func newTable(text []byte) *table {
	t := &table{reader: csv.NewReader(bytes.NewReader(text))}
	t.reader.Comment = '#'
	t.reader.TrimLeadingSpace = true
	if first := firstLine(text); strings.Contains(first, ";") && !strings.Contains(first, ",") {
		t.reader.Comma = ';'
	}
	return t
}

// firstLine returns the first line that is no remark.
func firstLine(text []byte) string {
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			return line
		}
	}
	return ""
}

func (t *table) line(cell int) int {
	line, _ := t.reader.FieldPos(cell)
	return line
}

// head reads the names of the columns.
func (t *table) head() error {
	cells, err := t.reader.Read()
	if errors.Is(err, io.EOF) {
		return &Error{Want: "the table is empty: begin with a line that names the columns, " + allowed(), Err: ErrBodies}
	}
	if err != nil {
		return malformed(err)
	}
	for i, cell := range cells {
		h, err := newHead(strings.TrimSpace(cell))
		if err != nil {
			err.Line = t.line(i)
			return err
		}
		if slices.ContainsFunc(t.heads, func(other head) bool { return other.key == h.key }) {
			return &Error{Line: t.line(i), Key: h.key, Want: "the column stands twice", Err: ErrBodies}
		}
		t.heads = append(t.heads, h)
	}
	if !slices.ContainsFunc(t.heads, func(h head) bool { return h.key == "name" }) {
		return &Error{Line: t.line(0), Key: "name", Want: "the column is missing", Err: ErrBodies}
	}
	return nil
}

func newHead(cell string) (head, *Error) {
	key, unit, _ := strings.Cut(cell, " ")
	h := head{key: key, unit: unit}
	if key == "name" && unit == "" {
		return h, nil
	}
	for _, c := range columns() {
		if c.key != key {
			continue
		}
		h.of = c.of
		if unit != "" {
			if _, err := gauge.ParseLength("1 " + unit); err != nil {
				return h, &Error{Key: key, Given: "in " + quoted(unit), Want: "mm, cm or in", Err: ErrBodies}
			}
		}
		return h, nil
	}
	return h, &Error{Key: quoted(cell), Want: "unknown column, the columns are " + allowed(), Err: ErrBodies}
}

// allowed lists the names of columns for a message.
func allowed() string { return "name, " + strings.Join(Keys(), ", ") }

// body reads one line.
func (t *table) body(cells []string) (Body, error) {
	var b Body
	for i, h := range t.heads {
		if h.key == "name" {
			b.Name = strings.TrimSpace(cells[i])
			if err := checkName(b.Name); err != nil {
				err.Line = t.line(i)
				return b, err
			}
		}
	}
	for i, h := range t.heads {
		cell := strings.TrimSpace(cells[i])
		if h.of == nil || cell == "" {
			continue
		}
		l, err := h.length(cell)
		if err == nil {
			err = checkLength(l)
		}
		if err != nil {
			err.Line, err.Size, err.Key = t.line(i), b.Name, h.key
			return b, err
		}
		*h.of(&b) = l
	}
	return b, nil
}

// length reads a cell.
func (h head) length(cell string) (gauge.Length, *Error) {
	l, err := gauge.ParseLength(cell)
	if err == nil {
		return l, nil
	}
	if h.unit != "" && errors.Is(err, gauge.ErrUnit) {
		if l, err = gauge.ParseLength(cell + " " + h.unit); err == nil {
			return l, nil
		}
	}
	want := err.Error()
	if e, ok := errors.AsType[*gauge.ParseError](err); ok {
		want = e.Problem + ": " + e.Try
		if errors.Is(err, gauge.ErrUnit) && h.unit == "" {
			want += fmt.Sprintf(", or call the column %q", h.key+" cm")
		}
	}
	return l, &Error{Given: quoted(cell), Want: want, Err: fmt.Errorf("%w: %w", ErrBodies, err)}
}

// malformed returns the error of a table that is none.
func malformed(err error) error {
	e, ok := errors.AsType[*csv.ParseError](err)
	if !ok {
		return fmt.Errorf("sizes: reading the table: %w", err)
	}
	want := "a quote too many or too few"
	if errors.Is(e.Err, csv.ErrFieldCount) {
		want = "not as many cells as there are columns"
	}
	return &Error{Line: e.Line, Want: want, Err: fmt.Errorf("%w: %w", ErrBodies, err)}
}
