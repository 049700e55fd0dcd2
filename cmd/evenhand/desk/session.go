package desk

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"net/http"
	"strings"
	"sync"
	"time"

	"evenhand/bank/store"

	"github.com/alexedwards/scs/v2"
)

// sessionBucket holds who is signed in: SHA-256 of the token: until when (8 bytes), then scs's data; nothing behind
// the time where somebody signed out.
const sessionBucket = "desk sessions"

// How long a browser stays signed in: as long as it is used daily, a month at the most.
const (
	signedInFor = 30 * 24 * time.Hour
	idleFor     = 3 * 24 * time.Hour
)

// sessions keeps sessions in the bank's store, as scs wishes.
type sessions struct {
	store store.Store
	now   func() time.Time
}

func newSessions(s store.Store, o Options) *scs.SessionManager {
	m := scs.New()
	m.Store = sessions{s, o.Now}
	m.HashTokenInStore = true
	m.Codec = &sessionCodec{read: remembered[string, sessionValues]{most: mostSessions}, written: remembered[sessionValues, []byte]{most: mostSessions}}
	m.Lifetime, m.IdleTimeout = signedInFor, idleFor
	m.Cookie.Name = "desk"
	m.Cookie.HttpOnly, m.Cookie.Secure, m.Cookie.SameSite = true, o.Secure, http.SameSiteLaxMode
	return m
}

// sessionCodec reads and writes sessions as scs does, and remembers them, as every request of a browser asks for both.
type sessionCodec struct {
	scs.GobCodec
	read    remembered[string, sessionValues]
	written remembered[sessionValues, []byte]
}

// sessionValues are what a session holds.
type sessionValues struct {
	deadline time.Time
	person   string
}

// mostSessions is how many are remembered.
const mostSessions = 1000

// Decode reads a session.
func (c *sessionCodec) Decode(kept []byte) (time.Time, map[string]any, error) {
	s, err := c.read.of(string(kept), func() (sessionValues, error) {
		deadline, values, err := c.GobCodec.Decode(kept)
		person, _ := values["person"].(string)
		return sessionValues{deadline, person}, err
	})
	return s.deadline, map[string]any{"person": s.person}, err
}

// Encode writes a session.
func (c *sessionCodec) Encode(deadline time.Time, values map[string]any) ([]byte, error) {
	person, _ := values["person"].(string)
	return c.written.of(sessionValues{deadline, person}, func() ([]byte, error) { return c.GobCodec.Encode(deadline, values) })
}

// sessionFailed answers where a session could not be read or kept, as on a full disk.
func (d *Desk) sessionFailed(w http.ResponseWriter, r *http.Request, err error) {
	v := &visit{Request: r, w: w, desk: d, said: d.pages.said(languageOf(r))}
	v.fail(err)
}

// Delete ends a session. That it ended is kept for a while, so that a request that was in hand then doesn't begin it
// anew.
func (s sessions) Delete(token string) error {
	return s.store.Update(context.Background(), func(w store.Writer) error { return s.end(w, []byte(token)) })
}

func (s sessions) end(w store.Writer, token []byte) error {
	return w.Put(sessionBucket, token, binary.BigEndian.AppendUint64(nil, uint64(s.now().Unix())))
}

// sweep takes away what ended a while ago.
func (s sessions) sweep(w store.Writer) error {
	for e, err := range w.Scan(sessionBucket, store.Range{}) {
		if err != nil {
			return err
		}
		if len(e.Value) < 8 || s.now().Sub(untilOf(e.Value)) > sweptAfter {
			if err := w.Delete(sessionBucket, e.Key); err != nil {
				return err
			}
		}
	}
	return nil
}

// sweptAfter is longer than any request takes.
const sweptAfter = time.Hour

// untilOf is when a kept session ends.
func untilOf(value []byte) time.Time { return time.Unix(int64(binary.BigEndian.Uint64(value)), 0) }

func (s sessions) Find(token string) (data []byte, found bool, err error) {
	err = s.store.View(context.Background(), func(r store.Reader) error {
		value, err := r.Get(sessionBucket, []byte(token))
		if err != nil || len(value) < 8 {
			return err
		}
		if s.now().Before(untilOf(value)) {
			data, found = append([]byte(nil), value[8:]...), true
		}
		return nil
	})
	return data, found, err
}

// longerBy is by how much a session has to last longer before that is written: a page that is looked at
// writes nothing.
const longerBy = time.Hour

