package sizes_test

import (
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping/sizes"
	"github.com/google/go-cmp/cmp"
)

func TestReadCSV(t *testing.T) {
	small := sizes.Body{Name: "S", Chest: length("86.5 cm"), Arm: length("22 1/2 in")}
	two := []sizes.Body{small, {Name: "6 years", Chest: length("25 in"), Wrist: length("140 mm")}}
	for why, text := range map[string]string{
		"units in cells":             "name,chest,arm,wrist\nS,86.5 cm,22 1/2 in,\n6 years,25 in,,140 mm\n",
		"units of columns":           "chest cm,name,wrist mm,arm in\n86.5,S,,22 1/2\n63.5,6 years,140,\n",
		"a unit beside a column's":   "name,chest cm,arm cm,wrist mm\nS,86.5,22 1/2 in,\n6 years,25 in,,140\n",
		"semicolons":                 "name;chest;arm;wrist\r\nS;86.5 cm;22 1/2 in;\r\n6 years;25 in;;140 mm\r\n",
		"remarks, blanks and quotes": "\ufeff# two of them, or more\n\n name , chest ,arm,wrist\n\"S\", 86.5 cm ,22 1/2 in,\n\n# the next, then\n6 years,25 in,,140 mm",
	} {
		got, err := sizes.ReadCSV(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", why, err)
		} else if diff := cmp.Diff(two, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", why, diff)
		}
	}
}

func TestReadCSVRefuses(t *testing.T) {
	many := "name\n" + strings.Repeat("S\n", 101)
	for _, c := range []struct {
		why, text, says string
		is              error
	}{
		{"nothing", "", "the table is empty: begin with a line that names the columns, name, chest, ", nil},
		{"remarks only", "# chest\n", "the table is empty", nil},
		{"no bodies", "name,chest\n", "no bodies: give one at least", nil},
		{"no names", "chest\n92 cm\n", "line 1, name: the column is missing", nil},
		{"unknown column", "name,bust\nS,92 cm\n", `line 1, "bust": unknown column, the columns are name, chest, `, nil},
		{"capitals", "name,Chest\nS,92 cm\n", `line 1, "Chest": unknown column`, nil},
		{"two of a column", "name,chest cm,chest in\nS,92,36\n", "line 1, chest: the column stands twice", nil},
		{"unknown unit", "name,chest ft\nS,3\n", `line 1, chest in "ft": mm, cm or in`, nil},
		{"a name with a unit", "name cm\nS\n", `line 1, "name cm": unknown column`, nil},
		{"no unit", "name,chest\nS,92\n", `line 2, size S, chest "92": the unit is missing: 92 cm, 92 mm or 92 in, or call the column "chest cm"`, gauge.ErrUnit},
		{"comma", "name;chest cm\nS;92,5\n", `line 2, size S, chest "92,5": write the decimal point as "."`, gauge.ErrSyntax},
		{"words", "# a remark\nname,chest cm\nS,wide\n", `line 3, size S, chest "wide": not a number with a unit`, gauge.ErrSyntax},
		{"too long", "name,chest cm\nS,301\n", "line 2, size S, chest 301 cm: a length from 0, which means not measured, to 300 cm", nil},
		{"less than none", "name,chest\nS,-1 cm\n", "line 2, size S, chest -1 cm: a length from 0", nil},
		{"no name", "name,chest\n,92 cm\n", "line 2, name: missing: letters, digits", nil},
		{"a path for a name", "name,chest\n../S,92 cm\n", `line 2, name "../S": letters, digits`, nil},
		{"two of a name", "name,chest\nS,92 cm\ns,94 cm\n", "size s, name: stands twice", nil},
		{"too few cells", "name,chest\nS\n", "line 2: not as many cells as there are columns", nil},
		{"a quote", "name,chest\nS,\"92 cm\n", "line 2: a quote too many or too few", nil},
		{"too many", many, "line 102: at most 100 bodies", nil},
		{"too large", "name\n" + strings.Repeat("#", sizes.MaxBytes), "table of more than 1048576 bytes: at most 1 MiB", nil},
		{"not text", "name\n\xff\n", "the table is not UTF-8: save it as UTF-8", nil},
	} {
		got, err := sizes.ReadCSV(strings.NewReader(c.text))
		if !errors.Is(err, sizes.ErrBodies) || c.is != nil && !errors.Is(err, c.is) || got != nil {
			t.Errorf("%s: got %v, error %v", c.why, got, err)
		} else if !strings.HasPrefix(err.Error(), c.says) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: says\n%v, want\n%s", c.why, err, c.says)
		}
	}
	torn := errors.New("torn")
	if _, err := sizes.ReadCSV(iotest.ErrReader(torn)); !errors.Is(err, torn) {
		t.Errorf("of a reader: %v", err)
	}
}

// What is read passes the check of tables, and what is refused is in one line.
func FuzzReadCSV(f *testing.F) {
	for _, text := range []string{
		"name,chest,arm\nS,86.5 cm,22 1/2 in\n", "name;chest cm\nS;92\n", "# remark\nname,chest in\n\"S\",36\n", "", "name\n\"", "\ufeffname\nM\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		bodies, err := sizes.ReadCSV(strings.NewReader(text))
		if err != nil {
			if !errors.Is(err, sizes.ErrBodies) || strings.Contains(err.Error(), "\n") || bodies != nil {
				t.Fatalf("bodies %v, error %v", bodies, err)
			}
			return
		}
		if err := sizes.Check(bodies); err != nil {
			t.Fatal(err)
		}
	})
}
