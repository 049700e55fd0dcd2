package standards_test

import (
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Every look that a skill's items take can be asked for by its name, and tells what it is.
func TestEveryLookOfASkillIsKnown(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		for _, look := range skill.Looks {
			if known, err := task.ParseLook(string(look)); err != nil || known != look || look.Title() == string(look) {
				t.Errorf("the look %s of %s: %v, title %q", look, skill.ID, err, look.Title())
			}
		}
	}
}
