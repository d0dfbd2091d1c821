package bed_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/worked"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/order"
)

// stood is a state as it is written in a table.
type stood struct {
	carriage                         shaping.Side
	yarn                             shaping.Needle
	inWork, onHold, wrapped, onWaste []shaping.Span
	ledger                           shaping.Ledger
}

func stoodAt(s bed.State) stood {
	extent := shaping.Centred(110)
	return stood{
		s.Carriage(), s.Yarn(), s.InWork(), s.OnHold(), extent.Runs(s.IsWrapped), s.OnWaste(), s.Ledger(),
	}
}

// The states of a front by holding were written down by hand, needle by needle. Common
// practice, no source.
func TestStatesOfHandFront(t *testing.T) {
	w := plan(t, outline(worked.HandFront(), order.OnWaste, order.OnWaste))
	l, r := shaping.L, shaping.R
	live := shaping.Ledger{CastOn: 110, Live: 110}
	spans := func(s ...shaping.Span) []shaping.Span { return s }
	all := spans(span(l(55), r(55)))
	for _, c := range []struct {
		name, panel string
		row         int
		want        stood
	}{
		{"cast on", shaping.Body, 0, stood{shaping.Right, 0, all, nil, nil, nil, live}},
		{"below the neck", shaping.Body, 126, stood{shaping.Right, r(55), all, nil, nil, nil, live}},
		{"before the split", shaping.RightHalf, 126, stood{shaping.Right, r(55), all, nil, nil, nil, live}},
		{"the first hold", shaping.RightHalf, 127, stood{shaping.Left, r(12), spans(span(r(12), r(55))), spans(span(l(55), r(11))), spans(one(r(11))), nil, live}},
		{"back from it", shaping.RightHalf, 128, stood{shaping.Right, r(55), spans(span(r(12), r(55))), spans(span(l(55), r(11))), spans(one(r(11))), nil, live}},
		{
			"both edges", shaping.RightHalf, 146,
			stood{shaping.Right, r(38), spans(span(r(21), r(38))), spans(span(l(55), r(20)), span(r(39), r(55))), spans(one(r(11)), one(r(14)), span(r(16), r(20)), one(r(39)), one(r(48))), nil, live},
		},
		{
			"not yet taken off", shaping.RightHalf, 150,
			stood{shaping.Right, r(55), spans(span(r(21), r(55))), spans(span(l(55), r(20))), spans(one(r(11)), one(r(14)), span(r(16), r(20))), nil, live},
		},
		{
			"the other half", shaping.LeftHalf, 126,
			stood{shaping.Left, 0, nil, spans(span(l(55), r(20))), spans(one(r(11)), one(r(14)), span(r(16), r(20))), spans(span(r(21), r(55))), live},
		},
		{
			"its end", shaping.LeftHalf, 150,
			stood{shaping.Left, l(55), spans(span(l(55), l(21))), spans(span(l(20), r(20))), spans(span(l(20), l(16)), one(l(14)), one(l(11)), one(r(11)), one(r(14)), span(r(16), r(20))), spans(span(r(21), r(55))), live},
		},
	} {
		s, err := bed.KnitTo(w, c.panel, c.row)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if diff := cmp.Diff(c.want, stoodAt(s), cmp.AllowUnexported(stood{})); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
		if s.Panel() != c.panel || s.Row() != c.row || s.Counter() != c.row || s.Piece() != "front" {
			t.Errorf("%s: %s, %s, row %d, counter %d", c.name, s.Piece(), s.Panel(), s.Row(), s.Counter())
		}
	}
}

// Every state agrees with the cloth that comes off in the end.
func TestStatesAgreeWithCloth(t *testing.T) {
	for _, w := range validWorks(t) {
		cloth := knit(t, w.work)
		courses, wraps := slices.Collect(cloth.Courses()), slices.Collect(cloth.Wraps())
		heights := map[shaping.Needle]int{}
		for i, row := range w.work.Rows {
			s, err := bed.KnitTo(w.work, row.Panel, row.Row)
			if err != nil {
				t.Fatalf("%s, %s, row %d: %v", w.name, row.Panel, row.Row, err)
			}
			for n := range row.Knit.All() {
				heights[n]++
			}
			for n := range cloth.Needles().All() {
				if s.Height(n) != heights[n] {
					t.Errorf("%s, %s, row %d: the wale of %v is %d rows high, want %d", w.name, row.Panel, row.Row, n, s.Height(n), heights[n])
				}
			}
			for _, n := range []shaping.Needle{cloth.Needles().First.Toward(shaping.Left, 1), cloth.Needles().Last.Toward(shaping.Right, 1)} {
				if s.Height(n) != 0 || s.IsWrapped(n) {
					t.Errorf("%s, %s, row %d: something is at %v", w.name, row.Panel, row.Row, n)
				}
			}
			if s.Carriage() != row.From.Opposite() || s.Rows() != i+1 || !s.Ledger().Balances() {
				t.Errorf("%s, %s, row %d: yarn at the %v, %d rows, %v", w.name, row.Panel, row.Row, s.Carriage(), s.Rows(), s.Ledger())
			}
			if i+1 < len(w.work.Rows) && w.work.Rows[i+1].Panel == row.Panel && s.Ledger() != courses[i].Ledger {
				t.Errorf("%s, %s, row %d: %v, want %v", w.name, row.Panel, row.Row, s.Ledger(), courses[i].Ledger)
			}
			made := slices.Collect(s.Wraps())
			if !slices.Equal(made, wraps[:len(made)]) || len(made) < len(wraps) && slices.IndexFunc(w.work.Rows[:i+1], func(r shaping.Row) bool { return r.Row == wraps[len(made)].Row && r.Panel == wraps[len(made)].Panel }) >= 0 {
				t.Errorf("%s, %s, row %d: wraps %v of %v", w.name, row.Panel, row.Row, made, wraps)
			}
			if again, err := bed.KnitTo(w.work.Clone(), row.Panel, row.Row); err != nil || !s.Equal(again) {
				t.Errorf("%s, %s, row %d: knitted again it stands otherwise: %v", w.name, row.Panel, row.Row, err)
			}
			if before, err := bed.KnitTo(w.work, row.Panel, row.Row-1); err != nil || s.Equal(before) {
				t.Errorf("%s, %s: rows %d and %d leave the same: %v", w.name, row.Panel, row.Row-1, row.Row, err)
			}
		}
	}
}

