package standards_test

import (
	"fmt"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

// easier is pairs of tasks of which the first is easier for the pupils of either's grade.
func easier(t *testing.T, source string, pairs [][2]string) {
	t.Helper()
	for _, pair := range pairs {
		if a, b := onScale(pair[0]), onScale(pair[1]); a >= b {
			t.Errorf("%s (%v) should be easier than %s (%v): %s", pair[0], a, pair[1], b, source)
		}
	}
}

func TestPublishedOrders(t *testing.T) {
	easier(t, "Groen & Parkman (1972), Psychological Review 79: the smaller addend is counted on, doubles are known", [][2]string{
		{"5 + 1 = ?", "5 + 4 = ?"}, {"2 + 3 = ?", "6 + 5 = ?"}, {"2 + 3 = ?", "9 + 8 = ?"}, {"6 + 2 = ?", "6 + 3 = ?"},
		{"4 + 4 = ?", "5 + 3 = ?"}, {"8 + 8 = ?", "9 + 7 = ?"}, {"0 + 5 = ?", "4 + 5 = ?"}, {"10 + 5 = ?", "8 + 7 = ?"},
	})
	easier(t, "Woods, Resnick & Groen (1975), Journal of Educational Psychology 67, from memory: the shorter way of counting", [][2]string{
		{"9 - 1 = ?", "9 - 4 = ?"}, {"9 - 8 = ?", "9 - 5 = ?"}, {"20 - 1 = ?", "13 - 8 = ?"}, {"10 - 3 = ?", "17 - 9 = ?"},
		{"100 - 1 = ?", "83 - 47 = ?"}, {"300 - 299 = ?", "402 - 178 = ?"}, {"1000 - 1 = ?", "1000 - 475 = ?"},
	})
	easier(t, "Fuson (1992), from memory: taking away is harder than adding", [][2]string{
		{"5 + 3 = ?", "8 - 3 = ?"}, {"8 + 5 = ?", "13 - 5 = ?"}, {"47 + 36 = ?", "402 - 178 = ?"},
	})
	easier(t, "Behr, Erlwanger & Nichols (1980): a sentence is expected to end in one number", [][2]string{
		{"true or false: 8 - 1 = 7", "true or false: 7 = 8 - 1"}, {"true or false: 2 + 2 = 4", "true or false: 7 = 7"},
		{"true or false: 4 + 5 = 9", "true or false: 4 + 5 = 3 + 6"},
	})
	easier(t, "Falkner, Levi & Carpenter (1999), from memory: hardly any child fills in the equal sign's other side", [][2]string{
		{"8 + 4 = ?", "8 + 4 = ? + 5"}, {"8 + ? = 12", "8 + 4 = ? + 5"}, {"? - 8 = 4", "8 + 4 = ? + 5"}, {"83 - 47 = ?", "8 + 4 = ? + 5"},
		{"8 + 3 = 3 + ?", "8 + 4 = ? + 5"},
	})
	easier(t, "Moyer & Landauer (1967): numbers far apart are told apart more easily", [][2]string{
		{"1 ? 10", "9 ? 10"}, {"3 ? 8", "7 ? 8"}, {"more: 1 or 10 dots", "more: 9 or 10 dots"},
	})
	easier(t, "Nuerk, Weger & Willmes (2001), Cognition 82: ones that disagree with the tens make comparing harder", [][2]string{
		{"42 ? 57", "47 ? 62"}, {"20 ? 95", "47 ? 74"},
	})
	easier(t, "Boulton-Lewis, Wilss & Mutch (1997)", [][2]string{
		{"read 4:00", "read 4:30"}, {"read 4:30", "read 4:15"}, {"read 4:15", "read 4:05"}, {"read 4:10", "read 4:12"},
	})
	easier(t, "Earnest, Gonzales & Plant (2018): the hour hand, which moves on after the half hour, is the harder one", [][2]string{
		{"read 4:15", "read 4:45"}, {"read 4:05", "read 4:35"}, {"read 4:15", "draw 4:15"},
	})
	easier(t, "Gelman & Gallistel (1978), from memory: more things, and things without an order", [][2]string{
		{"count 1", "count 20"}, {"count 10", "count 10 scattered"},
	})
	easier(t, "Byrge, Smith & Mix (2014): zeros that keep a place", [][2]string{
		{"write three hundred forty-two", "write three hundred two"}, {"142 = ? hundreds ? tens ? ones", "102 = ? hundreds ? tens ? ones"},
	})
}

// Riley, Greeno & Heller (1983), from memory: shares right of first and second graders. Change
// unknown .56, the other part .39, difference .28 in grade 1; start unknown .70 to .80 and
// compared the other way .35 to .65 in grade 2.
func TestStoriesInThePublishedOrder(t *testing.T) {
	for _, numbers := range []struct{ small, other, whole int }{{5, 3, 8}, {8, 5, 13}, {25, 37, 62}} {
		say := func(situation, sentence string, people string) string {
			return fmt.Sprintf("story %s: %s, books, %s", situation, fmt.Sprintf(sentence, numbers.small, numbers.other, numbers.whole), people)
		}
		result := say("add-to result-unknown", "%[1]d + %[2]d = ?", "Lin")
		change := say("add-to change-unknown", "%[1]d + ? = %[3]d", "Lin")
		part := say("put-together addend-unknown", "%[1]d + ? = %[3]d", "Lin")
		start := say("add-to start-unknown", "? + %[2]d = %[3]d", "Lin")
		difference := say("compare difference-unknown", "%[3]d - %[1]d = ?", "Lin, Kofi")
		other := say("compare bigger-unknown fewer", "%[1]d + %[2]d = ?", "Lin, Kofi")
		smaller := say("compare smaller-unknown more", "%[3]d - %[2]d = ?", "Lin, Kofi")
		easier(t, "Riley, Greeno & Heller (1983), from memory", [][2]string{
			{result, change}, {change, part}, {part, difference}, {start, other}, {start, smaller}, {change, start},
		})
	}
}

// Pairs that stood the wrong way round once; what is right is common practice.
func TestPlainPairs(t *testing.T) {
	easier(t, "common practice", [][2]string{
		{"coins 1, 1, 1, 1", "coins 25, 25"}, {"write 5 in words", "83 - 47 = ?"}, {"304 + 10 = ?", "304 + 120 = ?"},
		{"story two-step: 5 + 4 - 2 = ?, books, Lin", "story two-step: 25 + 14 - 12 = ?, books, Lin"},
		{"? + 4 = 10", "46 + 38 = ?"}, {"? + 3 = 11", "87 - 34 = ?"}, {"1 + 3 = 2 + ?", "12 + 5 = 9 + ?"},
		{"story add-to result-unknown: 5 + 3 = ?, books, Lin", "87 - 34 = ?"}, {"20 ? 90", "47 ? 74"},
		{"10, 20, ?, 40", "13, 23, ?, 43"}, {"35, 40, ?, 50", "50, 45, ?, 35"}, {"array 1 by 2", "array 5 by 5"},
		{"write 11 in words", "write 342 in words"}, {"odd or even: 4", "odd or even: 17"},
	})
	if a, b := difficulty("array 5 by 2"), difficulty("array 2 by 5"); a != b {
		t.Errorf("array 5 by 2 (%v) and 2 by 5 (%v) ask for the same", a, b)
	}
}

// One regrouping weighs the same in every skill, and what a grade's own pupils find easy is
// easier still for the next.
func TestDifficultyForOtherGrades(t *testing.T) {
	// Hill, Bloom, Black & Lipsey (2008), from memory: 1.14, 1.03 and .89 standard deviations a year,
	// of 1.2 logits (common practice).
	for grade, want := range []standards.Difficulty{0, 1368, 2604, 3672, 3672} {
		if got := standards.Level(grade); got != want {
			t.Errorf("grade %d stands at %v, want %v", grade, got, want)
		}
	}
	for _, text := range []string{"7 + 8 = ?", "4 ? 7", "83 - 47 = ?", "2000 - 475 = ?"} {
		skill, d := standards.SkillOf(task.MustParse(text)), difficulty(text)
		if got := d.For(skill, standards.Level(standards.GradeOf(skill))); got != d {
			t.Errorf("%s is %v for its own grade, want %v", text, got, d)
		}
		for grade := range 3 {
			if d.For(skill, standards.Level(grade)) <= d.For(skill, standards.Level(grade+1)) {
				t.Errorf("%s is no easier a year after grade %d", text, grade)
			}
		}
	}
}

func TestWeightsHaveNamesAndSources(t *testing.T) {
	seen := map[string]bool{}
	for _, w := range standards.Weights() {
		if w.Source == "" || w.Name == "" || seen[w.Name] {
			t.Errorf("%q (%q) has no source, or its name stands twice", w.Name, w.Source)
		}
		seen[w.Name] = true
	}
}
