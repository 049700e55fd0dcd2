package marks

import (
	"strings"

	"evenhand/bank/results"
)

// TypedRow is a pupil's row of a grid as it is typed on a screen.
type TypedRow struct {
	Form  string         // nothing takes the one proposed; the mark for absent, all of the paper
	Cells map[int]string // by the item's place, from 0; a place that is not there stays as it was
	// RestRight says that nothing means right, in a row in which something stands, as it does for
	// who types only what is wrong; else it means not reached.
	RestRight bool
}

// Paper reads the row over the paper as it stands, whose answers may be missing. A text that can be no
// answer is kept as it was typed and doesn't count (Answer.Asked). ok is false where the form is none of
// the quiz.
func (t TypedRow) Paper(quiz results.Quiz, stands results.Paper) (paper results.Paper, ok bool) {
	paper = results.Paper{Class: stands.Class, Pupil: stands.Pupil, Form: stands.Form}
	state, _ := Sign(t.Form)
	absent := state == results.Absent
	if text := strings.TrimSpace(t.Form); text != "" && !absent {
		paper.Form = text
	}
	form, ok := quiz.Form(paper.Form)
	if !ok {
		return paper, false
	}
	before := stands.Answers
	if form.Name != stands.Form || len(before) != len(form.Items) {
		before = nil
	}
	paper.Form, paper.Answers = form.Name, make([]results.Answer, len(form.Items))
	restRight := t.RestRight && t.begun()
	for i, item := range form.Items {
		stood := results.Answer{State: results.NotReached}
		if before != nil {
			stood = before[i]
		}
		text, typed := t.Cells[i]
		text = strings.TrimSpace(text)
		switch {
		case absent:
			paper.Answers[i] = results.Answer{State: results.Absent}
		case typed && text == "" && !restRight:
			paper.Answers[i] = results.Answer{State: results.NotReached}
		case typed && (before == nil || stood.Asked() || text != stood.String()), stood.Asked():
			if !typed {
				text = stood.Written
			}
			answer, problem := Typed(item, text)
			if problem != nil {
				answer = results.Answer{State: results.NotReached, Written: shortened(text)}
			}
			paper.Answers[i] = answer
		default:
			paper.Answers[i] = stood
		}
	}
	return paper, true
}

// begun says that something stands in the row.
func (t TypedRow) begun() bool {
	for _, text := range t.Cells {
		if strings.TrimSpace(text) != "" {
			return true
		}
	}
	return false
}

// shortened is a text that is too long for an answer, cut.
func shortened(text string) string {
	letters := []rune(text)
	return string(letters[:min(len(letters), longestAnswer)])
}
