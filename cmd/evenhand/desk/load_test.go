package desk

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"evenhand/bank"
	"evenhand/standards/task"
)

// The load of a whole school at once: 50 teachers who look at a page for half a second, on 100,000 items, beside a handler of
// net/http and bbolt alone that reads and writes as many records, in the same run.
//
//	go test ./cmd/evenhand/desk -run '^$' -bench FiftyTeachers -benchtime 1x
//
// EVENHAND_LOAD says for how many seconds; 20 else. "×bare" compares the reads' middle times.
const (
	teachers  = 50
	loadItems = 100_000
	pause     = 500 * time.Millisecond // on average, before the next page
)

// teacher is somebody at work.
type teacher struct {
	n       int
	browser *http.Client
	draw    *rand.Rand
	reads   []time.Duration
	slow    []time.Duration     // quizzes
	kept    map[string][]string // notes that were taken, by item
	failed  []string
}

// work lets all teachers ask for a time; do asks once.
func work(ctx context.Context, all []*teacher, do func(*teacher)) (requests int) {
	var wait sync.WaitGroup
	var lock sync.Mutex
	for _, one := range all {
		wait.Go(func() {
			n := 0
			for ctx.Err() == nil {
				do(one)
				n++
				time.Sleep(rand.N(2 * pause)) // looking at it
			}
			lock.Lock()
			requests += n
			lock.Unlock()
		})
	}
	wait.Wait()
	return requests
}

func newTeachers(cookies []*http.Cookie, at *url.URL) (all []*teacher) {
	for n := range teachers {
		jar, _ := cookiejar.New(nil) // without options nothing fails
		if cookies != nil {
			jar.SetCookies(at, []*http.Cookie{cookies[n]})
		}
		transport := &http.Transport{MaxIdleConnsPerHost: 2}
		all = append(all, &teacher{n: n, draw: rand.New(rand.NewPCG(1, uint64(n))), kept: map[string][]string{},
			browser: &http.Client{
				Jar: jar, Transport: transport,
				CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
			}})
	}
	return all
}

// asks sends a request and reads the answer; what is no success is noted.
func (w *teacher) asks(address string, form url.Values) (status int, text []byte, took time.Duration) {
	began := time.Now()
	answer, err := w.browser.Get(address)
	if form != nil {
		answer, err = w.browser.PostForm(address, form)
	}
	if err != nil {
		w.failed = append(w.failed, err.Error())
		return 0, nil, time.Since(began)
	}
	defer answer.Body.Close()
	text, err = io.ReadAll(answer.Body)
	if err != nil || answer.StatusCode >= 400 {
		w.failed = append(w.failed, fmt.Sprintf("%s: %d %v", address, answer.StatusCode, err))
	}
	return answer.StatusCode, text, time.Since(began)
}

