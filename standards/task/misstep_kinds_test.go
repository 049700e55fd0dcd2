package task_test

import (
	"cmp"
	"regexp"
	"strings"
	"testing"

	"evenhand/standards"
	"evenhand/standards/task"
)

// tellingTasks show, with the examples of the skills and the texts of typed, every kind of misstep.
var tellingTasks = []string{
	"402 - 178", "1000 - 1", "true or false: 7 = 8 - 1", "8 + 4 = ? + 5", "more: 6 or 6 dots", "fewer: 6 or 6 dots",
	"write thirteen", "write forty", "write three hundred five", "odd or even: 14", "coins 25, 10, 5, 1",
	"read 3:30", "99, 100, ?, 102", "bar graph cats 4, dogs 7, birds 2: how many cats",
	"draw shape: square", "equal addends of array 3 by 4", "money $5, $1, 25, 10, 10",
	"equal shares: circle strips 3", "equal shares: square mixed 4", "draw shape: rectangle",
	"name shape: rectangle", "find every rectangle: rectangle, square, trapezoid",
}

// seenKinds are the kinds of misstep of those tasks, by name.
func seenKinds() map[string]*task.MisstepKind {
	texts := tellingTasks
	for _, skill := range standards.Catalogue() {
		texts = append(texts, skill.Example)
	}
	for _, row := range typed {
		texts = append(texts, row.text)
	}
	kinds := make(map[string]*task.MisstepKind)
	for _, text := range texts {
		for _, m := range task.MustParse(text).Missteps() {
			for _, kind := range m.Kinds {
				kinds[kind.Name] = kind
			}
		}
	}
	return kinds
}

func TestEveryKindOfMisstepIsToldInSpanish(t *testing.T) {
	seen := seenKinds()
	for _, kind := range task.MisstepKinds() {
		if seen[kind.Name] == nil {
			t.Errorf("no task here shows the misstep %q; add one to tellingTasks", kind.Name)
		}
	}
	told := make(map[string]string)
	inEnglish, inSpanish := map[string]string{}, map[string]string{} // what to work on next, by the other language
	// Where "o" becomes "u": Real Academia Española, Diccionario panhispánico de dudas, "o", from memory.
	soundsLikeO := regexp.MustCompile(`^h?[oó]`)
	for name, kind := range seen {
		text := kind.TellsIn("es")
		switch {
		case text == "" || text == kind.Tells:
			t.Errorf("%q is not told in Spanish: %q", name, text)
		case told[text] != "":
			t.Errorf("%q and %q are told in the same words", name, told[text])
		case soundsLikeO.MatchString(text) || text != strings.TrimSpace(text) || strings.HasSuffix(text, "."):
			t.Errorf("%q can't be joined by %q: %q", name, "; o ", text)
		case kind.TellsIn("en") != kind.Tells || kind.TellsIn("fr") != kind.Tells:
			t.Errorf("%q is not told in English where English is asked", name)
		}
		told[text] = name
		next, siguiente := kind.ReteachIn("en"), kind.ReteachIn("es")
		if siguiente == "" || strings.HasSuffix(siguiente, ".") || next != kind.Reteach ||
			cmp.Or(inSpanish[next], siguiente) != siguiente || cmp.Or(inEnglish[siguiente], next) != next {
			t.Errorf("%q: how to begin, %q, is not said once in Spanish: %q", name, next, siguiente)
		}
		inSpanish[next], inEnglish[siguiente] = siguiente, next
	}
}
