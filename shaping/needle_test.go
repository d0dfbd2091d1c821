package shaping_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/walewise/shaping"
)

// bedRow lists the needles L30 to R30 from left to right: the slow oracle for
// everything that counts needles.
func bedRow() []shaping.Needle {
	var row []shaping.Needle
	for n := 30; n >= 1; n-- {
		row = append(row, shaping.L(n))
	}
	for n := 1; n <= 30; n++ {
		row = append(row, shaping.R(n))
	}
	return row
}

func TestNeedleIndexAgreesWithTheBed(t *testing.T) {
	row := bedRow()
	for i, n := range row {
		if got, want := n.Index(), i-30; got != want {
			t.Errorf("%v.Index() = %d, want %d", n, got, want)
		}
		if got := shaping.NeedleAt(i - 30); got != n {
			t.Errorf("NeedleAt(%d) = %v, want %v", i-30, got, n)
		}
		for j, m := range row {
			if got := n.Toward(shaping.Right, j-i); got != m {
				t.Errorf("%v.Toward(right, %d) = %v, want %v", n, j-i, got, m)
			}
			if got := n.Toward(shaping.Left, i-j); got != m {
				t.Errorf("%v.Toward(left, %d) = %v, want %v", n, i-j, got, m)
			}
		}
	}
}

func TestNoNeedleIsNotANeedle(t *testing.T) {
	if !shaping.L(shaping.MaxNeedle).IsValid() || !shaping.R(shaping.MaxNeedle).IsValid() {
		t.Error("the outermost needles are none")
	}
	var none shaping.Needle
	if none.IsValid() || none.Toward(shaping.Right, 3) != 0 || shaping.Centred(10).Contains(none) {
		t.Error("the zero value passes for a needle")
	}
	for _, far := range []shaping.Needle{shaping.L(shaping.MaxNeedle + 1), shaping.R(shaping.MaxNeedle + 1)} {
		_, err := far.MarshalText()
		needError(t, err, shaping.ErrRange)
	}
}

func TestParseNeedle(t *testing.T) {
	for _, c := range []struct {
		text string
		want shaping.Needle
		kind error
	}{
		{"L1", shaping.L(1), nil},
		{"R1", shaping.R(1), nil},
		{"R12", shaping.R(12), nil},
		{"L1000", shaping.L(1000), nil},
		{"R1001", 0, shaping.ErrRange},
		{"L0", 0, shaping.ErrRange},
		{"R00", 0, shaping.ErrSyntax},
		{"R01", 0, shaping.ErrSyntax},
		{"", 0, shaping.ErrSyntax},
		{"L", 0, shaping.ErrSyntax},
		{"l5", 0, shaping.ErrSyntax},
		{"5", 0, shaping.ErrSyntax},
		{"55", 0, shaping.ErrSyntax},
		{"L-5", 0, shaping.ErrSyntax},
		{"L+5", 0, shaping.ErrSyntax},
		{"L 5", 0, shaping.ErrSyntax},
		{"L5 ", 0, shaping.ErrSyntax},
		{"L5x", 0, shaping.ErrSyntax},
		{"L1_0", 0, shaping.ErrSyntax},
		{"L٣", 0, shaping.ErrSyntax},
		{"L10000", 0, shaping.ErrSyntax},
		{"L123456789012345678901234567890123456789012345678901234567890", 0, shaping.ErrSyntax},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := shaping.ParseNeedle(c.text)
			if got != c.want {
				t.Errorf("got %v, want %v", got, c.want)
			}
			if c.kind != nil {
				if e := needError(t, err, c.kind); len(e.Given) > 60 {
					t.Errorf("the message repeats %d characters of input", len(e.Given))
				}
			} else if err != nil {
				t.Error(err)
			}
		})
	}
}

func TestMustParseNeedlePanics(t *testing.T) {
	if got := shaping.MustParseNeedle("L7"); got != shaping.L(7) {
		t.Errorf("got %v", got)
	}
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	shaping.MustParseNeedle("L0")
}

