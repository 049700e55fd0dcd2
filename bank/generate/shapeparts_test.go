package generate_test

import (
	"slices"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// What standards about shapes, shares, places, counting out, equal addends, money and number lines ask for, part by part, in our own
// words after Common Core State Standards for Mathematics (2010), and the items that bear each part.
var partsOfShapes = []struct {
	code  task.Code
	part  string
	skill standards.SkillID
	where []string
}{
	{"K.G.A.1", "say where shapes are", "where-shapes-are", nil},
	{"K.G.A.1", "in front and behind", "where-shapes-are", []string{"asks = where, one covered"}},
	{"K.G.A.2", "name shapes as they usually lie", "name-shapes", []string{"misleads = false"}},
	{"K.G.A.2", "name them however they are turned", "name-shapes", []string{"misleads = true"}},
	{"K.G.A.2", "name solids", "name-solids", nil},
	{"K.G.A.3", "say flat or solid", "flat-or-solid", nil},
	{"K.G.B.4", "count sides", "sides-and-corners", []string{"asks = sides"}},
	{"K.G.B.4", "count corners", "sides-and-corners", []string{"asks = corners"}},
	{"K.G.B.5", "draw shapes", "draw-shapes", nil},
	{"K.G.B.6", "make shapes of simple ones", "make-shapes", []string{"asks = pieces"}},
	{"K.G.B.6", "join along full sides", "join-shapes", nil},
	{"K.CC.B.5", "how many in rows", "count-dots", []string{"asks = in rows", "largest = 20"}},
	{"K.CC.B.5", "how many in a circle", "count-dots", []string{"asks = in a circle", "largest = 20"}},
	{"K.CC.B.5", "how many scattered", "count-dots", []string{"asks = scattered", "largest = 10"}},
	{"K.CC.B.5", "count out so many", "count-out", nil},
	{"1.G.A.1", "tell what matters from what doesn't", "find-shapes", []string{"misleads = true"}},
	{"1.G.A.1", "draw a shape that has what matters", "draw-shapes", nil},
	{"1.G.A.2", "make shapes of flat ones", "make-shapes", []string{"asks = pieces"}},
	{"1.G.A.2", "make new shapes of made ones", "make-shapes", []string{"asks = made pieces"}},
	{"1.G.A.3", "cut into equal shares", "cut-shapes", []string{"largest = 4"}},
	{"1.G.A.3", "see whether shares are equal", "equal-shares", []string{"largest = 2"}},
	{"1.G.A.3", "halves and fourths in words", "name-shares", []string{"largest = 4"}},
	{"1.G.A.3", "the whole as so many shares", "shares-in-all", []string{"largest = 2"}},
	{"1.G.A.3", "more shares are smaller ones", "compare-shares", []string{"misleads = false"}},
	{"2.G.A.1", "find shapes by their angles and names", "find-by-corners", nil},
	{"2.G.A.1", "draw shapes of so many angles", "draw-shapes", []string{"largest = 5"}},
	{"2.G.A.1", "count equal faces", "sides-and-corners", []string{"asks = faces"}},
	{"2.G.A.2", "count squares in rows and columns", "rows-of-squares", []string{"asks = squares"}},
	{"2.G.A.2", "cut a rectangle into them", "rows-of-squares", []string{"asks = squares to draw"}},
	{"2.G.A.3", "cut into thirds", "cut-shapes", []string{"largest = 3"}},
	{"2.G.A.3", "thirds in words", "name-shares", []string{"largest = 3"}},
	{"2.G.A.3", "the whole as three thirds", "shares-in-all", []string{"largest = 3"}},
	{"2.G.A.3", "equal shares of other forms", "compare-shares", []string{"misleads = true"}},
	{"2.OA.C.3", "a group of things, odd or even", "odd-or-even-groups", []string{"largest = 20"}},
	{"2.OA.C.3", "an even number as two equal addends", "equal-addends", []string{"largest = 20"}},
	{"2.OA.C.3", "count by twos", "count-by-steps", []string{"step = 2"}},
	{"2.OA.C.4", "how many in rows up to 5 by 5", "small-arrays", []string{"largest = 25"}},
	{"2.OA.C.4", "a sum of equal addends", "array-sums", []string{"largest = 25"}},
	{"2.MD.B.6", "numbers as lengths from 0, read", "read-number-line", nil},
	{"2.MD.B.6", "numbers as lengths from 0, marked", "mark-number-line", nil},
	{"2.MD.C.8", "bills and coins with both signs", "bills-and-coins", nil},
	{"2.MD.C.8", "stories about money", "money-stories", nil},
}

// The same for what is asked by traits.
func TestEachPartAboutShapesHasItems(t *testing.T) {
	for _, row := range partsOfShapes {
		r, err := generate.Make(generate.Request{Skill: row.skill, Where: wishes(t, row.where...), Count: 40, Seed: 9})
		if err != nil || !slices.ContainsFunc(r.Tasks, func(asked task.Task) bool { return slices.Contains(asked.Codes(), row.code) }) {
			t.Errorf("%s, %s: no item of %s bears it (%v)", row.code, row.part, row.skill, err)
		}
	}
}
