package browsercheck

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// demandBrowser is the environment variable that makes a missing tool or a missing folder
// of pages a failure.
const demandBrowser = "WALEWISE_NEED_BROWSER"

const axeFile = "node_modules/axe-core/axe.min.js"

// patience is how long one action in a page may take; one that hangs fails there.
const patience = time.Minute

// shared is the browser of all tests. Each opens windows with a profile of its own in it.
var shared = sync.OnceValues(startBrowser)

// closeBrowser ends the shared browser once it has been started.
var closeBrowser = func() {}

func TestMain(m *testing.M) {
	code := m.Run()
	closeBrowser()
	os.Exit(code)
}

func startBrowser() (context.Context, error) {
	path, err := browserPath()
	if err != nil {
		return nil, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		// Whatever a page asks for, nothing leaves this machine.
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"),
		chromedp.Flag("no-proxy-server", true),
		chromedp.DisableGPU,
		chromedp.WSURLReadTimeout(time.Minute),
	)
	if os.Getuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	allocator, endAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	browser, endBrowser := chromedp.NewContext(allocator)
	closeBrowser = func() {
		_ = chromedp.Cancel(browser) // the tests are over, and the process ends with its allocator
		endBrowser()
		endAllocator()
	}
	return browser, chromedp.Do(browser)
}

// browserPath finds Debian's chromium, rather without the windows that nobody sees: that
// takes half the time.
func browserPath() (string, error) {
	path, err := exec.LookPath("chromium-headless-shell")
	if err != nil {
		return exec.LookPath("chromium")
	}
	return path, nil
}

// needBrowser returns the shared browser, or skips the test where a tool is missing.
func needBrowser(t *testing.T) context.Context {
	t.Helper()
	if err := tools(); err != nil {
		skip(t, err)
	}
	browser, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	return browser
}

func tools() error {
	if _, err := browserPath(); err != nil {
		return err
	}
	if _, err := exec.LookPath("pdftohtml"); err != nil {
		return err
	}
	if _, err := os.Stat(axeFile); err != nil {
		return fmt.Errorf("%w: run npm ci", err)
	}
	return nil
}

func skip(t *testing.T, why error) {
	t.Helper()
	if os.Getenv(demandBrowser) != "" {
		t.Fatal(why)
	}
	t.Skip(why)
}
