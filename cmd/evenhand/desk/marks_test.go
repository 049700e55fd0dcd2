package desk_test

import (
	"archive/zip"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"
)

// toMark is a desk on which a quiz of three sums in two forms was made and 24 pupils are in class 2A; path
// is that of its bank.
func toMark(t *testing.T, change ...func(*desk.Options)) (browser *http.Client, address, grid string, path string) {
	t.Helper()
	browser, address, b := openedWithBank(t, change...)
	if err := b.SetReview(bank.Review{Anyone: true, By: "MK", At: wednesday}); err != nil {
		t.Fatal(err)
	}
	writeItems(t, browser, address, 12)
	status, text, at := post(t, browser, address+"/plans", planned("make", "3 add-two-digit"))
	if status != http.StatusOK || !strings.Contains(at, "/quizzes/") {
		t.Fatalf("no quiz: %d at %s: %s", status, at, text)
	}
	grid = strings.Replace(at, "/quizzes/", "/marks/", 1)
	if status, text, at := post(t, browser, grid+"/class", url.Values{"codes": {"P01-P24"}, "class": {"2A"}}); status != http.StatusOK ||
		strings.Count(text, "<tr id=") != 24 {
		t.Fatalf("no class: %d at %s: %s", status, at, text)
	}
	return browser, address, grid, b.Path()
}

