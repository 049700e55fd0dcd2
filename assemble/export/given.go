package export

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
)

// ErrNoWeek says that nothing beside a quiz.csv tells the week of its quiz.
var ErrNoWeek = errors.New("there is no quiz.json beside it to tell the week")

// Given reads a quiz as it was given from its folder or its quiz.csv. Title and week
// come from the quiz.json beside it; without one the title is the folder's name and the
// week the one given here, else the error is ErrNoWeek. A quiz.csv that says something
// else than the quiz.json is refused: marks of a changed quiz would count beside those
// of the quiz that was given.
func Given(path, week string) (results.Quiz, error) {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		path = filepath.Join(path, "quiz.csv")
	}
	rows, err := ReadQuizFile(path)
	if err != nil {
		return results.Quiz{}, err
	}
	slices.SortStableFunc(rows, func(a, b QuizRow) int {
		return cmp.Or(cmp.Compare(a.Form, b.Form), cmp.Compare(a.Number, b.Number))
	})
	beside, err := fileBeside(path)
	if err != nil {
		return results.Quiz{}, err
	}
	if err := changedByHand(path, rows, beside); err != nil {
		return results.Quiz{}, err
	}
	forms := formsOf(rows)
	if len(forms) == 0 {
		return results.Quiz{}, fmt.Errorf("%s holds no items", path)
	}
	if week = cmp.Or(beside.Week, week); week == "" {
		return results.Quiz{}, fmt.Errorf("%s: %w", path, ErrNoWeek)
	}
	return results.NewQuiz(cmp.Or(beside.Title, folderName(path)), week, forms), nil
}

// Title is the title of the quiz whose quiz.csv it is: that of the quiz.json beside it,
// else the folder's name.
func Title(csvPath string) string {
	beside, _ := fileBeside(csvPath)
	return cmp.Or(beside.Title, folderName(csvPath))
}

func folderName(csvPath string) string {
	folder, _ := filepath.Abs(filepath.Dir(csvPath))
	return filepath.Base(folder)
}

// ReadQuizFile reads the rows of a quiz.csv.
func ReadQuizFile(path string) ([]QuizRow, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("can't read the quiz: %w", err)
	}
	defer file.Close()
	rows, err := ReadQuiz(file)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return rows, nil
}

// fileBeside is the quiz.json in the same folder, empty where there is none or it can't
// be read.
func fileBeside(csvPath string) (quiz quizFile, err error) {
	text, err := os.ReadFile(filepath.Join(filepath.Dir(csvPath), "quiz.json"))
	if errors.Is(err, os.ErrNotExist) {
		return quiz, nil
	}
	if err != nil {
		return quiz, fmt.Errorf("can't read the quiz: %w", err)
	}
	if json.Unmarshal(text, &quiz) != nil {
		return quizFile{}, nil // a broken file tells nothing, and the week can be said
	}
	return quiz, nil
}

func formsOf(rows []QuizRow) (forms []results.Form) {
	for _, row := range rows {
		if len(forms) == 0 || forms[len(forms)-1].Name != string(row.Form) {
			forms = append(forms, results.Form{Name: string(row.Form)})
		}
		form := &forms[len(forms)-1]
		form.Items = append(form.Items, results.Item{
			ID: row.ID, Skill: standards.SkillID(row.Skill), Codes: standards.SplitCodes(row.Standards),
			Asks: row.Task, Key: row.Key, Difficulty: standards.Difficulty(row.Difficulty), Look: task.Look(row.Look),
		})
	}
	return forms
}

// changedByHand says where quiz.csv is not what was written. Keys that a spreadsheet
// only writes in another way (3:30:00) are put back in rows.
func changedByHand(path string, rows []QuizRow, beside quizFile) error {
	if len(beside.Forms) == 0 {
		return nil
	}
	at := 0
	for _, form := range beside.Forms {
		for _, item := range form.Items {
			place := fmt.Sprintf("%s%d", form.Form, item.Number)
			if at >= len(rows) || rows[at].Form != Letter(form.Form) || int(rows[at].Number) != item.Number {
				return changed(path, place, "the item", "missing", item.asks())
			}
			row := &rows[at]
			at++
			if (results.Item{Asks: item.asks(), Key: item.Key}).Judge(row.Key) {
				row.Key = item.Key
			}
			for _, cell := range []struct{ what, here, there string }{
				{"id", row.ID, item.ID}, {"task", row.Task, item.asks()}, {"key", row.Key, item.Key},
				{"skill", row.Skill, string(item.Skill)},
			} {
				if cell.here != cell.there {
					return changed(path, place, cell.what, cell.here, cell.there)
				}
			}
		}
	}
	if at < len(rows) {
		return changed(path, fmt.Sprintf("%s%d", rows[at].Form, rows[at].Number), "the item", rows[at].Task, "missing")
	}
	return nil
}

func changed(path, place, what, here, there string) error {
	return fmt.Errorf("%s was changed by hand: %s at %s is %q, in quiz.json %q; "+
		"put it back as it was given, or make the changed one a quiz of its own without quiz.json beside it",
		path, what, place, here, there)
}
