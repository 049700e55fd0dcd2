package desk_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

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
