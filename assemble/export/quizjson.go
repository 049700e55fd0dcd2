package export

import (
	"encoding/json"
	"io"

	"evenhand/assemble"
	"evenhand/assemble/search"
)

// quizFile is quiz.json. Difficulties of items are in logits; the figures of the quiz are whole
// numbers in the units of its definition (assemble.Assemble), so that anyone can work them out
// again.
type quizFile struct {
	Title string `json:"title"`
	Week  string `json:"week,omitempty"`
	Seed  uint64 `json:"seed,string"` // in quotes: a number in JSON is safe only up to 2⁵³ (RFC 8259, section 6)

	ShareRight int           `json:"share_right"` // the mark aimed at, in 100
	Level      int           `json:"level"`       // ability of the typical pupil, thousandths of a logit
	Off        []int         `json:"off"`         // of each form from the mark, hundredths of a point beyond one in 100
	Uneven     search.Points `json:"uneven"`      // forms apart for a weaker, typical, stronger pupil, hundredths of a point beyond half in 100
	Uses       int           `json:"uses"`
	Objective  int           `json:"objective"` // 1000 · (sum of off + number of forms · sum of uneven) + uses
	Bound      int           `json:"bound"`     // no quiz from the bank under the plan has a smaller objective
	Proved     bool          `json:"proved"`

	Forms []formFile `json:"forms"`
	Swaps []swapFile `json:"swaps,omitempty"`
}

type formFile struct {
	Form   string        `json:"form"`
	Scores search.Points `json:"expected_scores"` // of a weaker, typical, stronger pupil, thousandths of a point
	Items  []quizItem    `json:"items"`
}

type swapFile struct {
	Form   string `json:"form"`
	Number int    `json:"number"`
	Out    string `json:"out"`
	In     string `json:"in"`
}

// WriteQuizJSON writes quiz.json: the quiz, the objective with its parts and the bound, so that
// anyone can check how good the quiz is.
func WriteQuizJSON(w io.Writer, quiz assemble.Quiz) error {
	file := quizFile{
		Title: quiz.Title, Week: quiz.Week, Seed: quiz.Seed,
		ShareRight: quiz.ShareRight, Level: quiz.Ability, Off: append([]int{}, quiz.Off...), Uneven: quiz.Uneven, Uses: quiz.UsesSum,
		Objective: quiz.Objective, Bound: quiz.Bound, Proved: quiz.Proved,
		Forms: []formFile{},
	}
	for _, form := range quiz.Forms {
		file.Forms = append(file.Forms, formOf(form))
	}
	for _, swap := range quiz.Swaps {
		file.Swaps = append(file.Swaps, swapFile(swap))
	}
	out := json.NewEncoder(w)
	out.SetIndent("", "  ")
	out.SetEscapeHTML(false) // "<" is an answer here
	return out.Encode(file)
}

func formOf(form assemble.Form) formFile {
	file := formFile{Form: form.Name, Scores: form.Scores, Items: []quizItem{}}
	for _, placed := range form.Items {
		file.Items = append(file.Items, quizItemOf(placed))
	}
	return file
}
