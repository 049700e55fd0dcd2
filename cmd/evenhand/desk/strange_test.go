package desk_test

import (
	"fmt"
	"html"
	"mime"
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// A quiz is saved under its title, in letters of every script and nothing that a file's name can't have; programs read
// the name as RFC 6266 and RFC 8187 have it.
func TestSavedQuizIsNamedByItsTitle(t *testing.T) {
	browser, address := opened(t)
	writeItems(t, browser, address, 12)
	week := 10
	for title, want := range map[string]string{
		`A/B "test" <b>5</b> 100%`: "a-b-test-b-5-b-100-quiz.csv", "../../etc": "etc-quiz.csv", "Año nuevo – O'Brien\\x": "año-nuevo-o-brien-x-quiz.csv",
		"¿?": "quiz-quiz.csv", strings.Repeat("ж", 90): strings.Repeat("ж", 60) + "-quiz.csv",
	} {
		form := planned("make", "1 add-two-digit")
		form.Set("title", title)
		form.Set("rest", "0")
		form.Set("week", fmt.Sprintf("2026-W%d", week))
		week++
		_, page, at := post(t, browser, address+"/plans", form)
		answer, err := browser.Get(at + "/quiz.csv")
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		how, names, err := mime.ParseMediaType(answer.Header.Get("Content-Disposition"))
		if answer.StatusCode != http.StatusOK || err != nil || how != "inline" || names["filename"] != want {
			t.Errorf("%s is saved as %q (%d, %v), not %q: %.300s", title, names["filename"], answer.StatusCode, err, want, page)
		}
	}
}

// The same items in the same week under another title are the same quiz: that is said, and nothing is made of it.
func TestSameItemsAreNoOtherQuiz(t *testing.T) {
	browser, address := opened(t)
	writeItems(t, browser, address, 1)
	form := planned("make", "1 add-two-digit")
	form.Set("rest", "0")
	_, _, first := post(t, browser, address+"/plans", form)
	form.Set("title", "Another check")
	_, page, at := post(t, browser, address+"/plans", form)
	if !strings.Contains(first, "/quizzes/") || strings.Contains(at, "/quizzes/") ||
		!strings.Contains(page, "the very items of the quiz Friday check (23–27 November 2026)") {
		t.Errorf("after %s another title gives %s: %.300s", first, at, page)
	}
	if _, list := get(t, browser, address+"/quizzes"); strings.Contains(list, "Another check") {
		t.Error("it is listed as another quiz")
	}
}

// A story longer than any task, or in any script or with markup, is kept in words with its answer as it was typed, and
// shown as what it is.
func TestWrittenItemMayBeAnything(t *testing.T) {
	browser, address := opened(t)
	for _, story := range []string{
		"<script>alert(1)</script> Ana has <b>3</b> & 4.", "كم عدد التفاحات؟ ٣ و ٤", "{{.Data}} 🍎🍎🍎 '\" how many?",
		"Ana" + strings.Repeat(" and Ben", 60) + " have 4 apples each; how many in all?",
	} {
		sent := url.Values{"task": {story}, "key": {"7"}, "skill": {"add-two-digit"}, "ready": {"yes"}}
		status, page, at := post(t, browser, address+"/items", sent)
		if status != http.StatusOK || !strings.Contains(at, "/items/0") || strings.Contains(page, "<script>alert") {
			t.Errorf("%.30s: %d at %s: %.500s", story, status, at, page)
		}
		if _, edit := get(t, browser, at+"/edit"); typedIn(edit, "task") != story {
			t.Errorf("%.30s became %.60s", story, typedIn(edit, "task"))
		}
	}
}

// typedIn is what a field of a page holds.
func typedIn(page, name string) string {
	_, field, _ := strings.Cut(page, `<input name="`+name+`" value="`)
	value, _, _ := strings.Cut(field, `"`)
	return html.UnescapeString(value)
}
