package browsercheck

import (
	"slices"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// state is how the work stands on a sheet.
type state struct {
	Hand, Ticks  []int  // numbers of the steps that are marked as in hand, and ticked
	Panel        string // without buttons and announcements
	Counter      string // what the panel says that it reads
	Said         string
	Entry        string // what the list says of it
	Focus        string // the id of what has it
	Steps, Width int
}

func (p *page) hasHand() bool {
	p.t.Helper()
	return eval[bool](p, "() => look.hasHand()")
}

// state returns how the work stands once the page has answered to all that was done.
func (p *page) state() state {
	p.t.Helper()
	return eval[state](p, "() => look.rest(40).then(look.state)")
}

// stands notes where the step in hand or the ticked ones are others than those that should
// be, or do not stay so. Where something is wrong already it does not wait for them.
func (p *page) stands(when string, hand int, ticks ...int) {
	p.t.Helper()
	s := eval[state](p, "(...want) => look.settled(...want)", hand, ticks, p.faults() == 0)
	if !s.is(hand, ticks) {
		p.problem("%s: step %v in hand and %v ticked, should be [%d] and %v", when, s.Hand, s.Ticks, hand, ticks)
	}
}

func (s state) is(hand int, ticks []int) bool {
	return slices.Equal(s.Hand, []int{hand}) && slices.Equal(s.Ticks, ticks)
}

func (p *page) key(keys string, modifiers ...chromedp.Modifier) {
	p.t.Helper()
	run(p, chromedp.KeyEvent(keys, chromedp.KeyModifiers(modifiers...)))
}

func (p *page) click(selector string) {
	p.t.Helper()
	if x, y, ok := p.at(selector); ok {
		run(p, chromedp.MouseClickXY(x, y))
	}
}

func (p *page) tap(selector string) {
	p.t.Helper()
	if x, y, ok := p.at(selector); ok {
		run(p, chromedp.TapXY(x, y))
	}
}

// at returns the point where a hand reaches for an element, and whether it gets hold of it.
func (p *page) at(selector string) (x, y float64, ok bool) {
	p.t.Helper()
	type place struct {
		X, Y    float64
		Problem string
	}
	at := eval[place](p, "s => look.at(s)", selector)
	if at.Problem != "" {
		p.problem("%s: %s", selector, at.Problem)
	}
	return at.X, at.Y, at.Problem == ""
}

// focus moves the focus by Tab from where it is to an element, and notes where that is far,
// or passes something that does not show that it has the focus.
func (p *page) focus(selector string) {
	p.t.Helper()
	const far = 40
	for range far {
		p.key(kb.Tab)
		if unseen := eval[string](p, "() => look.unseenFocus()"); unseen != "" {
			p.problem("%s does not show that it has the focus", unseen)
			return
		}
		if eval[bool](p, "s => document.activeElement.matches(s)", selector) {
			return
		}
	}
	p.problem("%s is not reached by %d times Tab", selector, far)
}
