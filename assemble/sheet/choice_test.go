package sheet

import (
	"math"
	"strings"
	"testing"

	"evenhand/standards/task"
)

// Haladyna, Downing & Rodriguez (2002): three answers, in order; the key has its mark in the
// box beside the right one, and the sheet has none.
func TestChoicesMarkTheRightAnswer(t *testing.T) {
	for _, text := range []string{
		"27 + 35 = ?", "83 - 47 = ?", "read 4:30", "write thirteen",
		"story add-to change-unknown: 5 + ? = 12, shells, Mia", "8 + 3 = 5 + ?", "10 more than 47 = ?",
	} {
		asked := task.MustParse(text)
		options, at, _ := task.OptionsAt(asked, keyPlace(1))
		key, sheet := recordText(t, true, text, task.LookChoice), recordText(t, false, text, task.LookChoice)
		if got := strings.Join(sheet.words(), " "); !strings.HasSuffix(got, strings.Join(options[:], " ")) || got != strings.Join(key.words(), " ") {
			t.Errorf("%s: the sheet reads %q, want the options %v", text, got, options)
		}
		if len(key.lines) != len(sheet.lines)+2 {
			t.Fatalf("%s: the key has %d lines more, want one mark of two", text, len(key.lines)-len(sheet.lines))
		}
		mark, boxes := key.lines[len(sheet.lines)], key.rects[len(key.rects)-3:]
		nearest := 0
		for i, box := range boxes {
			if inRect(mark.from, box) {
				nearest = i
			}
		}
		option := key.texts[len(key.texts)-3+nearest]
		if nearest != at || option.s != asked.Key() || math.Abs(option.at.y-boxes[nearest].at.y) > boxHeight {
			t.Errorf("%s: the mark is at %s, the key is %s", text, option.s, asked.Key())
		}
	}
}

func inRect(p point, r drawnRect) bool {
	return p.x > r.at.x && p.x < r.at.x+r.w && p.y > r.at.y && p.y < r.at.y+r.h
}

// Haladyna, Downing & Rodriguez (2002): the key's place varies. Of nine sums in a row
// each place holds it three times, as the missteps of sums stand on both sides of it.
func TestKeyPlacesVary(t *testing.T) {
	var counts [3]int
	for number := 1; number <= 9; number++ {
		asked := task.MustParse([]string{"27 + 35", "48 + 36", "19 + 47"}[number%3])
		_, at, ok := task.OptionsAt(asked, keyPlace(number))
		if !ok {
			t.Fatalf("%s can't be asked with three options", asked)
		}
		counts[at]++
	}
	if counts != [3]int{3, 3, 3} {
		t.Errorf("the key stands %v times in the three places, want 3 each", counts)
	}
}

// A question that was given with its answers in their places keeps them, whatever the rule says now.
func TestChoicesAsGiven(t *testing.T) {
	q := Question{Number: 1, Task: task.MustParse("47 + 36 = ?"), Look: task.LookChoice}
	usual := Choices(q)
	given := []string{usual[2], usual[0], usual[1]}
	q.Choices = given
	picture, err := SVG(q, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Join(given, "; "); !strings.Contains(string(picture), want) || strings.Contains(string(picture), strings.Join(usual, "; ")) {
		t.Errorf("the answers are not %q in\n%s", want, picture)
	}
	if shown := Choices(Question{Number: 1, Task: q.Task, Look: task.LookColumn}); shown != nil {
		t.Errorf("a column offers %q", shown)
	}
}
