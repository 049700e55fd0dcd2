package desk

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/standards/task"
)

// bigDesk is a team's desk on a bank of 100,000 items.
func bigDesk(t testing.TB) (d *Desk, school *bank.Bank, ids []string) {
	t.Helper()
	school, ids = bigBank(t)
	d, err := New(school, Options{Store: school.Store()})
	must(t, err)
	t.Cleanup(func() { must(t, school.Close()) })
	return d, school, ids
}

// signedUp lets a writer in who sees marks, and gives the cookie of the session.
func (d *Desk) signedUp(t testing.TB, name string) *http.Cookie {
	t.Helper()
	word, err := d.people.invite(t.Context(), Invitation{Role: Writer, Marks: true, Until: time.Now().Add(time.Hour)})
	must(t, err)
	w := httptest.NewRecorder()
	d.Handler().ServeHTTP(w, formTo("/invited/"+word, url.Values{"name": {name}, "password": {"chalk and slate"}}))
	return w.Result().Cookies()[0]
}

// On 100,000 items the first view of every page comes within 100 ms and has less than 100 KB. A page that others at
// work on this machine delay is asked for again, as the quickest of some tries is the page's own time.
func TestPagesOfABigBankAreLightAndQuick(t *testing.T) {
	if testing.Short() {
		t.Skip("a time says nothing beside the race detector")
	}
	d, _, ids := bigDesk(t)
	handler, cookie := d.Handler(), d.signedUp(t, "MK")
	ask := func(method, path string, form url.Values) (*httptest.ResponseRecorder, time.Duration) {
		r := httptest.NewRequest(method, path, nil)
		if form != nil {
			r = formTo(path, form)
		}
		r.AddCookie(cookie)
		w, began := httptest.NewRecorder(), time.Now()
		handler.ServeHTTP(w, r)
		return w, time.Since(began)
	}
	made, _ := ask("POST", "/plans", tryPlan("make"))
	quiz := made.Header().Get("Location")
	if made.Code != http.StatusSeeOther || !strings.HasPrefix(quiz, "/quizzes/") {
		t.Fatalf("no quiz: %d", made.Code)
	}
	for _, path := range []string{
		"/", "/items", "/items?skill=add-two-digit&at=" + ids[0], "/items?code=2.NBT.B.7&status=all", "/items?band=stretch",
		"/items?traits=regroups+%3D+1", "/items?words=199+%2B", "/items?author=MK", "/items?unused=2026-W40",
		"/items/" + ids[loadItems/2], "/items/" + ids[7] + "/edit", "/items/new", "/items/new?task=47+%2B+36", "/generate",
		"/plans", "/plans/new", "/plans/Friday%20check", "/plans/typed?" + tryPlan("").Encode(), "/terms/new",
		"/quizzes", quiz, "/lists", "/marks", "/marks/" + strings.TrimPrefix(quiz, "/quizzes/"), "/class", "/activity",
		"/team", "/passes", "/healthz", "/metrics",
	} {
		least := time.Hour
		for try := 0; try < 20 && (try == 0 || least > 100*time.Millisecond); try++ {
			w, took := ask("GET", path, nil)
			if least = min(least, took); w.Code != http.StatusOK || w.Body.Len() > 100_000 {
				t.Fatalf("%s: status %d, %d bytes", path, w.Code, w.Body.Len())
			}
		}
		if least > 100*time.Millisecond {
			t.Errorf("%s takes %s", path, least)
		}
	}
}

// bigBank is a bank of 100,000 items.
func bigBank(t testing.TB) (made *bank.Bank, ids []string) {
	made, err := bank.Create(filepath.Join(t.TempDir(), "school.bank"))
	must(t, err)
	must(t, made.SetReview(bank.Review{Anyone: true, By: "MK", At: time.Now()}))
	var list []bank.Item
	for x := 100; len(list) < loadItems-4000; x++ {
		for y := 100; y < 500 && len(list) < loadItems-4000 && x < 1000; y++ {
			list = append(list, bank.NewItem(task.MustParse(fmt.Sprintf("%d + %d = ?", x, y)), "", bank.Origin{Kind: "written", By: "MK"}))
		}
	}
	for x := 11; x < 100; x++ {
		for y := 11; y < x && x+y < 100; y++ {
			list = append(list, bank.NewItem(task.MustParse(fmt.Sprintf("%d + %d = ?", x, y)), "", bank.Origin{Kind: "written", By: "MK"}))
		}
		for y := 11; y < x; y++ {
			list = append(list, bank.NewItem(task.MustParse(fmt.Sprintf("%d - %d = ?", x, y)), "", bank.Origin{Kind: "written", By: "MK"}))
		}
	}
	added, err := made.Add(list, "MK", time.Now())
	must(t, err)
	for _, a := range added {
		ids = append(ids, a.ID)
	}
	return made, ids
}

// tryPlan is the form of a plan, sent by a button.
func tryPlan(button string) url.Values {
	return url.Values{"title": {"Friday check"}, "week": {"2026-W48"}, "forms": {"2"}, "minutes": {"15"}, "share": {"75"},
		"rest": {"4"}, "do": {button}, "count": {"4", "2"}, "skill": {"add-two-digit", "subtract-two-digit"},
		"where": {"", ""}, "looks": {"", ""}, "vary": {"", ""}}
}

func formTo(address string, form url.Values) *http.Request {
	r := httptest.NewRequest("POST", address, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.RequestURI = ""
	return r
}
