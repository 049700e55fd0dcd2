package sheet

import (
	"bytes"
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
)

// On a paper in both languages every word of the English and of the Spanish item stands, and what needs no words is drawn
// once, as in English alone: for items of every skill in every look. No sentence is torn apart: no word that never
// stands alone does.
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
				for piece := range strings.SplitSeq(strings.Trim(both, " "), " · ") {
					if slices.Contains([]string{"y", "de", "la", "las", "los", "el", "en", "que", "un", "una"}, strings.ToLower(piece)) {
						t.Errorf("%s as %s: a sentence is torn apart at %q: %s", asked, look, piece, both)
					}
				}
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

// What is in Spanish on a paper in both languages says so to a screen reader, in the page for a browser (WCAG 2.2, 3.1.2) and in the
// PDF (ISO 32000-1, 14.9.2), and what is in English doesn't; the names of a table's rows don't run into each other.
func TestSpanishLinesSaySo(t *testing.T) {
	table := task.MustParse("table ducks 4, horses 7, hens 2: how many ducks")
	p := Paper{Title: "Friday check", Questions: []Question{
		{Number: 1, Task: task.MustParse("47 + 36 = ?"), Look: task.LookSentence}, {Number: 2, Task: table, Look: table.Looks()[0]},
	}}
	for _, o := range []Options{{Font: BuiltInFont, Both: true}, {Font: BuiltInFont, Lang: "es"}} {
		var page, file bytes.Buffer
		if err := errors.Join(WriteHTML(&page, p, o), WritePDF(&file, p, o)); err != nil {
			t.Fatal(err)
		}
		want := 0
		if o.Both {
			want = 3 // two directions, the words of one item
		}
		marked := regexp.MustCompile(`<g lang="es">\n<text[^>]*>(.*)</text>`).FindAllStringSubmatch(page.String(), -1)
		inFile := len(regexp.MustCompile(`/StructElem .*/Lang \(es\)`).FindAllString(file.String(), -1))
		if len(marked) != want || inFile != want {
			t.Errorf("%+v: %d parts of the page and %d of the file are said to be in Spanish: %q", o, len(marked), inFile, marked)
		}
		for _, text := range marked {
			if !regexp.MustCompile(`Escribe|caballos`).MatchString(text[1]) {
				t.Errorf("%q is said to be in Spanish", text[1])
			}
		}
		if o.Both && !strings.Contains(page.String(), "patos · caballos · gallinas") {
			t.Error("the names of the rows run into each other")
		}
	}
}
