package sheet

import (
	"math"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

// Nothing of any skill stands out of its drawing or is wider than the page, whatever the paper, the print and the
// language; on the key neither.
func TestEverySkillKeepsToThePage(t *testing.T) {
	for _, skill := range standards.Catalogue() {
		for _, key := range []bool{false, true} {
			for _, k := range kitsOfAll(t, key) {
				for _, asked := range made(t, skill.ID, 8) {
					checkBounds(t, k, asked)
					checkTextsApart(t, k, asked)
				}
			}
		}
	}
}

// checkTextsApart fails when two texts on one line touch, so that 0 and 5 would read as 05.
func checkTextsApart(t *testing.T, k kit, asked task.Task) {
	t.Helper()
	texts := record(t, k, asked, asked.Looks()[0]).texts
	for i, a := range texts {
		for _, b := range texts[:i] {
			if apart := math.Abs(a.at.x-b.at.x) - (a.w+b.w)/2; math.Abs(a.at.y-b.at.y) < .1 && apart < .2*a.size {
				t.Errorf("%s: %q and %q are %.1f mm apart", asked, b.s, a.s, apart)
			}
		}
	}
}
