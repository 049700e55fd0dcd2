package followup_test

import (
	"fmt"
	"slices"
	"testing"

	"evenhand/assemble/followup"
	"evenhand/assemble/plan"
	"evenhand/bank/evidence/report"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"

	"pgregory.net/rapid"
)

func weekly(week string, tasks ...string) results.Quiz {
	var items []results.Item
	for i, text := range tasks {
		items = append(items, results.Item{ID: fmt.Sprint(week, i), Skill: "add-two-digit", Asks: text, Key: task.MustParse(text).Key()})
	}
	return results.NewQuiz("Check "+week, week, []results.Form{{Name: "A", Items: items}})
}

func sat(quiz results.Quiz, code, marks string) results.Paper {
	p := results.Paper{Quiz: quiz.ID, Class: "2A", Pupil: code, Form: "A"}
	for _, mark := range marks {
		p.Answers = append(p.Answers, results.Answer{State: map[rune]results.State{'1': results.Right, '0': results.Wrong, '-': results.NotReached}[mark]})
	}
	return p
}

func mustWeek(t rapid.TB, text string) plan.Week {
	week, err := plan.ParseWeek(text)
	if err != nil {
		t.Fatal(err)
	}
	return week
}

// ISO 8601: 2026 has 53 weeks, as its 1 January is a Thursday. With a holiday in the last two of them the first
// week of 2027 comes right after 2026-W51 for a school.
func TestRetention(t *testing.T) {
	skip := []plan.Week{mustWeek(t, "2026-W52"), mustWeek(t, "2026-W53")}
	first, second, third := weekly("2026-W50", "21 + 34 = ?", "25 + 38 = ?"), weekly("2026-W51", "22 + 34 = ?"), weekly("2027-W01", "25 + 39 = ?", "26 + 39 = ?")
	quizzes := []results.Quiz{third, first, second}
	papers := []results.Paper{
		sat(first, "P01", "11"), sat(first, "P02", "10"), sat(second, "P01", "1"), sat(second, "P02", "-"),
		sat(third, "P01", "00"), sat(third, "P02", "10"),
	}
	taught := followup.TaughtIn(quizzes)
	if len(taught) != 1 || taught[0].Week.String() != "2026-W50" {
		t.Fatalf("taught: %v", taught)
	}
	where, err := standards.ParseWhere([]string{"regroups >= 1"})
	if err != nil {
		t.Fatal(err)
	}
	taught = append(taught, followup.Taught{Skill: "add-two-digit", Where: where, Week: mustWeek(t, "2026-W51"), Last: mustWeek(t, "2026-W51")})
	got := followup.TermOf(taught, quizzes, papers, followup.Calendar{Return: []int{1, 2, 4}, Skip: skip}, mustWeek(t, "2027-W02"))
	// Counted by hand from the papers above.
	for i, want := range []string{"3/4 1/1 1/4 0/0 0/0 2027-W01", "0/0 1/4 0/0 0/0 0/0 2027-W01"} {
		one, text := got.Taught[i], ""
		for _, part := range append([]report.Part{one.When}, one.After[:]...) {
			text += fmt.Sprintf("%d/%d ", part.Right, part.Of)
		}
		if text += one.Last.String(); text != want {
			t.Errorf("%s: %s, want %s", one.Name(), text, want)
		}
	}
	// The whole skill is three weeks of school old and not due, what regroups two.
	why := fmt.Sprint(got.Back[0].Why, got.Back[1].Why)
	if why != "[1 of 4 right after 2-3 weeks] [1 of 4 right after 1 week due: new 2 weeks ago]" {
		t.Errorf("comes back: %s", why)
	}
}

// Whatever the papers: every counting answer since a skill was new counts once, in one span, and none from before it
// or from the week asked about on.
func TestRetentionCountsOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := mustWeek(t, "2026-W45")
		var quizzes []results.Quiz
		var papers []results.Paper
		new, next, want := rapid.IntRange(0, 8).Draw(t, "new"), rapid.IntRange(1, 20).Draw(t, "next"), report.Part{}
		for _, w := range slices.Compact(slices.Sorted(slices.Values(rapid.SliceOfN(rapid.IntRange(0, 18), 1, 8).Draw(t, "weeks")))) {
			quiz := weekly(from.Add(w).String(), "21 + 34 = ?", "25 + 38 = ?")
			marks := rapid.StringMatching("[01-]{2}").Draw(t, "marks")
			quizzes, papers = append(quizzes, quiz), append(papers, sat(quiz, "P01", marks))
			for _, mark := range marks {
				if w >= new && w < next && mark != '-' {
					want.Of++
					want.Right += int(mark - '0')
				}
			}
		}
		var skip []plan.Week
		for w := range 19 {
			if rapid.Bool().Draw(t, "skip") && !slices.ContainsFunc(quizzes, func(q results.Quiz) bool { return q.Week == from.Add(w).String() }) && w != new {
				skip = append(skip, from.Add(w))
			}
		}
		taught := []followup.Taught{{Skill: "add-two-digit", Week: from.Add(new), Last: from.Add(new)}}
		one := followup.TermOf(taught, quizzes, papers, followup.Calendar{Skip: skip}, from.Add(next)).Taught[0]
		got := one.When
		for _, part := range one.After {
			got.Right, got.Of = got.Right+part.Right, got.Of+part.Of
		}
		if got != want {
			t.Fatalf("%v counted of %v", got, want)
		}
	})
}
