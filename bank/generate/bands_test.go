package generate

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/standards"
)

var update = flag.Bool("update", false, "write testdata/difficulty/bands.txt anew; read it before you commit it")

// mostLooked is how many tasks of a skill the table looks at.
const mostLooked = 20_000

// difficultiesOf are those of the tasks of a skill, of a sample where there are very many.
func difficultiesOf(skill standards.SkillID) (list []standards.Difficulty) {
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
		values := map[standards.Difficulty]bool{}
		easiest, hardest := list[0], list[0]
		for _, d := range list {
			values[d] = true
			easiest, hardest = min(easiest, d), max(hardest, d)
		}
		fmt.Fprintf(&text, "%-24s%-7s%-8d%-14s%-14s%-14s%-8d%d\n", skill.ID, skill.GradeName(), len(values),
			bandsIn(skill.ID, list, 0), bandsIn(skill.ID, list, 1), bandsIn(skill.ID, list, 2), easiest.Percent(), hardest.Percent())
		if len(list) > 20 && len(values) == 1 {
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
