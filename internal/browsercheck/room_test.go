package browsercheck

import "fmt"

// checkThumb touches the page on a phone: everything is large enough.
func checkThumb(p *page) {
	const thumb = 44
	p.open(phone)
	if small := eval[[]string](p, "least => look.small(least)", thumb); len(small) > 0 {
		p.problem("%d targets are smaller than %d px: %s", len(small), thumb, few(small))
	}
}

// checkRoom has the panel and the steps beside each other, on a phone held upright and
// sideways.
func checkRoom(p *page) {
	const most = 0.6
	for _, v := range []view{phone, {640, 360, true}} {
		p.forget()
		p.open(v)
		size := fmt.Sprintf("%d x %d", v.width, v.height)
		if share := eval[float64](p, "() => look.share()"); share > most {
			p.problem("%s: the panel takes %.0f %% of the height", size, 100*share)
		}
		last := p.state().Steps
		eval[any](p, "n => look.reveal(n)", last)
		p.unhidden(size, last)
		if out := eval[[]string](p, "() => look.out()"); len(out) > 0 {
			p.problem("%s: out of the window are %s", size, few(out))
		}
	}
}

// unhidden notes where a step is not in sight though there is room.
func (p *page) unhidden(when string, step int) {
	p.t.Helper()
	if hidden := eval[int](p, "n => look.hidden(n)", step); hidden > 0 {
		p.problem("%s: %d px of step %d are out of sight", when, hidden, step)
	}
}
