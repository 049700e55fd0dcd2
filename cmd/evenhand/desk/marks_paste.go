package desk

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"evenhand/bank/results"
	"evenhand/import/marks"
	"evenhand/standards/words"
)

// pasted is what became of rows from a spreadsheet.
type pasted struct {
	*marks.Reading
	Tally results.Tally
}

// pasteMarks reads rows of a spreadsheet as a marking grid and keeps those that are understood.
func pasteMarks(v *visit) error {
	m, err := v.markingAsked()
	if err != nil {
		return err
	}
	text := v.PostForm.Get("grid")
	said := strings.FieldsFunc(v.PostForm.Get("signs"), func(r rune) bool { return r == ',' || r == ';' || r == '\n' })
	for i := range said {
		said[i] = strings.TrimSpace(said[i])
	}
	signs, err := marks.ParseSigns(slices.DeleteFunc(said, func(text string) bool { return text == "" }))
	if err != nil {
		return v.wrong("marks.paste.signs", v.PostForm.Get("signs"))
	}
	var done *pasted
	var problem error
	err = v.writeMarks(func(s *results.Store) error {
		if err := m.read(s, true); err != nil {
			return err
		}
		o := marks.Options{
			Class: m.Class, Pupils: m.Pupils, Before: m.papers, Signs: signs,
			Digits: marks.Digits(v.PostForm.Get("digits")), AllWrong: v.PostForm.Get("allwrong") != "",
		}
		reading, err := marks.Read(v.said.say("marks.paste.name"), []byte(text), m.Quiz, o)
		if problem = err; err != nil {
			return nil
		}
		tally, err := s.Mark(m.Quiz, reading.Papers, v.by(), v.now())
		if err != nil {
			return err
		}
		done = &pasted{reading, tally}
		return m.read(s, true)
	})
	if err != nil {
		return err
	}
	if problem != nil || len(done.Problems) > 0 {
		v.w.WriteHeader(http.StatusUnprocessableEntity)
	} else {
		text = ""
	}
	return v.showGrid(m, func(page *gridPage) {
		page.Pasted, page.Text = done, text
		if problem != nil {
			page.Problem = v.said.Tell(problem)
		}
	})
}

// GridColumn is a column of a grid by its name, such as pupil or item 3, in templates.
func (s sentences) GridColumn(name string) string {
	var item int
	if _, err := fmt.Sscanf(name, "item %d", &item); err == nil {
		return s.Told(words.Sayf("item %d", item))
	}
	return s.Term(name)
}

// enrolPupils notes the pupils of a class by their codes.
func enrolPupils(v *visit) error {
	v.Form.Set("class", strings.TrimSpace(v.PostForm.Get("class")))
	m, err := v.markingAsked()
	if err != nil {
		return err
	}
	typed := v.PostForm.Get("codes")
	codes, err := results.ParseCodes(typed)
	problem := ""
	switch named := slices.IndexFunc(codes, func(code string) bool { return results.LooksLikeName(code, codes...) }); {
	case err != nil || len(codes) == 0:
		problem = v.said.say("marks.codes.wrong", typed)
	case named >= 0 && v.PostForm.Get("codes-not-names") == "":
		problem = v.said.say("marks.codes.name", codes[named])
	}
	if problem == "" {
		err := v.writeMarks(func(s *results.Store) error { return s.Enrol(m.Class, codes...) })
		if err != nil {
			return err
		}
		return v.to(m.address(nil))
	}
	if err := v.readMarks(func(s *results.Store) error { return m.read(s, true) }); err != nil {
		return err
	}
	v.w.WriteHeader(http.StatusUnprocessableEntity)
	return v.showGrid(m, func(page *gridPage) { page.Problem, page.Codes = problem, typed })
}
