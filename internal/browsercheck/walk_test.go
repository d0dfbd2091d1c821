package browsercheck

import (
	"regexp"
	"slices"

	"github.com/chromedp/chromedp/kb"
)

// allDone is found in the panel once nothing is left, and not before.
var allDone = regexp.MustCompile(`(?i)\ball\b.*\bdone\b`)

// checkWalk goes through all steps on a phone by a key. Faults are told of the first steps
// that have them.
func checkWalk(p *page) {
	p.open(phone)
	const many = 10
	before := p.state()
	for n := 1; n <= before.Steps && p.faults() < many; n++ {
		p.holds(n, before)
		p.key(kb.ArrowRight)
		after := eval[state](p, "s => look.next(s)", before)
		if after.Said == "" || after.Said == before.Said {
			p.problem("after step %d: nothing new is said, but %q", n, after.Said)
		}
		if !slices.Contains(after.Ticks, n) || len(after.Ticks) != n {
			p.problem("after step %d: ticked %v", n, after.Ticks)
		}
		before = after
	}
	if len(before.Ticks) != before.Steps || !allDone.MatchString(before.Panel) {
		p.problem("at the end: %d of %d steps ticked, and the panel says %q", len(before.Ticks), before.Steps, before.Panel)
		return
	}
	p.key(kb.ArrowRight)
	if s := p.state(); len(s.Ticks) != s.Steps || s.Panel != before.Panel {
		p.problem("on from the end: %d of %d steps ticked, and the panel says %q", len(s.Ticks), s.Steps, s.Panel)
	}
	p.key(kb.ArrowLeft)
	if s := p.state(); !slices.Equal(s.Hand, []int{s.Steps}) || len(s.Ticks) != s.Steps-1 || allDone.MatchString(s.Panel) {
		p.problem("back from the end: step %v in hand, %d of %d steps ticked, and the panel says %q", s.Hand, len(s.Ticks), s.Steps, s.Panel)
	}
}

// holds notes what is wrong while step n is in hand.
func (p *page) holds(n int, s state) {
	if !slices.Equal(s.Hand, []int{n}) {
		p.problem("step %v in hand, should be %d", s.Hand, n)
	}
	if s.Counter != s.Entry {
		p.problem("step %d: the counter is %q in the panel, and the list says %q", n, s.Counter, s.Entry)
	}
	if allDone.MatchString(s.Panel) {
		p.problem("step %d: the panel says %q", n, s.Panel)
	}
	if s.Width > int(phone.width) {
		p.problem("step %d: %d px wide", n, s.Width)
	}
}

// checkLeftOver does the last step first, and all is not done.
func checkLeftOver(p *page) {
	p.open(desktop)
	last := p.state().Steps
	// What is unticked is in hand.
	eval[any](p, "n => { const t = document.getElementById('tick-' + n); t.click(); t.click(); }", last)
	p.stands("the last step unticked", last)
	p.key(kb.ArrowRight)
	if s := p.state(); len(s.Hand) != 1 || s.Hand[0] == last || allDone.MatchString(s.Panel) {
		p.problem("the last step done first: step %v in hand, and the panel says %q", s.Hand, s.Panel)
	}
}
