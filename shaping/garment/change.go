package garment

import (
	"slices"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"github.com/shopspring/decimal"
)

// Change is one number of a piece or a band before and after its spec was changed, such as by
// [Spec.Regauged].
type Change struct {
	Piece string // its name, or that of the band
	// What is "pickedUp" or "bandRows" of a band. Of a piece it is "castOn", "widest", "rows", "needles" or "yarn", or the name of a [Size].
	What   string
	Before Figure
	After  Figure
}

// Figure is what one of two garments says of a number. The zero value is that of a
// garment that has no such number.
type Figure struct {
	Given   bool
	Count   int             // of what Counted says; 0 for what is a length only
	Counted string          // "stitches", "rows", "needles", "loops", or empty
	Length  gauge.Length    // as it will be knitted; 0 for what is a count only
	Grams   decimal.Decimal // of yarn, and
	Metres  decimal.Decimal // of it, where the swatches say it; else 0
}

// Same reports whether nothing changes.
func (c Change) Same() bool {
	b, a := c.Before, c.After
	return b.Given == a.Given && b.Count == a.Count && b.Counted == a.Counted && b.Length.Equal(a.Length) &&
		b.Grams.Equal(a.Grams) && b.Metres.Equal(a.Metres)
}

// Moves returns by how much a size grows, 0 for what is no size or not given in both.
func (c Change) Moves() gauge.Length {
	if !c.Before.Given || !c.After.Given {
		return gauge.Length{}
	}
	return c.After.Length.Sub(c.Before.Length)
}

// Compare returns what becomes of each number of each piece: the stitches cast on and at
// the widest, the rows knitted, on the bed the needles from the outermost at the left to
// that at the right, the sizes, and the yarn with its loops. Numbers that stay are among
// them, see [Change.Same]; so are the stitches that bands pick up and their rows. Pieces, and
// after them bands, come in the order of after, then those that only before has; what only one of them has is not given in the other.
func Compare(before, after Set) []Change {
	var list []Change
	for _, name := range append(together(pieceNames(after), pieceNames(before)), together(bandNames(after), bandNames(before))...) {
		b, a := readings(before, name), readings(after, name)
		for _, what := range together(a.names(), b.names()) {
			list = append(list, Change{Piece: name, What: what, Before: b.of(what), After: a.of(what)})
		}
	}
	return list
}

func pieceNames(s Set) []string {
	var names []string
	for _, p := range s.Pieces {
		names = append(names, p.Name())
	}
	return names
}

func bandNames(s Set) []string {
	var names []string
	for _, b := range s.Bands {
		names = append(names, b.Name)
	}
	return names
}

// together returns the names of both lists, each once.
func together(first, then []string) []string {
	list := slices.Clone(first)
	for _, name := range then {
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

// reading is what a piece says of a number.
type reading struct {
	what string
	Figure
}

type readingList []reading

func (l readingList) names() []string {
	var names []string
	for _, r := range l {
		names = append(names, r.what)
	}
	return names
}

func (l readingList) of(what string) Figure {
	if i := slices.IndexFunc(l, func(r reading) bool { return r.what == what }); i >= 0 {
		return l[i].Figure
	}
	return Figure{}
}

// readings returns what a set says of the piece or the band of that name; it says nothing if
// there is none.
func readings(s Set, name string) readingList {
	if b, ok := s.Band(name); ok {
		return readingList{
			{"pickedUp", Figure{Given: true, Count: b.Stitches(), Counted: "stitches", Length: b.Length()}},
			{"bandRows", Figure{Given: true, Count: b.Rows, Counted: "rows"}},
		}
	}
	p, ok := s.Piece(name)
	if !ok {
		return nil
	}
	list := readingList{
		{"castOn", Figure{Count: p.Widths.CastOn, Counted: "stitches"}},
		{"widest", Figure{Count: p.Cloth.Needles().Len(), Counted: "stitches"}},
		{"rows", Figure{Count: p.Cloth.Rows(), Counted: "rows"}},
	}
	if p.Work.Place == shaping.Bed {
		list = append(list, reading{"needles", Figure{Count: p.Cloth.Needles().Len(), Counted: "needles"}})
	}
	for _, size := range p.Sizes {
		list = append(list, reading{size.Name, Figure{Count: size.Count, Counted: size.Counted, Length: size.Knitted}})
	}
	yarn := Figure{Count: p.Cloth.Loops(), Counted: "loops"}
	if y, ok := p.Yarn(); ok {
		yarn.Grams, yarn.Metres = y.Total.Grams, y.Total.Metres
	}
	list = append(list, reading{"yarn", yarn})
	for i := range list {
		list[i].Given = true
	}
	return list
}
