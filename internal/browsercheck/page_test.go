package browsercheck

import (
	"context"
	_ "embed"
	"encoding/json"
	"fmt"
	"net/url"
	"path/filepath"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// What the checks ask of a page stands in it as window.look.
//
//go:embed look.js
var lookScript string

// view is what a page is seen on.
type view struct {
	width, height int64
	phone         bool // touched, and zoomed out where the page is too wide
}

var (
	phone   = view{width: 360, height: 640, phone: true}
	desktop = view{width: 1200, height: 800}
)

// page is one file as a check sees it. What a check finds wrong is gathered in it; what
// keeps the check from being made ends the test.
type page struct {
	t        *testing.T
	file     string
	profile  cdp.BrowserContextID
	tab      context.Context
	closeTab context.CancelFunc

	mu       sync.Mutex // the browser reports while a check asks
	problems []string
}

// newPage returns the page in a file.
func newPage(t *testing.T, file string) *page {
	t.Helper()
	p := &page{t: t, file: file, closeTab: func() {}}
	p.forget()
	return p
}

// forget moves to a new profile, where nothing is kept.
func (p *page) forget() {
	p.t.Helper()
	p.closeTab()
	browser := needBrowser(p.t)
	made, err := chromedp.CallBrowser(browser, target.CreateBrowserContext, target.CreateBrowserContextParams{})
	if err != nil {
		p.t.Fatal(err)
	}
	p.profile = made.BrowserContextID
	p.t.Cleanup(func() {
		// Best effort: the browser ends with the tests.
		_, _ = chromedp.CallBrowser(browser, target.DisposeBrowserContext, target.DisposeBrowserContextParams(made))
	})
}

// problem notes a fault of the page.
func (p *page) problem(format string, args ...any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.problems = append(p.problems, fmt.Sprintf(format, args...))
}

// faults returns the number of faults that have been found.
func (p *page) faults() int {
	p.mu.Lock()
	defer p.mu.Unlock()
	return len(p.problems)
}

// open shows the page in a new tab in place of the one before. The scripts run ahead of the
// page's own.
func (p *page) open(v view, scripts ...string) {
	p.t.Helper()
	p.closeTab()
	p.tab, p.closeTab = chromedp.NewContext(needBrowser(p.t), chromedp.WithExistingBrowserContext(p.profile))
	p.t.Cleanup(p.closeTab)
	if err := chromedp.Do(p.tab); err != nil { // the tab lives as long as this context
		p.t.Fatal(err)
	}
	p.watch()
	p.see(v)
	// Tabs stand side by side, and each behaves as the one in front.
	call(p, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
	for _, s := range append(scripts, lookScript) {
		call(p, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: s})
	}
	run(p, chromedp.Navigate(fileURL(p.t, p.file)))
}

func fileURL(t *testing.T, file string) string {
	t.Helper()
	path, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	return (&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}).String()
}

func (p *page) reload() {
	p.t.Helper()
	run(p, chromedp.Reload())
}

func (p *page) see(v view) {
	p.t.Helper()
	var options []chromedp.EmulateViewportOption
	if v.phone {
		options = append(options, chromedp.EmulatePortrait, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	run(p, chromedp.EmulateViewport(v.width, v.height, options...))
}

// prefer sets the medium and a preference that style sheets can ask for.
func (p *page) prefer(medium, feature, value string) {
	p.t.Helper()
	call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Media:    medium,
		Features: []*emulation.MediaFeature{{Name: feature, Value: value}},
	})
}

// run makes the action in the tab, within the time that is given to any action.
func run[T any](p *page, action chromedp.Action[T]) T {
	p.t.Helper()
	ctx, end := context.WithTimeout(p.tab, patience)
	defer end()
	v, err := chromedp.Run(ctx, action)
	if err != nil {
		p.t.Fatal(err)
	}
	return v
}

func call[P, R any](p *page, command cdp.Command[P, R], params P) R {
	p.t.Helper()
	return run(p, func(ctx context.Context, t *chromedp.Target) (R, error) {
		return cdp.Call(ctx, t, command, params)
	})
}

// eval calls a function of the page and returns its value, of a promise what was promised.
func eval[T any](p *page, function string, args ...any) T {
	p.t.Helper()
	if args == nil {
		args = []any{}
	}
	list, err := json.Marshal(args)
	if err != nil {
		p.t.Fatal(err)
	}
	return run(p, chromedp.Evaluate[T](fmt.Sprintf("(%s)(...%s)", function, list), chromedp.EvalAwaitPromise))
}
