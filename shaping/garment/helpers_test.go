package garment_test

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"example.com/walewise/gauge"
	"example.com/walewise/shaping"
	"example.com/walewise/shaping/garment"
)

// fataler is what *testing.T, *testing.B and *rapid.T have in common.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

func length(s string) gauge.Length { return gauge.MustParseLength(s) }

// newGauge is for literals.
func newGauge(stitches, rows, over string) gauge.Gauge {
	g, err := gauge.New(decimal.RequireFromString(stitches), decimal.RequireFromString(rows), length(over))
	if err != nil {
		panic(err)
	}
	return g
}

func front(t fataler, s garment.Spec) garment.Piece {
	t.Helper()
	p, err := garment.Front(s)
	if err != nil {
		t.Fatalf("front: %v", err)
	}
	return p
}

// adult is the spec of a front with armholes that the tests change.
func adult() garment.Spec {
	return garment.Spec{
		Gauge:    newGauge("22", "30", "10 cm"),
		Seam:     garment.Seam{Stitches: 1},
		Body:     garment.Body{Width: length("50 cm"), Length: length("36 cm")},
		Armhole:  garment.Armhole{Depth: length("21 cm"), Inset: length("6 cm")},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: length("18 cm"), Depth: length("8 cm")},
		Shoulder: garment.Shoulder{Drop: length("3 cm")},
	}
}

// adultJumper is the spec of a jumper with set-in sleeves on the front of [adult].
func adultJumper() garment.Spec {
	s := adult()
	s.Sleeve = &garment.SleeveSpec{
		Length: length("45 cm"), Cuff: length("22 cm"), Top: length("36 cm"), Cap: garment.SetInCap,
	}
	return s
}

// unitGauge is a spec at one stitch and one row to the centimetre: its lengths are
// its numbers.
func unitGauge(width, length, armhole, drop, neck, depth int) garment.Spec {
	cm := func(n int) gauge.Length { return gauge.Centimetres(decimal.NewFromInt(int64(n))) }
	return garment.Spec{
		Gauge:    newGauge("10", "10", "10 cm"),
		Body:     garment.Body{Width: cm(width), Length: cm(length)},
		Armhole:  garment.Armhole{Depth: cm(armhole)},
		Neck:     garment.Neck{Shape: garment.RoundNeck, Width: cm(neck), Depth: cm(depth)},
		Shoulder: garment.Shoulder{Drop: cm(drop)},
	}
}

func panel(t fataler, p garment.Piece, name string) shaping.Panel {
	t.Helper()
	found, ok := p.Work.Panels.Panel(name)
	if !ok {
		t.Fatalf("no panel %s", name)
	}
	return found
}

// sizes returns the stitches that go at each step.
func sizes(s shaping.Schedule) []int {
	var stitches []int
	for _, step := range s {
		stitches = append(stitches, -step.Stitches)
	}
	return stitches
}

// heightsFromMiddle returns the wale heights on one side from the middle outwards;
// the middle stitch of an odd piece is counted on the right.
func heightsFromMiddle(p garment.Piece, side shaping.Side) []int {
	var heights []int
	for n, height := range p.Cloth.Wales() {
		if (n.Index() >= 0) == (side == shaping.Right) {
			heights = append(heights, height)
		}
	}
	if side == shaping.Left {
		slices.Reverse(heights)
	}
	return heights
}

// shoulderGroups returns the groups of the right shoulder from tip to neck.
func shoulderGroups(t fataler, p garment.Piece) []int {
	t.Helper()
	var groups []int
	rest := p.Widths.Shoulder
	for _, step := range panel(t, p, shaping.RightHalf).Right {
		if step.Row >= p.Heights.Tip() {
			groups = append(groups, -step.Stitches)
			rest += step.Stitches
		}
	}
	return append(groups, rest)
}

// size returns the size of that name.
func size(t fataler, p garment.Piece, name string) garment.Size {
	t.Helper()
	for _, s := range p.Sizes {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no size %s", name)
	return garment.Size{}
}

// sixteenths writes a length that is a multiple of 1/16 in as a person would.
func sixteenths(l gauge.Length) string {
	n := l.Millimetres().Div(decimal.RequireFromString("1.5875")).IntPart()
	return fmt.Sprintf("%d %d/16 in", n/16, n%16)
}
