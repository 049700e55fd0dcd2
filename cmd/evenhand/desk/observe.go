package desk

import (
	"cmp"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
)

// watched is a response whose status is remembered.
type watched struct {
	http.ResponseWriter
	status int
}

func (w *watched) WriteHeader(status int) {
	w.status = cmp.Or(w.status, status)
	w.ResponseWriter.WriteHeader(status)
}

func (w *watched) Unwrap() http.ResponseWriter { return w.ResponseWriter }

// kindOfRequest is what requests are counted by: never an address itself, which may name a quiz, a person
// or a secret.
type kindOfRequest struct {
	pattern string
	status  int
}

// tally counts requests and their time since the desk was opened.
type tally struct {
	sync.Mutex
	counts map[kindOfRequest]int
	times  map[string]time.Duration // by pattern
}

func (t *tally) add(pattern string, status int, took time.Duration) {
	t.Lock()
	defer t.Unlock()
	if t.counts == nil {
		t.counts, t.times = map[kindOfRequest]int{}, map[string]time.Duration{}
	}
	t.counts[kindOfRequest{pattern, status}]++
	t.times[pattern] += took
}

// observed counts and logs what a visit came to: method, pattern, status, time and role. Neither the
// address nor the person nor anything that was sent goes there.
func (d *Desk) observed(v *visit, w *watched, began time.Time) {
	took, status := time.Since(began), cmp.Or(w.status, http.StatusOK)
	d.tally.add(v.Pattern, status, took)
	d.o.Log.Info("request", "method", v.Method, "pattern", v.Pattern, "status", status,
		"ms", took.Milliseconds(), "role", cmp.Or(string(v.who.Role), "none"))
}

// health says whether the bank can be read.
func health(v *visit) error {
	err := v.desk.bank.Store().View(v.Context(), func(r store.Reader) error {
		_, err := r.Buckets()
		return err
	})
	v.w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	if err != nil {
		v.desk.o.Log.Error("the bank can't be read", "error", forLog(err))
		v.w.WriteHeader(http.StatusServiceUnavailable)
		_, err = v.w.Write([]byte("the bank can't be read\n"))
		return err
	}
	_, err = v.w.Write([]byte("ok\n"))
	return err
}

// metrics tells machines how the desk does, in the text format 0.0.4 of Prometheus
// (https://prometheus.io/docs/instrumenting/exposition_formats/).
func metrics(v *visit) error {
	counts, err := v.desk.bank.Count()
	if err != nil {
		return err
	}
	var text strings.Builder
	text.WriteString("# HELP evenhand_items Items in the bank.\n# TYPE evenhand_items gauge\n")
	for _, standing := range []bank.Standing{bank.Draft, bank.Ready, bank.Retired} {
		fmt.Fprintf(&text, "evenhand_items{standing=%q} %d\n", standing, counts[standing])
	}
	if !v.desk.alone() {
		people, err := v.desk.people.all(v.Context())
		if err != nil {
			return err
		}
		fmt.Fprintf(&text, "# HELP evenhand_people People of the team.\n# TYPE evenhand_people gauge\nevenhand_people %d\n", len(people))
	}
	v.desk.tally.write(&text)
	v.w.Header().Set("Content-Type", "text/plain; version=0.0.4; charset=utf-8")
	_, err = v.w.Write([]byte(text.String()))
	return err
}

func (t *tally) write(text *strings.Builder) {
	t.Lock()
	defer t.Unlock()
	var kinds []kindOfRequest
	total := map[string]int{}
	for kind, n := range t.counts {
		kinds = append(kinds, kind)
		total[kind.pattern] += n
	}
	slices.SortFunc(kinds, func(a, b kindOfRequest) int {
		return cmp.Or(cmp.Compare(a.pattern, b.pattern), cmp.Compare(a.status, b.status))
	})
	text.WriteString("# HELP evenhand_requests_total Requests answered.\n# TYPE evenhand_requests_total counter\n")
	for _, kind := range kinds {
		fmt.Fprintf(text, "evenhand_requests_total{route=%q,status=\"%d\"} %d\n", kind.pattern, kind.status, t.counts[kind])
	}
	text.WriteString("# HELP evenhand_request_seconds Time taken by requests.\n# TYPE evenhand_request_seconds summary\n")
	kinds = slices.CompactFunc(kinds, func(a, b kindOfRequest) bool { return a.pattern == b.pattern })
	for _, kind := range kinds {
		fmt.Fprintf(text, "evenhand_request_seconds_sum{route=%q} %g\nevenhand_request_seconds_count{route=%q} %d\n",
			kind.pattern, t.times[kind.pattern].Seconds(), kind.pattern, total[kind.pattern])
	}
}
