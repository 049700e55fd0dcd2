package desk_test

import (
	"fmt"
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// hostile are texts that people paste or somebody tries: markup, letters shown backwards (Unicode Standard Annex 9), words
// without an end, characters beyond the first plane, heaps of accents, controls, another script, the end of a line.
var hostile = []string{
	`<img src=x onerror=alert(1)>"'&`, "Ana \u202egnp.exe\u202c\u2066", strings.Repeat("W", 400),
	"🍎 👩‍👩‍👧‍👦", "Z͑ͫ̓ͪ̂ͫ̽͏̴̙̤A̴̵̜̰͔ͫ͗͢L̠ͨͧͩ͘",
	"a\x07b\x1bc\x7f", "كم عدد ٣", "one\r\ntwo\tthree", "\ufeff-1e999", "{{.Data}} %s %d ../../x",
}

var (
	fieldTag   = regexp.MustCompile(`(?s)<(?:input|textarea|select|button)\b[^>]*\bname="([^"]+)"[^>]*>`)
	valueOfTag = regexp.MustCompile(`\bvalue="([^"]*)"`)
	chosenIn   = regexp.MustCompile(`(?s)^.*?<option value="([^"]*)" selected`)
	exampleIn  = regexp.MustCompile(`\bplaceholder="([^"]*)"`)
	idInPath   = regexp.MustCompile(`[0-9A-Za-z]{16,}`)
	numbered   = regexp.MustCompile(`\d+`)
)

// aForm is a form of a page with what its fields hold, in their order.
type aForm struct {
	action string
	fields []string
	holds  url.Values
}

func formsIn(page string) (forms []aForm) {
	for _, found := range wholeForm.FindAllStringSubmatch(page, -1) {
		action := formAction.FindStringSubmatch(found[0])
		if action == nil || !strings.Contains(found[0][:strings.Index(found[0], ">")], `method="post"`) {
			continue
		}
		form := aForm{strings.SplitN(html.UnescapeString(action[1]), "#", 2)[0], nil, url.Values{}}
		for _, at := range fieldTag.FindAllStringSubmatchIndex(found[1], -1) {
			tag, name, rest := found[1][at[0]:at[1]], found[1][at[2]:at[3]], found[1][at[1]:]
			form.fields = append(form.fields, name)
			value := ""
			switch {
			case strings.HasPrefix(tag, "<textarea"):
				value, _, _ = strings.Cut(rest, "</textarea>")
			case strings.HasPrefix(tag, "<select"):
				rest, _, _ = strings.Cut(rest, "</select>")
				if chosen := chosenIn.FindStringSubmatch(rest); chosen != nil {
					value = chosen[1]
				}
			case strings.HasPrefix(tag, "<button") && form.holds.Has(name):
				continue
			default:
				if found := valueOfTag.FindStringSubmatch(tag); found != nil {
					value = found[1]
				}
			}
			if example := exampleIn.FindStringSubmatch(tag); value == "" && example != nil && strings.Contains(tag, " required") {
				value = example[1] // as a person would fill it in
			}
			form.holds.Add(name, html.UnescapeString(value))
		}
		forms = append(forms, form)
	}
	return forms
}

// Whatever is put into whichever field of whichever form of the desk, it is taken or refused with a word: never is it a fault
// of the desk's own, never does it stand on a page as markup or turns the letters beside it round; and all pages
// still open afterwards.
func TestHostileTextsInEveryField(t *testing.T) {
	browser, address, empty, full := gallery(t)
	seen := map[string]bool{}
	asked := 0
	sound := func(what string, status int, page string) {
		t.Helper()
		if asked++; status >= http.StatusInternalServerError {
			t.Errorf("%s: %d", what, status)
		}
		if strings.Contains(page, "<img src=x") || strings.ContainsAny(page, "\u202e\u2066") {
			t.Errorf("%s: it stands on the page as it was sent", what)
		}
	}
	for _, s := range append(empty, full...) {
		_, page := get(t, browser, address+s.path)
		for _, form := range formsIn(page) {
			for _, field := range form.fields {
				kind := idInPath.ReplaceAllString(form.action, "ID") + " " + numbered.ReplaceAllString(field, "N")
				if seen[kind] {
					continue
				}
				seen[kind] = true
				for _, text := range hostile {
					sent := url.Values{}
					for name, values := range form.holds {
						sent[name] = values
					}
					sent[field] = []string{text}
					status, page, _ := post(t, browser, address+form.action, sent)
					if !strings.HasPrefix(page, "%PDF") {
						sound(form.action+" with "+field+"="+text[:min(len(text), 40)], status, page)
					}
				}
			}
		}
	}
	for _, s := range append(empty, full...) {
		status, page := get(t, browser, address+s.path)
		sound(s.name+" afterwards", status, page)
	}
	if asked < 300 {
		t.Errorf("only %d were asked: %d fields", asked, len(seen))
	}
	t.Logf("%d were asked in %d fields", asked, len(seen))
}

// A quiz with a hostile title, whose items and pupils are called so, too, prints in every way.
func TestHostileTextsPrint(t *testing.T) {
	browser, address := opened(t)
	for i, text := range hostile {
		post(t, browser, address+"/items", url.Values{"task": {text + " is how many?"}, "key": {fmt.Sprint(i, text)}, "skill": {"add-two-digit"}, "ready": {"yes"}})
	}
	form := planned("make", fmt.Sprint(len(hostile), " add-two-digit"))
	form.Set("title", strings.Join(hostile, " "))
	form.Set("forms", "1")
	form.Set("minutes", "60")
	_, page, at := post(t, browser, address+"/plans", form)
	if !strings.Contains(at, "/quizzes/") {
		t.Fatalf("no quiz: %s", page)
	}
	if _, page := get(t, browser, at); !strings.Contains(plainly(page), "The printing font has no “") || strings.Contains(page, "<img src=x") {
		t.Errorf("what can't be printed is not told: %s", page)
	}
	for _, what := range []string{
		"form-A.pdf", "form-A.pdf?large=yes", "form-A.pdf?lang=es", "form-A-key.pdf", "answers.pdf", "letter.pdf?lang=es",
	} {
		if status, text := get(t, browser, at+"/"+what); status != http.StatusOK || !strings.HasPrefix(text, "%PDF") {
			t.Errorf("%s: %d %.200s", what, status, text)
		}
	}
	for _, what := range []string{"quiz.csv", "quiz.zip?lang=en"} {
		if status, text := get(t, browser, at+"/"+what); status != http.StatusOK {
			t.Errorf("%s: %d %.200s", what, status, text)
		}
	}
	printed := func(name string) (status int, text string) {
		status, text, _ = post(t, browser, at+"/set", url.Values{"pupils": {"P01, Ana\nP02, " + name}, "lang": {"en"}, "class": {""}})
		return status, text
	}
	for _, name := range []string{hostile[0], hostile[1], hostile[2], hostile[4]} {
		if status, text := printed(`"` + strings.ReplaceAll(name, `"`, `""`) + `"`); status != http.StatusOK || !strings.HasPrefix(text, "%PDF") {
			t.Errorf("sheets for %.40s: %d %.200s", name, status, text)
		}
	}
	if status, text := printed("ليلى"); status != http.StatusBadRequest || !strings.Contains(text, "no letters for ليلى (P02)") {
		t.Errorf("a name that can't be printed: %d %s", status, text)
	}
}
