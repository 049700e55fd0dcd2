package desk

import (
	"encoding/base64"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/store"
	intake "evenhand/import"
	"evenhand/standards/words"
	"evenhand/testdata/formats"
)

// What a desk keeps in the bank's store, bucket by bucket, as it was typed off once: desks of all later
// times must read it, and write the same.
//
// MK's password is "chalk and slate" with the salt "abcdefghijklmnop". What argon2id makes of both is by the
// reference program of argon2 (RFC 9106; Debian's argon2 0~20171227): argon2 abcdefghijklmnop -id -t 2 -k 19456 -p 1 -l 32.
// The keys of the pass and the invitation are SHA-256 of "evenhand-letmein" and "come in", by sha256sum.
var keptByDesk = map[string]map[string]string{
	"desk people": {"mk": `{"name":"MK","role":"owner","marks":true,` +
		`"password":"YWJjZGVmZ2hpamtsbW5vcCud4w9/Xkx5L7SEl2w4TZZ9wE5p7HY03LEK6wk6hPMq","since":"2026-11-23T08:00:00Z"}`},
	"desk invitations": {"b6UBo1Gms8Mo11Q01LBdB91dMu-ZtkDc4fcM5Y1erwk": `{"role":"reader","marks":false,"by":"MK","until":"2026-11-30T08:00:00Z"}`},
	"desk tokens": {
		"6A-RHq1WriRrLg0k6Crdn9596i-14z98xGhkOkLpYKk": `{"person":"MK","name":"reports","made":"2026-11-24T08:00:00Z","used":"2026-11-25T00:00:00Z"}`,
	},
	"desk lists": {"L1": `{"ID":"L1","Name":"reyes.xlsx, Week 48","File":"f2a9b7012972f2b2b74339b1d4200e7a206fb090a6183394b2df2deff8ba5d56",` +
		`"Sheet":"Week 48","By":"JK","At":"2026-11-25T08:00:00Z","Left":["a picture"],"Unread":["Week 49"],"Revise":true,` +
		`"Columns":{"2":"answer"},"Encoding":"utf-16","LeaveOut":"first","Skill":"add-two-digit","Mends":{"row 3":{"1":"65 + 27"}},` +
		`"Accepted":{"By":"SV","At":"2026-11-25T09:00:00Z","Added":7,"Here":5},"Done":false}`},
	"desk list files": {"f2a9b7012972f2b2b74339b1d4200e7a206fb090a6183394b2df2deff8ba5d56": "question\n65 + 27\n"},
	// Until 24 December 2026, 8:00: seconds since 1970 in eight bytes, by date -u; then the values of the sessions' library.
	"desk sessions": {"aToken": "\x00\x00\x00\x00\x6b\x2c\xd1\x00" + gobOfMK},
}

var gobOfMK = func() string {
	values, err := base64.StdEncoding.DecodeString("JX8DAQL/gAABAgEIRGVhZGxpbmUB/4IAAQZWYWx1ZXMB/4QAAAAQ/4EFAQEEVGltZQH/ggAAACf/gwQBARdtYXBb" +
		"c3RyaW5nXWludGVyZmFjZSB7fQH/hAABDAEQAAAq/4ABDwEAAAAO4r7IAAAAAAD//wEBBnBlcnNvbgZzdHJpbmcMBAACTUsA")
	if err != nil {
		panic(err)
	}
	return string(values)
}()

var friday = time.Date(2026, time.November, 25, 8, 0, 0, 0, time.UTC)

// keptHere are the same things as the program knows them.
var (
	keptPerson = Person{Name: "MK", Role: Owner, Marks: true, Since: friday.AddDate(0, 0, -2),
		Password: "YWJjZGVmZ2hpamtsbW5vcCud4w9/Xkx5L7SEl2w4TZZ9wE5p7HY03LEK6wk6hPMq"}
	keptInvitation = Invitation{Role: Reader, By: "MK", Until: friday.AddDate(0, 0, 5)}
	keptPass       = pass{Sum: "6A-RHq1WriRrLg0k6Crdn9596i-14z98xGhkOkLpYKk", Person: "MK", Name: "reports",
		Made: friday.AddDate(0, 0, -1), Used: friday.Truncate(24 * time.Hour)}
	keptUpload = upload{
		ID: "L1", Name: "reyes.xlsx, Week 48", File: "f2a9b7012972f2b2b74339b1d4200e7a206fb090a6183394b2df2deff8ba5d56", Sheet: "Week 48",
		By: "JK", At: friday, Left: []*words.Told{words.Sayf("%s", "a picture")}, Unread: []string{"Week 49"}, Revise: true, Columns: map[int]string{2: "answer"},
		Encoding: "utf-16", LeaveOut: intake.LeaveOutFirst, Skill: "add-two-digit", Mends: map[string]map[int]string{"row 3": {1: "65 + 27"}},
		Accepted: &acceptance{By: "SV", At: friday.Add(time.Hour), Added: 7, Here: 5},
	}
)