// Of any work, knittable or not, there is a state or a refusal, and where the whole can be
// knitted there is a state after every row.
func TestStateOfAnyWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := gen.Work().Draw(t, "work")
		p := rapid.SampledFrom(w.Panels).Draw(t, "panel")
		row := rapid.IntRange(p.FirstRow-2, p.LastRow+1).Draw(t, "row")
		s, err := bed.KnitTo(w, p.Name, row)
		_, whole := bed.Knit(w)
		there := p.FirstRow-1 <= row && row <= p.LastRow
		switch {
		case err == nil && (!there || !s.Ledger().Balances()):
			t.Fatalf("%s, row %d: %v", p.Name, row, s.Ledger())
		case err != nil && whole == nil && there:
			t.Fatalf("%s, row %d: %v, though the whole can be knitted", p.Name, row, err)
		case err != nil:
			if r, ok := errors.AsType[*bed.Refusal](err); !ok || r.Reason == "" {
				t.Fatalf("%v is no refusal", err)
			}
		}
	})
}

// What stands after the row that is asked for is not judged; what stands before it is.
func TestStateIsJudgedUpToTheRow(t *testing.T) {
	work := worked.TinyWork()
	work.Rows[8].After = nil // the wrap after row 9
	if _, err := bed.KnitTo(work, shaping.RightHalf, 8); err != nil {
		t.Error(err)
	}
	for _, at := range []struct {
		panel string
		row   int
	}{{shaping.RightHalf, 9}, {shaping.RightHalf, 10}, {shaping.LeftHalf, 6}} {
		if _, err := bed.KnitTo(work, at.panel, at.row); !errors.Is(err, bed.ErrImpossible) {
			t.Errorf("%s, row %d: %v", at.panel, at.row, err)
		}
	}
}

func TestThereIsNoSuchRow(t *testing.T) {
	work := worked.TinyWork()
	for _, c := range []struct {
		panel string
		row   int
		says  string
	}{
		{shaping.Body, -1, "rows of the panel are 1 to 6, and 0 for its beginning"},
		{shaping.Body, 7, "rows of the panel are 1 to 6"},
		{shaping.LeftHalf, 5, "rows of the panel are 7 to 12, and 6 for its beginning"},
		{shaping.LeftHalf, 13, "rows of the panel are 7 to 12"},
		{"collar", 3, "panels are body, right half, left half"},
		{"", 3, "panels are body, right half, left half"},
	} {
		_, err := bed.KnitTo(work, c.panel, c.row)
		r, ok := errors.AsType[*bed.Refusal](err)
		if !ok || !errors.Is(err, bed.ErrNoRow) || !strings.Contains(r.Reason, c.says) {
			t.Errorf("%s, row %d: %v, want %q", c.panel, c.row, err, c.says)
		}
	}
	if _, err := bed.KnitTo(shaping.Work{}, shaping.Body, 0); !errors.Is(err, bed.ErrUntrue) {
		t.Errorf("of no work: %v", err)
	}
}

// A stitch that was bound off is told from those on hold and on waste yarn.
func TestStateTellsWhatIsGone(t *testing.T) {
	w := six()
	boundOff(&w)
	s, err := bed.KnitTo(w, shaping.Body, 3)
	if err != nil {
		t.Fatal(err)
	}
	if got := s.BoundOff(); !slices.Equal(got, []shaping.Span{one(l(3))}) || len(s.OnWaste()) > 0 || len(s.OnHold()) > 0 {
		t.Errorf("bound off %v, on waste yarn %v, on hold %v", got, s.OnWaste(), s.OnHold())
	}
	if got := s.String(); !strings.HasPrefix(got, w.Name+", row 3 of the body") {
		t.Errorf("it says %q", got)
	}
	held := six()
	heldAndWrapped(&held)
	if s, err = bed.KnitTo(held, shaping.Body, 2); err != nil || !s.IsWrapped(l(3)) || s.IsWrapped(l(2)) {
		t.Errorf("wrapped: L3 %v, L2 %v (%v)", s.IsWrapped(l(3)), s.IsWrapped(l(2)), err)
	}
	if got := (bed.State{}).String(); got != "no state" {
		t.Errorf("nothing says %q", got)
	}
}

// The reason names what a needle is, not what it should be.
func TestReasonsForNeedles(t *testing.T) {
	for _, c := range []struct {
		change func(w *shaping.Work)
		reason string
	}{
		{func(w *shaping.Work) { heldAndWrapped(w); before(w, 3, do(shaping.DoHold, one(l(3)))) }, "hold: it is on hold already"},
		{func(w *shaping.Work) { before(w, 3, do(shaping.DoHold, one(l(4)))) }, "hold: it holds no stitch"},
		{func(w *shaping.Work) { before(w, 3, do(shaping.DoReturn, one(l(3)))) }, "return: it is not on hold"},
	} {
		w := six()
		c.change(&w)
		_, err := bed.Knit(w)
		if got := asRefusal(t, err); got.Reason != c.reason {
			t.Errorf("says %q, want %q", got.Reason, c.reason)
		}
	}
}
