package desk_test

import (
	"fmt"
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/bank"
)

// planned is a plan as its form sends it.
func planned(action string, rows ...string) url.Values {
	form := url.Values{
		"title": {"Friday check"}, "week": {"2026-W48"}, "forms": {"2"}, "minutes": {"15"}, "share": {"75"}, "rest": {"4"}, "do": {action},
	}
	for _, row := range rows {
		count, skill, _ := strings.Cut(row, " ")
		form.Add("count", count)
		form.Add("skill", skill)
		form.Add("where", "")
		form.Add("looks", "")
		form.Add("vary", "")
	}
	return form
}

// writeItems writes sums of two digits that are not there yet.
func writeItems(t *testing.T, browser *http.Client, address string, n int) {
	t.Helper()
	for i := range n {
		form := url.Values{"task": {fmt.Sprintf("%d + %d", 41+i, 17+i)}, "ready": {"yes"}}
		if status, text, _ := post(t, browser, address+"/items", form); status != http.StatusOK {
			t.Fatalf("%d: %s", status, text)
		}
	}
}

// From a plan to a quiz, without any script: rows are added and dropped, what fits is counted, the quiz is
// made, an item is swapped, sheets are printed, and the quiz is taken back.
func TestPlanBecomesAQuiz(t *testing.T) {
	browser, address := opened(t)
	writeItems(t, browser, address, 12)
	if _, text, _ := post(t, browser, address+"/plans", planned("add", "3 add-two-digit")); strings.Count(text, `name="skill"`) != 2 {
		t.Errorf("a row added makes %d", strings.Count(text, `name="skill"`))
	}
	dropped := planned("drop:0", "3 add-two-digit", "1 clock-half-hour")
	if _, text, _ := post(t, browser, address+"/plans", dropped); strings.Count(text, `name="skill"`) != 1 ||
		!strings.Contains(text, `value="clock-half-hour" selected`) {
		t.Errorf("the wrong row is dropped: %s", text)
	}
	typed := planned("", "3 add-two-digit", "2 clock-half-hour")
	if _, text := get(t, browser, address+"/plans/typed?"+typed.Encode()); !strings.Contains(text, "1 items fit, 4 are needed") ||
		!strings.Contains(text, "too few") {
		t.Errorf("what fits is not counted: %s", text)
	}
	lacking := planned("make", "3 add-two-digit", "2 clock-half-hour")
	if _, text, _ := post(t, browser, address+"/plans", lacking); !strings.Contains(text, "Make the missing items and the quiz") {
		t.Errorf("no way out is shown: %s", text)
	}
	status, text, at := post(t, browser, address+"/plans", planned("make", "3 add-two-digit"))
	if status != http.StatusOK || !strings.Contains(at, "/quizzes/") || strings.Count(text, `name="place"`) != 6 {
		t.Fatalf("no quiz: %d at %s: %s", status, at, text)
	}
	if _, _, twice := post(t, browser, address+"/plans", planned("make", "3 add-two-digit")); twice != at {
		t.Errorf("pressed twice, it makes %s beside %s", twice, at)
	}
	again := planned("make", "3 add-two-digit")
	again.Set("share", "70")
	if _, text, _ := post(t, browser, address+"/plans", again); !strings.Contains(text, "There is a quiz Friday check (23–27 November 2026) already") {
		t.Errorf("the same quiz is made twice: %s", text)
	}
	items := regexp.MustCompile(`href="/items/(01[0-9A-Z]+)"`)
	before := items.FindAllStringSubmatch(text, -1)
	_, text, at = post(t, browser, at+"/swap", url.Values{"place": {"A2"}})
	after, changed := items.FindAllStringSubmatch(text, -1), 0
	for i := range after {
		if after[i][1] != before[i][1] {
			changed++
		}
	}
	if len(after) != 6 || changed != 1 {
		t.Errorf("a swap changes %d of %d items", changed, len(after))
	}
	_, text, at = post(t, browser, at+"/swap", url.Values{"down": {"1"}})
	if moved := items.FindAllStringSubmatch(text, -1); len(moved) != 6 || moved[2][1] != after[0][1] ||
		moved[0][1] != after[2][1] || moved[3][1] != after[1][1] {
		t.Errorf("a place moved down in both forms: %v from %v", moved, after)
	}
	_, text, at = post(t, browser, at+"/swap", url.Values{"others": {"yes"}, "keep": {"A1", "B3"}})
	if chosen := items.FindAllStringSubmatch(text, -1); len(chosen) != 6 || chosen[0][1] != after[2][1] || chosen[5][1] != after[5][1] {
		t.Errorf("what is to stay does not: %v", chosen)
	}
	for _, wrong := range []url.Values{{"up": {"1"}}, {"down": {"3"}}, {"down": {"x"}}, {"others": {"yes"}}} {
		if status, _, _ := post(t, browser, at+"/swap", wrong); status != http.StatusBadRequest {
			t.Errorf("%v: %d", wrong, status)
		}
	}
	for file, begins := range map[string]string{
		"form-A.pdf": "%PDF-", "form-B-key.pdf?lang=es": "%PDF-", "form-A.pdf?large=yes": "%PDF-", "answers.pdf": "%PDF-",
		"quiz.csv": "form,", "quiz.zip": "PK",
	} {
		if status, text := get(t, browser, at+"/"+file); status != http.StatusOK || !strings.HasPrefix(text, begins) {
			t.Errorf("%s: %d %.40q", file, status, text)
		}
	}
	for _, file := range []string{"form-C.pdf", "form-A", "x", "form-A.pdf?lang=xx"} {
		if status, _ := get(t, browser, at+"/"+file); status != http.StatusNotFound && status != http.StatusBadRequest {
			t.Errorf("%s: %d", file, status)
		}
	}
	for pupils, want := range map[string]int{"P01-P06": 200, "P01,Ana\nP02,Ben": 200, "Ana": 400, "": 400} {
		if status, text, _ := post(t, browser, at+"/set", url.Values{"pupils": {pupils}}); status != want ||
			want == 200 && !strings.HasPrefix(text, "%PDF-") {
			t.Errorf("the set of %q: %d %.300q", pupils, status, text)
		}
	}
	if _, text := get(t, browser, address+"/plans"); !strings.Contains(text, `href="/plans/Friday%20check"`) {
		t.Errorf("the plan is not kept: %s", text)
	}
	if status, text := get(t, browser, address+"/plans/Friday%20check"); status != http.StatusOK ||
		!strings.Contains(text, `value="add-two-digit" selected`) {
		t.Errorf("the plan kept is %d: %s", status, text)
	}
	if _, text, _ := post(t, browser, at+"/back", nil); strings.Contains(text, "Friday check") {
		t.Error("a quiz taken back is still listed")
	}
}

