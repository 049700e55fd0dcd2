package desk

import (
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"evenhand/bank/results"
	"evenhand/import/marks"
)

// typedRow is what a form sends for a pupil.
type typedRow struct {
	marks.TypedRow
	revision int // of the paper that the form showed
}

// typedRows reads the fields P01.form, P01.revision and P01.1, P01.2, ...
func typedRows(form url.Values) map[string]typedRow {
	rows := map[string]typedRow{}
	for name := range form {
		pupil, field, ok := strings.Cut(name, ".")
		if !ok {
			continue
		}
		row := rows[pupil]
		if row.Cells == nil {
			row.Cells, row.RestRight = map[int]string{}, form.Get("rest") == "right"
		}
		number, err := strconv.Atoi(field)
		switch {
		case field == "form":
			row.Form = form.Get(name)
		case field == "revision":
			row.revision, _ = strconv.Atoi(form.Get(name))
		case err == nil && number > 0:
			row.Cells[number-1] = form.Get(name)
		}
		rows[pupil] = row
	}
	return rows
}

// saveMarks judges what was typed and, unless that is all that is asked, keeps it. Of a row that
// somebody else has marked otherwise meanwhile nothing is kept, and both are shown.
func saveMarks(v *visit) error {
	m, err := v.markingAsked()
	if err != nil {
		return err
	}
	open, keep := v.writeMarks, v.PostForm.Get("do") != "judge"
	if !keep {
		open = v.readMarks
	}
	var rows map[string]gridRow
	err = open(func(s *results.Store) (err error) {
		if err = m.read(s, true); err == nil {
			rows, err = v.judged(s, &m, typedRows(v.PostForm), keep)
		}
		return err
	})
	if err != nil {
		return err
	}
	held := slices.ContainsFunc(slices.Collect(maps.Values(rows)), func(r gridRow) bool { return r.Problem != "" })
	part := v.Header.Get("Part") != ""
	switch {
	case !part && !held:
		return v.to(m.address(v.PostForm) + "&saved")
	case !part:
		v.w.WriteHeader(http.StatusConflict)
	}
	return v.showGrid(m, func(page *gridPage) {
		for i, row := range page.Rows {
			if sent, ok := rows[row.Pupil]; ok && (part || sent.Problem != "") {
				page.Rows[i] = sent
			}
		}
		if part {
			page.Rows = slices.DeleteFunc(page.Rows, func(r gridRow) bool { _, sent := rows[r.Pupil]; return !sent })
		}
	})
}

// address is that of the grid as a form showed it.
func (m *marking) address(form url.Values) string {
	query := url.Values{"class": {m.Class}}
	for _, name := range []string{"by", "item"} {
		if form.Get(name) != "" {
			query.Set(name, form.Get(name))
		}
	}
	return "/marks/" + m.Given.ID + "?" + query.Encode()
}

// judged reads the rows over the papers as they stand and, where they are to be kept, keeps them, all or
// none.
func (v *visit) judged(s *results.Store, m *marking, typed map[string]typedRow, keep bool) (map[string]gridRow, error) {
	page, rows := v.gridPage(*m), map[string]gridRow{}
	var papers []results.Paper
	for pupil, sent := range typed {
		if !slices.Contains(m.Pupils, pupil) {
			return nil, v.wrong("marks.nobody", pupil)
		}
		stands, shown := m.stands(pupil), maps.Clone(sent.Cells)
		overtaken, err := sent.meanwhile(s, m, stands)
		if err != nil {
			return nil, err
		}
		paper, ok := sent.Paper(m.Quiz, stands)
		row := page.row(v, paper, shown)
		switch {
		case !ok:
			row.Form, row.Problem = sent.Form, v.said.say("marks.noform", sent.Form, strings.Join(m.Quiz.FormNames(), ", "))
		case keep && overtaken:
			row.Problem = v.said.say("marks.overtaken", stands.By, answersOf(stands))
		case keep && (stands.Revision > 0 || !untouched(paper)):
			papers = append(papers, paper)
		}
		rows[pupil] = row
	}
	if len(papers) == 0 {
		return rows, nil
	}
	if _, err := s.Mark(m.Quiz, papers, v.by(), v.now()); err != nil {
		return nil, err
	}
	if err := m.read(s, true); err != nil {
		return nil, err
	}
	for _, paper := range papers {
		row := rows[paper.Pupil]
		row.Revision = m.papers[paper.Pupil].Revision
		rows[paper.Pupil] = row
	}
	return rows, nil
}

// meanwhile compares a row with the paper that its form showed, where another one stands by now: what was
// shown and not changed is left out of the row, so that it stays as it stands. overtaken says that
// somebody else marked a cell that was changed here, and otherwise.
func (t *typedRow) meanwhile(s *results.Store, m *marking, stands results.Paper) (overtaken bool, err error) {
	if t.revision == stands.Revision {
		return false, nil
	}
	history, err := s.History(m.Quiz.ID, m.Class, stands.Pupil)
	if err != nil {
		return false, err
	}
	base := results.Paper{Form: m.seats[stands.Pupil]}
	for _, p := range history {
		if p.Revision == t.revision {
			base = p
		}
	}
	if t.Form == base.Form {
		t.Form = ""
	}
	for i, text := range t.Cells {
		was, is := results.Answer{State: results.NotReached}, results.Answer{State: results.NotReached}
		if i < len(base.Answers) {
			was = base.Answers[i]
		}
		if i < len(stands.Answers) {
			is = stands.Answers[i]
		}
		if text = strings.TrimSpace(text); text == shownAs(was) {
			delete(t.Cells, i)
		} else if is != was && text != shownAs(is) {
			overtaken = true
		}
	}
	return overtaken || t.Form != "" && base.Form != stands.Form && t.Form != stands.Form, nil
}

// untouched says that nothing is marked.
func untouched(p results.Paper) bool {
	return !slices.ContainsFunc(p.Answers, func(a results.Answer) bool { return a != results.Answer{State: results.NotReached} })
}

// shownAs is an answer as its cell shows it: what was not reached stays empty.
func shownAs(a results.Answer) string {
	if a.State == results.NotReached && !a.Asked() {
		return ""
	}
	return a.String()
}

// answersOf are the answers of a paper in a line.
func answersOf(p results.Paper) string {
	texts := []string{p.Form}
	for i, a := range p.Answers {
		texts = append(texts, strconv.Itoa(i+1)+": "+a.String())
	}
	return strings.Join(texts, " | ")
}
