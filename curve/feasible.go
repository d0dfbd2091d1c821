package curve

import "slices"

// feasible reports whether any schedule over that many rows that moves the level from 0 to
// net, and nowhere beyond least and most, obeys the rules. It takes time that grows with
// the allowed rows times the levels.
func feasible(net, rows int, r *rules, least, most int) bool {
	blocks := appendBlocks(nil, r, rows, most-least)
	last, levels := len(blocks)-1, most-least+1
	// For each block whether a level is reached there, and whether a step of each way may
	// stand there. What is passed on goes at most as far as the longest wait.
	reached := make([]bool, levels)
	var ready [ways][][]bool
	for w := range ways {
		ready[w] = make([][]bool, len(blocks))
	}
	begin := make([]bool, levels)
	begin[-least] = true
	reached[-least] = true
	for w := range ways {
		ready[w][0] = slices.Clone(begin)
	}
	for i := range last {
		landed := make([]bool, levels)
		for w := range ways {
			if size := blocks[i].sizes[w]; size.most > 0 && ready[w][i] != nil {
				spread(landed, ready[w][i], w.sign(), size)
			}
		}
		for w := range ways {
			if ready[w][i] != nil {
				unite(&ready[w][i+1], ready[w][i])
				ready[w][i] = nil
			}
			unite(&ready[w][blocks[i].next[w]], landed)
		}
		unite(&reached, landed)
	}
	return reached[net-least]
}

// spread sets all levels to which a step of such sizes leads from one of the given ones.
func spread(landed, from []bool, sign int, size sizes) {
	open := 0 // levels in the window from which a step leads here
	at := func(k int) bool {
		if sign < 0 {
			k = len(from) - 1 - k
		}
		return k >= 0 && k < len(from) && from[k]
	}
	for k := range from {
		if at(k - size.least) {
			open++
		}
		if at(k - size.most - 1) {
			open--
		}
		if open == 0 {
			continue
		}
		if sign < 0 {
			landed[len(from)-1-k] = true
		} else {
			landed[k] = true
		}
	}
}

// unite adds the levels of another set.
func unite(set *[]bool, other []bool) {
	if *set == nil {
		*set = slices.Clone(other)
		return
	}
	for k, is := range other {
		(*set)[k] = (*set)[k] || is
	}
}
