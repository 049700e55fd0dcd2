package desk_test

import (
	"bufio"
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"
)

// A page hears at once what others do, not what its own person does, and the list of what was done names all.
func TestPagesHearWhatOthersDo(t *testing.T) {
	address, first := teamDesk(t, nil)
	owner := joins(t, first, "MK")
	other := joins(t, invite(t, owner, address, "writer", ""), "SV")
	ctx, end := context.WithTimeout(t.Context(), 20*time.Second)
	defer end()
	r, err := http.NewRequestWithContext(ctx, "GET", address+"/events", nil)
	if err != nil {
		t.Fatal(err)
	}
	answer, err := owner.Do(r)
	if err != nil || answer.Header.Get("Content-Type") != "text/event-stream" {
		t.Fatalf("no events: %v", err)
	}
	defer answer.Body.Close()
	post(t, owner, address+"/items", url.Values{"task": {"58 + 27"}})
	post(t, other, address+"/items", url.Values{"task": {"not a task"}}) // is refused
	post(t, other, address+"/items", url.Values{"task": {"47 + 36"}})
	for lines := bufio.NewScanner(answer.Body); lines.Scan(); {
		if said, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
			if said != "SV has just changed an item." {
				t.Errorf("the first news is %q", said)
			}
			break
		}
	}
	if ctx.Err() != nil {
		t.Error("no news came")
	}
	_, text := get(t, other, address+"/activity")
	for _, want := range []string{"MK", "SV", "added 1 item"} {
		if !strings.Contains(text, want) {
			t.Errorf("what was done last does not tell %q: %s", want, text)
		}
	}
	if status, _ := get(t, newBrowser(t), address+"/events"); status != http.StatusOK { // the page to sign in
		t.Errorf("a stranger gets %d", status)
	}
}

// A pass is made on its page, whose token is shown this once, and taken back there.
func TestPassesPage(t *testing.T) {
	address, first := teamDesk(t, nil)
	owner := joins(t, first, "MK")
	other := joins(t, invite(t, owner, address, "reader", ""), "SV")
	_, text, _ := post(t, other, address+"/passes", url.Values{"name": {"laptop"}})
	if !strings.Contains(text, "<code>evenhand-") {
		t.Fatalf("no token: %s", text)
	}
	token := strings.SplitN(strings.SplitN(text, "<code>", 2)[1], "<", 2)[0]
	_, text = get(t, owner, address+"/passes")
	if strings.Contains(text, token) || !strings.Contains(text, "laptop") || !strings.Contains(text, "SV") {
		t.Errorf("the owner sees %s", text)
	}
	sum := strings.SplitN(strings.SplitN(text, `name="pass" value="`, 2)[1], `"`, 2)[0]
	ask := func() int {
		r, err := http.NewRequest("GET", address+"/api/me", nil)
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Authorization", "Bearer "+token)
		answer, err := http.DefaultClient.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		defer answer.Body.Close()
		return answer.StatusCode
	}
	if status := ask(); status != http.StatusOK {
		t.Errorf("the token gives %d", status)
	}
	if _, text, _ = post(t, other, address+"/passes/drop", url.Values{"pass": {sum}}); strings.Contains(text, "laptop") {
		t.Errorf("the pass is still listed: %s", text)
	}
	if status := ask(); status != http.StatusUnauthorized {
		t.Errorf("taken back, the token gives %d", status)
	}
}
