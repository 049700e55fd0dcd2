package task_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// toldStories are stories of every situation, thing and telling, of girls and boys, with numbers that
// leave one thing over where a story can: many more than a bank would hold.
func toldStories(t *testing.T, tell func(task.Story)) {
	t.Helper()
	count := 0
	for i, situation := range task.Situations() {
		for _, thing := range task.StoryThings(situation) {
			for telling := 1; telling <= task.StoryTellings; telling++ {
				for _, one := range []bool{false, true} {
					story := situation.Example().(task.Story)
					if s := &story.Sentence; one && s.N == 2 && s.Minus[1] {
						s.Terms = [4]int{s.Terms[0], s.Terms[0] - 1}
					}
					names := task.StoryNames()
					first := (i + telling + count) % len(names)
					story.Thing, story.Telling, story.Name = thing, telling, names[first]
					if story.Other != "" {
						story.Other = names[(first+3)%len(names)]
					}
					tell(story)
					count++
				}
			}
		}
	}
	if count < 240 {
		t.Fatalf("%d stories are read, want at least 240", count)
	}
}

// One thing is told of in the singular, more in the plural, in both languages.
func TestStoriesAgreeInNumber(t *testing.T) {
	counted := regexp.MustCompile(`\b([0-9]+) ([^0-9.?]+)`)
	toldStories(t, func(s task.Story) {
		thing := words.ThingNamed(s.Thing)
		for _, lang := range []string{"en", "es"} {
			told, said := s.Prompt(lang), thing.In(lang)
			if said.One == said.Things {
				continue // cm
			}
			for _, m := range counted.FindAllStringSubmatch(told, -1) {
				number, word := m[1], m[2]
				if number == "1" && strings.HasPrefix(word, said.Things) || number != "1" && !strings.HasPrefix(word, said.Things) && strings.HasPrefix(word, said.One) {
					t.Errorf("%s says %q: %s", s, m[0], told)
				}
			}
		}
	})
}

// A girl is "she" and a boy is "he".
func TestStoriesAgreeInPronouns(t *testing.T) {
	ofGirl, ofBoy := regexp.MustCompile(`(?i)\b(she|her)\b`), regexp.MustCompile(`(?i)\b(he|him|his)\b`)
	pronouns := 0
	toldStories(t, func(s task.Story) {
		told, wrong, right := s.Prompt("en"), ofGirl, ofBoy
		if words.ChildNamed(s.Name).Girl {
			wrong, right = ofBoy, ofGirl
		}
		if wrong.MatchString(told) {
			t.Errorf("%s calls %s by another pronoun: %s", s, s.Name, told)
		}
		if right.MatchString(told) {
			pronouns++
		}
		if n := strings.Count(told, s.Name); n > 3 {
			t.Errorf("%s names %s %d times: %s", s, s.Name, n, told)
		}
	})
	if pronouns < 400 {
		t.Errorf("%d stories have a pronoun", pronouns)
	}
}

// The small Spanish words have the gender of the thing, or of its unit, that they speak of: a
// dictionary's genders, from memory, stand in the table of things.
func TestSpanishStoriesAgreeInGender(t *testing.T) {
	feminine := regexp.MustCompile(`(?i)\b(cuántas|algunas|otras)\b|\b(la|una|otra) X\b`)
	masculine := regexp.MustCompile(`(?i)\b(cuántos|algunos|otros)\b|\b(el|un|otro) X\b`)
	toldStories(t, func(s task.Story) {
		thing := words.ThingNamed(s.Thing)
		told := s.Prompt("es")
		if thing.Kind == words.Measured {
			told = strings.ReplaceAll(told, thing.Es.Whole, "X")
			asks := map[bool]string{true: "¿Cuántas ", false: "¿Cuántos "}[thing.UnitFeminine] + thing.Es.Things + " "
			if !strings.Contains(told, asks) {
				t.Errorf("%s does not ask %q: %s", s, asks, told)
			}
			told = strings.ReplaceAll(told, asks, "")
		}
		wrong := feminine
		if thing.Feminine {
			wrong = masculine
		}
		if m := wrong.FindString(told); m != "" {
			t.Errorf("%s says %q: %s", s, m, told)
		}
	})
}

// Every sentence begins with a capital letter, none with a numeral, and the text is tidy.
func TestStoriesAreTidy(t *testing.T) {
	toldStories(t, func(s task.Story) {
		for _, lang := range []string{"en", "es"} {
			told := s.Prompt(lang)
			if strings.Contains(told, "  ") || strings.ContainsAny(told, "{}#") {
				t.Errorf("%s: %q", s, told)
			}
			for _, sentence := range strings.FieldsFunc(told, func(r rune) bool { return r == '.' || r == '?' }) {
				letters := []rune(strings.TrimLeft(sentence, " ¿"))
				if !unicode.IsUpper(letters[0]) {
					t.Errorf("%s: a sentence begins with %q: %s", s, letters[0], told)
				}
			}
		}
	})
}

// The Diccionario de americanismos and common practice, from memory: words that children of Mexico and
// of the United States don't use, or use for something else.
func TestSpanishOfMexicoAndTheUnitedStates(t *testing.T) {
	foreign := regexp.MustCompile(`(?i)\b(pegatinas?|trozos?|marrón|marrones|caracoles|unos|unas|ordenador|zumo|coche|coches|menos cuarto|cifras?)\b`)
	toldStories(t, func(s task.Story) {
		if m := foreign.FindString(s.Prompt("es")); m != "" {
			t.Errorf("%s says %q: %s", s, m, s.Prompt("es"))
		}
	})
}

// Each situation is told in at least three ways, and a story from before there were several is
// told in the first.
func TestSituationsAreToldInSeveralWays(t *testing.T) {
	for _, situation := range task.Situations() {
		for _, thing := range task.StoryThings(situation) {
			for _, lang := range []string{"en", "es"} {
				var all []string
				story := situation.Example().(task.Story)
				story.Thing = thing
				old := story.Prompt(lang)
				for story.Telling = 1; story.Telling <= task.StoryTellings; story.Telling++ {
					all = append(all, story.Prompt(lang))
				}
				if all[0] != old {
					t.Errorf("%s of %s: an older story reads %q now", situation, thing, old)
				}
				if slices.Sort(all); len(slices.Compact(all)) < 3 {
					t.Errorf("%s of %s in %s is told in %d ways", situation, thing, lang, len(slices.Compact(all)))
				}
			}
		}
	}
}
