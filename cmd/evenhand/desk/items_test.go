package desk_test

import (
	"io"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"evenhand/bank"
)

// post sends a form and gives the page that comes of it in the end.
func post(t *testing.T, browser *http.Client, address string, form url.Values) (status int, text, at string) {
	t.Helper()
	answer, err := browser.PostForm(address, form)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	var body strings.Builder
	if _, err := io.Copy(&body, answer.Body); err != nil {
		t.Fatal(err)
	}
	where := *answer.Request.URL
	where.Fragment = "" // where in the page the browser goes
	return answer.StatusCode, body.String(), where.String()
}

func TestFilter(t *testing.T) {
	browser, address := opened(t)
	item := regexp.MustCompile(`href="/items/01[0-9A-Z]+"`)
	for query, want := range map[string]int{
		"": 4, "skill=add-two-digit": 1, "code=1.MD.B.3": 1, "band=warm-up&band=core": 1,
		"traits=regroups+%3E%3D+1": 1, "status=retired": 0, "status=all": 4, "words=hundreds": 1, "author=MK": 4, "author=SV": 0,
		"unused=2026-W48": 4,
	} {
		status, text := get(t, browser, address+"/items?"+query)
		if got := len(item.FindAllString(text, -1)); status != http.StatusOK || query != "band=warm-up&band=core" && got != want {
			t.Errorf("%q: status %d, %d items, want %d", query, status, got, want)
		}
	}
	for _, query := range []string{"skill=add-two", "code=9.ZZ", "traits=regrups+%3D+1", "unused=31.02.", "unused=2026-W54"} {
		if status, text := get(t, browser, address+"/items?"+query); status != http.StatusBadRequest {
			t.Errorf("%q: status %d: %s", query, status, text)
		}
	}
	if status, _ := get(t, browser, address+"/items?at=47"); status != http.StatusNotFound {
		t.Errorf("reading on from no item: status %d", status)
	}
}

// A draft of one's own is let in by a colleague.
func TestOwnDraftWaits(t *testing.T) {
	browser, address, b := openedWithBank(t)
	_, _, at := post(t, browser, address+"/items", url.Values{"task": {"58 + 27"}})
	status, text, _ := post(t, browser, at+"/status", url.Values{"revision": {"1"}, "status": {"ready"}})
	if status != http.StatusForbidden || !strings.Contains(text, "a colleague has to read it") {
		t.Errorf("%d: %s", status, text)
	}
	change := url.Values{"task": {"58 + 28"}, "reason": {"too like item 3"}, "revision": {"1"}, "ready": {"yes"}}
	if status, text, _ := post(t, browser, at, change); status != http.StatusForbidden || !strings.Contains(text, "a colleague has to read it") {
		t.Errorf("%d: %s", status, text)
	}
	if counts, err := b.Count(); err != nil || counts[bank.Draft] != 1 {
		t.Errorf("%v, %v", counts, err)
	}
}

func TestWriteReviewAndChangeAnItem(t *testing.T) {
	browser, address := opened(t)
	if _, text := get(t, browser, address+"/items/new?task=58+%2B+27"); !strings.Contains(text, "<b>85</b>") || !strings.Contains(text, "75") {
		t.Errorf("while typing, key and missteps don't show: %s", text)
	}
	status, text, at := post(t, browser, address+"/items", url.Values{"task": {"58 + 27"}})
	if status != http.StatusOK || !strings.Contains(text, "draft") || !strings.Contains(at, "/items/01") {
		t.Fatalf("%d at %s: %s", status, at, text)
	}
	if status, text, _ := post(t, browser, at+"/status", url.Values{"revision": {"1"}, "status": {"ready"}}); status != http.StatusOK ||
		!strings.Contains(text, "reviewed") {
		t.Fatalf("%d: %s", status, text)
	}

	// Two people on one item: the second sees what the first has changed, and may put theirs over it.
	change := url.Values{"task": {"58 + 28"}, "reason": {"too like item 3"}, "revision": {"2"}, "ready": {"yes"}}
	if status, text, _ := post(t, browser, at, change); status != http.StatusOK || !strings.Contains(text, "86") {
		t.Fatalf("%d: %s", status, text)
	}
	change.Set("task", "58 + 29")
	status, text, _ = post(t, browser, at, change)
	if status != http.StatusConflict || !strings.Contains(text, "58 &#43; 28 = ?") || !strings.Contains(text, `name="revision" value="3"`) {
		t.Fatalf("%d: %s", status, text)
	}
	change.Set("revision", "3")
	if status, text, _ := post(t, browser, at, change); status != http.StatusOK ||
		!strings.Contains(text, "87") || !strings.Contains(text, "too like item 3") {
		t.Fatalf("%d: %s", status, text)
	}
	if status, _, _ := post(t, browser, at+"/status", url.Values{"revision": {"2"}, "status": {"retired"}}); status != http.StatusConflict {
		t.Errorf("an old page retires a changed item: %d", status)
	}
}

func TestAQuestionInWordsNeedsItsAnswer(t *testing.T) {
	browser, address := opened(t)
	form := url.Values{"task": {"Which day comes after Monday?"}}
	if status, text, _ := post(t, browser, address+"/items", form); status != http.StatusBadRequest || !strings.Contains(text, "its right answer") {
		t.Errorf("%d: %s", status, text)
	}
	form.Set("key", "Tuesday")
	form.Set("skill", "clock-hour")
	if status, text, _ := post(t, browser, address+"/items", form); status != http.StatusOK || !strings.Contains(text, "Tuesday") {
		t.Errorf("%d: %s", status, text)
	}
	if status, text, _ := post(t, browser, address+"/items", url.Values{"task": {"3 - 5"}}); status != http.StatusBadRequest ||
		!strings.Contains(text, "less than 0") {
		t.Errorf("%d: %s", status, text)
	}
}
