package sheet

import (
	"slices"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
)

// On a paper in both languages every word of the English and of the Spanish item stands, and what needs no words is drawn
// once, as in English alone: for items of every skill in every look.
func TestBothLanguages(t *testing.T) {
	once := 0
	for _, skill := range standards.Catalogue() {
		made, err := generate.Make(generate.Request{Skill: skill.ID, Count: 3, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		for _, asked := range made.Tasks {
			for _, look := range asked.Looks() {
				texts := map[string][]string{}
				for name, o := range map[string]Options{"en": {Font: BuiltInFont}, "es": {Font: BuiltInFont, Lang: "es"}, "both": {Font: BuiltInFont, Both: true}} {
					s, err := o.settle()
					if err != nil {
						t.Fatal(err)
					}
					items, err := s.items([]Question{{Number: 1, Task: asked, Look: look}})
					if err != nil {
						t.Fatal(err)
					}
					for _, one := range textsOf(items[0]) {
						texts[name] = append(texts[name], one.text)
					}
				}
				both := " " + strings.Join(texts["both"], " ") + " "
				for _, text := range slices.Concat(texts["en"], texts["es"]) {
					for _, word := range strings.Fields(text) {
						if !strings.Contains(both, " "+word+" ") {
							t.Errorf("%s as %s: %q is not on the paper in both languages: %s", asked, look, word, both)
						}
					}
				}
				if slices.Equal(texts["en"], texts["es"]) {
					if once++; !slices.Equal(texts["en"], texts["both"]) {
						t.Errorf("%s as %s needs no words, and stands twice: %s", asked, look, both)
					}
				}
			}
		}
	}
	if once < 50 {
		t.Errorf("only %d items without words", once)
	}
	if _, err := (Options{Both: true, Lang: "es"}).settle(); err == nil {
		t.Error("both languages, and one of them, were taken")
	}
}
