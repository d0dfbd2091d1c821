// Package bodies holds measured bodies and heads for the tests of this module, on top of
// package sizes, and how they become the spec of a jumper.
package bodies

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/sizes"
)

// Body is a body such as "male median" or "female, line 17".
type Body struct{ sizes.Body }

// column is where a table of the survey has one measurement.
type column struct {
	name string
	of   func(*Body) *gauge.Length
}

// girths are measured round or across a body.
var girths = []column{
	{"chestcircumference", func(b *Body) *gauge.Length { return &b.Chest }},
	{"waistcircumference", func(b *Body) *gauge.Length { return &b.Waist }},
	{"buttockcircumference", func(b *Body) *gauge.Length { return &b.Hips }},
	{"neckcircumferencebase", func(b *Body) *gauge.Length { return &b.Neck }},
	{"headcircumference", func(b *Body) *gauge.Length { return &b.Head }},
	{"bicepscircumferenceflexed", func(b *Body) *gauge.Length { return &b.UpperArm }},
	{"wristcircumference", func(b *Body) *gauge.Length { return &b.Wrist }},
	{"handcircumference", func(b *Body) *gauge.Length { return &b.Hand }},
	{"biacromialbreadth", func(b *Body) *gauge.Length { return &b.Shoulders }},
}

// lengths are measured along a body.
var lengths = []column{
	{"waistbacklength", func(b *Body) *gauge.Length { return &b.BackWaist }},
	{"sleeveoutseam", func(b *Body) *gauge.Length { return &b.Arm }},
}

// heights are measured from the nape down; the survey has the height above the floor.
var heights = []column{
	{"acromialheight", func(b *Body) *gauge.Length { return &b.Fall }},
	{"axillaheight", func(b *Body) *gauge.Length { return &b.Armpit }},
}

// nape is the column of its height above the floor, that of the 7th cervical.
const nape = "cervicaleheight"

// Read reads a table of the survey: a line that names the columns, in any order and with
// others between them, then a line for each body, in millimetres. Lines that begin with #
// are left out.
func Read(r io.Reader) ([]Body, error) {
	t, err := newTable(r, "sex")
	if err != nil {
		return nil, err
	}
	var list []Body
	for t.next() {
		var b Body
		b.Name = fmt.Sprintf("%s, line %d", t.text("sex"), t.line())
		for _, c := range slices.Concat(girths, lengths) {
			*c.of(&b) = gauge.Millimetres(t.number(c.name))
		}
		for _, c := range heights {
			*c.of(&b) = gauge.Millimetres(t.number(nape).Sub(t.number(c.name)))
		}
		list = append(list, b)
	}
	return list, t.err
}

// table is a file of comma separated values whose first line names the columns.
type table struct {
	reader *csv.Reader
	names  []string
	values []string
	err    error
}

// newTable reads the names of the columns, of which the first must be there.
func newTable(r io.Reader, first string) (*table, error) {
	t := &table{reader: csv.NewReader(r)}
	t.reader.Comment = '#'
	names, err := t.reader.Read()
	if err == io.EOF {
		return nil, fmt.Errorf("no line with the names of the columns")
	}
	t.names = names
	if err == nil && !t.has(first) {
		err = fmt.Errorf("line 1: no column %s", first)
	}
	return t, err
}

// next reads a line; it is false at the end and after a fault.
func (t *table) next() bool {
	if t.err != nil {
		return false
	}
	t.values, t.err = t.reader.Read()
	if t.err == io.EOF {
		t.err = nil
		return false
	}
	return t.err == nil
}

func (t *table) line() int {
	line, _ := t.reader.FieldPos(0)
	return line
}

func (t *table) has(name string) bool { return slices.Contains(t.names, name) }

func (t *table) text(name string) string {
	i := slices.Index(t.names, name)
	if i < 0 {
		t.fail(name, "no such column")
		return ""
	}
	return t.values[i]
}

// number returns a number above 0. A body is not 10 m long.
func (t *table) number(name string) decimal.Decimal {
	text := t.text(name)
	d, err := decimal.NewFromString(text)
	const most = 10000
	if err != nil || d.Sign() <= 0 || d.Cmp(decimal.NewFromInt(most)) > 0 {
		t.fail(name, fmt.Sprintf("%q is no number above 0 and up to %d", text, most))
	}
	return d
}

// fail keeps the first fault.
func (t *table) fail(name, what string) {
	if t.err == nil {
		t.err = fmt.Errorf("line %d, %s: %s", t.line(), name, what)
	}
}
