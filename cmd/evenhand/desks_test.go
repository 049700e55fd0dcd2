package main

import (
	"fmt"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"strings"
	"testing"

	"evenhand/bank/store/storetest"
)

// One bank in a file has one desk: a second one for the team is refused with the way to the first, and who opens a desk
// alone is shown it, whichever kind the first is.
func TestOneDeskOfAFile(t *testing.T) {
	for _, first := range []struct{ line, pattern string }{
		{"serve --listen 127.0.0.1:0", `is at (http://127\S+)`}, {"desk --no-browser", `(http://127\S+/enter/\S+)`},
	} {
		t.Chdir(t.TempDir())
		t.Setenv("EVENHAND_BANK", "team.bank")
		mustDo(t, "init")
		link, _ := deskOpen(t, first.line, first.pattern)
		announcedBeside(t, "team.bank")
		if code, _, said := evenhand("serve --listen 127.0.0.1:0"); code != exitFailed || !strings.Contains(said, "close that one first") ||
			!strings.Contains(said, link) {
			t.Errorf("a desk for the team beside %s ends with %d: %s", first.line, code, said)
		}
		want := "is open already; open this link in your browser:\n" + link + "\n"
		if code, _, said := evenhand("desk --no-browser"); code != exitDone || !strings.Contains(said, want) {
			t.Errorf("a desk alone beside %s ends with %d: %s", first.line, code, said)
		}
	}
}

// Two desks serve one bank in a database. One of them is killed in the middle of its work: at the other the same
// person is still signed in, all that was acknowledged is there, and the work goes on.
func TestOneOfTwoDesksMayDie(t *testing.T) {
	server := storetest.NewServer(t)
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BANK", server.URL("postgres")+"?bank=alder-hill-2")
	mustDo(t, "init", "review --anyone on --by MK")
	first, one := deskOpen(t, "serve --listen 127.0.0.1:0", `(http://127\S+/invited/\S+)`)
	second, _ := deskOpen(t, "serve --listen 127.0.0.1:0", `is at (http://127\S+)`)
	at, err := url.Parse(first)
	must(t, err)
	jar, err := cookiejar.New(nil)
	must(t, err)
	browser := &http.Client{Jar: jar}
	answer, err := browser.PostForm(first, url.Values{"name": {"MK"}, "password": {"chalk and slate"}})
	must(t, err)
	must(t, answer.Body.Close())
	desks := []visitor{{t, browser, "http://" + at.Host}, {t, browser, second}}
	for i, d := range desks {
		if text := d.text("/items"); strings.Contains(text, `name="password"`) {
			t.Errorf("not signed in at desk %d", i+1)
		}
	}
	var kept []string
	for n := range 60 {
		if n == 25 {
			go func() { _ = one.Process.Kill() }()
		}
		task := fmt.Sprintf("%d + 7000 = ?", 1000+n)
		for _, d := range desks[n%2:] { // who gets no answer goes to the other desk
			answer, err := browser.PostForm(d.address+"/items", url.Values{"task": {task}, "ready": {"yes"}})
			if err == nil {
				must(t, answer.Body.Close())
				if answer.StatusCode == http.StatusOK || answer.StatusCode == http.StatusConflict { // a second try may find it there
					kept = append(kept, task)
					break
				}
				t.Errorf("%s gives %d", d.address, answer.StatusCode)
			}
		}
	}
	if len(kept) != 60 {
		t.Errorf("%d of 60 items were taken", len(kept))
	}
	if said := mustDo(t, "check"); !strings.HasPrefix(said, "60 items") {
		t.Errorf("the bank holds %s", said)
	}
	if text := desks[1].text("/team"); !strings.Contains(text, "MK") {
		t.Error("not signed in any more")
	}
}
