package desk

import (
	"context"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"evenhand/bank/store"
)

// fullDisk is a store that can be read and no longer written.
type fullDisk struct{ store.Store }

func (fullDisk) Update(context.Context, func(store.Writer) error) error { return syscall.ENOSPC }

// Who is signed in goes on reading when the disk is full, also when the session was to last longer by now; who signs
// in then is told in plain words.
func TestSessionsOnAFullDisk(t *testing.T) {
	d, b, _ := logged(t)
	now := time.Now()
	d.sessions.Store = sessions{b.Store(), func() time.Time { return now }}
	mk := Person{Name: "MK", Role: Owner, Password: sealPassword("chalk and slate")}
	must(t, b.Store().Update(t.Context(), func(w store.Writer) error { return putPerson(w, mk) }))
	signIn := func() *httptest.ResponseRecorder {
		form := url.Values{"name": {"MK"}, "password": {"chalk and slate"}}
		r := httptest.NewRequest("POST", "/signin", strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", aForm)
		w := httptest.NewRecorder()
		d.Handler().ServeHTTP(w, r)
		return w
	}
	in := signIn()
	if in.Code != http.StatusSeeOther {
		t.Fatalf("no way in: %d", in.Code)
	}
	d.sessions.Store = sessions{fullDisk{b.Store()}, func() time.Time { return now }}
	d.sessions.IdleTimeout += 2 * longerBy // as if it was two hours later
	r := httptest.NewRequest("GET", "/team", nil)
	r.AddCookie(in.Result().Cookies()[0])
	w := httptest.NewRecorder()
	d.Handler().ServeHTTP(w, r)
	if w.Code != http.StatusOK || strings.Contains(w.Body.String(), "Make room there") {
		t.Errorf("reading gives %d: %.200s", w.Code, w.Body)
	}
	if w := signIn(); w.Code != http.StatusInsufficientStorage || !strings.Contains(w.Body.String(), "Make room there") {
		t.Errorf("signing in gives %d: %.200s", w.Code, w.Body)
	}
}

// A hundred guesses at once get no further than three, one after the other: all others are to wait.
func TestGuessingAtOnceIsSlowedToo(t *testing.T) {
	var p patience
	now := time.Now()
	let := make(chan bool, 100)
	var all sync.WaitGroup
	for range 100 {
		all.Go(func() { let <- p.allows("MK", now) })
	}
	all.Wait()
	allowed := 0
	for range 100 {
		if <-let {
			allowed++
		}
	}
	if allowed != 3 {
		t.Errorf("%d of 100 guesses are let through", allowed)
	}
	if p.allows("mk", now.Add(999*time.Millisecond)) || !p.allows("mk", now.Add(time.Second)) {
		t.Error("after three failures there is a second to wait")
	}
	if p.forget("MK"); !p.allows("MK", now) {
		t.Error("who came in has to wait")
	}
}

// Behind a proxy invitations lead to the address by which browsers ask the proxy; without one a header changes nothing.
func TestForwardedHost(t *testing.T) {
	for proxy, want := range map[bool]string{true: "bank.alderhill.example", false: "10.1.2.3:8080"} {
		d, b, _ := logged(t)
		d.o.Proxy = proxy
		must(t, b.Store().Update(t.Context(), func(w store.Writer) error {
			return putPerson(w, Person{Name: "MK", Role: Owner, Password: sealPassword("chalk and slate")})
		}))
		var cookie *http.Cookie
		post := func(path string, form url.Values) *httptest.ResponseRecorder {
			r := httptest.NewRequest("POST", "http://10.1.2.3:8080"+path, strings.NewReader(form.Encode()))
			r.Header.Set("Content-Type", aForm)
			r.Header.Set("Origin", "http://"+want)
			r.Header.Set("X-Forwarded-Host", "bank.alderhill.example, inner.example")
			if cookie != nil {
				r.AddCookie(cookie)
			}
			w := httptest.NewRecorder()
			d.Handler().ServeHTTP(w, r)
			return w
		}
		cookie = post("/signin", url.Values{"name": {"MK"}, "password": {"chalk and slate"}}).Result().Cookies()[0]
		page := post("/team/invite", url.Values{"role": {"writer"}})
		if page.Code != http.StatusOK || !strings.Contains(page.Body.String(), "://"+want+"/invited/") {
			t.Errorf("behind a proxy %v: %d, and no link to %s", proxy, page.Code, want)
		}
	}
}

// A request in hand while its person signs out, or is removed, doesn't sign them in again; what ended is taken away
// when somebody signs in an hour later.
func TestSignedOutStaysSignedOut(t *testing.T) {
	d, b, _ := logged(t)
	now := time.Now()
	d.o.Now = func() time.Time { return now }
	d.sessions.Store = sessions{b.Store(), d.o.Now}
	session := func() (inHand context.Context, token string) {
		ctx := loaded(t, d)
		d.sessions.Put(ctx, "person", "MK")
		token, _, err := d.sessions.Commit(ctx)
		must(t, err)
		inHand, err = d.sessions.Load(t.Context(), token)
		must(t, err)
		return inHand, token
	}
	kept := func() (n int) {
		must(t, b.Store().View(t.Context(), func(r store.Reader) error {
			n = 0
			for _, err := range r.Scan(sessionBucket, store.Range{}) {
				must(t, err)
				n++
			}
			return nil
		}))
		return n
	}
	for name, end := range map[string]func(ctx context.Context) error{
		"signing out":   func(ctx context.Context) error { return d.sessions.Destroy(ctx) },
		"being removed": func(ctx context.Context) error { return d.endSessions(ctx, "mk") },
	} {
		inHand, token := session()
		other, err := d.sessions.Load(t.Context(), token)
		must(t, err)
		must(t, end(other))
		now = now.Add(2 * longerBy) // so that the one in hand would be written
		_, _, err = d.sessions.Commit(inHand)
		must(t, err)
		after, err := d.sessions.Load(t.Context(), token)
		must(t, err)
		if who := d.sessions.GetString(after, "person"); who != "" {
			t.Errorf("after %s %s is signed in", name, who)
		}
	}
	now = now.Add(2 * sweptAfter)
	session()
	if n := kept(); n != 1 {
		t.Errorf("%d sessions are kept", n)
	}
}
