package desk_test

import (
	"bufio"
	"context"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"evenhand/bank"
	"evenhand/bank/store/storetest"
	"evenhand/cmd/evenhand/desk"
	"evenhand/standards/task"
)

// A page of one desk hears what is done at another desk of the same database, and by a command that writes to the
// database itself; also after its connection was lost.
func TestPagesHearWhatIsDoneElsewhere(t *testing.T) {
	server := storetest.NewServer(t)
	address := server.Address("two-desks")
	first, err := bank.Create(address)
	must(t, err)
	second, err := bank.Open(address, bank.Options{})
	must(t, err)
	var at []string
	var link string
	for _, b := range []*bank.Bank{first, second} {
		d, err := desk.New(b, desk.Options{Store: b.Store()})
		must(t, err)
		s := httptest.NewServer(d.Handler())
		t.Cleanup(func() { d.Leave(); s.Close(); must(t, b.Close()) })
		at = append(at, s.URL)
		if link == "" {
			path, err := d.FirstOwner(t.Context())
			must(t, err)
			link = s.URL + path
		}
	}
	owner := joins(t, link, "MK")
	other := joins(t, strings.Replace(invite(t, owner, at[0], "writer", ""), at[0], at[1], 1), "SV")
	ctx, end := context.WithTimeout(t.Context(), 60*time.Second)
	defer end()
	r, err := http.NewRequestWithContext(ctx, "GET", at[0]+"/events", nil)
	must(t, err)
	answer, err := owner.Do(r)
	must(t, err)
	defer answer.Body.Close()
	lines := bufio.NewScanner(answer.Body)
	heard := make(chan string, 100)
	go func() {
		for lines.Scan() {
			if said, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				heard <- said
			}
		}
		close(heard)
	}()
	// The desk begins to listen with its first page, which takes it a moment; so the deed is done until it is heard.
	hears := func(want string, do func(n int)) {
		t.Helper()
		for n := range 100 {
			do(n)
			select {
			case said := <-heard:
				if said == want {
					return
				}
			case <-time.After(300 * time.Millisecond):
			}
		}
		t.Errorf("nothing says %q", want)
	}
	write := func(n int) {
		_, _, _ = post(t, other, at[1]+"/items", url.Values{"task": {strings.Repeat("1", 1+n/9) + " + " + string(rune('1'+n%9))}})
	}
	hears("SV has just changed an item.", write)
	command, err := bank.Open(address, bank.Options{})
	must(t, err)
	items := 0
	hears("JK has just changed an item.", func(n int) {
		items++
		asked := task.MustParse("9" + strings.Repeat("0", n) + " + 3 = ?")
		item := bank.NewItem(asked, "", bank.Origin{Kind: "written", By: "JK"})
		_, err := command.Add([]bank.Item{item}, "JK", time.Now())
		must(t, err)
	})
	must(t, command.Close())
	server.Exec(t, `select pg_terminate_backend(pid) from pg_stat_activity where query = 'listen evenhand'`)
	hears("SV has just saved a plan.", func(n int) {
		form := planned("keep", "2 add-two-digit")
		form.Set("title", "Friday "+strings.Repeat("I", n+1))
		_, _, _ = post(t, other, at[1]+"/plans", form)
	})
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
