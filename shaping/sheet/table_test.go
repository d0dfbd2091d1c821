package sheet_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/golden"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/sheet"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// handStrip returns a strip worked in the hand, bound off at both edges and at the
// end; invented figures.
func handStrip() shaping.Work {
	l, r := shaping.L, shaping.R
	bindOff := func(first, last shaping.Needle) []shaping.Action {
		return []shaping.Action{{Do: shaping.DoBindOff, Needles: shaping.Span{First: first, Last: last}}}
	}
	whole := shaping.Centred(8)
	return shaping.Work{
		Name: "front", Place: shaping.Hand, Facing: shaping.KnitSide,
		Panels: shaping.Tree{{
			Name: shaping.Body, FirstRow: 1, LastRow: 4, Needles: whole,
			Left:  shaping.Schedule{{Row: 4, Stitches: -1, Method: shaping.BindOff}},
			Right: shaping.Schedule{{Row: 3, Stitches: -2, Method: shaping.BindOff}},
		}},
		Rows: []shaping.Row{
			{Row: 1, Panel: shaping.Body, From: shaping.Right, Knit: whole, Before: []shaping.Action{{Do: shaping.DoCastOn, Needles: whole}}},
			{Row: 2, Panel: shaping.Body, From: shaping.Left, Knit: whole},
			{Row: 3, Panel: shaping.Body, From: shaping.Right, Knit: shaping.Span{First: l(4), Last: r(2)}, Before: bindOff(r(3), r(4))},
			{
				Row: 4, Panel: shaping.Body, From: shaping.Left, Knit: shaping.Span{First: l(3), Last: r(2)},
				Before: bindOff(l(4), l(4)), After: bindOff(l(3), r(2)),
			},
		},
		Ledger: shaping.Ledger{CastOn: 8, BoundOff: 8},
	}
}

func table(t testing.TB, work shaping.Work) string {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.WriteTable(&out, work); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestTableGolden(t *testing.T) {
	for name, work := range map[string]shaping.Work{"tiny": worked.TinyWork(), "hand": handStrip()} {
		t.Run(name, func(t *testing.T) {
			if _, err := bed.Knit(work); err != nil {
				t.Fatalf("an example that cannot be knitted: %v", err)
			}
			golden.Check(t, "testdata/table-"+name+".golden", []byte(table(t, work)))
		})
	}
}

// Read back, the table says of every row what the work says.
func TestTableTellsTheWork(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		work := gen.Work().Draw(rt, "work")
		records, err := csv.NewReader(strings.NewReader(table(t, work))).ReadAll()
		if err != nil {
			rt.Fatal(err)
		}
		if len(records) != 1+len(work.Rows) {
			rt.Fatalf("%d records for %d rows", len(records), len(work.Rows))
		}
		for i, row := range work.Rows {
			got := map[string]string{}
			for k, column := range records[0] {
				got[column] = records[1+i][k]
			}
			want := map[string]string{
				"row":              strconv.Itoa(row.Row),
				"counter before":   strconv.Itoa(row.Row - 1),
				"counter after":    strconv.Itoa(row.Row),
				"panel":            row.Panel,
				"starts at":        row.From.String(),
				"fabric side":      "",
				"actions before":   joined(row.Before),
				"needles knitted":  fmt.Sprint(row.Knit),
				"stitches in work": strconv.Itoa(row.Knit.Len()),
				"actions after":    joined(row.After),
			}
			if work.Place == shaping.Hand {
				want["fabric side"] = [2]string{"WS", "RS"}[row.Row%2]
			}
			if diff := cmp.Diff(want, got); diff != "" {
				rt.Fatalf("record %d (-want +got):\n%s", i+1, diff)
			}
		}
	})
}

func joined(actions []shaping.Action) string {
	text := ""
	for i, a := range actions {
		if i > 0 {
			text += "; "
		}
		text += a.String()
	}
	return text
}

// No name of a panel becomes a formula, and none breaks the table.
func TestTableNamesAreHarmless(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"body", "body"},
		{"éventail", "éventail"},
		{"2nd half", "2nd half"},
		{"", ""},
		{"=1+1", "'=1+1"},
		{"+1", "'+1"},
		{"-1", "'-1"},
		{"@sum(1)", "'@sum(1)"},
		{" =1+1", "' =1+1"},
		{"\t=1+1", "'\t=1+1"},
		{"\n=1+1", "'\n=1+1"},
		{"＝1+1", "'＝1+1"},
		{"\xff=1+1", "'\xff=1+1"},
		{`a,"b"` + "\nc", `a,"b"` + "\nc"},
	} {
		work := worked.TinyWork()
		work.Rows[3].Panel = c.name
		records, err := csv.NewReader(strings.NewReader(table(t, work))).ReadAll()
		if err != nil {
			t.Errorf("%q: %v", c.name, err)
			continue
		}
		if got := records[4][3]; got != c.want {
			t.Errorf("%q is written as %q, want %q", c.name, got, c.want)
		}
	}
}

// What nobody could knit is still a table.
func TestTableOfNothing(t *testing.T) {
	if got := strings.Count(table(t, shaping.Work{}), "\n"); got != 1 {
		t.Errorf("no rows give %d lines, want the names of the columns", got)
	}
	if got := table(t, shaping.Work{Rows: make([]shaping.Row, 1)}); !strings.Contains(got, "\n0,-1,0,,") {
		t.Errorf("a row of nothing gives\n%s", got)
	}
}

func TestTableWriteError(t *testing.T) {
	for _, room := range []int{0, 500} {
		if err := sheet.WriteTable(&full{room}, worked.TinyWork()); !errors.Is(err, errFull) {
			t.Errorf("room for %d bytes: error %v", room, err)
		}
	}
}
