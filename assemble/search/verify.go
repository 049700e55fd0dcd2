package search

import (
	"fmt"
	"slices"
)

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
	if err := verifySame(m, forms); err != nil {
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
		at := slices.IndexFunc(it.Fits, func(f Fit) bool { return f.Row == p.Row })
		if at < 0 {
			return fmt.Errorf("item %q does not fit row %q", it.Name, m.Rows[p.Row].Name)
		}
		rows[p.Row]++
		seconds += it.Fits[at].Seconds
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

// verifySame checks that all forms hold as many of each set of Same as the first.
func verifySame(m *Model, forms [][]Place) error {
	for k, same := range m.Same {
		first := 0
		for f, places := range forms {
			n := 0
			for _, p := range places {
				if slices.Contains(m.Items[p.Item].Same, k) {
					n++
				}
			}
			if f == 0 {
				first = n
			} else if n != first && !same.free {
				return fmt.Errorf("form %d holds %d of %q, form 1 %d", f+1, n, same.Name, first)
			}
		}
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
