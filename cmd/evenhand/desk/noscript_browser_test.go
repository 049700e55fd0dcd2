package desk_test

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenhand/testdata/outside"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// clicks scrolls to what the selector finds and clicks on it with the mouse.
func (w window) clicks(selector string) { w.t.Helper(); w.do(chromedp.Click(chromedp.CSS(selector))) }

// types puts the text in the place of what a field holds, by keyboard.
func (w window) types(selector, text string) {
	w.t.Helper()
	w.clicks(selector)
	tells[bool](w, "document.activeElement.select() === undefined")
	w.press(text)
}

// The whole way without scripts, by a real browser's forms alone: a list is sent, a row mended, the list accepted and
// taken back; a plan gets a row and loses one, can't be met, is changed by the button of a way out and becomes a quiz; an
// item is swapped, a place moved, one kept and the others chosen anew; the quiz is taken back. Enter in a field takes out
// nothing.
func TestListPlanAndQuizWithoutScripts(t *testing.T) {
	needsBrowser(t, "a list, a plan and a quiz in a browser without scripts")
	browser, address := opened(t)
	writeItems(t, browser, address, 10)
	file := filepath.Join(t.TempDir(), "rb.csv")
	if err := os.WriteFile(file, []byte("Question,Answer\n58 + 27,75\n64 + 19,83\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	w := openWindow(t, browser, address)
	w.noScripts()
	w.open(address + "/lists")
	w.do(chromedp.SetUploadFiles(chromedp.CSS("input[type=file]"), []string{file}))
	w.clicks(".drop button")
	w.shows("1 row will be added, 0 are here already, 1 row is left to mend")
	w.types("textarea[aria-invalid]", "85")
	w.clicks("#mend ~ .row button[value=save]")
	w.shows("2 rows will be added")
	w.clicks("button[value=accept]")
	w.shows("2 items added")
	w.clicks("form[action$='/back'] button")
	w.shows("taken back")

	w.open(address + "/plans/new")
	skill := func(row int) string { return fmt.Sprintf("li.row:nth-child(%d) [name=skill]", row) }
	choose := func(row int, value string) { w.do(chromedp.SetValue(chromedp.CSS(skill(row)), value)) }
	rows := func() int { return tells[int](w, "document.querySelectorAll('[name=skill]').length") }
	choose(1, "add-two-digit")
	w.clicks("button[value=add]")
	w.until("three rows", func() bool { return rows() == 3 })
	choose(3, "clock-half-hour")
	w.types("li.row:nth-child(3) [name=count]", "5")
	w.clicks("button[value='drop:1']")
	w.until("two rows", func() bool { return rows() == 2 })
	w.types("[name=title]", "Quick check"+kb.Enter)
	w.shows("mends it")
	if rows() != 2 {
		t.Errorf("Enter in the title leaves %d rows", rows())
	}
	w.clicks("#fits button[value^=way]")
	w.shows("The plan can be met")
	w.clicks("button[value=make]")
	w.at("/quizzes/")
	asked := func() string {
		return tells[string](w, "[...document.querySelectorAll('.places .under a')].map(a => a.pathname).join(' ')")
	}
	pressed := func(selector string) {
		t.Helper()
		before := asked()
		w.clicks(selector)
		w.until("another quiz after "+selector, func() bool {
			return tells[string](w, "document.readyState") == "complete" && asked() != before && asked() != ""
		})
	}
	pressed("button[value=A2]")
	pressed("button[name=down][value='1']")
	stays := strings.Fields(asked())[0]
	w.clicks("input[name=keep][value=A1]")
	pressed("button[name=others]")
	if now := strings.Fields(asked())[0]; now != stays {
		t.Errorf("%s was to stay, and %s stands there", stays, now)
	}
	w.clicks("form[action$='/back'] button")
	w.shows("No quiz was made yet")
}

// printed is one answer of the desk with a file.
type printed struct{ asked, text string }

// Everything prints without scripts, by a real browser's links and forms: each form's sheet, large print and key, all answers
// and the letter home, in both languages, and the class's sheets with names, large ones, too. pdftotext (poppler) reads what
// is on them.
func TestPrintingWithoutScripts(t *testing.T) {
	needsBrowser(t, "printing in a browser without scripts")
	outside.Full(t, "printing in a browser without scripts", "pdftotext")
	browser, address, grid, _ := toMark(t)
	desk, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	answers := make(chan printed, 100)
	line := &httputil.ReverseProxy{
		Rewrite: func(r *httputil.ProxyRequest) { r.SetURL(desk); r.Out.Host = r.In.Host },
		ModifyResponse: func(r *http.Response) error {
			if r.Header.Get("Content-Type") != "application/pdf" {
				return nil
			}
			text, err := io.ReadAll(r.Body)
			r.Body = io.NopCloser(bytes.NewReader(text))
			answers <- printed{r.Request.URL.RequestURI(), string(text)}
			return err
		},
	}
	proxy := httptest.NewServer(line)
	t.Cleanup(proxy.Close)
	w := openWindow(t, browser, address)
	through, err := url.Parse(proxy.URL)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range browser.Jar.Cookies(desk) {
		w.cookie(strings.TrimSuffix(c.Name, desk.Port())+through.Port(), c.Value, proxy.URL)
	}
	w.noScripts()
	w.open(proxy.URL + strings.Replace(strings.TrimPrefix(grid, address), "/marks/", "/quizzes/", 1))
	prints := func(what, selector string, says ...string) string {
		t.Helper()
		w.clicks(selector)
		select {
		case file := <-answers:
			text := textOfPDF(t, file.text)
			for _, words := range says {
				if !strings.Contains(text, words) {
					t.Errorf("%s (%s) doesn't say %q: %s", what, file.asked, words, text)
				}
			}
			return file.text
		case <-time.After(time.Minute):
			t.Fatalf("%s prints nothing", what)
		}
		return ""
	}
	sheet := prints("a sheet", "a[href*='form-A.pdf?lang']", "Friday check", "Write the missing number")
	if large := prints("large print", "a[href*='form-A.pdf?large']", "Friday check", "Write the missing number"); large == sheet {
		t.Error("large print is like the other")
	}
	prints("a key", "a[href*='form-B-key.pdf']", "form B", "Answer key", "What wrong answers suggest")
	prints("all answers", "a[href*='answers.pdf']", "form A", "form B", "Answer key")
	prints("the letter home", "a[href*='letter.pdf']", "Dear families", "Queridas familias")
	roster := "P01, Ana Lucía Ñandú\rP02, Søren"
	w.types("[name=pupils]", roster)
	prints("the class's sheets", ".printing button", "Ana Lucía Ñandú", "Søren", "A 2026-W48", "B 2026-W48")
	w.clicks("[name=large]")
	prints("the class's large sheets", ".printing button", "Ana Lucía Ñandú", "Søren")
	w.clicks(".language button")
	w.shows("Imprimir las hojas del grupo")
	prints("a Spanish sheet", "a[href*='form-A.pdf?lang=es']", "Escribe en cada cuadro el número que falta")
	prints("a Spanish key", "a[href*='form-A-key.pdf?lang=es']", "Respuestas", "Qué sugieren las respuestas equivocadas")
	w.types("[name=pupils]", roster)
	prints("the class's Spanish sheets", ".printing button", "Nombre Ana Lucía Ñandú", "Escribe en cada cuadro el número que falta")
}

// textOfPDF is what a PDF says, in words with one space between them.
func textOfPDF(t *testing.T, file string) string {
	t.Helper()
	read := exec.Command("pdftotext", "-layout", "-", "-")
	read.Stdin = strings.NewReader(file)
	text, err := read.Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(text)), " ")
}
