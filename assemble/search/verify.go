package search

import (
	"fmt"
	"slices"
)

// Verify checks a solution against every rule of the model, and its figures
// against its items, in whole numbers. It shares no code with the search, only
// the types; the search offers no choice that breaks a rule here.
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

// verifyFigures works the figures out anew from the definition: expected
// scores in thousandths of a point, what misses the mark by more than one in
// 100, what lies apart by more than half in 100.
func verifyFigures(m *Model, s *Solution) error {
	n, uses, points := 0, 0, 0
	for _, row := range m.Rows {
		n += row.Count
	}
	if len(s.Scores) != m.Forms || len(s.Off) != m.Forms {
		return fmt.Errorf("figures of %d and %d forms instead of %d", len(s.Scores), len(s.Off), m.Forms)
	}
	counted := map[int]bool{}
	lowest, highest := [Abilities]int{}, [Abilities]int{}
	for f, places := range s.Forms {
		var score [Abilities]int
		for _, p := range places {
			it := m.Items[p.Item]
			for t, v := range it.Points {
				score[t] += v
			}
			if !counted[p.Item] {
				uses += it.Uses
			}
			counted[p.Item] = true
		}
		if s.Scores[f] != score {
			return fmt.Errorf("form %d: scores %v are said, %v are true", f+1, s.Scores[f], score)
		}
		if off := beyond(abs(score[1]-10*m.ShareRight*n), 10*n); m.ShareRight > 0 && s.Off[f] != off || m.ShareRight == 0 && s.Off[f] != 0 {
			return fmt.Errorf("form %d: %d off the mark is said, %d is true", f+1, s.Off[f], off)
		}
		points += s.Off[f]
		for t, v := range score {
			if f == 0 || v < lowest[t] {
				lowest[t] = v
			}
			if f == 0 || v > highest[t] {
				highest[t] = v
			}
		}
	}
	for t := range lowest {
		if uneven := beyond(highest[t]-lowest[t], 5*n); s.Uneven[t] != uneven {
			return fmt.Errorf("pupil %d: uneven by %d is said, %d is true", t+1, s.Uneven[t], uneven)
		}
		points += m.Forms * s.Uneven[t]
	}
	if s.Uses != uses || s.Objective != 1000*points+uses {
		return fmt.Errorf("objective %d with %d uses is said, %d with %d is true", s.Objective, s.Uses, 1000*points+uses, uses)
	}
	if s.Bound > s.Objective || s.Proved != (s.Bound == s.Objective) {
		return fmt.Errorf("bound %d and proved %t don't go with objective %d", s.Bound, s.Proved, s.Objective)
	}
	return nil
}

// beyond is by how many hundredths of a point thousandths go beyond a
// tolerance, the last one counted whole.
func beyond(thousandths, tolerance int) int {
	n := 0
	for thousandths > tolerance {
		n, thousandths = n+1, thousandths-10
	}
	return n
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
