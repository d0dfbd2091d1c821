package curve

import "sync"

// desk is what a trace is worked out on. Its memory is used again by later ones: what it
// holds has no meaning from one to the next.
type desk struct {
	program  program
	arrivals arrivals
	search   search
}

var desks = sync.Pool{New: func() any { return new(desk) }}

// takeDesk returns a desk laid out for a drawing under rules, to be given back by leave.
func takeDesk(d *drawing, r *rules) *desk {
	k := desks.Get().(*desk)
	k.program.reset(d, r)
	return k
}

// leave gives the desk back, unless it has grown so large that it would be a burden.
func (k *desk) leave() {
	const burden = 1 << 18 // places
	k.program.d = nil
	if len(k.arrivals.there) <= burden && len(k.program.togo) <= burden {
		desks.Put(k)
	}
}

// sized returns a slice of that length in the memory of another, if that is enough. Its
// entries are of no account.
func sized[T any](s []T, length int) []T {
	if cap(s) < length {
		return make([]T, length)
	}
	return s[:length]
}
