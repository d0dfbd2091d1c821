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
		Name: "back", Place: shaping.Hand, Facing: shaping.KnitSide,
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

func table(t testing.TB, works ...shaping.Work) string {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.WriteTable(&out, works...); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestTableGolden(t *testing.T) {
	tiny, strip := worked.TinyWork(), handStrip()
	for name, works := range map[string][]shaping.Work{"tiny": {tiny}, "hand": {strip}, "two": {strip, tiny}} {
		t.Run(name, func(t *testing.T) {
			for _, work := range works {
				if _, err := bed.Knit(work); err != nil {
					t.Fatalf("an example that cannot be knitted: %v", err)
				}
			}
			golden.Check(t, "testdata/table-"+name+".golden", []byte(table(t, works...)))
		})
	}
}

// Read back, the table says of every row of every work what the work says.
func TestTableTellsTheWorks(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		works := rapid.SliceOfN(gen.Work(), 0, 3).Draw(rt, "works")
		records, err := csv.NewReader(strings.NewReader(table(t, works...))).ReadAll()
		if err != nil {
			rt.Fatal(err)
		}
		var want []map[string]string
		for _, work := range works {
			want = append(want, toldRows(work)...)
		}
		if len(records) != 1+len(want) {
			rt.Fatalf("%d records for %d rows", len(records), len(want))
		}
		for i, want := range want {
			got := map[string]string{}
			for k, column := range records[0] {
				got[column] = records[1+i][k]
			}
			if diff := cmp.Diff(want, got); diff != "" {
				rt.Fatalf("record %d (-want +got):\n%s", i+1, diff)
			}
		}
	})
}

// toldRows returns what a table says of every row of a work, by column.
func toldRows(work shaping.Work) []map[string]string {
	var told []map[string]string
	for _, row := range work.Rows {
		cells := map[string]string{
			"piece":            work.Name,
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
			cells["fabric side"] = [2]string{"WS", "RS"}[row.Row%2]
		}
		told = append(told, cells)
	}
	return told
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

// No name of a piece or panel becomes a formula, and none breaks the table.
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
		work.Name, work.Rows[3].Panel = c.name, c.name
		records, err := csv.NewReader(strings.NewReader(table(t, work))).ReadAll()
		if err != nil {
			t.Errorf("%q: %v", c.name, err)
			continue
		}
		if piece, panel := records[4][0], records[4][4]; piece != c.want || panel != c.want {
			t.Errorf("%q is written as %q and %q, want %q", c.name, piece, panel, c.want)
		}
	}
}

// What nobody could knit is still a table.
func TestTableOfNothing(t *testing.T) {
	for _, works := range [][]shaping.Work{nil, {{}}, {{}, {}}} {
		if got := strings.Count(table(t, works...), "\n"); got != 1 {
			t.Errorf("%d works without rows give %d lines, want the names of the columns", len(works), got)
		}
	}
	if got := table(t, shaping.Work{Rows: make([]shaping.Row, 1)}); !strings.Contains(got, "\n,0,-1,0,,") {
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
