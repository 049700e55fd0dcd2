package desk_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

var hiddenField = regexp.MustCompile(`<input type="hidden" name="([^"]*)" value="([^"]*)">`)

// hiddenFields are what a form of the page sends beside what is typed.
func hiddenFields(page string) url.Values {
	form := url.Values{}
	_, page, _ = strings.Cut(page, "<main")
	for _, field := range hiddenField.FindAllStringSubmatch(page, -1) {
		form.Add(html.UnescapeString(field[1]), html.UnescapeString(field[2]))
	}
	return form
}

// A form that comes from somebody who was signed out meanwhile waits in the page that asks to sign in, also when the
// password is mistyped; signed in again, its sender sends it by a button. Nothing is done before, and what the page
// carries is the form as it was.
func TestFormSentWithoutASessionIsNotLost(t *testing.T) {
	address, first := teamDesk(t, nil)
	joins(t, first, "MK")
	sent := url.Values{"task": {"58 + 27"}, "ready": {"yes"}, "notes": {"\"two\nlines\" <b>&amp;</b>"}}
	browser := newBrowser(t)
	status, page, _ := post(t, browser, address+"/items", sent)
	if status != http.StatusUnauthorized || !strings.Contains(page, "What you sent is not lost") {
		t.Fatalf("signed out, it is %d: %s", status, page)
	}
	for _, password := range []string{"chalk and stale", "chalk and slate"} {
		form := hiddenFields(page)
		form.Set("name", "MK")
		form.Set("password", password)
		status, page, _ = post(t, browser, address+"/signin", form)
		if right := password == "chalk and slate"; right != (status == http.StatusOK) || right != strings.Contains(page, `action="/items"`) ||
			right == strings.Contains(page, "What you sent is not lost") {
			t.Fatalf("with %q it is %d: %s", password, status, page)
		}
	}
	if _, items := get(t, browser, address+"/items"); strings.Contains(items, "58") {
		t.Error("it was done unseen")
	}
	if again := hiddenFields(page); again.Encode() != sent.Encode() {
		t.Errorf("the page carries %v, not %v", again, sent)
	}
	if status, page, _ = post(t, browser, address+"/items", hiddenFields(page)); status != http.StatusOK || !strings.Contains(page, "58") {
		t.Errorf("sent again, it is %d: %s", status, page)
	}
	for _, elsewhere := range []string{"//elsewhere.example/x", "https://elsewhere.example/x"} {
		form := url.Values{"name": {"MK"}, "password": {"chalk and slate"}, "unsent-to": {elsewhere}, "unsent": {"a=1"}}
		if _, page, _ := post(t, newBrowser(t), address+"/signin", form); strings.Contains(page, "elsewhere.example") {
			t.Errorf("a form is led to %s", elsewhere)
		}
	}
}

// A session that ends in the middle of marking: what was typed stays in the grid, which says why it isn't kept, and
// is kept as soon as the same person has signed in again in another window.
func TestMarkOverAnEndedSession(t *testing.T) {
	needsBrowser(t, "a session that ends while marking in a browser")
	windows, _, address, grid, b := teamAtWork(t)
	w := windows[0]
	w.open(grid)
	forms := formsOf(t, w, grid)
	w.do(chromedp.Focus(chromedp.CSS("[name='P01.1']")))
	state := func() string { return tells[string](w, "document.querySelector('.state').textContent") }
	for i := range 4 {
		if i == 2 {
			tells[string](w, "fetch('/signout', {method: 'POST'}).then(a => a.url)")
		}
		keys, _ := written(forms[i%2], i)
		for _, text := range keys {
			w.press(text + kb.Enter)
		}
	}
	w.until("the word that nobody is signed in", func() bool { return strings.HasPrefix(state(), "You are not signed in here") })
	if _, papers := kept(t, b.Path()); len(papers) != 2 {
		t.Errorf("%d papers are kept, want 2", len(papers))
	}
	ctx, end := chromedp.NewContext(w.ctx)
	t.Cleanup(end)
	other := window{t, ctx} // of the same browser, with the same cookies
	other.open(address + "/signin")
	other.press("MK" + kb.Tab + "chalk and slate" + kb.Enter)
	other.at(address + "/")
	other.shows("week")
	w.until("all four papers", func() bool { _, papers := kept(t, b.Path()); return len(papers) == 4 })
	wantPapers(t, b.Path(), 4)
}
