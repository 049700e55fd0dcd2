package plan_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"evenhand/assemble/plan"

	"pgregory.net/rapid"
)

func mustPacing(t *testing.T, text string) plan.Pacing {
	t.Helper()
	p, err := plan.ParsePacing([]byte(text), "pacing.toml")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestExamplePacing(t *testing.T) {
	p := mustPacing(t, plan.ExamplePacing())
	if p.Items != 10 || p.Share != 60 || len(p.New) != 6 || fmt.Sprint(p.Return) != "[1 2 4 8]" {
		t.Errorf("the example reads as %+v", p)
	}
}

func TestPacingMistakes(t *testing.T) {
	const good = "items = 5\n[[new]]\nweek = 1\nskill = \"clock-hour\"\n"
	for _, c := range []struct{ text, want string }{
		{"items = 5", "1:1: no skill is new in week 1"},
		{strings.Replace(good, "items = 5", "", 1), "1:1: items is missing"},
		{strings.Replace(good, "1", "2", 1), "no skill is new in week 1"},
		{strings.Replace(good, "clock-hour", "clock-our", 1), `4:9: no skill "clock-our"; did you mean "clock-hour"?`},
		{strings.Replace(good, "week = 1", "wek = 1", 1), `3:1: no key "wek" in new; did you mean "week"?`},
		{good + "count = 2", `5:1: no key "count" in new`},
		{"return = [2, 1]\n" + good, "1:14: the weeks grow from one to the next; 1 doesn't"},
		{"return = 2\n" + good, "1:10: return is a list of weeks in brackets"},
		{"new_share = 101\n" + good, "1:13: new_share is a whole number from 0 to 100, not 101"},
	} {
		_, err := plan.ParsePacing([]byte(c.text), "p.toml")
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got\n%v\nwant something with\n%s", c.text, err, c.want)
		}
	}
}

// The default rhythm of issue 3.6: 60 new to 40 earlier, returns after 1, 2, 4
// and 8 weeks. With one new skill in each of weeks 1 and 3 and ten items:
func TestRhythm(t *testing.T) {
	p := mustPacing(t, "items = 10\n[[new]]\nweek = 1\nskill = 'clock-hour'\n[[new]]\nweek = 3\nskill = 'clock-half-hour'\n")
	var got []string
	for _, plan := range p.Plans(12) {
		var rows []string
		for _, row := range plan.Rows {
			rows = append(rows, fmt.Sprintf("%s %d", strings.TrimPrefix(string(row.Skill), "clock-"), row.Count))
		}
		got = append(got, strings.Join(rows, ", "))
	}
	want := []string{
		"hour 10",             // nothing earlier
		"hour 10",             // back after 1 week
		"half-hour 6, hour 4", // back after 2 weeks
		"half-hour 10",        // back after 1 week
		"hour 5, half-hour 5", // back after 4 and 2 weeks
		"hour 5, half-hour 5", // none is due: longest ago, both in week 5
		"half-hour 10",        // back after 4 weeks
		"hour 5, half-hour 5", // none is due: asked in weeks 6 and 7
		"hour 10",             // back after 8 weeks
		"half-hour 5, hour 5", // none is due
		"half-hour 10",        // back after 8 weeks
		"hour 5, half-hour 5",
	}
	for w := range want {
		if got[w] != want[w] {
			t.Errorf("week %d: %s, want %s", w+1, got[w], want[w])
		}
	}
}

// Every week has all its items, and a skill never stands before it is new.
func TestPacingLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		items, share := rapid.IntRange(1, 12).Draw(r, "items"), rapid.IntRange(0, 100).Draw(r, "share")
		text := fmt.Sprintf("items = %d\nnew_share = %d\n", items, share)
		first := map[string]int{}
		for i, skill := range []string{"clock-hour", "clock-half-hour", "add-ones", "add-tens", "count-on"} {
			week := 1
			if i > 0 {
				week = rapid.IntRange(1, 8).Draw(r, "week")
			}
			first[skill] = week
			text += fmt.Sprintf("[[new]]\nweek = %d\nskill = %q\n", week, skill)
		}
		p, err := plan.ParsePacing([]byte(text), "p.toml")
		if err != nil {
			r.Fatal(err)
		}
		for w, plan := range p.Plans(20) {
			if plan.Size() != items {
				r.Fatalf("week %d has %d items instead of %d", w+1, plan.Size(), items)
			}
			for _, row := range plan.Rows {
				if row.Count < 1 || first[string(row.Skill)] > w+1 {
					r.Fatalf("week %d asks for %d of %s, new in week %d", w+1, row.Count, row.Skill, first[string(row.Skill)])
				}
			}
		}
	})
}

func FuzzParsePacing(f *testing.F) {
	f.Add([]byte(plan.ExamplePacing()))
	f.Add([]byte("items = 3\nreturn = []\nnew = [{week = 1, skill = 'clock-hour'}]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		p, err := plan.ParsePacing(text, "p.toml")
		var mistakes *plan.MistakesError
		if err != nil {
			if !errors.As(err, &mistakes) {
				t.Fatalf("an error without a place: %v", err)
			}
			return
		}
		for w, plan := range p.Plans(8) {
			if plan.Size() != p.Items {
				t.Fatalf("week %d has %d items instead of %d", w+1, plan.Size(), p.Items)
			}
		}
	})
}
