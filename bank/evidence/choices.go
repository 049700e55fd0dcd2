package evidence

import (
	"cmp"
	"slices"
)

// Choice is one answer that pupils gave to an item.
type Choice struct {
	Answer string
	Pupils int
	// Standing is how those pupils did on the other items, above (or below) all who answered
	// the same ones, as a share of items: 0.1 is one item in ten better. NaN when they
	// answered no other.
	Standing float64
}

// Choices counts the answers given to item i, the most given first. The stats are those of the rows, by Stats. The
// answers are one for each row (fewer is a programmer's error and panics); rows where the item is missing are left
// out.
func Choices(rows []Row, stats []ItemStats, i int, answers []string) []Choice {
	sums := map[string]*moments{}
	pupils := map[string]int{}
	for k, row := range rows {
		if row.Marks[i] == Missing {
			continue
		}
		sum := sums[answers[k]]
		if sum == nil {
			sum = &moments{}
			sums[answers[k]] = sum
		}
		pupils[answers[k]] += row.Pupils
		if rest, ok := standing(row.Marks, stats, i); ok {
			sum.add(rest, 0, float64(row.Pupils))
		}
	}
	var choices []Choice
	for answer, sum := range sums {
		choices = append(choices, Choice{answer, pupils[answer], sum.x / sum.n})
	}
	slices.SortFunc(choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(b.Pupils, a.Pupils), cmp.Compare(a.Answer, b.Answer))
	})
	return choices
}
