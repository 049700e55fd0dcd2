package qti_test

import (
	"strings"
	"testing"

	"evenhand/assemble/export/qti"
	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Words of the item's own are what the question asks, in every look of every skill.
func TestOwnWordsAreAsked(t *testing.T) {
	const own = "Three frogs sit by the pond."
	for _, skill := range standards.Catalogue() {
		asked := task.MustParse(skill.Example)
		for _, look := range asked.Looks() {
			item := bank.NewItem(asked, look, bank.Origin{})
			item.ID, item.Wording = "00000000000000000000000000", map[string]string{"en": own}
			it, err := qti.NewItem(item, "en")
			if err != nil {
				t.Fatal(err)
			}
			var stem strings.Builder
			for _, line := range it.Stem {
				for _, part := range line {
					stem.WriteString(part.Text)
				}
			}
			if !strings.HasPrefix(stem.String(), own) {
				t.Errorf("%s as %s asks %q", asked, look, stem.String())
			}
			if _, isStory := asked.(task.Story); isStory && strings.Contains(stem.String(), asked.Prompt("en")) {
				t.Errorf("%s has both wordings: %q", asked, stem.String())
			}
		}
	}
}
