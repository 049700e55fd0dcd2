package export

import (
	"encoding/json"
	"io"
	"math"

	"evenhand/assemble"
	"evenhand/standards"
	"evenhand/standards/task"
)

// quizFile is quiz.json. Difficulties are in logits.
type quizFile struct {
	Title string `json:"title"`
	Week  string `json:"week,omitempty"`
	Seed  uint64 `json:"seed,string"` // in quotes: a number in JSON is safe only up to 2⁵³ (RFC 8259, section 6)

	Objective int     `json:"objective"` // 1000 · excess + uses
	Excess    int     `json:"excess"`
	Uses      int     `json:"uses"`
	Bound     int     `json:"bound"` // no quiz from the bank under the plan has a smaller objective
	Proved    bool    `json:"proved"`
	Target    float64 `json:"target"`     // mean difficulty aimed at
	Apart     float64 `json:"difference"` // largest less smallest mean difficulty of the forms

	Forms []formFile `json:"forms"`
	Swaps []swapFile `json:"swaps,omitempty"`
}

type formFile struct {
	Form  string     `json:"form"`
	Mean  float64    `json:"mean_difficulty"`
	Items []itemFile `json:"items"`
}

type itemFile struct {
	Number     int               `json:"number"`
	ID         string            `json:"id"`
	Row        string            `json:"row"` // the row of the plan that it fills
	Shared     bool              `json:"shared,omitempty"`
	Skill      string            `json:"skill"`
	Standards  []task.Code       `json:"standards"`
	Task       string            `json:"task"`
	Look       string            `json:"look"`
	Key        string            `json:"key"`
	Band       string            `json:"band"`
	Difficulty float64           `json:"difficulty"`
	Seconds    int               `json:"seconds"`
	Uses       int               `json:"uses"`
	Traits     map[string]string `json:"traits,omitempty"`
}

type swapFile struct {
	Form   string `json:"form"`
	Number int    `json:"number"`
	Out    string `json:"out"`
	In     string `json:"in"`
}

// WriteQuizJSON writes quiz.json: the quiz, the objective with its two parts, the bound and the
// target, the difficulty of the share right, so that anyone can check how good the quiz is.
func WriteQuizJSON(w io.Writer, quiz assemble.Quiz) error {
	target := standards.DifficultyFor(float64(quiz.ShareRight) / 100)
	file := quizFile{
		Title: quiz.Title, Week: quiz.Week, Seed: quiz.Seed,
		Objective: quiz.Objective, Excess: quiz.Excess, Uses: quiz.UsesSum, Bound: quiz.Bound, Proved: quiz.Proved,
		Target: target.Logits(), Apart: apart(quiz.Forms),
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
	file := formFile{Form: form.Name, Mean: mean(form), Items: []itemFile{}}
	for _, placed := range form.Items {
		file.Items = append(file.Items, itemOf(placed))
	}
	return file
}

func itemOf(placed assemble.Placed) itemFile {
	item := placed.Item
	difficulty := item.Difficulty()
	file := itemFile{
		Number: placed.Number, ID: item.ID, Row: placed.Row, Shared: placed.Shared,
		Skill: string(item.Skill), Standards: append([]task.Code{}, item.Codes...),
		Task: asked(item), Look: string(item.Look), Key: item.Key,
		Band: string(difficulty.Band()), Difficulty: difficulty.Logits(),
		Seconds: item.Seconds, Uses: placed.Uses,
		Traits: make(map[string]string),
	}
	for _, trait := range task.AllTraits() {
		if value := item.Traits.Get(trait); value != "" {
			file.Traits[trait.String()] = value
		}
	}
	return file
}

// mean is the mean difficulty of a form, to a millionth of a logit; 0 for an empty form.
func mean(form assemble.Form) float64 {
	sum := 0
	for _, placed := range form.Items {
		sum += int(placed.Item.Difficulty())
	}
	return millionths(float64(sum) / float64(max(1, len(form.Items))) / 1000)
}

// apart is how far the hardest form is from the easiest.
func apart(forms []assemble.Form) float64 {
	if len(forms) == 0 {
		return 0
	}
	low, high := mean(forms[0]), mean(forms[0])
	for _, form := range forms {
		low, high = min(low, mean(form)), max(high, mean(form))
	}
	return millionths(high - low)
}

func millionths(x float64) float64 { return math.Round(1e6*x) / 1e6 }
