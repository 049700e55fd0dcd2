package search

import "fmt"

// Checking a solution by itself: what the tests hold every answer of the search to.

// Verify checks a solution against every rule of the model, and its figures
// against its items, in whole numbers. It shares no code with the search, only
// the types; the search offers no choice that breaks a rule here.
func Verify(m *Model, s *Solution) error {
	if err := verifyRules(m, s.Forms); err != nil {
		return err
	}
	return verifyFigures(m, s)
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
