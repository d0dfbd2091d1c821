package curve

import "example.com/walewise/shaping"

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

// rules are the rules for both ways; the zero Rules and false where none may move so.
type rules struct {
	of  [ways]shaping.Rules
	may [ways]bool
}

// apart returns the least distance before a step.
func (r *rules) apart(w way) int { return max(r.of[w].Apart, 1) }

// every returns by how much the two distances of a phrase differ that has two in turn.
func (r *rules) every(change int) int { return r.of[wayOf(change)].BeatOf(change).Every }

// firstRow returns the first row at which a step is allowed.
func (r *rules) firstRow() int {
	switch first, second := r.of[up].FirstRow(), r.of[down].FirstRow(); {
	case !r.may[down]:
		return first
	case !r.may[up]:
		return second
	default:
		return min(first, second)
	}
}

// isBased reports whether a base is named for steps of a way at the first allowed row.
func (r *rules) isBased(w way) bool {
	return r.may[w] && r.of[w].Base > 0 && r.of[w].FirstRow() == r.firstRow()
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

// newBlocks returns the blocks of an edge of so many rows, and one more that starts where
// the edge ends. No step moves more than that many stitches.
func newBlocks(r *rules, rows, stitches int) []block {
	stride := 1
	if first := r.of[up]; !r.may[down] && first.Single.IsZero() {
		stride = max(first.Every, 1)
	}
	blocks := make([]block, 0, rows/stride+2)
	for row := r.firstRow(); row <= rows; row += stride {
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
		next, apart := 0, r.apart(w)
		if !r.may[w] {
			apart = r.apart(w.other())
		}
		for i := range blocks {
			for next < len(blocks)-1 && (next <= i || blocks[next].start-blocks[i].start < apart) {
				next++
			}
			blocks[i].next[w] = next
		}
	}
	return blocks
}

func (w way) other() way { return 1 - w }
