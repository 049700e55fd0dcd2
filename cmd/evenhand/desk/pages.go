package desk

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"net/http"
	"path"
	"slices"
	"strconv"
	"strings"
)

//go:embed page/*.html
var pageFiles embed.FS

//go:embed look/*
var lookFiles embed.FS

// pages are the templates by the name of their file, each with the frame, and the sentences.
type pages struct {
	templates map[string]*template.Template
	languages map[string]sentences
}

// frame is what every page is given beside its own data.
type frame struct {
	Said     sentences
	Who      Person // nobody before somebody has signed in
	SignedIn bool   // and can sign out
	Demo     bool   // this is the demo school, to be thrown away
	Home     string // from there, the person's own desk
	Closes   bool   // the desk can be closed from its pages
	Rooms    []room
	Page     string // the page's name
	Room     string // the address of the room that it belongs to
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

// rooms are those that a person may enter.
func (d *Desk) rooms(who Person) []room {
	if who.Name == "" {
		return nil
	}
	list := slices.Clone(allRooms)
	last := room{"safe", "/team", toRead}
	if !d.alone() {
		last.Name = "team"
	}
	list = append(list, last)
	return slices.DeleteFunc(list, func(r room) bool { return r.right == toMark && !who.Marks })
}

func loadPages() (*pages, error) {
	languages, err := readSentences()
	if err != nil {
		return nil, err
	}
	p := &pages{templates: map[string]*template.Template{}, languages: languages}
	files, err := fs.Glob(pageFiles, "page/*.html")
	if err != nil {
		return nil, err
	}
	look := lookNames()
	functions := template.FuncMap{
		"points": points,
		"look":   func(name string) string { return look[name] },
	}
	for _, file := range files {
		name := strings.TrimSuffix(path.Base(file), ".html")
		if name == "frame" || name == "shared" {
			continue
		}
		t, err := template.New("frame.html").Funcs(functions).ParseFS(pageFiles, "page/frame.html", "page/shared.html", file)
		if err != nil {
			return nil, err
		}
		p.templates[name] = t
	}
	return p, nil
}

// points are thousandths of a point as they are shown.
func points(thousandths int) string {
	return strconv.FormatFloat(float64(thousandths)/1000, 'f', 2, 64)
}

// write draws a page, or the one part of it that is asked for.
func (p *pages) write(w io.Writer, page, part string, data frame) error {
	t, ok := p.templates[page]
	if !ok {
		return fmt.Errorf("no page %q", page)
	}
	if part != "" && t.Lookup(part) != nil {
		return t.ExecuteTemplate(w, part, data)
	}
	return t.ExecuteTemplate(w, "frame.html", data)
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
