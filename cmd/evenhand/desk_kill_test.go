package main

import (
	"bytes"
	"context"
	"fmt"
	"html"
	"io"
	"math/rand/v2"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
)

// teamAtWork does everything at once at a desk until it is killed, and notes what the desk said it had kept.
type teamAtWork struct {
	visitor
	ctx   context.Context
	round int
	lock  sync.Mutex
	tasks []string // of items, written or accepted
	plans []string
	weeks []string       // of quizzes
	marks map[int]string // by pupil: what was written last
}

// form sends a form and says whether it was taken, and where it led.
func (w *teamAtWork) form(path string, fields url.Values) (taken bool, at string) {
	r, _ := http.NewRequestWithContext(w.ctx, "POST", w.address+path, strings.NewReader(fields.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return w.send(r)
}

func (w *teamAtWork) send(r *http.Request) (taken bool, at string) {
	browser := *w.browser
	browser.CheckRedirect = func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }
	answer, err := browser.Do(r)
	if err != nil {
		return false, ""
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err == nil && answer.StatusCode >= 400 {
		w.t.Errorf("%s gives %d: %.300s", r.URL.Path, answer.StatusCode, text)
	}
	return err == nil && answer.StatusCode == http.StatusSeeOther, answer.Header.Get("Location")
}

func (w *teamAtWork) note(do func()) {
	w.lock.Lock()
	defer w.lock.Unlock()
	do()
}

// write adds items, each with a task of its own.
func (w *teamAtWork) write(n int) {
	task := fmt.Sprintf("%d + %d = ?", 1000+w.round, 7000+n)
	if taken, _ := w.form("/items", url.Values{"task": {task}, "ready": {"yes"}}); taken {
		w.note(func() { w.tasks = append(w.tasks, task) })
	}
}

// list drops a list and accepts it.
func (w *teamAtWork) list(n int) {
	var body bytes.Buffer
	form := multipart.NewWriter(&body)
	part, _ := form.CreateFormFile("list", fmt.Sprintf("list %d %d.csv", w.round, n)) // into memory: nothing fails
	var tasks []string
	fmt.Fprintln(part, "question")
	for i := range 30 {
		tasks = append(tasks, fmt.Sprintf("%d + %d = ?", 3000+w.round, 4000+30*n+i))
		fmt.Fprintln(part, tasks[i])
	}
	_ = form.Close()
	r, _ := http.NewRequestWithContext(w.ctx, "POST", w.address+"/lists", &body)
	r.Header.Set("Content-Type", form.FormDataContentType())
	taken, at := w.send(r)
	if !taken {
		return
	}
	answer, err := w.browser.Get(w.address + at)
	if err != nil {
		return
	}
	page, err := io.ReadAll(answer.Body)
	_ = answer.Body.Close()
	if err != nil {
		return
	}
	fields := url.Values{"do": {"accept"}}
	for _, tag := range regexp.MustCompile(`<input type="hidden"[^>]*>`).FindAllString(string(page), -1) {
		if name := regexp.MustCompile(`name="([^"]*)"`).FindStringSubmatch(tag); name != nil {
			value := regexp.MustCompile(`value="([^"]*)"`).FindStringSubmatch(tag)
			fields.Add(name[1], html.UnescapeString(append(value, "", "")[1]))
		}
	}
	for _, chosen := range regexp.MustCompile(`(?s)<select name="([^"]*)"[^>]*>.*?</select>`).FindAllStringSubmatch(string(page), -1) {
		value := regexp.MustCompile(`<option value="([^"]*)" selected`).FindStringSubmatch(chosen[0])
		fields.Add(chosen[1], html.UnescapeString(append(value, "", "")[1]))
	}
	if taken, at := w.form(at, fields); taken && strings.HasSuffix(at, "said=in") {
		w.note(func() { w.tasks = append(w.tasks, tasks...) })
	}
}

// plan keeps a plan and makes its quiz.
func (w *teamAtWork) plan(n int) {
	week := fmt.Sprintf("%d-W%02d", 2030+w.round, 1+n%52)
	title := fmt.Sprintf("plan %d %d", w.round, n)
	fields := url.Values{
		"title": {title}, "name": {title}, "week": {week}, "forms": {"2"}, "minutes": {"15"}, "share": {"75"}, "rest": {"0"}, "do": {"keep"},
		"count": {"3"}, "skill": {"add-two-digit"}, "where": {""}, "looks": {""}, "vary": {""},
	}
	if taken, _ := w.form("/plans", fields); taken {
		w.note(func() { w.plans = append(w.plans, title) })
	}
	fields.Set("do", "make")
	if taken, at := w.form("/plans", fields); taken && strings.HasPrefix(at, "/quizzes/") {
		w.note(func() { w.weeks = append(w.weeks, week) })
	}
}

// mark writes what a pupil wrote.
func (w *teamAtWork) mark(quiz string, n int) {
	pupil, wrote := n%20, fmt.Sprint(100+n)
	code := fmt.Sprintf("Q%02d", pupil+1)
	fields := url.Values{"class": {"R" + strconv.Itoa(w.round)}, code + ".revision": {strconv.Itoa(n / 20)}, code + ".form": {"A"}, code + ".1": {wrote}}
	if taken, _ := w.form("/marks/"+quiz, fields); taken {
		w.note(func() { w.marks[pupil] = wrote })
	}
}

// A desk that is killed while a team writes, uploads, accepts, plans, assembles and marks leaves a bank and marks
// that are whole, and in them all that it had said it kept. EVENHAND_KILLS says how many times; the full check
// kills it 30 times.
func TestKilledDeskKeepsWhatItAcknowledged(t *testing.T) {
	kills, _ := strconv.Atoi(os.Getenv("EVENHAND_KILLS"))
	switch {
	case kills > 0:
	case os.Getenv("EVENHAND_REFERENCES") == "1":
		kills = 30
	default:
		kills = 3
	}
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BY", "MK")
	mustDo(t, "demo", "--bank demo/alder-hill.bank review --anyone on")
	t.Setenv("EVENHAND_BANK", "demo/alder-hill.bank")
	quiz := regexp.MustCompile(`[0-9a-f]{16}`).FindString(mustDo(t, "quizzes"))
	draw := rand.New(rand.NewPCG(5, 2026))
	counts := map[string]int{}
	for round := range kills {
		link, desk := deskOpen(t, "desk --no-browser", `(http://127\S+)`)
		w := &teamAtWork{visitor: comeIn(t, link), round: round, marks: map[int]string{}}
		var end context.CancelFunc
		w.ctx, end = context.WithTimeout(t.Context(), 30*time.Second)
		codes := url.Values{"codes": {"Q01-Q20"}, "class": {"R" + strconv.Itoa(round)}}
		if taken, _ := w.form("/marks/"+quiz+"/class", codes); !taken {
			t.Fatal("there is no class")
		}
		var all sync.WaitGroup
		for _, work := range []func(n int){w.write, w.list, w.plan, func(n int) { w.mark(quiz, n) }} {
			all.Go(func() {
				for n := 0; w.ctx.Err() == nil; n++ {
					work(n)
				}
			})
		}
		time.Sleep(time.Duration(300+draw.IntN(1500)) * time.Millisecond)
		must(t, desk.Process.Kill())
		_ = desk.Wait()
		end()
		all.Wait()
		for what, n := range w.find(t) {
			counts[what] += n
		}
	}
	t.Logf("%d kills; acknowledged and found: %v", kills, counts)
	for _, what := range []string{"items", "plans", "marks"} {
		if counts[what] < kills {
			t.Errorf("only %d %s were acknowledged: this test looks at little", counts[what], what)
		}
	}
}

// find sees that the bank and the marks are whole and hold all that was acknowledged.
func (w *teamAtWork) find(t *testing.T) map[string]int {
	t.Helper()
	mustDo(t, "check")
	b, err := bank.Open("demo/alder-hill.bank", bank.Options{ReadOnly: true})
	must(t, err)
	defer b.Close()
	there := map[string]bool{}
	for it, err := range b.Find(bank.Query{}) {
		must(t, err)
		there[it.Task] = true
	}
	for _, task := range w.tasks {
		if !there[task] {
			t.Errorf("the item %s is lost", task)
		}
	}
	for _, name := range w.plans {
		if _, err := b.Plan(name); err != nil {
			t.Errorf("the plan is lost: %v", err)
		}
	}
	quizzes, err := b.Quizzes()
	must(t, err)
	for _, week := range w.weeks {
		if !slices.ContainsFunc(quizzes, func(q bank.Quiz) bool { return q.Week == week }) {
			t.Errorf("the quiz of %s is lost", week)
		}
	}
	s, err := results.Open(results.Path(b.Path()), bank.Options{ReadOnly: true})
	must(t, err)
	defer s.Close()
	given, err := s.Quizzes()
	must(t, err)
	papers, err := s.Papers(given[0].ID)
	must(t, err)
	for pupil, wrote := range w.marks {
		n, _ := strconv.Atoi(wrote)
		kept := slices.ContainsFunc(papers, func(p results.Paper) bool {
			now, _ := strconv.Atoi(p.Answers[0].Written)
			return p.Class == "R"+strconv.Itoa(w.round) && p.Pupil == fmt.Sprintf("Q%02d", pupil+1) && now >= n
		})
		if !kept {
			t.Errorf("the mark %s of pupil %d is lost", wrote, pupil)
		}
	}
	return map[string]int{"items": len(w.tasks), "plans": len(w.plans), "quizzes": len(w.weeks), "marks": len(w.marks)}
}
