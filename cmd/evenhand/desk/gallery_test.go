package desk_test

import (
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"evenhand/assemble/plan"
	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The gallery is every page in every state that a person can come to by an address, for looking at and for
// the checks that hold for all pages. A new page adds its states here.

// state is a page with a name for its picture.
type state struct{ name, path string }

// gallery fills a desk and lists its pages: with nothing yet, then with a quiz, a class and marks.
func gallery(t *testing.T) (browser *http.Client, address string, empty, full []state) {
	t.Helper()
	browser, address, grid, _ := toMark(t)
	grid = strings.TrimPrefix(grid, address)
	quiz := strings.Replace(grid, "/marks/", "/quizzes/", 1)
	_, list := get(t, browser, address+"/items")
	item := regexp.MustCompile(`/items/01[0-9A-Z]+`).FindString(list)
	for i := range 24 {
		third := []string{"✓", "x", "blue", ""}[i%4]
		post(t, browser, address+grid, rowOf(fmt.Sprintf("P%02d", i+1), 0, []string{"", "-"}[map[bool]int{true: 1}[i == 22]], "✓", "11", third))
	}
	post(t, browser, address+grid+"/class", url.Values{"codes": {"P01-P03"}, "class": {"2B"}})
	_, _, waiting := send(t, browser, address, "sv.csv", []byte("question,answer\n58 + 27,85\n47 + 36,84\n12.03,\n"))
	_, text, opened := send(t, browser, address, "jk.csv", []byte("question,answer\n64 + 19,83\n71 + 18,88\n"))
	post(t, browser, opened, listForm(text, "accept"))
	if status, _, _ := post(t, browser, address+"/terms", url.Values{"name": {"Winter"}, "text": {plan.ExamplePacing()}}); status != http.StatusOK {
		t.Fatalf("no term for the gallery: %d", status)
	}
	long := planned("make", "1 add-two-digit") // words wider than a phone
	long.Set("title", strings.Repeat("Rechenaufgaben", 12))
	long.Set("week", "2026-W47")
	long.Set("rest", "0")
	_, _, longQuiz := post(t, browser, address+"/plans", long)
	_, _, longList := send(t, browser, address, strings.Repeat("w", 90)+".csv", []byte("question,answer\n"+strings.Repeat("w", 150)+",x\n64 + 19,84\n"))
	longQuiz, longList = strings.TrimPrefix(longQuiz, address), strings.TrimPrefix(longList, address)
	if !strings.HasPrefix(longQuiz, "/quizzes/") || !strings.HasPrefix(longList, "/lists/") {
		t.Fatalf("no long names: %s, %s", longQuiz, longList)
	}
	empty = []state{
		{"class-empty", "/class?class=2B"}, {"marks-nobody", grid + "?class=2C"},
		{"marks-new", grid + "?class=2B"}, {"items-none", "/items?status=retired"},
	}
	full = []state{
		{"week", "/"}, {"items", "/items"}, {"item", item}, {"item-edit", item + "/edit"}, {"item-new", "/items/new?task=58+%2B+27"},
		{"plans", "/plans"}, {"plan-new", "/plans/new"}, {"plan", "/plans/Friday%20check"},
		{"plan-typed", "/plans/typed?" + planned("", "3 add-two-digit", "2 clock-half-hour").Encode()},
		{"lists", "/lists"}, {"activity", "/activity"}, {"quizzes", "/quizzes"}, {"quiz", quiz},
		{"marks", "/marks"}, {"grid", grid + "?class=2A"}, {"grid-by-item", grid + "?class=2A&by=item&item=2"},
		{"class", "/class?class=2A"}, {"fault", "/items/nothing"},
		{"list", strings.TrimPrefix(waiting, address)}, {"list-in", strings.TrimPrefix(opened, address)}, {"list-kept", "/lists/kept/1/jk.csv"},
		{"generate", "/generate"}, {"generate-some", "/generate?skill=clock-half-hour"}, {"generate-none", "/generate?skill=make-ten&traits=regroups%3D3"},
		{"term", "/terms/Winter"}, {"term-new", "/terms/new"}, {"safe", "/team"},
		{"long-quiz", longQuiz}, {"long-list", longList}, {"long-marks", strings.Replace(longQuiz, "/quizzes/", "/marks/", 1) + "?class=2A"},
		{"quiz-changed", quiz + "?changed"}, {"quiz-filled", quiz + "?filled"}, {"plan-from", "/plans/new?from=Friday%20check"},
	}
	return browser, address, empty, full
}

// No page has a barrier that axe-core finds by WCAG 2.2, levels A and AA, in English and Spanish, light
// and dark, on a wide and a narrow window. With EVENHAND_GALLERY naming a folder each is drawn there.
func TestNoPageHasBarriers(t *testing.T) {
	needsAxe(t, "checking every page of the desk for barriers with axe-core")
	browser, address, empty, full := gallery(t)
	walkGallery(t, browser, address, append(empty, full...))
	team, first := teamDesk(t, nil)
	owner := joins(t, first, "MK")
	link := invite(t, owner, team, "writer", "yes")
	walkGallery(t, owner, team, []state{
		{"team", "/team"}, {"team-activity", "/activity"}, {"team-passes", "/passes"}, {"team-signin", "/signin"},
		{"team-invited", strings.TrimPrefix(link, team)}, {"team-expired", "/invited/nothing"}, {"team-empty", "/"},
	})
	demo, school, _ := openedWithBank(t, func(o *desk.Options) {
		o.ThrowAway, o.Home, o.Stop = func() {}, "http://127.0.0.1:1", func() {}
		o.Copies = results.Copies{Dir: t.TempDir(), Keep: 3}
		o.Restore = func(string) {}
	})
	post(t, demo, school+"/team/copies", nil)
	post(t, demo, school+"/team/check", nil)
	walkGallery(t, demo, school, []state{{"demo", "/"}, {"safe-copies", "/team"}})
}

// walkGallery looks at pages in both languages, light and dark, wide and narrow, with all that folds open.
func walkGallery(t *testing.T, browser *http.Client, address string, pages []state) {
	t.Helper()
	w := openWindow(t, browser, address)
	w.eachLook(address, func(look string, width int64) {
		for _, s := range pages {
			w.open(address + s.path)
			tells[bool](w, "document.querySelectorAll(`details`).forEach(d => { d.open = true }) === undefined")
			w.sound(s.name, look, width)
		}
	})
}

// No barrier either where somebody else changed an item meanwhile, and where signing in is slowed down: pages that no address
// leads to.
func TestPagesBehindFormsHaveNoBarriers(t *testing.T) {
	needsAxe(t, "checking pages that a form leads to for barriers with axe-core")
	browser, address := opened(t)
	_, list := get(t, browser, address+"/items")
	item := regexp.MustCompile(`/items/01[0-9A-Z]+`).FindString(list)
	revision := 1
	w := openWindow(t, browser, address)
	w.eachLook(address, func(look string, width int64) {
		w.open(address + item + "/edit")
		status, text, _ := post(t, browser, address+item, url.Values{
			"task": {fmt.Sprintf("%d + 36 = ?", 21+revision)}, "reason": {"an easier one"}, "revision": {fmt.Sprint(revision)}, "ready": {"yes"},
		})
		if revision++; status != http.StatusOK {
			t.Fatalf("the other one's change: %d %s", status, text)
		}
		w.types("[name=task]", "14 + 9 = ?")
		w.types("[name=reason]", "mine")
		w.clicks("#edit p > button")
		w.until("both texts side by side", func() bool { return tells[bool](w, "!!document.querySelector('[role=alert] table')") })
		w.sound("conflict", look, width)
	})
	team, first := teamDesk(t, nil)
	joins(t, first, "MK")
	s := openWindow(t, newBrowser(t), team)
	s.eachLook(team, func(look string, width int64) {
		s.open(team + "/signin")
		s.until("the word to wait", func() bool {
			s.types("[name=name]", "MK")
			s.types("[name=password]", "a guess")
			tells[bool](s, "window.asking = true")
			s.press(kb.Enter)
			s.until("the answer", func() bool { return tells[bool](s, "!window.asking && document.readyState === 'complete'") })
			said := tells[string](s, "document.querySelector('.warn')?.textContent ?? ''")
			return strings.Contains(said, "Wait") || strings.Contains(said, "Espere")
		})
		s.sound("slowed", look, width)
	})
}

// eachLook goes through languages, schemes and widths.
func (w window) eachLook(address string, see func(look string, width int64)) {
	w.t.Helper()
	for _, look := range []struct {
		language, scheme string
		width            int64
	}{{"en", "light", 1280}, {"es", "dark", 390}, {"es", "light", 768}} {
		w.cookie("language", look.language, address)
		w.look(look.width, look.scheme)
		see(look.language+"-"+look.scheme, look.width)
	}
}

// sound checks a page that is open for barriers and for fitting, and draws it. Between wide and narrow, only what doesn't fit
// is new.
func (w window) sound(page, look string, width int64) {
	w.t.Helper()
	w.fits(page, width)
	if width == 768 {
		return
	}
	for _, found := range w.barriers() {
		w.t.Errorf("%s, %s, %d wide: %s", page, look, width, found)
	}
	w.draw(fmt.Sprintf("%s-%s-%d.png", page, look, width))
}

// fits says that the page is no wider than its window.
func (w window) fits(page string, width int64) {
	w.t.Helper()
	if wide := tells[int64](w, "document.documentElement.scrollWidth"); wide > width {
		w.t.Errorf("%s is %d wide in a window of %d", page, wide, width)
	}
}

// draw draws the page into the folder that is named for it.
func (w window) draw(name string) {
	w.t.Helper()
	folder := os.Getenv("EVENHAND_GALLERY")
	if folder == "" {
		return
	}
	picture, err := chromedp.Run(w.ctx, chromedp.FullScreenshot(100))
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, name), picture, 0o600)
	}
	if err != nil {
		w.t.Fatal(err)
	}
}
