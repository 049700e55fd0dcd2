package desk_test

import (
	"archive/zip"
	"bytes"
	"html"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"
)

// Words that English can hardly do without and Spanish doesn't have, nor the way tasks are typed (from memory).
var english = regexp.MustCompile(`(?i)\b(?:the|of|and|is|are|was|were|not|this|that|these|with|has|have|its|there|here|` +
	`who|than|must|should|you|it|does|been|can't|isn't|doesn't|didn't|won't|because|nothing|nobody|only|each)\b`)

var (
	typedInto   = regexp.MustCompile(`(?s)<textarea.*?</textarea>|<button[^>]*lang="en".*?</button>|<input [^>]*>`)
	attributes  = regexp.MustCompile(`(?:aria-label|placeholder|title|alt|data-[a-z]+)="([^"]*)"`)
	placeholder = regexp.MustCompile(`<input [^>]*placeholder="([^"]*)"`)
	names       = regexp.MustCompile(`\w+(?:-\w+)+`) // such as those of layouts, as plans write them
	tags        = regexp.MustCompile(`<[^>]*>`)
)

// saysNoEnglish fails where a page in Spanish says something in English that nobody typed.
func saysNoEnglish(t *testing.T, name, page string) {
	t.Helper()
	said := tags.ReplaceAllString(typedInto.ReplaceAllString(page, "\n"), "\n")
	for _, found := range append(attributes.FindAllStringSubmatch(typedInto.ReplaceAllString(page, ""), -1),
		placeholder.FindAllStringSubmatch(page, -1)...) {
		said += "\n" + found[1]
	}
	if folder := os.Getenv("EVENHAND_SPANISH"); folder != "" {
		if err := os.WriteFile(folder+"/"+strings.NewReplacer("/", "_", " ", "_").Replace(name)+".html", []byte(page), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for line := range strings.SplitSeq(html.UnescapeString(said), "\n") {
		if words := english.FindAllString(names.ReplaceAllString(line, "…"), -1); words != nil {
			t.Errorf("%s says %q in %q", name, words, strings.TrimSpace(line))
		}
	}
	if strings.Contains(typedInto.ReplaceAllString(page, ""), `lang="en"`) {
		t.Errorf("%s marks something as English", name)
	}
}

// inSpanish makes the browser ask for Spanish from now on.
func inSpanish(t *testing.T, browser *http.Client, address string) {
	t.Helper()
	if status, _, _ := post(t, browser, address+"/language", url.Values{"language": {"es"}, "back": {"/"}}); status != http.StatusOK {
		t.Fatalf("no Spanish: %d", status)
	}
}

// No page of the gallery says anything in English to who reads Spanish.
func TestSpanishPages(t *testing.T) {
	browser, address, empty, full := gallery(t)
	inSpanish(t, browser, address)
	for _, s := range append(empty, full...) {
		_, page := get(t, browser, address+s.path)
		saysNoEnglish(t, s.name, page)
	}
}

// Lists with every mistake that colleagues make are answered in Spanish, row by row.
func TestSpanishLists(t *testing.T) {
	browser, address := opened(t)
	inSpanish(t, browser, address)
	for name, list := range map[string]string{
		"wrong answers": "question,answer,skill,standards,look\n47 + 36 = ?,73,,,\n47 + = 36,5,,,\n12.03,,,,\n2026-01-02,3,,,\n#REF!,4,,,\n" +
			"47 x 3,141,,,\nread 25:99,25:99,,,\nWhat does Ada see in the yard?,,,,\nHow many apples did Ben pick today?,#NAME?,,,\n" +
			"47 + 36 = ? = 83,83,,,\narray 9 by 9,81,,,\ncoins 7,7,,,\n2 + 3 + 4 + 5 + 6 = ?,20,,,\n5 - 9 = ?,4,,,\n999 + 9 = ?,1008,,,\n" +
			"47 + 36 = ?,83,add two digit,9.ZZ,sideways\n58 + 27 = ?,85,make ten,2.MD.C.7,column\n47 + 36 = 83,83,,,\nread 4:30,44866,,,\n" +
			"98 99 ?,100,,,\nodd or even: x,odd,,,\n47 + 36 = ?,83,,,,more,and more\n",
		"choices": "question,answer,choice a,choice b,choice c\nWhich number is the largest of these?,7,12,31,25\n" +
			"Which of these is a shape with three sides?,2,3,2,1\nWhich number comes next: 2 4 6?,C,5,7,8\n",
		"other columns": "number;text;who;what else is there to say about this one\n1;47 + 36 = ?;MK;this is a long story about a boy who has apples\n" +
			"2;58 + 27 = ?;MK;that is another long story about a girl who has pears\n3;12 + 9 = ?;MK;and this is the third of these long stories to tell\n",
		"no questions": "a,b\n1,2\n3,4\n", "empty": " \n", "json": `[{"question": "47 + 36"}]`, "picture": "\x89PNG\r\n\x1a\n", "page": "<html><p>47 + 36",
		"pdf": "%PDF-1.4\n", "plan": "title = \"Friday\"\nforms = 2\n[[row]]\nskill = \"make-ten\"\ncount = 2\n",
		"open quote":    "question,answer\n\"47 + 36,83\n58 + 27,85\n",
		"torn workbook": "PK\x03\x04 a workbook", "broken XML": zipped(t, "<workbook><sheets>"), "cut XML": zipped(t, "<workbook"),
		"marks": "pupil,form,1,2\nP01,A,1,0\n", "stories": "question,answer\nAda has 5 apples and finds 7 more. How many are there now?,99\n" +
			"Ben had 12 pears and ate 4 of them. How many are left?,8\nAda has 5 apples and finds 7 more. How many are there now?,12\n",
	} {
		_, page, at := send(t, browser, address, strings.ReplaceAll(name, " ", "")+".csv", []byte(list))
		saysOf(t, "the list of "+name, page, list)
		if strings.Contains(at, "/lists/") {
			_, page, _ = post(t, browser, at, listForm(page, "accept"))
			saysOf(t, "the list accepted of "+name, page, list)
		}
		_, page = get(t, browser, address+"/lists/kept/1/"+strings.ReplaceAll(name, " ", "")+".csv")
		saysOf(t, "the list kept of "+name, page, list)
		if item := regexp.MustCompile(`/items/01[0-9A-Z]+`).FindString(page); item != "" {
			post(t, browser, at+"/back", nil)
			_, page = get(t, browser, address+item)
			saysOf(t, "an item taken back of "+name, page, list)
			if name == "stories" && !strings.Contains(page, "lista retirada: stories.csv") {
				t.Errorf("why an item is out of use isn't told in Spanish: %s", page)
			}
		}
	}
}

// zipped is a workbook with this text as the list of its sheets.
func zipped(t *testing.T, text string) string {
	t.Helper()
	var file bytes.Buffer
	archive := zip.NewWriter(&file)
	for name, text := range map[string]string{"xl/workbook.xml": text, "xl/_rels/workbook.xml.rels": "<Relationships/>"} {
		part, err := archive.Create(name)
		if err == nil {
			_, err = part.Write([]byte(text))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return file.String()
}

// saysOf is saysNoEnglish, but for what stands in a file that was sent.
func saysOf(t *testing.T, name, page, typed string) {
	t.Helper()
	for _, part := range regexp.MustCompile(`[^,;\n]+`).FindAllString(typed, -1) {
		if part = strings.TrimSpace(part); len(part) > 12 {
			page = strings.ReplaceAll(page, html.EscapeString(part), "…")
			if len(part) > 57 {
				page = strings.ReplaceAll(page, html.EscapeString(part[:57]), "…")
			}
		}
	}
	saysNoEnglish(t, name, page)
}

// Plans, items, marks and whatever else is sent with a mistake in it is answered in Spanish.
func TestSpanishMistakes(t *testing.T) {
	browser, address, grid, _ := toMark(t)
	inSpanish(t, browser, address)
	quiz := strings.Replace(grid, "/marks/", "/quizzes/", 1)
	_, list := get(t, browser, address+"/items")
	item := address + regexp.MustCompile(`/items/01[0-9A-Z]+`).FindString(list)
	with := func(action, key, value string) url.Values {
		form := planned(action, "3 add-two-digit")
		form.Set(key, value)
		return form
	}
	for revision, change := range []url.Values{
		{"task": {"47 + 36"}, "look": {"column"}, "reason": {"x"}, "revision": {"1"}, "notes": {"x"}},
		{"task": {"58 + 27"}, "reason": {"x"}, "revision": {"2"}},
	} {
		if status, page, _ := post(t, browser, item, change); status != http.StatusOK {
			t.Fatalf("no revision %d: %d %s", revision+2, status, page)
		}
	}
	if _, page := get(t, browser, item); !strings.Contains(page, "casilla por cifra") {
		t.Errorf("the history of an item doesn't tell its layouts in Spanish: %s", page)
	} else {
		saysNoEnglish(t, "an item's history", page)
	}
	for _, ask := range []struct {
		at   string
		form url.Values
	}{
		{"/plans", with("try", "forms", "99")}, {"/plans", with("try", "minutes", "-3")}, {"/plans", with("try", "share", "much")},
		{"/plans", with("try", "rest", "999")}, {"/plans", with("try", "where", "regrups >= 1")}, {"/plans", with("try", "where", "three hats")},
		{"/plans", with("try", "where", "digits = two")}, {"/plans", with("try", "where", "doubles > true")},
		{"/plans", with("try", "where", "unknown = other")},
		{"/plans", with("try", "where", "situation < two-step")}, {"/plans", with("try", "looks", "sideways")}, {"/plans", with("try", "looks", "clock")},
		{"/plans", with("try", "vary", "yes")}, {"/plans", with("try", "count", "0")}, {"/plans", with("try", "count", "500")},
		{"/plans", with("try", "skill", "add-two-digits")}, {"/plans", with("try", "skill", "")}, {"/plans", with("try", "title", `"`)},
		{"/plans", with("try", "more", "[bands]\nstrech = [1, 2]")}, {"/plans", with("try", "more", "[bands]\nstretch = [3, 1]")},
		{"/plans", with("try", "more", "[bands]\nstretch = 1, 2")}, {"/plans", with("try", "more", "shared = 9")},
		{"/plans", with("try", "more", "shard = 1")},
		{"/plans", with("try", "more", "grade = 7")}, {"/plans", with("try", "more", "diagnose = [\"sleeps\"]")},
		{"/plans", with("try", "more", "[[quota]]\ncount = 2")},
		{"/plans", with("try", "more", "items = 9")}, {"/plans", with("try", "more", "title = “x”")}, {"/plans", with("try", "more", "shared = two")},
		{"/plans", with("try", "more", "shared")}, {"/plans", with("try", "more", "diagnose = [")}, {"/plans", with("try", "more", "[[quota]")},
		{"/plans", with("try", "more", "!!")}, {"/plans", with("keep", "title", "")}, {"/plans", with("make", "minutes", "1")},
		{"/plans", with("make", "count", "90")},
		{"/plans", with("try", "where", "digits = 3")}, {"/plans", with("fill", "where", "digits = 3")}, {"/plans", planned("make", "3 add-two-digit")},
		{"/terms", url.Values{"name": {"x"}, "text": {"title = "}}},
		{"/terms", url.Values{"name": {"x"}, "text": {"items = 10\n[[new]]\nskill = \"make-ten\""}}},
		{"/terms", url.Values{"name": {"x"},
			"text": {"items = 10\nreturn = [3, 2]\nskip = [\"never\", \"2026-W60\"]\n[[new]]\nweek = 2\nskill = \"make\""}}},
		{"/terms", url.Values{"name": {""}, "text": {"[[row]]\nskill = \"make-ten\"\ncount = 2"}}},
		{"/items", url.Values{}}, {"/items", url.Values{"task": {"47 + 36"}, "look": {"sideways"}}}, {"/items", url.Values{"task": {"How is it?"}}},
		{"/items", url.Values{"task": {"How?"}, "key": {"5"}, "skill": {"sleeping"}}}, {item, url.Values{"task": {"58 + 27"}}},
		{item, url.Values{"task": {"58 + 27"}, "reason": {"x"}, "revision": {"9"}}},
		{item + "/standing", url.Values{"standing": {"ready"}, "revision": {"9"}}},
		{"/generate", url.Values{"skill": {"no"}}}, {"/generate", url.Values{"skill": {"make-ten"}, "traits": {"regroups"}}}, {"/generate", url.Values{}},
		{"/generate", url.Values{"skill": {"make-ten"}, "traits": {"regroups = 3"}}}, {"/generate", url.Values{"skill": {"make-ten"}, "count": {"many"}}},
		{"/generate", url.Values{"skill": {"make-ten"}, "traits": {"doubles = true, near_doubles = true"}}},
		{grid + "/class", url.Values{"codes": {"Ada, Ben"}, "class": {"2A"}}}, {grid + "/class", url.Values{"codes": {"P30-P20"}, "class": {"2A"}}},
		{grid + "/class", url.Values{"codes": {"P30"}, "class": {"Ada, Ben + Cleo"}}}, {grid, rowOf("P77", 0, "", "1")}, {grid, rowOf("P01", 0, "Q", "1")},
		{grid, rowOf("P01", 0, "A", "blue", "7", "-", "99999")}, {grid + "/paste", url.Values{"class": {"2A"}, "grid": {""}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil,form,1,2,3"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"P01,A,1,0,1"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil,form,1,2\nP01,A,1,0"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil,form,1,2,3,4\nP01,A,1,0,1,1"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "signs": {"x"}, "grid": {"pupil,form,1,2,3\nP01,A,1,0,1"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil,form,1,2,3,colour\nAda,A,1,0,1,\nP31,A,1,0,1,\nP01,Z,1,0,1,\nP02,A,1,1,1,1\n" +
			"P02,A,1,1,1,\nP03,A,#REF!,✓,x,\nP04,A,2026-01-02,✓,x,\nP05,A,50%,✓,x,\n" +
			"P06,A,-,✓,x,\nP07,A,1,,\nP08,A,blue,✓,✓,\nP09,A,?,?,?,\nP10,A,t,✓,f,\n"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil,form,1,2,3\nP01,A,x,x,x\nP02,A,x,x,x\nP03,A,x,x,x"}}},
		{grid + "/paste", url.Values{"class": {"2A"}, "grid": {"pupil,form,1,2,3\nP01,A,✓,,✓\nP02,A,✓,-,✓\nP03,A,☐,☐,☐\nP04,A,1,0,1\nP05,B,9,9,9"}}},
		{quiz + "/swap", url.Values{"swap": {"A9"}}}, {quiz + "/swap", url.Values{"swap": {"A1"}}}, {quiz + "/swap", nil},
		{quiz + "/makeup", nil}, {quiz + "/move", url.Values{"move": {"A1"}, "to": {"9"}}},
		{quiz + "/set", url.Values{"pupils": {"Ada\nBen"}}}, {quiz + "/set", url.Values{"pupils": {"P01,Ada\nP01,Ben"}}},
		{quiz + "/set", url.Values{"pupils": {"P01-P04"}, "paper": {"A0"}}},
		{quiz + "/back", nil}, {"/class/practice", url.Values{"class": {"9Z"}}}, {"/class/practice", url.Values{"class": {"2A"}, "lang": {"xx"}}},
		{"/team/people", url.Values{"name": {"nobody"}}}, {"/team/check", nil}, {"/team/copies", nil},
	} {
		where := ask.at
		if !strings.HasPrefix(where, address) {
			where = address + where
		}
		_, page, at := post(t, browser, where, ask.form)
		name := strings.TrimPrefix(where, address) + " " + ask.form.Get("do") + changedIn(ask.form)
		if !strings.HasPrefix(page, "%PDF") && !strings.HasPrefix(page, "PK") {
			saysNoEnglish(t, name+" at "+strings.TrimPrefix(at, address), page)
		}
	}
	for _, path := range []string{"/items?skill=add-two", "/items?code=9.ZZ", "/items?traits=regrups+%3D+1", "/items?unused=x",
		"/items?at=x", "/nowhere",
		"/quizzes/x", "/marks/x", "/plans/x", "/terms/x", "/lists/x", "/lists/kept/1/x",
		"/team/copies/x", strings.TrimPrefix(quiz, address) + "/form-Z.pdf",
		strings.TrimPrefix(quiz, address) + "/form-A.pdf?paper=A0", "/class?class=%3C", "/generate?skill=x"} {
		_, page := get(t, browser, address+path)
		saysNoEnglish(t, path, page)
	}
}

// changedIn are the fields of a form that tell which of the mistakes it has.
func changedIn(form url.Values) (said string) {
	for _, key := range []string{"more", "where", "looks", "text", "task", "traits", "codes", "grid", "pupils", "swap"} {
		if value := form.Get(key); value != "" {
			said += " " + key + "=" + strings.ReplaceAll(value, "\n", "|")
		}
	}
	return said[:min(len(said), 70)]
}

// People, invitations and passes are told of in Spanish, with what goes wrong.
func TestSpanishTeam(t *testing.T) {
	team, first := teamDesk(t, nil)
	stranger := newBrowser(t)
	inSpanish(t, stranger, team)
	for _, ask := range []struct {
		at   string
		form url.Values
	}{
		{"/signin", nil}, {"/signin", url.Values{"name": {"MK"}, "password": {"wrong"}}}, {"/invited/nothing", url.Values{"name": {"MK"}}},
		{strings.TrimPrefix(first, team), url.Values{"name": {""}, "password": {"x"}}},
		{strings.TrimPrefix(first, team), url.Values{"name": {"MK"}, "password": {"x"}}},
	} {
		_, page, _ := post(t, stranger, team+ask.at, ask.form)
		saysNoEnglish(t, ask.at, page)
	}
	owner := joins(t, first, "MK")
	inSpanish(t, owner, team)
	for _, ask := range []struct {
		at   string
		form url.Values
	}{
		{"/team/invite", url.Values{"role": {"king"}}}, {"/team/invite", url.Values{"role": {"writer"}}},
		{"/team/people/MK", url.Values{"role": {"reader"}}},
		{"/team/people/nobody", url.Values{"role": {"reader"}}}, {"/team/people/MK/remove", nil}, {"/team/people/nobody/remove", nil},
		{"/passes", url.Values{"name": {""}}}, {"/passes", url.Values{"name": {"reports"}}}, {"/passes/drop", url.Values{"pass": {"x"}}},
		{"/team/check", nil}, {"/team/copies", nil}, {"/team/copies/x/restore", nil}, {"/team/review", url.Values{"anyone": {"perhaps"}}},
	} {
		_, page, _ := post(t, owner, team+ask.at, ask.form)
		saysNoEnglish(t, ask.at+" "+ask.form.Encode(), page)
	}
	for _, path := range []string{"/", "/team", "/activity", "/passes", "/items", "/marks", "/class", "/quizzes", "/plans", "/lists"} {
		_, page := get(t, owner, team+path)
		saysNoEnglish(t, path, page)
	}
}