func BenchmarkFiftyTeachers(b *testing.B) {
	seconds, _ := strconv.Atoi(os.Getenv("EVENHAND_LOAD"))
	lasts := time.Duration(cmp.Or(seconds, 20)) * time.Second
	school, ids := bigBank(b)
	d, err := New(school, Options{Store: school.Store()})
	mustB(b, err)
	server := httptest.NewServer(d.Handler())
	defer func() { d.Leave(); server.Close(); mustB(b, school.Close()) }()
	at, _ := url.Parse(server.URL)
	var cookies []*http.Cookie
	for n := range teachers {
		word, err := d.people.invite(b.Context(), Invitation{Role: Writer, Marks: true, Until: time.Now().Add(time.Hour)})
		mustB(b, err)
		form := url.Values{"name": {fmt.Sprintf("T%02d", n)}, "password": {"chalk and slate"}}
		answer, err := http.DefaultTransport.RoundTrip(formTo(server.URL+"/invited/"+word, form))
		mustB(b, err)
		mustB(b, answer.Body.Close())
		cookies = append(cookies, answer.Cookies()[0])
	}
	plan := url.Values{"title": {"Friday check"}, "week": {"2026-W48"}, "forms": {"2"}, "minutes": {"15"}, "share": {"75"}, "rest": {"4"}, "do": {"try"},
		"count": {"4", "2"}, "skill": {"add-two-digit", "subtract-two-digit"}, "where": {"", ""}, "looks": {"", ""}, "vary": {"", ""}}
	for b.Loop() {
		lengths := map[string]int{}
		for n, path := range map[string]string{"1": "/items/" + ids[5000], "24": "/items?skill=add-two-digit&at=" + ids[0]} {
			_, text, _ := newTeachers(cookies, at)[0].asks(server.URL+path, nil)
			lengths[n] = len(text)
		}
		bare := bareHandler(b, ids, lengths)
		b.Logf("pages of %v bytes", lengths)
		base := newTeachers(nil, nil)
		ctx, end := context.WithTimeout(b.Context(), lasts/2)
		baseCount := work(ctx, base, func(w *teacher) { w.bareStep(bare, ids) })
		end()
		for name, quizzes := range map[string]int{"browsing and editing": 0, "with quizzes": 1} {
			all := newTeachers(cookies, at)
			ctx, end := context.WithTimeout(b.Context(), lasts)
			n := work(ctx, all, func(w *teacher) { w.step(server.URL, ids, plan, quizzes) })
			end()
			edits := 0
			for _, w := range all {
				for _, what := range w.failed {
					b.Errorf("%s: %s", name, what)
				}
				for id, notes := range w.kept {
					edits += len(notes)
					w.find(b, school, id, notes)
				}
			}
			reads, slow, other := timesOf(all), timesOfQuizzes(all), timesOf(base)
			b.Logf("%s: %.0f requests/s (bare %.0f), reads middle %s p95 %s (bare %s, %s), %d edits kept, %d quizzes p95 %s", name,
				float64(n)/lasts.Seconds(), 2*float64(baseCount)/lasts.Seconds(),
				middle(reads), p95(reads), middle(other), p95(other), edits, len(slow), p95(slow))
			if quizzes == 0 {
				b.ReportMetric(float64(middle(reads))/float64(middle(other)), "×bare")
				b.ReportMetric(float64(p95(reads))/float64(p95(other)), "×bare(p95)")
				b.ReportMetric(float64(p95(reads).Milliseconds()), "p95-ms")
			}
		}
	}
}

var revisionField = regexp.MustCompile(`name="revision" value="(\d+)"`)

// step is what a teacher does next: mostly look, sometimes edit one of the own items, rarely try a quiz.
func (w *teacher) step(address string, ids []string, plan url.Values, quizzes int) {
	own := ids[w.n*100+w.draw.IntN(100)]
	switch n := w.draw.IntN(100); {
	case n < 10:
		_, text, took := w.asks(address+"/items/"+own+"/edit", nil)
		w.reads = append(w.reads, took)
		found := revisionField.FindSubmatch(text)
		if found == nil {
			w.failed = append(w.failed, "no form for "+own)
			return
		}
		note := fmt.Sprintf("T%02d %d", w.n, len(w.kept[own]))
		it := regexp.MustCompile(`name="task"[^>]*value="([^"]*)"`).FindSubmatch(text)
		form := url.Values{"revision": {string(found[1])}, "notes": {note}, "reason": {"look"}, "ready": {"yes"}}
		if it != nil {
			form.Set("task", strings.ReplaceAll(string(it[1]), "&#43;", "+"))
		}
		if status, _, _ := w.asks(address+"/items/"+own, form); status == http.StatusSeeOther {
			w.kept[own] = append(w.kept[own], note)
		} else {
			w.failed = append(w.failed, fmt.Sprintf("an edit gives %d", status))
		}
	case n < 10+quizzes:
		_, _, took := w.asks(address+"/plans", plan)
		w.slow = append(w.slow, took)
	case n < 50:
		_, _, took := w.asks(address+"/items?skill=add-two-digit&at="+ids[w.draw.IntN(len(ids)-100)], nil)
		w.reads = append(w.reads, took)
	default:
		_, _, took := w.asks(address+"/items/"+ids[w.draw.IntN(len(ids))], nil)
		w.reads = append(w.reads, took)
	}
}

