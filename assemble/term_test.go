package assemble_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

func mustTerm(t *testing.T, b *bank.Bank, p plan.Pacing, weeks int, o assemble.Options) assemble.Term {
	t.Helper()
	term, err := assemble.AssembleTerm(context.Background(), b, p, weeks, o)
	if err != nil {
		t.Fatal(err)
	}
	return term
}

// checkTerm checks every quiz by itself and that no item comes back inside the rest.
func checkTerm(t *testing.T, b *bank.Bank, term assemble.Term) {
	t.Helper()
	last := map[string]int{}
	for w, q := range term.Quizzes {
		if err := broken(b, term.Plans[w], assemble.Options{Week: q.Week}, q); err != nil {
			t.Errorf("week %d: %v", w+1, err)
		}
		for _, form := range q.Forms {
			for _, placed := range form.Items {
				if before, used := last[placed.Item.ID]; used && before != w && w-before <= term.Plans[w].Rest {
					t.Errorf("%s stands in weeks %d and %d", placed.Item.Task, before+1, w+1)
				}
				last[placed.Item.ID] = w
			}
		}
	}
}

func TestTerm(t *testing.T) {
	b := newBank(t)
	p := mustPacing(t, plan.ExamplePacing())
	for i, skill := range skillsOf(p) {
		addMade(t, b, skill, 70, uint64(i))
	}
	o := assemble.Options{Seed: 5, Week: "2026-W48"}
	term := mustTerm(t, b, p, 9, o)
	checkTerm(t, b, term)
	// 2026 has 53 weeks, as 1 January 2026 is a Thursday (ISO 8601).
	table := term.Table()
	if got, want := fmt.Sprint(table[0]), "[skill 2026-W48 2026-W49 2026-W50 2026-W51 2027-W01 2027-W02 2027-W03 2027-W04 2027-W05]"; got != want {
		t.Errorf("weeks %s, want %s", got, want)
	}
	if got, want := table[1][1], "10 new"; got != want {
		t.Errorf("week 1 of %s: %q, want %q", table[1][0], got, want)
	}
	// New in week 4 with 6 in 10; back in week 5 beside one other, 2 of the 4 left.
	if got, want := strings.Join(table[4], "|"), "subtract-two-digit||||6 new|2|"; !strings.HasPrefix(got, want) {
		t.Errorf("%s, want %s", got, want)
	}
	again := mustTerm(t, b, p, 9, o)
	if fmt.Sprint(again.Quizzes) != fmt.Sprint(term.Quizzes) {
		t.Error("the same seed gives another term")
	}
}

// Every week asks for at least one stretch item, and the bank has four of them
// for four weeks. Week by week the first quizzes take three at once, as that
// comes nearest to the mark, and a later week has none. The term must do better.
func TestLastWeekIsNotStarved(t *testing.T) {
	p := mustPacing(t, "items = 4\nrest = 10\nshare_right = 65\n[[new]]\nweek = 1\nskill = 'add-tens'\n[bands]\nstretch = [1, 3]\n")
	const weeks = 4
	first, last := mustWeek("2026-W48"), mustWeek("2026-W51")
	scarce := func() *bank.Bank {
		b := newBank(t)
		var items []bank.Item
		for n := range 4 * weeks {
			item := bank.NewItem(task.MustParse(fmt.Sprintf("%d + 30 = ?", 21+n)), "", bank.Origin{})
			item.Measured = &bank.Measured{Difficulty: -1500, Answers: 100, StandardError: 100}
			if n < weeks {
				item.Measured.Difficulty = -100
			}
			items = append(items, item)
		}
		addItems(t, b, items...)
		return b
	}
	b := scarce()
	starved := false
	for w, plan := range p.Plans(weeks) {
		week := first.Add(w).String()
		q, err := assemble.Assemble(context.Background(), b, plan, assemble.Options{Week: week})
		if starved = err != nil; starved {
			break
		}
		for _, placed := range q.Forms[0].Items {
			use(t, b, week, placed.Item.ID)
		}
	}
	if !starved {
		t.Error("week by week no week is starved, so this test shows nothing")
	}
	term := mustTerm(t, scarce(), p, weeks, assemble.Options{Week: first.String()})
	if got := term.Quizzes[weeks-1].Week; got != last.String() {
		t.Errorf("the last week is %s, want %s", got, last)
	}
	for w, q := range term.Quizzes {
		stretch := count(q.Forms[0], func(it bank.Item) bool { return it.Difficulty().Band() == standards.Stretch })
		if stretch != 1 {
			t.Errorf("week %d has %d stretch items", w+1, stretch)
		}
	}
}

// Clock faces to the hour: twelve times, so twelve keys. Three weeks of four
// within one rest need all of them, and each week may hold a time only once.
func TestTermUsesTheLastItem(t *testing.T) {
	b := newBank(t)
	var tasks []string
	for hour := 1; hour <= 12; hour++ {
		tasks = append(tasks, fmt.Sprintf("read %d:00", hour))
	}
	addTasks(t, b, tasks...)
	p := mustPacing(t, "items = 4\nrest = 2\n[[new]]\nweek = 1\nskill = 'clock-hour'\n")
	term := mustTerm(t, b, p, 6, assemble.Options{Week: "2026-W48"})
	checkTerm(t, b, term)
	for w, q := range term.Quizzes {
		if want := 4 * min(w/3, 1); q.UsesSum != want { // from the fourth week on each has been used once
			t.Errorf("week %d: %d earlier uses, want %d", w+1, q.UsesSum, want)
		}
	}
}

func TestTermThatIsTooLong(t *testing.T) {
	b := newBank(t)
	ids := addTasks(t, b, "read 1:00", "read 2:00", "read 3:00", "read 4:00", "read 5:00", "read 6:00", "read 7:00")
	p := mustPacing(t, "items = 2\nrest = 6\n[[new]]\nweek = 1\nskill = 'clock-hour'\n")
	mustTerm(t, b, p, 3, assemble.Options{Week: "2026-W48"})
	_, err := assemble.AssembleTerm(context.Background(), b, p, 4, assemble.Options{Week: "2026-W48"})
	var term *assemble.TermError
	var impossible *assemble.ImpossibleError
	if !errors.As(err, &term) || !errors.As(err, &impossible) || !strings.HasPrefix(err.Error(), "week 2026-W") {
		t.Errorf("seven items for four weeks of two: %v", err)
	}
	use(t, b, "2026-W47", ids[0], ids[1]) // rest until 2027-W01
	_, err = assemble.AssembleTerm(context.Background(), b, p, 3, assemble.Options{Week: "2026-W48"})
	if !errors.As(err, &term) {
		t.Errorf("five items for three weeks of two: %v", err)
	}
	if !slices.Contains([]string{"2026-W48", "2026-W49", "2026-W50"}, term.Week) {
		t.Errorf("the week without a quiz is %s", term.Week)
	}
}

// skillsOf are the skills of a pacing list, each once, in the order they are new.
func skillsOf(p plan.Pacing) []standards.SkillID {
	var all plan.Plan
	for _, s := range p.New {
		all.Rows = append(all.Rows, s.Row)
	}
	return all.Skills()
}
