package shaping

import "iter"

// Span is a run of neighbouring needles from First to Last, both included;
// First is not right of Last. The zero value is the empty span. Spans are
// comparable with ==.
//
// Nothing keeps a span from being set otherwise. One whose First lies right of its Last,
// or that has no needle at one of its ends only, is neither valid nor empty.
type Span struct {
	First, Last Needle
}

// Centred returns the span of count stitches about the middle of the bed; an
// odd count has one more on the right. A count below 1 gives the empty span,
// one above 2 × [MaxNeedle] a span that is not valid.
func Centred(count int) Span {
	if count < 1 {
		return Span{}
	}
	return spanAt(-(count / 2), count)
}

// spanAt returns the span of count needles from the one with the given index.
func spanAt(index, count int) Span {
	if count < 1 {
		return Span{}
	}
	return Span{NeedleAt(index), NeedleAt(index + count - 1)}
}

// IsEmpty reports whether s is the empty span. One whose First lies right of its Last is
// not, although it holds no needle either.
func (s Span) IsEmpty() bool { return s == Span{} }

// IsValid reports whether s is empty, or runs between two valid needles from
// left to right.
func (s Span) IsValid() bool {
	return s.IsEmpty() || (s.First.IsValid() && s.Last.IsValid() && s.First.Index() <= s.Last.Index())
}

// Len returns the number of needles. It is below 1 for a span whose First lies right of its
// Last.
func (s Span) Len() int {
	if s.IsEmpty() {
		return 0
	}
	return s.Last.Index() - s.First.Index() + 1
}

// Contains reports whether the needle lies in s.
func (s Span) Contains(n Needle) bool {
	return n != 0 && !s.IsEmpty() && s.First.Index() <= n.Index() && n.Index() <= s.Last.Index()
}

// ContainsSpan reports whether every needle of t lies in s.
func (s Span) ContainsSpan(t Span) bool {
	return t.IsEmpty() || (s.Contains(t.First) && s.Contains(t.Last))
}

// Overlaps reports whether s and t share a needle.
func (s Span) Overlaps(t Span) bool {
	return !s.IsEmpty() && !t.IsEmpty() &&
		s.First.Index() <= t.Last.Index() && t.First.Index() <= s.Last.Index()
}

// Around returns the smallest span that holds both s and t.
func (s Span) Around(t Span) Span {
	switch {
	case s.IsEmpty():
		return t
	case t.IsEmpty():
		return s
	}
	if t.First.Index() < s.First.Index() {
		s.First = t.First
	}
	if t.Last.Index() > s.Last.Index() {
		s.Last = t.Last
	}
	return s
}

// End returns the outermost needle on the given side, no needle for an empty span.
func (s Span) End(side Side) Needle {
	if side == Left {
		return s.First
	}
	return s.Last
}

// Edge returns the outermost count needles on the given side: all of s when it
// has no more, none when count is below 1.
func (s Span) Edge(side Side, count int) Span {
	count = min(count, s.Len())
	if count < 1 {
		return Span{}
	}
	if side == Left {
		return spanAt(s.First.Index(), count)
	}
	return spanAt(s.Last.Index()-count+1, count)
}

// Moved returns s with its end on the given side moved by that many needles:
// inwards for a negative count, outwards for a positive one. Taking off as many
// needles as there are, or more, leaves the empty span.
func (s Span) Moved(side Side, by int) Span {
	if side == Left {
		return s.movedBoth(by, 0)
	}
	return s.movedBoth(0, by)
}

// movedBoth is [Span.Moved] at both ends at once: what comes at one end may make
// up for what goes at the other.
func (s Span) movedBoth(left, right int) Span {
	if s.IsEmpty() {
		return Span{}
	}
	return spanAt(s.First.Index()-left, s.Len()+left+right)
}

// Beyond returns the count needles that follow s on the given side.
func (s Span) Beyond(side Side, count int) Span {
	if s.IsEmpty() || count < 1 {
		return Span{}
	}
	if side == Left {
		return spanAt(s.First.Index()-count, count)
	}
	return spanAt(s.Last.Index()+1, count)
}

// All yields the needles from left to right, none beyond [MaxNeedle]. The sequence can be
// ranged over more than once.
func (s Span) All() iter.Seq[Needle] {
	return func(yield func(Needle) bool) {
		first := s.First.Index()
		for i := max(first, -MaxNeedle); i < min(first+s.Len(), MaxNeedle); i++ {
			if !yield(NeedleAt(i)) {
				return
			}
		}
	}
}

// Runs returns the runs of neighbouring needles of s that are wanted, from left
// to right.
func (s Span) Runs(wanted func(Needle) bool) []Span {
	var runs []Span
	open := false
	for n := range s.All() {
		switch {
		case !wanted(n):
			open = false
		case open:
			runs[len(runs)-1].Last = n
		default:
			runs = append(runs, Span{First: n, Last: n})
			open = true
		}
	}
	return runs
}

// String returns "R3-R10", the name of a single needle, or "no needles".
func (s Span) String() string {
	switch {
	case s.IsEmpty():
		return "no needles"
	case s.First == s.Last:
		return s.First.String()
	}
	return s.First.String() + "-" + s.Last.String()
}