// find sees that every note that was taken is in the item's history.
func (w *teacher) find(b *testing.B, school *bank.Bank, id string, notes []string) {
	history, err := school.History(id)
	mustB(b, err)
	for _, note := range notes {
		if !slices.ContainsFunc(history, func(it bank.Item) bool { return it.Notes == note }) {
			b.Errorf("the edit %q of %s is lost", note, id)
		}
	}
}

// bareStep is the same amount of reading and writing.
func (w *teacher) bareStep(address string, ids []string) {
	id := ids[w.draw.IntN(len(ids)-100)]
	switch n := w.draw.IntN(100); {
	case n < 10:
		_, _, took := w.asks(address+"/1/"+id, nil)
		w.reads = append(w.reads, took)
		w.asks(address+"/write/"+id, url.Values{})
	case n < 50:
		_, _, took := w.asks(address+"/24/"+id, nil)
		w.reads = append(w.reads, took)
	default:
		_, _, took := w.asks(address+"/1/"+id, nil)
		w.reads = append(w.reads, took)
	}
}

// bareHandler reads and writes records in a file by bbolt alone.
// Its answers are as long as the desk's.
func bareHandler(b *testing.B, ids []string, lengths map[string]int) (address string) {
	db, err := bbolt.Open(filepath.Join(b.TempDir(), "bare"), 0o600, nil)
	mustB(b, err)
	record := bytes.Repeat([]byte("x"), 200)
	mustB(b, db.Update(func(tx *bbolt.Tx) error {
		items, err := tx.CreateBucket([]byte("items"))
		for _, id := range ids {
			if err == nil {
				err = items.Put([]byte(id), record)
			}
		}
		return err
	}))
	filler := bytes.Repeat([]byte("x"), 1<<20)
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{n}/{id}", func(w http.ResponseWriter, r *http.Request) {
		n, _ := strconv.Atoi(r.PathValue("n"))
		_ = db.View(func(tx *bbolt.Tx) error {
			c := tx.Bucket([]byte("items")).Cursor()
			for k, v := c.Seek([]byte(r.PathValue("id"))); k != nil && n > 0; k, v = c.Next() {
				_, _ = w.Write(v)
				n--
			}
			return nil
		})
		_, _ = w.Write(filler[:max(0, lengths[r.PathValue("n")]-200)])
	})
	mux.HandleFunc("POST /write/{id}", func(w http.ResponseWriter, r *http.Request) {
		if err := db.Update(func(tx *bbolt.Tx) error { return tx.Bucket([]byte("items")).Put([]byte(r.PathValue("id")), record) }); err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
		}
	})
	server := httptest.NewServer(mux)
	b.Cleanup(func() { server.Close(); _ = db.Close() })
	return server.URL
}

// bigBank is a bank of 100,000 items.
func bigBank(b *testing.B) (made *bank.Bank, ids []string) {
	made, err := bank.Create(filepath.Join(b.TempDir(), "school.bank"))
	mustB(b, err)
	mustB(b, made.SetReview(bank.Review{Anyone: true, By: "MK", At: time.Now()}))
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
	mustB(b, err)
	for _, a := range added {
		ids = append(ids, a.ID)
	}
	return made, ids
}

func formTo(address string, form url.Values) *http.Request {
	r := httptest.NewRequest("POST", address, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.RequestURI = ""
	return r
}

func timesOf(all []*teacher) (times []time.Duration) {
	for _, w := range all {
		times = append(times, w.reads...)
	}
	slices.Sort(times)
	return times
}

func timesOfQuizzes(all []*teacher) (times []time.Duration) {
	for _, w := range all {
		times = append(times, w.slow...)
	}
	slices.Sort(times)
	return times
}

func middle(sorted []time.Duration) time.Duration { return at(sorted, 50) }
func p95(sorted []time.Duration) time.Duration    { return at(sorted, 95) }

func at(sorted []time.Duration, percent int) time.Duration {
	if len(sorted) == 0 {
		return 0
	}
	return sorted[len(sorted)*percent/100].Round(time.Microsecond)
}

func mustB(b *testing.B, err error) {
	b.Helper()
	if err != nil {
		b.Fatal(err)
	}
}
