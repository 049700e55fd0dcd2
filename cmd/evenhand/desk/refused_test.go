package desk

import (
	"context"
	"crypto/sha256"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
)

// caller is somebody who asks: a browser with a session, a program with a token, or a stranger.
type caller struct {
	name   string
	who    Person // nobody for strangers
	cookie *http.Cookie
	token  string
}

// may says whether the caller has the right, on pages or, with a token, under /api/.
func (c caller) may(needed right, path string) bool {
	if needed == toAnyone {
		return true
	}
	if c.who.Name == "" || strings.HasPrefix(path, "/api/") != (c.token != "") {
		return false
	}
	return needed == toRead || needed == toWrite && c.who.Role.may(Writer) || needed == toMark && c.who.Marks || needed == toOwn && c.who.Role.may(Owner)
}

// asking counts requests and sees that none is a fault of the desk's own.
type asking struct {
	t       *testing.T
	handler http.Handler
	asked   int
}

// request is one that is to be refused.
type request struct{ method, path, kind, origin, body string }

func (a *asking) ask(c caller, q request) (status int) {
	a.t.Helper()
	a.asked++
	ctx, end := context.WithTimeout(a.t.Context(), time.Minute)
	if q.path == "/events" && q.method == http.MethodGet { // pages that listen go on for ever
		ctx, end = context.WithTimeout(ctx, 100*time.Millisecond)
	}
	defer end()
	r := httptest.NewRequestWithContext(ctx, q.method, q.path, strings.NewReader(q.body))
	r.Header.Set("Content-Type", q.kind)
	if q.origin != "" {
		r.Header.Set("Origin", q.origin)
	}
	if c.cookie != nil {
		r.AddCookie(c.cookie)
	}
	if c.token != "" {
		r.Header.Set("Authorization", "Bearer "+c.token)
	}
	w := httptest.NewRecorder()
	a.handler.ServeHTTP(w, r)
	if w.Code >= 500 {
		a.t.Errorf("%s gets %d from %s %.60s with %.40q: %.200s", c.name, w.Code, q.method, q.path, q.body, w.Body)
	}
	return w.Code
}

const (
	aForm   = "application/x-www-form-urlencoded"
	garbled = "do=x&name=%ff&at=-1"
)

// tricks stand in the place of names in addresses.
var tricks = []string{"x", "..%2f..%2fetc%2fpasswd", "%00", strings.Repeat("a", 5000), "01AAAAAAAAAAAAAAAAAAAAAAAA", "%ff%fe", "-1", "%27%20or%201=1"}

// bodies are forms that no page of ours sends.
var bodies = []struct{ kind, body string }{
	{aForm, garbled}, {aForm, "do=x&at=-1&role=king&item=999999999999999999999"}, {aForm, "name=%zz"}, {aForm, strings.Repeat("a=1&", 20_000)},
	{"multipart/form-data; boundary=x", "--x\r\nnonsense"}, {"application/json", `{"a":` + strings.Repeat("[", 100_000)}, {"", "\x00\x01"},
}

// More than 2,000 bad requests: every address of both desks, by every kind of person without the right to it, by
// strangers and wrong tokens, from other sites, with tricks in the path, huge and garbled forms and other methods.
// Each is refused rightly, none is a fault of the desk's own, and nothing has changed in the bank.
func TestBadRequestsAreRefused(t *testing.T) {
	p := withPrograms(t)
	_, err := p.bank.Add(plus, "MK", time.Now())
	must(t, err)
	alone, err := New(p.bank, Options{By: "MK"})
	must(t, err)
	before := fingerprintOf(t, p.bank)
	total := 0
	for name, d := range map[string]*Desk{"team": p.Desk, "alone": alone} {
		a := &asking{t: t, handler: d.Handler()}
		list, callers := append(d.served(), route{"GET /look/{file}", toAnyone, nil}), p.callers(t, a)
		if name == "alone" {
			owner := Person{Name: "MK", Role: Owner, Marks: true}
			callers = []caller{{name: "a stranger"}, {name: "a wrong token", token: "wrong"},
				{"the one", owner, &http.Cookie{Name: "enter", Value: alone.entrance}, ""}, {"the one's program", owner, nil, alone.local}}
		}
		for _, r := range list {
			for _, c := range callers {
				a.route(c, r)
			}
		}
		total += a.asked
	}
	t.Logf("%d bad requests", total)
	if total < 2000 {
		t.Errorf("only %d", total)
	}
	if fingerprintOf(t, p.bank) != before {
		t.Error("something has changed in the bank")
	}
}