// Rules without a field of their own go through the form unharmed; mistakes are told in words.
func TestPlanKeepsItsOtherRules(t *testing.T) {
	browser, address := opened(t)
	form := planned("keep", "2 add-two-digit")
	form.Set("more", "shared = 1\n[bands]\nstretch = [0, 1]")
	if status, text, at := post(t, browser, address+"/plans", form); status != http.StatusOK ||
		!strings.HasSuffix(at, "?saved") || !strings.Contains(text, "stretch = [0, 1]") ||
		!strings.Contains(text, "shared = 1") {
		t.Errorf("%d at %s: %s", status, at, text)
	}
	form.Set("more", "[bandz]\nstretch = [0, 1]")
	if _, text, _ := post(t, browser, address+"/plans", form); !strings.Contains(text, "bandz") || strings.Contains(text, "~~~") {
		t.Errorf("a mistake is not told: %s", text)
	}
	if status, _ := get(t, browser, address+"/plans/nothing"); status != http.StatusNotFound {
		t.Errorf("a plan that isn't there: %d", status)
	}
}

// Where the rules can't be kept together, each way out that is a number of the plan is a button; the
// missing items are made with enough to choose from, also in an empty bank.
func TestWaysOutAreButtons(t *testing.T) {
	browser, address := opened(t)
	writeItems(t, browser, address, 6)
	wanted := planned("make", "9 add-two-digit", "1 clock-half-hour")
	_, text, _ := post(t, browser, address+"/plans", wanted)
	way := regexp.MustCompile(`value="(way:[0-9.]+)"`).FindStringSubmatch(text)
	if way == nil || !strings.Contains(text, `value="fill"`) {
		t.Fatalf("no way out is a button: %s", text)
	}
	for range 6 { // one clash after the other
		wanted.Set("do", way[1])
		_, text, _ = post(t, browser, address+"/plans", wanted)
		if way = regexp.MustCompile(`value="(way:[0-9.]+)"`).FindStringSubmatch(text); way == nil {
			break
		}
		for _, field := range []string{"count", "forms", "skill"} {
			wanted[field] = nil
			for _, found := range regexp.MustCompile(`name="`+field+`" type="number"[^>]* value="(\d+)"`).FindAllStringSubmatch(text, -1) {
				wanted[field] = append(wanted[field], found[1])
			}
		}
		for _, found := range regexp.MustCompile(`value="([a-z0-9-]+)" selected`).FindAllStringSubmatch(text, -1) {
			wanted["skill"] = append(wanted["skill"], found[1])
		}
	}
	if !strings.Contains(text, "The plan can be met") {
		t.Errorf("the ways out lead nowhere: %s", text)
	}
	// A row left out may take with it for whom the quiz is: then the button names the grade, too.
	out := planned(fmt.Sprintf("way:%d.0.0.2", assemble.ChangeCount), "9 add-two-digit", "1 clock-half-hour")
	out.Set("more", "[bands]\nwarm-up = [1, 1]")
	_, text, _ = post(t, browser, address+"/plans", out)
	if !strings.Contains(text, "grade = &#34;2&#34;\n[bands]") || strings.Contains(text, `value="add-two-digit" selected`) {
		t.Errorf("the grade is not written with the way: %s", text)
	}
	_, text, at := post(t, browser, address+"/plans", planned("fill", "3 clock-hour", "3 make-ten"))
	if !strings.Contains(at, "/quizzes/") || strings.Count(text, `name="place"`) != 12 {
		t.Errorf("no quiz of items that were made: %s %s", at, text)
	}
}

