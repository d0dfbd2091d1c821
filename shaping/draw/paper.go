package draw

import (
	"fmt"

	"example.com/walewise/gauge"
	"example.com/walewise/internal/svgw"
)

// Paper is a size of paper to print on. The zero value is A4.
type Paper uint8

// The sizes of paper.
const (
	A4     Paper = iota // 210 mm by 297 mm (ISO 216)
	Letter              // 8 1/2 in by 11 in (ANSI/ASME Y14.1)
)

var papers = [...]struct {
	name          string
	width, height string
	sheet         point // what of it is printed
}{
	{"A4", "210 mm", "297 mm", point{190_000, 275_000}},
	{"Letter", "8.5 in", "11 in", point{195_000, 257_000}},
}

// IsValid reports whether p is one of the sizes.
func (p Paper) IsValid() bool { return int(p) < len(papers) }

// String returns "A4" or "Letter".
func (p Paper) String() string {
	if !p.IsValid() {
		return fmt.Sprintf("Paper(%d)", uint8(p))
	}
	return papers[p].name
}

// Size returns the width and the height of the paper, 0 for a value that is none of the
// sizes.
func (p Paper) Size() (width, height gauge.Length) {
	if !p.IsValid() {
		return gauge.Length{}, gauge.Length{}
	}
	return gauge.MustParseLength(papers[p].width), gauge.MustParseLength(papers[p].height)
}

// sheet returns what is printed of the paper, within margins that every printer leaves.
func (p Paper) sheet() (width, height svgw.Number) { return papers[p].sheet.x, papers[p].sheet.y }
