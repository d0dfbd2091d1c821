package browsercheck

// checkStill shows the page to someone who wants less motion, and nothing in it moves.
func checkStill(p *page) {
	p.open(phone)
	p.prefer("screen", "prefers-reduced-motion", "reduce")
	if moving := eval[[]string](p, "() => look.moving()"); len(moving) > 0 {
		p.problem("moves although less motion is preferred: %s", few(moving))
	}
}
