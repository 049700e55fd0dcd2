package desk_test

import (
	"net/http"
	"strings"
	"testing"

	"evenhand/bank"
	"evenhand/standards"
)

// What papers taught beside guesses that are others now counts for nothing; the first page says so, and no more once
// it is learnt again.
func TestWeekSaysThatWhatWasLearntRests(t *testing.T) {
	browser, address, b := openedWithBank(t)
	level := bank.LevelOf("add-two-digit")
	for _, taught := range []struct {
		beside standards.Difficulty
		rests  bool
	}{{level, false}, {level - 100, true}, {level, false}} {
		table := bank.Table{Number: 1, At: wednesday, By: "MK", Levels: map[standards.SkillID]bank.Learnt{
			"add-two-digit": {Default: taught.beside, Value: level + 300, SE: 100, Answers: 40},
		}}
		if err := b.KeepTable(table); err != nil {
			t.Fatal(err)
		}
		status, text := get(t, browser, address+"/")
		if status != http.StatusOK || strings.Contains(text, "evenhand calibrate learns it again") != taught.rests {
			t.Errorf("learnt beside %v, where the guess is %v, the page (%d) shows\n%s", taught.beside, level, status, text)
		}
	}
}