func TestNeedleGoString(t *testing.T) {
	for want, n := range map[string]shaping.Needle{"shaping.L(3)": shaping.L(3), "shaping.R(4)": shaping.R(4)} {
		if got := fmt.Sprintf("%#v", n); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func FuzzParseNeedle(f *testing.F) {
	for _, seed := range []string{"L1", "R1000", "R1001", "L0", "R01", "", "L", "L-1", "R9223372036854775808", "L١"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := shaping.ParseNeedle(text)
		if err != nil {
			if n != 0 {
				t.Errorf("%q: needle %v with error %v", text, n, err)
			}
			return
		}
		if !n.IsValid() || n.String() != text {
			t.Errorf("%q reads as %v", text, n)
		}
	})
}

// anySpan draws a span of the needles of bedRow, empty at times, and its first
// and past-last position there.
func anySpan(t *rapid.T, label string) (s shaping.Span, first, past int) {
	row := bedRow()
	first = rapid.IntRange(0, len(row)-1).Draw(t, label+" first")
	past = rapid.IntRange(first, len(row)).Draw(t, label+" past")
	if first < past {
		s = shaping.Span{First: row[first], Last: row[past-1]}
	}
	return s, first, past
}

func TestSpanAgreesWithTheBed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := bedRow()
		s, first, past := anySpan(t, "s")
		u, first2, past2 := anySpan(t, "u")
		count := rapid.IntRange(-3, 25).Draw(t, "count")
		list := func(first, past int) []shaping.Needle {
			if first < 0 || past > len(row) || first >= past {
				return nil
			}
			return row[first:past]
		}
		same := func(what string, got shaping.Span, want []shaping.Needle) {
			t.Helper()
			if !slices.Equal(slices.Collect(got.All()), want) || got.Len() != len(want) || got.IsEmpty() != (len(want) == 0) || !got.IsValid() {
				t.Fatalf("%v: %s = %v, want %v", s, what, got, want)
			}
		}
		mine, others := list(first, past), list(first2, past2)
		same("itself", s, mine)
		for _, n := range row {
			if got, want := s.Contains(n), slices.Contains(mine, n); got != want {
				t.Fatalf("%v.Contains(%v) = %v", s, n, got)
			}
		}
		shared := 0
		for _, n := range others {
			if slices.Contains(mine, n) {
				shared++
			}
		}
		if got := s.Overlaps(u); got != (shared > 0) {
			t.Fatalf("%v.Overlaps(%v) = %v", s, u, got)
		}
		if got := s.ContainsSpan(u); got != (shared == len(others)) {
			t.Fatalf("%v.ContainsSpan(%v) = %v", s, u, got)
		}
		edge := max(0, min(count, len(mine)))
		same("left edge", s.Edge(shaping.Left, count), list(first, first+edge))
		same("right edge", s.Edge(shaping.Right, count), list(past-edge, past))
		if len(mine) == 0 {
			same("moved", s.Moved(shaping.Left, count), nil)
			same("beyond", s.Beyond(shaping.Left, count), nil)
			return
		}
		if s.End(shaping.Left) != mine[0] || s.End(shaping.Right) != mine[len(mine)-1] {
			t.Fatalf("ends of %v are %v and %v", s, s.End(shaping.Left), s.End(shaping.Right))
		}
		if first-count >= 0 {
			same("moved left", s.Moved(shaping.Left, count), list(first-count, past))
			same("beyond left", s.Beyond(shaping.Left, count), list(first-count, first))
		}
		if past+count <= len(row) {
			same("moved right", s.Moved(shaping.Right, count), list(first, past+count))
			same("beyond right", s.Beyond(shaping.Right, count), list(past, past+count))
		}
	})
}

// Needles that there are not would never end.
func TestSpanAllEndsWithTheNeedles(t *testing.T) {
	count := 0
	for n := range (shaping.Span{First: -1 << 30, Last: 1 << 30}).All() {
		if !n.IsValid() {
			t.Fatal(n)
		}
		count++
	}
	if count != 2*shaping.MaxNeedle {
		t.Errorf("%d needles", count)
	}
}

func TestSpanAllStopsEarly(t *testing.T) {
	seen := 0
	for range shaping.Centred(10).All() {
		if seen++; seen == 3 {
			break
		}
	}
	if seen != 3 {
		t.Errorf("saw %d needles", seen)
	}
}

func TestCentred(t *testing.T) {
	for _, c := range []struct {
		count  int
		want   string
		source string
	}{
		{-1, "no needles", byHand},
		{0, "no needles", byHand},
		{1, "R1", byHand},
		{2, "L1-R1", byHand},
		{3, "L1-R2", byHand},
		{110, "L55-R55", commonPractice},
		{111, "L55-R56", "the convention of this package: an odd count has one more on the right"},
	} {
		needSource(t, c.source)
		got := shaping.Centred(c.count)
		if got.String() != c.want || got.Len() != max(c.count, 0) {
			t.Errorf("Centred(%d) = %v of %d, want %s", c.count, got, got.Len(), c.want)
		}
	}
}

func TestSpanIsValid(t *testing.T) {
	for s, want := range map[shaping.Span]bool{
		{}: true,
		{First: shaping.L(2), Last: shaping.R(2)}:    true,
		{First: shaping.R(2), Last: shaping.L(2)}:    false,
		{First: shaping.L(2)}:                        false,
		{Last: shaping.R(2)}:                         false,
		{First: shaping.L(1), Last: shaping.R(1001)}: false,
	} {
		if got := s.IsValid(); got != want {
			t.Errorf("%#v.IsValid() = %v", s, got)
		}
	}
}
