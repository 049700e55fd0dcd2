package generate_test

import (
	"regexp"
	"slices"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// partsOfData are the parts of what the published standards about data and length ask, in our own words,
// each with a pattern that the items of one skill bear it: Common Core State Standards for
// Mathematics (2010).
var partsOfData = []struct {
	code  task.Code
	part  string
	skill standards.SkillID
	item  string
}{
	{"K.MD.B.3", "sort things into kinds and count each", "sort-things", `^things .*: how many`},
	{"K.MD.B.3", "put the kinds in order by how many there are", "sort-things", `^things .*: order`},
	{"1.MD.C.4", "organize things of three kinds", "read-data", `^tally chart .*: draw`},
	{"1.MD.C.4", "represent them", "read-data", `^picture graph .*: draw`},
	{"1.MD.C.4", "how many in all", "read-data", `: how many in all`},
	{"1.MD.C.4", "how many in each kind", "read-data", `: how many [a-z]+$`},
	{"1.MD.C.4", "how many more", "read-data", `: how many more`},
	{"1.MD.C.4", "how many fewer", "read-data", `: how many fewer`},
	{"2.MD.A.1", "measure with a ruler from 0", "measure-with-ruler", `^ruler cm 0 to`},
	{"2.MD.A.1", "measure with a ruler not from 0", "measure-with-ruler", `^ruler inches [1-9] to`},
	{"2.MD.A.4", "measure two things and tell the difference in a standard unit", "how-much-longer", `^ruler (cm|inches) .* and .*: how much longer`},
	{"2.MD.A.1", "choose the tool", "measuring-tools", `^tool for`},
	{"K.MD.A.2", "tell which of two is longer", "compare-lengths", `which is longer`},
	{"K.MD.A.2", "tell which of two is taller", "compare-lengths", `which is taller`},
	{"1.MD.A.1", "order three things by length", "order-lengths", `order from shortest`},
	{"1.MD.A.1", "compare two things by a third", "compare-by-third", `of a and c by b`},
	{"1.MD.A.2", "a length as a whole number of units end to end", "measure-with-blocks", `^blocks \d+: how long`},
	{"1.MD.A.2", "no gaps and no overlaps", "measured-right", `which is right`},
	{"2.MD.A.2", "measure with two units, and tell how the numbers go with them", "two-units", `how many short`},
	{"2.MD.A.3", "estimate in inches", "estimate-lengths", `inches$`},
	{"2.MD.A.3", "estimate in feet", "estimate-lengths", `feet$`},
	{"2.MD.A.3", "estimate in centimeters", "estimate-lengths", `centimeters$`},
	{"2.MD.A.3", "estimate in meters", "estimate-lengths", ` meters$`},
	{"2.MD.D.9", "show lengths by a line plot", "line-plots", `^line plot .*: draw`},
	{"2.MD.D.9", "read a scale of whole units", "line-plots", `^line plot .*: how many \d`},
	{"2.MD.D.10", "draw a picture graph of four kinds", "read-graphs", `^picture graph (\w+ \d+, ){3}\w+ \d+: draw`},
	{"2.MD.D.10", "draw a bar graph of four kinds", "read-graphs", `^bar graph (\w+ \d+, ){3}\w+ \d+: draw`},
	{"2.MD.D.10", "put together from a bar graph", "read-graphs", `^bar graph .*: how many in all`},
	{"2.MD.D.10", "compare in a bar graph", "read-graphs", `^bar graph .*: how many (more|fewer)`},
}

// Each part of a standard that is said to be served has items of its code.
func TestEachPartOfAStandardHasItems(t *testing.T) {
	made := map[standards.SkillID][]task.Task{}
	for _, row := range partsOfData {
		if made[row.skill] == nil {
			r, err := generate.Make(generate.Request{Skill: row.skill, Count: 400, Seed: 3, Spread: true})
			if err != nil {
				t.Fatal(err)
			}
			made[row.skill] = r.Tasks
		}
		pattern := regexp.MustCompile(row.item)
		if !slices.ContainsFunc(made[row.skill], func(asked task.Task) bool {
			return pattern.MatchString(asked.String()) && slices.Contains(asked.Codes(), row.code)
		}) {
			t.Errorf("%s: no item to %s", row.code, row.part)
		}
	}
}
