package generate

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"evenhand/standards"
)

var update = flag.Bool("update", false, "write testdata/difficulty/bands.txt anew; read it before you commit it")

// mostLooked is how many tasks of a skill the table looks at.
const mostLooked = 20_000

// difficultiesOf are those of the tasks of a skill, of a sample where there are very many, from
// easy to hard.
func difficultiesOf(skill standards.SkillID) []standards.Difficulty { return difficulties()[skill] }

var difficulties = sync.OnceValue(func() map[standards.SkillID][]standards.Difficulty {
	all := map[standards.SkillID][]standards.Difficulty{}
	for skill := range spaces {
		all[skill] = lookedAt(skill)
	}
	return all
})

func lookedAt(skill standards.SkillID) (list []standards.Difficulty) {
	all := spaces[skill]
	for i := range shuffled(all.size, rand.New(rand.NewPCG(1, 0))) {
		asked := all.at(i)
		if asked == nil || standards.SkillOf(asked) != skill {
			continue
		}
		if list = append(list, standards.Predict(skill, asked.Traits())); len(list) == mostLooked {
			break
		}
	}
	slices.Sort(list)
	return list
}

// bandsIn are the shares of warm-up, core and stretch in 100, for pupils of a grade.
func bandsIn(skill standards.SkillID, list []standards.Difficulty, grade int) string {
	counts := map[standards.Band]int{}
	for _, d := range list {
		counts[d.For(skill, standards.Level(grade)).Band()]++
	}
	var cells []string
	for _, band := range standards.Bands() {
		cells = append(cells, fmt.Sprintf("%3d", (200*counts[band]+len(list))/(2*len(list))))
	}
	return strings.Join(cells, " ")
}

// How the default table divides each skill's space into bands, for the pupils of each grade,
// is kept in a table that a person has read for sense: no source. It changes only on purpose.
func TestBandsOfEverySkill(t *testing.T) {
	var text strings.Builder
	fmt.Fprintf(&text, "%-24s%-7s%-8s%-14s%-14s%-14s%-8s%s\n", "", "", "", "kindergarten", "grade 1", "grade 2", "own", "grade")
	fmt.Fprintf(&text, "%-24s%-7s%-8s%-14s%-14s%-14s%-8s%s\n", "skill", "grade", "values", "warm core str", "warm core str", "warm core str", "easiest", "hardest")
	for _, skill := range standards.Catalogue() {
		if _, ok := spaces[skill.ID]; !ok {
			continue
		}
		list := difficultiesOf(skill.ID)
		values := len(slices.Compact(slices.Clone(list)))
		easiest, hardest := list[0], list[len(list)-1]
		fmt.Fprintf(&text, "%-24s%-7s%-8d%-14s%-14s%-14s%-8d%d\n", skill.ID, skill.GradeName(), values,
			bandsIn(skill.ID, list, 0), bandsIn(skill.ID, list, 1), bandsIn(skill.ID, list, 2), easiest.Percent(), hardest.Percent())
		if len(list) > 20 && values == 1 {
			t.Errorf("%s has %d tasks of one and the same difficulty", skill.ID, len(list))
		}
	}
	// A facts quiz can be of more than warm-ups (common practice: a fifth and more).
	facts := 0
	list := difficultiesOf("facts-within-20")
	for _, d := range list {
		if d.Band() != standards.WarmUp {
			facts++
		}
	}
	if 5*facts < len(list) {
		t.Errorf("%d of %d facts are no warm-up", facts, len(list))
	}
	path := filepath.Join("..", "..", "testdata", "difficulty", "bands.txt")
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil || string(want) != text.String() {
		t.Errorf("%s is no longer what the table of difficulty gives (%v); go test ./bank/generate -run Bands -update writes it anew", path, err)
	}
}

// An item by hand is neither among the easiest nor among the hardest of its skill: the difficulty
// that stands for it lies between the quartiles of all its tasks (common practice).
func TestAUsualTaskIsOfMiddlingDifficulty(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		list := difficultiesOf(skill.ID)
		low, high := list[(len(list)-1)/4], list[(len(list)-1)*3/4]
		if got := standards.Predict(skill.ID, standards.Usual(skill.ID)); got < low || got > high {
			t.Errorf("a usual task of %s has the difficulty %v; half of its tasks lie between %v and %v", skill.ID, got, low, high)
		}
	}
}
