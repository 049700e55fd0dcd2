package desk

import (
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/bank/evidence/report"
	"evenhand/standards/task"
)

// Every sentence that a page or a handler says is there in both languages, with the same verbs, and
// none is there for nothing.
func TestSentences(t *testing.T) {
	all, err := readSentences()
	if err != nil {
		t.Fatal(err)
	}
	if all["en"].text["caution"] != report.Caution {
		t.Error("the caution is another than that of the report")
	}
	for key := range toldKeys(t) { // which TestToldSentences looks at
		delete(all["en"].text, key)
	}
	for key := range all["en"].text { // which TestTasksInSpanish looks at
		if strings.HasPrefix(key, "task.") {
			delete(all["en"].text, key)
		}
	}
	verbs := regexp.MustCompile(`%[a-z]`)
	for key, en := range all["en"].text {
		if a, b := verbs.FindAllString(en, -1), verbs.FindAllString(all["es"].text[key], -1); strings.Join(a, "") != strings.Join(b, "") {
			t.Errorf("%s has %v in English, %v in Spanish", key, a, b)
		}
	}
	source := ""
	for _, glob := range []string{"page/*.html", "*.go"} {
		files, err := fs.Glob(os.DirFS("."), glob)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v", glob, err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			source += string(text)
		}
	}
	for _, said := range regexp.MustCompile(`(?:Say|say|wrong|missing|Count|count)[ (]"([a-z][\w.-]*[\w-])"`).FindAllStringSubmatch(source, -1) {
		_, ok := all["en"].text[said[1]]
		_, counted := all["en"].text[said[1]+".many"]
		if !ok && !counted {
			t.Errorf("%q is said and stands in no table", said[1])
		}
	}
	// Keys that are put together from a name, such as day.monday, are known by what stands before it.
	composed := regexp.MustCompile(`print "([\w.-]+\.)"|print \.\w+ "(\.[\w.-]+)"|"([\w.-]+\.)"\s*\+`)
	var prefixes, endings []string
	for _, found := range composed.FindAllStringSubmatch(source, -1) {
		for _, prefix := range []string{found[1], found[3]} {
			if prefix != "" {
				prefixes = append(prefixes, prefix)
			}
		}
		if found[2] != "" {
			endings = append(endings, found[2])
		}
	}
	given := map[string]bool{} // keys that other packages give
	for _, kind := range assemble.SayingKinds() {
		given[string(kind)] = true
	}
	for _, trait := range task.Conditions() {
		given["trait."+trait.String()] = true
		_, words := trait.Values()
		for _, word := range words {
			given["value."+word] = true
		}
	}
	for _, in := range []assemble.Better{assemble.BetterUses, assemble.BetterCloser, assemble.BetterNearer} {
		given["better."+string(in)] = true
	}
	for key := range given {
		if all["en"].text[key] == "" {
			t.Errorf("%q is given and stands in no table", key)
		}
	}
	for key := range all["en"].text {
		used := given[key] || strings.Contains(source, `"`+strings.TrimSuffix(strings.TrimSuffix(key, ".one"), ".many")+`"`)
		for _, prefix := range prefixes {
			used = used || strings.HasPrefix(key, prefix)
		}
		for _, ending := range endings {
			used = used || strings.HasSuffix(key, ending)
		}
		if !used {
			t.Errorf("%q is never said", key)
		}
	}
}
