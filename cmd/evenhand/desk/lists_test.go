package desk_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"html"
	"mime/multipart"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"evenhand/assemble/export"
	"evenhand/bank"
	intake "evenhand/import"
)

// send drops a list on the desk, as the form without scripts does.
func send(t *testing.T, browser *http.Client, address, name string, data []byte) (status int, text, at string) {
	t.Helper()
	var body bytes.Buffer
	form := multipart.NewWriter(&body)
	part, err := form.CreateFormFile("list", name)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := part.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := form.Close(); err != nil {
		t.Fatal(err)
	}
	answer, err := browser.Post(address+"/lists", form.FormDataContentType(), &body)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	var page bytes.Buffer
	if _, err := page.ReadFrom(answer.Body); err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, page.String(), answer.Request.URL.String()
}

// plainly is a page as it reads.
func plainly(page string) string { return html.UnescapeString(page) }

var (
	fieldNames = regexp.MustCompile(`<textarea rows="1" name="(mend-[^"]+)"[^>]*>\n([^<]*)</textarea></label>` +
		`<input type="hidden" name="(was-mend-[^"]+)" value="([^"]*)">`)
	choiceNames = regexp.MustCompile(`<select name="(column-\d+)">`)
	wasColumns  = regexp.MustCompile(`<input type="hidden" name="(was-column-\d+)" value="([^"]*)">`)
)

// listForm is the form of a list's page as a browser would send it untouched.
func listForm(page, action string) url.Values {
	form := url.Values{"do": {action}}
	for _, field := range fieldNames.FindAllStringSubmatch(page, -1) {
		form.Set(field[1], html.UnescapeString(field[2]))
		form.Set(field[3], html.UnescapeString(field[4]))
	}
	for _, column := range wasColumns.FindAllStringSubmatch(page, -1) {
		form.Set(column[1], html.UnescapeString(column[2]))
		form.Set(strings.TrimPrefix(column[1], "was-"), html.UnescapeString(column[2]))
	}
	return form
}

// A colleague's list with its columns headed in a way that misleads, a wrong answer, a double and a formula.
const sevenRows = "Nr,Stuff,Result,Old result\n" +
	"1,27 + 35,62,61\n2,48 + 26,75,74\n3,47 + 36,83,0\n4,58 + 14,72,1\n5,36 + 28,64,2\n6,19 + 64,83,3\n7,=1+2,x,4\n"

