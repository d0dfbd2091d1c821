package sheet

import (
	"fmt"
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// One of two fronts is a body with its neck at the edge in the middle of the wearer.

// opened reports whether the piece is one of two fronts.
func (s *writer) opened() bool { return s.piece.Outer().IsValid() }

// opens reports whether the garment opens down the middle of the front.
func (s *writer) opens() bool { return s.piece.Spec.Opening != nil }

// hasNeck reports whether the neck is at one edge of a panel.
func (s *writer) hasNeck(panel string) bool { return panel != shaping.Body || s.opened() }

// atNeck reports whether the neck is at that edge of a panel.
func (s *writer) atNeck(panel string, edge shaping.Side) bool {
	return s.hasNeck(panel) && edge != s.outer(panel)
}

// neckPanels returns the panels that have the neck at one edge.
func (s *writer) neckPanels() shaping.Tree {
	if s.opened() {
		return s.work.Panels
	}
	return s.work.Panels[1:]
}

// anArmhole returns an edge that has an armhole, or the underarm of a sleeve.
func (s *writer) anArmhole() shaping.Side {
	if s.opened() {
		return s.piece.Outer()
	}
	return shaping.Left
}

// ofEachSide follows stitches of an underarm.
func (s *writer) ofEachSide() string {
	if s.opened() {
		return ""
	}
	return " of each side"
}

// atEachSide says at which edges stitches of a drawn edge go.
func (s *writer) atEachSide(e garment.Edge) string {
	if !s.opened() {
		return "at each side"
	}
	text := fmt.Sprintf("at the %v edge", e.Side)
	if flat := s.piece.Widths.Flat; e.Name == garment.NeckEdge && flat > 0 {
		text += fmt.Sprintf(", the first %d of them level", flat)
	}
	return text
}

// frontLies says which edge of one of two fronts is which.
func (s *writer) frontLies() string {
	outer := s.piece.Outer()
	return fmt.Sprintf("The front edge, and above it the neck, is at its %v end, the outer edge with side and armhole at its %v end; it is worn on the wearer's %v.",
		outer.Opposite(), outer, s.lies(outer))
}

// neckAndUnderarm parts strips that waited to the end at one of two fronts.
func (s *writer) neckAndUnderarm(strips []shaping.Span) (neck []shaping.Span, underarms [][]shaping.Span) {
	shoulder := s.lastKnit(shaping.Body)
	strips = slices.SortedFunc(slices.Values(strips), func(a, b shaping.Span) int { return a.First.Index() - b.First.Index() })
	for _, strip := range strips {
		side := shaping.Left
		if strip.First.Index() > shoulder.Last.Index() {
			side = shaping.Right
		}
		if side == s.piece.Outer() {
			underarms = append(underarms, []shaping.Span{strip})
		} else {
			neck = append(neck, strip)
		}
	}
	return neck, underarms
}

// acrossFront returns a length across the front as it will be knitted, or across two of them
// and the overlap; 0 if it has none of that name.
func (s *writer) acrossFront(name string) gauge.Length {
	length := s.knitted(name)
	if !s.opened() || length.IsZero() {
		return length
	}
	return length.Mul(2).Add(s.piece.Gauge.Width(s.piece.Widths.Overlap))
}