// deskThatKept is a desk on a bank in which an earlier one kept all that.
func deskThatKept(t *testing.T) *Desk {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	must(t, err)
	must(t, b.Store().Update(t.Context(), func(w store.Writer) error {
		for bucket, entries := range keptByDesk {
			for key, value := range entries {
				if err := w.Put(bucket, []byte(key), []byte(value)); err != nil {
					return err
				}
			}
		}
		return nil
	}))
	d, err := New(b, Options{Store: b.Store(), Now: func() time.Time { return friday }})
	must(t, err)
	t.Cleanup(func() { d.Leave(); must(t, b.Close()) })
	return d
}

// A desk reads what earlier desks kept, each field for what it is.
func TestKeptByEarlierDesks(t *testing.T) {
	d, ctx := deskThatKept(t), t.Context()
	same := func(what string, got, want any, err error) {
		t.Helper()
		if must(t, err); !reflect.DeepEqual(got, want) {
			t.Errorf("%s\ngot  %+v\nwant %+v", what, got, want)
		}
	}
	person, err := d.people.signIn(ctx, "mk", "chalk and slate")
	same("who signs in", person, keptPerson, err)
	if _, err := d.people.signIn(ctx, "mk", "chalk and slat"); err != errPassword {
		t.Errorf("a wrong password: %v", err)
	}
	invitation, err := d.people.invited(ctx, "come in", friday)
	same("an invitation", invitation, keptInvitation, err)
	passes, err := d.people.passes(ctx, "")
	same("passes", passes, []pass{keptPass}, err)
	person, err = d.people.byToken(ctx, "evenhand-letmein", friday)
	same("whose pass it is", person, keptPerson, err)
	list, data, err := d.uploads.find(ctx, "L1")
	same("a list on its way", list, keptUpload, err)
	same("its file", string(data), "question\n65 + 27\n", nil)
	until, values, err := d.sessions.Codec.Decode([]byte(gobOfMK))
	same("a session", values, map[string]any{"person": "MK"}, err)
	same("how long it lasts", until, time.Date(2026, time.December, 24, 8, 0, 0, 0, time.UTC), nil)
	found, ok, err := sessions{d.o.Store, d.o.Now}.Find("aToken")
	same("the session kept", string(found), gobOfMK, err)
	if !ok {
		t.Error("the session is over")
	}
	if _, ok, _ := (sessions{d.o.Store, func() time.Time { return until.Add(time.Second) }}).Find("aToken"); ok {
		t.Error("the session lasts longer than it should")
	}
}

// What a desk keeps it writes as earlier ones did.
func TestKeptAsByEarlierDesks(t *testing.T) {
	d, ctx := deskThatKept(t), t.Context()
	s := d.o.Store
	must(t, s.Update(ctx, func(w store.Writer) error {
		for bucket, entries := range keptByDesk {
			for key := range entries {
				must(t, w.Delete(bucket, []byte(key)))
			}
		}
		must(t, putPerson(w, keptPerson))
		must(t, putPass(w, keptPass))
		return nil
	}))
	word, err := d.people.invite(ctx, keptInvitation)
	must(t, err)
	must(t, d.uploads.add(ctx, []byte("question\n65 + 27\n"), []upload{keptUpload}))
	must(t, sessions{s, d.o.Now}.Commit("aToken", []byte(gobOfMK), time.Date(2026, time.December, 24, 8, 0, 0, 0, time.UTC)))
	must(t, s.View(ctx, func(r store.Reader) error {
		names, err := r.Buckets()
		must(t, err)
		for _, bucket := range names {
			if _, known := keptByDesk[bucket]; !known && strings.HasPrefix(bucket, "desk") {
				t.Errorf("a desk keeps %q, which no later desk is held to", bucket)
			}
		}
		for bucket, entries := range keptByDesk {
			for key, want := range entries {
				if bucket == "desk invitations" {
					key = sumOf(word)
				}
				if value, err := r.Get(bucket, []byte(key)); err != nil || string(value) != want {
					t.Errorf("%s: kept\n%q\nwant\n%q, %v", bucket, value, want, err)
				}
			}
		}
		return nil
	}))
	if unnamed := formats.Unnamed(Person{}, Invitation{}, pass{}, upload{}); len(unnamed) > 0 {
		t.Errorf("kept under the names of the program: %v", unnamed)
	}
}

// Who signed in at an earlier desk is signed in still: the cookie holds the token, the store its sum.
func TestEarlierSessionsLast(t *testing.T) {
	d := deskThatKept(t)
	must(t, d.o.Store.Update(t.Context(), func(w store.Writer) error {
		return w.Put("desk sessions", []byte(sumOf("a token")), []byte(keptByDesk["desk sessions"]["aToken"]))
	}))
	page := func(token string) int {
		r, w := httptest.NewRequest("GET", "/team", nil), httptest.NewRecorder()
		r.AddCookie(&http.Cookie{Name: "desk", Value: token})
		d.Handler().ServeHTTP(w, r)
		return w.Code
	}
	if got := []int{page("a token"), page("another")}; !slices.Equal(got, []int{http.StatusOK, http.StatusSeeOther}) {
		t.Errorf("with the cookie and with another: %v", got)
	}
}
