package desk_test

import (
	"context"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"evenhand/testdata/outside"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// window is a real browser's window.
type window struct {
	t   *testing.T
	ctx context.Context
}

// openWindow opens one for who has come into the desk by the browser given.
func openWindow(t *testing.T, browser *http.Client, address string) window {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Fatal(err) // outside.Full has found it
	}
	ctx, stop := chromedp.NewExecAllocator(t.Context(), chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.Headless,
		chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.UserDataDir(t.TempDir()), chromedp.WindowSize(1280, 900))
	t.Cleanup(stop)
	ctx, end := chromedp.NewContext(ctx)
	t.Cleanup(end)
	ctx, late := context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(late)
	return window{t, ctx}.of(browser, address)
}

// another opens a window of the same browser that shares nothing with this one, for somebody else.
func (w window) another(browser *http.Client, address string) window {
	w.t.Helper()
	ctx, end := chromedp.NewContext(w.ctx, chromedp.WithNewBrowserContext())
	w.t.Cleanup(end)
	return window{w.t, ctx}.of(browser, address)
}

// of gives the window what the browser got that somebody came in by.
func (w window) of(browser *http.Client, address string) window {
	w.t.Helper()
	at, err := url.Parse(address)
	if err != nil {
		w.t.Fatal(err)
	}
	w.do(chromedp.Navigate("about:blank"))
	for _, c := range browser.Jar.Cookies(at) {
		w.cookie(c.Name, c.Value, address)
	}
	return w
}

// cookie puts a cookie of the address into the browser.
func (w window) cookie(name, value, address string) {
	w.t.Helper()
	if _, err := chromedp.Call(w.ctx, network.SetCookie, network.SetCookieParams{Name: name, Value: value, URL: address}); err != nil {
		w.t.Fatal(err)
	}
}

func (w window) do(steps ...chromedp.Action[chromedp.Void]) {
	w.t.Helper()
	if err := chromedp.Do(w.ctx, steps...); err != nil {
		w.t.Fatal(err)
	}
}

// open goes to an address.
func (w window) open(address string) { w.t.Helper(); w.do(chromedp.Navigate(address)) }

// press presses keys, one after the other.
func (w window) press(keys string, o ...chromedp.KeyOption) {
	w.t.Helper()
	w.do(chromedp.KeyEvent(keys, o...))
}

// noScripts lets no script of a page run.
func (w window) noScripts() {
	w.t.Helper()
	if _, err := chromedp.Call(w.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		w.t.Fatal(err)
	}
}

// look makes the window as wide as a device's, and light or dark.
func (w window) look(width int64, scheme string) {
	w.t.Helper()
	w.do(chromedp.EmulateViewport(width, 900))
	features := []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}
	if _, err := chromedp.Call(w.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: features}); err != nil {
		w.t.Fatal(err)
	}
}

// tells is what a script gives that the test runs beside those of the page. Where the page just gives way to another, that
// one is asked.
func tells[T any](w window, script string) T {
	w.t.Helper()
	value, err := chromedp.Run(w.ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	for range 50 {
		if err == nil || !strings.Contains(err.Error(), "target navigated") {
			break
		}
		time.Sleep(100 * time.Millisecond)
		value, err = chromedp.Run(w.ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	}
	if err != nil {
		w.t.Fatalf("%.200s: %v", script, err)
	}
	return value
}

// until waits for something to become true.
func (w window) until(what string, is func() bool) {
	w.t.Helper()
	for end := time.Now().Add(time.Minute); !is(); time.Sleep(100 * time.Millisecond) {
		if time.Now().After(end) {
			w.t.Fatal("waited in vain for: ", what)
		}
	}
}

// axe names the file axe.min.js of the npm package axe-core, a general checker of pages for barriers;
// .ci/run installs it.
const axe = "EVENHAND_AXE"

// barriers are the violations of WCAG 2.2, levels A and AA, that axe-core finds on the page that is
// open.
func (w window) barriers() []string {
	w.t.Helper()
	script, err := os.ReadFile(os.Getenv(axe))
	if err != nil {
		w.t.Fatal(err)
	}
	if !tells[bool](w, "!!window.axe") {
		tells[bool](w, string(script)+"; true")
	}
	return tells[[]string](w, `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}).then(found =>
		found.violations.flatMap(v => v.nodes.map(n => v.id + ": " + v.help + ": " + n.html.slice(0, 200))))`)
}

// needsBrowser skips a test where the full check is not asked for.
func needsBrowser(t *testing.T, check string) {
	t.Helper()
	outside.Full(t, check, "chromium")
}

// needsAxe skips a test where axe-core is not named.
func needsAxe(t *testing.T, check string) {
	t.Helper()
	needsBrowser(t, check)
	outside.Named(t, check, axe, "axe.min.js of the npm package axe-core")
}

// tabTo presses Tab until the focus is on what the selector finds.
func (w window) tabTo(selector string) {
	w.t.Helper()
	for range 60 {
		w.press(kb.Tab)
		if tells[bool](w, "document.activeElement.matches("+quoted(selector)+")") {
			if tells[string](w, "getComputedStyle(document.activeElement).outlineStyle") == "none" {
				w.t.Errorf("the focus on %s can't be seen", selector)
			}
			return
		}
	}
	w.t.Fatalf("Tab never comes to %s", selector)
}

func quoted(text string) string { return "`" + strings.ReplaceAll(text, "`", "") + "`" }
