package shaping_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

func TestShoulderGroups(t *testing.T) {
	const (
		kim       = "agneskimphd.blogspot.com, October 2015: 16 stitches in three"
		wolcott   = "jillwolcottknits.com, Brilliant shoulder shaping: 21 stitches, 7 three times"
		theKnit   = "The Knitter, 20 June 2017, 1940s-inspired sweater"
		ourOwnTip = "worked by hand: drop/2 + 1 groups, at least 2 stitches in the last"
	)
	for _, c := range []struct {
		stitches, drop int
		want           []int
		source         string
	}{
		{16, 4, []int{5, 5, 6}, kim},
		{21, 4, []int{7, 7, 7}, wolcott},
		{23, 6, []int{5, 6, 6, 6}, theKnit},
		{26, 6, []int{6, 6, 7, 7}, theKnit},
		{28, 6, []int{7, 7, 7, 7}, theKnit},
		{28, 6, []int{7, 7, 7, 7}, theKnit},
		{30, 6, []int{7, 7, 8, 8}, theKnit},
		{33, 6, []int{8, 8, 8, 9}, theKnit},
		{33, 6, []int{8, 8, 8, 9}, theKnit},
		{35, 6, []int{8, 9, 9, 9}, theKnit},
		{20, 0, []int{20}, ourOwnTip},
		{2, 0, []int{2}, ourOwnTip},
		{3, 2, []int{1, 2}, ourOwnTip},
		{5, 6, []int{1, 1, 1, 2}, ourOwnTip},
	} {
		t.Run(fmt.Sprintf("%d in %d rows", c.stitches, c.drop), func(t *testing.T) {
			needSource(t, c.source)
			got, err := shaping.ShoulderGroups(c.stitches, c.drop)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// The sizes of the same sweater as above add up: stitches between the armholes,
// less the neck, are two shoulders. Source: The Knitter, 20 June 2017.
func TestShouldersAndNeckMakeTheBack(t *testing.T) {
	backs := []int{91, 97, 101, 103, 107, 113, 115, 119}
	necks := []int{45, 45, 45, 47, 47, 47, 49, 49}
	for i, back := range backs {
		groups, err := shaping.ShoulderGroups((back-necks[i])/2, 6)
		if err != nil {
			t.Fatal(err)
		}
		if got := 2*sum(groups) + necks[i]; got != back {
			t.Errorf("size %d: %d stitches, want %d", i+1, got, back)
		}
	}
}

func TestShoulderGroupsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stitches := rapid.IntRange(2, 80).Draw(t, "stitches")
		drop := 2 * rapid.IntRange(0, stitches-2).Draw(t, "half the drop")
		groups, err := shaping.ShoulderGroups(stitches, drop)
		if err != nil {
			t.Fatal(err)
		}
		last := groups[len(groups)-1]
		switch {
		case len(groups) != drop/2+1:
			t.Fatalf("%d groups", len(groups))
		case sum(groups) != stitches:
			t.Fatalf("%v makes %d", groups, sum(groups))
		case !slices.IsSorted(groups):
			t.Fatalf("%v: the larger groups lie at the neck", groups)
		case last-groups[0] > 1:
			t.Fatalf("%v is not as equal as can be", groups)
		case last < 2:
			t.Fatalf("%v ends with %d", groups, last)
		}
	})
}

func TestShoulderGroupsNameTheNearestDrop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stitches := rapid.IntRange(2, 40).Draw(t, "stitches")
		drop := rapid.IntRange(-9, 100).Draw(t, "drop")
		_, err := shaping.ShoulderGroups(stitches, drop)
		works := func(drop int) bool {
			_, err := shaping.ShoulderGroups(stitches, drop)
			return err == nil
		}
		if err == nil {
			return
		}
		kind := shaping.ErrRange
		if drop > 2*(stitches-2) {
			kind = shaping.ErrInfeasible
		}
		e := needError(t, err, kind)
		near := numbers(e.Want)[3:] // after the stitches and the range allowed
		if len(near) == 0 {
			t.Fatalf("no nearest drop in %q", e.Want)
		}
		// The nearest by trying them all.
		var want []int
		for by := 1; len(want) == 0; by++ {
			for _, other := range []int{drop - by, drop + by} {
				if works(other) {
					want = append(want, other)
				}
			}
		}
		if !cmp.Equal(near, want) {
			t.Fatalf("%q, want %v", e, want)
		}
	})
}

func TestShoulderGroupsAreBounded(t *testing.T) {
	for _, stitches := range []int{-5, 0, 1, 2001, math.MaxInt} {
		_, err := shaping.ShoulderGroups(stitches, math.MaxInt)
		needError(t, err, shaping.ErrRange)
	}
	if groups, err := shaping.ShoulderGroups(2*shaping.MaxNeedle, 2); err != nil || groups[0] != shaping.MaxNeedle {
		t.Errorf("the widest shoulder: %v, %v", groups, err)
	}
}

// Another habit, larger steps first: at the end of rows 177 to 182 7, 13 and 19
// stitches are left at each side of a back of 63, and row 183 knits them all.
// Nothing here makes such a shoulder; as a schedule it is like any other.
// Source: Handbook of Wool Knitting and Crochet (1918), A serviceable sweater.
func TestLargerStepsFirst(t *testing.T) {
	steps := func(row int) shaping.Schedule {
		var s shaping.Schedule
		for i, stitches := range []int{7, 6, 6} {
			s = append(s, shaping.Step{Row: row + 2*i, Stitches: -stitches, Method: shaping.Hold})
		}
		return s
	}
	body := shaping.Panel{
		Name: shaping.Body, FirstRow: 1, LastRow: 183, Needles: shaping.Centred(63),
		Left: steps(177), Right: steps(178),
	}
	if err := body.Validate(); err != nil {
		t.Fatal(err)
	}
	for row, left := range map[int]int{177: 7, 179: 13, 181: 19} {
		if got := -body.Left.Through(row); got != left {
			t.Errorf("row %d leaves %d, want %d", row, got, left)
		}
		if got := -body.Right.Through(row + 1); got != left {
			t.Errorf("row %d leaves %d, want %d", row+1, got, left)
		}
	}
	if got := body.InWork(182).Len(); got != 25 {
		t.Errorf("%d stitches between the shoulders, want 25", got)
	}
	if got, want := body.Ledger(), (shaping.Ledger{CastOn: 63, Live: 63}); got != want {
		t.Errorf("ledger %v, want %v", got, want)
	}
	ours, err := shaping.ShoulderGroups(19, 4)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]int{6, 6, 7}, ours); diff != "" {
		t.Errorf("the same shoulder in this package's order (-want +got):\n%s", diff)
	}
}
