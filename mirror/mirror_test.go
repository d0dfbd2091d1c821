package mirror_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/internal/gen"
	"example.com/walewise/internal/worked"
	"example.com/walewise/mirror"
	"example.com/walewise/shaping"
)

func TestNeedles(t *testing.T) {
	// The rule of numbering: an even piece takes Ln to Rn, an odd one Ln to
	// R(n+1) and R1 to itself.
	for n := 1; n <= 50; n++ {
		if got := mirror.Even.Needle(shaping.L(n)); got != shaping.R(n) {
			t.Errorf("even: L%d becomes %v", n, got)
		}
		if got := mirror.Even.Needle(shaping.R(n)); got != shaping.L(n) {
			t.Errorf("even: R%d becomes %v", n, got)
		}
		if got := mirror.Odd.Needle(shaping.L(n)); got != shaping.R(n+1) {
			t.Errorf("odd: L%d becomes %v", n, got)
		}
		if got := mirror.Odd.Needle(shaping.R(n + 1)); got != shaping.L(n) {
			t.Errorf("odd: R%d becomes %v", n+1, got)
		}
	}
	if got := mirror.Odd.Needle(shaping.R(1)); got != shaping.R(1) {
		t.Errorf("odd: R1 becomes %v", got)
	}
}

func TestCentredSpansAreTheirOwnReflection(t *testing.T) {
	for stitches := range 2 * shaping.MaxNeedle {
		s := shaping.Centred(stitches)
		if got := mirror.AxisFor(stitches).Span(s); got != s {
			t.Fatalf("%v becomes %v", s, got)
		}
	}
}

func anyAxis() *rapid.Generator[mirror.Axis] {
	return rapid.SampledFrom([]mirror.Axis{mirror.Even, mirror.Odd})
}

func TestSpansKeepTheirNeedles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		axis := anyAxis().Draw(t, "axis")
		first := rapid.IntRange(-30, 30).Draw(t, "first")
		s := shaping.Span{First: shaping.NeedleAt(first), Last: shaping.NeedleAt(first + rapid.IntRange(0, 30).Draw(t, "more"))}
		got := axis.Span(s)
		if !got.IsValid() || got.Len() != s.Len() || axis.Span(got) != s {
			t.Fatalf("%v becomes %v", s, got)
		}
		for n := range s.All() {
			if !got.Contains(axis.Needle(n)) {
				t.Fatalf("%v became %v without %v", s, got, axis.Needle(n))
			}
		}
		by := rapid.IntRange(-40, 40).Draw(t, "by")
		if axis.Span(s.Moved(shaping.Left, by)) != got.Moved(shaping.Right, by) {
			t.Fatalf("%v moved by %d at the left", s, by)
		}
	})
}

func TestTwiceIsIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := gen.Work().Draw(t, "work")
		axis := anyAxis().Draw(t, "axis")
		if diff := cmp.Diff(work, mirror.Work(mirror.Work(work))); diff != "" {
			t.Fatalf("work (-want +got):\n%s", diff)
		}
		if diff := cmp.Diff(work, mirror.View(mirror.View(work, work.Facing.Opposite()), work.Facing)); diff != "" {
			t.Fatalf("view (-want +got):\n%s", diff)
		}
		if diff := cmp.Diff(work.Panels, axis.Tree(axis.Tree(work.Panels))); diff != "" {
			t.Fatalf("panels (-want +got):\n%s", diff)
		}
		for _, row := range work.Rows {
			if diff := cmp.Diff(row, axis.Row(axis.Row(row))); diff != "" {
				t.Fatalf("row (-want +got):\n%s", diff)
			}
			for _, action := range row.Before {
				if got := axis.Action(axis.Action(action)); got != action {
					t.Fatalf("%v becomes %v", action, got)
				}
			}
		}
	})
}

// waleHeights counts in how many rows each needle is knitted.
func waleHeights(w shaping.Work) map[shaping.Needle]int {
	heights := map[shaping.Needle]int{}
	for _, row := range w.Rows {
		for n := range row.Knit.All() {
			heights[n]++
		}
	}
	return heights
}

func TestReflectionKeepsTotals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := gen.Work().Draw(t, "work")
		got := mirror.Work(work)
		axis := mirror.AxisFor(work.Panels[0].Needles.Len())
		if err := got.Panels.Validate(); err != nil {
			t.Fatal(err)
		}
		before, err := work.Panels.Ledger()
		if err != nil {
			t.Fatal(err)
		}
		after, err := got.Panels.Ledger()
		if err != nil {
			t.Fatal(err)
		}
		if before != after || got.Ledger != work.Ledger {
			t.Fatalf("ledger %v becomes %v", before, after)
		}
		if got.Place != work.Place || got.Facing != work.Facing || len(got.Rows) != len(work.Rows) {
			t.Fatalf("%v %v %d rows become %v %v %d", work.Place, work.Facing, len(work.Rows), got.Place, got.Facing, len(got.Rows))
		}
		for i, p := range work.Panels {
			q := got.Panels[i]
			if !cmp.Equal(p.Left, q.Right) || !cmp.Equal(p.Right, q.Left) {
				t.Fatalf("the edges of %s did not change places", p.Name)
			}
			for row := p.FirstRow; row <= p.LastRow; row++ {
				if q.InWork(row) != axis.Span(p.InWork(row)) {
					t.Fatalf("row %d of %s has %v in work, its reflection %v", row, p.Name, p.InWork(row), q.InWork(row))
				}
			}
		}
		for i, row := range work.Rows {
			if got.Rows[i].From == row.From || got.Rows[i].Row != row.Row {
				t.Fatalf("row %d from the %v becomes %d from the %v", row.Row, row.From, got.Rows[i].Row, got.Rows[i].From)
			}
			if _, ok := got.Panels.Panel(got.Rows[i].Panel); !ok {
				t.Fatalf("row %d belongs to no panel", row.Row)
			}
		}
		heights := waleHeights(got)
		want := map[shaping.Needle]int{}
		for n, height := range waleHeights(work) {
			want[axis.Needle(n)] = height
		}
		if !cmp.Equal(heights, want) {
			t.Fatalf("wale heights %v, want %v", heights, want)
		}
	})
}

func TestReflectionSharesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		work := gen.Work().Draw(t, "work")
		kept := work.Clone()
		for _, made := range []shaping.Work{mirror.Work(work), mirror.View(work, work.Facing), mirror.View(work, work.Facing.Opposite())} {
			for i := range made.Panels {
				clear(made.Panels[i].Left)
				clear(made.Panels[i].Right)
			}
			for i := range made.Rows {
				clear(made.Rows[i].Before)
				clear(made.Rows[i].After)
			}
			clear(made.Panels)
			clear(made.Rows)
			if diff := cmp.Diff(kept, work); diff != "" {
				t.Fatalf("(-want +got):\n%s", diff)
			}
		}
	})
}

func TestHalvesOfAFrontReflectEachOther(t *testing.T) {
	for name, tree := range map[string]shaping.Tree{"worked by hand": worked.HandFront(), "tiny": worked.TinyFront()} {
		axis := mirror.AxisFor(tree[0].Needles.Len())
		if diff := cmp.Diff(tree[2], axis.Panel(tree[1])); diff != "" {
			t.Errorf("%s: (-want +got):\n%s", name, diff)
		}
	}
}

func TestName(t *testing.T) {
	for from, want := range map[string]string{
		"left half": "right half", "right half": "left half",
		"left front": "right front", "right front": "left front",
		"left sleeve": "right sleeve", "right sleeve": "left sleeve",
		"front": "front", "back": "back", "body": "body", "": "",
		"leftover": "leftover", "bright half": "bright half",
	} {
		if got := mirror.Name(from); got != want {
			t.Errorf("%q becomes %q, want %q", from, got, want)
		}
	}
}

func TestWorkAndViewDifferInNameAndFacing(t *testing.T) {
	work := tinyFront()
	work.Name = "left front"
	other, same := mirror.Work(work), mirror.View(work, shaping.KnitSide)
	if other.Name != "right front" || other.Facing != shaping.PurlSide {
		t.Errorf("the reflection is %q on the %v side", other.Name, other.Facing)
	}
	if same.Name != "left front" || same.Facing != shaping.KnitSide {
		t.Errorf("the other view is of %q on the %v side", same.Name, same.Facing)
	}
	same.Name, same.Facing = other.Name, other.Facing
	if diff := cmp.Diff(other, same); diff != "" {
		t.Errorf("apart from that (-work +view):\n%s", diff)
	}
}

func TestViewWithoutAFacingChangesNothing(t *testing.T) {
	work := tinyFront()
	for _, facing := range []shaping.Facing{0, 7, shaping.PurlSide} {
		if diff := cmp.Diff(work, mirror.View(work, facing)); diff != "" {
			t.Errorf("seen on %v (-want +got):\n%s", facing, diff)
		}
	}
	work.Facing = 0
	if diff := cmp.Diff(work, mirror.View(work, shaping.KnitSide)); diff != "" {
		t.Errorf("without a facing (-want +got):\n%s", diff)
	}
}

func TestZeroValues(t *testing.T) {
	var axis mirror.Axis
	if axis != mirror.Even || axis.Needle(0) != 0 || mirror.Odd.Needle(0) != 0 || !axis.Span(shaping.Span{}).IsEmpty() {
		t.Error("no needles have a reflection")
	}
	if diff := cmp.Diff(shaping.Work{}, mirror.Work(shaping.Work{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if got := axis.Action(shaping.Action{}); got != (shaping.Action{}) {
		t.Errorf("no action becomes %v", got)
	}
	if diff := cmp.Diff(shaping.Row{}, axis.Row(shaping.Row{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(shaping.Panel{}, axis.Panel(shaping.Panel{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for a, want := range map[mirror.Axis]string{mirror.Even: "even", mirror.Odd: "odd", 5: "Axis(5)"} {
		if got := a.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// The one valid needle without an image.
func TestOutermostNeedleOfAnOddPiece(t *testing.T) {
	if mirror.Odd.Needle(shaping.L(shaping.MaxNeedle)).IsValid() {
		t.Error("L1000 has an image")
	}
	if !mirror.Odd.Needle(shaping.R(shaping.MaxNeedle)).IsValid() || !mirror.Even.Needle(shaping.L(shaping.MaxNeedle)).IsValid() {
		t.Error("other outermost needles have none")
	}
}

func TestAxisFor(t *testing.T) {
	for stitches, want := range map[int]mirror.Axis{0: mirror.Even, 1: mirror.Odd, 2: mirror.Even, 111: mirror.Odd, -3: mirror.Odd} {
		if got := mirror.AxisFor(stitches); got != want {
			t.Errorf("AxisFor(%d) = %v", stitches, got)
		}
	}
}
