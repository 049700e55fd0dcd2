package export

import (
	"fmt"
	"io"
	"regexp"
	"slices"

	"evenhand/assemble"
)

// QuizRow is one line of quiz.csv: an item in its place on a form.
type QuizRow struct {
	Form       Letter `csv:"form"`   // "A", "B", ...
	Number     Whole  `csv:"number"` // from 1, in the order of the sheet
	ID         string `csv:"id"`
	Skill      string `csv:"skill"`
	Standards  string `csv:"standards"` // codes separated by a space, or "beyond K-2"
	Task       string `csv:"task"`      // for an item by hand its question
	Look       string `csv:"look"`
	Key        string `csv:"key"`
	Band       string `csv:"band"`
	ShareRight Whole  `csv:"share_right"` // in 100 answers, rounded
	Difficulty Logits `csv:"difficulty"`  // measured where there is evidence, else predicted
	Seconds    Whole  `csv:"seconds"`     // expected working time
	Uses       Whole  `csv:"uses"`        // earlier uses in quizzes
	Basis      string `csv:"basis"`       // of the difficulty: guess, learnt or measured; quizzes of once don't tell
	Traits
}

// WriteQuiz writes quiz.csv: the items of form A in their order, then those of form B, and so
// on.
func WriteQuiz(w io.Writer, quiz assemble.Quiz) error {
	return writeRows(w, sure(slices.Values(QuizRows(quiz))))
}

// QuizRows are the rows of quiz.csv.
func QuizRows(quiz assemble.Quiz) (rows []QuizRow) {
	for _, form := range quiz.Forms {
		for _, placed := range form.Items {
			rows = append(rows, quizRow(form.Name, placed))
		}
	}
	return rows
}

func quizRow(form string, placed assemble.Placed) QuizRow {
	item := placed.Item
	difficulty := item.Difficulty()
	return QuizRow{
		Form:       Letter(form),
		Number:     Whole(placed.Number),
		ID:         item.ID,
		Skill:      string(item.Skill),
		Standards:  item.Standards(),
		Task:       item.Asks(),
		Look:       string(item.Look),
		Key:        item.Key,
		Band:       string(difficulty.Band()),
		ShareRight: Whole(difficulty.Percent()),
		Difficulty: Logits(difficulty),
		Seconds:    Whole(item.Seconds),
		Uses:       Whole(placed.Uses),
		Basis:      string(placed.Basis),
		Traits:     TraitsOf(item.Traits),
	}
}

// ReadQuiz reads what WriteQuiz wrote. Columns may stand in another order and others may have been
// added; the error names the line and column that can't be read.
func ReadQuiz(r io.Reader) ([]QuizRow, error) { return readRows[QuizRow](r) }

// Letter is a cell with the name of a form. As that becomes part of the names of files, it takes
// letters and digits alone.
type Letter string

var letter = regexp.MustCompile(`^[\pL\pN]{1,10}$`)

// UnmarshalCSV reads the name.
func (n *Letter) UnmarshalCSV(cell string) error {
	if !letter.MatchString(cell) {
		return fmt.Errorf("%q is no name; a form is named by a letter, such as A", cell)
	}
	*n = Letter(cell)
	return nil
}