// Where items mend only one of two clashes the page says so; they are made, and what is left is shown.
func TestItemsMendAPart(t *testing.T) {
	browser, address := opened(t)
	writeItems(t, browser, address, 6)
	wanted := planned("try", "9 add-two-digit")
	wanted.Set("minutes", "1")
	_, text, _ := post(t, browser, address+"/plans", wanted)
	for _, part := range []string{"Or items mend it, if they are made or written:", "12 items of “", "With the first change of each", "see what is left"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is missing: %s", part, text)
		}
	}
	wanted.Set("do", "fill")
	if _, text, _ = post(t, browser, address+"/plans", wanted); strings.Contains(text, "Or items") || !strings.Contains(text, "1 minute for a form") {
		t.Errorf("what is left is not shown: %s", text)
	}
	wanted.Set("minutes", "30")
	if _, _, at := post(t, browser, address+"/plans", wanted); !strings.Contains(at, "/quizzes/") {
		t.Error("with the items made and more minutes there is no quiz")
	}
}

// Items of a skill are made from the page that shows some of them first; the bank gets those it lacks.
func TestItemsAreMade(t *testing.T) {
	browser, address := opened(t)
	// K.OA.A.4 of the Common Core standards: for any number from 1 to 9, the one that makes 10; two orders each.
	_, text := get(t, browser, address+"/generate?skill=make-ten&count=500")
	if !strings.Contains(text, "There are only 18 more") || strings.Count(text, "<svg") != 6 {
		t.Errorf("what would be made is not shown: %s", text)
	}
	five := url.Values{"skill": {"make-ten"}, "count": {"5"}}
	if _, text, at := post(t, browser, address+"/generate", five); !strings.HasSuffix(at, "/items?skill=make-ten") ||
		strings.Count(text, `class="card"`) != 5 {
		t.Errorf("5 were to be made: %s %s", at, text)
	}
	if _, text := get(t, browser, address+"/generate?skill=make-ten&count=500"); !strings.Contains(text, "There are only 13 more") {
		t.Errorf("after 5 of 18: %s", text)
	}
	for _, wrong := range []url.Values{
		{}, {"skill": {"make-ten"}, "count": {"0"}}, {"skill": {"make-ten"}, "count": {"501"}},
		{"skill": {"no"}}, {"skill": {"make-ten"}, "traits": {"regroups"}},
	} {
		if status, _, _ := post(t, browser, address+"/generate", wrong); status != http.StatusBadRequest {
			t.Errorf("%v: %d", wrong, status)
		}
	}
}

