package standards

import (
	"strings"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// SkillID names a skill of the catalogue, such as "add-two-digit".
type SkillID string

// Skill is one row of the catalogue.
type Skill struct {
	ID          SkillID
	Grade       int         // 0 is kindergarten; 3 means beyond grade 2
	Codes       []task.Code // the published standards it serves
	Looks       []task.Look // the looks its items can take, the usual one first
	Seconds     int         // usual working time (common practice, no source)
	Base        int         // predicted difficulty before traits, thousandths of a logit (see weights.go)
	Description string      // one line for teachers
	Example     string      // a task of this skill, of usual difficulty (see Usual)
	fits        func(task.Task) bool
}

// GradeName is "K", "1", "2" or "3+".
func (s Skill) GradeName() string { return [...]string{"K", "1", "2", "3+"}[s.Grade] }

// SkillList is a list of skills in teaching order.
type SkillList []Skill

// Catalogue is every skill, in teaching order.
func Catalogue() SkillList { return catalogue }

// Skill finds a skill by its ID.
func (list SkillList) Skill(id SkillID) (Skill, bool) {
	for i := range list { // a skill is large to be handed to a function
		if list[i].ID == id {
			return list[i], true
		}
	}
	return Skill{}, false
}

// IDs lists the IDs.
func (list SkillList) IDs() []string {
	ids := make([]string, len(list))
	for i, s := range list {
		ids[i] = string(s.ID)
	}
	return ids
}

// ParseSkill finds a skill by its name; the error names the nearest.
func ParseSkill(name string) (SkillID, error) {
	id := SkillID(strings.ToLower(strings.TrimSpace(name)))
	if _, ok := catalogue.Skill(id); ok {
		return id, nil
	}
	return "", words.Errorf("no skill %q%s", name, words.Suggest(string(id), catalogue.IDs()))
}

// SkillOf is the skill of a task: the first of the catalogue that fits. Every
// task that Parse reads has one.
func SkillOf(asked task.Task) SkillID {
	for _, s := range catalogue {
		if s.fits(asked) {
			return s.ID
		}
	}
	return ""
}

// Seconds is the expected working time of an item in whole seconds, from its
// skill and look (common practice, no source). An unknown skill counts 45.
func Seconds(skill SkillID, look task.Look) int {
	base := 45
	if s, ok := Catalogue().Skill(skill); ok {
		base = s.Seconds
	}
	return base + look.ExtraSeconds()
}
