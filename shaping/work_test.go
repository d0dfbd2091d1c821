package shaping_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/shaping"
)

func TestCloneIsDeep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := gen.Work().Draw(t, "work")
		clone := work.Clone()
		kept := fmt.Sprintf("%+v", work) // a text cannot be changed along with the work
		if diff := cmp.Diff(work, clone); diff != "" {
			t.Fatalf("the clone differs (-want +got):\n%s", diff)
		}
		// Overwrite all that a slice of the clone holds.
		for i := range clone.Panels {
			p := &clone.Panels[i]
			clear(p.Left)
			clear(p.Right)
			*p = shaping.Panel{}
		}
		for i := range clone.Rows {
			r := &clone.Rows[i]
			clear(r.Before)
			clear(r.After)
			*r = shaping.Row{}
		}
		if now := fmt.Sprintf("%+v", work); now != kept {
			t.Fatalf("the original shares something with its clone: it was\n%s\nand is\n%s", kept, now)
		}
	})
}

func TestCounterReadings(t *testing.T) {
	row := shaping.Row{Row: 127}
	if row.CounterBefore() != 126 || row.CounterAfter() != 127 {
		t.Errorf("row 127 goes from %d to %d", row.CounterBefore(), row.CounterAfter())
	}
}

func TestLedgerString(t *testing.T) {
	for want, l := range map[string]shaping.Ledger{
		"0 cast on = 0 live":                {},
		"110 cast on = 110 live":            {CastOn: 110, Live: 110},
		"4 cast on + 2 increased = 6 live":  {CastOn: 4, Increased: 2, Live: 6},
		"9 cast on = 9 bound off + 0 live":  {CastOn: 9, BoundOff: 9},
		"9 cast on = 2 decreased + 7 live":  {CastOn: 9, Decreased: 2, Live: 7},
		"9 cast on = 2 decreased + 70 live": {CastOn: 9, Decreased: 2, Live: 70},
	} {
		if got := l.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestLedgerAddAndBalance(t *testing.T) {
	entry := rapid.IntRange(0, 99)
	ledger := rapid.Custom(func(t *rapid.T) shaping.Ledger {
		return shaping.Ledger{
			CastOn: entry.Draw(t, "castOn"), Increased: entry.Draw(t, "increased"), Decreased: entry.Draw(t, "decreased"),
			BoundOff: entry.Draw(t, "boundOff"), Live: entry.Draw(t, "live"),
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		a, b := ledger.Draw(t, "a"), ledger.Draw(t, "b")
		if a.Add(b) != b.Add(a) || a.Add(b).Balance() != a.Balance()+b.Balance() || a.Add(shaping.Ledger{}) != a {
			t.Fatalf("%v and %v", a, b)
		}
		closed := a
		closed.Live += a.Balance()
		if !closed.Balances() || a.Balances() != (a.Balance() == 0) {
			t.Fatalf("%v", closed)
		}
	})
}
