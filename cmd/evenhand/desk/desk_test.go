package desk_test

import (
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/cmd/evenhand/desk"
	"evenhand/standards/task"
)

// wednesday is a day in week 48 of 2026.
var wednesday = time.Date(2026, time.November, 25, 15, 0, 0, 0, time.UTC)

// opened serves a desk with a few items; the browser has come by the link.
func opened(t *testing.T) (browser *http.Client, address string) {
	t.Helper()
	browser, address, b := openedWithBank(t)
	if err := b.SetReview(bank.Review{Anyone: true, By: "MK", At: wednesday}); err != nil {
		t.Fatal(err)
	}
	return browser, address
}

// openedWithBank is the same with its bank, where colleagues review drafts, and with the desk's options changed.
func openedWithBank(t *testing.T, change ...func(*desk.Options)) (browser *http.Client, address string, b *bank.Bank) {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	var list []bank.Item
	for _, text := range []string{"47 + 36 = ?", "read 4:30", "142 = ? hundreds ? tens ? ones", "47 ? 74"} {
		list = append(list, bank.NewItem(task.MustParse(text), "", bank.Origin{Kind: "written", By: "MK"}))
	}
	if _, err := b.Add(list, "MK", wednesday); err != nil {
		t.Fatal(err)
	}
	o := desk.Options{By: "MK", Now: func() time.Time { return wednesday }}
	for _, do := range change {
		do(&o)
	}
	d, err := desk.New(b, o)
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(d.Handler())
	t.Cleanup(func() {
		server.Close()
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	})
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	browser = &http.Client{Jar: jar}
	if status, text := get(t, browser, server.URL+d.Entrance()); status != http.StatusOK || !strings.Contains(text, "week 48") {
		t.Fatalf("the entrance gives %d: %s", status, text)
	}
	return browser, server.URL, b
}

func get(t *testing.T, browser *http.Client, address string) (status int, text string) {
	t.Helper()
	answer, err := browser.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, string(body)
}

func TestOnlyTheLinkLetsIn(t *testing.T) {
	browser, address := opened(t)
	if status, _ := get(t, browser, address+"/items"); status != http.StatusOK {
		t.Errorf("who came by the link gets %d", status)
	}
	for _, path := range []string{"/", "/items", "/enter/", "/enter/another"} {
		if status, text := get(t, http.DefaultClient, address+path); status != http.StatusUnauthorized && status != http.StatusNotFound {
			t.Errorf("%s lets anybody in: %d %s", path, status, text)
		}
	}
}

// The first page says what the week needs: a quiz by Thursday, then its marks.
func TestWeekSaysWhatIsDue(t *testing.T) {
	browser, address := opened(t)
	if _, text := get(t, browser, address+"/"); !strings.Contains(text, "no quiz for this week yet") || !strings.Contains(text, "/plans/new") {
		t.Errorf("no quiz: %s", text)
	}
	writeItems(t, browser, address, 8)
	if status, text, _ := post(t, browser, address+"/plans", planned("make", "2 add-two-digit")); status != http.StatusOK {
		t.Fatalf("%d %s", status, text)
	}
	if _, text := get(t, browser, address+"/"); !strings.Contains(text, "Open the quiz") ||
		!strings.Contains(text, "no papers marked yet") || !strings.Contains(text, "done") {
		t.Errorf("with a quiz: %s", text)
	}
	if _, text, _ := post(t, browser, address+"/items", map[string][]string{"task": {"58 + 27"}}); !strings.Contains(text, "draft") {
		t.Fatal(text)
	}
	if _, text := get(t, browser, address+"/"); !strings.Contains(text, "1 draft waits for a review") {
		t.Errorf("with a draft: %s", text)
	}
}

func TestFormsOfOtherSitesAreRefused(t *testing.T) {
	browser, address := opened(t)
	for origin, want := range map[string]int{address: http.StatusOK, "http://elsewhere.example": http.StatusForbidden} {
		r, err := http.NewRequest("POST", address+"/language", strings.NewReader("language=es&back=/items"))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Origin", origin)
		answer, err := browser.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != want {
			t.Errorf("a form from %s gets %d, want %d", origin, answer.StatusCode, want)
		}
	}
}

func TestPagesSpeakSpanish(t *testing.T) {
	browser, address := opened(t)
	if _, err := browser.PostForm(address+"/language", map[string][]string{"language": {"es"}, "back": {"//elsewhere.example"}}); err != nil {
		t.Fatal(err)
	}
	if _, text := get(t, browser, address+"/items"); !strings.Contains(text, `<html lang="es">`) || !strings.Contains(text, "Ejercicios") {
		t.Errorf("the page is not Spanish: %.300s", text)
	}
}
