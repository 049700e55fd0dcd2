package generate_test

import (
	"slices"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Every skill that is said to serve a standard makes items that the classifier gives to
// that standard, so every served standard has items.
func TestGeneratedItemsMeetTheStandardsOfTheirSkill(t *testing.T) {
	made := make(map[standards.SkillID]map[task.Code]bool)
	for _, skill := range standards.Catalogue() {
		r, err := generate.Make(generate.Request{Skill: skill.ID, Count: 3000, Seed: 7})
		if err != nil {
			t.Fatal(err)
		}
		made[skill.ID] = make(map[task.Code]bool)
		for _, asked := range r.Tasks {
			codes := asked.Codes()
			for _, code := range codes {
				made[skill.ID][code] = true
			}
			for _, code := range codes {
				if !slices.Contains(skill.Codes, code) {
					t.Errorf("%s meets %s, which its skill %s does not list", asked, code, skill.ID)
				}
			}
			// No standard up to grade 2 asks to count back.
			if back := asked.Traits().Get(task.Asks) == "down"; len(skill.Codes) > 0 && (len(codes) == 0) != back {
				t.Errorf("%s meets %v", asked, codes)
			}
		}
	}
	served := 0
	for _, c := range standards.AllCoverage() {
		if c.Cover == standards.Served {
			served++
		}
		for _, skill := range c.Skills { // exactly what the items meet
			if !made[skill][c.Code] {
				t.Errorf("%s is said to serve %s, but makes no item of it", skill, c.Code)
			}
		}
	}
	if served == 0 {
		t.Error("no standard is served")
	}
}

// A plan may ask for any look that the catalogue lists for a skill: some item takes it, and
// no item takes another.
func TestGeneratedItemsTakeTheLooksOfTheirSkill(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		r, err := generate.Make(generate.Request{Skill: skill.ID, Count: 5000, Seed: 7})
		if err != nil {
			t.Fatal(err)
		}
		var taken []task.Look
		for _, asked := range r.Tasks {
			for _, look := range asked.Looks() {
				if !slices.Contains(taken, look) {
					taken = append(taken, look)
				}
			}
		}
		for _, look := range task.AllLooks() {
			if lists, takes := slices.Contains(skill.Looks, look), slices.Contains(taken, look); lists != takes {
				t.Errorf("%s lists look %s: %v, its items take it: %v", skill.ID, look, lists, takes)
			}
		}
	}
}
