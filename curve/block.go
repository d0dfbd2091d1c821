package curve

import (
	"slices"

	"example.com/walewise/shaping"
)

// way is one of the two ways in which stitches move: up, so that more are gone, or down.
type way int

const (
	up way = iota
	down
	ways
)

// sign returns 1 for up and -1 for down.
func (w way) sign() int { return 1 - 2*int(w) }

// wayOf returns the way of a change of the level that is not 0.
func wayOf(change int) way {
	if change < 0 {
		return down
	}
	return up
}

// rules are the rules for both ways; of one that may not be gone they are zero.
type rules struct {
	of    [ways]shaping.Rules
	may   [ways]bool
	first int // the first row at which a step is allowed
	apart [ways]int
	based [ways]bool // a base is named for steps at the first row
	// every is by how much the two distances of a phrase differ that has two in turn: for
	// single stitches and for several.
	every [ways][2]int
}

// newRules returns the rules for levels that rise and, if they may fall, for those.
func newRules(rise, fall shaping.Rules, mayFall bool) *rules {
	r := &rules{of: [ways]shaping.Rules{up: rise}, may: [ways]bool{up: true, down: mayFall}, first: rise.FirstRow()}
	if mayFall {
		r.of[down], r.first = fall, min(r.first, fall.FirstRow())
	}
	for w, of := range r.of {
		r.apart[w] = max(of.Apart, 1)
		r.based[w] = r.may[w] && of.Base > 0 && of.FirstRow() == r.first
		r.every[w] = [2]int{of.BeatOf(1).Every, of.BeatOf(2).Every}
	}
	if !mayFall {
		r.apart[down] = r.apart[up]
	}
	return r
}

// inTurn returns by how much the two distances of a phrase of such steps differ.
func (r *rules) inTurn(change int) int {
	if change == 1 || change == -1 {
		return r.every[wayOf(change)][0]
	}
	return r.every[wayOf(change)][1]
}

// block is an allowed row and those that follow it up to the next allowed row: a
// stretch in which the staircase cannot change. Blocks are numbered from 0.
type block struct {
	start int         // rows below it: the allowed row is start + 1
	sizes [ways]sizes // of steps at the allowed row
	next  [ways]int   // the first block where such a step may stand after one here
}

// sizes are the least and the most stitches that a step may move; most is 0 if none may.
type sizes struct{ least, most int }

func (s sizes) allow(stitches int) bool { return s.least <= stitches && stitches <= s.most }

// ready returns the first block where any step may stand after one here, and the first
// where both may.
func (b *block) ready() (one, both int) {
	return min(b.next[up], b.next[down]), max(b.next[up], b.next[down])
}

// appendBlocks appends the blocks of an edge of so many rows, and one more that starts
// where the edge ends. No step moves more than that many stitches.
func appendBlocks(blocks []block, r *rules, rows, stitches int) []block {
	stride := 1
	if first := r.of[up]; !r.may[down] && first.Single.IsZero() {
		stride = max(first.Every, 1)
	}
	blocks = slices.Grow(blocks, rows/stride+2)
	for row := r.first; row <= rows; row += stride {
		b := block{start: row - 1}
		some := false
		for w := range ways {
			if !r.may[w] {
				continue
			}
			least, most := r.of[w].SizesAt(row, rows)
			b.sizes[w] = sizes{least, min(most, stitches)}
			some = some || most > 0
		}
		if some {
			blocks = append(blocks, b)
		}
	}
	blocks = append(blocks, block{start: rows})
	for w := range ways {
		next := 0
		for i := range blocks {
			for next < len(blocks)-1 && (next <= i || blocks[next].start-blocks[i].start < r.apart[w]) {
				next++
			}
			blocks[i].next[w] = next
		}
	}
	return blocks
}
