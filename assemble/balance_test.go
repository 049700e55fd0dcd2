package assemble_test

import (
	"fmt"
	"testing"

	"evenhand/assemble"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// quizOf makes a quiz by hand, a list of tasks a form.
func quizOf(shareRight int, forms ...[]string) assemble.Quiz {
	q := assemble.Quiz{ShareRight: shareRight}
	for f, tasks := range forms {
		form := assemble.Form{Name: string(rune('A' + f))}
		for i, asked := range tasks {
			item := bank.NewItem(task.MustParse(asked), "", bank.Origin{})
			form.Items = append(form.Items, assemble.Placed{Number: i + 1, Item: item, Uses: i})
		}
		q.Forms = append(q.Forms, form)
	}
	return q
}

// Counted by hand from the definitions of the house plan: 47 + 36 and 81 - 38
// regroup once, 95 + 5 twice (to exactly 100, so without a crossing), 95 + 6
// twice with a crossing.
func TestBalanceCounts(t *testing.T) {
	item := bank.NewItem(task.MustParse("47 ? 74"), "", bank.Origin{})
	compared := item.Difficulty().For(item.Skill, 0).Band() // for the pupils of quizOf
	b := assemble.BalanceOf(quizOf(75,
		[]string{"47 + 36 = ?", "95 + 6 = ?", "read 4:30", "47 ? 74"},
		[]string{"81 - 38 = ?", "95 + 5 = ?", "read 7:00", "draw 8:00"},
	))
	table := map[string][]string{}
	for _, row := range b.Table() {
		table[row[0]] = row[1:]
	}
	for name, want := range map[string]string{
		"":                                       "[form A form B difference]",
		"regroupings":                            "[3 3 0]",
		"crossings of 100":                       "[1 0 1]",
		"numbers to 100":                         "[2 2 0]",
		"numbers from 101 to 200":                "[1 0 1]",
		"clock to the half-hour":                 "[1 0 1]",
		"clock to the hour":                      "[0 2 2]",
		"compare-two-digit, " + string(compared): "[1 0 1]",
		"earlier uses":                           "[6 6 0]",
		"clock_step = hour":                      "[0 2 2]",
		"crosses_100 = true":                     "[1 0 1]",
	} {
		if got := fmt.Sprint(table[name]); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}

// Scores follow from p = 1/(1 + e^(d − θ)): at difficulty 0 a typical pupil (θ = 0) has
// 0.500 right, a weaker one (θ = −1) 1/(1 + e) = 0.269, a stronger one 0.731; at −ln 3,
// −1.099 in thousandths, it is 0.750, 1/(1 + e^−0.099) = 0.525 and 1/(1 + e^−2.099) = 0.891.
func TestBalanceScores(t *testing.T) {
	q := quizOf(75, []string{"47 + 36 = ?", "81 - 38 = ?"}, []string{"25 + 36 = ?", "74 - 38 = ?"})
	q.Ability = int(standards.Level(standards.GradeOf(q.Forms[0].Items[0].Item.Skill))) // all of one grade
	for f, d := range [][2]standards.Difficulty{{0, -1099}, {0, 0}} {
		for i := range d {
			q.Forms[f].Items[i].Item.Measured = &bank.Measured{Difficulty: d[i]}
		}
	}
	table := map[string][]string{}
	for _, row := range assemble.BalanceOf(q).Table() {
		table[row[0]] = row[1:]
	}
	for name, want := range map[string]string{
		assemble.LineWeaker:   "[0.79 0.54 0.26]",
		assemble.LineTypical:  "[1.25 1.00 0.25]",
		assemble.LineStronger: "[1.62 1.46 0.16]",
	} {
		if got := fmt.Sprint(table[name]); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}

// A quiz that isn't proved best says in points how much could be better, and of one
// that is only short of a proof about uses, that.
func TestVerdicts(t *testing.T) {
	const ranOut = "; time ran out, so the same seed may give other items another time"
	for _, c := range []struct {
		objective, bound int
		uneven           [3]int
		want             string
	}{
		{3, 3, [3]int{}, "best possible"},
		{5, 3, [3]int{}, "as even and as near the mark as can be; other items could spare at most 2 earlier uses" + ranOut},
		{20_003, 3, [3]int{0, 10, 0}, "forms could be closer by at most 0.1 of a point" + ranOut},
		{4003, 3, [3]int{}, "forms could be nearer the mark by at most 0.04 of a point in all" + ranOut},
		{140_000, 0, [3]int{}, "forms could be nearer the mark by at most 1.4 points in all" + ranOut},
	} {
		q := assemble.Quiz{Forms: make([]assemble.Form, 2), Objective: c.objective, Bound: c.bound, Uneven: c.uneven, Proved: c.objective == c.bound}
		if got := q.Verdict(); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// Counted by hand: 3.025 of 5 points are 60.5 in 100, 3.75 of 5 are 75.
func TestMisses(t *testing.T) {
	items := make([]assemble.Placed, 5)
	a, b := assemble.Form{Name: "A", Items: items}, assemble.Form{Name: "B", Items: items}
	a.Scores[1], b.Scores[1] = 3025, 3750
	q := assemble.Quiz{ShareRight: 75, Off: []int{68, 0}, Forms: []assemble.Form{a, b}}
	if got, want := q.Misses(), "off the mark: 75 in 100 answers are asked to be right; about 61 of form A can be expected"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	q.Off[0] = 0
	if got := q.Misses(); got != "" {
		t.Errorf("a quiz on the mark: %s", got)
	}
}
