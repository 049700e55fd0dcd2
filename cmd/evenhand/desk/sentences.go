package desk

import (
	"embed"
	"fmt"
	"html/template"
	"io/fs"
	"net/http"
	"slices"
	"strings"

	"github.com/gocarina/gocsv"
)

//go:embed said/*.csv said/told/*.csv
var saidFiles embed.FS

// languages are those the desk speaks, the usual one first.
var languages = []string{"en", "es"}

// sentences is all that the desk says in one language, by key.
type sentences struct {
	Lang string
	text map[string]string

	instead map[string]string // what is said in place of some of the sentences of other packages

	// Put together once, as they are long and on many pages:
	skills     string        // options of all skills
	conditions template.HTML // options of conditions
}

// sentence is one row of the tables in said/. Its texts may hold verbs of package fmt. In said/told the key is
// what another package tells, and English stands there where a page says it in other words.
type sentence struct {
	Key string `csv:"key"`
	En  string `csv:"en"`
	Es  string `csv:"es"`
}

// readSentences reads all tables; a key that stands twice or lacks a language is an error.
func readSentences() (map[string]sentences, error) {
	all := map[string]sentences{"en": {Lang: "en", text: map[string]string{}}, "es": {Lang: "es", text: map[string]string{}}}
	files, err := fs.Glob(saidFiles, "said/*.csv")
	if err != nil {
		return nil, err
	}
	told, err := fs.Glob(saidFiles, "said/told/*.csv")
	if err != nil {
		return nil, err
	}
	files = append(files, told...)
	for _, file := range files {
		text, err := saidFiles.ReadFile(file)
		if err != nil {
			return nil, err
		}
		var rows []sentence
		if err := gocsv.UnmarshalBytes(text, &rows); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		for _, row := range rows {
			if row.En == "" && slices.Contains(told, file) {
				row.En = row.Key
			}
			if _, twice := all["en"].text[row.Key]; twice || row.En == "" || row.Es == "" {
				return nil, fmt.Errorf("%s: %q stands twice or lacks a language", file, row.Key)
			}
			all["en"].text[row.Key], all["es"].text[row.Key] = row.En, row.Es
		}
	}
	for language, s := range all {
		s.skills = s.skillOptions()
		if s.conditions, err = s.conditionOptions(); err != nil {
			return nil, err
		}
		all[language] = s
	}
	return all, nil
}

// Say is a sentence, in templates.
func (s sentences) Say(key string, args ...any) (string, error) {
	text, ok := s.text[key]
	if !ok {
		return "", fmt.Errorf("no sentence %q", key)
	}
	if len(args) == 0 {
		return text, nil
	}
	return fmt.Sprintf(text, args...), nil
}

// Count is a sentence about a number: the one with .one behind its key for 1, else the one with
// .many.
func (s sentences) Count(key string, n int, args ...any) (string, error) {
	return s.Say(forNumber(key, n), append([]any{n}, args...)...)
}

// count is Count where the sentence is known to be there.
func (s sentences) count(key string, n int) string { return s.say(forNumber(key, n), n) }

// forNumber is the key of the sentence that a number asks for.
func forNumber(key string, n int) string {
	if n == 1 {
		return key + ".one"
	}
	return key + ".many"
}

// say is Say where the key is known to be there; a missing one shows as itself.
func (s sentences) say(key string, args ...any) string {
	text, err := s.Say(key, args...)
	if err != nil {
		return key
	}
	return text
}

// languageOf is the language that a person chose, else the first of the browser's that is spoken
// here.
func languageOf(r *http.Request) string {
	if cookie, err := r.Cookie("language"); err == nil && cookie.Value == "es" {
		return "es"
	} else if err == nil {
		return "en"
	}
	for wanted := range strings.SplitSeq(r.Header.Get("Accept-Language"), ",") {
		for _, language := range languages {
			if strings.HasPrefix(strings.TrimSpace(wanted), language) {
				return language
			}
		}
	}
	return "en"
}

// chooseLanguage keeps the language in the browser and goes back to the page.
func chooseLanguage(v *visit) error {
	language := "en"
	if v.FormValue("language") == "es" {
		language = "es"
	}
	http.SetCookie(v.w, v.desk.cookie("language", language, 400*24*3600))
	return v.to(ownPath(v.FormValue("back")))
}

// ownPath is the address if it is one of this desk's own pages, else the first page.
func ownPath(path string) string {
	if !strings.HasPrefix(path, "/") || strings.HasPrefix(path, "//") || strings.ContainsAny(path, "\\\r\n") {
		return "/"
	}
	return path
}
