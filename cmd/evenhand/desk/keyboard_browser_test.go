package desk_test

import (
	"strings"
	"sync/atomic"
	"testing"

	"evenhand/bank/results"
	"evenhand/cmd/evenhand/desk"

	"github.com/chromedp/chromedp/kb"
)

// at waits until the window shows an address that holds a part.
func (w window) at(part string) {
	w.t.Helper()
	w.until(part, func() bool {
		return strings.Contains(tells[string](w, "location.href"), part) && tells[string](w, "document.readyState") == "complete"
	})
}

// shows waits until the page says something.
func (w window) shows(text string) {
	w.t.Helper()
	w.until(text, func() bool {
		return strings.Contains(tells[string](w, "document.querySelector('main')?.textContent ?? ''"), text)
	})
}

// Items made, a term, backups, the check, what was done last, the demo school's banner and passes: each by Tab,
// Space, Enter and typing alone, with the focus to be seen.
func TestPagesByKeyboard(t *testing.T) {
	needsBrowser(t, "the desk's pages by keyboard alone")
	var away atomic.Bool
	var wentBack atomic.Value
	browser, address, _ := openedWithBank(t, func(o *desk.Options) {
		o.Copies = results.Copies{Dir: t.TempDir(), Keep: 3}
		o.ThrowAway = func() { away.Store(true) }
		o.Home = "http://127.0.0.1:1"
		o.Restore = func(path string) { wentBack.Store(path) }
	})
	w := openWindow(t, browser, address)
	press := func(selector, keys string) { w.tabTo(selector); w.press(keys) }

	w.open(address + "/generate")
	press("[name=skill]", "add two two")
	w.until("some of the items", func() bool { return tells[bool](w, "!!document.querySelector('#made .card')") })
	press("#made button:not([name])", kb.Enter)
	w.at("/items?skill=add-two-digit")

	w.open(address + "/terms/new")
	press("[name=name]", "Winter")
	press("form[action='/terms'] button", kb.Enter)
	w.at("/terms/Winter")

	w.open(address + "/team")
	press("form[action='/team/copies'] button", kb.Enter)
	w.shows(", undamaged")
	press("form[action='/team/check'] button", kb.Enter)
	w.shows("All is as it was written.")
	press("a[href^='/team/copies/']", kb.Enter)
	w.at("/team/copies/")
	day := tells[string](w, "document.querySelector('main').textContent.match(/[0-9]{4}-[0-9]{2}-[0-9]{2}/)[0]")
	press("[name=sure]", day+kb.Enter)
	w.until("the way back", func() bool { return wentBack.Load() != nil })

	w.open(address + "/activity")
	press("td a", kb.Enter)
	w.until("what was done", func() bool { return !strings.HasSuffix(tells[string](w, "location.href"), "/activity") })

	w.open(address + "/")
	press(".demo button", kb.Enter)
	w.shows("Your own bank is as it was.")
	if !away.Load() {
		t.Error("the demo school was not thrown away")
	}

	team, first := teamDesk(t, nil)
	w = w.another(joins(t, first, "MK"), team)
	w.open(team + "/passes")
	press("main [name=name]", "laptop"+kb.Enter)
	w.shows("Copy this token now")
	press("form[action='/passes/drop'] button", kb.Enter)
	w.shows("There is no pass yet")
	w.open(team + "/invited/nothing")
	w.shows("This invitation was used already or is too old")
	press("main a", kb.Enter)
	w.shows("The bank is empty")
}
