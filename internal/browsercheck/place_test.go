package browsercheck

import (
	"os"
	"path/filepath"
	"regexp"

	"github.com/chromedp/chromedp/kb"
)

// checkPlace leaves the sheet and comes back to it.
func checkPlace(p *page) {
	p.open(phone)
	p.key(kb.ArrowRight + kb.ArrowRight)
	p.click("#tick-5")
	p.stands("before", 3, 1, 2, 5)
	p.again(p.reload)
	p.stands("reloaded", 3, 1, 2, 5)
	p.again(func() { p.open(phone) })
	p.stands("in another tab", 3, 1, 2, 5)

	own := p.file
	p.file = p.otherSheet()
	p.again(func() { p.open(phone) })
	p.stands("on another sheet", 1)
	p.key(kb.ArrowRight)
	p.file = own
	p.again(func() { p.open(phone) })
	p.stands("after another sheet", 3, 1, 2, 5)
}

// again shows a page anew that has kept something. Chromium 156 at times finds the storage
// of a file empty then, about once in thirty, and full a moment later; what a page makes of
// that is not tried here.
func (p *page) again(show func()) {
	p.t.Helper()
	const tries = 10
	for range tries {
		show()
		if p.faults() > 0 || eval[int](p, "() => localStorage.length") > 0 {
			return
		}
		eval[any](p, "() => look.rest(100)")
	}
}

// otherSheet returns the file of the same page as the sheet of something else.
func (p *page) otherSheet() string {
	p.t.Helper()
	text, err := os.ReadFile(p.file)
	if err != nil {
		p.t.Fatal(err)
	}
	mark := regexp.MustCompile(`(<main\b[^>]*\bdata-sheet=")[^"]*"`)
	if !mark.Match(text) {
		p.problem("main has no data-sheet")
	}
	file := filepath.Join(p.t.TempDir(), "other.html")
	if err := os.WriteFile(file, mark.ReplaceAll(text, []byte(`${1}other"`)), 0o666); err != nil {
		p.t.Fatal(err)
	}
	return file
}

// checkNoPlace takes the storage away, in the ways in which browsers do.
func checkNoPlace(p *page) {
	for _, c := range []struct{ name, script string }{
		{"no storage", `Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError'); }});`},
		{"null as storage", `Object.defineProperty(window, 'localStorage', {value: null});`},
		{"storage that keeps nothing", `for (const f of ['getItem', 'setItem', 'removeItem', 'clear', 'key']) Storage.prototype[f] = () => { throw new DOMException('no', 'QuotaExceededError'); };`},
	} {
		p.open(phone, c.script)
		p.stands(c.name, 1)
		p.key(kb.ArrowRight)
		p.click(onButton)
		p.stands(c.name+", on", 3, 1, 2)
		p.click(backButton)
		p.stands(c.name+", back", 2, 1)
		p.click("#tick-1")
		p.stands(c.name+", unticked", 1)
	}
}

// checkBrokenPlace finds something in the storage that the page has not put there.
func checkBrokenPlace(p *page) {
	p.open(phone)
	for _, kept := range []string{``, `{`, `null`, `7`, `[]`} {
		p.key(kb.ArrowRight)
		eval[any](p, "kept => { for (const k of Object.keys(localStorage)) localStorage.setItem(k, kept) }", kept)
		p.reload()
		p.key(kb.ArrowRight)
		if s := p.state(); len(s.Hand) != 1 || len(s.Ticks) == 0 {
			p.problem("%q found in the storage: step %v in hand, ticked %v", kept, s.Hand, s.Ticks)
		}
	}
}
