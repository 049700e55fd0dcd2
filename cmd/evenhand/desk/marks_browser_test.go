package desk_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strings"
	"sync/atomic"
	"testing"

	"evenhand/bank/results"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// written is what a pupil answers to the three items in these tests: the first is right, the second what a
// misstep leads to, the third differs.
func written(form results.Form, pupil int) (keys []string, want []results.Answer) {
	misstep, _ := form.Items[1].Task()
	wrong := misstep.Missteps()[0].Answer
	third := []results.Answer{
		{State: results.Right}, {State: results.Wrong}, {State: results.Absent}, {State: results.NotReached},
	}[pupil%4]
	return []string{"", wrong, []string{"", "x", "-", "."}[pupil%4]},
		[]results.Answer{{State: results.Right}, {State: results.Wrong, Written: wrong}, third}
}

// wantPapers holds what is kept to what the pupils answered.
func wantPapers(t *testing.T, path string, n int) {
	t.Helper()
	quiz, papers := kept(t, path)
	if len(papers) != n {
		t.Errorf("%d papers are kept, want %d", len(papers), n)
	}
	for i := range n {
		pupil := fmt.Sprintf("P%02d", i+1)
		form := quiz.Forms[i%2]
		if _, want := written(form, i); papers[pupil].Form != form.Name || fmt.Sprint(papers[pupil].Answers) != fmt.Sprint(want) {
			t.Errorf("%s: form %s, %v, want %s, %v", pupil, papers[pupil].Form, papers[pupil].Answers, form.Name, want)
		}
	}
}

// formsOf are the forms of the only quiz, before anything is marked.
func formsOf(t *testing.T, w window, grid string) [2]results.Form {
	t.Helper()
	var forms [2]results.Form
	for i := range forms {
		for k := range 3 {
			asks := tells[string](w, fmt.Sprintf(
				`document.querySelector("#row-P0%d [name='P0%d.%d']").getAttribute("aria-label").replace(/^.*?: | · .*$/g, "")`,
				i+1, i+1, k+1))
			forms[i].Items = append(forms[i].Items, results.Item{Asks: asks, Key: keyOf(t, asks)})
		}
	}
	return forms
}

// Twenty-four papers by keyboard alone: the grid is one stop of Tab, Enter is right and on, everything is
// judged at once and kept when its row is left, and Ctrl-Z takes back.
func TestMarkByKeyboard(t *testing.T) {
	needsBrowser(t, "marking 24 papers in a browser by keyboard")
	browser, address, grid, path := toMark(t)
	w := openWindow(t, browser, address)
	w.open(grid + "?class=2A")
	forms := formsOf(t, w, grid)
	w.tabTo("[data-cell]")
	w.press(kb.ArrowRight)
	w.press("99" + kb.Enter)
	w.press("z", chromedp.KeyModifiers(chromedp.ModifierCtrl))
	if at := tells[string](w, "document.activeElement.name + '=' + document.activeElement.value"); at != "P01.1=" {
		t.Fatalf("Ctrl-Z leads to %s", at)
	}
	for i := range 24 {
		keys, want := written(forms[i%2], i)
		for k, text := range keys {
			w.press(text + kb.Enter)
			if i == 0 && k == 1 {
				w.until("the misstep in words", func() bool {
					said := tells[string](w, "document.querySelector('.state').textContent")
					return strings.Contains(said, want[1].Written) && strings.Contains(said, "likely")
				})
			}
		}
	}
	w.until("24 papers", func() bool { _, papers := kept(t, path); return len(papers) == 24 })
	w.until("the word that it is saved", func() bool { return tells[string](w, "document.querySelector('.state').textContent") == "Saved." })
	wantPapers(t, path, 24)
	if stray := tells[int](w, "localStorage.length + sessionStorage.length"); stray != 0 {
		t.Errorf("%d things of the pupils stay in the browser", stray)
	}
}

// Names stand beside the codes in the window alone, whichever way a spreadsheet or a person writes them, and after a pupil
// who was absent comes the next one.
func TestNamesInTheWindowAndWhoIsAbsent(t *testing.T) {
	needsBrowser(t, "names beside codes while marking in a browser")
	browser, address, grid, path := toMark(t)
	w := openWindow(t, browser, address)
	w.open(grid + "?class=2A")
	w.clicks("[data-names] summary")
	w.types("[data-names] textarea", "P1, Ana Ruiz\r\"O'Brien\"\rp02;  O'Brien, Sean \rP25, nobody here")
	heading := func(pupil string) string {
		return tells[string](w, "document.querySelector('#row-"+pupil+" th').textContent.trim()")
	}
	if a, b, c := heading("P01"), heading("P02"), heading("P03"); a != "P01 Ana Ruiz" || b != "P02 O'Brien, Sean" || c != "P03" {
		t.Errorf("the rows are headed %q, %q and %q", a, b, c)
	}
	w.do(chromedp.Focus(chromedp.CSS("[name='P01.form']")))
	w.press("-" + kb.Enter)
	if at := tells[string](w, "document.activeElement.name"); at != "P02.1" {
		t.Errorf("after an absent pupil comes %s", at)
	}
	w.until("the paper of who was absent", func() bool { _, papers := kept(t, path); return len(papers) == 1 })
	if sent := tells[string](w, "new URLSearchParams(new FormData(document.querySelector('.marking'))).toString()"); strings.Contains(sent, "Ana") {
		t.Errorf("a name is sent: %s", sent)
	}
	if stray := tells[int](w, "localStorage.length + sessionStorage.length"); stray != 0 {
		t.Errorf("%d names stay in the browser", stray)
	}
}