// kept reads what is kept of class 2A: the quiz and the papers by pupil.
func kept(t *testing.T, path string) (quiz results.Quiz, papers map[string]results.Paper) {
	t.Helper()
	s, err := results.Open(results.Path(path), bank.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	quizzes, err := s.Quizzes()
	if err != nil || len(quizzes) != 1 {
		t.Fatalf("%d quizzes: %v", len(quizzes), err)
	}
	list, err := s.Papers(quizzes[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	papers = map[string]results.Paper{}
	for _, p := range list {
		papers[p.Pupil] = p
	}
	return quizzes[0], papers
}

// rowOf is a row as its form sends it.
func rowOf(pupil string, revision int, form string, cells ...string) url.Values {
	row := url.Values{"class": {"2A"}, pupil + ".revision": {fmt.Sprint(revision)}, pupil + ".form": {form}}
	for i, text := range cells {
		row.Set(fmt.Sprint(pupil, ".", i+1), text)
	}
	return row
}

// Without any script: what is typed is saved by the button, shown with what it suggests, and what can be
// no answer is kept as a question that doesn't count.
func TestMarkByForms(t *testing.T) {
	browser, address, grid, path := toMark(t)
	_, text := get(t, browser, grid+"?class=2A")
	asks := regexp.MustCompile(`P01, 1: (\d+) &#43; (\d+)`).FindStringSubmatch(text)
	if asks == nil {
		t.Fatal(text)
	}
	sum := func(a, b string) (n int) {
		var x, y int
		fmt.Sscan(a, &x)
		fmt.Sscan(b, &y)
		return x + y
	}(asks[1], asks[2])
	form := rowOf("P01", 0, "A", fmt.Sprint(sum), "x", "blue")
	for name, values := range rowOf("P02", 0, "B", "", "", "") {
		form[name] = values
	}
	status, text, at := post(t, browser, grid, form)
	if status != http.StatusOK || !strings.Contains(at, "saved") ||
		!strings.Contains(text, "no mark and can&#39;t be an answer") || !strings.Contains(text, "1 of 24 papers marked, 1 answer is to be settled") {
		t.Fatalf("%d at %s: %s", status, at, text)
	}
	_, papers := kept(t, path)
	want := []results.Answer{{State: results.Right, Written: fmt.Sprint(sum)}, {State: results.Wrong}, {State: results.NotReached, Written: "blue"}}
	if p := papers["P01"]; len(papers) != 1 || !slices.Equal(p.Answers, want) || p.By != "MK" || p.Form != "A" {
		t.Errorf("kept: %+v", papers)
	}
	if right, of := papers["P01"].Score(); right != 1 || of != 2 {
		t.Errorf("a question counts: %d of %d", right, of)
	}

	// The question is settled, the rest stays; who types only what is wrong says that the rest is right; one is absent.
	post(t, browser, grid, rowOf("P01", 1, "A", fmt.Sprint(sum), "x", "wrote blue"))
	form = rowOf("P03", 0, "", "", "11", "")
	form.Set("rest", "right")
	post(t, browser, grid, form)
	post(t, browser, grid, rowOf("P04", 0, "-", "", "", ""))
	_, papers = kept(t, path)
	for pupil, want := range map[string]string{"P01": "right wrong wrong", "P03": "right wrong right", "P04": "absent absent absent"} {
		var states []string
		for _, a := range papers[pupil].Answers {
			states = append(states, string(a.State))
		}
		if got := strings.Join(states, " "); got != want {
			t.Errorf("%s: %s, want %s", pupil, got, want)
		}
	}

	// Refused with a word, and nothing kept: no form of the quiz, nobody of the class.
	if status, text, _ := post(t, browser, grid, rowOf("P05", 0, "Z", "1", "1", "1")); status != http.StatusConflict ||
		!strings.Contains(text, "is no form of this quiz") || !strings.Contains(text, `value="Z"`) {
		t.Errorf("%d: %s", status, text)
	}
	if status, _, _ := post(t, browser, grid, rowOf("P25", 0, "A", "1", "1", "1")); status != http.StatusBadRequest {
		t.Errorf("a stranger: %d", status)
	}
	if _, after := kept(t, path); len(after) != 3 {
		t.Errorf("%d papers", len(after))
	}
	if status, text := get(t, browser, address+"/marks"); status != http.StatusOK || !strings.Contains(text, "3 of 24 papers marked") {
		t.Errorf("%d: %s", status, text)
	}
}

// Two people mark one class: what both changed is held and shown, what only one of them changed is kept, and
// an old page overwrites nothing that it only showed.
func TestTwoMarkOneClass(t *testing.T) {
	browser, _, grid, path := toMark(t)
	post(t, browser, grid, rowOf("P01", 0, "A", "x", "", ""))
	if status, _, _ := post(t, browser, grid, rowOf("P01", 0, "A", "", "x", "")); status != http.StatusOK {
		t.Errorf("another cell: %d", status)
	}
	if status, text, _ := post(t, browser, grid, rowOf("P01", 0, "A", "✓", "", "")); status != http.StatusConflict ||
		!strings.Contains(text, "marked this paper meanwhile") ||
		!strings.Contains(text, `name="P01.revision" value="2"`) {
		t.Errorf("the same cell: %d: %s", status, text)
	}
	if status, _, _ := post(t, browser, grid, rowOf("P01", 0, "A", "", "", "")); status != http.StatusOK {
		t.Errorf("nothing changed: %d", status)
	}
	_, papers := kept(t, path)
	if got := papers["P01"]; got.Revision != 2 || got.Answers[0].State != results.Wrong || got.Answers[1].State != results.Wrong {
		t.Errorf("%+v", got)
	}
	if status, _, _ := post(t, browser, grid, rowOf("P01", 2, "A", "✓", "x", "")); status != http.StatusOK {
		t.Errorf("with both seen: %d", status)
	}
	if _, papers := kept(t, path); papers["P01"].Answers[0].State != results.Right {
		t.Errorf("%+v", papers["P01"])
	}
}

// One item of all pupils leaves the others as they are.
func TestMarkByItem(t *testing.T) {
	browser, _, grid, path := toMark(t)
	post(t, browser, grid, rowOf("P01", 0, "A", "x", "x", "x"))
	_, text := get(t, browser, grid+"?class=2A&by=item&item=2")
	if strings.Count(text, `data-cell`) != 24 || !strings.Contains(text, `name="P24.2"`) || strings.Contains(text, `name="P24.1"`) {
		t.Fatalf("%d cells: %s", strings.Count(text, `data-cell`), text)
	}
	form := url.Values{
		"class": {"2A"}, "by": {"item"}, "item": {"2"},
		"P01.revision": {"1"}, "P01.2": {"✓"}, "P02.revision": {"0"}, "P02.2": {"✓"}, "P03.revision": {"0"}, "P03.2": {""},
	}
	if status, _, at := post(t, browser, grid, form); status != http.StatusOK || !strings.Contains(at, "item=2") {
		t.Errorf("%d at %s", status, at)
	}
	_, papers := kept(t, path)
	if len(papers) != 2 || papers["P01"].Answers[0].State != results.Wrong || papers["P01"].Answers[1].State != results.Right ||
		papers["P02"].Answers[0].State != results.NotReached || papers["P02"].Form != "B" {
		t.Errorf("%+v", papers)
	}
}

// Rows of a spreadsheet are read as the command reads a grid; what is set aside is shown and can be mended.
func TestPasteMarks(t *testing.T) {
	browser, _, grid, path := toMark(t)
	paste := func(text string) (int, string) {
		status, page, _ := post(t, browser, grid+"/paste", url.Values{"class": {"2A"}, "grid": {text}})
		return status, page
	}
	if status, text := paste("P01\tA\t1\t1\t1"); status != http.StatusUnprocessableEntity || !strings.Contains(text, "no heading") {
		t.Errorf("%d: %s", status, text)
	}
	status, text := paste("pupil\tform\t1\t2\t3\nP01\tA\t✓\t✓\tx\nP02\tB\t✓\tperhaps\tx\nP99\tA\t✓\t✓\t✓\n")
	if status != http.StatusUnprocessableEntity || !strings.Contains(text, "3 rows read: 1 taken (1 new") ||
		!strings.Contains(text, "P99 is not in the class") || !strings.Contains(text, "perhaps\tx") {
		t.Errorf("%d: %s", status, text)
	}
	if _, papers := kept(t, path); len(papers) != 1 || papers["P01"].Answers[2].State != results.Wrong {
		t.Errorf("%+v", papers)
	}
	if status, text := paste("pupil\tform\t1\t2\t3\nP02\tB\t✓\tx\tx\n"); status != http.StatusOK || !strings.Contains(text, "1 taken (1 new") {
		t.Errorf("%d: %s", status, text)
	}
}

// Names never get in, and nothing of the pupils is seen without the right to mark.
func TestMarksArePrivate(t *testing.T) {
	browser, address, grid, _ := toMark(t)
	if status, text, _ := post(t, browser, grid+"/class", url.Values{"codes": {"Ada1"}, "class": {"2A"}}); status != http.StatusUnprocessableEntity ||
		!strings.Contains(text, "looks like a name") || !strings.Contains(text, `value="Ada1"`) {
		t.Errorf("%d: %s", status, text)
	}
	if status, _, _ := post(t, browser, grid+"/class", url.Values{"codes": {"P30"}, "class": {"../2A"}}); status != http.StatusBadRequest {
		t.Errorf("a class's name: %d", status)
	}
	for _, path := range []string{"/marks", "/class", strings.TrimPrefix(grid, address)} {
		if status, _ := get(t, http.DefaultClient, address+path); status != http.StatusUnauthorized {
			t.Errorf("%s without the right: %d", path, status)
		}
	}
}

// The class's page tells what the papers do, and the caution stands on it.
func TestClassPage(t *testing.T) {
	browser, address, grid, path := toMark(t)
	if status, text := get(t, browser, address+"/class?class=2A"); status != http.StatusOK ||
		!strings.Contains(text, "No paper of this class is marked yet") {
		t.Errorf("%d: %s", status, text)
	}
	for i := range 24 {
		pupil := fmt.Sprintf("P%02d", i+1)
		third := map[bool]string{true: "x", false: "✓"}[i%3 == 0]
		if status, text, _ := post(t, browser, grid, rowOf(pupil, 0, "", "✓", "✓", third)); status != http.StatusOK {
			t.Fatalf("%d: %s", status, text)
		}
	}
	status, text := get(t, browser, address+"/class?class=2A")
	for _, want := range []string{"24 of 24 papers marked", "64 of 72 right", "A short quiz is a hint", "P24", "2.NBT"} {
		if status != http.StatusOK || !strings.Contains(text, want) {
			t.Errorf("%d, without %q: %s", status, want, text)
		}
	}
	if _, papers := kept(t, path); len(papers) != 24 {
		t.Errorf("%d papers", len(papers))
	}
	if _, text := get(t, browser, address+"/class?class=2B"); strings.Contains(text, "P24") {
		t.Error("another class's page shows these pupils")
	}
}

// Who was absent gets a make-up form in one click; it is marked with its quiz.
func TestMakeUpForm(t *testing.T) {
	browser, address, grid, path := toMark(t)
	post(t, browser, grid, rowOf("P01", 0, "-", "", "", ""))
	quiz := strings.Replace(grid, "/marks/", "/quizzes/", 1)
	if _, text := get(t, browser, address+"/class?class=2A"); !strings.Contains(text, strings.TrimPrefix(quiz, address)+"/makeup") {
		t.Errorf("no button: %s", text)
	}
	status, text, at := post(t, browser, quiz+"/makeup", nil)
	if status != http.StatusOK || at == quiz {
		t.Fatalf("%d at %s: %s", status, at, text)
	}
	if !strings.Contains(text, `"pupils-hint">P01</textarea>`) {
		t.Errorf("the make-up form is not offered to who was absent: %s", text)
	}
	late := strings.Replace(at, "/quizzes/", "/marks/", 1)
	if status, text, _ := post(t, browser, late, rowOf("P01", 1, "C", "x", "x", "✓")); status != http.StatusOK ||
		!strings.Contains(text, "1 of 24") {
		t.Errorf("%d: %s", status, text)
	}
	if quiz, papers := kept(t, path); len(quiz.Forms) != 3 || papers["P01"].Form != "C" || papers["P01"].Answers[2].State != results.Right {
		t.Errorf("%d forms, %+v", len(quiz.Forms), papers)
	}
	if _, text := get(t, browser, grid+"?class=2A"); !strings.Contains(text, `name="P03.form" value="A"`) {
		t.Error("the make-up form is proposed to who sits with the class")
	}
	// It says what it is, and that a child has sat it: nothing in it is swapped any more.
	if _, text := get(t, browser, at); !strings.Contains(text, "This form is for who was absent") ||
		!strings.Contains(text, "1 paper is marked") || strings.Contains(text, "/swap") {
		t.Errorf("a make-up form that was sat: %s", text)
	}
	if status, _, _ := post(t, browser, at+"/swap", url.Values{"place": {"C1"}}); status != http.StatusBadRequest {
		t.Errorf("an item of it is swapped: %d", status)
	}
	if _, text := get(t, browser, address+"/quizzes"); strings.Count(text, "a form for who was absent") != 1 {
		t.Errorf("the list of quizzes doesn't tell it apart: %s", text)
	}
	if status, text := get(t, browser, at+"/letter.pdf?lang=es"); status != http.StatusOK || !strings.HasPrefix(text, "%PDF") {
		t.Errorf("no letter home: %d %.200s", status, text)
	}
}

// pageObject is a page of a PDF (ISO 32000-1, 7.7.3.3).
var pageObject = regexp.MustCompile(`/Type /Page\b`)

// From the class's page to Monday's sheets: a folder with a page for the teacher, the same when it is asked for
// again; its items count as used in that week.
func TestPracticeFromTheClass(t *testing.T) {
	browser, address, grid, path := toMark(t)
	if status, _, _ := post(t, browser, address+"/class/practice", url.Values{"class": {"2A"}, "lang": {"en"}}); status != http.StatusBadRequest {
		t.Errorf("practice after nothing: %d", status)
	}
	post(t, browser, grid, rowOf("P24", 0, "-", "", "", ""))
	given, _ := kept(t, path)
	for i := range 6 {
		var wrote []string
		for _, item := range given.Forms[i%2].Items {
			asked, _ := item.Task()
			wrote = append(wrote, asked.Missteps()[0].Answer)
		}
		post(t, browser, grid, rowOf(fmt.Sprintf("P%02d", i+1), 0, "", wrote...))
	}
	var folders [2]string
	for i := range folders {
		status, text, _ := post(t, browser, address+"/class/practice", url.Values{"class": {"2A"}, "lang": {"en"}})
		if status != http.StatusOK {
			t.Fatalf("no practice: %d %s", status, text)
		}
		folders[i] = text
	}
	if folders[0] != folders[1] {
		t.Error("asked for again, the sheets differ")
	}
	folder, err := zip.NewReader(strings.NewReader(folders[0]), int64(len(folders[0])))
	if err != nil {
		t.Fatal(err)
	}
	pages := map[string]int{} // of each file
	for _, file := range folder.File {
		in, err := file.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(in)
		if err != nil {
			t.Fatal(err)
		}
		pages[file.Name] = len(pageObject.FindAll(text, -1))
	}
	// The six made the same mistakes and are one group; each gets a copy of its sheet and of its recheck.
	if pages["teacher.pdf"] == 0 || pages["group-1.pdf"] == 0 || pages["all-monday.pdf"] != 6*pages["group-1.pdf"] ||
		pages["all-wednesday.pdf"] != 6*pages["group-1-recheck.pdf"] {
		t.Errorf("the folder holds these pages: %v", pages)
	}
}
