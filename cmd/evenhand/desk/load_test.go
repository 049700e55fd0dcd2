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
)

// The load of a whole school at once: 50 teachers who look at pages, edit and assemble on 100,000 items for a minute,
// each looking at a page for half a second on average, beside a bare handler of net/http and bbolt in the same run.
//
//	go test ./cmd/evenhand/desk -run '^$' -bench FiftyTeachers -benchtime 1x
//
// EVENHAND_LOAD says for how many seconds; 60 else. What is compared: the time from asking to the last byte of a read,
// an item's page or a list of 24 items. Both handlers answer the same 50 clients, by turns of five seconds each, so
// that both meet the machine in the same state. In the turns of the bare handler the same teachers take the same steps
// with the same chances: a read is answered with as many records, read by a cursor, and as many bytes as the desk's
// page has; an edit reads a record and puts one in a transaction of bbolt that is synced to the disk; quizzes are
// assembled by the desk itself in both turns, so that as much is searched beside either. The bare handler lacks all
// else: sessions, rights, filters, drawings, templates, history and indexes. "×bare" and "×bare(p95)" are the desk's
// middle and 95th time by the bare handler's.
const (
	teachers  = 50
	loadItems = 100_000
	pause     = 500 * time.Millisecond // on average, before the next page
	turn      = 5 * time.Second
)

// teacher is somebody at work.
type teacher struct {
	n       int
	browser *http.Client
	draw    *rand.Rand
	kept    map[string][]string // notes that the desk took, by item
	failed  []string
}

// times are what the steps of one handler took.
type times struct {
	sync.Mutex
	steps          int
	reads, quizzes []time.Duration
}

func (t *times) note(list *[]time.Duration, took time.Duration) {
	t.Lock()
	defer t.Unlock()
	*list = append(*list, took)
}

// work lets all teachers take steps for a time.
func work(ctx context.Context, all []*teacher, t *times, step func(*teacher)) {
	var wait sync.WaitGroup
	for _, one := range all {
		wait.Go(func() {
			for ctx.Err() == nil {
				time.Sleep(time.Duration(one.draw.Int64N(int64(2 * pause)))) // looking at the page before
				step(one)
				t.Lock()
				t.steps++
				t.Unlock()
			}
		})
	}
	wait.Wait()
}

func newTeachers(cookies []*http.Cookie, at *url.URL) (all []*teacher) {
	for n := range teachers {
		jar, _ := cookiejar.New(nil) // without options nothing fails
		jar.SetCookies(at, []*http.Cookie{cookies[n]})
		all = append(all, &teacher{n: n, draw: rand.New(rand.NewPCG(1, uint64(n))), kept: map[string][]string{},
			browser: &http.Client{
				Jar: jar, Transport: &http.Transport{MaxIdleConnsPerHost: 2},
				CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
			}})
	}
	return all
}

