package desk

import (
	"bytes"
	"context"
	"fmt"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/testdata/outside"
)

// logged is a desk for a team with what it logs.
func logged(t *testing.T) (*Desk, *bank.Bank, *bytes.Buffer) {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	var log bytes.Buffer
	d, err := New(b, Options{Store: b.Store(), Log: slog.New(slog.NewJSONHandler(&log, nil))})
	if err != nil {
		t.Fatal(err)
	}
	return d, b, &log
}

func ask(d *Desk, method, path string) *httptest.ResponseRecorder {
	answer := httptest.NewRecorder()
	d.Handler().ServeHTTP(answer, httptest.NewRequest(method, path, nil))
	return answer
}

// Metrics count requests by their pattern; neither they nor the log hold what an address names.
func TestRequestsAreCountedWithoutNames(t *testing.T) {
	d, b, log := logged(t)
	for range 3 {
		ask(d, "GET", "/marks/P07-secretword")
	}
	ask(d, "GET", "/signin?back=/P07-secretword")
	text := ask(d, "GET", "/metrics").Body.String()
	for _, line := range []string{
		`evenhand_requests_total{route="GET /marks/{id}",status="303"} 3`, `evenhand_requests_total{route="GET /signin",status="200"} 1`,
		`evenhand_request_seconds_count{route="GET /marks/{id}"} 3`, `evenhand_items{standing="ready"} 0`, `evenhand_people 0`,
	} {
		if !strings.Contains(text, line+"\n") {
			t.Errorf("no line %s in\n%s", line, text)
		}
	}
	if !strings.Contains(log.String(), `"pattern":"GET /marks/{id}","status":303`) {
		t.Errorf("the log lacks the requests: %s", log)
	}
	if strings.Contains(text+log.String(), "secretword") {
		t.Errorf("a name of an address is told:\n%s\n%s", text, log)
	}
	if answer := ask(d, "GET", "/healthz"); answer.Code != http.StatusOK {
		t.Errorf("a sound bank is %d", answer.Code)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if answer := ask(d, "GET", "/healthz"); answer.Code != http.StatusServiceUnavailable {
		t.Errorf("a bank that can't be read is %d", answer.Code)
	}
}

// readMetrics lists the samples that the reader of Prometheus's own client for Python finds in a text, each with its type, and
// fails where one of a counter or a summary stands under another name.
const readMetrics = `
import sys
from prometheus_client.parser import text_string_to_metric_families
for family in text_string_to_metric_families(sys.stdin.read()):
    for sample in family.samples:
        print(family.type, family.documentation, sample.name, sorted(sample.labels.items()), sample.value, sep="|")
`

// A reader of the format that others wrote understands all that the metrics tell, whatever a pattern holds.
func TestMetricsAreReadByPrometheus(t *testing.T) {
	outside.Full(t, "metrics read by Prometheus's client for Python", "python3")
	d, b, _ := logged(t)
	_, err := b.Add(plus, "MK", time.Now())
	must(t, err)
	for _, path := range []string{"/marks/P07", "/marks/P08", "/signin", "/nothing", "/lists/kept/1/a\"b"} {
		ask(d, "GET", path)
	}
	d.tally.add("GET /odd\\ \"é\n{x}", http.StatusOK, time.Second)
	python := "python3"
	if _, err := os.Stat("/usr/bin/python3"); err == nil { // which has Debian's packages
		python = "/usr/bin/python3"
	}
	read := exec.Command(python, "-c", readMetrics)
	read.Stdin = strings.NewReader(ask(d, "GET", "/metrics").Body.String())
	out, err := read.CombinedOutput()
	if err != nil {
		t.Fatalf("it is not read: %v\n%s", err, out)
	}
	for _, line := range []string{
		"gauge|Items in the bank.|evenhand_items|[('standing', 'draft')]|", "gauge|People of the team.|evenhand_people|[]|0.0",
		"counter|Requests answered.|evenhand_requests_total|[('route', 'GET /marks/{id}'), ('status', '303')]|2.0",
		"summary|Time taken by requests.|evenhand_request_seconds_count|[('route', 'GET /marks/{id}')]|2.0",
		`summary|Time taken by requests.|evenhand_request_seconds_sum|[('route', 'GET /odd\\ "é\n{x}')]|1.0`,
	} {
		if !strings.Contains("\n"+string(out), "\n"+line) {
			t.Errorf("no sample %s among\n%s", line, out)
		}
	}
}

// A full or read-only disk is told in plain words, whatever wraps its error.
func TestFullDiskIsAPlainPage(t *testing.T) {
	d, _, _ := logged(t)
	for _, why := range []error{syscall.ENOSPC, syscall.EROFS} {
		answer := httptest.NewRecorder()
		d.answer(toAnyone, func(*visit) error { return fmt.Errorf("write team.bank: %w", why) }).
			ServeHTTP(answer, httptest.NewRequest("GET", "/", nil).WithContext(loaded(t, d)))
		if answer.Code != http.StatusInsufficientStorage || !strings.Contains(answer.Body.String(), "Make room there") {
			t.Errorf("%v: %d %s", why, answer.Code, answer.Body)
		}
	}
}

// loaded is a context with a session in it.
func loaded(t *testing.T, d *Desk) context.Context {
	t.Helper()
	ctx, err := d.sessions.Load(context.Background(), "")
	if err != nil {
		t.Fatal(err)
	}
	return ctx
}

// A daily backup that failed is told on the page of backups and in the log, until one goes well.
func TestFailedBackupIsTold(t *testing.T) {
	d, b, log := logged(t)
	alone, err := New(b, Options{By: "MK", Copies: results.Copies{Dir: t.TempDir(), Keep: 3}, Log: d.o.Log})
	must(t, err)
	page := func() string {
		r := httptest.NewRequest("GET", "/team", nil)
		r.AddCookie(&http.Cookie{Name: "enter", Value: alone.entrance})
		w := httptest.NewRecorder()
		alone.Handler().ServeHTTP(w, r)
		return w.Body.String()
	}
	alone.BackedUp(fmt.Errorf("write copies: %w", syscall.ENOSPC))
	if text := page(); !strings.Contains(text, "The daily backup failed") || !strings.Contains(text, "no space left on device") {
		t.Errorf("the page does not tell it: %s", text)
	}
	if !strings.Contains(log.String(), `"msg":"the daily backup failed","error":"write copies: no space left on device"`) {
		t.Errorf("the log does not tell it: %s", log)
	}
	if alone.BackedUp(nil); strings.Contains(page(), "The daily backup failed") {
		t.Error("it is told for ever")
	}
}
