package generate_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// everything makes all items of the skills.
func everything(t *testing.T, skills ...standards.SkillID) []task.Task {
	t.Helper()
	var tasks []task.Task
	for _, skill := range skills {
		r, err := generate.Make(generate.Request{Skill: skill, Count: math.MaxInt, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		tasks = append(tasks, r.Tasks...)
	}
	return tasks
}

// regroupings counts ordered pairs of numbers by regroupings, among the tasks whose two
// numbers pass the test. A sum of two different numbers of one length stands for both orders.
func regroupings(t *testing.T, tasks []task.Task, in func(a, b int) bool) map[int]int {
	t.Helper()
	counts := make(map[int]int)
	for _, asked := range tasks {
		s := asked.(task.Sentence)
		a, b := s.Terms[0], s.Terms[1]
		n, ok := asked.Traits().Number(task.Regroups)
		if !ok {
			t.Fatalf("%s has no regroups", asked)
		}
		orders := 0
		if in(a, b) {
			orders++
		}
		if s.IsAddition() && a != b && in(b, a) {
			orders++
		}
		if orders > 0 {
			counts[n] += orders
		}
	}
	return counts
}

func between(low, high, n int) bool { return low <= n && n <= high }

func TestRegroupingsOfSums(t *testing.T) {
	tasks := additions(everything(t, "facts-within-20", "add-ones", "add-tens", "add-two-digit", "add-past-100"))

	// Holte (1997), Amer. Math. Monthly 104: of the 8,100 ordered pairs of two-digit
	// numbers, so many need no, one, two regroupings (full enumeration).
	want := map[int]int{0: 1980, 1: 3735, 2: 2385}
	got := regroupings(t, tasks, func(a, b int) bool { return between(10, 99, a) && between(10, 99, b) })
	if !maps.Equal(got, want) {
		t.Errorf("10-99 + 10-99: got %v, want %v", got, want)
	}

	// Full enumeration of 10-99 + 1-9, 810 pairs: the ones carry in 45 of 90 pairs of
	// digits, and the tens after it where the number has nine tens.
	want = map[int]int{0: 405, 1: 360, 2: 45}
	got = regroupings(t, tasks, func(a, b int) bool { return between(10, 99, a) && between(1, 9, b) })
	if !maps.Equal(got, want) {
		t.Errorf("10-99 + 1-9: got %v, want %v", got, want)
	}
}

func additions(tasks []task.Task) []task.Task {
	return slices.DeleteFunc(tasks, func(asked task.Task) bool { return !asked.(task.Sentence).IsAddition() })
}

func subtractions(tasks []task.Task) []task.Task {
	return slices.DeleteFunc(tasks, func(asked task.Task) bool { return asked.(task.Sentence).IsAddition() })
}

func TestSumsAroundAHundred(t *testing.T) {
	over, exactly := 0, 0
	for _, asked := range additions(everything(t, "facts-within-20", "add-tens", "add-two-digit", "add-past-100")) {
		s := asked.(task.Sentence)
		if min(s.Terms[0], s.Terms[1]) < 10 {
			continue
		}
		orders := 2
		if s.Terms[0] == s.Terms[1] {
			orders = 1
		}
		switch traits := asked.Traits(); "true" {
		case traits.Get(task.Crosses100):
			over += orders
		case traits.Get(task.Reaches100):
			exactly += orders
		}
	}
	// Full enumeration of the 8,100 ordered pairs of 10-99: 4,779 sums over 100, 81
	// sums of exactly 100.
	if over != 4779 || exactly != 81 {
		t.Errorf("got %d over and %d exactly 100, want 4779 and 81", over, exactly)
	}
}

func TestRegroupingsOfDifferences(t *testing.T) {
	// Full enumeration of 10-99 − 10-99 with a ≥ b: 4,095 pairs.
	want := map[int]int{0: 2475, 1: 1620}
	tasks := subtractions(everything(t, "facts-within-20", "subtract-tens", "subtract-two-digit", "subtract-regrouping"))
	got := regroupings(t, tasks, func(a, b int) bool { return between(10, 99, a) && between(10, 99, b) })
	if !maps.Equal(got, want) {
		t.Errorf("10-99 - 10-99: got %v, want %v", got, want)
	}

	// Full enumeration of 100-999 − 100-999 with a ≥ b: 405,450 pairs. One of them, 100 − 100,
	// is within 100.
	want = map[int]int{0: 136125, 1: 180225, 2: 89100}
	tasks = everything(t, "subtract-two-digit", "subtract-within-1000")
	got = regroupings(t, tasks, func(a, b int) bool { return between(100, 999, a) && between(100, 999, b) })
	if !maps.Equal(got, want) {
		t.Errorf("100-999 - 100-999: got %v, want %v", got, want)
	}
}

func TestClockFaces(t *testing.T) {
	faces := make(map[float64][]string) // by the angle between the hands
	total := 0
	for _, asked := range everything(t, "clock-hour", "clock-half-hour", "clock-quarter-hour", "clock-five-minutes") {
		c := asked.(task.Clock)
		if c.Verb == task.Read && c.Time.Half == "" {
			total++
			faces[c.Time.Between()] = append(faces[c.Time.Between()], c.Time.String())
		}
	}
	// Geometry of a 12-hour dial, full enumeration: among the 144 five-minute faces the hands are
	// together only at 12:00, straight only at 6:00, square only at 3:00 and 9:00.
	if total != 144 || len(faces[0]) != 1 || len(faces[180]) != 1 || len(faces[90]) != 2 {
		t.Errorf("got %d faces, together %v, straight %v, square %v", total, faces[0], faces[180], faces[90])
	}
	where := wishes(t, "hands_overlap = true")
	for skill, want := range map[standards.SkillID]int{"clock-hour": 3, "clock-half-hour": 0, "clock-quarter-hour": 0, "clock-five-minutes": 0} {
		if got, err := generate.Count(skill, where); err != nil || got.Distinct != want {
			t.Errorf("%s, hands together: got %v, %v, want %d", skill, got, err, want)
		}
	}
}

func TestCountKnowsBothNumbers(t *testing.T) {
	for _, row := range []struct {
		skill         standards.SkillID
		where         string
		distinct, all int
	}{
		// Partners of ten from 1 to 9 (standard K.OA.A.4), with either part asked for.
		{"make-ten", "addends = 2", 18, 18},
		// Tens from 10 to 90 less tens (standard 1.NBT.C.6): 9·10/2 pairs.
		{"subtract-tens", "digits = 2", 45, 45},
		// Twelve hours, each to read, to draw and to say.
		{"clock-hour", "clock_step = hour", 36, 36},
		// Three and four of 90 numbers with repetition, C(92,3) + C(93,4); with order
		// 90³ + 90⁴ (identity).
		{"add-several", "addends >= 3", 125_580 + 2_919_735, 729_000 + 65_610_000},
		// Different times out of 12·12, three at a time, C(144,3), and out of 12·4, four
		// at a time, C(48,4); the twelve hours alone C(12,3) + C(12,4).
		{"match-clocks", "regroups != 1", 487_344 + 194_580, 487_344 + 194_580},
		{"match-clocks", "clock_step = hour", 220 + 495, 220 + 495},
		// Ordered pairs 10-99: the doubles 50 + 50 to 99 + 99 but one lie past 100.
		{"add-past-100", "doubles = true", 49, 49},
	} {
		got, err := generate.Count(row.skill, wishes(t, row.where))
		if want := (generate.Possible{Distinct: row.distinct, Presentations: row.all}); err != nil || got != want {
			t.Errorf("%s, %s: got %+v, %v, want %+v", row.skill, row.where, got, err, want)
		}
	}
}

func wishes(t *testing.T, texts ...string) standards.Where {
	t.Helper()
	where, err := standards.ParseWhere(texts)
	if err != nil {
		t.Fatal(err)
	}
	return where
}
