package curve

// lowest finds least values in a window that moves over a row of them.
type lowest struct {
	queue []int // places in the window whose values rise
}

// into lowers each dst[k] to the least of src[k+from] to src[k+to], as far as they exist.
// It takes time that grows with the row, whatever the window.
func (l *lowest) into(dst, src []int64, from, to int) {
	if cap(l.queue) < len(src) {
		l.queue = make([]int, len(src))
	}
	queue := l.queue[:len(src)]
	head, tail := 0, 0
	enters := max(0, from)
	for k := range dst {
		for last := min(k+to, len(src)-1); enters <= last; enters++ {
			value := src[enters]
			for tail > head && src[queue[tail-1]] >= value {
				tail--
			}
			queue[tail] = enters
			tail++
		}
		for head < tail && queue[head] < k+from {
			head++
		}
		if head < tail {
			dst[k] = min(dst[k], src[queue[head]])
		}
	}
}
