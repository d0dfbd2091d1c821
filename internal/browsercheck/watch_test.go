package browsercheck

import (
	"net/url"
	"strings"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// watch notes, for as long as the tab is open, errors on the console, exceptions, and
// requests for anything but the page itself and what stands in it.
func (p *page) watch() {
	p.t.Helper()
	own := fileURL(p.t, p.file)
	err := chromedp.Listen(p.tab, func(event any) {
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			p.problem("exception: %s", thrown(e.ExceptionDetails))
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeAssert {
				p.problem("console: %s", said(e.Args))
			}
		case *log.EventEntryAdded:
			if e.Entry.Level == log.EntryLevelError {
				p.problem("console: %s %s", e.Entry.Text, e.Entry.URL)
			}
		case *network.EventRequestWillBeSent:
			if !within(e.Request.URL, own) {
				p.problem("request: %s", e.Request.URL)
			}
		case *network.EventWebSocketCreated:
			p.problem("request: %s", e.URL)
		}
	})
	if err != nil {
		p.t.Fatal(err)
	}
	call(p, network.Enable, network.EnableParams{})
}

func thrown(d *runtime.ExceptionDetails) string {
	if d.Exception != nil && d.Exception.Description != "" {
		return d.Exception.Description
	}
	return d.Text
}

func said(args []*runtime.RemoteObject) string {
	var words []string
	for _, a := range args {
		if a.Description != "" {
			words = append(words, a.Description)
		} else {
			words = append(words, string(a.Value))
		}
	}
	return strings.Join(words, " ")
}

// within reports whether what is asked for is the page or data in it.
func within(asked, own string) bool {
	u, err := url.Parse(asked)
	if err != nil {
		return false
	}
	u.Fragment = ""
	return u.Scheme == "data" || u.String() == own
}

// checkQuiet loads the page, and it says and asks for nothing.
func checkQuiet(p *page) {
	p.open(desktop)
	// What starts only once the page has loaded also counts.
	eval[any](p, "() => look.rest(300)")
}

// checkPolicy reads the page's own rule that nothing may be loaded.
func checkPolicy(p *page) {
	p.open(desktop)
	if policy := eval[string](p, "() => look.policy()"); !strings.Contains(policy, "default-src 'none'") {
		p.problem("the content security policy %q forbids nothing", policy)
	}
}
