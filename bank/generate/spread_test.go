package generate_test

import (
	"reflect"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Of all rows of five numbers far most count by ones, tens or hundreds; spread, each step and
// direction comes as often as any other.
func TestSpreadMakesKindsEven(t *testing.T) {
	made, err := generate.Make(generate.Request{Skill: "count-by-steps", Count: 100, Seed: 3, Spread: true})
	if err != nil || len(made.Tasks) != 100 {
		t.Fatalf("%v, %v", made, err)
	}
	counts := map[[2]string]int{}
	for _, asked := range made.Tasks {
		ts := asked.Traits()
		counts[[2]string{ts[task.Step], ts[task.Asks]}]++
	}
	for _, step := range []string{"1", "2", "5", "10", "100"} {
		for _, way := range []string{"up", "down"} {
			if n := counts[[2]string{step, way}]; n != 10 {
				t.Errorf("%d of 100 rows count %s by %s, want 10", n, way, step)
			}
		}
	}
}

// Spread or not: no item twice, none that is taken, each of the skill; the same seed makes the
// same, and fewer are the first of more.
func TestSpreadKeepsTheRules(t *testing.T) {
	for _, skill := range []standards.SkillID{"count-by-steps", "add-several", "small-arrays", "stories-within-20", "clock-hour"} {
		taken := map[string]bool{}
		request := generate.Request{Skill: skill, Count: 12, Seed: 5, Spread: true, Taken: func(f string) bool { return taken[f] }}
		first, err := generate.Make(request)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := generate.Make(request)
		request.Count = 8
		fewer, _ := generate.Make(request)
		request.Count = 12
		if !reflect.DeepEqual(first, again) || !reflect.DeepEqual(first.Tasks[:8], fewer.Tasks) {
			t.Errorf("%s: the same seed makes other items", skill)
		}
		for _, asked := range first.Tasks {
			if taken[asked.Fingerprint()] || standards.SkillOf(asked) != skill {
				t.Errorf("%s: %s stands twice, or is of another skill", skill, asked)
			}
			taken[asked.Fingerprint()] = true
		}
		next, err := generate.Make(request)
		if err != nil {
			t.Fatal(err)
		}
		for _, asked := range next.Tasks {
			if taken[asked.Fingerprint()] {
				t.Errorf("%s: %s was taken", skill, asked)
			}
		}
	}
	all, err := generate.Make(generate.Request{Skill: "small-arrays", Count: 100, Seed: 1, Spread: true})
	if err != nil || !all.Less || all.Possible != 16 || len(all.Tasks) != 16 { // 2 to 5 rows of 2 to 5
		t.Errorf("got %s, %v; want all 16 arrays", all, err)
	}
}