// A term stands by weeks on one page: what is new, what comes back, as the pacing list says.
func TestTermByWeeks(t *testing.T) {
	browser, address := opened(t)
	pacing := url.Values{"name": {"Winter"}, "text": {"title = \"Week {week}\"\nitems = 4\n" +
		"[[new]]\nweek = 1\nskill = \"clock-hour\"\n[[new]]\nweek = 3\nskill = \"make-ten\"\n"}}
	_, text, at := post(t, browser, address+"/terms", pacing)
	if !strings.Contains(at, "/terms/Winter") || strings.Count(text, `<tr>`)+strings.Count(text, `<tr aria-current`) != 6 {
		t.Fatalf("%s: %s", at, text)
	}
	row := regexp.MustCompile(`<th scope="row">(\d) <span class="quiet">([^<]+)</span></th>\s*<td>(.*?)</td><td>(.*?)</td>`)
	weeks := row.FindAllStringSubmatch(text, -1)
	if len(weeks) != 5 || weeks[0][2] != "23–27 November" || weeks[4][2] != "21–25 December" ||
		!strings.Contains(weeks[0][3], "4 × ") || weeks[1][3] != "–" || !strings.Contains(weeks[2][3], "make") {
		t.Errorf("the weeks are %q", weeks)
	}
	if _, text := get(t, browser, address+"/plans"); !strings.Contains(text, `href="/terms/Winter"`) {
		t.Errorf("the term is not listed: %s", text)
	}
	pacing.Set("text", "title = 3")
	if status, text, _ := post(t, browser, address+"/terms", pacing); status != http.StatusBadRequest || !strings.Contains(text, "title = 3") {
		t.Errorf("a list that can't be read: %d %s", status, text)
	}
	for _, path := range []string{"/terms/nothing", "/terms/Friday%20check"} {
		if status, _ := get(t, browser, address+path); status != http.StatusNotFound {
			t.Errorf("%s: %d", path, status)
		}
	}
}

// Where the bank has nothing else that fits, a swap makes items and says so; a quiz of items that can't be
// made stays as it is, with the reason in the language of the page.
func TestSwapWhereNothingIsLeft(t *testing.T) {
	browser, address := opened(t)
	_, _, at := post(t, browser, address+"/plans", planned("fill", "1 clock-hour"))
	for range 14 { // there are twelve hours, two of them on the sheets
		at, _, _ = strings.Cut(at, "?")
		var (
			status int
			text   string
		)
		if status, text, at = post(t, browser, at+"/swap", url.Values{"place": {"A1"}}); status != http.StatusOK {
			t.Fatalf("%d: %s", status, text)
		}
	}
	for _, c := range []struct{ language, title, reason, back string }{
		{"en", "Ten", "takes 3 items in each of 3 forms; the bank offers", "Go back"},
		{"es", "Diez", "lleva 3 ejercicios en cada una de las 3 versiones; el banco ofrece", "Volver"},
	} {
		post(t, browser, address+"/language", url.Values{"language": {c.language}})
		asked := planned("fill", "3 number-pairs") // of the numbers to 10, there are too few for three forms
		asked.Set("title", c.title)
		asked.Set("rest", "0")
		_, text, at := post(t, browser, address+"/plans", asked)
		if !strings.Contains(at, "/quizzes/") {
			t.Fatalf("no quiz at %s: %s", at, text)
		}
		at, _, _ = strings.Cut(at, "?")
		status, text, _ := post(t, browser, at+"/makeup", url.Values{})
		if status != http.StatusConflict || !strings.Contains(text, c.reason) || !strings.Contains(text, c.back) || strings.Contains(text, "evenhand generate") {
			t.Errorf("%s: %d, no %q in %s", c.language, status, c.reason, text)
		}
	}
}

