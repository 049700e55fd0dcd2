package desk_test

import (
	"bytes"
	"log/slog"
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"
)

// Whoever marks, prints, mistypes and sends what no page of ours sends, on marks that are sound and then damaged,
// leaves nothing of it in the log: no pupil, answer, name or password, and nothing of an address.
func TestLogHoldsNothingThatWasSent(t *testing.T) {
	var log bytes.Buffer
	browser, address, grid, path := toMark(t, func(o *desk.Options) { o.Log = slog.New(slog.NewJSONHandler(&log, nil)) })
	quiz := strings.Replace(grid, "/marks/", "/quizzes/", 1)
	post(t, browser, grid+"/class", url.Values{"codes": {"P7316"}, "class": {"2A"}})
	session := func() (failed int) {
		for _, q := range []struct {
			at   string
			form url.Values // nil asks for the page
		}{
			{grid, url.Values{"class": {"2A"}, "P7316.form": {"A"}, "P7316.1": {"quokkalot"}, "P7316.2": {"41573"}}},
			{grid, url.Values{"class": {"2A"}, "P7316.form": {"Zaida"}, "P7316.1": {"\xff"}}}, {grid + "?class=P7316&x=quokkalot", nil},
			{grid + "?class=2A;x=Zaida", nil}, {grid + "?class=%zz&x=Zaida", nil},
			{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil\tform\t1\nP7316\tA\tquokkalot\nZaida Quill\tB\t1"}}},
			{grid + "/class", url.Values{"codes": {"Zaida Quill"}, "class": {"2A"}}}, {address + "/class?class=P7316", nil},
			{quiz + "/set", url.Values{"pupils": {"P7316,Zaida Quill"}}}, {quiz, nil}, {address + "/class?class=2A", nil},
			{address + "/marks/Zaida%20Quill", nil}, {address + "/items?words=quokkalot", nil},
			{address + "/class/practice", url.Values{"class": {"P7316"}}}, {address + "/api/marks/write", url.Values{"P7316": {"quokkalot"}}},
			{address + "/enter/tuesdayword", nil},
		} {
			status := 0
			if q.form == nil {
				status, _ = get(t, browser, q.at)
			} else {
				status, _, _ = post(t, browser, q.at, q.form)
			}
			if status >= http.StatusInternalServerError {
				failed++
			}
		}
		return failed
	}
	if failed := session(); failed > 0 {
		t.Errorf("%d failures of the desk's own: %s", failed, &log)
	}
	file, err := os.ReadFile(results.Path(path))
	if err != nil || !bytes.Contains(file, []byte("quokkalot")) {
		t.Fatalf("the answer is not kept: %v", err)
	}
	if err := os.WriteFile(results.Path(path), bytes.ReplaceAll(file, []byte("quokkalot"), []byte("quokkalos")), 0o600); err != nil {
		t.Fatal(err)
	}
	if failed := session(); failed == 0 {
		t.Error("damaged marks are not told")
	}
	for _, word := range []string{"P7316", "quokka", "Zaida", "Quill", "41573", "tuesdayword"} {
		if told := log.String(); strings.Contains(told, word) {
			at := strings.Index(told, word)
			t.Errorf("the log holds %q: %s", word, told[max(0, at-200):min(len(told), at+200)])
		}
	}
	if told := log.String(); !strings.Contains(told, `"msg":"failed"`) || !strings.Contains(told, `"pattern":"POST /marks/{id}"`) {
		t.Errorf("the log lacks what failed: %.500s", told)
	}
}
