package browsercheck

import (
	"fmt"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const (
	onButton   = "#hand-on"
	backButton = "#hand-back"
)

// checkMoves goes two steps on and comes back, in every way that there is.
func checkMoves(p *page) {
	pressing := func(key string) func() { return func() { p.key(key) } }
	p.open(desktop)
	p.stands("at first", 1)
	for _, way := range []struct {
		name     string
		view     view
		on, back func()
	}{
		{"Enter, Backspace", desktop, pressing(kb.Enter), pressing(kb.Backspace)},
		{"Space, ArrowLeft", desktop, pressing(" "), pressing(kb.ArrowLeft)},
		{"ArrowRight, ArrowLeft", phone, pressing(kb.ArrowRight), pressing(kb.ArrowLeft)},
		{"click", desktop, func() { p.click(onButton) }, func() { p.click(backButton) }},
		{"tap", phone, func() { p.tap(onButton) }, func() { p.tap(backButton) }},
	} {
		p.see(way.view)
		way.on()
		p.stands(way.name+", on", 2, 1)
		way.on()
		p.stands(way.name+", on twice", 3, 1, 2)
		way.back()
		p.stands(way.name+", back", 2, 1)
		way.back()
		p.stands(way.name+", back twice", 1)
	}
}

// checkKeyboard finds the buttons by Tab, and each key does one thing only.
func checkKeyboard(p *page) {
	p.open(desktop)
	p.focus(onButton)
	p.key(kb.Enter)
	p.stands("Enter on the button", 2, 1)
	p.key(" ")
	p.stands("Space on the button", 3, 1, 2)
	if s := p.state(); "#"+s.Focus != onButton {
		p.problem("the button lost the focus to %q", s.Focus)
	}
	p.key(kb.ArrowRight)
	p.stands("ArrowRight on the button", 4, 1, 2, 3)
	p.key(kb.ArrowLeft, chromedp.ModifierAlt)
	p.stands("Alt and ArrowLeft, which is the browser's", 4, 1, 2, 3)
	p.again(p.reload)
	p.focus(backButton)
	p.key(kb.Enter)
	p.stands("Enter on the button back", 3, 1, 2)
	p.key(" ")
	p.stands("Space on the button back", 2, 1)
	eval[any](p, "() => document.getElementById('tick-4').focus()")
	p.key(" ")
	p.stands("Space on a box", 2, 1, 4)
}

// checkBoxes ticks and unticks in the list.
func checkBoxes(p *page) {
	p.open(desktop)
	p.click("#tick-3")
	p.stands("step 3 ticked", 1, 3)
	p.click("#tick-1")
	p.stands("the step in hand ticked", 2, 1, 3)
	p.key(kb.ArrowRight)
	p.stands("on over a ticked step", 4, 1, 2, 3)
	p.click("#tick-3")
	p.stands("step 3 unticked", 3, 1, 2)
	p.key(kb.ArrowRight)
	p.stands("and done", 4, 1, 2, 3)
}

// checkLinks takes the last piece first, and comes back to the first.
func checkLinks(p *page) {
	p.open(desktop)
	links := eval[[]int](p, "() => look.links()")
	if len(links) < 2 {
		p.problem("links go to the steps %v, should go to the first of each piece", links)
		return
	}
	first, last := links[0], links[len(links)-1]
	link := func(n int) string { return fmt.Sprintf(`a.go[href="#step-%d"]`, n) }
	p.click(link(last))
	p.stands("link to the last piece", last)
	p.unhidden("after the link to the last piece", last)
	p.key(kb.ArrowRight)
	p.stands("on in the last piece", last+1, last)
	eval[any](p, "s => document.querySelector(s).focus()", link(first))
	p.key(kb.Enter)
	p.stands("Enter on the link to the first piece", first, last)
	p.again(func() { p.open(desktop) })
	p.stands("opened again after a link", first, last)
}
