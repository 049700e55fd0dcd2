package followup

import (
	"testing"

	"evenhand/assemble/sheet"
	"evenhand/standards"
	"evenhand/standards/task"
)

// DoneFor lets tests ask for an example where nothing is taken.
func DoneFor(skill standards.Skill, kinds []*task.MisstepKind, seed uint64) (sheet.Example, bool) {
	return exampleOf(skill, kinds, seed, func(task.Task) bool { return false })
}

// The missteps that have a way of their own are missteps.
func TestWaysAreOfMissteps(t *testing.T) {
	for name := range waysOf {
		if _, err := task.ParseMisstep(name); err != nil {
			t.Error(err)
		}
	}
}

// Ashlock, Error Patterns in Computation: a ten is dropped, and both digits of a column are written, only where a
// ten was made.
func TestTelling(t *testing.T) {
	for _, c := range []struct{ skill, misstep, want string }{
		{"add-two-digit", "ten dropped", "regroups >= 1"},
		{"add-two-digit", "both digits written", "regroups >= 1"},
		{"subtract-regrouping", "smaller digit from larger", ""}, // it can show in all of them
	} {
		kind, err := task.ParseMisstep(c.misstep)
		if err != nil {
			t.Fatal(err)
		}
		if got := telling(standards.SkillID(c.skill), []*task.MisstepKind{kind}).String(); got != c.want {
			t.Errorf("%s in %s: %q, want %q", c.misstep, c.skill, got, c.want)
		}
	}
}
