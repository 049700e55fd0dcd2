package desk_test

import (
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// teamAtWork is four teachers in four windows, with a quiz and a class of 24.
func teamAtWork(t *testing.T) (windows []window, names []string, address, grid string, b *bank.Bank) {
	t.Helper()
	address, first, b := teamDeskWithBank(t, nil)
	if err := b.SetReview(bank.Review{Anyone: true, By: "MK", At: wednesday}); err != nil {
		t.Fatal(err)
	}
	names = []string{"MK", "SV", "JK", "AR"}
	browsers := []*http.Client{joins(t, first, names[0])}
	for _, name := range names[1:] {
		browsers = append(browsers, joins(t, invite(t, browsers[0], address, "writer", "yes"), name))
	}
	writeItems(t, browsers[0], address, 12)
	_, text, at := post(t, browsers[0], address+"/plans", planned("make", "3 add-two-digit"))
	if !strings.Contains(at, "/quizzes/") {
		t.Fatalf("no quiz at %s: %s", at, text)
	}
	grid = strings.Replace(at, "/quizzes/", "/marks/", 1)
	post(t, browsers[0], grid+"/class", url.Values{"codes": {"P01-P24"}, "class": {"2A"}})
	windows = []window{openWindow(t, browsers[0], address)}
	for _, browser := range browsers[1:] {
		windows = append(windows, windows[0].another(browser, address))
	}
	return windows, names, address, grid + "?class=2A", b
}

// Four teachers mark one class at once, six rows each, by keyboard: every paper is kept as it was marked and
// by whom. Where a second one marks a cell otherwise, the row says who did before and how, and is kept when
// it is saved again; both stand in the paper's history.
func TestFourMarkAtOnce(t *testing.T) {
	needsBrowser(t, "four teachers marking one class at once")
	windows, names, _, grid, b := teamAtWork(t)
	for _, w := range windows {
		w.open(grid)
	}
	forms := formsOf(t, windows[0], grid)
	for i, w := range windows {
		w.do(chromedp.Focus(chromedp.CSS(fmt.Sprintf("[name='P%02d.1']", 6*i+1))))
	}
	for row := range 6 {
		for i, w := range windows { // each leaves a row while the others type
			pupil := 6*i + row
			keys, _ := written(forms[pupil%2], pupil)
			for _, text := range keys {
				w.press(text + kb.Enter)
			}
		}
	}
	windows[0].until("24 papers", func() bool { _, papers := kept(t, b.Path()); return len(papers) == 24 })
	wantPapers(t, b.Path(), 24)
	_, papers := kept(t, b.Path())
	for i := range 24 {
		if pupil := fmt.Sprintf("P%02d", i+1); papers[pupil].By != names[i/6] {
			t.Errorf("%s was marked by %q, want %q", pupil, papers[pupil].By, names[i/6])
		}
	}
	// SV's page shows P01 as it was before MK marked it.
	w := windows[1]
	mark := func() {
		w.do(chromedp.Focus(chromedp.CSS("[name='P01.1']")))
		w.press("99" + kb.ArrowDown)
	}
	mark()
	w.until("the word that MK marked it meanwhile", func() bool {
		return strings.Contains(tells[string](w, "document.querySelector('#row-P01 .says').textContent"), "MK marked this paper meanwhile")
	})
	if _, papers := kept(t, b.Path()); papers["P01"].By != "MK" || papers["P01"].Answers[0].State != results.Right {
		t.Errorf("MK's paper was overwritten unseen: %+v", papers["P01"])
	}
	w.press(kb.ArrowUp)
	w.press("98" + kb.ArrowDown)
	w.until("SV's paper", func() bool { _, papers := kept(t, b.Path()); return papers["P01"].By == "SV" })
	_, papers = kept(t, b.Path())
	if now := papers["P01"]; now.Answers[0].Written != "98" || now.Revision != 2 {
		t.Errorf("SV chose otherwise, and %+v is kept", now)
	}
	wantOthers(t, papers, 23)
}

// wantOthers are the papers that nobody marked twice.
func wantOthers(t *testing.T, papers map[string]results.Paper, n int) {
	t.Helper()
	once := 0
	for _, p := range papers {
		if p.Revision == 1 {
			once++
		}
	}
	if once != n {
		t.Errorf("%d papers were marked once, want %d", once, n)
	}
}

// Four teachers change one item at once: the first is kept; each other one sees what the item became
// meanwhile beside what she wrote, and chooses. Nothing is overwritten unseen, and every text that was kept
// stands in the history.
func TestFourChangeOneItem(t *testing.T) {
	needsBrowser(t, "four teachers changing one item at once")
	windows, _, address, _, b := teamAtWork(t)
	windows[0].open(address + "/items")
	item := regexp.MustCompile(`/items/(01[0-9A-Z]+)`).FindStringSubmatch(tells[string](windows[0], "document.querySelector('.card a').href"))
	tasks := []string{"13 + 19 = ?", "13 + 29 = ?", "13 + 39 = ?", "13 + 49 = ?"}
	for i, w := range windows { // all four have the item open before anybody keeps it
		w.open(address + "/items/" + item[1] + "/edit")
		w.do(chromedp.Focus(chromedp.CSS("[name=task]")))
		w.press("a", chromedp.KeyModifiers(chromedp.ModifierCtrl))
		w.press(tasks[i])
		w.do(chromedp.Focus(chromedp.CSS("[name=reason]")))
		w.press("an easier one")
	}
	heading := func(w window) string { return tells[string](w, "document.querySelector('h1')?.textContent ?? ''") }
	windows[0].press(kb.Enter)
	windows[0].until("the first to be kept", func() bool { return heading(windows[0]) == tasks[0] })
	stands := tasks[0]
	for i, w := range windows[1:] {
		w.press(kb.Enter)
		w.until("both texts side by side", func() bool { return tells[bool](w, "!!document.querySelector('main table')") })
		shown := tells[string](w, "document.querySelector('main table').textContent")
		if !strings.Contains(shown, stands) || !strings.Contains(shown, tasks[i+1]) {
			t.Errorf("%q was written over %q, and the page shows %q", tasks[i+1], stands, shown)
		}
		if i == 2 {
			break // the last one leaves it
		}
		w.do(chromedp.Focus(chromedp.CSS("[name=reason]")))
		w.press(kb.Enter)
		w.until("the choice to be kept", func() bool { return heading(w) == tasks[i+1] })
		stands = tasks[i+1]
	}
	history, err := b.History(item[1])
	if err != nil {
		t.Fatal(err)
	}
	var texts []string
	for _, revision := range history[1:] {
		texts = append(texts, revision.By+" "+revision.Task)
	}
	if want := "MK 13 + 19 = ?, SV 13 + 29 = ?, JK 13 + 39 = ?"; strings.Join(texts, ", ") != want {
		t.Errorf("the history is %q, want %s", texts, want)
	}
}