// Commit keeps a session. That one lasts longer may fail, as on a full disk: it ends a little earlier then.
func (s sessions) Commit(token string, data []byte, until time.Time) error {
	same, lasts := false, time.Time{}
	err := s.store.View(context.Background(), func(r store.Reader) error {
		value, err := r.Get(sessionBucket, []byte(token))
		if same = err == nil && len(value) >= 8 && bytes.Equal(value[8:], data); same {
			lasts = untilOf(value)
		}
		return err
	})
	if err != nil || same && until.Sub(lasts).Abs() < longerBy {
		return err
	}
	err = s.store.Update(context.Background(), func(w store.Writer) error { return s.keep(w, []byte(token), data, until) })
	if same {
		return nil
	}
	return err
}

// keep writes a session, unless it has ended.
func (s sessions) keep(w store.Writer, token, data []byte, until time.Time) error {
	value, err := w.Get(sessionBucket, token)
	switch {
	case err != nil:
		return err
	case value == nil:
		if err := s.sweep(w); err != nil {
			return err
		}
	case len(value) == 8:
		return nil
	}
	return w.Put(sessionBucket, token, append(binary.BigEndian.AppendUint64(nil, uint64(until.Unix())), data...))
}

// endSessions signs everybody of a name out: their sessions are taken away.
func (d *Desk) endSessions(ctx context.Context, name string) error {
	return d.o.Store.Update(ctx, func(w store.Writer) error {
		for entry, err := range w.Scan(sessionBucket, store.Range{}) {
			if err != nil {
				return err
			}
			if len(entry.Value) < 8 {
				continue
			}
			_, values, err := d.sessions.Codec.Decode(entry.Value[8:])
			if err != nil {
				continue // nobody can be signed in by it
			}
			if who, _ := values["person"].(string); strings.EqualFold(who, name) {
				if err := (sessions{d.o.Store, d.o.Now}).end(w, entry.Key); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// showSignIn asks for name and password.
func showSignIn(v *visit) error {
	return v.show("signin", signInPage{Back: ownPath(v.FormValue("back"))})
}

// signIn lets a person in. After failures it wants to be asked less and less often.
func signIn(v *visit) error {
	name := v.FormValue("name")
	again := func(status int, key string) error {
		v.w.WriteHeader(status)
		return v.show("signin", signInPage{ownPath(v.FormValue("back")), v.said.say(key), name, v.unsentSent()})
	}
	if !v.desk.patience.allows(name, v.desk.o.Now()) {
		return again(http.StatusTooManyRequests, "signin.wait")
	}
	person, err := v.desk.people.signIn(v.Context(), name, v.FormValue("password"))
	if errors.Is(err, errPassword) {
		return again(http.StatusUnauthorized, "signin.wrong")
	}
	if err != nil {
		return err
	}
	v.desk.patience.forget(name)
	return v.signedIn(person, ownPath(v.FormValue("back")))
}

// signedIn begins the session of a person and goes on with a page.
func (v *visit) signedIn(person Person, path string) error {
	if err := v.desk.sessions.RenewToken(v.Context()); err != nil {
		return err
	}
	v.desk.sessions.Put(v.Context(), "person", person.Name)
	if u := v.unsentSent(); u.To != "" {
		v.who = person
		return v.sendAgain(u)
	}
	return v.to(path)
}

// signOut ends the session.
func signOut(v *visit) error {
	if err := v.desk.sessions.Destroy(v.Context()); err != nil {
		return err
	}
	return v.to("/signin")
}

// patience slows guessing of passwords down: after the third failure for a name each further try has
// to wait twice as long, up to a quarter of an hour.
type patience struct {
	sync.Mutex
	failures map[string]failures
}

type failures struct {
	count int
	until time.Time
}

// mostNames is how many names are remembered; beyond, the oldest are forgotten all at once.
const mostNames = 10_000

// allows says whether a name may be tried now. The try counts as failed until it is forgotten, so that many at once
// get no further than one after the other.
func (p *patience) allows(name string, now time.Time) bool {
	p.Lock()
	defer p.Unlock()
	name = strings.ToLower(name)
	f := p.failures[name]
	if now.Before(f.until) {
		return false
	}
	if p.failures == nil || len(p.failures) > mostNames {
		p.failures = map[string]failures{}
	}
	f.count++
	if f.count > 2 {
		f.until = now.Add(min(15*time.Minute, time.Second<<min(f.count-3, 10)))
	}
	p.failures[name] = f
	return true
}

func (p *patience) forget(name string) {
	p.Lock()
	defer p.Unlock()
	delete(p.failures, strings.ToLower(name))
}
