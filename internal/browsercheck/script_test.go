package browsercheck

import (
	"slices"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// checkNoScript opens the sheet where its script does not run: it is a list to tick.
func checkNoScript(p *page) {
	p.open(phone)
	call(p, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	p.reload()
	run(p, chromedp.Evaluate[chromedp.Void](lookScript)) // what is asked from outside runs
	if left := eval[[]string](p, "() => look.buttons()"); len(left) > 0 {
		p.problem("without script there are buttons that do nothing: %s", few(left))
	}
	p.click("#tick-2")
	if ticks := eval[[]int](p, "() => look.ticks()"); !slices.Equal(ticks, []int{2}) {
		p.problem("without script a click on box 2 ticks %v", ticks)
	}
	p.fits(phone)
}
