package main

import (
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"evenhand/bank/store/storetest"
)

// An owner goes back to a backup from the team's page: after a proof, seeing what would be lost and typing the day.
// The bank as it was is backed up first, so that the way forward again is the same. Who may come in stays as it is.
func TestTeamGoesBackFromThePage(t *testing.T) { goesBackFromThePage(t, "team.bank") }

// The same of a bank in a database, without the desk's people noticing a difference.
func TestTeamGoesBackInADatabase(t *testing.T) {
	goesBackFromThePage(t, storetest.NewServer(t).URL("postgres")+"?bank=alder-hill-2")
}

func goesBackFromThePage(t *testing.T, bank string) {
	t.Chdir(t.TempDir())
	t.Setenv("EVENHAND_BY", "MK")
	t.Setenv("EVENHAND_BANK", bank)
	mustDo(t, "init", "review --anyone on")
	link, _ := deskOpen(t, "serve --listen 127.0.0.1:0 --backups copies", `(http://127\S+/invited/\S+)`)
	join := func(link, name string) visitor {
		v := comeIn(t, link)
		v.read(v.browser.PostForm(link, url.Values{"name": {name}, "password": {"chalk and slate"}}))
		return v
	}
	owner := join(link, "MK")
	invited := func() string {
		page := owner.post("/team/invite?role=writer&marks=yes")
		return regexp.MustCompile(`http://127[^<]+/invited/\w+`).FindString(page)
	}
	other := join(invited(), "SV")
	owner.post("/items?task=47+%2B+36&ready=yes")
	owner.post("/team/copies")
	copies := func() []string {
		list, err := filepath.Glob("copies/evenhand-????-??-??-??????.bank")
		must(t, err)
		return list
	}
	if len(copies()) != 1 {
		t.Fatalf("the backups are %v", copies())
	}
	name := filepath.Base(copies()[0])
	day := name[len("evenhand-"):][:len("2006-01-02")]
	owner.post("/items?task=58+%2B+27&ready=yes")
	owner.post("/team/people/SV/remove")
	late := join(invited(), "JK")
	page := owner.text("/team/copies/" + name)
	for _, want := range []string{"1 item that was added since", "undamaged", "holds no marks", "type the day of the backup, " + day} {
		if !strings.Contains(page, want) {
			t.Errorf("before, the page lacks %q: %s", want, page)
		}
	}
	try := func(v visitor, sure string) int {
		answer, err := v.browser.PostForm(v.address+"/team/copies/"+name+"/restore", url.Values{"sure": {sure}})
		must(t, err)
		must(t, answer.Body.Close())
		return answer.StatusCode
	}
	if status := try(owner, "yes"); status != http.StatusBadRequest {
		t.Errorf("without the day it gives %d", status)
	}
	if status := try(late, day); status != http.StatusForbidden {
		t.Errorf("a writer goes back: %d", status)
	}
	back := func(to, day string) {
		t.Helper()
		owner.post("/team/copies/" + to + "/restore?sure=" + day)
		for began := time.Now(); time.Since(began) < 30*time.Second; time.Sleep(50 * time.Millisecond) {
			answer, err := owner.browser.Get(owner.address + "/team")
			if err == nil && strings.Contains(owner.read(answer, err), "is as it was in "+to) {
				return
			}
		}
		t.Fatalf("the bank did not go back to %s", to)
	}
	back(name, day)
	if page := owner.text("/items"); !strings.Contains(page, "47 plus 36") || strings.Contains(page, "58 plus 27") {
		t.Errorf("the items are not those of the backup: %s", page)
	}
	if page := late.text("/items"); strings.Contains(page, `name="password"`) {
		t.Error("who came since has to sign in again")
	}
	if page := other.text("/items"); !strings.Contains(page, `name="password"`) {
		t.Error("who was removed since is back")
	}
	before := copies()
	if len(before) != 2 {
		t.Fatalf("the bank was not backed up before: %v", before)
	}
	last := filepath.Base(before[1])
	back(last, last[len("evenhand-"):][:len("2006-01-02")])
	if page := owner.text("/items"); !strings.Contains(page, "58 plus 27") {
		t.Errorf("there is no way forward: %s", page)
	}
	must(t, os.WriteFile(filepath.Join("copies", name), []byte("damaged"), 0o600))
	if status := try(owner, day); status != http.StatusBadRequest {
		t.Errorf("a damaged backup gives %d", status)
	}
	if page := owner.text("/team/copies/" + name); !strings.Contains(page, "damaged:") || strings.Contains(page, `name="sure"`) {
		t.Errorf("a damaged backup can be gone back to: %s", page)
	}
}
