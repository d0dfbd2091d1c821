package sheet

import (
	"fmt"
	"slices"

	"example.com/walewise/internal/plural"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/sizes"
)

// The steps of an edge on the page of sizes, in words that sizes have in common.

// words says the steps of an edge line by line, for all sizes or for some at a time.
func (s *sizesWriter) words(e sizes.Edge) []string {
	var text []string
	for _, w := range e.Words {
		part := *s
		part.sizes, part.names = s.sizes[w.From:w.To], s.names[w.From:w.To]
		if len(part.sizes) < len(s.sizes) {
			text = append(text, part.sizesText()+":")
		}
		text = append(text, part.said(w)...)
	}
	return text
}

// said says the steps of an edge for the sizes of the words, line by line.
func (s *sizesWriter) said(w sizes.Words) []string {
	var text []string
	for i, l := range w.Lines {
		when := "then"
		if i == 0 {
			when = s.at(w.Rows) + ":"
		}
		text = append(text, fmt.Sprintf("%s %s %s", when, doing(l.Method, slices.Max(l.Stitches)), s.sizesLine(l)))
	}
	return text
}

// doing says what becomes of stitches.
func doing(m shaping.Method, stitches int) string {
	switch {
	case m == shaping.Hold:
		return "hold"
	case m == shaping.BindOff:
		return "bind off"
	case m == shaping.CastOn:
		return "cast on"
	case stitches > 0:
		return "increase"
	}
	return "decrease"
}

// sizesLine says a run of equal steps.
func (s *sizesWriter) sizesLine(l sizes.Line) string {
	text := s.stitches(zeroNone(l.Stitches))
	once := !slices.ContainsFunc(l.Times, func(n int) bool { return n != 1 })
	switch distance := slices.Max(l.Every); {
	case distance == 0 && once:
		return text + " once"
	case distance == 0:
		return fmt.Sprintf("%s, %s times", text, s.numbers(l.Times))
	case once && slices.Max(l.Then) == 0:
		return fmt.Sprintf("%s %s rows later", text, s.numbers(zeroNone(l.Every)))
	case slices.Max(l.Then) > 0:
		return fmt.Sprintf("%s every %s and %s row in turn, %s times", text, s.ordinals(l.Every), s.ordinals(l.Then), s.numbers(l.Times))
	}
	return fmt.Sprintf("%s every %s row, %s times", text, s.ordinals(l.Every), s.numbers(l.Times))
}

// zeroNone returns numbers without their signs; 0, as of a size that leaves a line out, is
// none.
func zeroNone(values []int) []int {
	list := make([]int, len(values))
	for i, n := range values {
		list[i] = noneIfZero(max(n, -n))
	}
	return list
}

func noneIfZero(n int) int {
	if n == 0 {
		return sizes.None
	}
	return n
}

// ordinals writes "2nd (4th, -)".
func (s *sizesWriter) ordinals(values []int) string {
	var texts []string
	for _, n := range values {
		if n == 0 {
			texts = append(texts, dash)
		} else {
			texts = append(texts, plural.Ordinal(n))
		}
	}
	return s.beside(texts)
}