// Of two windows with the same plan or the same pacing list, the one that keeps it later is told what it hasn't seen, and
// puts its own over that only when asked again.
func TestPlansAreNotOverwrittenUnseen(t *testing.T) {
	browser, address, b := openedWithBank(t)
	seenAt := func(path string) string {
		_, page := get(t, browser, address+path)
		found := regexp.MustCompile(`name="seen" value="([^"]*)"`).FindStringSubmatch(page)
		if found == nil {
			t.Fatalf("%s says nothing of its revision: %s", path, page)
		}
		return found[1]
	}
	keep := func(path, seen, name string, form url.Values, want int, revision int) (page string) {
		t.Helper()
		form.Set("seen", seen)
		form.Set("name", name)
		status, page, _ := post(t, browser, address+path, form)
		if kept, err := b.Plan("Friday check"); path == "/plans" && (err != nil || kept.Revision != revision) || status != want {
			t.Errorf("%s after %q: %d and %+v, %v; want %d and revision %d", path, seen, status, kept, err, want, revision)
		}
		return page
	}
	keep("/plans", "", "", planned("keep", "2 add-two-digit"), http.StatusOK, 1)
	both := seenAt("/plans/Friday%20check")
	keep("/plans", both, "Friday check", planned("keep", "3 add-two-digit"), http.StatusOK, 2)
	page := keep("/plans", both, "Friday check", planned("keep", "4 add-two-digit"), http.StatusConflict, 2)
	if !strings.Contains(page, "that you have not seen, revision 2") || !strings.Contains(page, `name="count" type="number" min="1" max="100" value="4"`) {
		t.Errorf("the later window is told: %s", page)
	}
	keep("/plans", "", "", planned("keep", "4 add-two-digit"), http.StatusConflict, 2) // a new plan of the same name
	keep("/plans", "2 Friday check", "Friday check", planned("keep", "4 add-two-digit"), http.StatusOK, 3)

	_, fresh := get(t, browser, address+"/terms/new")
	text := html.UnescapeString(regexp.MustCompile(`(?s)<textarea name="text"[^>]*>(.*?)</textarea>`).FindStringSubmatch(fresh)[1])
	keep("/terms", "", "Autumn", url.Values{"text": {text}}, http.StatusOK, 0)
	keep("/terms", "", "Autumn", url.Values{"text": {text + "# two\n"}}, http.StatusConflict, 0)
	keep("/terms", seenAt("/terms/Autumn"), "Autumn", url.Values{"text": {text + "# two\n"}}, http.StatusOK, 0)
}

// The week's number is put behind a title by ticking that, so no page shows the mark by which a plan's text
// asks for it, whether the plan was kept here or came from a file under its title.
func TestNoPageShowsTheWeeksMark(t *testing.T) {
	browser, address, b := openedWithBank(t)
	text := "title = \"Older check, week {week}\"\nforms = 2\n[[row]]\nskill = \"add-two-digit\"\ncount = 2\n"
	if _, err := b.SavePlan(bank.Plan{Name: "Older check, week {week}", Text: text, By: "MK", At: wednesday}); err != nil {
		t.Fatal(err)
	}
	form := planned("keep", "2 add-two-digit")
	form.Set("ending", ", week {week}")
	_, kept, at := post(t, browser, address+"/plans", form)
	if !strings.HasSuffix(at, "/plans/Friday%20check?saved") || !strings.Contains(kept, "<h1>Friday check, week 48</h1>") {
		t.Errorf("the plan stands at %s: %s", at, kept)
	}
	tags := regexp.MustCompile(`<[^>]*>`)
	for _, path := range []string{"/", "/plans", "/plans/Friday%20check", "/plans/Older%20check,%20week%20%7Bweek%7D", "/activity"} {
		status, page := get(t, browser, address+path)
		titles := regexp.MustCompile(`name="title" value="([^"]*)"`).FindStringSubmatch(page)
		if status != http.StatusOK || strings.Contains(tags.ReplaceAllString(page, ""), "{") || titles != nil && strings.Contains(titles[1], "{") {
			t.Errorf("%s: %d, %v: %s", path, status, titles, page)
		}
	}
	if saved, err := b.Plan("Friday check"); err != nil || !strings.Contains(saved.Text, "Friday check, week {week}") {
		t.Errorf("the plan kept is %q: %v", saved.Text, err)
	}
}
