package search

import (
	"fmt"
	"slices"
)

// Verify checks a solution against every rule of the model, and its figures
// against its items, in whole numbers. It shares no code with the search, which
// offers no choice that breaks a rule here.
func Verify(m *Model, s *Solution) error {
	if err := verifyRules(m, s.Forms); err != nil {
		return err
	}
	return verifyFigures(m, s)
}

func verifyRules(m *Model, forms [][]Place) error {
	if len(forms) != m.Forms {
		return fmt.Errorf("%d forms instead of %d", len(forms), m.Forms)
	}
	for f, places := range forms {
		if err := verifyForm(m, places); err != nil {
			return fmt.Errorf("form %d: %w", f+1, err)
		}
	}
	if err := verifyOnce(m, forms); err != nil {
		return err
	}
	for _, x := range m.Fixed {
		for f, places := range forms {
			here := x.Form == f || x.Form == EveryForm || m.Forms == 1
			if here != slices.Contains(places, Place{x.Item, x.Row}) {
				return fmt.Errorf("form %d: the fixed item %q should stand here: %t", f+1, m.Items[x.Item].Name, here)
			}
		}
	}
	return nil
}

func verifyForm(m *Model, places []Place) error {
	rows, quotas, clashes, seconds := make([]int, len(m.Rows)), make([]int, len(m.Quotas)), map[int]int{}, 0
	for _, p := range places {
		it := &m.Items[p.Item]
		sec, fits := it.seconds(p.Row)
		if !fits {
			return fmt.Errorf("item %q does not fit row %q", it.Name, m.Rows[p.Row].Name)
		}
		rows[p.Row]++
		seconds += sec
		for _, q := range it.Quotas {
			quotas[q]++
		}
		for k, c := range it.Clashes {
			if slices.Contains(it.Clashes[:k], c) {
				continue
			}
			if clashes[c]++; clashes[c] > 1 {
				return fmt.Errorf("item %q clashes with another (group %d)", it.Name, c)
			}
		}
	}
	for r, row := range m.Rows {
		if rows[r] != row.Count && !row.free {
			return fmt.Errorf("row %q holds %d items instead of %d", row.Name, rows[r], row.Count)
		}
	}
	for q, quota := range m.Quotas {
		if quotas[q] < quota.AtLeast || quotas[q] > quota.AtMost {
			return fmt.Errorf("quota %q: %d is outside %d to %d", quota.Name, quotas[q], quota.AtLeast, quota.AtMost)
		}
	}
	if m.MaxSeconds > 0 && seconds > m.MaxSeconds {
		return fmt.Errorf("%d seconds are more than %d", seconds, m.MaxSeconds)
	}
	return nil
}

// verifyOnce checks that an item stands in one place only, or else in the same
// row of every form, and that exactly m.Shared items do the latter. With one
// form the shared items are like any other.
func verifyOnce(m *Model, forms [][]Place) error {
	count, row := map[int]int{}, map[int]int{}
	for f, places := range forms {
		for k, p := range places {
			if slices.ContainsFunc(places[:k], func(q Place) bool { return q.Item == p.Item }) {
				return fmt.Errorf("form %d holds item %q twice", f+1, m.Items[p.Item].Name)
			}
			if count[p.Item] > 0 && row[p.Item] != p.Row {
				return fmt.Errorf("item %q fills two different rows", m.Items[p.Item].Name)
			}
			count[p.Item]++
			row[p.Item] = p.Row
		}
	}
	shared := 0
	for i, n := range count {
		if n > 1 && n < m.Forms {
			return fmt.Errorf("item %q stands in %d of %d forms", m.Items[i].Name, n, m.Forms)
		}
		if n == m.Forms {
			shared++
		}
	}
	if m.Forms > 1 && shared != m.Shared && !m.freeShared {
		return fmt.Errorf("%d items are shared instead of %d", shared, m.Shared)
	}
	return nil
}

func verifyFigures(m *Model, s *Solution) error {
	excess, uses := figures(m, s.Forms)
	if s.Excess != excess || s.Uses != uses || s.Objective != 1000*excess+uses {
		return fmt.Errorf("objective %d (excess %d, uses %d) is said, %d (%d, %d) is true",
			s.Objective, s.Excess, s.Uses, 1000*excess+uses, excess, uses)
	}
	if s.Bound > s.Objective || s.Proved != (s.Bound == s.Objective) {
		return fmt.Errorf("bound %d and proved %t don't go with objective %d", s.Bound, s.Proved, s.Objective)
	}
	return nil
}

// figures gives the excess of all forms and the uses of all items, each once.
func figures(m *Model, forms [][]Place) (excess, uses int) {
	seen := map[int]bool{}
	for _, places := range forms {
		sum := 0
		for _, p := range places {
			sum += m.Items[p.Item].Difficulty
			if !seen[p.Item] {
				seen[p.Item] = true
				uses += m.Items[p.Item].Uses
			}
		}
		excess += Excess(len(places), sum, m.Target)
	}
	return excess, uses
}

// Excess is ceil(100·max(0, |sum/n − target| − 0.05)) for n items whose
// difficulties sum to sum, with sum and target in thousandths of a logit:
// hundredths of a logit by which a form misses its target beyond 0.05.
func Excess(n, sum, target int) int {
	miss := max(sum-n*target, n*target-sum) - 50*n
	if miss <= 0 {
		return 0
	}
	return (miss + 10*n - 1) / (10 * n)
}
