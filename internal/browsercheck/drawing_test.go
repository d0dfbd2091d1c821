package browsercheck

// checkDrawings reads the drawings in the page: no word is cut at an edge.
func checkDrawings(p *page) {
	p.open(desktop)
	if cut := eval[[]string](p, "() => look.cutText()"); len(cut) > 0 {
		p.problem("cut at the edge of a drawing are %q", cut)
	}
}
