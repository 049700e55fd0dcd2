package intake

import (
	"strings"
	"sync"

	"evenhand/standards"
)

type skillPhrase struct {
	phrase string
	may    []standards.SkillID
}

// skillWords are phrases that colleagues use for skills, each with the skills it may
// mean; a phrase with several says only that the item is one of them.
var skillWords = []skillPhrase{
	{"facts", []standards.SkillID{"facts-within-20", "make-ten"}},
	{"addition facts", []standards.SkillID{"facts-within-20"}},
	{"subtraction facts", []standards.SkillID{"facts-within-20"}},
	{"add within 20", []standards.SkillID{"facts-within-20"}},
	{"subtract within 20", []standards.SkillID{"facts-within-20"}},
	{"make 10", []standards.SkillID{"make-ten"}},
	{"making ten", []standards.SkillID{"make-ten"}},
	{"partners of 10", []standards.SkillID{"make-ten"}},
	{"number bonds", []standards.SkillID{"make-ten", "missing-number", "missing-number-larger"}},
	{"three numbers", []standards.SkillID{"three-addends", "add-several"}},
	{"missing number", []standards.SkillID{"missing-number", "missing-number-larger", "make-ten"}},
	{"missing addend", []standards.SkillID{"missing-number", "missing-number-larger", "make-ten"}},
	{"two-digit addition", []standards.SkillID{"add-two-digit", "add-ones", "add-tens", "add-past-100"}},
	{"2-digit addition", []standards.SkillID{"add-two-digit", "add-ones", "add-tens", "add-past-100"}},
	{"adding tens", []standards.SkillID{"add-tens"}},
	{"adding ones", []standards.SkillID{"add-ones"}},
	{"past 100", []standards.SkillID{"add-past-100"}},
	{"over 100", []standards.SkillID{"add-past-100"}},
	{"several addends", []standards.SkillID{"add-several"}},
	{"four addends", []standards.SkillID{"add-several"}},
	{"three-digit addition", []standards.SkillID{"add-within-1000"}},
	{"3-digit addition", []standards.SkillID{"add-within-1000"}},
	{"two-digit subtraction", []standards.SkillID{"subtract-two-digit", "subtract-regrouping", "subtract-tens"}},
	{"2-digit subtraction", []standards.SkillID{"subtract-two-digit", "subtract-regrouping", "subtract-tens"}},
	{"subtract with regrouping", []standards.SkillID{"subtract-regrouping", "subtract-within-1000"}},
	{"subtraction regrouping", []standards.SkillID{"subtract-regrouping", "subtract-within-1000"}},
	{"borrowing", []standards.SkillID{"subtract-regrouping", "subtract-within-1000"}},
	{"three-digit subtraction", []standards.SkillID{"subtract-within-1000"}},
	{"3-digit subtraction", []standards.SkillID{"subtract-within-1000"}},
	{"place value", placeSkills},
	{"valor posicional", placeSkills},
	{"hundreds tens ones", []standards.SkillID{"hundreds-tens-ones"}},
	{"tens and ones", []standards.SkillID{"tens-and-ones"}},
	{"decenas y unidades", []standards.SkillID{"tens-and-ones"}},
	{"expanded", []standards.SkillID{"expanded-form"}},
	{"compare", compareSkills},
	{"comparing", compareSkills},
	{"comparar", compareSkills},
	{"counting", []standards.SkillID{"count-on", "count-by-steps"}},
	{"sequences", []standards.SkillID{"count-on", "count-by-steps"}},
	{"skip counting", []standards.SkillID{"count-by-steps"}},
	{"count by", []standards.SkillID{"count-by-steps"}},
	{"ten more", []standards.SkillID{"ten-more-less", "hundred-more-less"}},
	{"10 more", []standards.SkillID{"ten-more-less", "hundred-more-less"}},
	{"hundred more", []standards.SkillID{"hundred-more-less"}},
	{"100 more", []standards.SkillID{"hundred-more-less"}},
	{"time", clockSkills},
	{"clock", clockSkills},
	{"clocks", clockSkills},
	{"hora", clockSkills},
	{"reloj", clockSkills},
	{"o'clock", []standards.SkillID{"clock-hour"}},
	{"time to the hour", []standards.SkillID{"clock-hour"}},
	{"half past", []standards.SkillID{"clock-half-hour"}},
	{"half hour", []standards.SkillID{"clock-half-hour"}},
	{"quarter hour", []standards.SkillID{"clock-quarter-hour"}},
	{"quarter past", []standards.SkillID{"clock-quarter-hour"}},
	{"five minutes", []standards.SkillID{"clock-five-minutes", "clock-quarter-hour"}},
	{"5 minutes", []standards.SkillID{"clock-five-minutes", "clock-quarter-hour"}},
	{"match clocks", []standards.SkillID{"match-clocks"}},
	{"addition", addSkills},
	{"adding", addSkills},
	{"suma", addSkills},
	{"subtraction", subtractSkills},
	{"subtracting", subtractSkills},
	{"take away", subtractSkills},
	{"resta", subtractSkills},
}

var (
	placeSkills    = []standards.SkillID{"tens-and-ones", "hundreds-tens-ones", "expanded-form"}
	compareSkills  = []standards.SkillID{"compare-within-10", "compare-two-digit", "compare-three-digit"}
	clockSkills    = []standards.SkillID{"clock-hour", "clock-half-hour", "clock-quarter-hour", "clock-five-minutes", "clock-minute", "match-clocks"}
	addSkills      = []standards.SkillID{"facts-within-20", "make-ten", "three-addends", "missing-number", "missing-number-larger", "add-ones", "add-tens", "add-two-digit", "add-past-100", "add-several", "add-within-1000", "add-larger", "add-and-subtract", "expanded-form"}
	subtractSkills = []standards.SkillID{"facts-within-20", "missing-number", "missing-number-larger", "subtract-tens", "subtract-two-digit", "subtract-regrouping", "subtract-within-1000", "subtract-larger", "add-and-subtract"}
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

// skillPhrases are skillWords and what the catalogue calls the skills, in plain words
// between spaces.
var skillPhrases = sync.OnceValue(func() (all []skillPhrase) {
	note := func(phrase string, may ...standards.SkillID) {
		all = append(all, skillPhrase{" " + plainWords(phrase) + " ", may})
	}
	for _, row := range skillWords {
		note(row.phrase, row.may...)
	}
	for _, s := range standards.Catalogue() {
		note(string(s.ID), s.ID)
		note(s.Description, s.ID)
	}
	return all
})