func TestListComesInAfterItIsMended(t *testing.T) {
	browser, address := opened(t)
	status, page, at := send(t, browser, address, `C:\lists\sv.csv`, []byte(sevenRows))
	if status != http.StatusOK || !strings.Contains(page, "<h1>sv.csv</h1>") ||
		!strings.Contains(page, "4 rows will be added, 1 is here already, 2 rows are left to mend") {
		t.Fatalf("%d at %s: %s", status, at, page)
	}
	if _, text := get(t, browser, address+"/items"); strings.Count(text, `href="/items/01`) != 4 {
		t.Error("a row is in the bank before anything was accepted")
	}
	if !strings.Contains(plainly(page), "48 + 26 is 74, the list says 75") {
		t.Errorf("no reason is shown: %s", page)
	}
	// The window is closed; the list is still there.
	sent := time.Date(2026, 11, 25, 15, 0, 0, 0, time.UTC).Local().Format("2 January 2006, 15:04") // by this computer's clock
	if _, text := get(t, browser, address+"/lists"); !strings.Contains(text, "sv.csv") || !strings.Contains(text, "MK, "+sent) {
		t.Errorf("the list does not survive: %s", text)
	}
	// Another column holds the answers: then other rows are wrong; and back again.
	form := listForm(page, "save")
	form.Set("column-4", "answer")
	form.Set("column-3", "unused")
	_, page, _ = post(t, browser, at, form)
	if !strings.Contains(plainly(page), "27 + 35 is 62, the list says 61") || !strings.Contains(page, `<option value="answer" selected>`) {
		t.Errorf("the columns are not changed: %s", page)
	}
	form = listForm(page, "accept")
	form.Set("column-3", "answer")
	form.Set("column-4", "unused")
	_, page, where := post(t, browser, at, form)
	if !strings.Contains(where, "said=look") || !strings.Contains(page, "4 rows will be added") {
		t.Errorf("what was not seen yet was accepted at %s: %s", where, page)
	}
	// Two rows are mended in place.
	form = listForm(page, "save")
	for name, values := range form {
		if values[0] == "75" && strings.HasPrefix(name, "mend-") {
			form.Set(name, "74")
		}
	}
	_, page, _ = post(t, browser, at, form)
	if !strings.Contains(page, "5 rows will be added, 1 is here already, 1 row is left to mend") ||
		!strings.Contains(page, "mended; it can come in") {
		t.Errorf("a row is not mended: %s", page)
	}
	_, page, where = post(t, browser, at, listForm(page, "accept"))
	if !strings.Contains(where, "said=in") || !strings.Contains(page, "5 items added") || !strings.Contains(page, "1 row is left to mend") {
		t.Errorf("at %s: %s", where, page)
	}
	if _, text := get(t, browser, address+"/items"); strings.Count(text, `href="/items/01`) != 9 {
		t.Errorf("5 rows and 4 items make %d", strings.Count(text, `href="/items/01`))
	}
	// The rest is mended after that, and comes in too.
	form = listForm(page, "save")
	for name, values := range form {
		switch {
		case !strings.HasPrefix(name, "mend-"):
		case values[0] == "=1+2":
			form.Set(name, "51 + 12")
		case values[0] == "x":
			form.Set(name, "63")
		}
	}
	_, page, _ = post(t, browser, at, form)
	_, page, _ = post(t, browser, at, listForm(page, "accept"))
	if !strings.Contains(page, "6 items added") || strings.Contains(page, "left to mend") {
		t.Errorf("the last row did not come in: %s", page)
	}
	if !strings.Contains(page, "Take 6 items out of use again") {
		t.Errorf("it can't be taken back: %s", page)
	}
	if status, _, _ := post(t, browser, at+"/back", nil); status != http.StatusOK {
		t.Errorf("taking back gives %d", status)
	}
	if _, text := get(t, browser, address+"/items"); strings.Count(text, `href="/items/01`) != 4 {
		t.Errorf("taking back leaves %d", strings.Count(text, `href="/items/01`))
	}
}

func TestListWithoutKnownColumns(t *testing.T) {
	browser, address := opened(t)
	status, page, at := send(t, browser, address, "odd.csv", []byte("7,8\n12,13\n14,15\n"))
	if status != http.StatusOK || !strings.Contains(page, "No column looks like the questions") || len(choiceNames.FindAllString(page, -1)) != 2 {
		t.Fatalf("%d: %s", status, page)
	}
	form := listForm(page, "save")
	form.Set("column-1", "question")
	if status, page, _ = post(t, browser, at, form); status != http.StatusOK || !strings.Contains(page, "3 rows are left to mend") {
		t.Errorf("%d: %s", status, page)
	}
	form = url.Values{"do": {"save"}, "encoding": {"klingon"}}
	if status, page, _ = post(t, browser, at, form); status != http.StatusOK || !strings.Contains(page, "no encoding") {
		t.Errorf("a wrong encoding: %d: %s", status, page)
	}
	if status, _, where := post(t, browser, at+"/drop", nil); status != http.StatusOK || !strings.HasSuffix(where, "/lists") {
		t.Errorf("dropping gives %d at %s", status, where)
	}
	if status, _ := get(t, browser, at); status != http.StatusNotFound {
		t.Errorf("what was dropped is %d", status)
	}
}

// What is no list is refused in words, and nothing of a list runs or grows the page without bound.
func TestHostileLists(t *testing.T) {
	browser, address := opened(t)
	many := bytes.Buffer{}
	many.WriteString("question,answer\n")
	for i := range 5000 {
		fmt.Fprintf(&many, "%d + %d,nothing\n", i%90+1, i/90+1)
	}
	for name, c := range map[string]struct {
		file   string
		status int
		says   string
	}{
		"doc.pdf":       {"%PDF-1.4 x", 400, "this is a PDF"},
		"old.xls":       {"\xd0\xcf\x11\xe0\xa1\xb1", 400, "old workbook"},
		"zip.xlsx":      {"PK\x03\x04rubbish", 400, "zip.xlsx"},
		"none.csv":      {"", 400, "none.csv"},
		"page.csv":      {"question,answer\n<script>alert(1)</script> what is it?,\"<img src=x onerror=y>\"\n", 200, "&lt;script&gt;"},
		"many.csv":      {many.String(), 200, "5000 rows are left to mend"},
		"../../<b>.csv": {"question,answer\n27 + 35,62\n", 200, "&lt;b&gt;.csv"},
	} {
		status, page, _ := send(t, browser, address, name, []byte(c.file))
		if status != c.status || !strings.Contains(page, c.says) {
			t.Errorf("%s: %d, want %d and %q: %.1500s", name, status, c.status, c.says, page)
		}
		if strings.Contains(page, "<script>alert") || strings.Contains(page, "<img src=x") || strings.Contains(page, "<b>.csv") {
			t.Errorf("%s: its cells are on the page as they are", name)
		}
		if len(page) > 100<<10 {
			t.Errorf("%s: the page has %d bytes", name, len(page))
		}
	}
	huge := bytes.Repeat([]byte("27 + 35,62\n"), 2<<20)
	if status, page, _ := send(t, browser, address, "huge.csv", huge); status != http.StatusRequestEntityTooLarge ||
		!strings.Contains(page, "up to 16 MB") {
		t.Errorf("a list of 22 MB: %d: %s", status, page)
	}
}

