package assemble_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/bank"
	"evenhand/standards"
)

func mustTerm(t *testing.T, b *bank.Bank, p assemble.Pacing, weeks int, o assemble.Options) assemble.Term {
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
	p := mustPacing(t, assemble.ExamplePacing())
	for i, skill := range p.Skills() {
		addMade(t, b, skill, 70, uint64(i))
	}
	o := assemble.Options{Seed: 5, Week: "2026-W48"}
	term := mustTerm(t, b, p, 9, o)
	checkTerm(t, b, term)
	// 2026 has 53 weeks, as 1 January 2026 is a Thursday (ISO 8601).
	table := term.Table()
	if got, want := fmt.Sprint(table[0]), "[skill 2026-W48 2026-W49 2026-W50 2026-W51 2026-W52 2026-W53 2027-W01 2027-W02 2027-W03]"; got != want {
		t.Errorf("weeks %s, want %s", got, want)
	}
	if got, want := table[1][1], "10 new"; got != want {
		t.Errorf("week 1 of %s: %q, want %q", table[1][0], got, want)
	}
	// New in week 4 with 6 in 10; back in week 5 beside one other, 2 of the 4 left.
	if got, want := strings.Join(table[4], "|"), "subtract-two-digit||||6 new|2|"; !strings.HasPrefix(got, want) {
		t.Errorf("%s, want %s", got, want)
	}
	if again := mustTerm(t, b, p, 9, o); fmt.Sprint(again.Quizzes) != fmt.Sprint(term.Quizzes) {
		t.Error("the same seed gives another term")
	}
}

// The bank has just enough items near the mark for every week: 5 a week that 75
// in 100 get right, and as many that hardly anyone does. Week by week, each
// taking the best that is left, all weeks can be on the mark only if none takes
// what another needs; here the first weeks would rather have all easy ones, as
// the mark lies between.
func TestLastWeekIsNotStarved(t *testing.T) {
	b := newBank(t)
	const weeks = 4
	var items []bank.Item
	for n := range weeks * 4 {
		for k, difficulty := range []standards.Difficulty{-1099 - 600, -1099 + 600} {
			item := bank.NewItem(standards.MustParse(fmt.Sprintf("%d + %d = ?", 20+n, 30+30*k)), "", bank.Origin{})
			item.Measured = &bank.Measured{Difficulty: difficulty + standards.Difficulty(n), Answers: 100, StandardError: 100}
			items = append(items, item)
		}
	}
	addItems(t, b, items...)
	p := mustPacing(t, "items = 8\nrest = 10\n[[new]]\nweek = 1\nskill = 'add-tens'\n")
	term := mustTerm(t, b, p, weeks, assemble.Options{Seed: 3, Week: "2026-W48"})
	checkTerm(t, b, term)
	for w, q := range term.Quizzes {
		if q.Excess != 0 {
			t.Errorf("week %d is %d hundredths of a logit off the mark", w+1, q.Excess)
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
