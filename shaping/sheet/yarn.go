package sheet

import "example.com/walewise/gauge"

// Lengths of yarn to cut, in the spec's unit. Common practice, no source.

// tail returns how long a plain end is left.
func (s *writer) tail() string { return s.cut(s.ends(2)) }

// joiningTail returns how long an end is left that joins, or takes off, so many stitches:
// four times their width and what the needle takes.
func (s *writer) joiningTail(stitches int) string {
	length := s.along(stitches).Add(s.ends(1))
	if plain := s.ends(2); length.Cmp(plain) < 0 {
		length = plain
	}
	return s.cut(length)
}

// newYarn returns how much yarn takes off so many stitches and leaves an end on either
// side.
func (s *writer) newYarn(stitches int) string { return s.cut(s.along(stitches).Add(s.ends(4))) }

// along returns the yarn that goes along so many stitches.
func (s *writer) along(stitches int) gauge.Length { return s.piece.Gauge.Width(4 * stitches) }

// ends returns so many times the length that is left at least: 10 cm or 4 in.
func (s *writer) ends(n int) gauge.Length { return s.notch().Mul(2 * n) }

// notch is what lengths to cut are rounded up to.
func (s *writer) notch() gauge.Length {
	if s.piece.Spec.Units == gauge.Inch {
		return gauge.MustParseLength("2 in")
	}
	return gauge.MustParseLength("5 cm")
}

// cut prints a length to cut.
func (s *writer) cut(l gauge.Length) string {
	notches := l.Millimetres().Div(s.notch().Millimetres()).Ceil().IntPart()
	return s.notch().Mul(int(notches)).Format(s.piece.Spec.Units, 0)
}
