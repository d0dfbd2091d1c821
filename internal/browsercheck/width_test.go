package browsercheck

// checkWidth shows the page in widths from narrow phones on, and none makes it scroll
// sideways.
func checkWidth(p *page) {
	p.open(phone)
	for _, v := range []view{{320, 640, true}, phone, {640, 360, true}, desktop} {
		p.see(v)
		p.fits(v)
	}
}

// fits notes what is wider than the view. A phone zooms out for a page that is too wide, so
// that the page's own idea of the width is no measure.
func (p *page) fits(v view) {
	p.t.Helper()
	if wide := eval[int64](p, "() => look.width()"); wide > v.width {
		p.problem("%d px wide in %d px: %q", wide, v.width, eval[[]string](p, "w => look.wider(w)", v.width))
	}
}
