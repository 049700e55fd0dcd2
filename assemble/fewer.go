package assemble

import (
	"cmp"
	"slices"

	"evenhand/standards/words"
)

// Fewer is a form with so many of its items, for a child whose plan says fewer: each row of the plan keeps its share
// of them, the rows that lose most by rounding down first, and within a row the items kept lie evenly from
// the easiest to the hardest. Items keep their numbers, so that the form's key and marks serve.
func Fewer(form Form, count int) (Form, error) {
	if count < 1 || count > len(form.Items) {
		return form, words.Errorf("form %s has %d items; so it can't be printed with %d", form.Name, len(form.Items), count)
	}
	var rows []string
	byRow := map[string][]Placed{}
	for _, placed := range form.Items {
		if _, seen := byRow[placed.Row]; !seen {
			rows = append(rows, placed.Row)
		}
		byRow[placed.Row] = append(byRow[placed.Row], placed)
	}
	var kept []Placed
	for i, n := range shares(rows, byRow, count, len(form.Items)) {
		items := slices.Clone(byRow[rows[i]])
		slices.SortStableFunc(items, func(a, b Placed) int { return cmp.Compare(a.Item.Difficulty(), b.Item.Difficulty()) })
		for k := range n {
			kept = append(kept, items[(2*k+1)*len(items)/(2*n)])
		}
	}
	slices.SortFunc(kept, func(a, b Placed) int { return cmp.Compare(a.Number, b.Number) })
	form.Items = kept
	return form, nil
}

// shares is how many items each row keeps: its share rounded down, and one more where the most is lost until
// there are enough (the method of largest remainders).
func shares(rows []string, byRow map[string][]Placed, count, of int) []int {
	list, left := make([]int, len(rows)), count
	order := make([]int, len(rows))
	for i, row := range rows {
		list[i], order[i] = len(byRow[row])*count/of, i
		left -= list[i]
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(len(byRow[rows[b]])*count%of, len(byRow[rows[a]])*count%of)
	})
	for _, i := range order[:left] {
		list[i]++
	}
	return list
}
