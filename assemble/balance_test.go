package assemble_test

import (
	"fmt"
	"math"
	"testing"

	"evenhand/assemble"
	"evenhand/bank"
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
	compared := bank.NewItem(task.MustParse("47 ? 74"), "", bank.Origin{}).Difficulty().Band()
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

// Both means follow from the definition p = 1/(1 + e^d): at difficulty 0 half of
// the answers are right, at −ln 3 three in four.
func TestBalanceMeans(t *testing.T) {
	q := quizOf(75, []string{"47 + 36 = ?", "81 - 38 = ?"})
	q.Forms[0].Items[0].Item.Measured = &bank.Measured{Difficulty: 0}
	q.Forms[0].Items[1].Item.Measured = &bank.Measured{Difficulty: -1099}
	want := map[string]float64{
		assemble.LineShareRight: (50 + 75.0) / 2,
		assemble.LineDifficulty: -1.099 / 2,
		assemble.LineExcess:     50, // ceil(100·(|−0.5495 + 1.099| − 0.05)) = ceil(49.95)
	}
	for _, l := range assemble.BalanceOf(q).Lines {
		// −ln 3 is −1.0986, the model has −1.099: 0.01 in 100 answers.
		if w, ok := want[l.Name]; ok && math.Abs(l.Values[0]-w) > .01 {
			t.Errorf("%s: %v, want %v", l.Name, l.Values[0], w)
		}
	}
}