// asks sends a request, a form if there is one, and reads the answer; what is no success is noted.
func (w *teacher) asks(address string, form url.Values) (status int, text []byte, took time.Duration) {
	began := time.Now()
	send := func() (*http.Response, error) { return w.browser.Get(address) }
	if form != nil {
		send = func() (*http.Response, error) { return w.browser.PostForm(address, form) }
	}
	answer, err := send()
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

// compared is one of the two handlers that are compared.
type compared struct {
	times
	item, list func(w *teacher) string // addresses to read
	edit       func(w *teacher)
}

// step is what a teacher does next: mostly look, sometimes edit one of the own items, rarely try a quiz.
func (c *compared) step(w *teacher, tryQuiz func(w *teacher) time.Duration) {
	read := func(address string) {
		_, _, took := w.asks(address, nil)
		c.note(&c.reads, took)
	}
	switch n := w.draw.IntN(100); {
	case n < 1:
		c.note(&c.quizzes, tryQuiz(w))
	case n < 11:
		c.edit(w)
	case n < 50:
		read(c.list(w))
	default:
		read(c.item(w))
	}
}

func BenchmarkFiftyTeachers(b *testing.B) {
	seconds, _ := strconv.Atoi(os.Getenv("EVENHAND_LOAD"))
	lasts := time.Duration(cmp.Or(seconds, 60)) * time.Second
	d, school, ids := bigDesk(b)
	server := httptest.NewServer(d.Handler())
	defer func() { d.Leave(); server.Close() }()
	at, _ := url.Parse(server.URL)
	var cookies []*http.Cookie
	for n := range teachers {
		cookies = append(cookies, d.signedUp(b, fmt.Sprintf("T%02d", n)))
	}
	tryQuiz := func(w *teacher) time.Duration {
		_, _, took := w.asks(server.URL+"/plans", tryPlan("try"))
		return took
	}
	for b.Loop() {
		all := newTeachers(cookies, at)
		desk := deskHandler(server.URL, ids)
		lengths := map[int]int{}
		for n, path := range map[int]string{1: desk.item(all[0]), 24: desk.list(all[0])} {
			_, text, _ := all[0].asks(path, nil)
			lengths[n] = len(text)
		}
		bare := bareHandler(b, ids, lengths)
		for range int(lasts / turn) {
			for _, c := range []*compared{desk, bare} {
				ctx, end := context.WithTimeout(b.Context(), turn)
				work(ctx, all, &c.times, func(w *teacher) { c.step(w, tryQuiz) })
				end()
			}
		}
		edits := 0
		for _, w := range all {
			for _, what := range w.failed {
				b.Error(what)
			}
			for id, notes := range w.kept {
				edits += len(notes)
				w.find(b, school, id, notes)
			}
		}
		for name, c := range map[string]*compared{"desk": desk, "bare": bare} {
			slices.Sort(c.reads)
			slices.Sort(c.quizzes)
			b.Logf("%s: %.0f requests/s, %d reads, middle %s, p95 %s; beside %d quizzes, p95 %s", name,
				float64(c.steps)/lasts.Seconds(), len(c.reads), part(c.reads, 50), part(c.reads, 95), len(c.quizzes), part(c.quizzes, 95))
		}
		b.Logf("pages of %v bytes by items shown; %d edits kept, none lost", lengths, edits)
		b.ReportMetric(float64(part(desk.reads, 50))/float64(part(bare.reads, 50)), "×bare")
		b.ReportMetric(float64(part(desk.reads, 95))/float64(part(bare.reads, 95)), "×bare(p95)")
		b.ReportMetric(float64(part(desk.reads, 95).Microseconds())/1000, "p95-ms")
	}
}

var (
	revisionField = regexp.MustCompile(`name="revision" value="(\d+)"`)
	taskField     = regexp.MustCompile(`name="task"[^>]*value="([^"]*)"`)
)

// filters of lists; each leaves more than a page.
var filters = []string{"skill=add-within-1000", "skill=add-two-digit", "skill=subtract-two-digit", "code=2.NBT.B.7", "band=stretch"}

func deskHandler(address string, ids []string) *compared {
	any := func(w *teacher) string { return ids[w.draw.IntN(len(ids)-100)] }
	return &compared{
		item: func(w *teacher) string { return address + "/items/" + any(w) },
		list: func(w *teacher) string {
			filter := filters[w.draw.IntN(len(filters))]
			from := any(w)
			if strings.HasSuffix(filter, "-digit") { // these stand behind the others
				from = ids[len(ids)-4000+w.draw.IntN(2000)]
			}
			return address + "/items?" + filter + "&at=" + from
		},
		edit: func(w *teacher) {
			own := ids[w.n*100+w.draw.IntN(100)]
			_, text, _ := w.asks(address+"/items/"+own+"/edit", nil)
			revision, task := revisionField.FindSubmatch(text), taskField.FindSubmatch(text)
			if revision == nil || task == nil {
				w.failed = append(w.failed, "no form for "+own)
				return
			}
			note := fmt.Sprintf("T%02d %d", w.n, len(w.kept[own]))
			form := url.Values{"revision": {string(revision[1])}, "notes": {note}, "reason": {"look"}, "ready": {"yes"},
				"task": {strings.ReplaceAll(string(task[1]), "&#43;", "+")}}
			if status, _, _ := w.asks(address+"/items/"+own, form); status != http.StatusSeeOther {
				w.failed = append(w.failed, fmt.Sprintf("an edit gives %d", status))
				return
			}
			w.kept[own] = append(w.kept[own], note)
		},
	}
}

// find sees that every note that was taken is in the item's history.
func (w *teacher) find(b *testing.B, school *bank.Bank, id string, notes []string) {
	history, err := school.History(id)
	must(b, err)
	for _, note := range notes {
		if !slices.ContainsFunc(history, func(it bank.Item) bool { return it.Notes == note }) {
			b.Errorf("the edit %q of %s is lost", note, id)
		}
	}
}

// bareHandler reads and writes records in a file by bbolt alone; lengths are those of its answers by the records read.
func bareHandler(b *testing.B, ids []string, lengths map[int]int) *compared {
	const size = 200 // of a record, about an item's
	db, err := bbolt.Open(filepath.Join(b.TempDir(), "bare"), 0o600, nil)
	must(b, err)
	record := bytes.Repeat([]byte("x"), size)
	must(b, db.Update(func(tx *bbolt.Tx) error {
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
		rest := lengths[n] - n*size
		_ = db.View(func(tx *bbolt.Tx) error {
			c := tx.Bucket([]byte("items")).Cursor()
			for k, v := c.Seek([]byte(r.PathValue("id"))); k != nil && n > 0; k, v = c.Next() {
				_, _ = w.Write(v)
				n--
			}
			return nil
		})
		_, _ = w.Write(filler[:rest])
	})
	mux.HandleFunc("POST /write/{id}", func(w http.ResponseWriter, r *http.Request) {
		if err := db.Update(func(tx *bbolt.Tx) error { return tx.Bucket([]byte("items")).Put([]byte(r.PathValue("id")), record) }); err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
		}
	})
	server := httptest.NewServer(mux)
	b.Cleanup(func() { server.Close(); _ = db.Close() })
	any := func(w *teacher) string { return ids[w.draw.IntN(len(ids)-100)] }
	return &compared{
		item: func(w *teacher) string { return server.URL + "/1/" + any(w) },
		list: func(w *teacher) string { return server.URL + "/24/" + any(w) },
		edit: func(w *teacher) {
			id := any(w)
			w.asks(server.URL+"/1/"+id, nil)
			w.asks(server.URL+"/write/"+id, url.Values{})
		},
	}
}

// part is the time that so many in 100 of sorted ones stay below.
func part(sorted []time.Duration, percent int) time.Duration {
	if len(sorted) == 0 {
		return 0
	}
	return sorted[len(sorted)*percent/100].Round(time.Microsecond)
}

// What reading costs a desk of 100,000 items, without a network: the pages that the fifty teachers look at.
//
//	go test ./cmd/evenhand/desk -run '^$' -bench Reading
func BenchmarkReading(b *testing.B) {
	d, _, ids := bigDesk(b)
	handler, cookie, w := d.Handler(), d.signedUp(b, "MK"), &teacher{draw: rand.New(rand.NewPCG(1, 1))}
	desk := deskHandler("", ids)
	for name, path := range map[string]func(*teacher) string{"an item": desk.item, "a list": desk.list} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				r, answer := httptest.NewRequest("GET", path(w), nil), httptest.NewRecorder()
				r.AddCookie(cookie)
				if handler.ServeHTTP(answer, r); answer.Code != http.StatusOK {
					b.Fatal(answer.Code)
				}
			}
		})
	}
}
