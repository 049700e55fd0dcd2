package intake

import (
	"slices"
	"strings"
	"sync"

	"evenhand/standards"
)

type skillPhrase struct {
	phrase string
	may    []standards.SkillID
}

// families are words for several skills at once; what colleagues call a single one stands with it
// in the catalogue.
var families = []skillPhrase{
	{"compare", compareSkills},
	{"comparing", compareSkills},
	{"comparar", compareSkills},
	{"time", clockSkills},
	{"clock", clockSkills},
	{"hora", clockSkills},
	{"reloj", clockSkills},
	{"relojes", clockSkills},
	{"addition", addSkills},
	{"adding", addSkills},
	{"suma", addSkills},
	{"subtraction", subtractSkills},
	{"subtracting", subtractSkills},
	{"take away", subtractSkills},
	{"resta", subtractSkills},
}

var (
	compareSkills = []standards.SkillID{"compare-within-10", "compare-two-digit", "compare-three-digit"}
	clockSkills   = []standards.SkillID{"clock-hour", "clock-half-hour", "clock-quarter-hour", "clock-five-minutes", "clock-minute", "match-clocks"}
	addSkills     = []standards.SkillID{
		"facts-within-20", "make-ten", "three-addends", "missing-number", "missing-number-larger", "add-ones",
		"add-tens", "add-two-digit", "add-past-100", "add-several", "add-within-1000", "add-larger",
		"add-and-subtract", "expanded-form",
	}
	subtractSkills = []standards.SkillID{
		"facts-within-20", "missing-number", "missing-number-larger", "subtract-tens", "subtract-two-digit",
		"subtract-regrouping", "subtract-within-1000", "subtract-larger", "add-and-subtract",
	}
)

// skillsNamed are the skills that a colleague's word for a skill may mean: its ID,
// else the longest phrase in it that is known here or is a skill's name or description
// in the catalogue. None when nothing in it is known.
func skillsNamed(text string) []standards.SkillID {
	if len(text) > longestHeadingBytes {
		return nil
	}
	if id, err := standards.ParseSkill(text); err == nil {
		return []standards.SkillID{id}
	}
	clean := " " + plainWords(text) + " "
	longest := 0
	var may []standards.SkillID
	for _, p := range skillPhrases() {
		if len(p.phrase) > longest && strings.Contains(clean, p.phrase) {
			longest, may = len(p.phrase), p.may
		}
	}
	return may
}

// skillPhrases are the families and what colleagues and the catalogue call the skills, in plain
// words between spaces.
var skillPhrases = sync.OnceValue(func() (all []skillPhrase) {
	at := make(map[string]int)
	note := func(phrase string, may ...standards.SkillID) {
		phrase = " " + plainWords(phrase) + " "
		i, ok := at[phrase]
		if !ok {
			at[phrase] = len(all)
			all = append(all, skillPhrase{phrase, may})
			return
		}
		for _, skill := range may {
			if !slices.Contains(all[i].may, skill) {
				all[i].may = append(slices.Clip(all[i].may), skill)
			}
		}
	}
	for _, row := range families {
		note(row.phrase, row.may...)
	}
	for _, s := range standards.Catalogue() {
		for _, phrase := range slices.Concat([]string{string(s.ID), s.Description}, s.Words("en"), s.Words("es")) {
			note(phrase, s.ID)
		}
	}
	return all
})