// The same without scripts, by plain forms, again by keyboard.
func TestMarkWithoutScripts(t *testing.T) {
	needsBrowser(t, "marking 24 papers in a browser without scripts")
	browser, address, grid, path := toMark(t)
	w := openWindow(t, browser, address)
	w.open(grid + "?class=2A")
	forms := formsOf(t, w, grid)
	w.noScripts()
	w.open(grid + "?class=2A")
	w.do(chromedp.Focus(chromedp.CSS("[name='P01.form']")))
	for i := range 24 {
		keys, _ := written(forms[i%2], i)
		for _, text := range keys {
			if text == "" {
				text = "✓"
			}
			w.press(kb.Tab + text)
		}
		w.press(kb.Tab)
	}
	w.press(kb.Tab + kb.Enter) // past the choice what empty cells mean, to the button
	w.until("24 papers", func() bool { _, text := get(t, browser, grid+"?class=2A"); return strings.Contains(text, "24 of 24") })
	wantPapers(t, path, 24)
}

// A connection lost in the middle of marking: what was typed stays, the page says so, and it is kept as soon
// as the desk answers again.
func TestMarkOverALostConnection(t *testing.T) {
	needsBrowser(t, "losing the connection while marking in a browser")
	browser, address, _, path := toMark(t)
	desk, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	var lost atomic.Bool
	line := &httputil.ReverseProxy{Rewrite: func(r *httputil.ProxyRequest) { r.SetURL(desk); r.Out.Host = r.In.Host }}
	proxy := httptest.NewServer(http.HandlerFunc(func(rw http.ResponseWriter, r *http.Request) {
		if lost.Load() {
			panic(http.ErrAbortHandler)
		}
		line.ServeHTTP(rw, r)
	}))
	t.Cleanup(proxy.Close) // behind the browser, which keeps a line open to hear of others' work
	w := openWindow(t, browser, address)
	through, err := url.Parse(proxy.URL)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range browser.Jar.Cookies(desk) {
		w.cookie(strings.TrimSuffix(c.Name, desk.Port())+through.Port(), c.Value, proxy.URL) // the desk tells its ports apart by the name
	}
	_, list := get(t, browser, address+"/marks")
	grid := proxy.URL + "/marks/" + strings.Split(strings.Split(list, `href="/marks/`)[1], `"`)[0]
	w.open(grid)
	forms := formsOf(t, w, grid)
	w.tabTo("[data-cell]")
	w.press(kb.ArrowRight)
	state := func() string { return tells[string](w, "document.querySelector('.state').textContent") }
	for i := range 6 {
		if i == 2 {
			lost.Store(true)
		}
		keys, _ := written(forms[i%2], i)
		for _, text := range keys {
			w.press(text + kb.Enter)
		}
	}
	w.until("the word that it isn't saved", func() bool { return strings.HasPrefix(state(), "Not saved yet") })
	if _, papers := kept(t, path); len(papers) != 2 {
		t.Errorf("%d papers are kept, want 2", len(papers))
	}
	lost.Store(false)
	w.until("all six papers", func() bool { _, papers := kept(t, path); return len(papers) == 6 })

	// The desk was started again: until its new link is opened beside, what is typed stays.
	entered := "enter" + through.Port()
	w.cookie(entered, "of before", proxy.URL)
	keys, _ := written(forms[0], 6)
	for _, text := range keys {
		w.press(text + kb.Enter)
	}
	w.until("the word how to open it", func() bool {
		return strings.Contains(state(), "opens only with the link") && strings.Contains(state(), "what you typed stays")
	})
	for _, c := range browser.Jar.Cookies(desk) {
		w.cookie(entered, c.Value, proxy.URL)
	}
	w.until("the seventh paper", func() bool { _, papers := kept(t, path); return len(papers) == 7 })
	wantPapers(t, path, 7)
}

// keyOf is the right answer to a sum, worked out here.
func keyOf(t *testing.T, asks string) string {
	t.Helper()
	var a, b int
	if _, err := fmt.Sscanf(asks, "%d + %d", &a, &b); err != nil {
		t.Fatalf("%q is no sum: %v", asks, err)
	}
	return fmt.Sprint(a + b)
}
