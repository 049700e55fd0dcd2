package desk_test

import (
	"context"
	"fmt"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/cmd/evenhand/desk"
)

// teamDesk serves a desk for several people and gives the link that makes its owner.
func teamDesk(t *testing.T, now func() time.Time) (address, link string) {
	t.Helper()
	address, link, _ = teamDeskWithBank(t, now)
	return address, link
}

func teamDeskWithBank(t *testing.T, now func() time.Time) (address, link string, b *bank.Bank) {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := desk.New(b, desk.Options{Store: b.Store(), Now: now})
	if err != nil {
		t.Fatal(err)
	}
	path, err := d.FirstOwner(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(d.Handler())
	t.Cleanup(func() {
		server.Close()
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	})
	return server.URL, server.URL + path, b
}

func newBrowser(t *testing.T) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	return &http.Client{Jar: jar}
}

// joins lets somebody in by a link.
func joins(t *testing.T, link, name string) *http.Client {
	t.Helper()
	browser := newBrowser(t)
	if status, text := get(t, browser, link); status != http.StatusOK || !strings.Contains(text, `name="password"`) {
		t.Fatalf("the link of %s gives %d: %s", name, status, text)
	}
	if status, text, at := post(t, browser, link, url.Values{"name": {name}, "password": {"chalk and slate"}}); status != http.StatusOK ||
		!strings.HasSuffix(at, "/") {
		t.Fatalf("%s can't come in: %d at %s: %s", name, status, at, text)
	}
	return browser
}

var linkInPage = regexp.MustCompile(`<code>(http://[^<]+/invited/\w+)</code>`)

func invite(t *testing.T, owner *http.Client, address, role, marks string) string {
	t.Helper()
	status, text, _ := post(t, owner, address+"/team/invite", url.Values{"role": {role}, "marks": {marks}})
	link := linkInPage.FindStringSubmatch(text)
	if status != http.StatusOK || link == nil {
		t.Fatalf("no invitation: %d %s", status, text)
	}
	return link[1]
}

func TestTeamComesInByLinksWithRoles(t *testing.T) {
	address, first := teamDesk(t, nil)
	if status, text := get(t, newBrowser(t), address+"/items"); status != http.StatusOK || !strings.Contains(text, `name="password"`) {
		t.Errorf("a stranger is not asked to sign in: %d %s", status, text)
	}
	owner := joins(t, first, "MK")
	if status, _ := get(t, newBrowser(t), first); status != http.StatusGone {
		t.Errorf("the owner's link works twice: %d", status)
	}
	reader := joins(t, invite(t, owner, address, "reader", ""), "SV")
	writer := joins(t, invite(t, owner, address, "writer", "yes"), "JK")
	for _, c := range []struct {
		who    *http.Client
		path   string
		form   url.Values
		wanted int
		what   string
	}{
		{reader, "/items", nil, 200, "a reader looks"},
		{reader, "/items", url.Values{"task": {"47 + 36"}}, 403, "a reader can't write"},
		{writer, "/items", url.Values{"task": {"47 + 36"}}, 200, "a writer writes"},
		{writer, "/team/invite", url.Values{"role": {"owner"}}, 403, "a writer can't invite"},
		{writer, "/team/people/SV/remove", url.Values{}, 403, "a writer can't remove"},
		{owner, "/team/people/MK/remove", url.Values{}, 400, "the last owner stays"},
		{owner, "/team/people/MK", url.Values{"role": {"reader"}}, 400, "the last owner stays one"},
		{owner, "/team/people/QQ", url.Values{"role": {"reader"}}, 404, "nobody"},
		{owner, "/team/people/SV", url.Values{"role": {"writer"}}, 200, "an owner promotes"},
		{reader, "/items", url.Values{"task": {"27 + 35"}}, 200, "who was promoted writes"},
		{owner, "/team/people/JK/remove", url.Values{}, 200, "an owner removes"},
	} {
		var status int
		var text string
		if c.form == nil {
			status, text = get(t, c.who, address+c.path)
		} else {
			status, text, _ = post(t, c.who, address+c.path, c.form)
		}
		if status != c.wanted {
			t.Errorf("%s: %d, want %d: %.400s", c.what, status, c.wanted, text)
		}
	}
	if _, text := get(t, writer, address+"/items"); !strings.Contains(text, `name="password"`) {
		t.Error("who was removed is still signed in")
	}
}

// Two owners take each other's rights, or take each other out, at once: one is the first, and the other is no owner any more
// and takes nothing away. What who lost the right has invited is void.
func TestTwoOwnersTakeEachOthersRights(t *testing.T) {
	address, first := teamDesk(t, nil)
	third := joins(t, first, "MK")
	for round := range 8 {
		names := []string{fmt.Sprint("A", round), fmt.Sprint("B", round)}
		var owners []*http.Client
		var links []string
		for _, name := range names {
			owners = append(owners, joins(t, invite(t, third, address, "owner", "yes"), name))
			links = append(links, invite(t, owners[len(owners)-1], address, "owner", "yes"))
		}
		statuses := make([]int, 2)
		var both sync.WaitGroup
		for i, owner := range owners {
			both.Go(func() {
				path, form := "/team/people/"+names[1-i], url.Values{"role": {"reader"}}
				if round%2 == 1 {
					path, form = path+"/remove", nil
				}
				answer, err := owner.PostForm(address+path, form)
				if err != nil {
					t.Error(err)
					return
				}
				statuses[i] = answer.StatusCode
				answer.Body.Close()
			})
		}
		both.Wait()
		for i, link := range links {
			open, _ := get(t, newBrowser(t), link)
			_, team := get(t, third, address+"/team")
			owns := regexp.MustCompile(`action="/team/people/` + names[i] + `">(?s:.{0,300})value="owner" selected`).MatchString(team)
			if took := statuses[i] == http.StatusOK; owns != took || (open == http.StatusOK) != took {
				t.Errorf("round %d, %s: gets %d, is an owner: %v, the link of theirs gives %d", round, names[i], statuses[i], owns, open)
			}
		}
		if statuses[0] == statuses[1] {
			t.Errorf("round %d: both get %d", round, statuses[0])
		}
	}
}

func TestSignInIsSlowedDown(t *testing.T) {
	now := wednesday
	address, first := teamDesk(t, func() time.Time { return now })
	joins(t, first, "MK")
	try := func(password string) int {
		status, _, _ := post(t, newBrowser(t), address+"/signin", url.Values{"name": {"mk"}, "password": {password}})
		return status
	}
	for range 3 {
		if status := try("chalk and slates"); status != http.StatusUnauthorized {
			t.Fatalf("a wrong password gives %d", status)
		}
	}
	if status := try("chalk and slate"); status != http.StatusTooManyRequests {
		t.Errorf("right after three failures the right password gives %d", status)
	}
	now = now.Add(2 * time.Second)
	if status := try("chalk and slate"); status != http.StatusOK {
		t.Errorf("after waiting the right password gives %d", status)
	}
	if status := try("chalk and slates"); status != http.StatusUnauthorized {
		t.Errorf("after a success failures are not counted anew: %d", status)
	}
}

func TestInvitationsExpire(t *testing.T) {
	now := wednesday
	_, first := teamDesk(t, func() time.Time { return now })
	now = now.Add(8 * 24 * time.Hour)
	if status, text := get(t, newBrowser(t), first); status != http.StatusGone || !strings.Contains(text, "too old") {
		t.Errorf("an old link gives %d: %s", status, text)
	}
}
