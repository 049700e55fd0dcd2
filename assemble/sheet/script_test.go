package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
)

// What is read aloud of an item is what stands on it in words and numbers: two items whose sheets have the same print at the same places and
// other pictures are read in the same words, so that no picture is counted, measured or named for the child. No sign is left to be read,
// every word on the sheet is said, and nothing that the child is to read: for items of every skill in every look, in both languages.
func TestScriptTellsNoPicture(t *testing.T) {
	signs := regexp.MustCompile(`[=+<>−×_]|\?\S|(^|[\s(])\?`)
	pictures := 0
	for _, lang := range []string{"en", "es"} {
		s, err := Options{Lang: lang, Font: BuiltInFont}.settle()
		if err != nil {
			t.Fatal(err)
		}
		heard := map[string]string{} // by look and print
		keys := map[string]string{}
		for _, skill := range standards.Catalogue() {
			made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 40, Seed: 1})
			if err != nil {
				t.Fatal(err)
			}
			for _, asked := range made.Tasks {
				for _, look := range asked.Looks() {
					q := Question{Number: 1, Task: asked, Look: look}
					said := s.scripted(q, directionOf(q))
					d, err := s.kit.draw(q)
					if err != nil {
						t.Fatal(err)
					}
					print := ""
					for _, text := range textsOf(d) {
						print += fmt.Sprintf("%s %.0f ", text.text, text.at)
						words := strings.ToLower(s.say(directionOf(q)) + " " + said)
						word := strings.ToLower(strings.TrimSuffix(text.text, "."))
						if said != s.say(dontSay) && wordToRead.MatchString(word) && !strings.Contains(words, word) &&
							!strings.HasSuffix(word, strings.TrimSuffix(said, ".")) {
							t.Errorf("%s as %s: %q is not said: %s", asked, look, word, said)
						}
					}
					place := fmt.Sprintf("%s: %s %s", look, s.say(directionOf(q)), print)
					if other, ok := heard[place]; ok && keys[place] != asked.Key() {
						if pictures++; other != said {
							t.Errorf("%s as %s: only the picture differs, and it is read as %q and %q", asked, look, said, other)
						}
					}
					heard[place], keys[place] = said, asked.Key()
					if sign := signs.FindString(strings.NewReplacer("¿", "", "(", " ").Replace(said)); sign != "" {
						t.Errorf("%s as %s: the sign %q is left to be read: %s", asked, look, sign, said)
					}
				}
			}
		}
	}
	if pictures < 500 {
		t.Errorf("only %d items with the same print as another", pictures)
	}
}
