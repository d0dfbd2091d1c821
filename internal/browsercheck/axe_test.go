package browsercheck

import (
	"os"
	"strings"

	"github.com/chromedp/chromedp"
)

// finding is one rule of axe-core that a page breaks, or of which axe-core cannot tell.
type finding struct {
	ID, Help string
	Nodes    []string
}

const axeRun = `async () => {
	const r = await axe.run(document, {
		runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa', 'best-practice'],
		rules: {'target-size': {enabled: true}},
	});
	const told = list => list.map(v => ({
		id: v.id, help: v.help, nodes: v.nodes.map(n => n.target.join(' ') + ': ' + (n.any[0] || n.all[0] || n.none[0] || {}).message),
	}));
	return {violations: told(r.violations), incomplete: told(r.incomplete)};
}`

// checkAxe has axe-core judge the page on a phone and on a desk, in light and in dark
// surroundings, as it is at first and with steps done.
func checkAxe(p *page) {
	script, err := os.ReadFile(axeFile)
	if err != nil {
		p.t.Fatal(err)
	}
	p.open(desktop)
	run(p, chromedp.Evaluate[chromedp.Void](string(script)))
	// What lies under the panel has no colours that axe-core could compare.
	eval[any](p, "() => look.style('#hand { position: static !important }')")
	for _, colours := range []string{"light", "dark"} {
		p.prefer("screen", "prefers-color-scheme", colours)
		p.judge(desktop, colours)
		p.judge(phone, colours)
		if p.hasHand() {
			eval[any](p, "() => document.getElementById('hand-on').click()")
		}
	}
}

func (p *page) judge(v view, colours string) {
	p.t.Helper()
	p.see(v)
	result := eval[struct{ Violations, Incomplete []finding }](p, axeRun)
	for _, f := range result.Violations {
		p.problem("axe, %d px, %s: %s: %s: %s", v.width, colours, f.ID, f.Help, few(f.Nodes))
	}
	for _, f := range result.Incomplete {
		p.t.Logf("axe cannot tell, %d px, %s: %s: %s: %s", v.width, colours, f.ID, f.Help, few(f.Nodes))
	}
}

// few joins the first of the texts.
func few(texts []string) string {
	const most = 3
	if len(texts) > most {
		texts = append(texts[:most:most], "...")
	}
	return strings.Join(texts, "; ")
}
