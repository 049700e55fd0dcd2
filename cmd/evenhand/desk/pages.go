package desk

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"errors"
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"net/http"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"evenhand/standards"
)

//go:embed page/*.html
var pageFiles embed.FS

//go:embed look/*
var lookFiles embed.FS

// pages are the templates by language and the name of their file, each with the frame, and the sentences.
type pages struct {
	templates map[string]map[string]*template.Template
	languages map[string]sentences

	// Conditions by what they are called in each language: those on words, and those on numbers by its shape.
	called map[string]standards.Condition
	shaped map[string][]standards.Condition

	strips  remembered[strip, template.HTML]
	filters remembered[filterIn, template.HTML]
}

// frame is what every page is given beside its own data.
type frame struct {
	Said     sentences
	Who      Person // nobody before somebody has signed in
	SignedIn bool   // and can sign out
	Demo     bool   // this is the demo school, to be thrown away
	Home     string // from there, the person's own desk
	Closes   bool   // the desk can be closed from its pages
	Rooms    template.HTML
	Page     string // the page's name
	Path     string // its address, to come back to
	Data     any
}

// room is a page of the frame's strip.
type room struct {
	Name, Path string
	right      right
}

// allRooms are in the order of the week.
var allRooms = []room{
	{"week", "/", toRead},
	{"items", "/items", toRead},
	{"lists", "/lists", toRead},
	{"plans", "/plans", toRead},
	{"quizzes", "/quizzes", toRead},
	{"marks", "/marks", toMark},
	{"class", "/class", toMark},
}

// strip is all that the frame's strip depends on.
type strip struct {
	lang         string
	in           string // the address of the room that the page belongs to
	alone, marks bool   // the desk of one person alone; of somebody who may see marks
}

// rooms are the strip of those that the visitor may enter.
func (v *visit) rooms() (template.HTML, error) {
	if v.who.Name == "" {
		return "", nil
	}
	s := strip{v.said.Lang, roomOf(v.URL.Path), v.desk.alone(), v.who.Marks}
	return v.desk.pages.strips.of(s, func() (template.HTML, error) {
		last := room{"team", "/team", toRead}
		if s.alone {
			last.Name = "safe"
		}
		list := slices.DeleteFunc(append(slices.Clone(allRooms), last), func(r room) bool { return r.right == toMark && !s.marks })
		return v.piece("week", "rooms", struct {
			Said  sentences
			In    string
			Rooms []room
		}{v.said, s.in, list})
	})
}

// loadPages reads the pages once for all desks: they are in the program and never change.
var loadPages = sync.OnceValues(func() (*pages, error) {
	languages, err := readSentences()
	if err != nil {
		return nil, err
	}
	p := &pages{
		templates: map[string]map[string]*template.Template{}, languages: languages,
		strips: remembered[strip, template.HTML]{most: 100}, filters: remembered[filterIn, template.HTML]{most: 200},
	}
	for language, said := range languages {
		if p.templates[language], err = said.templates(); err != nil {
			return nil, err
		}
	}
	p.findCalled()
	return p, nil
})

// templates are those of all pages in one language.
func (s sentences) templates() (map[string]*template.Template, error) {
	files, err := fs.Glob(pageFiles, "page/*.html")
	if err != nil {
		return nil, err
	}
	frame := template.New("").Funcs(template.FuncMap{"points": points})
	for _, shared := range framing {
		if err := s.parse(frame, shared); err != nil {
			return nil, err
		}
	}
	all := map[string]*template.Template{}
	for _, file := range files {
		if slices.Contains(framing, file) {
			continue
		}
		page, err := frame.Clone()
		if err != nil {
			return nil, err
		}
		if err := s.parse(page, file); err != nil {
			return nil, err
		}
		all[strings.TrimSuffix(path.Base(file), ".html")] = page
	}
	return all, nil
}

// framing are the files that every page needs.
var framing = []string{"page/frame.html", "page/shared.html"}

// parse adds a file to the templates of a page, with the sentences that need none of the page's data already in it.
func (s sentences) parse(page *template.Template, file string) error {
	text, err := pageFiles.ReadFile(file)
	if err != nil {
		return err
	}
	filled, err := s.fill(string(text))
	if err == nil {
		_, err = page.New(path.Base(file)).Parse(filled)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return nil
}

// Where a template says a sentence that is given no data, and where it names the language or a file of the look.
var (
	bareSentence = regexp.MustCompile(`\{\{(?:\$?\.Said|\$said|\$s)\.Say "([^"]+)"\}\}`)
	bareLanguage = "{{.Said.Lang}}"
	bareLook     = regexp.MustCompile(`\{\{look "([^"]+)"\}\}`)
)

// fill puts these into a template's text. All stand between tags or in quoted attributes, for which they are escaped
// alike.
func (s sentences) fill(text string) (filled string, missing error) {
	filled = bareSentence.ReplaceAllStringFunc(text, func(asked string) string {
		said, err := s.Say(bareSentence.FindStringSubmatch(asked)[1])
		missing = errors.Join(missing, err)
		return template.HTMLEscapeString(said)
	})
	look := lookNames()
	filled = bareLook.ReplaceAllStringFunc(filled, func(asked string) string {
		return look[bareLook.FindStringSubmatch(asked)[1]]
	})
	return strings.ReplaceAll(filled, bareLanguage, s.Lang), missing
}

// points are thousandths of a point as they are shown.
func points(thousandths int) string {
	return strconv.FormatFloat(float64(thousandths)/1000, 'f', 2, 64)
}

// write draws a page, or the one part of it that is asked for.
func (p *pages) write(w io.Writer, page, part string, data frame) error {
	t, ok := p.templates[data.Said.Lang][page]
	if !ok {
		return fmt.Errorf("no page %q", page)
	}
	if part != "" && t.Lookup(part) != nil {
		return t.ExecuteTemplate(w, part, data)
	}
	return t.ExecuteTemplate(w, "frame.html", data)
}

// piece is a part of a page's template, filled by itself.
func (v *visit) piece(page, part string, data any) (template.HTML, error) {
	var text strings.Builder
	err := v.desk.pages.templates[v.said.Lang][page].ExecuteTemplate(&text, part, data)
	return template.HTML(text.String()), err
}

func (p *pages) said(language string) sentences { return p.languages[language] }

// lookNames gives the style sheet and the script addresses that change with their content, so that
// a browser may keep them for ever.
func lookNames() map[string]string {
	names := map[string]string{}
	files, _ := fs.Glob(lookFiles, "look/*")
	for _, file := range files {
		text, _ := lookFiles.ReadFile(file)
		sum := sha256.Sum256(text)
		names[path.Base(file)] = "/look/" + hex.EncodeToString(sum[:6]) + "/" + path.Base(file)
	}
	return names
}

// look serves the style sheet and the script.
func (d *Desk) look() http.Handler {
	known := map[string]string{}
	for name, address := range lookNames() {
		known[address] = name
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name, ok := known[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		http.ServeFileFS(w, r, lookFiles, "look/"+name)
	})
}
