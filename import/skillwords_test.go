package intake

import (
	"slices"
	"testing"

	"evenhand/standards"
)

// What colleagues call every skill, in both languages, is read as it, and by one phrase at least
// as it and nothing else, so that a list can say which skill it means.
func TestEverySkillIsCalledSomething(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		for _, lang := range []string{"en", "es"} {
			alone := false
			for _, phrase := range skill.Words(lang) {
				may := skillsNamed(phrase)
				if phrase == "" || !slices.Contains(may, skill.ID) {
					t.Errorf("%s is called %q in %s, which is read as %v", skill.ID, phrase, lang, may)
				}
				alone = alone || len(may) == 1
			}
			if !alone {
				t.Errorf("nothing that %s is called in %s means it alone", skill.ID, lang)
			}
		}
	}
}

// Common practice, no source: headings of colleagues' lists.
func TestSkillsAreKnownByTheirWords(t *testing.T) {
	for phrase, want := range map[string]standards.SkillID{
		"Counting coins": "count-coins", "contar monedas (2.º)": "count-coins", "Even & odd": "odd-or-even",
		"Two-Step Problems": "two-step-stories", "Fact families": "related-facts", "par o impar": "odd-or-even",
		"Telling time to the hour": "clock-hour", "recta numérica": "read-number-line",
	} {
		if may := skillsNamed(phrase); len(may) != 1 || may[0] != want {
			t.Errorf("%q is read as %v, want %s", phrase, may, want)
		}
	}
}
