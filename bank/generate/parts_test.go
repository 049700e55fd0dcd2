package generate_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// standardPart is a part of what a published standard asks, in our own words, with the skill whose items bear it and how
// such an item is told: Common Core State Standards for Mathematics (2010).
type standardPart struct {
	code  task.Code
	part  string
	skill standards.SkillID
	where string // conditions on its traits, separated by ", "; empty for none
	item  string // a pattern of the item as told says it
}

// told is an item with its key and its looks: "6 + ? = 10 => 4 as sentence bond".
func told(asked task.Task) string {
	var looks []string
	for _, l := range asked.Looks() {
		looks = append(looks, string(l))
	}
	return asked.String() + " => " + asked.Key() + " as " + strings.Join(looks, " ")
}

// Each standard that is said to be served, in full or partly, has items that bear each of its parts, and an item that bears
// a part is of that standard.
func TestEachPartOfEachStandardHasItems(t *testing.T) {
	parts := slices.Concat(partsOfKindergarten, partsOfGrade1, partsOfGrade2)
	for _, c := range standards.AllCoverage() {
		listed := slices.ContainsFunc(parts, func(p standardPart) bool { return p.code == c.Code })
		if listed != (c.Cover != standards.ByWatching) {
			t.Errorf("%s is %s, its parts are listed: %v", c.Code, c.Cover, listed)
		}
	}
	made := map[standards.SkillID][]task.Task{}
	more := func(skill standards.SkillID, where standards.Where, count int) []task.Task {
		r, err := generate.Make(generate.Request{Skill: skill, Where: where, Count: count, Seed: 3, Spread: true})
		if err != nil {
			t.Errorf("%s: %v", skill, err)
		}
		return r.Tasks
	}
	for _, p := range parts {
		if made[p.skill] == nil {
			made[p.skill] = more(p.skill, nil, 300)
		}
		var where standards.Where
		if p.where != "" {
			where = wishes(t, strings.Split(p.where, ", ")...)
		}
		pattern := regexp.MustCompile(p.item)
		bears := func(asked task.Task) bool {
			return where.Holds(asked.Traits()) && slices.Contains(asked.Codes(), p.code) && pattern.MatchString(told(asked))
		}
		if !slices.ContainsFunc(made[p.skill], bears) && !slices.ContainsFunc(more(p.skill, where, 400), bears) {
			t.Errorf("%s: no item of %s to %s", p.code, p.skill, p.part)
		}
	}
}
