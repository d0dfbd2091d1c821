package bed_test

import (
	"testing"

	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
)

// FuzzKnit changes a valid work as the bytes say, as often as they say: the judge
// refuses it or returns a cloth whose ledger balances, and never panics.
func FuzzKnit(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{0, 1, 2, 3})
	f.Add([]byte{3, 1, 0, 7, 1, 6, 0, 200, 7, 7, 7, 7, 9, 2, 255, 9})
	f.Fuzz(func(t *testing.T, data []byte) {
		w := worked.TinyWork()
		for ; len(data) >= 4; data = data[4:] {
			alter(&w, int(data[0]), int(data[1]), int(data[2]), int(int8(data[3])))
		}
		cloth, err := bed.Knit(w)
		if err != nil {
			asRefusal(t, err)
			return
		}
		if !cloth.Ledger().Balances() || cloth.Ledger() != w.Ledger {
			t.Fatalf("accepted with %v", cloth.Ledger())
		}
		loops := 0
		for _, height := range cloth.Wales() {
			loops += height
		}
		if loops != cloth.Loops() {
			t.Fatalf("%d loops, the wales have %d", cloth.Loops(), loops)
		}
	})
}

// alter makes the change of that kind at a row, an action or a panel.
func alter(w *shaping.Work, kind, at, which, value int) {
	if len(w.Rows) == 0 || len(w.Panels) == 0 {
		return
	}
	row, p := &w.Rows[at%len(w.Rows)], &w.Panels[at%len(w.Panels)]
	list := &row.Before
	if which%2 == 1 {
		list = &row.After
	}
	switch kind % 17 {
	case 0:
		row.Row = value
	case 1:
		row.From = shaping.Side(value)
	case 2:
		row.Knit.First = shaping.Needle(value)
	case 3:
		row.Knit.Last = shaping.Needle(value)
	case 4:
		row.Panel = []string{"", shaping.Body, shaping.RightHalf, shaping.LeftHalf}[which%4]
	case 5:
		w.Rows = append(w.Rows, *row)
	case 6:
		w.Rows = w.Rows[:at%len(w.Rows)]
	case 7:
		p.FirstRow = value
	case 8:
		p.LastRow = value * 100
	case 9:
		p.Needles.First = shaping.Needle(value)
	case 10:
		p.Needles.Last = shaping.Needle(value)
	case 11:
		p.Left = append(p.Left, shaping.Step{Row: value, Stitches: which - 128, Method: shaping.Method(which % 6)})
	case 12:
		p.Right = nil
	case 13:
		w.Place, w.Facing = shaping.Place(value), shaping.Facing(which)
	case 14:
		*list = append(*list, shaping.Action{
			Do: shaping.Do(which / 2), Needles: one(shaping.Needle(value)), Toward: shaping.Side(value & 3),
			Side: shaping.Side(value & 3), Counter: value, Separate: value&4 != 0,
		})
	case 15:
		if n := len(*list); n > 0 {
			(*list)[which/2%n].Needles.First = shaping.Needle(value)
		}
	case 16:
		if n := len(*list); n > 0 {
			*list = (*list)[:n-1]
		}
	}
}
