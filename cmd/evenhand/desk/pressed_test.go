package desk_test

import (
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var (
	wholeForm  = regexp.MustCompile(`(?s)<form[^>]*>(.*?)</form>`)
	formAction = regexp.MustCompile(`action="([^"]*)"`)
	aField     = regexp.MustCompile(`<input[^>]*>`)
	aButton    = regexp.MustCompile(`<button[^>]*>`)
	formNamed  = regexp.MustCompile(`<button[^>]*\bform="([^"]+)"`)
)

// Enter in a field presses the first button of its form that isn't disabled (HTML, "Implicit submission"). Where a form
// has several, that is a hidden one: it tries, keeps what is typed or, closing a dialog where there is none, does
// nothing; never does it take out or bring in anything.
func TestEnterInAFieldPressesNothingElse(t *testing.T) {
	browser, address, empty, full := gallery(t)
	several := map[string]bool{}
	for _, s := range append(empty, full...) {
		_, page := get(t, browser, address+s.path)
		for _, form := range wholeForm.FindAllStringSubmatch(page, -1) {
			buttons := aButton.FindAllString(form[1], -1)
			fields := slices.DeleteFunc(aField.FindAllString(form[1], -1), func(tag string) bool { return strings.Contains(tag, `"hidden"`) })
			if len(buttons) < 2 || len(fields) == 0 {
				continue
			}
			if action := formAction.FindStringSubmatch(form[0]); action != nil {
				several[strings.SplitN(action[1], "#", 2)[0]] = true
			}
			if !strings.Contains(buttons[0], " hidden") {
				t.Errorf("%s: Enter presses %s", s.name, buttons[0])
			}
		}
		for _, named := range formNamed.FindAllStringSubmatch(page, -1) {
			form := regexp.MustCompile(`(?s)<form[^>]*\bid="` + named[1] + `">\s*<button hidden formmethod="dialog">`)
			if !form.MatchString(page) {
				t.Errorf("%s: Enter presses a button of form %s", s.name, named[1])
			}
		}
	}
	if !several["/plans"] || !several["/generate"] {
		t.Errorf("forms of several buttons: %v", several)
	}
}

// Whoever comes back to a quiz that was changed, by the browser's way back, an old tab or a button pressed twice, comes
// to the quiz that stands now; an old button does nothing to it.
func TestChangedQuizIsFoundByItsOldAddress(t *testing.T) {
	browser, _, grid, _ := toMark(t)
	first := strings.Replace(grid, "/marks/", "/quizzes/", 1)
	_, _, second := post(t, browser, first+"/swap", url.Values{"place": {"A2"}})
	_, _, third := post(t, browser, second+"/swap", url.Values{"down": {"1"}})
	third, _, _ = strings.Cut(third, "#")
	if first == second || second == third {
		t.Fatalf("%s, %s, %s", first, second, third)
	}
	for _, old := range []string{first, second} {
		answer, err := browser.Get(old)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.Request.URL.String() != strings.Replace(third, "#place-2", "", 1) || answer.StatusCode != http.StatusOK {
			t.Errorf("%s leads to %s", old, answer.Request.URL)
		}
		status, text, at := post(t, browser, old+"/swap", url.Values{"down": {"1"}})
		if status != http.StatusOK || at != third+"?changed" || !strings.Contains(text, "This quiz was changed meanwhile") {
			t.Errorf("an old button leads to %d at %s", status, at)
		}
	}
	if status, _ := get(t, browser, strings.Replace(second, "/quizzes/", "/marks/", 1)); status != http.StatusOK {
		t.Errorf("the marks of a changed quiz are %d", status)
	}
	post(t, browser, third+"/back", nil)
	if status, _ := get(t, browser, first); status != http.StatusNotFound {
		t.Errorf("a quiz that was taken back is %d", status)
	}
}
