package sheet

import (
	"fmt"

	"example.com/walewise/shaping"
)

// An underarm where nothing is taken off shows in no stitch: threads mark it.

// marksUnderarm reports whether the underarms are marked before an entry.
func (s *writer) marksUnderarm(e entry) bool {
	return s.isTrunk() && s.piece.Widths.BindOff == 0 && e.counter == s.piece.Heights.Underarm
}

// threads says how the underarms are marked: at both edges, or at that of a half.
func (s *writer) threads(e entry) string {
	row := s.underarmRow(e.panel)
	const tie = "Tie a contrasting thread to the edge stitch "
	if e.panel == shaping.Body && !s.opened() {
		return tie + fmt.Sprintf("at both edges%s: the underarms.", s.voice.on(row.First, row.Last))
	}
	edge := s.outer(e.panel)
	return tie + fmt.Sprintf("at the %v edge%s: the underarm.", edge, s.voice.on(row.End(edge)))
}

// underarmRow returns the needles of the last row below the underarm.
func (s *writer) underarmRow(panel string) shaping.Span {
	for _, row := range s.work.Rows {
		if row.Row == s.piece.Heights.Underarm && (row.Panel == panel || row.Panel == shaping.Body) {
			return row.Knit
		}
	}
	return shaping.Span{}
}
