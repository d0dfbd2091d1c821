package draw

import (
	"slices"

	"example.com/walewise/shaping/bed"
	"example.com/walewise/shaping/garment"
)

// Alike gathers pieces that come off the needles alike, such as two sleeves, so that one
// picture does for them: those of the same gauge and wales. They stay in their order.
func Alike(pieces ...garment.Piece) [][]garment.Piece {
	var groups [][]garment.Piece
	for _, p := range pieces {
		i := slices.IndexFunc(groups, func(g []garment.Piece) bool { return alike(g[0], p) })
		if i < 0 {
			groups = append(groups, []garment.Piece{p})
		} else {
			groups[i] = append(groups[i], p)
		}
	}
	return groups
}

func alike(a, b garment.Piece) bool {
	return a.Gauge.Equal(b.Gauge) && sameWales(a.Cloth, b.Cloth)
}

func sameWales(a, b bed.Cloth) bool {
	if a.Needles() != b.Needles() {
		return false
	}
	for n, height := range a.Wales() {
		if b.Height(n) != height {
			return false
		}
	}
	return true
}
