package draw

import "example.com/walewise/internal/svgw"

// spread moves labels, sorted by where they are wanted, apart so that none is nearer to the
// next than the gap, each as little as can be: labels that would touch stand as a block about
// the middle of where they are wanted. None stands before the least place, and none after
// the greatest unless there are too many.
func spread(wanted []svgw.Number, gap, least, most svgw.Number) []svgw.Number {
	type block struct{ sum, count svgw.Number } // of places, each without the gaps before it
	var blocks []block
	for i, y := range wanted {
		blocks = append(blocks, block{y - gap*svgw.Number(i), 1})
		for k := len(blocks) - 1; k > 0 && blocks[k].sum*blocks[k-1].count < blocks[k-1].sum*blocks[k].count; k-- {
			blocks[k-1].sum += blocks[k].sum
			blocks[k-1].count += blocks[k].count
			blocks = blocks[:k]
		}
	}
	var placed []svgw.Number
	last := most - gap*svgw.Number(len(wanted)-1)
	for _, b := range blocks {
		for range b.count {
			at := max(min(b.sum/b.count, last), least)
			placed = append(placed, at+gap*svgw.Number(len(placed)))
		}
	}
	return placed
}