// Every address of the desk stands in a table that the requests above walk; beside it there are only the files of its look.
func TestOneTableHoldsAllAddresses(t *testing.T) {
	sources, err := filepath.Glob("*.go")
	must(t, err)
	var handled []string
	for _, name := range sources {
		text, err := os.ReadFile(name)
		must(t, err)
		if !strings.HasSuffix(name, "_test.go") {
			handled = append(handled, regexp.MustCompile(`\.Handle(?:Func)?\([^,]*,`).FindAllString(string(text), -1)...)
		}
	}
	if got := strings.Join(handled, " "); got != `.Handle(r.pattern, .Handle("GET /look/",` {
		t.Errorf("addresses are given by %s", got)
	}
}

var namePart = regexp.MustCompile(`\{[^}]*\}`)

// route asks one address in all bad ways.
func (a *asking) route(c caller, r route) {
	method, pattern, found := strings.Cut(r.pattern, " ")
	if !found {
		method, pattern = "GET", r.pattern+"nothing"
	}
	pattern = strings.TrimSuffix(pattern, "{$}")
	if pattern == "/signout" && c.cookie != nil {
		return // that is no bad request, and the last
	}
	for i, trick := range tricks {
		path := namePart.ReplaceAllString(pattern, trick)
		if i > 0 && path == pattern {
			break
		}
		status := a.ask(c, request{method, path, aForm, "", garbled})
		switch refused := status >= 300; {
		case r.right == toAnyone:
		case !c.may(r.right, pattern) && !refused:
			a.t.Errorf("%s gets %d from %s %.60s", c.name, status, method, path)
		case !c.may(r.right, pattern) && c.may(toRead, pattern) && status != http.StatusForbidden:
			a.t.Errorf("%s gets %d from %s %.60s, which needs another right", c.name, status, method, path)
		case c.may(r.right, pattern) && strings.HasPrefix(pattern, "/api/") == (c.token != "") &&
			(status == http.StatusUnauthorized || status == http.StatusForbidden):
			a.t.Errorf("%s gets %d from %s %.60s and has the right", c.name, status, method, path)
		}
	}
	path := namePart.ReplaceAllString(pattern, "x")
	if status := a.ask(c, request{"PATCH", path, aForm, "", garbled}); status < 400 {
		a.t.Errorf("%s gets %d from PATCH %s", c.name, status, path)
	}
	if method != http.MethodPost {
		return
	}
	if status := a.ask(c, request{method, path, aForm, "http://elsewhere.example", garbled}); status != http.StatusForbidden {
		a.t.Errorf("another site's form gets %d from %s as %s", status, path, c.name)
	}
	for _, b := range bodies {
		if status := a.ask(c, request{method, path, b.kind, "", b.body}); status < 300 &&
			strings.HasPrefix(path, "/api/") && !strings.HasSuffix(path, "/rewrite") {
			a.t.Errorf("%s gets %d from %s with %.40q", c.name, status, path, b.body)
		}
	}
	if c.may(r.right, pattern) && pattern != "/lists" && !strings.HasPrefix(pattern, "/api/") {
		if status := a.ask(c, request{method, path, aForm, "", "a=" + strings.Repeat("b", 2<<20)}); status != http.StatusRequestEntityTooLarge {
			a.t.Errorf("a form of 2 MB gets %d from %s", status, path)
		}
	}
}

// callers are all kinds of people, signed in or with their tokens, and those who are nobody here.
func (p programs) callers(t *testing.T, a *asking) []caller {
	list := []caller{
		{name: "a stranger"},
		{name: "a wrong session", cookie: &http.Cookie{Name: "desk", Value: "wrong"}},
		{name: "a wrong token", token: "wrong"},
	}
	sealed := sealPassword("chalk and slate")
	for kind, person := range kinds {
		must(t, p.people.change(t.Context(), "MK", person.Name, func(o *Person) { o.Password = sealed }))
		form := url.Values{"name": {person.Name}, "password": {"chalk and slate"}}
		r := httptest.NewRequest("POST", "/signin", strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", aForm)
		w := httptest.NewRecorder()
		p.Handler().ServeHTTP(w, r)
		if len(w.Result().Cookies()) != 1 {
			t.Fatalf("a %s can't sign in: %d", kind, w.Code)
		}
		list = append(list, caller{"a " + kind, person, w.Result().Cookies()[0], ""}, caller{"a " + kind + "'s program", person, nil, p.tokens[kind]})
	}
	return list
}

// fingerprintOf is a sum of all that is in the bank but for sessions, and when passes were used.
func fingerprintOf(t *testing.T, b *bank.Bank) string {
	t.Helper()
	sum := sha256.New()
	must(t, b.Store().View(t.Context(), func(r store.Reader) error {
		names, err := r.Buckets()
		for _, name := range names {
			if name == sessionBucket || name == "desk writes" {
				continue
			}
			for e, err := range r.Scan(name, store.Range{}) {
				must(t, err)
				if name == tokenBucket || name == peopleBucket {
					e.Value = nil
				}
				fmt.Fprintf(sum, "%q %q %q\n", name, e.Key, e.Value)
			}
		}
		return err
	}))
	return fmt.Sprintf("%x", sum.Sum(nil))
}