// A list that came in by a command stands on the page with the fates of its rows; one accepted here shows
// them from the bank, too. Rows of the bank's own export that were edited become revisions where that is wished.
func TestListsShowWhatBecameOfTheirRows(t *testing.T) {
	browser, address, b := openedWithBank(t)
	list, err := intake.Open("sv.csv", []byte("question,answer\n58 + 27,85\n47 + 36,84\n"), intake.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := intake.Import(b, list, intake.ImportOptions{By: "SV", At: wednesday}); err != nil {
		t.Fatal(err)
	}
	_, text := get(t, browser, address+"/lists")
	kept := regexp.MustCompile(`href="(/lists/kept/1/sv.csv)"`).FindStringSubmatch(text)
	if kept == nil {
		t.Fatalf("a list by command is not seen: %s", text)
	}
	if _, text := get(t, browser, address+kept[1]); !strings.Contains(plainly(text), "58 + 27") ||
		!strings.Contains(text, "to mend") || !strings.Contains(text, "the list says 84") {
		t.Errorf("what became of its rows: %s", text)
	}
	_, text, at := send(t, browser, address, "jk.csv", []byte("question,answer\n64 + 19,83\n"))
	if _, text, _ = post(t, browser, at, listForm(text, "accept")); !strings.Contains(text, `href="/lists/kept/1/jk.csv"`) {
		t.Errorf("an accepted list does not lead to the bank's account of it: %s", text)
	}
	for _, path := range []string{"/lists/kept/2/sv.csv", "/lists/kept/x/sv.csv", "/lists/kept/1/nothing"} {
		if status, _ := get(t, browser, address+path); status != http.StatusNotFound {
			t.Errorf("%s: %d", path, status)
		}
	}

	var file bytes.Buffer
	if err := export.WriteBank(&file, b.Find(bank.Query{})); err != nil {
		t.Fatal(err)
	}
	_, text, at = send(t, browser, address, "all.csv", bytes.Replace(file.Bytes(), []byte("64 + 19 = ?,,,83"), []byte("65 + 19 = ?,,,84"), 1))
	if !strings.Contains(text, "1 row of this bank") {
		t.Fatalf("an edited export: %s", text)
	}
	form := listForm(text, "save")
	form["revise"] = []string{"no", "yes"}
	_, text, _ = post(t, browser, at, form)
	if _, text, _ = post(t, browser, at, listForm(text, "accept")); !strings.Contains(text, "came in") {
		t.Errorf("its revision: %s", text)
	}
	found := 0
	for it, err := range b.Find(bank.Query{Words: "65"}) {
		if err != nil || it.Revision != 2 {
			t.Errorf("%v: revision %d", err, it.Revision)
		}
		found++
	}
	if found != 1 {
		t.Errorf("%d items were revised", found)
	}
}

// What a list's reading notes of an item is said in the language of the page; the rest of the note stays as it was written.
func TestNotesOfAListAreInSpanishToo(t *testing.T) {
	browser, address := opened(t)
	_, text, at := send(t, browser, address, "story.csv", []byte("question,answer,notes\nBen has 15 pears and eats 6 of them. How many are left?,9,from Ana\n"))
	post(t, browser, at, listForm(text, "accept"))
	_, text = get(t, browser, address+"/items?status=draft")
	post(t, browser, address+"/language", url.Values{"language": {"es"}})
	if _, text = get(t, browser, address+regexp.MustCompile(`/items/01[0-9A-Z]+`).FindString(text)); !strings.Contains(text,
		"<dd>destreza propuesta por sus números; from Ana</dd>") {
		t.Errorf("the note of the item: %s", text)
	}
}

// A sheet of a workbook that was not read gets a button.
func TestUnreadSheetsCanBeRead(t *testing.T) {
	browser, address := opened(t)
	_, text, at := send(t, browser, address, "week.xlsx", twoSheets(t, `state="hidden"`))
	if !strings.Contains(plainly(text), "The sheet “Old” of this workbook was not read") {
		t.Fatalf("the hidden sheet is not told: %s", text)
	}
	if _, text, _ := post(t, browser, at+"/sheet", url.Values{"sheet": {"Old"}}); !strings.Contains(plainly(text), "64 + 19") ||
		strings.Contains(plainly(text), "58 + 27") {
		t.Errorf("the hidden sheet is not read: %s", text)
	}
	if status, _, _ := post(t, browser, at+"/sheet", url.Values{"sheet": {"Old"}}); status != http.StatusNotFound {
		t.Errorf("read twice: %d", status)
	}
}

// twoSheets is a workbook of two, the second with an attribute more.
func twoSheets(t *testing.T, second string) []byte {
	t.Helper()
	var book bytes.Buffer
	parts := zip.NewWriter(&book)
	// The least that ECMA-376 asks of a workbook: its sheets, by name and relation.
	for name, text := range map[string]string{
		"xl/workbook.xml": `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"` +
			` xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>` +
			`<sheet name="Mon" sheetId="1" r:id="r1"/><sheet name="Old" sheetId="2" ` + second + ` r:id="r2"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
			`<Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/>` +
			`<Relationship Id="r2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet2.xml"/>` +
			`</Relationships>`,
		"xl/worksheets/sheet1.xml": sheetOf("question", "answer", "58 + 27", "85"),
		"xl/worksheets/sheet2.xml": sheetOf("question", "answer", "64 + 19", "83"),
	} {
		part, err := parts.Create(name)
		if err == nil {
			_, err = part.Write([]byte(text))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := parts.Close(); err != nil {
		t.Fatal(err)
	}
	return book.Bytes()
}

// sheetOf is a sheet of two columns.
func sheetOf(cells ...string) string {
	rows := ""
	for i := 0; i < len(cells); i += 2 {
		rows += fmt.Sprintf(`<row r="%d"><c r="A%[1]d" t="inlineStr"><is><t>%s</t></is></c>`+
			`<c r="B%[1]d" t="inlineStr"><is><t>%s</t></is></c></row>`, i/2+1, cells[i], cells[i+1])
	}
	return `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>` + rows + `</sheetData></worksheet>`
}

// A list says which lines it takes for no items and which line a row repeats; a workbook of two sheets says that it
// became two lists, each leads to the other, and the first page tells of both until they are in.
func TestNothingOfAListPassesUnsaid(t *testing.T) {
	browser, address := opened(t)
	_, text, dana := send(t, browser, address, "dana.csv", []byte("Dana's mix,\nquestion,answer\n58 + 27,85\n58 + 27,85\nTotal,2\n"))
	for _, says := range []string{"asks the same as line 3", "Line 1, title: Dana's mix", "Line 5, total: Total 2"} {
		if !strings.Contains(plainly(text), says) {
			t.Errorf("%q is not said: %s", says, text)
		}
	}
	_, text, _ = send(t, browser, address, "facts.csv", []byte("question,answer,skill\nhow many make ten with Ana's seven?,3,facts\n"))
	if !strings.Contains(text, "&#34;facts&#34; may be find the partner that makes 10; add and subtract two numbers within 20") {
		t.Errorf("skills are not said in words: %s", text)
	}
	_, text, _ = send(t, browser, address, "week.xlsx", twoSheets(t, ""))
	if !strings.Contains(text, "has 2 sheets with questions") {
		t.Errorf("two sheets came unsaid: %s", text)
	}
	if _, text = get(t, browser, address+"/"); !strings.Contains(text, "4 lists are not brought in yet") {
		t.Errorf("the week does not tell of four lists: %s", text)
	}
	if _, text, _ = post(t, browser, dana, url.Values{"do": {"accept"}}); !strings.Contains(plainly(text), "Look at “") {
		t.Errorf("a list that came in does not lead to the next: %s", text)
	}
}
